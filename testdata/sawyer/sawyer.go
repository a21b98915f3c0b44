// Package sawyer checks cutting plans from outside: it reads an instance and a
// plan as JSON, saws the plan cut by cut, and says all that is wrong with it. It
// shares no code with the search that makes plans.
package sawyer

import (
	"encoding/json"
	"fmt"
	"math"
	"sort"
)

type instance struct {
	Kind, Objective   string
	Kerf, Trim, Depth float64
	Stages            int
	Sheets            []sheet
	Bars              []bar
	Items             []item
}

type sheet struct {
	ID                   string
	Length, Width, Price float64
	Count                int
	Low, High            [][2]float64
	Natural              []string
	KeepOut              []rect `json:"keep_out"`
}

type bar struct {
	ID            string
	Length, Price float64
	Count         int
}

type item struct {
	ID                   string
	Length, Width, Value float64
	Count                int
	Rotate               bool
	Edge                 string
	EndWidth             float64 `json:"end_width"`
	Left, Right          float64
	Turn                 bool
}

type rect struct{ X, Y, Length, Width float64 }

type plan struct {
	Objective, Bound float64
	Optimal          bool
	Sheets           []layout
	Bars             []barRow
}

type layout struct {
	Sheet      string
	Placements []placement
	Cuts       []sawCut
	Offcuts    []rect
}

type placement struct {
	Item            string
	X, Y            float64
	Rotated, Turned bool
	Edge            string
}

type sawCut struct {
	Rip       bool
	Piece     rect
	At        float64
	EndAt     float64 `json:"end_at"`
	KerfAbove bool    `json:"kerf_above"`
	Setting   float64
	From      string
	Track     bool
	Frees     []string
}

type barRow struct {
	Bar string
	Row []struct {
		Item   string
		At     float64
		Turned bool
	}
	Rest float64
}

// Verdict is what a check finds. Worth is the objective counted afresh.
type Verdict struct {
	Worth float64
	Wrong []string
}

const fine = 0.0015 // mm: lengths are whole micrometres

func (v *Verdict) wrong(format string, args ...any) {
	v.Wrong = append(v.Wrong, fmt.Sprintf(format, args...))
}

// Check checks a plan against its instance.
func Check(ins, sol []byte) Verdict {
	var p instance
	var s plan
	var v Verdict
	if err := json.Unmarshal(ins, &p); err != nil {
		v.wrong("instance: %v", err)
	}
	if err := json.Unmarshal(sol, &s); err != nil {
		v.wrong("plan: %v", err)
	}
	if len(v.Wrong) > 0 {
		return v
	}
	if p.Kind == "bars" {
		v.bars(p, s)
	} else {
		v.sheets(p, s)
	}
	if math.Abs(v.Worth-s.Objective) > 1e-6*(1+math.Abs(v.Worth)) {
		v.wrong("the plan claims %g and holds %g", s.Objective, v.Worth)
	}
	if short := s.Bound - s.Objective; p.Objective == "value" && short < -1e-6 || p.Objective != "value" && short > 1e-6 {
		v.wrong("the bound %g contradicts the plan of %g", s.Bound, s.Objective)
	} else if s.Optimal && math.Abs(short) > 1e-6*(1+math.Abs(s.Objective)) {
		v.wrong("called optimal with a gap of %g", short)
	}
	return v
}

func (v *Verdict) sheets(p instance, s plan) {
	used, made := map[string]int{}, map[string]int{}
	for n, l := range s.Sheets {
		sh, ok := find(p.Sheets, func(x sheet) bool { return x.ID == l.Sheet })
		if !ok {
			v.wrong("layout %d: no sheet %q", n, l.Sheet)
			continue
		}
		used[sh.ID]++
		switch p.Objective {
		case "cost":
			v.Worth += sh.Price
		case "sheets":
			v.Worth++
		}
		for _, x := range l.Placements {
			made[x.Item]++
			if it, ok := find(p.Items, func(i item) bool { return i.ID == x.Item }); ok && p.Objective == "value" {
				v.Worth += it.Value
			}
		}
		v.layout(p, sh, l, n)
	}
	for _, sh := range p.Sheets {
		if sh.Count > 0 && used[sh.ID] > sh.Count {
			v.wrong("sheet %s: %d used, %d there", sh.ID, used[sh.ID], sh.Count)
		}
	}
	for _, it := range p.Items {
		if p.Objective == "value" && (it.Count == 0 || made[it.ID] <= it.Count) || made[it.ID] == it.Count {
			continue
		}
		v.wrong("item %s: %d made, %d wanted", it.ID, made[it.ID], it.Count)
	}
}

