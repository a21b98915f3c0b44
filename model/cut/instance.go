package cut

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"slabwright/model"
	"slabwright/model/calc/saw"
	"slabwright/model/unit"
)

// Instance is a bare cutting problem: sheets or bars. Lengths are millimetres.
//
//	{"name", "kind": "sheets", "objective": "value" | "cost" | "sheets",
//	 "kerf": 0, "trim": 0, "stages": 0, "keep": [length, width],
//	 "sheets": [{"id", "length", "width", "count", "price",
//	             "low": [[at, y], ...], "high": [[at, y], ...],
//	             "natural": ["low", "high"],
//	             "keep_out": [{"x", "y", "length", "width"}]}],
//	 "items":  [{"id", "length", "width", "count", "value", "rotate",
//	             "edge": "low" | "high", "end_width"}]}
//	{"name", "kind": "bars", "objective": "bars" | "cost", "kerf": 0, "depth": 0,
//	 "bars":  [{"id", "length", "count", "price"}],
//	 "items": [{"id", "length", "count", "left", "right", "turn"}]}
//
// Length runs along the grain; rotate false keeps it there. count 0 is any
// number of a stock, and of an item under the objective value, where counts are
// upper limits. stages bounds the changes of the direction of cutting, 0 is free.
// low and high give edges that are not straight, as points from left to right;
// natural names the edges that are as the tree grew. An item with an edge keeps a
// natural edge on that side of its own; it may be turned by half a turn. end_width
// is the width at the far end of an item that tapers. left and right tell how far
// the far edge of a bar's end lies to the right of its near edge, across depth.
type Instance struct {
	Name   string
	Sheets *saw.Problem
	Bars   *saw.BarProblem
}

// ReadInstance reads an instance and gives all mistakes in it.
func ReadInstance(file string, data []byte) (Instance, []Mistake) {
	r := &reader{file: file, data: data}
	var out Instance
	if n := r.parse(); n != nil {
		out = r.instance(n)
	}
	sort.SliceStable(r.mistakes, func(i, j int) bool {
		a, b := r.mistakes[i].Pos, r.mistakes[j].Pos
		return a.Line < b.Line || a.Line == b.Line && a.Column < b.Column
	})
	return out, r.mistakes
}

// form is a group of which keys are taken one by one; what is left is unknown.
type form struct {
	r     *reader
	n     *node
	what  string
	known []string
}

func (r *reader) form(n *node, what string) *form {
	if n.kind != '{' {
		r.wrong(n.at, n.called(), what+" in braces", "")
		n = &node{at: n.at, kind: '{'}
	}
	return &form{r: r, n: n, what: what}
}

func (f *form) take(key string) *node {
	f.known = append(f.known, key)
	return f.n.fields[key]
}

// end complains about keys that nobody took.
func (f *form) end() {
	for _, k := range f.n.keys {
		if slices.Contains(f.known, k) {
			continue
		}
		hint := ""
		if near := model.Nearest(k, f.known); near != "" {
			hint = fmt.Sprintf("write %q", near)
		}
		f.r.wrong(f.n.fields[k].at, fmt.Sprintf("the key %q is not known in %s", k, f.what), strings.Join(f.known, ", "), hint)
	}
}

func (f *form) text(key string, need bool) string {
	n := f.take(key)
	switch {
	case n == nil && need:
		f.missing(key)
	case n == nil:
	case n.kind == 's':
		return n.text
	case n.kind == 'n':
		return n.text
	default:
		f.r.wrong(n.at, n.called(), key+" as a text", "")
	}
	return ""
}

func (f *form) missing(key string) {
	f.r.wrong(f.n.at, fmt.Sprintf("%s has no %s", f.what, key), "the key "+key, "")
}

// number takes a number between two limits.
func (f *form) number(key string, need bool, least, most float64) float64 {
	n := f.take(key)
	if n == nil {
		if need {
			f.missing(key)
		}
		return 0
	}
	expected := fmt.Sprintf("%s as a number from %g to %g", key, least, most)
	if n.kind != 'n' {
		hint := ""
		if n.kind == 's' {
			hint = "write it without quotes"
		}
		f.r.wrong(n.at, n.called(), expected, hint)
		return 0
	}
	if n.number < least || n.number > most {
		f.r.wrong(n.at, n.called(), expected, "")
		return 0
	}
	return n.number
}

func (f *form) length(key string, need bool, least, most float64) unit.Length {
	return unit.Length(f.number(key, need, least, most))
}

