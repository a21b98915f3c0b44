package geom

import "slabwright/model/unit"

// measure gives volume and centroid of the bar, in the axes of the work. The
// length is a linear function over the section, so that volume and moments
// follow from the moments of the section up to the second degree; the holes
// are taken off by Simpson's rule over their depth, which is exact for them.
func (w *barWork) measure() (unit.Volume, Vec3) {
	var pts []Vec
	for _, c := range w.section {
		pts = append(pts, c.at)
	}
	m := sectionMoments(pts)
	l := float64(w.Length)
	// from = -(ks y + ms z), to = l + ke y + me z
	ks, ms := float64(tan(w.Start.Plan)), float64(tan(w.Start.Slope))
	ke, me := float64(tan(w.End.Plan)), float64(tan(w.End.Slope))
	k, n := ks+ke, ms+me
	v := l*m.a + k*m.y + n*m.z
	y := l*m.y + k*m.yy + n*m.yz
	z := l*m.z + k*m.yz + n*m.zz
	x := (l*l*m.a + 2*l*(ke*m.y+me*m.z) +
		(ke*ke-ks*ks)*m.yy + 2*(ke*me-ks*ms)*m.yz + (me*me-ms*ms)*m.zz) / 2
	for i := range w.bored {
		h := &w.bored[i]
		for d := 0; d+1 < len(h.depths); d++ {
			for s, weight := range [3]float64{1, 4, 1} {
				t := float64(s) / 2
				loop := make([]Vec, len(h.loops[d]))
				o := h.loops[d][0]
				for j, p := range h.loops[d] {
					loop[j] = p.Lerp(h.loops[d+1][j], t).Sub(o)
				}
				area, sx, sy := moments(loop)
				depth := h.depths[d] + (h.depths[d+1]-h.depths[d])*unit.Length(t)
				k := weight / 6 * float64(h.depths[d+1]-h.depths[d])
				at := h.point(o.Add(V(unit.Length(sx/area), unit.Length(sy/area))), depth)
				v -= k * area
				x -= k * area * float64(at.X)
				y -= k * area * float64(at.Y)
				z -= k * area * float64(at.Z)
			}
		}
	}
	return unit.Volume(v), Vec3{unit.Length(x / v), unit.Length(y / v), unit.Length(z / v)}
}

// areaMoments are the integrals of 1, y, z, y2, yz and z2 over a section.
type areaMoments struct{ a, y, z, yy, yz, zz float64 }

func sectionMoments(pts []Vec) areaMoments {
	var m areaMoments
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		c := p.Cross(q)
		py, pz, qy, qz := float64(p.X), float64(p.Y), float64(q.X), float64(q.Y)
		m.a += c / 2
		m.y += c * (py + qy) / 6
		m.z += c * (pz + qz) / 6
		m.yy += c * (py*py + py*qy + qy*qy) / 12
		m.zz += c * (pz*pz + pz*qz + qz*qz) / 12
		m.yz += c * (py*qz + 2*py*pz + 2*qy*qz + qy*pz) / 24
	}
	return m
}
