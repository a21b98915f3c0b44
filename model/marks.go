package model

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model/unit"
)

// number gives the parts their marks: parts that are made the same share one
// (ISO 6433: equal parts have one item number), in the order in which they
// first appear.
func (d *Design) number() {
	marks := map[string]int{}
	for _, p := range d.Parts {
		key := p.making()
		if marks[key] == 0 {
			marks[key] = len(marks) + 1
		}
		p.Mark = marks[key]
	}
}

// Alike gives all parts with the mark of a part, in the order of the design.
func (d *Design) Alike(p *Part) []*Part {
	var out []*Part
	for _, q := range d.Parts {
		if q.Mark == p.Mark {
			out = append(out, q)
		}
	}
	return out
}

// Hand tells two bars that are mirror images of each other apart.
type Hand string

// Hands. Of two mirrored bars the left one hangs further left as somebody in
// the room faces the walls.
const (
	NoHand    Hand = ""
	LeftHand  Hand = "L"
	RightHand Hand = "R"
)

// HandOf gives the hand of an angle and a part that mirrors it; NoHand and nil
// when the design has no mirror image of it.
func (d *Design) HandOf(p *Part) (Hand, *Part) {
	if p.Angle == nil || p.Angle.Symmetric() {
		return NoHand, nil
	}
	for _, q := range d.Parts {
		if q.Angle == nil || q.Mark == p.Mark || q.Material != p.Material || q.Angle.bar(false) != p.Angle.bar(true) {
			continue
		}
		first, other := d.Alike(p)[0].Angle, d.Alike(q)[0].Angle
		if first.before(other) {
			return LeftHand, q
		}
		return RightHand, q
	}
	return NoHand, nil
}

// Symmetric tells whether the bar is its own mirror image, so that it does not
// matter which end is the left one.
func (a *AnglePart) Symmetric() bool { return a.bar(false) == a.bar(true) }

// before tells whether an angle hangs further left.
func (a *AnglePart) before(b *AnglePart) bool {
	if a.Wall != nil && b.Wall != nil && a.Wall.Index != b.Wall.Index {
		return a.Wall.Index < b.Wall.Index
	}
	return a.Start <= b.Start
}

// making says all that matters for making a part, and nothing of where it goes.
func (p *Part) making() string {
	if p.Cut != nil {
		return "cut " + p.ID // a piece of its own, whatever is made like it
	}
	switch {
	case p.Angle != nil:
		return fmt.Sprint(p.Kind, p.Material, p.Angle.LegUp, p.Angle.bar(false))
	case p.Cleat != nil:
		return fmt.Sprint(p.Kind, p.Material, p.Cleat.making())
	case p.Rod != nil:
		return fmt.Sprint(p.Kind, p.Material, um(p.Rod.Dia), um(p.Rod.Length()))
	case p.Slab != nil:
		return fmt.Sprint(p.Kind, p.Material, p.Slab.making())
	case p.Post != nil:
		return fmt.Sprint(p.Kind, um(p.Post.Dia), um(p.Post.Height))
	case p.RollOut != nil:
		return fmt.Sprint(p.Kind, p.Material, p.RollOut.making(), math.Round(float64(p.Volume())))
	}
	return p.ID
}

// bar says what the yard makes, turned leg down: a bar with its leg up is one
// with its leg down, its ends swapped. The mirror image has its ends swapped
// once more.
func (a *AnglePart) bar(mirrored bool) string {
	left, right := a.Left.Mitre, a.Right.Mitre
	swapped := a.LegUp != mirrored
	if swapped {
		left, right = right, left
	}
	holes := make([]string, len(a.Holes))
	for i, h := range a.Holes {
		x := h.X
		if swapped {
			x = a.Length - h.X
		}
		holes[i] = fmt.Sprint(h.Leg, um(x), um(h.FromHeel), um(h.Dia), um(h.Slot), h.Along && h.Slot > 0, um(h.Sink))
	}
	slices.Sort(holes)
	return fmt.Sprintf("%s %s%.6f %.6f %s", a.Section.Name, um(a.Length), left, right, strings.Join(holes, ";"))
}

// making says what is made of a batten. Turned end for end it is another one: its
// screws stand nearer to its front.
func (c *CleatPart) making() string {
	holes := make([]string, len(c.Holes))
	for i, h := range c.Holes {
		holes[i] = fmt.Sprint(h.Leg, um(h.X), um(h.FromHeel), um(h.Dia), um(h.Slot), h.Along && h.Slot > 0)
	}
	slices.Sort(holes)
	return fmt.Sprint(um(c.Wide), um(c.High), um(c.Length), strings.Join(holes, ";"))
}

// Length is what a rod is cut to, a whole millimetre.
func (r *RodPart) Length() unit.Length { return round(r.InWall + r.Gap + r.InShelf) }

func (r *RollOutPart) making() string {
	return fmt.Sprint(um(r.Width), um(r.Depth), um(r.Height), um(r.Castor))
}

func (s *SlabPart) making() string {
	var out []string
	for _, e := range s.Edges {
		one := fmt.Sprint(um(e.Start.X), um(e.Start.Y), um(e.End.X), um(e.End.Y), e.Reference, e.Waney, um(e.Ease))
		for _, n := range e.Natural {
			one += fmt.Sprint(um(n.Along), um(n.Top), um(n.Under))
		}
		out = append(out, one)
	}
	var work []string
	for _, f := range s.Features {
		one := fmt.Sprint(f.Kind, f.Face, um(f.At.X), um(f.At.Y), um(f.Dia), um(f.Depth), f.Edge, um(f.Height))
		for _, l := range f.Outline.Loops() {
			for _, v := range l {
				one += fmt.Sprint(um(v.X), um(v.Y))
			}
		}
		work = append(work, one)
	}
	slices.Sort(work)
	return fmt.Sprint(um(s.Thickness), strings.Join(out, ";"), strings.Join(work, ";"))
}

// um gives whole micrometres with a separator: less is no difference.
func um(l unit.Length) string { return fmt.Sprintf("%.0f ", math.Round(float64(l)*1000)+0) }