func (f *form) count(key string) int {
	at := f.n.fields[key]
	v := f.number(key, false, 0, mostCount)
	if v != float64(int(v)) {
		f.r.wrong(at.at, at.called(), key+" as a whole number", "")
	}
	return int(v)
}

func (f *form) flag(key string) bool {
	n := f.take(key)
	if n == nil {
		return false
	}
	if n.kind != 'b' {
		f.r.wrong(n.at, n.called(), key+" as true or false", "")
	}
	return n.flag
}

func (f *form) word(key string, need bool, words ...string) string {
	n := f.take(key)
	if n == nil {
		if need {
			f.missing(key)
		}
		return ""
	}
	if n.kind == 's' && slices.Contains(words, n.text) {
		return n.text
	}
	hint := ""
	if near := model.Nearest(n.text, words); near != "" && n.kind == 's' {
		hint = fmt.Sprintf("write %q", near)
	}
	f.r.wrong(n.at, n.called(), key+" as one of "+strings.Join(words, ", "), hint)
	return ""
}

// list calls do for each member of a list.
func (f *form) list(key string, need bool, most int, do func(n *node)) {
	n := f.take(key)
	switch {
	case n == nil && need:
		f.missing(key)
	case n == nil:
	case n.kind != '[':
		f.r.wrong(n.at, n.called(), key+" as a list in brackets", "")
	case len(n.list) == 0 && need:
		f.r.wrong(n.at, key+" is empty", "at least one", "")
	case len(n.list) > most:
		f.r.wrong(n.at, fmt.Sprintf("%s has %d members", key, len(n.list)), fmt.Sprintf("at most %d", most), "")
	default:
		for _, c := range n.list {
			do(c)
		}
	}
}

// Limits of an instance.
const (
	mostKinds  = 500
	mostCount  = 10000
	mostLength = 100_000
	mostPrice  = 1e9
)

func (r *reader) instance(n *node) Instance {
	f := r.form(n, "an instance")
	out := Instance{Name: f.text("name", false)}
	switch f.word("kind", true, "sheets", "bars") {
	case "sheets":
		out.Sheets = r.sheets(f)
	case "bars":
		out.Bars = r.bars(f)
	default:
		return out
	}
	f.end()
	return out
}

func (r *reader) ids(what string) func(n *node, id string) {
	seen := map[string]bool{}
	return func(n *node, id string) {
		if id != "" && seen[id] {
			r.wrong(n.at, fmt.Sprintf("there are two %s %q", what, id), "a name of its own for each", "")
		}
		seen[id] = true
	}
}

func (r *reader) bars(f *form) *saw.BarProblem {
	p := &saw.BarProblem{Aim: saw.Fewest}
	if f.word("objective", true, "bars", "cost") == "cost" {
		p.Aim = saw.LeastCost
	}
	p.Kerf = f.length("kerf", false, 0, 100)
	p.Depth = f.length("depth", false, 0, 10000)
	once := r.ids("bars")
	f.list("bars", true, mostKinds, func(n *node) {
		b := r.form(n, "a bar")
		p.Bars = append(p.Bars, saw.Bar{ID: b.text("id", true), Length: b.length("length", true, 0.001, mostLength), Count: b.count("count"), Price: b.number("price", false, 0, mostPrice)})
		once(n, p.Bars[len(p.Bars)-1].ID)
		b.end()
	})
	once = r.ids("items")
	f.list("items", true, mostKinds, func(n *node) {
		i := r.form(n, "an item")
		p.Pieces = append(p.Pieces, saw.Piece{ID: i.text("id", true), Length: i.length("length", true, 0.001, mostLength), Count: i.count("count"),
			Left: i.length("left", false, -mostLength, mostLength), Right: i.length("right", false, -mostLength, mostLength), Turn: i.flag("turn")})
		it := p.Pieces[len(p.Pieces)-1]
		once(n, it.ID)
		if it.Length > 0 && it.Length+it.Right-it.Left <= 0 {
			r.wrong(n.at, fmt.Sprintf("the slants of item %s leave nothing of its far edge", it.ID), "left and right so that length + right - left is above 0", "")
		}
		i.end()
	})
	r.wanted(f, !slices.ContainsFunc(p.Pieces, func(x saw.Piece) bool { return x.Count > 0 }))
	return p
}

// wanted complains where every count is 0.
func (r *reader) wanted(f *form, nothing bool) {
	if items := f.n.fields["items"]; nothing && items != nil && len(items.list) > 0 {
		r.wrong(items.at, "no item is wanted, every count is 0", "the key count in at least one item", "")
	}
}
