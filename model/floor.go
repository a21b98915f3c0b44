package model

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// FloorAt is the height of the floor below a place. One mark: the floor is
// level. Two marks, or more in a row: it slopes along them and is level across.
// Else it is the plane that fits the marks best, bent to pass through each one.
// Nowhere is it taken to be higher or lower than a mark: beyond the marks
// nobody has measured.
func (r *Room) FloorAt(at geom.Vec) unit.Length {
	var marks []geom.Vec
	var heights []float64
	low, high := math.Inf(1), math.Inf(-1)
	for _, m := range r.Floor {
		if at, ok := r.floorPlace(m); ok {
			h := float64(m.Height)
			marks, heights = append(marks, at), append(heights, h)
			low, high = min(low, h), max(high, h)
		}
	}
	if len(marks) == 0 {
		return 0
	}
	plane := fitPlane(marks, heights)
	h := plane.at(at) + bend(plane, marks, heights, at)
	return unit.Length(min(max(h, low), high))
}

// plane is a height over the plan: level at its middle plus a slope.
type plane struct {
	middle geom.Vec
	level  float64
	slope  [2]float64
}

func (p plane) at(v geom.Vec) float64 {
	d := v.Sub(p.middle)
	return p.level + p.slope[0]*float64(d.X) + p.slope[1]*float64(d.Y)
}

// thin is how much less marks may be spread across than along before they
// count as a row, which tells nothing of the slope across it.
const thin = 0.1

// fitPlane fits a plane by least squares. It works along the two directions in
// which the marks are spread most and least.
func fitPlane(marks []geom.Vec, heights []float64) plane {
	n := float64(len(marks))
	var p plane
	for i, m := range marks {
		p.middle = p.middle.Add(m.Mul(1 / n))
		p.level += heights[i] / n
	}
	var xx, xy, yy float64
	for _, m := range marks {
		d := m.Sub(p.middle)
		xx, xy, yy = xx+float64(d.X*d.X), xy+float64(d.X*d.Y), yy+float64(d.Y*d.Y)
	}
	turn := unit.Angle(math.Atan2(2*xy, xx-yy) / 2)
	along := geom.V(1, 0).Turn(turn)
	var most float64
	for i, dir := range []geom.Vec{along, along.Left()} {
		var spread, lift float64
		for j, m := range marks {
			s := m.Sub(p.middle).Dot(dir)
			spread, lift = spread+s*s, lift+s*(heights[j]-p.level)
		}
		if i == 0 {
			most = spread
		}
		if spread > 0 && spread >= thin*thin*most {
			p.slope[0] += lift / spread * float64(dir.X)
			p.slope[1] += lift / spread * float64(dir.Y)
		}
	}
	return p
}

// bend is what the plane misses at the marks, carried over to a place: near
// marks count more, by the square of their distance (Shepard's method).
func bend(p plane, marks []geom.Vec, heights []float64, at geom.Vec) float64 {
	var sum, weight float64
	for i, m := range marks {
		miss := heights[i] - p.at(m)
		d := float64(m.Sub(at).Len())
		if d < 1 {
			return miss
		}
		sum, weight = sum+miss/(d*d), weight+1/(d*d)
	}
	return sum / weight
}
