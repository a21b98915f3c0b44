package hold

import (
	"math"

	"slabwright/model/calc/plate"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Contour is a set of lines of equal deflection, in the room.
type Contour struct {
	Down  unit.Length
	Lines [][]geom.Vec
}

// mostContours is how many lines of different deflection are drawn at most.
const mostContours = 5

// contours draws the deflections of a case at even steps of 1, 2 or 5 times a
// power of ten.
func (b *bench) contours(res *plate.Result) []Contour {
	_, lowest := res.Lowest(0)
	step := evenStep(lowest / mostContours)
	var out []Contour
	for k := 1; k <= mostContours && step*unit.Length(k) < lowest; k++ {
		c := Contour{Down: step * unit.Length(k)}
		for _, l := range res.Contour(0, c.Down) {
			line := make([]geom.Vec, len(l))
			for i, v := range l {
				line[i] = b.part.Slab.Pose.Plan(v)
			}
			c.Lines = append(c.Lines, line)
		}
		if len(c.Lines) > 0 { // the lowest place may lie between the nodes of the mesh
			out = append(out, c)
		}
	}
	return out
}

// evenStep is the next of 1, 2, 5, 10 ... that is at least as large, in
// hundredths of a millimetre and more.
func evenStep(least unit.Length) unit.Length {
	power := unit.Length(math.Pow(10, math.Floor(math.Log10(math.Max(float64(least), 0.01)))))
	for _, k := range []unit.Length{1, 2, 5} {
		if k*power >= least {
			return k * power
		}
	}
	return 10 * power
}
