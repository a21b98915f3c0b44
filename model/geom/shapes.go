package geom

import (
	"fmt"
	"math"

	"slabwright/model/unit"
)

// Polygon is the region inside a closed polygon, in either direction. Where
// the polygon crosses itself, all places it winds around count as inside. A
// polygon without area is empty. Points that are not numbers or lie more than
// 1 km from the origin give a fault.
func Polygon(pts ...Vec) Region {
	loop := make([]pt, len(pts))
	for i, v := range pts {
		p, err := snap(v)
		if err != nil {
			return faulty(fmt.Errorf("polygon: %w", err))
		}
		loop[i] = p
	}
	return fromRaw([][]pt{loop}, nonZero)
}

// Rect is the upright rectangle with the opposite corners a and b.
func Rect(a, b Vec) Region { return Polygon(a, V(b.X, a.Y), b, V(a.X, b.Y)) }

// Circle is a disc as a regular polygon of the same area as the circle, so
// that volumes come out true; its outline leaves the circle by at most chord
// to either side. The number of corners is a multiple of four. r and chord
// must be positive numbers.
func Circle(c Vec, r, chord unit.Length) Region {
	if err := checkRadius(r, chord); err != nil {
		return faulty(fmt.Errorf("circle: %w", err))
	}
	half := math.Acos(max(1-finest(chord)/float64(r), math.Sqrt2/2))
	n := 4 * math.Ceil(math.Pi/half/4)
	step := 2 * math.Pi / n
	out := float64(r) * math.Sqrt(step/math.Sin(step))
	var pts []Vec
	for i := range int(n) {
		pts = append(pts, c.Add(V(unit.Length(out), 0).Turn(unit.Angle(float64(i)*step))))
	}
	return Polygon(pts...)
}

// Slot is all that lies within half the width of the segment from a to b. Its
// round ends lie outside the true arcs by at most chord.
func Slot(a, b Vec, width, chord unit.Length) Region {
	if err := checkPath(width/2, chord, a, b); err != nil {
		return faulty(fmt.Errorf("slot: %w", err))
	}
	if a == b {
		return Circle(a, width/2, chord)
	}
	d := b.Sub(a).Unit()
	pts := join(b, d, d.Mul(-1), width/2, chord)
	return Polygon(append(pts, join(a, d.Mul(-1), d, width/2, chord)...)...)
}

// Strip is a band of the given width along an open path, as a cutter leaves
// it: round at the bends, square at both ends. The rounds lie outside the true
// arcs by at most chord. A path that ends where it starts is joined there.
func Strip(path []Vec, width, chord unit.Length) Region {
	if err := checkPath(width/2, chord, path...); err != nil {
		return faulty(fmt.Errorf("strip: %w", err))
	}
	var nodes []Vec
	for _, v := range path {
		if len(nodes) == 0 || v != nodes[len(nodes)-1] {
			nodes = append(nodes, v)
		}
	}
	if len(nodes) < 2 {
		return Polygon(nodes...)
	}
	var parts []Region
	closed := nodes[0] == nodes[len(nodes)-1]
	for i, b := range nodes[1:] {
		d := b.Sub(nodes[i]).Unit()
		side := d.Left().Mul(float64(width / 2))
		parts = append(parts, Polygon(nodes[i].Sub(side), b.Sub(side), b.Add(side), nodes[i].Add(side)))
		next := i + 2
		if next == len(nodes) {
			if !closed {
				break
			}
			next = 1
		}
		parts = append(parts, bend(b, d, nodes[next].Sub(b).Unit(), width/2, chord))
	}
	return UnionAll(parts...)
}

// bend fills the outer side of a corner at v between the directions d and e.
func bend(v, d, e Vec, r, chord unit.Length) Region {
	if d.Cross(e) < 0 {
		d, e = e.Mul(-1), d.Mul(-1)
	}
	first, last := d.Left().Mul(-float64(r)), e.Left().Mul(-float64(r))
	pts := append([]Vec{v, v.Add(first)}, join(v, d, e, r, chord)...)
	return Polygon(append(pts, v.Add(last))...)
}

// join rounds the corner at v on the right hand side when a path turns left
// from direction d to e (unit vectors), at distance r. The points are the
// corners of a polygon around the arc, whose first and last sides run along d
// and e.
func join(v, d, e Vec, r, chord unit.Length) []Vec {
	turn := math.Atan2(max(d.Cross(e), 0), d.Dot(e)) // less than 0 is a rounding error
	half := min(math.Acos(float64(r)/(float64(r)+finest(chord))), math.Pi/4)
	n := max(math.Ceil(turn/(2*half)-1e-9), 1)
	step := turn / n
	arm := d.Left().Mul(-float64(r) / math.Cos(step/2))
	var pts []Vec
	for i := range int(n) {
		pts = append(pts, v.Add(arm.Turn(unit.Angle((float64(i)+0.5)*step))))
	}
	return pts
}

// finest keeps a chord error above half a grid step: finer is no use.
func finest(chord unit.Length) float64 { return max(float64(chord), 0.5/perMM) }

func checkRadius(r, chord unit.Length) error {
	if !(r > 0) || math.IsInf(float64(r), 1) {
		return fmt.Errorf("radius %g mm is not a positive length", float64(r))
	}
	return checkChord(chord)
}

func checkPath(r, chord unit.Length, path ...Vec) error {
	for _, v := range path {
		if _, err := snap(v); err != nil {
			return err
		}
	}
	return checkRadius(r, chord)
}

func checkChord(chord unit.Length) error {
	if !(chord > 0) || math.IsInf(float64(chord), 1) {
		return fmt.Errorf("chord error %g mm is not a positive length", float64(chord))
	}
	return nil
}
