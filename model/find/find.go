// Package find holds what the checks have to say: findings with numbers, the
// assumption and source behind them, and a hint to mend them. Findings are
// plain values; report.json and the terminal print the same ones.
package find

import "sort"

// Status is the verdict of one finding, worst last.
type Status string

// The verdicts. Unknown means that an input is missing, never "pass"; broken
// means a fault in slabwright itself.
const (
	Pass    Status = "pass"
	Note    Status = "note"
	Warn    Status = "warn"
	Unknown Status = "unknown"
	Fail    Status = "fail"
	Broken  Status = "broken"
)

var severity = map[Status]int{Pass: 0, Note: 1, Warn: 2, Unknown: 3, Fail: 4, Broken: 5}

// Severity orders verdicts: pass 0 ... broken 5.
func (s Status) Severity() int { return severity[s] }

// Quantity is a number with its unit; SD is its standard deviation, 0 if unknown.
type Quantity struct {
	Value float64 `json:"value"`
	SD    float64 `json:"sd,omitempty"`
	Unit  string  `json:"unit"`
}

// Limit is what is required of a quantity. High is used by "between" only.
type Limit struct {
	Value    float64 `json:"value"`
	High     float64 `json:"high,omitempty"`
	Relation string  `json:"relation"`
	Unit     string  `json:"unit"`
}

// Relations of a Limit.
const (
	AtLeast = ">="
	AtMost  = "<="
	Between = "between"
)

// Assumption is something taken for granted, with where it comes from.
type Assumption struct {
	What   string `json:"what"`
	Source string `json:"source"`
}

// Fix is one way to mend a finding: prose, and where possible the parameter
// and the value that would do it.
type Fix struct {
	Text      string   `json:"text"`
	Parameter string   `json:"parameter,omitempty"`
	Value     *float64 `json:"value,omitempty"`
}

// Finding is one result of one rule at one place.
type Finding struct {
	Rule     string       `json:"rule"`
	Status   Status       `json:"status"`
	Title    string       `json:"title"`
	Why      string       `json:"why"`
	Parts    []string     `json:"parts"`
	Walls    []string     `json:"walls"`
	At       *[3]float64  `json:"at_mm,omitempty"`
	Measured *Quantity    `json:"measured,omitempty"`
	Required *Limit       `json:"required,omitempty"`
	Margin   *Quantity    `json:"margin,omitempty"`
	Assumed  []Assumption `json:"assumed"`
	Fix      []Fix        `json:"fix"`
	Basis    string       `json:"basis"`
	Line     string       `json:"line,omitempty"` // source line of the description that the finding is about
}

// MM makes a quantity in millimetres.
func MM[T ~float64](v T) *Quantity { return &Quantity{Value: float64(v), Unit: "mm"} }

// LimitMM makes a one-sided limit in millimetres.
func LimitMM[T ~float64](relation string, v T) *Limit {
	return &Limit{Value: float64(v), Relation: relation, Unit: "mm"}
}

// Judge fills Margin from Measured and Required and sets Status to pass or
// fail; the margin is positive when the requirement is met. It leaves the
// finding alone when either is missing.
func (f Finding) Judge() Finding {
	if f.Measured == nil || f.Required == nil {
		return f
	}
	m, r := f.Measured.Value, f.Required
	var margin float64
	switch r.Relation {
	case AtLeast:
		margin = m - r.Value
	case AtMost:
		margin = r.Value - m
	case Between:
		margin = min(m-r.Value, r.High-m)
	}
	f.Margin = &Quantity{Value: margin, SD: f.Measured.SD, Unit: f.Measured.Unit}
	f.Status = Pass
	if margin < -1e-6 {
		f.Status = Fail
	}
	return f
}

// Worst gives the worst status of a list, pass for an empty one.
func Worst(list []Finding) Status {
	w := Pass
	for _, f := range list {
		if f.Status.Severity() > w.Severity() {
			w = f.Status
		}
	}
	return w
}

// Sort orders findings worst first, then by margin (smallest first), rule,
// part and wall, so that the same job prints the same list.
func Sort(list []Finding) {
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		if x, y := a.Status.Severity(), b.Status.Severity(); x != y {
			return x > y
		}
		if (a.Margin == nil) != (b.Margin == nil) {
			return a.Margin != nil
		}
		if a.Margin != nil && a.Margin.Value != b.Margin.Value {
			return a.Margin.Value < b.Margin.Value
		}
		if a.Rule != b.Rule {
			return a.Rule < b.Rule
		}
		return key(a) < key(b)
	})
}

func key(f Finding) string {
	s := ""
	for _, p := range f.Parts {
		s += p + "\x00"
	}
	for _, w := range f.Walls {
		s += w + "\x00"
	}
	return s + f.Title
}
