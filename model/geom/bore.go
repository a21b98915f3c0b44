package geom

import (
	"fmt"
	"math"

	"slabwright/model/unit"
)

// Bore is a round hole square into a flat face of a solid, such as one for a rod
// in the edge of a shelf. At is the middle of its mouth, Dir points into the
// material; both are in the solid's own axes. It is blind, or goes Through to the
// flat face that lies opposite and is as deep as that is far.
type Bore struct {
	Name    string
	At      Vec3
	Dir     Vec3
	Dia     unit.Length
	Depth   unit.Length
	Chord   unit.Length
	Through bool
}

// Bored is the solid with bores in it. A bore must start in one flat face,
// keep inside it, and meet nothing else on its way; one that goes through must end
// in one flat face as well. Clearances look at the
// solid without its bores: they take it as fuller than it is.
func (s Solid) Bored(bores ...Bore) Solid {
	if s.Err() != nil || len(bores) == 0 {
		return s
	}
	b := s.at.body
	faces := append([]Face(nil), b.faces...)
	volume := b.volume
	moment := b.centroid.Mul(float64(volume))
	for _, x := range bores {
		if x.Through {
			x.Depth = x.opposite(faces)
		}
		more, v, err := x.into(faces)
		if err != nil {
			return fault(fmt.Errorf("%s: %w", quoted("bore", x.Name), err))
		}
		faces = more
		volume -= v
		moment = moment.Sub(x.At.Add(x.Dir.Unit().Mul(float64(x.Depth) / 2)).Mul(float64(v)))
	}
	out := &body{faces: faces, volume: volume, centroid: moment.Mul(1 / float64(volume)), layers: b.layers}
	return out.place(s.at.pose)
}

// into cuts the bore into the face that it starts from and gives all faces.
func (x Bore) into(faces []Face) ([]Face, unit.Volume, error) {
	if !(x.Dia > 0) || !(x.Depth > 0) || !(x.Chord > 0) || !finite(x.Dia, x.Depth, x.Chord) {
		return nil, 0, fmt.Errorf("Ø%.4g x %.4g mm cannot be bored", float64(x.Dia), float64(x.Depth))
	}
	dir := x.Dir.Unit()
	u := Vec3{Z: 1}
	if math.Abs(float64(dir.Z)) > 0.9 {
		u = Vec3{X: 1}
	}
	u = u.Sub(dir.Mul(u.Dot(dir))).Unit()
	v := dir.Cross(u)
	mouth := make([]Vec3, 0, 32)
	for _, p := range Circle(V(0, 0), x.Dia/2, x.Chord).Loops()[0] {
		mouth = append(mouth, x.At.Add(u.Mul(float64(p.X))).Add(v.Mul(float64(p.Y))))
	}
	entry := -1
	var level []int // faces in the plane of the mouth
	for i, f := range faces {
		if f.Normal.Dot(dir) < -1+1e-9 && math.Abs(f.Loops[0][0].Sub(x.At).Dot(dir)) < flush {
			level = append(level, i)
			if x.inside(f, u, v) {
				entry = i
			}
		}
	}
	if entry < 0 {
		faces, entry = x.acrossSeam(faces, level, u, v)
	}
	if entry < 0 {
		return nil, 0, fmt.Errorf("its mouth Ø%.4g at (%.1f, %.1f, %.1f) does not lie within one flat face", float64(x.Dia), float64(x.At.X), float64(x.At.Y), float64(x.At.Z))
	}
	foot := make([]Vec3, len(mouth))
	for i, p := range mouth {
		foot[i] = p.Add(dir.Mul(float64(x.Depth)))
	}
	exit := -1
	if x.Through {
		far := x
		far.At, far.Dir = x.At.Add(dir.Mul(float64(x.Depth))), dir.Mul(-1)
		for i, f := range faces {
			if f.Normal.Dot(dir) > 1-1e-9 && math.Abs(f.Loops[0][0].Sub(far.At).Dot(dir)) < flush && far.inside(f, u, v) {
				exit = i
			}
		}
		if exit < 0 {
			return nil, 0, fmt.Errorf("its end Ø%.4g at (%.1f, %.1f, %.1f) does not lie within one flat face", float64(x.Dia), float64(far.At.X), float64(far.At.Y), float64(far.At.Z))
		}
	}
	if hit := x.meets(faces, entry, exit, u, v, append(append([]Vec3(nil), mouth...), foot...)); hit != "" {
		return nil, 0, fmt.Errorf("it meets %s on its way", hit)
	}
	out := append([]Face(nil), faces...)
	f := out[entry]
	// Seen along the bore the mouth runs counter-clockwise, seen from outside
	// clockwise: that is how a hole runs.
	f.Loops = append(append([][]Vec3(nil), f.Loops...), mouth)
	out[entry] = f
	n := len(mouth)
	floor := make([]Vec3, n)
	for i := range mouth {
		j := (i + 1) % n
		q := []Vec3{mouth[j], mouth[i], foot[i], foot[j]}
		out = append(out, Face{Loops: [][]Vec3{q}, Normal: q[1].Sub(q[0]).Cross(q[2].Sub(q[1])).Unit(), Surface: x.Name, Curved: true})
		floor[n-1-i] = foot[i]
	}
	if exit >= 0 {
		out[exit].Loops = append(append([][]Vec3(nil), out[exit].Loops...), floor)
	} else {
		out = append(out, Face{Loops: [][]Vec3{floor}, Normal: dir.Mul(-1), Surface: x.Name + " floor"})
	}
	area := Circle(V(0, 0), x.Dia/2, x.Chord).Area()
	return out, unit.Volume(float64(area) * float64(x.Depth)), nil
}

