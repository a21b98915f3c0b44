package dim

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Thirty running dimensions within 400 mm at 1:10, that is 1.4 mm apart on
// paper with lettering 2.5 high: each value once, in order, none touching
// another or an extension line.
func TestThirtyRunningDimensions(t *testing.T) {
	for _, style := range []Style{Wood, Steel} {
		for _, dir := range []Direction{Horizontal, Vertical} {
			sc := drawing.Scale{Paper: 1, Real: 10}
			var pts []geom.Vec
			for i := range 30 {
				d := unit.Length(20 + 400*i/29)
				pts = append(pts, geom.V(d, d))
			}
			body := drawing.Box(120, 120, 44, 44)
			p := Plate{
				Origin: body.Min, Scale: sc, Body: body, Style: style, Frame: drawing.A2.Space(),
				Drawn: []drawing.Item{drawing.Outline(body.Corners(), style.Lines.Outline())},
			}
			want := []Request{
				Running{Datum: geom.V(0, 0), From: "A", Points: pts, Dir: dir},
				Linear{A: geom.V(0, 0), B: geom.V(440, 440), Dir: dir},
			}
			items, rep := Place(p, want)
			if !rep.Clean() {
				t.Errorf("troubles %v", rep.Troubles)
			}
			for _, c := range drawing.Overlaps(p.sheet(drawing.A2, items)) {
				t.Error(c)
			}
			values := slices.DeleteFunc(sortOut(items).texts, func(x drawing.Text) bool { return x.Height != drawing.Small })
			if len(values) != 31 {
				t.Fatalf("%d values of 2.5 mm, want 30 and the datum", len(values))
			}
			for i, x := range values[2:] {
				if step := x.At.Sub(values[i+1].At); max(abs(step.X), abs(step.Y)) < 3 {
					t.Errorf("%q stands %v from %q", x.String, step, values[i+1].String)
				}
			}
		}
	}
}

// The shifts of beads are the least squares solution: the conditions of Karush,
// Kuhn and Tucker hold. With multipliers p(i), the sums of the shifts of beads
// 0..i taken negative, all p are >= 0, the last is 0, and p(i) is 0 where beads
// i and i+1 do not touch.
func TestThreadIsLeastSquares(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		list := make([]bead, 1+r.IntN(30))
		for i := range list {
			list[i] = bead{unit.Length(r.Float64() * 60), unit.Length(0.5 + 4*r.Float64()), 0.5 + r.Float64(), i}
		}
		slices.SortFunc(list, func(a, b bead) int {
			if a.want < b.want {
				return -1
			}
			return 1
		})
		x := thread(list)
		p := 0.0
		for i, b := range list {
			p -= b.weight * float64(x[i]-b.want)
			if p < -1e-9 {
				t.Fatalf("multiplier %d is %v", i, p)
			}
			if i+1 == len(list) {
				if math.Abs(p) > 1e-9 {
					t.Fatalf("the shifts do not balance: %v", p)
				}
				break
			}
			gap := float64(x[i+1] - x[i] - (b.room+list[i+1].room)/2)
			if gap < -1e-9 {
				t.Fatalf("beads %d and %d overlap by %v", i, i+1, -gap)
			}
			if gap > 1e-6 && p > 1e-6 {
				t.Fatalf("beads %d and %d push each other over a gap of %v", i, i+1, gap)
			}
		}
	}
}

// Values never stand on a line that passes between them.
func TestSpreadKeepsOffBarriers(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		e := &entry{}
		u := unit.Length(0)
		for range 2 + r.IntN(12) {
			e.u = append(e.u, u)
			e.texts = append(e.texts, newBlock(3.5, "123"))
			u += unit.Length(0.5 + 12*r.Float64())
		}
		var barriers []bead
		for range r.IntN(8) {
			barriers = append(barriers, barrierAt(unit.Length(r.Float64())*u, 0))
		}
		f := e.spread(&Wood, barriers)
		for i, x := range f.x {
			for _, b := range barriers {
				if d := abs(x - b.want); d < f.height/2+0.3 {
					t.Fatalf("value %d at %v lies on the barrier at %v", i, x, b.want)
				}
			}
			if i > 0 && x-f.x[i-1] < f.height*1.2 {
				t.Fatalf("values %d and %d are %v apart", i-1, i, x-f.x[i-1])
			}
		}
	}
}
