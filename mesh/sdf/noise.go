package sdf

import "math"

// noise is smooth unevenness in space, between -1 and 1: gradient noise on a
// lattice of one wave, with a second, finer and weaker octave. The same place
// always gives the same value. Method: K. Perlin, Improving Noise, SIGGRAPH
// 2002, with gradients from an integer hash.
func noise(x, y, z float64) float64 {
	v := 0.8*lattice(x, y, z) + 0.2*lattice(2.3*x+7.1, 2.3*y-3.7, 2.3*z+1.9)
	return max(-1, min(1, v))
}

func lattice(x, y, z float64) float64 {
	fx, fy, fz := math.Floor(x), math.Floor(y), math.Floor(z)
	x, y, z = x-fx, y-fy, z-fz
	u, v, w := ease(x), ease(y), ease(z)
	sum := 0.0
	for c := range 8 {
		dx, dy, dz := float64(c&1), float64(c>>1&1), float64(c>>2)
		weight := pick(u, dx) * pick(v, dy) * pick(w, dz)
		sum += weight * slope(int64(fx+dx), int64(fy+dy), int64(fz+dz), x-dx, y-dy, z-dz)
	}
	return sum
}

// ease runs from 0 to 1 with no first or second derivative at the ends.
func ease(t float64) float64 { return t * t * t * (t*(t*6-15) + 10) }

func pick(u, side float64) float64 {
	if side == 0 {
		return 1 - u
	}
	return u
}

// slope is the lattice point's own gradient, one of the twelve towards the
// edges of a cube, times the offset.
func slope(i, j, k int64, x, y, z float64) float64 {
	h := uint64(i)*0x9E3779B97F4A7C15 ^ uint64(j)*0xC2B2AE3D27D4EB4F ^ uint64(k)*0x165667B19E3779F9
	h ^= h >> 32
	h *= 0xD6E8FEB86659FD93
	h ^= h >> 32
	a, b := x, y
	switch h % 3 {
	case 1:
		b = z
	case 2:
		a = z
	}
	if h&16 != 0 {
		a = -a
	}
	if h&32 != 0 {
		b = -b
	}
	return a + b
}
