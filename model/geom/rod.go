package geom

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"slabwright/model/unit"
)

// Rod is a round bar between the middles of its two ends, in any direction. It
// is a prism over a regular polygon with the area of the circle, whose corners
// lie outside the circle and whose sides inside by at most chord. Its faces
// are called side, end 1 (at a) and end 2.
func Rod(a, b Vec3, radius, chord unit.Length) Solid {
	axis := b.Sub(a)
	length := float64(axis.Len())
	if err := checkRadius(radius, chord); err != nil {
		return fault(fmt.Errorf("rod: %w", err))
	}
	if !inReach(a, b) || radius > reach {
		return fault(errors.New("rod: it must lie within 900 m of the origin"))
	}
	if !(length > 1.0/perMM) || radius < 1.0/perMM {
		return fault(errors.New("rod: it is too short or too thin"))
	}
	half := math.Acos(max(1-finest(chord)/float64(radius), math.Sqrt2/2))
	n := int(4 * math.Ceil(math.Pi/half/4))
	step := 2 * math.Pi / float64(n)
	out := float64(radius) * math.Sqrt(step/math.Sin(step))
	// u, v and the axis are a right-handed frame; u is level.
	d := axis.Unit()
	u := Vec3{1, 0, 0}
	if d.Flat() != (Vec{}) {
		u = d.Flat().Unit().Left().Up(0)
	}
	v := d.Cross(u)
	start, end := make([]Vec3, n), make([]Vec3, n)
	for i := range n {
		s, c := math.Sincos(float64(i) * step)
		start[i] = a.Add(u.Mul(out * c)).Add(v.Mul(out * s))
		end[i] = start[i].Add(axis)
	}
	var faces []Face
	for i := range n {
		j := (i + 1) % n
		faces = append(faces, newFace("side", true, []Vec3{start[i], start[j], end[j], end[i]}))
	}
	faces = append(faces, newFace("end 2", false, slices.Clone(end)))
	slices.Reverse(start)
	faces = append(faces, newFace("end 1", false, start))
	area := float64(n) / 2 * out * out * math.Sin(step)
	return newSolid(faces, faces, unit.Volume(area*length), a.Add(axis.Mul(0.5)))
}
