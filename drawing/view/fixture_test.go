package view

import (
	"math"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// boxAt is an item with the skin of an axis-parallel box.
func boxAt(x0, y0, z0, x1, y1, z1 unit.Length) Item {
	r := geom.Rect(geom.V(x0, y0), geom.V(x1, y1))
	return Item{Faces: geom.Prism(r, z0, z1, "side").Faces()}
}

func scene(items ...Item) Scene { return Scene{items} }

// pick gives the segments of an item and kind.
func pick(v View, item int, k Kind) []Segment {
	var out []Segment
	for _, s := range v.Segments {
		if s.Item == item && s.Kind == k {
			out = append(out, s)
		}
	}
	return out
}

// total is the length of all lines together.
func total(segs []Segment) float64 {
	sum := 0.0
	for _, s := range segs {
		sum += float64(s.B.Sub(s.A).Len())
	}
	return sum
}

// wantLines checks number and total length of the lines of an item and kind.
func wantLines(t *testing.T, v View, item int, k Kind, n int, length float64) {
	t.Helper()
	segs := pick(v, item, k)
	if got := total(segs); len(segs) != n || math.Abs(got-length) > 1e-6*max(1, length) {
		t.Errorf("item %d: %d %v lines of %.6f mm together, want %d of %.6f: %v", item, len(segs), k, got, n, length, segs)
	}
}

// has tells whether there is a segment between two points, in either direction.
func has(segs []Segment, a, b geom.Vec) bool {
	near := func(p, q geom.Vec) bool { return p.Sub(q).Len() < 1e-6 }
	for _, s := range segs {
		if near(s.A, a) && near(s.B, b) || near(s.A, b) && near(s.B, a) {
			return true
		}
	}
	return false
}

// area of loops by the shoelace formula: holes run clockwise and subtract.
func area(loops [][]geom.Vec) float64 {
	sum := 0.0
	for _, l := range loops {
		for i, p := range l {
			sum += p.Cross(l[(i+1)%len(l)]) / 2
		}
	}
	return sum
}

// natural is a slab 2400 x 700 x 45 with a natural front edge of n stations
// and holes in rows.
func natural(n, holes int) geom.Solid {
	var under, over []geom.Vec
	for i := range n {
		x := 2400 * float64(i) / float64(n-1)
		y := 40*math.Sin(x/310) + 12*math.Sin(x/57) + 4*math.Sin(x/13)
		under = append(under, geom.V(unit.Length(x), unit.Length(y)))
		over = append(over, geom.V(unit.Length(x), unit.Length(y+15+5*math.Sin(x/90))))
	}
	s := geom.Slab{
		Bottom: 700, Top: 745,
		Outline: []geom.SlabEdge{
			{Name: "front", Path: under, Over: over},
			{Name: "right", Path: []geom.Vec{under[n-1], geom.V(2400, 700)}, Over: []geom.Vec{over[n-1], geom.V(2400, 700)}},
			{Name: "back", Path: []geom.Vec{geom.V(2400, 700), geom.V(0, 700)}},
			{Name: "left", Path: []geom.Vec{geom.V(0, 700), under[0]}, Over: []geom.Vec{geom.V(0, 700), over[0]}},
		},
	}
	for i := range holes {
		at := geom.V(unit.Length(30+i%50*47), unit.Length(400+i/50*200))
		s.Cuts = append(s.Cuts, geom.SlabCut{
			Name: "hole " + string(rune('a'+i%26)), Region: geom.Circle(at, 4, 0.05), From: geom.CutThrough, Depth: 45,
		})
	}
	return s.Solid()
}
