package model

import (
	"fmt"
	"math"

	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// Rods are hidden round bars out of the wall into the back edge of a shelf:
// their diameter, how deep they go into the wall and into the shelf, the
// largest pitch, and how far the first stays from each end of the shelf.
type Rods struct{ Dia, InWall, InShelf, Pitch, End unit.Length }

// OnRods carries a shelf on hidden rods. The rods become parts of their own,
// named after the shelf. They stand only where a wall is behind the shelf.
func (p SlabPiece) OnRods(r Rods) SlabPiece {
	p.rods, p.rodsLine = &r, callLine()
	if !(r.Dia >= 6 && r.Dia <= p.thickness-16) {
		p.faults = p.faults.and(faultf("rods of %s in a shelf of %s: 6 mm at least, and 8 mm of wood above and below", inWords(r.Dia), inWords(p.thickness)))
	}
	return p.checked("depth of the rods in the wall", r.InWall, 20, 1000).
		checked("depth of the rods in the shelf", r.InShelf, 20, 1000).
		checked("pitch of the rods", r.Pitch, 100, 5000).
		checked("distance of the rods from the ends", r.End, 0, 2000)
}

// AddShelf adds a shelf that hangs on rods.
func (d *Design) AddShelf(id string, p SlabPiece) *Part {
	if p.rods == nil {
		p.faults = p.faults.and(faultf("shelf %q hangs on nothing: OnRods(...)", id))
	}
	return d.Add(id, p)
}

// hang adds the rods of a shelf.
func (p SlabPiece) hang(d *Design, shelf *Part) {
	n := 0
	for _, w := range d.Room.Walls {
		for _, s := range p.rodPlaces(shelf, w) {
			n++
			p.addRod(d, fmt.Sprintf("%s rod %d", shelf.ID, n), shelf, w, s)
		}
	}
	if n == 0 {
		d.report(shelf.ID, fault{what: fmt.Sprintf("no rod finds a place: no wall runs within 30 mm behind %q over more than twice %s", shelf.ID, inWords(p.rods.End)), line: p.rodsLine})
	}
}

// rodPlaces gives places along a wall whose face is parallel to the shelf's
// back edge within a degree, where the wall stands within 30 mm behind it.
func (p SlabPiece) rodPlaces(shelf *Part, w *Wall) []unit.Length {
	back := shelf.Slab.referenceEdge()
	e := geom.Through(shelf.Slab.Pose.Plan(back.Start), shelf.Slab.Pose.Plan(back.End))
	l := w.LineAt(shelf.Slab.Top)
	if math.Abs(float64(l.D.Unit().Cross(e.D.Unit()))) > math.Sin(math.Pi/180) || l.D.Dot(e.D) < 0 {
		return nil
	}
	start := max(0, l.Along(e.P)) + p.rods.End
	end := min(w.Length(), l.Along(e.P.Add(e.D))) - p.rods.End
	if end <= start {
		return nil
	}
	var out []unit.Length
	for _, x := range even(end-start, 0, p.rods.Pitch) {
		at := l.P.Add(l.D.Unit().Mul(float64(start + x)))
		if gap := e.Side(at); gap >= -1 && gap <= 30 {
			out = append(out, start+x)
		}
	}
	return out
}

func (p SlabPiece) addRod(d *Design, id string, shelf *Part, w *Wall, s unit.Length) {
	if what := d.refuse(id, p); what != "" {
		d.report(id, fault{what: what, line: p.rodsLine})
		return
	}
	r, sp := *p.rods, shelf.Slab
	z := sp.Top - sp.Thickness/2
	l := w.LineAt(z)
	at := l.P.Add(l.D.Unit().Mul(float64(s)))
	in := l.D.Unit().Left().Mul(-1) // into the room
	own := sp.Pose.Unplan(at)
	tip := at.Add(in.Mul(float64(abs(own.Y) + r.InShelf)))
	tail := at.Sub(in.Mul(float64(r.InWall)))
	sp.Features = append(sp.Features, Feature{Name: id, Kind: Bore, At: geom.V(own.X, 0), Dia: r.Dia, Depth: r.InShelf, Edge: sp.referenceIndex(), Height: sp.Thickness / 2, For: id, Line: p.rodsLine})
	d.Parts = append(d.Parts, &Part{
		ID: id, Mark: len(d.Parts) + 1, Kind: KindRod, Material: "steel S235", Line: p.rodsLine, Bears: []string{shelf.ID, w.Name},
		Rod:    &RodPart{Dia: r.Dia, Wall: w, At: s, Height: z, InWall: r.InWall, InShelf: r.InShelf, Gap: abs(own.Y), Shelf: shelf.ID, WallHole: r.Dia + 2},
		Bodies: []Body{{Name: id, Solid: geom.Rod(tail.Up(z), tip.Up(z), r.Dia/2, chord), Material: "steel S235", Density: stock.Steel, Colour: SteelColour}},
	})
}

func (s *SlabPart) referenceIndex() int {
	for i, e := range s.Edges {
		if e.Reference {
			return i
		}
	}
	return 0
}
