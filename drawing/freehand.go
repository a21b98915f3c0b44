package drawing

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Break lines: teeth of the zigzag, and the waves of the hand.
const (
	toothPitch  unit.Length = 45  // one tooth about every so much
	toothHeight unit.Length = 2   // to either side
	toothWidth  unit.Length = 1.6 // from start to end
	waveHeight  unit.Length = 0.9
	waveStep    unit.Length = 1
)

// zigzag sets teeth into each straight side of a chain.
func zigzag(pts []geom.Vec) []geom.Vec {
	out := []geom.Vec{pts[0]}
	for i := 1; i < len(pts); i++ {
		a, side := pts[i-1], pts[i].Sub(pts[i-1])
		l := side.Len()
		k := min(1, float64(l/(2*toothWidth))) // teeth shrink on short sides
		along, across := side.Unit().Mul(k), side.Unit().Left().Mul(k)
		n := max(1, math.Round(float64(l/toothPitch)))
		for j := 0.5; j < n; j++ {
			m := a.Add(side.Mul(j / n))
			w, h := float64(toothWidth)/2, float64(toothHeight)
			out = append(out,
				m.Sub(along.Mul(w)),
				m.Sub(along.Mul(w/2)).Add(across.Mul(h)),
				m.Add(along.Mul(w/2)).Sub(across.Mul(h)),
				m.Add(along.Mul(w)))
		}
		out = append(out, pts[i])
	}
	return out
}

// freehand waves each side of a chain as a hand would. The wave depends only
// on where the side starts, so that a sheet comes out the same every time.
func freehand(pts []geom.Vec) []geom.Vec {
	out := []geom.Vec{pts[0]}
	for i := 1; i < len(pts); i++ {
		a, side := pts[i-1], pts[i].Sub(pts[i-1])
		l, across := side.Len(), side.Unit().Left()
		phase := float64(a.X)*0.7 + float64(a.Y)*1.3
		for s := waveStep; s < l-waveStep/2; s += waveStep {
			fade := math.Min(1, math.Min(float64(s), float64(l-s))/3)
			w := 0.6*math.Sin(float64(s)/1.9+phase) + 0.4*math.Sin(float64(s)/0.83-phase)
			out = append(out, a.Add(side.Mul(float64(s/l))).Add(across.Mul(fade*w*float64(waveHeight))))
		}
		out = append(out, pts[i])
	}
	return out
}
