package step

import (
	"math"

	"slabwright/model/geom"
)

// volume of a hull by the divergence theorem: a third of the flux of the place
// vector through its faces. Flat faces count with the true areas under their
// arcs, round ones by Simpson's rule round the axis.
func (h *hull) volume() float64 {
	var sum float64
	for _, f := range h.flats {
		if f.gone {
			continue
		}
		at := h.nodes[f.loops[0][0].node]
		for _, l := range f.loops {
			sum += h.area(l, f.normal) * at.Dot(f.normal)
		}
	}
	for _, t := range h.tubes {
		sum += h.flux(t)
	}
	return sum / 3
}

// area inside a loop, counter-clockwise about a normal: its polygon and what
// lies between each bend and its chord.
func (h *hull) area(l loop, normal geom.Vec3) float64 {
	var sum float64
	o := h.nodes[l[0].node]
	for i, s := range l {
		a, b := h.nodes[s.node].Sub(o), h.nodes[l.next(i)].Sub(o)
		sum += a.Cross(b).Dot(normal) / 2
		if !s.bent {
			continue
		}
		t := h.tubes[s.bend.tube]
		m := t.rim[s.bend.rim]
		r, angle := float64(t.radius[s.bend.rim]), h.sweep(t, s.bend.rim)
		segment := r * r / 2 * (angle - math.Sin(angle)) / math.Abs(m.normal.Dot(t.dir))
		if s.bend.forward != (m.normal.Dot(normal) > 0) {
			segment = -segment
		}
		sum += segment
	}
	return sum
}

// sweep is the angle of a rim about the axis.
func (h *hull) sweep(t tube, k int) float64 {
	m := t.rim[k]
	if m.from == m.to {
		return 2 * math.Pi
	}
	f := frameOf(t.at, t.dir)
	a, b := f.flat(h.nodes[m.from]), f.flat(h.nodes[m.to])
	turn := math.Copysign(1, m.normal.Dot(t.dir))
	angle := math.Atan2(turn*a.Cross(b), a.Dot(b))
	if angle < 0 {
		angle += 2 * math.Pi
	}
	return angle
}

// flux of the place vector through a round face.
func (h *hull) flux(t tube) float64 {
	const steps = 240
	f := frameOf(t.at, t.dir)
	turn := math.Copysign(1, t.rim[0].normal.Dot(t.dir))
	start := f.flat(h.nodes[t.rim[0].from]).Angle()
	sweep := h.sweep(t, 0)
	at := func(k int, a float64) geom.Vec3 {
		sin, cos := math.Sincos(a)
		rho := f.u.Mul(cos).Add(f.v.Mul(sin))
		p := t.at.Add(rho.Mul(float64(t.radius[k])))
		m := t.rim[k]
		return p.Add(t.dir.Mul(m.centre.Sub(p).Dot(m.normal) / t.dir.Dot(m.normal)))
	}
	// The integrand over the ruling at an angle, by Simpson's rule; derivatives
	// by the angle from the places themselves.
	ruling := func(a float64) float64 {
		const d = 1e-5
		var sum float64
		p0, p1 := at(0, a), at(1, a)
		d0, d1 := at(0, a+d).Sub(at(0, a-d)).Mul(0.5/d), at(1, a+d).Sub(at(1, a-d)).Mul(0.5/d)
		for i, w := range [3]float64{1, 4, 1} {
			s := float64(i) / 2
			x := p0.Add(p1.Sub(p0).Mul(s))
			dx := d0.Add(d1.Sub(d0).Mul(s))
			sum += w / 6 * x.Dot(dx.Cross(p1.Sub(p0)))
		}
		return sum
	}
	var sum float64
	for i := 0; i <= steps; i++ {
		w := 2.0
		if i == 0 || i == steps {
			w = 1
		} else if i%2 == 1 {
			w = 4
		}
		sum += w * ruling(float64(start)+turn*sweep*float64(i)/steps)
	}
	return turn * sum * sweep / steps / 3
}
