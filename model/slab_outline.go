package model

import (
	"fmt"
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// side is one edge of an outline before its ends are known.
type side struct {
	name  string
	bound Bound
	gap   unit.Length
	line  geom.Line // moved by the gap; the slab is to its right
	back  bool
}

// place finds the outline: every edge is a line, moved into the room by its
// gap; the corners are where neighbouring lines meet.
func (p SlabPiece) place(d *Design, id string) (*Part, faults) {
	bad := p.faults
	if p.left == nil || p.right == nil || len(p.backs) == 0 {
		bad = bad.and(faultf("slab %q needs Between(left, right) and Against(back)", id))
	}
	if !p.topGiven {
		bad = bad.and(faultf("slab %q needs a height: SurfaceAt or UndersideAt", id))
	}
	switch {
	case !p.depthGiven && p.meets == "":
		bad = bad.and(faultf("slab %q needs a Depth, or a slab that its front is Meeting", id))
	case p.depthGiven && p.meets != "":
		bad = bad.and(faultf("slab %q has a Depth and a slab that its front is Meeting: only one of them can decide where its front is", id))
	case p.front.natural && p.meets != "":
		bad = bad.and(faultf("slab %q: a natural front cannot be Meeting another slab", id))
	}
	if p.rods != nil && p.depthGiven && p.rods.InShelf > p.depth-20 {
		bad = bad.and(fault{what: fmt.Sprintf("rods %s deep in a shelf of %s: 20 mm of wood must be left before its front", inWords(p.rods.InShelf), inWords(p.depth)), line: p.rodsLine})
	}
	if len(bad) > 0 {
		return nil, bad
	}
	sides, bad := p.sides(id)
	if len(bad) > 0 {
		return nil, bad
	}
	front, bad := p.frontSide(d, id, sides)
	if len(bad) > 0 {
		return nil, bad
	}
	sides = append(sides, front)
	corners, bad := meetAll(id, sides)
	if len(bad) > 0 {
		return nil, bad
	}
	return p.part(id, sides, corners)
}

// sides gives the left side, the back edges and the right side.
func (p SlabPiece) sides(id string) ([]side, faults) {
	var bad faults
	var out []side
	z0, z1 := p.top-p.thickness, p.top
	add := func(name string, from Bounder, left, back bool) {
		b := boundOf(from)
		if len(b.faults) > 0 {
			bad = bad.and(b.faults...)
			return
		}
		gap := p.sideGap
		if back {
			gap = p.backGap
		}
		if b.Kind != ToWall {
			gap = 0
		}
		if b.gapGiven {
			gap = b.gap
		}
		out = append(out, side{name: name, bound: b, gap: gap, line: b.at(z0, z1, left).Shift(-gap), back: back})
	}
	add("left", p.left, true, false)
	for i, b := range p.backs {
		name := "back"
		if len(p.backs) > 1 {
			name = fmt.Sprintf("back %d", i+1)
		}
		add(name, b, true, true)
	}
	add("right", p.right, false, false)
	for i := 1; i < len(out); i++ {
		if a, b := out[i-1], out[i]; a.bound.Wall != nil && a.bound.Wall == b.bound.Wall {
			bad = bad.and(faultf("slab %q: its edges %s and %s follow the same wall %q", id, a.name, b.name, a.bound.Name))
		}
	}
	return out, bad
}

// frontSide is the front edge: parallel to the straight line over the back
// edges at the depth, or along the back edge of the slab that it meets.
func (p SlabPiece) frontSide(d *Design, id string, sides []side) (side, faults) {
	if p.meets != "" {
		other, bad := d.slab(p.meets)
		if bad != nil {
			return side{}, bad
		}
		e := other.Slab.referenceEdge()
		l := geom.Through(other.Slab.Pose.Plan(e.End), other.Slab.Pose.Plan(e.Start)) // reversed: we lie on its other side
		b := Bound{Kind: ToPart, Name: p.meets, Part: p.meets, Edge: e.Name}
		return side{name: "front", bound: b, gap: p.meetGap, line: l.Shift(-p.meetGap)}, nil
	}
	n := len(sides)
	a, okA := meet(sides[0], sides[1])
	b, okB := meet(sides[n-2], sides[n-1])
	for _, e := range []struct {
		ok         bool
		side, back string
	}{{okA, "left", sides[1].bound.Name}, {okB, "right", sides[n-2].bound.Name}} {
		if !e.ok {
			return side{}, faults{faultf("slab %q: its %s bound runs parallel to its back at %q, so they do not meet", id, e.side, e.back)}
		}
	}
	if b.Sub(a).Dot(sides[1].line.D.Unit().Add(sides[n-2].line.D.Unit())) <= 0 {
		return side{}, faults{nothingLeft(id, "back")}
	}
	// Seen along this line, from right to left, the slab lies to the right;
	// the front is as far to the left of it as the slab is deep.
	return side{name: "front", bound: Bound{Kind: ToAir, Name: "front"}, line: geom.Through(b, a).Shift(p.depth)}, nil
}

// meet is where one side ends and the next begins. Two sides that run almost
// straight on (under 3 degrees) meet beside the corner of the room that they
// share, where their lines would run past each other; two that run back beside
// each other do not meet.
func meet(a, b side) (geom.Vec, bool) {
	if turn := math.Abs(a.line.D.Unit().Cross(b.line.D.Unit())); turn < math.Sin(3*math.Pi/180) {
		if a.line.D.Dot(b.line.D) < 0 {
			return geom.Vec{}, false
		}
		c := b.line.P
		p := a.line.P.Add(a.line.D.Unit().Mul(float64(a.line.Along(c))))
		return p.Lerp(c, 0.5), true
	}
	return a.line.Meet(b.line)
}

// meetAll gives the outline's corners: corner i is where side i begins. An edge
// that would run backwards means that the walls leave no room for the slab.
func meetAll(id string, sides []side) ([]geom.Vec, faults) {
	n := len(sides)
	corners := make([]geom.Vec, n)
	for i := range sides {
		c, ok := meet(sides[(i+n-1)%n], sides[i])
		if !ok {
			return nil, faults{faultf("slab %q: edges %s and %s run parallel and do not meet", id, sides[(i+n-1)%n].name, sides[i].name)}
		}
		corners[i] = c
	}
	for i, s := range sides {
		if along := corners[(i+1)%n].Sub(corners[i]).Dot(s.line.D); along <= 0 {
			return nil, faults{nothingLeft(id, s.name)}
		}
	}
	return corners, nil
}

func nothingLeft(id, edge string) fault {
	return faultf("slab %q: nothing is left of its %s edge between its neighbours; the gaps or the depth are larger than the space", id, edge)
}

// part puts the outline into the slab's own axes.
func (p SlabPiece) part(id string, sides []side, corners []geom.Vec) (*Part, faults) {
	n := len(sides)
	ref := 1
	for i, s := range sides {
		if s.back && corners[(i+1)%n].Sub(corners[i]).Len() > corners[(ref+1)%n].Sub(corners[ref]).Len() {
			ref = i
		}
	}
	dir := corners[(ref+1)%n].Sub(corners[ref])
	pose := geom.Pose{At: corners[ref].Up(p.top - p.thickness), Turn: dir.Angle()}
	sp := &SlabPart{Species: p.species, Thickness: p.thickness, Top: p.top, Pose: pose}
	for i, s := range sides {
		e := Edge{Name: s.name, Bound: s.bound.Kind, To: s.bound.Name, Gap: s.gap, Reference: i == ref, Ease: p.ease,
			Start: pose.Unplan(corners[i]), End: pose.Unplan(corners[(i+1)%n])}
		if s.name == "front" && p.front.natural {
			e.Natural, e.Ease = p.front.stations, 0
			e.Waney = true
		}
		sp.Edges = append(sp.Edges, e)
		sp.Corners = append(sp.Corners, fmt.Sprint(i+1))
	}
	if p.front.natural { // its sawn edges meet the bark sharp, and lie against walls
		for i := range sp.Edges {
			sp.Edges[i].Ease = 0
		}
	}
	bad := p.placeWork(sp)
	part := &Part{Kind: p.kind, Material: p.species.Name, Slab: sp}
	for _, s := range sides {
		if s.bound.Kind == ToPart {
			part.Bears = append(part.Bears, s.bound.Part)
		}
	}
	return part, bad
}

// chord is the tolerance at which arcs become polygons in booleans.
const chord unit.Length = 0.05

func (s *SlabPart) referenceEdge() Edge {
	for _, e := range s.Edges {
		if e.Reference {
			return e
		}
	}
	return s.Edges[0]
}

// Front gives the front edge.
func (s *SlabPart) Front() Edge { return s.Edges[len(s.Edges)-1] }