func find[T any](list []T, is func(T) bool) (T, bool) {
	for _, x := range list {
		if is(x) {
			return x, true
		}
	}
	var none T
	return none, false
}

// shape is a placed item as a quadrilateral with upright ends: two heights at
// either end.
type shape struct {
	id        string
	x0, x1    float64
	low, high [2]float64
	edge      string
	taper     bool
}

func (v *Verdict) shapeOf(p instance, x placement, n int) (shape, bool) {
	it, ok := find(p.Items, func(i item) bool { return i.ID == x.Item })
	if !ok {
		v.wrong("layout %d: no item %q", n, x.Item)
		return shape{}, false
	}
	l, w, e := it.Length, it.Width, it.EndWidth
	if e == 0 {
		e = w
	}
	wide := math.Max(w, e)
	if x.Rotated {
		if !it.Rotate {
			v.wrong("layout %d: item %s may not lie across", n, it.ID)
		}
		return shape{it.ID, x.X, x.X + wide, [2]float64{x.Y, x.Y}, [2]float64{x.Y + l, x.Y + l}, "", false}, true
	}
	s := shape{it.ID, x.X, x.X + l, [2]float64{x.Y, x.Y}, [2]float64{x.Y + w, x.Y + e}, x.Edge, w != e}
	if x.Turned {
		s.low, s.high = [2]float64{x.Y + wide - e, x.Y + wide - w}, [2]float64{x.Y + wide, x.Y + wide}
	}
	if (it.Edge != "") != (x.Edge != "") {
		v.wrong("layout %d: item %s wants the edge %q and keeps %q", n, it.ID, it.Edge, x.Edge)
	}
	if it.Edge != "" && (it.Edge == x.Edge) == x.Turned {
		v.wrong("layout %d: item %s has its natural edge %s on the wrong side", n, it.ID, it.Edge)
	}
	return s, true
}

// height is the height of a broken line at x.
func height(line [][2]float64, flat, x float64) float64 {
	if len(line) == 0 {
		return flat
	}
	i := sort.Search(len(line), func(i int) bool { return line[i][0] >= x })
	switch {
	case i == 0:
		return line[0][1]
	case i == len(line):
		return line[i-1][1]
	}
	a, b := line[i-1], line[i]
	return a[1] + (b[1]-a[1])*(x-a[0])/(b[0]-a[0])
}

func (sh sheet) natural(side string) bool {
	for _, s := range sh.Natural {
		if s == side {
			return true
		}
	}
	return false
}

func (v *Verdict) layout(p instance, sh sheet, l layout, n int) {
	var shapes []shape
	for _, x := range l.Placements {
		if s, ok := v.shapeOf(p, x, n); ok {
			shapes = append(shapes, s)
			v.inside(p, sh, s, n)
		}
	}
	for i, a := range shapes {
		for _, b := range shapes[:i] {
			if d := apart(a, b); d < p.Kerf-fine {
				v.wrong("layout %d: %s and %s lie %.3f apart, less than the kerf", n, a.id, b.id, d)
			}
		}
	}
	for _, o := range l.Offcuts {
		box := shape{"offcut", o.X, o.X + o.Length, [2]float64{o.Y, o.Y}, [2]float64{o.Y + o.Width, o.Y + o.Width}, "", false}
		v.inside(p, sh, box, n)
		for _, a := range shapes {
			if apart(a, box) < -fine {
				v.wrong("layout %d: an offcut reaches into %s", n, a.id)
			}
		}
	}
	if p.Stages > 0 && !parts(shapes, p.Kerf, p.Stages, -1) {
		v.wrong("layout %d: more than %d changes of direction", n, p.Stages)
	}
	v.saw(p, sh, l, shapes, n)
}

