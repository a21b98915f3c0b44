package geom

import (
	"fmt"
	"math"

	"slabwright/model/unit"
)

// Bore is a round blind hole square into a flat face of a solid, such as one
// for a rod in the edge of a shelf. At is the middle of its mouth, Dir points
// into the material; both are in the solid's own axes.
type Bore struct {
	Name  string
	At    Vec3
	Dir   Vec3
	Dia   unit.Length
	Depth unit.Length
	Chord unit.Length
}

// Bored is the solid with bores in it. A bore must start in one flat face,
// keep inside it, and meet nothing else on its way. Clearances look at the
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
	for i, f := range faces {
		if f.Normal.Dot(dir) < -1+1e-9 && math.Abs(f.Loops[0][0].Sub(x.At).Dot(dir)) < 2e-3 && x.inside(f, u, v) {
			entry = i
		}
	}
	if entry < 0 {
		return nil, 0, fmt.Errorf("its mouth Ø%.4g at (%.1f, %.1f, %.1f) does not lie within one flat face", float64(x.Dia), float64(x.At.X), float64(x.At.Y), float64(x.At.Z))
	}
	foot := make([]Vec3, len(mouth))
	for i, p := range mouth {
		foot[i] = p.Add(dir.Mul(float64(x.Depth)))
	}
	if hit := x.meets(faces, entry, append(append([]Vec3(nil), mouth...), foot...)); hit != "" {
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
	out = append(out, Face{Loops: [][]Vec3{floor}, Normal: dir.Mul(-1), Surface: x.Name + " floor"})
	area := Circle(V(0, 0), x.Dia/2, x.Chord).Area()
	return out, unit.Volume(float64(area) * float64(x.Depth)), nil
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

// meets names the first face in whose box the bore lies, besides its own.
func (x Bore) meets(faces []Face, entry int, pts []Vec3) string {
	box := boxOf(pts)
	for i, f := range faces {
		if i == entry {
			continue
		}
		b := boxOf(f.Loops[0])
		if b.Min.X < box.Max.X && b.Max.X > box.Min.X && b.Min.Y < box.Max.Y && b.Max.Y > box.Min.Y && b.Min.Z < box.Max.Z && b.Max.Z > box.Min.Z {
			return f.Surface
		}
	}
	return ""
}

func boxOf(pts []Vec3) Box {
	b := Box{pts[0], pts[0]}
	for _, p := range pts[1:] {
		b.Min = Vec3{min(b.Min.X, p.X), min(b.Min.Y, p.Y), min(b.Min.Z, p.Z)}
		b.Max = Vec3{max(b.Max.X, p.X), max(b.Max.Y, p.Y), max(b.Max.Z, p.Z)}
	}
	return b
}
