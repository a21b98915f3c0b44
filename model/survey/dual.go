package survey

import "math"

// slots is how many coordinates and bows a single reading may depend on: six
// points and two bows.
const slots = 14

// dual is a number with its derivatives by the variables of a reading, so that
// every kind of reading is written once and its derivatives follow.
type dual struct {
	v float64
	d [slots]float64
}

func number(v float64) dual { return dual{v: v} }

func variable(v float64, slot int) dual {
	x := dual{v: v}
	x.d[slot] = 1
	return x
}

// chain gives f(a, b) from its value and its two partial derivatives.
func chain(v float64, a dual, fa float64, b dual, fb float64) dual {
	out := dual{v: v}
	for i := range out.d {
		out.d[i] = fa*a.d[i] + fb*b.d[i]
	}
	return out
}

func (a dual) add(b dual) dual      { return chain(a.v+b.v, a, 1, b, 1) }
func (a dual) sub(b dual) dual      { return chain(a.v-b.v, a, 1, b, -1) }
func (a dual) mul(b dual) dual      { return chain(a.v*b.v, a, b.v, b, a.v) }
func (a dual) div(b dual) dual      { return chain(a.v/b.v, a, 1/b.v, b, -a.v/(b.v*b.v)) }
func (a dual) times(k float64) dual { return chain(k*a.v, a, k, dual{}, 0) }

// atan2 is the angle of the direction (x, y).
func atan2(y, x dual) dual {
	r := y.v*y.v + x.v*x.v
	return chain(math.Atan2(y.v, x.v), y, x.v/r, x, -y.v/r)
}

// plane is a point or direction in the plane.
type plane struct{ x, y dual }

func (p plane) add(q plane) plane  { return plane{p.x.add(q.x), p.y.add(q.y)} }
func (p plane) sub(q plane) plane  { return plane{p.x.sub(q.x), p.y.sub(q.y)} }
func (p plane) scale(k dual) plane { return plane{p.x.mul(k), p.y.mul(k)} }
func (p plane) right() plane       { return plane{p.y, p.x.times(-1)} }
func (p plane) dot(q plane) dual   { return p.x.mul(q.x).add(p.y.mul(q.y)) }
func (p plane) cross(q plane) dual { return p.x.mul(q.y).sub(p.y.mul(q.x)) }
func (p plane) unit() plane        { l := p.len(); return plane{p.x.div(l), p.y.div(l)} }
func (p plane) len() dual {
	l := math.Sqrt(p.x.v*p.x.v + p.y.v*p.y.v)
	return chain(l, p.x, p.x.v/l, p.y, p.y.v/l)
}
