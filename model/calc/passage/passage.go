// Package passage tells what long flat things pass: doors, corners of corridors,
// stairs, boxes such as lifts and cars. A thing is a box: long, wide, thick.
//
// Basis: closed forms from elementary geometry, each checked against a second
// method; a rectangle askew in a rectangle: Carver 1957, from memory, verified by
// direct maximisation.
package passage

import (
	"math"

	"slabwright/model/unit"
)

// RoundCorner is the longest panel of a width that goes round a right-angled
// corner, from a way a wide to one b wide, 0 if it is too wide for either. One
// that need not turn may be longer where one of the ways takes its length.
func RoundCorner(a, b, width unit.Length) unit.Length {
	if width > min(a, b) {
		return 0
	}
	free := func(u float64) float64 {
		s, c := math.Sincos(u)
		return (float64(a)*s + float64(b)*c - float64(width)) / (s * c)
	}
	lo, hi := 1e-6, math.Pi/2-1e-6 // the free length has one minimum
	for range 200 {
		x, y := lo+(hi-lo)/3, hi-(hi-lo)/3
		if free(x) < free(y) {
			hi = y
		} else {
			lo = x
		}
	}
	return unit.Length(max(free((lo+hi)/2), 0))
}

// Askew tells how much is left, across, of a rectangle a x b round another, p x q,
// that may lie askew in it; negative if it does not fit. Both in any order.
func Askew(p, q, a, b unit.Length) unit.Length {
	p, q = max(p, q), min(p, q)
	a, b = max(a, b), min(a, b)
	if p <= a {
		return min(a-p, b-q)
	}
	P, Q, A := float64(p), float64(q), float64(a)
	need := (2*P*Q*A + (P*P-Q*Q)*math.Sqrt(P*P+Q*Q-A*A)) / (P*P + Q*Q)
	return b - max(q, unit.Length(need))
}

// StairHeight is the clear height square to a stair of a headroom, measured
// plumb, and a pitch: what limits a panel that is carried on edge.
func StairHeight(headroom unit.Length, pitch unit.Angle) unit.Length {
	return headroom * unit.Length(math.Cos(float64(pitch)))
}

// InBox tells how much is left of a box round a thing that lies in it straight, or
// tilted with its long edge in one of the three planes; negative if none will do.
func InBox(thing, box [3]unit.Length) unit.Length {
	best := unit.Length(math.Inf(-1))
	for _, order := range [][3]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}} {
		l, w, t := thing[order[0]], thing[order[1]], thing[order[2]]
		for k := range 3 { // t across, the other two in the plane
			best = max(best, min(box[k]-t, Askew(l, w, box[(k+1)%3], box[(k+2)%3])))
		}
	}
	return best
}
