package step

import (
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// arc is a round in a chain of sides: the corners first..last make way for it.
type arc struct {
	first, last int
	from, to    geom.Vec
	centre      geom.Vec
	radius      unit.Length
	turn        float64 // +1 counter-clockwise
}

// evenTurn is how far the corners of a flattened arc may turn unevenly, in
// radians: sides of a millimetre on a grid of a micrometre.
const evenTurn = 5e-3

// arcsOf recognises flattened arcs in a chain of sides. The kernel draws the
// rounds of rolled angles with all corners on the arc, and those of slots and
// grooves with all sides touching it, the first and the last half as long.
func arcsOf(pts []geom.Vec, closed bool) []arc {
	if !closed {
		if a, ok := inscribed(pts); ok {
			return []arc{a}
		}
	}
	n := len(pts)
	at := func(i int) geom.Vec { return pts[((i%n)+n)%n] }
	side := func(i int) geom.Vec { return at(i + 1).Sub(at(i)) } // from corner i
	turn := func(i int) float64 {
		a, b := side(i-1), side(i)
		return math.Atan2(a.Cross(b), a.Dot(b))
	}
	start, end := 1, n-1
	if closed { // begin behind the longest side, which is straight
		longest := 0
		for i := range n {
			if side(i).Len() > side(longest).Len() {
				longest = i
			}
		}
		start, end = longest+1, longest+1+n
	}
	var out []arc
	for i := start; i < end; {
		j := i
		for j+1 < end && math.Abs(turn(j+1)-turn(i)) < evenTurn && !off(side(j).Len(), side(i).Len()) {
			j++
		}
		if j-i < 2 || math.Abs(turn(i)) < 10*evenTurn {
			i++
			continue
		}
		if a, ok := circumscribed(at, i, j); ok {
			out = append(out, a)
			i = j + 1
			continue
		}
		i++
	}
	return out
}

// inscribed recognises a chain whose corners all lie on one arc.
func inscribed(pts []geom.Vec) (arc, bool) {
	n := len(pts)
	if n < 4 {
		return arc{}, false
	}
	var sum float64
	for i := 1; i < n-1; i++ {
		a, b := pts[i].Sub(pts[i-1]), pts[i+1].Sub(pts[i])
		t := math.Atan2(a.Cross(b), a.Dot(b))
		if off(a.Len(), b.Len()) || i > 1 && math.Abs(t-sum/float64(i-1)) > evenTurn {
			return arc{}, false
		}
		sum += t
	}
	angle := sum * float64(n-1) / float64(n-2)
	a := arc{first: 1, last: n - 2, from: pts[0], to: pts[n-1]}
	return a.over(angle), a.touches(pts, angle)
}

// circumscribed recognises an arc that the sides around the corners i..j touch.
func circumscribed(at func(int) geom.Vec, i, j int) (arc, bool) {
	half := at(j).Sub(at(i)).Len() // only to be overwritten
	var sum float64
	var length unit.Length
	for k := i; k <= j; k++ {
		a, b := at(k).Sub(at(k-1)), at(k+1).Sub(at(k))
		sum += math.Atan2(a.Cross(b), a.Dot(b))
		if k < j {
			length += b.Len()
		}
	}
	half = length / unit.Length(j-i) / 2
	before, after := at(i-1).Sub(at(i)), at(j+1).Sub(at(j))
	if before.Len() < half-roundness || after.Len() < half-roundness {
		return arc{}, false
	}
	a := arc{first: i, last: j, from: at(i).Add(before.Unit().Mul(float64(half))), to: at(j).Add(after.Unit().Mul(float64(half)))}
	return a.over(sum), math.Abs(sum) < 1.9*math.Pi
}

// over fills in centre and radius of an arc that turns by an angle.
func (a arc) over(angle float64) arc {
	chord := a.to.Sub(a.from)
	h := float64(chord.Len()) / 2
	a.turn = math.Copysign(1, angle)
	a.radius = unit.Length(h / math.Sin(math.Abs(angle)/2))
	a.centre = a.from.Lerp(a.to, 0.5).Add(chord.Unit().Left().Mul(h / math.Tan(angle/2)))
	return a
}

// touches tells whether all corners lie on the arc.
func (a arc) touches(pts []geom.Vec, angle float64) bool {
	b := a.over(angle)
	return !slices.ContainsFunc(pts, func(p geom.Vec) bool { return off(p.Sub(b.centre).Len(), b.radius) })
}
