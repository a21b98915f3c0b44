package sit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
	"slabwright/model/wire"
)

// Thing is something near the legs: how far it is from the box that it comes
// nearest to, negative when it reaches into it by so much.
type Thing struct {
	Name     string
	Part     string // empty for a wall and what is on it, and for a cable
	Wall     string
	Box      BoxKind
	Distance unit.Length
	At       geom.Vec3
}

// Side is how much room there is to one side of the middle of the seat, between
// the floor and the top of the thighs, as deep as the knees.
type Side struct {
	Free unit.Length
	Name string // what ends it; empty: nothing within reach
	Part string
	Wall string
}

// Widest is how far to each side it is looked for something.
const Widest unit.Length = 2 * unit.M

// piece is a body that legs can meet. Pieces of one group are named together:
// the nearest stands for all.
type piece struct {
	name, group string
	part, wall  string
	slab        bool
	solid       geom.Solid
}

// Heads of fixings below the steel, with their washers.
const (
	washer     unit.Length = 2  // common practice, no source
	anchorHead unit.Length = 10 // hexagon head 0.7 d (ISO 4017, from memory) and a washer
)

// pieces gathers all that legs can meet.
func pieces(d *model.Design, w wire.Plan) []piece {
	var out []piece
	for _, p := range d.Parts {
		switch {
		case len(p.Bodies) == 0:
		case p.Slab != nil:
			b := p.Bounds()
			out = append(out, piece{name: p.ID, group: p.ID, part: p.ID, slab: true, solid: geom.Prism(p.Outline(), b.Min.Z, b.Max.Z, p.ID)})
		default:
			out = append(out, bodies(p)...)
		}
		if p.Bracket() != nil && len(p.Bodies) > 0 {
			out = append(out, heads(p)...)
		}
	}
	for _, wall := range d.Room.Walls {
		out = append(out, wallPiece(wall))
		for _, o := range wall.Obstacles {
			if o.Depth > 0 {
				out = append(out, piece{name: o.Name, group: o.Name, wall: wall.Name, solid: o.Solid()})
			}
		}
	}
	return append(out, cables(w)...)
}

func bodies(p *model.Part) []piece {
	var out []piece
	for _, b := range p.Bodies {
		x := piece{name: p.ID, group: p.ID, part: p.ID, solid: b.Solid}
		if strings.HasPrefix(b.Name, "castor") {
			x.name, x.group = fmt.Sprintf("a castor of %s", p.ID), p.ID+" castors"
		}
		out = append(out, x)
	}
	return out
}

// heads are the screws and anchors of a bracket, as far as they stand out of it.
func heads(p *model.Part) []piece {
	b := p.Bracket()
	a, pose := b.On(), b.Pose()
	var stand, under unit.Length // where the heads of anchors lie off the wall, those of screws below the seat
	up := false
	switch {
	case p.Angle != nil:
		stand, under, up = p.Angle.Section.Thickness, p.Angle.Section.Thickness, p.Angle.LegUp
	case p.Cleat != nil:
		stand, under = p.Cleat.Wide, p.Cleat.High
	}
	var out []piece
	for _, h := range a.Holes {
		x := piece{name: fmt.Sprintf("screw %s in %s", h.Name, p.ID), group: p.ID + " " + string(h.Leg), part: p.ID}
		if h.Leg == model.SeatLeg {
			head := stock.Screw6
			x.solid = geom.Cylinder(pose.Plan(geom.V(h.X, -h.FromHeel)), head.Head/2, a.Seat-under-head.HeadHeight-washer, a.Seat-under, 0.5, x.name)
		} else {
			if up {
				continue // behind the slab
			}
			z := b.HeightOf(h)
			half := stock.Anchor10.Washer / 2
			box := geom.Polygon(pose.Plan(geom.V(h.X-half, -stand-anchorHead)), pose.Plan(geom.V(h.X+half, -stand-anchorHead)), pose.Plan(geom.V(h.X+half, -stand)), pose.Plan(geom.V(h.X-half, -stand)))
			x.name = fmt.Sprintf("anchor %s in %s", h.Name, p.ID)
			x.solid = geom.Prism(box, z-half, z+half, x.name)
		}
		out = append(out, x)
	}
	return out
}

