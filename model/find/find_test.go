package find

import (
	"encoding/json"
	"strings"
	"testing"
)

// TestJudge: the margin is positive when the requirement is met, zero passes.
func TestJudge(t *testing.T) {
	for _, c := range []struct {
		measured float64
		need     Limit
		margin   float64
		status   Status
	}{
		{5, Limit{Value: 2, Relation: AtLeast}, 3, Pass},
		{2, Limit{Value: 2, Relation: AtLeast}, 0, Pass},
		{1.9, Limit{Value: 2, Relation: AtLeast}, -0.1, Fail},
		{1, Limit{Value: 2, Relation: AtMost}, 1, Pass},
		{3, Limit{Value: 2, Relation: AtMost}, -1, Fail},
		{4, Limit{Value: 2, High: 5, Relation: Between}, 1, Pass},
		{2.5, Limit{Value: 2, High: 5, Relation: Between}, 0.5, Pass},
		{6, Limit{Value: 2, High: 5, Relation: Between}, -1, Fail},
	} {
		f := Finding{Measured: MM(c.measured), Required: &c.need}.Judge()
		if f.Status != c.status || f.Margin.Value-c.margin > 1e-12 || c.margin-f.Margin.Value > 1e-12 {
			t.Errorf("%v %s %v: %s with margin %v, want %s with %v", c.measured, c.need.Relation, c.need.Value, f.Status, f.Margin.Value, c.status, c.margin)
		}
	}
	if f := (Finding{Status: Note}).Judge(); f.Status != Note || f.Margin != nil {
		t.Errorf("a finding without numbers was judged: %+v", f)
	}
}

// TestSortAndWorst: worst first, then the smallest margin, then by name; the
// order of equal input does not matter.
func TestSortAndWorst(t *testing.T) {
	margin := func(v float64) *Quantity { return &Quantity{Value: v, Unit: "mm"} }
	list := []Finding{
		{Rule: "c", Status: Pass, Margin: margin(3)}, {Rule: "b", Status: Note}, {Rule: "a", Status: Fail, Margin: margin(-1)},
		{Rule: "d", Status: Pass, Margin: margin(1)}, {Rule: "e", Status: Unknown}, {Rule: "f", Status: Fail, Margin: margin(-4)},
		{Rule: "h", Status: Pass, Margin: margin(1), Parts: []string{"y"}}, {Rule: "h", Status: Pass, Margin: margin(1), Parts: []string{"x"}},
	}
	order := func(l []Finding) string {
		var s []string
		for _, f := range l {
			s = append(s, f.Rule+strings.Join(f.Parts, ""))
		}
		return strings.Join(s, " ")
	}
	const want = "f a e b d hx hy c"
	for range 2 {
		Sort(list)
		if got := order(list); got != want {
			t.Errorf("sorted %q, want %q", got, want)
		}
		for i, j := 0, len(list)-1; i < j; i, j = i+1, j-1 {
			list[i], list[j] = list[j], list[i]
		}
	}
	if w := Worst(list); w != Fail {
		t.Errorf("worst is %s", w)
	}
	if w := Worst(nil); w != Pass {
		t.Errorf("worst of nothing is %s", w)
	}
}

// TestKeys holds the keys of report.json, which may be added to, never renamed.
func TestKeys(t *testing.T) {
	f := Finding{Rule: "r", Status: Fail, Parts: []string{"p"}, Walls: []string{}, At: &[3]float64{1, 2, 3}, Measured: MM(1.0), Required: LimitMM(AtLeast, 2.0),
		Margin: MM(-1.0), Assumed: []Assumption{{"w", "s"}}, Fix: []Fix{{Text: "t", Parameter: "p", Value: new(float64)}}, Basis: "b"}
	data, err := json.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"rule", "status", "title", "why", "parts", "walls", "at_mm", "measured", "required", "margin", "assumed", "fix", "basis",
		"value", "unit", "relation", "what", "source", "text", "parameter"} {
		if !strings.Contains(string(data), `"`+key+`":`) {
			t.Errorf("key %q is missing in %s", key, data)
		}
	}
}
