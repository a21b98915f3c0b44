package model

import (
	"fmt"
	"math"

	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// rods are hidden round bars out of the wall into the back edge of a shelf.
type rods struct {
	dia, inWall, inShelf, pitch, end unit.Length
	line                             string
}

// OnRods carries a shelf on hidden rods: diameter, depth in the wall, depth in
// the shelf, largest pitch and distance from the shelf's ends. The rods become
// parts of their own, named after the shelf.
func (p SlabPiece) OnRods(dia, inWall, inShelf, pitch, end unit.Length) SlabPiece {
	p.rods = &rods{dia, inWall, inShelf, pitch, end, callLine()}
	if !(dia >= 6 && dia <= p.thickness-16) {
		p.faults = p.faults.and(faultf("rods of %.4g mm in a shelf of %.4g mm: 6 mm at least, and 8 mm of wood above and below", float64(dia), float64(p.thickness)))
	}
	if !(pitch >= 100) {
		p.faults = p.faults.and(faultf("rods every %.4g mm: 100 mm at least", float64(pitch)))
	}
	return p
}

// AddShelf adds a shelf and the rods that it hangs on. Rods stand only where a
// wall is behind the shelf: they keep clear of corners and openings.
func (d *Design) AddShelf(id string, p SlabPiece) *Part {
	shelf := d.Add(id, p)
	if shelf == nil || p.rods == nil {
		return shelf
	}
	shelf.Line = callLine()
	n := 0
	for _, w := range d.Room.Walls {
		for _, s := range p.rodPlaces(d, shelf, w) {
			n++
			d.addRod(fmt.Sprintf("%s rod %d", id, n), shelf, w, s, *p.rods)
		}
	}
	return shelf
}

// rodPlaces gives places along a wall whose face is parallel to the shelf's
// back edge within a degree and stands within 30 mm behind it.
func (p SlabPiece) rodPlaces(d *Design, shelf *Part, w *Wall) []unit.Length {
	back := shelf.Slab.referenceEdge()
	e := geom.Through(shelf.Slab.Pose.Plan(back.Start), shelf.Slab.Pose.Plan(back.End))
	l := w.LineAt(shelf.Slab.Top)
	if math.Abs(float64(l.D.Unit().Cross(e.D.Unit()))) > math.Sin(math.Pi/180) || l.D.Dot(e.D) < 0 {
		return nil
	}
	if gap := -l.Side(e.P); gap < -1 || gap > 30 {
		return nil
	}
	start := max(0, l.Along(e.P)) + p.rods.end
	end := min(w.Length(), l.Along(e.P.Add(e.D))) - p.rods.end
	if end <= start {
		return nil
	}
	var out []unit.Length
	for _, x := range even(end-start, 0, p.rods.pitch) {
		out = append(out, start+x)
	}
	return out
}

func (d *Design) addRod(id string, shelf *Part, w *Wall, s unit.Length, r rods) {
	sp := shelf.Slab
	z := sp.Top - sp.Thickness/2
	l := w.LineAt(z)
	at := l.P.Add(l.D.Unit().Mul(float64(s)))
	in := l.D.Unit().Left().Mul(-1) // into the room
	own := sp.Pose.Unplan(at)
	tip := at.Add(in.Mul(float64(abs(own.Y) + r.inShelf)))
	tail := at.Sub(in.Mul(float64(r.inWall)))
	sp.Features = append(sp.Features, Feature{Name: id, Kind: Bore, At: geom.V(own.X, 0), Dia: r.dia, Depth: r.inShelf, Edge: sp.referenceIndex(), Height: sp.Thickness / 2, For: id, Line: r.line})
	d.Parts = append(d.Parts, &Part{
		ID: id, Mark: len(d.Parts) + 1, Kind: KindRod, Material: "steel S235", Line: r.line, Bears: []string{shelf.ID, w.Name},
		Rod:    &RodPart{Dia: r.dia, Wall: w, At: s, Height: z, InWall: r.inWall, InShelf: r.inShelf, Gap: abs(own.Y), Shelf: shelf.ID, WallHole: r.dia + 2},
		Bodies: []Body{{Name: id, Solid: geom.Rod(tail.Up(z), tip.Up(z), r.dia/2, chord), Material: "steel S235", Density: stock.Steel, Colour: SteelColour}},
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