// wallPiece is the inside of a wall behind its face, as far as it comes into
// the room below a table.
func wallPiece(w *model.Wall) piece {
	const deep, high unit.Length = 300, 1000
	l := w.Hull(0, high)
	d := l.D.Unit()
	a, b, out := l.P, l.P.Add(d.Mul(float64(w.Length()))), d.Left().Mul(float64(deep))
	return piece{name: fmt.Sprintf("the wall %s", w.Name), group: "wall " + w.Name, wall: w.Name, solid: geom.Prism(geom.Polygon(a, b, b.Add(out), a.Add(out)), -high, high, w.Name)}
}

// cables are those that hang below a slab or run on a wall, one piece for each
// straight stretch.
func cables(w wire.Plan) []piece {
	var out []piece
	for _, r := range w.Runs {
		for i, p := range r.Pieces {
			if !r.Found || p.Kind != wire.UnderSlab && p.Kind != wire.AlongEdge && p.Kind != wire.OnWall {
				continue
			}
			a, b := r.Points[i], r.Points[i+1]
			x := piece{name: fmt.Sprintf("the cable %s", r.Cable.Name), group: "cable " + r.Cable.Name}
			low, high := min(a.Z, b.Z)-r.Cable.Dia, max(a.Z, b.Z)
			if b.Flat().Sub(a.Flat()).Len() > 1 {
				x.solid = geom.Prism(geom.Strip([]geom.Vec{a.Flat(), b.Flat()}, r.Cable.Dia, 0.5), low, high, x.name)
			} else {
				x.solid = geom.Cylinder(a.Flat(), r.Cable.Dia/2, low, high, 0.5, x.name)
			}
			out = append(out, x)
		}
	}
	return out
}

// look finds everything near the boxes, and what ends the room to both sides.
func (s *Sitter) look(all []piece) {
	best := map[string]Thing{}
	var order []string
	for _, p := range all {
		if p.solid.Err() != nil {
			continue
		}
		for _, b := range s.Boxes {
			least := Near
			group := p.group
			if b.Kind == Foot { // feet are drawn back: they count apart
				group += ", feet"
			}
			t, known := best[group]
			if known {
				least = t.Distance
			}
			if b.solid.Bounds().Gap(p.solid.Bounds()) > max(0, least) {
				continue
			}
			g := geom.Clearance(b.solid, p.solid)
			if g.Err != nil || g.Distance >= least {
				continue
			}
			if !known {
				order = append(order, group)
			}
			best[group] = Thing{Name: p.name, Part: p.part, Wall: p.wall, Box: b.Kind, Distance: g.Distance, At: g.B}
		}
	}
	for _, group := range order {
		s.Things = append(s.Things, best[group])
	}
	slices.SortStableFunc(s.Things, func(a, b Thing) int { return cmp.Compare(a.Distance, b.Distance) })
	s.Left, s.Right = Side{Free: Widest}, Side{Free: Widest}
	for _, p := range all {
		s.beside(p)
	}
}

// beside shortens the room to the sides by a piece.
func (s *Sitter) beside(p piece) {
	thigh := s.Boxes[0]
	box := p.solid.Bounds()
	low, high := s.Floor, s.Floor+thigh.High
	strip := geom.Polygon(s.At(-Widest, thigh.Near), s.At(Widest, thigh.Near), s.At(Widest, thigh.Far), s.At(-Widest, thigh.Far))
	a, b := strip.Bounds()
	if p.slab || p.solid.Err() != nil || box.Gap(geom.Box{Min: a.Up(low), Max: b.Up(high)}) > 0 {
		return
	}
	for _, l := range p.solid.Layers() {
		if l.Z1 <= low || l.Z0 >= high {
			continue
		}
		for _, r := range l.Region.Intersect(strip).Pieces() {
			left, right := unit.Length(math.Inf(1)), unit.Length(math.Inf(-1))
			for _, loop := range r.Loops() {
				for _, v := range loop {
					x, _ := s.From(v)
					left, right = min(left, x), max(right, x)
				}
			}
			if (left+right)/2 < 0 {
				s.Left = s.Left.shortened(-right, p)
			} else {
				s.Right = s.Right.shortened(left, p)
			}
		}
	}
}

func (x Side) shortened(to unit.Length, p piece) Side {
	if to = max(to, 0); to < x.Free-0.01 {
		return Side{Free: to, Name: p.name, Part: p.part, Wall: p.wall}
	}
	return x
}