// opposite is how far it is to the flat face opposite the mouth, 0 if there is none.
func (x Bore) opposite(faces []Face) unit.Length {
	dir := x.Dir.Unit()
	var out unit.Length
	for _, f := range faces {
		if f.Normal.Dot(dir) > 1-1e-9 {
			out = max(out, unit.Length(f.Loops[0][0].Sub(x.At).Dot(dir)))
		}
	}
	return out
}

// acrossSeam looks for two faces in one plane that share a side, such as the halves
// of an end beside a natural edge, which the grid leaves a hair out of plane. It
// makes one face of them if the mouth lies within; -1 if it does not.
func (x Bore) acrossSeam(faces []Face, level []int, u, v Vec3) ([]Face, int) {
	for _, i := range level {
		for _, j := range level {
			f, g := faces[i], faces[j]
			loop := sewn(f.Loops[0], g.Loops[0])
			if i >= j || f.Surface != g.Surface || loop == nil {
				continue
			}
			one := f
			one.Loops = append(append([][]Vec3{loop}, f.Loops[1:]...), g.Loops[1:]...)
			if !x.inside(one, u, v) {
				continue
			}
			out := append([]Face(nil), faces...)
			out[i] = one
			return append(out[:j], out[j+1:]...), i
		}
	}
	return faces, -1
}

// sewn is the outline of two loops along the one side that they share; nil if they
// share none.
func sewn(a, b []Vec3) []Vec3 {
	for i := range a {
		p, q := a[i], a[(i+1)%len(a)]
		for k := range b {
			if b[k] != q || b[(k+1)%len(b)] != p {
				continue
			}
			var out []Vec3
			for n := range a {
				out = append(out, a[(i+1+n)%len(a)])
			}
			for n := 2; n < len(b); n++ {
				out = append(out, b[(k+n)%len(b)])
			}
			return out
		}
	}
	return nil
}

// inside tells whether the mouth keeps clear of the face's outlines.
func (x Bore) inside(f Face, u, v Vec3) bool {
	flat := func(p Vec3) Vec {
		d := p.Sub(x.At)
		return V(unit.Length(d.Dot(u)), unit.Length(d.Dot(v)))
	}
	var region Region
	for i, loop := range f.Loops {
		pts := make([]Vec, len(loop))
		for j, p := range loop {
			pts[j] = flat(p)
		}
		if i == 0 {
			region = Polygon(pts...)
		} else {
			region = region.Minus(Polygon(pts...))
		}
	}
	return region.DistanceTo(V(0, 0)) <= -x.Dia/2-0.01
}

// meets names the first face in whose box the bore lies, besides those in which it
// starts and ends. Boxes stand square to the bore.
func (x Bore) meets(faces []Face, entry, exit int, u, v Vec3, pts []Vec3) string {
	dir := x.Dir.Unit()
	turned := func(list []Vec3) []Vec3 {
		out := make([]Vec3, len(list))
		for i, p := range list {
			out[i] = Vec3{unit.Length(p.Dot(u)), unit.Length(p.Dot(v)), unit.Length(p.Dot(dir))}
		}
		return out
	}
	box := boxOf(turned(pts))
	for i, f := range faces {
		if i == entry || i == exit {
			continue
		}
		b := boxOf(turned(f.Loops[0]))
		if b.Min.X < box.Max.X && b.Max.X > box.Min.X && b.Min.Y < box.Max.Y && b.Max.Y > box.Min.Y && b.Min.Z < box.Max.Z && b.Max.Z > box.Min.Z+flush {
			return f.Surface
		}
	}
	return ""
}

// flush is how far faces that lie in one plane may differ on the grid, mm.
const flush = 2e-3

func boxOf(pts []Vec3) Box {
	b := Box{pts[0], pts[0]}
	for _, p := range pts[1:] {
		b.Min = Vec3{min(b.Min.X, p.X), min(b.Min.Y, p.Y), min(b.Min.Z, p.Z)}
		b.Max = Vec3{max(b.Max.X, p.X), max(b.Max.Y, p.Y), max(b.Max.Z, p.Z)}
	}
	return b
}
