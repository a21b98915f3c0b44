package cmd

import (
	"iter"
	"math"
	"slices"
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/sheet"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/presets"
)

// ruled are the lines of one set of dimensions, told apart by what stands on
// them: a dimension line carries terminators along itself, an extension line
// passes through terminators of a line that is square to it.
type ruled struct {
	dims       []dimLine
	extensions [][2]geom.Vec
}

type dimLine struct {
	a, b    geom.Vec
	at      []geom.Vec // of its terminators
	running bool
}

// readRuled reads the lines of a group, which carries no remark of what they
// are.
func readRuled(items []drawing.Item) ruled {
	var lines [][2]geom.Vec
	var marks []drawing.Mark
	for _, it := range items {
		switch x := it.(type) {
		case drawing.Polyline:
			if len(x.Points) == 2 && !x.Closed {
				lines = append(lines, [2]geom.Vec{x.Points[0], x.Points[1]})
			}
		case drawing.Mark:
			marks = append(marks, x)
		}
	}
	var out ruled
	var rest [][2]geom.Vec
	for _, l := range lines {
		d := dimLine{a: l[0], b: l[1]}
		way := l[1].Sub(l[0]).Unit()
		for _, m := range marks {
			near := drawing.OriginSize/2 + 0.05 // a running line begins at the ring around its datum
			if m.Kind != drawing.Origin {
				near = 0.05
			}
			if math.Abs(m.Dir.Unit().Cross(way)) < 0.01 && offLine(l, m.At) < near {
				d.at = append(d.at, m.At)
				d.running = d.running || m.Kind == drawing.Origin
			}
		}
		if len(d.at) > 1 {
			out.dims = append(out.dims, d)
		} else {
			rest = append(rest, l)
		}
	}
	for _, l := range rest {
		if out.carries(l) {
			out.extensions = append(out.extensions, l)
		}
	}
	return out
}

// carries tells whether a line passes through a terminator of a dimension line,
// square to it.
func (r ruled) carries(l [2]geom.Vec) bool {
	return slices.ContainsFunc(r.dims, func(d dimLine) bool { return d.extendedBy(l) })
}

func (d dimLine) extendedBy(l [2]geom.Vec) bool {
	square := math.Abs(l[1].Sub(l[0]).Unit().Dot(d.b.Sub(d.a).Unit())) < 0.01
	return square && slices.ContainsFunc(d.at, func(p geom.Vec) bool { return offLine(l, p) < 0.1 })
}

func offLine(l [2]geom.Vec, p geom.Vec) unit.Length {
	d := l[1].Sub(l[0])
	t := min(1, max(0, p.Sub(l[0]).Dot(d)/d.Dot(d)))
	return p.Sub(l[0].Lerp(l[1], t)).Len()
}

// crossings is where extension lines cross dimension lines beside their
// terminators.
type crossings struct {
	around  int // lines around the view
	running int // running ones
	tails   int // what a line too short for its arrows goes on beyond them
	through int // lines through the view, from feature to feature, without extension lines of their own
}

func (r ruled) crossings() crossings {
	var c crossings
	for _, d := range r.dims {
		own := slices.ContainsFunc(r.extensions, d.extendedBy)
		for _, e := range r.extensions {
			p, ok := crossing(e[0], e[1], d.a, d.b)
			switch {
			case !ok || at(d.at, p):
			case d.running:
				c.running++
			case !own:
				c.through++
			case d.beyond(p):
				c.tails++
			default:
				c.around++
			}
		}
	}
	return c
}

// beyond tells whether a place on a dimension line lies outside its terminators.
func (d dimLine) beyond(p geom.Vec) bool {
	way := d.b.Sub(d.a)
	here := p.Dot(way)
	low, high := math.Inf(1), math.Inf(-1)
	for _, q := range d.at {
		low, high = math.Min(low, q.Dot(way)), math.Max(high, q.Dot(way))
	}
	return here < low || here > high
}

func at(list []geom.Vec, p geom.Vec) bool {
	for _, q := range list {
		if q.Sub(p).Len() < 0.5 {
			return true
		}
	}
	return false
}

// crossing is where two pieces of lines cross; ends that only touch do not.
func crossing(a, b, c, d geom.Vec) (geom.Vec, bool) {
	u, v := b.Sub(a), d.Sub(c)
	k := u.Cross(v)
	if math.Abs(k) < 1e-9 {
		return geom.Vec{}, false
	}
	s, t := c.Sub(a).Cross(v)/k, c.Sub(a).Cross(u)/k
	inside := func(x float64, l unit.Length) bool { return x*float64(l) > 0.05 && (1-x)*float64(l) > 0.05 }
	return a.Lerp(b, s), inside(s, u.Len()) && inside(t, v.Len())
}

// Extension lines cross no dimension line around a view (rows by size: UK
// teaching text on dimensioning, as in package dim). What no order of rows
// avoids is little: the outer arrow of a short line reaches over the next
// feature, and features inside a view lie behind the lines that run through it,
// as the corners of a roll-out table behind a clear width.
func TestExtensionLinesCrossNoDimensionLines(t *testing.T) {
	const mostTails, mostThrough = 1, 2 // on one picture
	for _, p := range presets.All() {
		for _, paper := range []string{"A3", "A4"} {
			t.Run(p.Name+" "+paper, func(t *testing.T) {
				t.Parallel()
				_, b := presetBuild(t, p, paper)
				sheets, err := sheet.Set(b)
				if err != nil {
					t.Fatal(err)
				}
				dims, extensions := 0, 0
				for _, s := range sheets {
					for id, items := range pictures(s.Items, "") {
						r := readRuled(items)
						dims, extensions = dims+len(r.dims), extensions+len(r.extensions)
						if c := r.crossings(); c.around > 0 || c.running > 0 || c.tails > mostTails || c.through > mostThrough {
							t.Errorf("sheet %s, %s: extension lines cross dimension lines: %+v", s.Name, id, c)
						}
					}
				}
				if dims < 60 || extensions < dims {
					t.Errorf("only %d dimension lines and %d extension lines found", dims, extensions)
				}
			})
		}
	}
}

// pictures gives every group with its own items.
func pictures(items []drawing.Item, id string) iter.Seq2[string, []drawing.Item] {
	return func(yield func(string, []drawing.Item) bool) {
		if !yield(id, items) {
			return
		}
		for _, it := range items {
			if g, ok := it.(drawing.Group); ok {
				for k, v := range pictures(g.Items, g.ID) {
					if !yield(k, v) {
						return
					}
				}
			}
		}
	}
}