// parts says whether cuts right across part upright rectangles, with at most so
// many changes of direction, the first direction counted; freeing one piece from
// waste beside it does not count.
func parts(list []shape, kerf float64, stages, last int) bool {
	if len(list) < 2 {
		return true
	}
	for axis := range 2 {
		left := stages
		if last >= 0 && last != axis {
			left--
		}
		if left == 0 {
			continue
		}
		for _, s := range list {
			end := s.x1
			if axis == 1 {
				end = s.high[0]
			}
			var a, b []shape
			for _, o := range list {
				lo, hi := o.x0, o.x1
				if axis == 1 {
					lo, hi = o.low[0], o.high[0]
				}
				if hi <= end+fine {
					a = append(a, o)
				} else if lo >= end+kerf-fine {
					b = append(b, o)
				}
			}
			if len(b) > 0 && len(a)+len(b) == len(list) && parts(a, kerf, left, axis) && parts(b, kerf, left, axis) {
				return true
			}
		}
	}
	return false
}

// inside compares a shape with the outline: at its ends and at every corner of
// the edges between them.
func (v *Verdict) inside(p instance, sh sheet, s shape, n int) {
	if s.x0 < p.Trim-fine || s.x1 > sh.Length-p.Trim+fine {
		v.wrong("layout %d: %s leaves the sheet lengthwise", n, s.id)
	}
	xs := []float64{s.x0, s.x1}
	for _, line := range [][][2]float64{sh.Low, sh.High} {
		for _, q := range line {
			if q[0] > s.x0 && q[0] < s.x1 {
				xs = append(xs, q[0])
			}
		}
	}
	lowTrim, highTrim := p.Trim, p.Trim
	if sh.natural("low") {
		lowTrim = 0
	}
	if sh.natural("high") {
		highTrim = 0
	}
	for _, x := range xs {
		t := (x - s.x0) / (s.x1 - s.x0)
		low, high := s.low[0]+t*(s.low[1]-s.low[0]), s.high[0]+t*(s.high[1]-s.high[0])
		if low < height(sh.Low, 0, x)+lowTrim-fine || high > height(sh.High, sh.Width, x)-highTrim+fine {
			v.wrong("layout %d: %s leaves the sheet at x %.1f", n, s.id, x)
		}
	}
	if s.edge != "" && !sh.natural(s.edge) {
		v.wrong("layout %d: %s needs a natural edge, the %s edge of %s is none", n, s.id, s.edge, sh.ID)
	}
	for _, k := range sh.KeepOut {
		if apart(s, shape{"", k.X, k.X + k.Length, [2]float64{k.Y, k.Y}, [2]float64{k.Y + k.Width, k.Y + k.Width}, "", false}) < -fine {
			v.wrong("layout %d: %s lies on a place to keep off", n, s.id)
		}
	}
}

// apart is how far two shapes lie from each other, by the better of the gap
// between their ends and the gap between their sides; negative if they meet.
func apart(a, b shape) float64 {
	along := math.Max(b.x0-a.x1, a.x0-b.x1)
	return math.Max(along, math.Max(over(a, b), over(b, a)))
}

// over is how far b lies above a, square to the upper side of a or to the lower
// side of b, over the length that both cover.
func over(a, b shape) float64 {
	x0, x1 := math.Max(a.x0, b.x0), math.Min(a.x1, b.x1)
	if x0 >= x1 {
		return min(b.low[0], b.low[1]) - max(a.high[0], a.high[1])
	}
	at := func(s shape, line [2]float64, x float64) float64 {
		return line[0] + (line[1]-line[0])*(x-s.x0)/(s.x1-s.x0)
	}
	gap := math.Inf(1)
	for _, x := range []float64{x0, x1} {
		gap = math.Min(gap, at(b, b.low, x)-at(a, a.high, x))
	}
	slope := (a.high[1] - a.high[0]) / (a.x1 - a.x0)
	if gap > 0 {
		gap /= math.Hypot(1, slope)
	}
	return gap
}
