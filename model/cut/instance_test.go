package cut_test

import (
	"bytes"
	"strings"
	"testing"

	"slabwright/model/calc/saw"
	"slabwright/model/cut"
)

// TestMistakesInAnInstance wants every mistake at its place, with what was read
// and how to mend it.
func TestMistakesInAnInstance(t *testing.T) {
	for _, c := range []struct{ ins, want string }{
		{`{"kind": "sheets",`, "bad.json:1:19: the file ends too early: expected JSON; look for a comma, a quote or a bracket that is missing before this place"},
		{`{"kind": "shets"}`, `bad.json:1:10: the text "shets": expected kind as one of sheets, bars; write "sheets"`},
		{"{\"kind\": \"bars\", \"objective\": \"bars\",\n \"bars\": [{\"id\": \"a\", \"lenght\": 3}],\n \"items\": []}",
			"bad.json:2:11: a bar has no length: expected the key length\n" +
				`bad.json:2:33: the key "lenght" is not known in a bar: expected id, length, count, price; write "length"` + "\n" +
				"bad.json:3:11: items is empty: expected at least one"},
		{`{"kind": "bars", "objective": "bars", "bars": [{"id": "a", "length": "6000"}], "items": [{"id": "x", "length": -3, "count": 1}]}`,
			`bad.json:1:70: the text "6000": expected length as a number from 0.001 to 100000; write it without quotes` + "\n" +
				"bad.json:1:112: the number -3: expected length as a number from 0.001 to 100000"},
		{`{"kind": "sheets", "objective": "cost", "guillotine": false, "sheets": [{"id": "s", "length": 10, "width": 10, "high": [[5, 8], [3, 9]]}], "items": [{"id": "i", "length": 1, "width": 1, "count": 1.5}]}`,
			"bad.json:1:55: guillotine false: expected true: a saw cuts right across what lies on it; leave the key out\n" +
				"bad.json:1:130: the number 3: expected points from left to right\n" +
				"bad.json:1:196: the number 1.5: expected count as a whole number"},
		{`{"kind": "bars", "objective": "bars", "bars": [{"id": "a", "length": 10}, {"id": "a", "length": 12}], "items": [{"id": "x", "length": 3, "count": 1}]}`,
			`bad.json:1:75: there are two bars "a": expected a name of its own for each`},
	} {
		_, mistakes := cut.ReadInstance("bad.json", []byte(c.ins))
		var got []string
		for _, m := range mistakes {
			got = append(got, m.String())
		}
		if text := strings.Join(got, "\n"); text != c.want {
			t.Errorf("%s\n got: %s\nwant: %s", c.ins, text, c.want)
		}
	}
}

// TestSameStepsSamePlan wants the same bytes for the same problem, however often
// it is solved and whoever listens.
func TestSameStepsSamePlan(t *testing.T) {
	ins := encode(t, sixty())
	first, _ := solve(t, "sixty", ins, saw.Effort{Steps: 20_000})
	again, _ := solve(t, "sixty", ins, saw.Effort{Steps: 20_000, Progress: func(saw.Progress) bool { return true }})
	if !bytes.Equal(first.JSON(), again.JSON()) {
		t.Error("the second plan differs from the first")
	}
}

// sixty is a problem of sixty parts of many sizes.
func sixty() doc {
	var items []doc
	n := 12345
	next := func(least, most int) int {
		n = (n*1103515245 + 12345) % (1 << 31)
		return least + n>>8%(most-least)
	}
	for i := range 60 {
		items = append(items, doc{"id": "p" + string(rune('A'+i/10)) + string(rune('0'+i%10)), "length": float64(next(2000, 12000)) / 10, "width": float64(next(600, 4500)) / 10, "count": 1, "rotate": i%3 == 0})
	}
	return doc{"kind": "sheets", "objective": "cost", "kerf": 4, "items": items, "sheets": []doc{
		{"id": "big", "length": 2400, "width": 900, "price": 690},
		{"id": "mid", "length": 2000, "width": 800, "price": 480, "count": 4},
		{"id": "small", "length": 1500, "width": 600, "price": 300, "count": 6}}}
}

// BenchmarkSixtyParts measures a whole plan, and how soon the first one is there.
func BenchmarkSixtyParts(b *testing.B) {
	ins := encode(b, sixty())
	b.Run("first", func(b *testing.B) {
		for b.Loop() {
			i, _ := cut.ReadInstance("sixty", ins)
			i.Solve(saw.Effort{Progress: func(p saw.Progress) bool { return !p.Found }})
		}
	})
	b.Run("whole", func(b *testing.B) {
		var s cut.Solution
		for b.Loop() {
			i, _ := cut.ReadInstance("sixty", ins)
			s = i.Solve(saw.Effort{})
		}
		b.ReportMetric(100*(s.Sheets.Objective-s.Sheets.Bound)/s.Sheets.Objective, "gap-%")
	})
}

// FuzzReadInstance: whatever stands in a file, it is read or refused with a place,
// and what is read can be planned or is refused with a reason.
func FuzzReadInstance(f *testing.F) {
	for _, s := range []string{
		`{"kind":"bars","objective":"bars","bars":[{"id":"a","length":10}],"items":[{"id":"x","length":3,"count":0}]}`,
		`{"kind":"sheets","objective":"cost","kerf":50,"trim":3,"sheets":[{"id":"a","length":10,"width":10,"price":1}],"items":[{"id":"x","length":3,"width":3,"count":2},{"id":"y","length":1,"width":1}]}`,
		`{"kind":"sheets","objective":"cost","sheets":[{"id":"a","length":1000,"width":500,"price":5,"low":[[0,400]],"high":[[0,300]]}],"items":[{"id":"x","length":3,"width":3,"count":2}]}`,
		`{"kind":"sheets","objective":"cost","kerf":2,"sheets":[{"id":"a","length":100,"width":50,"natural":["low"],"keep_out":[{"x":90,"y":40,"length":500,"width":500}]}],"items":[{"id":"x","length":30,"width":30,"end_width":20,"count":2},{"id":"z","length":9,"width":3,"count":1,"edge":"high"}]}`,
		`{"kind":"sheets","objective":"value","stages":2,"sheets":[{"id":"a","length":24,"width":12,"count":2}],"items":[{"id":"x","length":3.3,"width":2.1,"value":3,"rotate":true}]}`,
		`{"kind":"bars","objective":"cost","kerf":3,"depth":5,"bars":[{"id":"a","length":60,"price":0},{"id":"b","length":30,"count":1}],"items":[{"id":"x","length":25,"left":-5,"right":5,"turn":true,"count":3}]}`,
		`[`, `{"kind":"bars"}{}`, `{"kind":1e400}`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		i, mistakes := cut.ReadInstance("f.json", data)
		if len(mistakes) > 0 {
			for _, m := range mistakes {
				if m.Pos.Line < 1 || m.Read == "" {
					t.Errorf("%v has no place or says nothing", m)
				}
			}
			return
		}
		total := 0
		if i.Sheets != nil {
			for _, x := range i.Sheets.Items {
				total += x.Count
			}
		}
		if total > 40 {
			return // large problems are for other tests
		}
		if s := i.Solve(saw.Effort{Steps: 300}); !s.Found() && !strings.Contains(s.Text(), "Cannot be made") {
			t.Errorf("neither a plan nor a reason: %s", s.Text())
		}
	})
}
