package geom

import (
	"errors"
	"sync"

	"slabwright/model/unit"
)

// Solid is a body in space: an immutable value that may be copied and shared
// between goroutines. A solid that could not be built carries the reason; its
// measures are then all zero and Err tells why.
type Solid struct {
	err error
	at  *placed
}

// body is what all placements of a solid have in common, in its own axes.
type body struct {
	faces    []Face
	volume   unit.Volume
	centroid Vec3
	layers   func() []Layer
}

// placed is a body at its place; what follows from the place is worked out
// when it is first asked for.
type placed struct {
	*body
	pose      Pose
	faces     func() []Face
	layers    func() []Layer
	bounds    func() Box
	footprint func() Region
}

var errNoSolid = errors.New("no solid has been described")

// fault makes a solid that only carries the reason why there is none.
func fault(err error) Solid { return Solid{err: err} }

// newSolid makes a solid in its own axes. The layers are cut from the skin
// bare, which is faces or a simpler body around it.
func newSolid(faces, bare []Face, volume unit.Volume, centroid Vec3) Solid {
	b := &body{faces: faces, volume: volume, centroid: centroid}
	b.layers = sync.OnceValue(func() []Layer { return slicesOf(bare) })
	return b.place(Pose{})
}

func (b *body) place(p Pose) Solid {
	at := &placed{body: b, pose: p}
	at.faces = sync.OnceValue(func() []Face { return placeFaces(b.faces, p) })
	at.layers = sync.OnceValue(func() []Layer { return placeLayers(b.layers(), p) })
	at.bounds = sync.OnceValue(func() Box { return boundsOf(at.faces()) })
	at.footprint = sync.OnceValue(func() Region { return footprintOf(at.faces()) })
	return Solid{at: at}
}

// Err is the reason why there is no solid, nil when there is one.
func (s Solid) Err() error {
	if s.err == nil && s.at == nil {
		return errNoSolid
	}
	return s.err
}

// Place turns the solid counter-clockwise about the vertical through the
// origin of its axes, then moves that origin to p.At. Placings add up.
func (s Solid) Place(p Pose) Solid {
	if s.Err() != nil {
		return s
	}
	q := s.at.pose
	if !inReach(p.At) || !finite(unit.Length(p.Turn)) {
		return fault(errors.New("a solid can only be put at a place within 900 m of the origin"))
	}
	return s.at.place(Pose{At: p.Space(q.At), Turn: q.Turn + p.Turn})
}

// Faces is the whole skin of the solid. The slices are shared: do not change
// them.
func (s Solid) Faces() []Face {
	if s.Err() != nil {
		return nil
	}
	return s.at.faces()
}

// Volume is the exact volume of the solid as a polyhedron, from the areas of
// its sections and not from its skin. Round shapes count with their flattened
// outline.
func (s Solid) Volume() unit.Volume {
	if s.Err() != nil {
		return 0
	}
	return s.at.volume
}

// Centroid is the centre of the volume.
func (s Solid) Centroid() Vec3 {
	if s.Err() != nil {
		return Vec3{}
	}
	return s.at.pose.Space(s.at.centroid)
}

// Bounds is the axis-parallel box around the solid.
func (s Solid) Bounds() Box {
	if s.Err() != nil {
		return Box{}
	}
	return s.at.bounds()
}

// Layers is the solid as regions between heights, lowest first, none
// overlapping in height: what the distances are measured on. Upright walls are
// exact; sloping and lying round faces are bounded from outside to
// SliceTolerance. Holes bored crosswise through an upright leg are left out:
// the steel counts as whole there.
func (s Solid) Layers() []Layer {
	if s.Err() != nil {
		return nil
	}
	return s.at.layers()
}

// Footprint is the outline of the solid seen from above.
func (s Solid) Footprint() Region {
	if s.Err() != nil {
		return Region{}
	}
	return s.at.footprint()
}

func footprintOf(faces []Face) Region {
	var loops [][]pt
	for _, f := range faces {
		if f.Normal.Z < 1e-9 {
			continue
		}
		for _, loop := range f.Loops {
			at, err := fromAbove(loop)
			if err != nil {
				return faulty(err)
			}
			loops = append(loops, at)
		}
	}
	return coveredBy(loops)
}

// reach is how far from the origin bodies can be: so far that all of them fits
// on the grid.
const reach unit.Length = 0.9 * limit / perMM

// inReach tells whether places are numbers within reach.
func inReach(places ...Vec3) bool {
	for _, v := range places {
		if !(v.Len() <= reach) {
			return false
		}
	}
	return true
}

func placeFaces(in []Face, p Pose) []Face {
	if p == (Pose{}) {
		return in
	}
	out := make([]Face, len(in))
	for i, f := range in {
		g := f
		g.Loops = make([][]Vec3, len(f.Loops))
		for j, loop := range f.Loops {
			g.Loops[j] = make([]Vec3, len(loop))
			for k, v := range loop {
				g.Loops[j][k] = p.Space(v)
			}
		}
		g.Normal = f.Normal.Flat().Turn(p.Turn).Up(f.Normal.Z)
		out[i] = g
	}
	return out
}

func placeLayers(in []Layer, p Pose) []Layer {
	if p == (Pose{}) {
		return in
	}
	out := make([]Layer, len(in))
	for i, l := range in {
		out[i] = Layer{Region: l.Region.Place(p), Z0: l.Z0 + p.At.Z, Z1: l.Z1 + p.At.Z}
	}
	return out
}

func boundsOf(faces []Face) Box {
	var b Box
	first := true
	for _, f := range faces {
		for _, loop := range f.Loops {
			for _, v := range loop {
				if first {
					b, first = Box{v, v}, false
					continue
				}
				b.Min = Vec3{min(b.Min.X, v.X), min(b.Min.Y, v.Y), min(b.Min.Z, v.Z)}
				b.Max = Vec3{max(b.Max.X, v.X), max(b.Max.Y, v.Y), max(b.Max.Z, v.Z)}
			}
		}
	}
	return b
}
