package model

import (
	"fmt"

	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// CleatPiece describes a wooden cleat screwed to a wall under a slab: a planed
// batten on which the slab rests. It is an immutable value.
type CleatPiece struct {
	species    stock.Species
	wide, high unit.Length
	wall       *Wall
	under      string
	freeEnd    unit.Length
	clear      unit.Length
	fastened
	faults faults
}

// CleatPart is the making of a cleat: a batten with its grain along the wall. In
// its own axes x runs along its upper back arris from the left end as seen from
// the room, facing the wall.
type CleatPart struct {
	Mounted
	Species    stock.Species
	Wide, High unit.Length // from the wall into the room; from its seat down
}

// Cleat is a cleat of a wood: how far it stands out from the wall, and how high
// it is.
func Cleat(wood stock.Species, wide, high unit.Length) CleatPiece {
	p := CleatPiece{species: wood, wide: wide, high: high, clear: 3, freeEnd: 20}
	p.faults = p.faults.within("width of the cleat, out from the wall", wide, 15, 150).within("height of the cleat", high, 20, 250)
	return p
}

// Along puts the back of the cleat on a wall.
func (p CleatPiece) Along(w *Wall) CleatPiece {
	p.wall = w
	p.faults = p.faults.and(w.bound().faults...)
	return p
}

// Under lets the cleat carry a slab that is already in the design; it runs as far
// along the wall as the slab does.
func (p CleatPiece) Under(slab string) CleatPiece {
	p.under = slab
	return p
}

// FreeEnd keeps an end that meets no corner back from the slab's edge.
func (p CleatPiece) FreeEnd(l unit.Length) CleatPiece {
	p.freeEnd = l
	p.faults = p.faults.within("set-back of a free end", l, 0, 2000)
	return p
}

// ClearOf sets each end back from its corner until it clears, by the gap, the
// brackets that are already in the design there and the neighbouring wall.
func (p CleatPiece) ClearOf(gap unit.Length) CleatPiece {
	p.clear = gap
	p.faults = p.faults.within("gap between cleats in a corner", gap, 0, 200)
	return p
}

// Anchored drills the cleat for wall anchors; holes give way to studs, keep-outs
// and ends.
func (p CleatPiece) Anchored(a Anchors) CleatPiece {
	p.anchors, p.anchorsLine = &a, callLine()
	p.faults = a.within(p.faults)
	return p
}

// ScrewedUp drills the cleat for screws from below into the slab, and the pilot
// holes into the slab's underside.
func (p CleatPiece) ScrewedUp(s Screws) CleatPiece {
	p.screws, p.screwsLine = &s, callLine()
	p.faults = s.within(p.faults)
	return p
}

func (p CleatPiece) place(d *Design, id string) (*Part, faults) {
	bad := p.faults
	if p.wall == nil {
		bad = bad.and(faultf("cleat %q needs a wall: Along(room.Wall(...))", id))
	}
	if p.under == "" {
		bad = bad.and(faultf("cleat %q needs a slab to carry: Under(...)", id))
	}
	if len(bad) > 0 {
		return nil, bad
	}
	slab, bad := d.slab(p.under)
	if bad != nil {
		return nil, bad
	}
	r, ok := d.runOn(p.wall, slab, p.wide/2)
	if !ok {
		return nil, faults{faultf("slab %q does not reach the wall %q, so a cleat there carries nothing", p.under, p.wall.Name)}
	}
	c := &CleatPart{Mounted: Mounted{Wall: p.wall, Seat: slab.Slab.Top - slab.Slab.Thickness, Under: p.under}, Species: p.species, Wide: p.wide, High: p.high}
	c.Left.SetBack, c.Right.SetBack = d.cornerEnds(r, c, p.clear, p.freeEnd)
	c.Start = r.start + c.Left.SetBack
	c.Length = wholeDown(r.end - c.Right.SetBack - c.Start)
	c.Right.SetBack = r.end - c.Start - c.Length
	if !(c.Length >= 2*p.wide) {
		return nil, faults{faultf("cleat %q would be %s long: too short to be fixed; leave it out", id, inWords(max(c.Length, 0)))}
	}
	part := &Part{Kind: KindCleat, Material: p.species.Name, Cleat: c, Bears: []string{p.under, p.wall.Name}}
	if told, ok := d.cutOf(id); ok {
		part.Cut, bad = c.cutTo(told, r)
	}
	bad = bad.and(p.drill(slab, id, part)...)
	part.build(id)
	return part, bad
}

// drill places the anchors and the screws.
func (p CleatPiece) drill(slab *Part, id string, part *Part) (bad faults) {
	c := part.Cleat
	if p.anchors != nil {
		line := p.anchorLine()
		if wrong := offWood(line, p.anchors.Hole, p.high); wrong != "" {
			bad = bad.and(fault{what: "a hole for wall anchors " + wrong, line: p.anchorsLine})
		} else {
			p.anchor(part, line)
		}
	}
	if p.screws != nil {
		line := c.screwLine()
		if wrong := offWood(line, p.screws.Hole, p.wide); wrong != "" {
			return bad.and(fault{what: "a hole for screws " + wrong, line: p.screwsLine})
		}
		bad = bad.and(p.screwUp(slab, id, part, line)...)
	}
	return bad
}

// anchorLine is how far the wall anchors stand below the seat: at half the height,
// and further down where the slab would split off what is above them.
func (p CleatPiece) anchorLine() unit.Length {
	a, _ := stock.AnchorThrough(p.anchors.Hole)
	return max(round(p.high/2), min(loadedEdge*a.Bolt, round(p.high-unloadedEdge*a.Bolt)))
}

// Distances of a bolt from the edge towards which it presses and from the other
// one, in its diameters: EN 1995-1-1 table 8.4, load across the grain, from memory.
const (
	loadedEdge   = 4
	unloadedEdge = 3
)

// screwLine is how far the screws stand from the wall: nearer to the front, so that
// the gap at the wall leaves wood between screw and edge.
func (c *CleatPart) screwLine() unit.Length { return max(round(c.Wide/2), c.Wide-15) }

// besideHole is the wood that stays beside a hole of a cleat at least.
const besideHole unit.Length = 5

// offWood says how a hole leaves too little wood of a batten; "" if it does not.
func offWood(line, dia, deep unit.Length) string {
	if line-dia/2 >= besideHole && line+dia/2 <= deep-besideHole {
		return ""
	}
	return fmt.Sprintf("%s wide leaves less than %s of wood in a batten of %s", inWords(dia), inWords(besideHole), inWords(deep))
}

// Pose is the cleat's own axes in the room: x along its upper back arris from the
// left end, y towards the wall, z up from the seat.
func (c *CleatPart) Pose() geom.Pose {
	l := c.Wall.Hull(c.Levels())
	return geom.Pose{At: l.P.Add(l.D.Unit().Mul(float64(c.Start))).Up(c.Seat), Turn: l.D.Angle()}
}

// Levels gives the heights of its underside and its seat above the floor.
func (c *CleatPart) Levels() (low, high unit.Length) { return c.Seat - c.High, c.Seat }

// Deep is how far its seat stands out from its back.
func (c *CleatPart) Deep() unit.Length { return c.Wide }

// Profile is the section of the batten: out from the wall, and high.
func (c *CleatPart) Profile() string {
	return fmt.Sprintf("%.0f x %.0f", float64(c.Wide), float64(c.High))
}

// HeightOf is the height of a hole into the wall above the floor.
func (c *CleatPart) HeightOf(h BracketHole) unit.Length { return c.Seat - h.FromHeel }

// grows is how far a slot may grow from the middle of its hole, towards the wall
// and towards the room.
func (c *CleatPart) grows(h BracketHole, at unit.Length) (heel, toe unit.Length) {
	return at - h.Dia/2 - besideHole, c.Wide - at - h.Dia/2 - besideHole
}

// Title is how a shop names the batten: section and length.
func (c *CleatPart) Title() string {
	return fmt.Sprintf("%s x %.1f", c.Profile(), float64(c.Length))
}

// solid is the batten with its holes, at its place.
func (c *CleatPart) solid() geom.Solid {
	face := geom.Polygon(geom.V(0, -c.Wide), geom.V(c.Length, -c.Wide), geom.V(c.Length, 0), geom.V(0, 0))
	g := geom.Slab{Bottom: -c.High, Top: 0, Outline: geom.EdgesOf(face)}
	var bores []geom.Bore
	for _, h := range c.Holes {
		if h.Leg == SeatLeg {
			g.Cuts = append(g.Cuts, geom.SlabCut{Name: "screw " + h.Name, Region: c.slot(h), From: geom.CutThrough})
			continue
		}
		bores = append(bores, geom.Bore{Name: "anchor " + h.Name, At: geom.Vec3{X: h.X, Y: -c.Wide, Z: -h.FromHeel}, Dir: geom.Vec3{Y: 1}, Dia: h.Dia, Chord: chord, Through: true})
	}
	return g.Solid().Bored(bores...).Place(c.Pose())
}

// slot is the outline of a hole up into the slab.
func (c *CleatPart) slot(h BracketHole) geom.Region {
	at, half := geom.V(h.X, -h.FromHeel), geom.V(0, h.Slot/2)
	if h.Along {
		half = geom.V(h.Slot/2, 0)
	}
	if h.Slot <= 0 {
		return geom.Circle(at, h.Dia/2, chord)
	}
	return geom.Slot(at.Sub(half), at.Add(half), h.Dia, chord)
}
