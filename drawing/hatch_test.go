package drawing_test

import (
	"math"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

var everyMaterial = []drawing.Material{
	drawing.Plain, drawing.Steel, drawing.Masonry, drawing.Aerated, drawing.Concrete,
	drawing.StudWall, drawing.Plaster, drawing.EndGrain, drawing.LongGrain, drawing.SheetBoard,
}

// star is a region with a hole, reflex corners and an edge along the hatch.
func star() [][]geom.Vec {
	outer := []geom.Vec{{X: 10, Y: 10}, {X: 90, Y: 10}, {X: 60, Y: 40}, {X: 95, Y: 70}, {X: 50, Y: 60}, {X: 12, Y: 88}, {X: 30, Y: 45}}
	return [][]geom.Vec{outer, drawing.Box(38, 30, 12, 9).Corners()}
}

func inside(loops [][]geom.Vec, p geom.Vec) bool {
	in := false
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
				in = !in
			}
		}
	}
	return in
}

// toEdge is the distance of a point from the nearest side.
func toEdge(loops [][]geom.Vec, p geom.Vec) unit.Length {
	best := unit.Length(math.Inf(1))
	for _, l := range loops {
		for i, a := range l {
			d := l[(i+1)%len(l)].Sub(a)
			k := min(1, max(0, p.Sub(a).Dot(d)/d.Dot(d)))
			best = min(best, p.Sub(a.Add(d.Mul(k))).Len())
		}
	}
	return best
}

// Every hatch line lies inside the region and outside the texts, tested point
// by point with the even-odd rule.
func TestHatchStaysInside(t *testing.T) {
	text := drawing.Write(geom.V(40, 50), "ash", 5, drawing.Middle).Along(30 * unit.Degree)
	q := text.Quad()
	box := [][]geom.Vec{q[:]}
	for _, m := range everyMaterial {
		loops := star()
		k := plot(drawing.Hatch{Loops: loops, Pattern: drawing.Pattern{Material: m, Turn: 0.1}}, text)
		slack := unit.Length(1e-6)
		if m == drawing.EndGrain || m == drawing.LongGrain {
			slack = 0.06 // bent lines are cut at sides taken in steps of 1 mm
		}
		for _, l := range k.lines {
			for i := 1; i < len(l.chain); i++ {
				for s := 0.0; s <= 1; s += 0.125 {
					p := l.chain[i-1].Lerp(l.chain[i], s)
					if !inside(loops, p) && toEdge(loops, p) > slack {
						t.Fatalf("%v: %v is %v outside", m, p, toEdge(loops, p))
					}
					if inside(box, p) || toEdge(box, p) < 0.6 {
						t.Fatalf("%v: %v runs into the text", m, p)
					}
				}
			}
		}
	}
}

// Cavalieri: the lengths of parallel lines times their distance make the area.
func TestHatchCoversTheArea(t *testing.T) {
	loops := star()
	var area float64
	for _, l := range loops {
		sum := 0.0
		for i, p := range l {
			sum += p.Cross(l[(i+1)%len(l)]) / 2
		}
		if area == 0 {
			area = math.Abs(sum)
		} else {
			area -= math.Abs(sum)
		}
	}
	for turn := unit.Angle(0); turn < 3; turn += 0.37 {
		const pitch = 1.4
		k := plot(drawing.Hatch{Loops: loops, Pattern: drawing.Pattern{Pitch: pitch, Turn: turn}})
		var sum float64
		for _, l := range k.lines {
			sum += float64(l.chain[1].Sub(l.chain[0]).Len())
		}
		if math.Abs(sum*pitch/area-1) > 0.01 {
			t.Errorf("turned by %v: lines make %v, the area is %v", turn, sum*pitch, area)
		}
	}
}

// Parallel lines are never closer than 0.7 clear (ISO 128-2, found), and the
// pitch lies between 1.5 and 6 (teaching page on hatching).
func TestHatchPitch(t *testing.T) {
	for _, asked := range []unit.Length{0, 0.1, 3} {
		for _, side := range []unit.Length{3, 20, 200} {
			box := [][]geom.Vec{drawing.Box(0, 0, 4*side, side).Corners()}
			for _, m := range []drawing.Material{drawing.Plain, drawing.Steel, drawing.Masonry, drawing.SheetBoard} {
				k := plot(drawing.Hatch{Loops: box, Pattern: drawing.Pattern{Material: m, Pitch: asked}})
				var at []float64
				for _, l := range k.lines {
					line := geom.Through(l.chain[0], l.chain[1])
					at = append(at, float64(line.Side(geom.V(0, 0))))
				}
				for i := range at {
					for j := range i {
						if d := math.Abs(at[i] - at[j]); d > 1e-6 && d-0.25 < 0.7-1e-9 {
							t.Fatalf("%v of side %v, pitch %v: lines %v apart", m, side, asked, d)
						}
					}
				}
				if asked == 0 && m == drawing.Plain {
					if step := math.Abs(at[1] - at[0]); step < 1.5-1e-9 || step > 6+1e-9 {
						t.Errorf("side %v: pitch %v", side, step)
					}
				}
			}
		}
	}
}

// Two hatches turned by a quarter run square to each other, as neighbouring
// parts must; moving a part takes its hatch along.
func TestHatchTurnsAndMoves(t *testing.T) {
	box := [][]geom.Vec{drawing.Box(0, 0, 30, 30).Corners()}
	h := drawing.Hatch{Loops: box, Pattern: drawing.Pattern{}}
	a := plot(h).lines
	h.Pattern.Turn = 90 * unit.Degree
	b := plot(h).lines
	u, v := a[0].chain[1].Sub(a[0].chain[0]).Unit(), b[0].chain[1].Sub(b[0].chain[0]).Unit()
	if math.Abs(u.Dot(v)) > 1e-9 {
		t.Errorf("directions %v and %v", u, v)
	}
	by := geom.V(7.3, 1.9)
	h.Pattern.Turn = 0
	moved := plot(drawing.Move([]drawing.Item{h}, by)...).lines
	if len(moved) != len(a) || moved[3].chain[0].Sub(a[3].chain[0]).Sub(by).Len() > 1e-9 {
		t.Error("the hatch does not move with its part")
	}
}
