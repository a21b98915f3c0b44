package model_test

import (
	"math"
	"testing"

	"slabwright/model"
)

// TestWorkTakesItsWoodAway: volumes by hand, from a slab of 1594 x 600 x 45
// with sharp edges.
func TestWorkTakesItsWoodAway(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	at := func(x, back float64) model.At { return model.At{X: length(x), Back: length(back)} }
	for _, c := range []struct {
		name string
		work func(model.SlabPiece) model.SlabPiece
		away float64
	}{
		{"hole", func(p model.SlabPiece) model.SlabPiece { return p.Hole("a", at(300, 100), 60) }, math.Pi * 900 * 45},
		{"pocket in the underside", func(p model.SlabPiece) model.SlabPiece {
			return p.Pocket("a", model.UnderFace, at(300, 100), 200, 80, 25)
		}, 200 * 80 * 25},
		{"pocket open at the back", func(p model.SlabPiece) model.SlabPiece {
			return p.Pocket("a", model.TopFace, at(300, 0), 200, 80, 25)
		}, 200 * 80 * 25},
		{"notch at the back", func(p model.SlabPiece) model.SlabPiece { return p.CutOut("a", at(300, 0), 80, 60) }, 80 * 60 * 45},
		{"notch in the corner", func(p model.SlabPiece) model.SlabPiece { return p.CutOut("a", at(0, 0), 80, 60) }, 80 * 60 * 45},
		{"notch described past the corner", func(p model.SlabPiece) model.SlabPiece { return p.CutOut("a", at(-10, -10), 90, 70) }, 80 * 60 * 45},
		{"opening in the middle", func(p model.SlabPiece) model.SlabPiece { return p.CutOut("a", at(300, 200), 80, 60) }, 80 * 60 * 45},
		{"groove", func(p model.SlabPiece) model.SlabPiece {
			return p.Groove("a", model.UnderFace, 20, 18, at(300, 100), at(800, 100))
		}, 500 * 20 * 18},
		{"groove with a lid", func(p model.SlabPiece) model.SlabPiece {
			return p.Groove("a", model.UnderFace, 20, 18, at(300, 100), at(800, 100)).Lidded(32, 4)
		}, 500*20*18 + 500*12*4},
		{"groove with a lid, out at the back", func(p model.SlabPiece) model.SlabPiece {
			return p.Groove("a", model.UnderFace, 20, 18, at(300, 100), at(300, -40)).Lidded(32, 4)
		}, 100*20*18 + 100*12*4},
		{"groove out at the back", func(p model.SlabPiece) model.SlabPiece {
			return p.Groove("a", model.UnderFace, 20, 18, at(300, 100), at(300, -20))
		}, 100 * 20 * 18},
		// A bend is round outside with the radius of half the width, sharp inside:
		// of the square at the bend a quarter has a quarter circle instead.
		{"bent groove", func(p model.SlabPiece) model.SlabPiece {
			return p.Groove("a", model.TopFace, 20, 18, at(300, 100), at(800, 100), at(800, 400))
		}, (490*20 + 290*20 + 400 - 100 + math.Pi*25) * 18},
		{"a hole in a pocket counts once", func(p model.SlabPiece) model.SlabPiece {
			return p.Pocket("a", model.UnderFace, at(300, 100), 200, 80, 25).Hole("b", at(400, 140), 30)
		}, 200*80*25 + math.Pi*225*20},
	} {
		for _, ease := range []float64{0, 2} {
			d := model.NewDesign("desk", r)
			p := d.Add("desk", c.work(good(r).Eased(length(ease))))
			d.Add("bare", good(r).Eased(length(ease)))
			sound(t, d)
			if t.Failed() {
				t.Fatal(c.name)
			}
			// Work that meets an edge takes its chamfer along: 4 mm2 over its length.
			tolerance := c.away*2e-3 + ease*400
			near(t, c.name, float64(d.Part("bare").Volume()-p.Volume()), c.away, tolerance)
			if n := openEdges(p.Bodies[0].Solid); n > 0 {
				t.Errorf("%s: %d open edges", c.name, n)
			}
		}
	}
}
