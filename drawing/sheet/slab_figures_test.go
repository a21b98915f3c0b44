package sheet

import (
	"math"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/presets"
)

// A joiner proves a slab square by its two diagonals: each carries its own figure
// away from the other's, not in one line with it, and no number of a corner stands so
// near a figure that both read as one. All slabs of all presets.
func TestDiagonalsAndCornersReadApart(t *testing.T) {
	pairs, corners := 0, 0
	for _, preset := range presets.All() {
		for _, p := range slabSheets(newMaker(roomBuild(t, preset.Name, "A3", nil))) {
			for _, top := range groupsNamed(p.sheet.Items, "top-face") {
				if top.ID != "top-face" {
					continue
				}
				var slanting, upright []drawing.Text
				for _, x := range lettering(top.Items) {
					if math.Abs(math.Sin(2*float64(x.Turn))) > 0.1 {
						slanting = append(slanting, x)
					} else {
						upright = append(upright, x)
					}
				}
				if len(slanting) == 2 {
					pairs++
					a, b := slanting[0], slanting[1]
					for range 2 {
						if off := offLine(a, middleOfText(b)); off < 4 {
							t.Errorf("%s, sheet %s: %s stands %.1f mm off the line of %s", preset.Name, p.sheet.Name, b.String, float64(off), a.String)
						}
						a, b = b, a
					}
				}
				for i, x := range upright {
					if !x.Bold || len(x.String) > 2 {
						continue
					}
					corners++
					q := x.Quad()
					for k, y := range upright {
						if o := y.Quad(); k != i && around(q[:]).Grow(2).Meets(around(o[:])) {
							t.Errorf("%s, sheet %s: corner %s is less than 2 mm from %s", preset.Name, p.sheet.Name, x.String, y.String)
						}
					}
				}
			}
		}
	}
	if pairs < 9 || corners < 36 {
		t.Errorf("only %d pairs of diagonals and %d corners looked at", pairs, corners)
	}
}

func middleOfText(x drawing.Text) geom.Vec {
	q := x.Quad()
	return q[0].Lerp(q[2], 0.5)
}

// offLine is how far a place is from the line that a text runs along.
func offLine(x drawing.Text, p geom.Vec) unit.Length {
	return abs(unit.Length(geom.V(1, 0).Turn(x.Turn).Cross(p.Sub(middleOfText(x)))))
}
