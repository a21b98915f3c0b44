package model

import (
	"fmt"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// CutAsDrawn tells a part as if it had been cut exactly as it is drawn: a slab
// by its edges, the lines that make its shape, and one as a check; a bracket by
// its length and holes. ok is false for parts of other kinds.
func (p *Part) CutAsDrawn(on string) (c CutPart, ok bool) {
	c = CutPart{Part: p.ID, On: on}
	switch {
	case p.Slab != nil:
		c.Sizes = p.Slab.Sizes()
		return c, true
	case p.Bracket() != nil:
		b := p.Bracket().On()
		c.Length = b.Length
		for _, h := range b.Holes {
			if h.Leg == WallLeg {
				c.WallHoles = append(c.WallHoles, h.X)
			} else {
				c.ScrewHoles = append(c.ScrewHoles, h.X)
			}
		}
		slices.Sort(c.WallHoles)
		slices.Sort(c.ScrewHoles)
		return c, true
	}
	return c, false
}

// Sizes are the straight lengths of the top face that make its shape: the edges,
// lines from the first corner to those that are not beside it, and between the
// two beside it one more.
func (s *SlabPart) Sizes() []CutSize {
	at := s.TopCorners()
	n := len(at)
	var out []CutSize
	add := func(edge string, i, j int) {
		out = append(out, CutSize{Edge: edge, From: s.Corners[i], To: s.Corners[j], Length: at[j].Sub(at[i]).Len()})
	}
	for i, e := range s.Edges {
		add(e.Name, i, (i+1)%n)
	}
	for j := 2; j < n-1; j++ {
		add("", 0, j)
	}
	if n > 3 {
		add("", 1, n-1)
	}
	return out
}

// Trim is how much an edge of a cut slab stands over the line that the design
// now wants it to keep to, at its start and its end, seen clockwise from above;
// below 0 it falls short.
type Trim struct {
	Edge       Edge // as cut
	Start, End unit.Length
	At         [2]geom.Vec // the edge's ends in the room
}

// Most is the larger of the two.
func (t Trim) Most() unit.Length { return max(t.Start, t.End) }

// Least is the smaller of the two.
func (t Trim) Least() unit.Length { return min(t.Start, t.End) }

// Trims compares a cut slab, as it lies, with what the design now wants, edge by
// edge; nil for a part that is not cut or is no slab.
func (p *Part) Trims() []Trim {
	if p.Cut == nil || p.Cut.WantedSlab == nil {
		return nil
	}
	var out []Trim
	wanted := p.Cut.WantedSlab
	for i, e := range p.Slab.Edges {
		l := geom.Through(wanted.Pose.Plan(wanted.Edges[i].Start), wanted.Pose.Plan(wanted.Edges[i].End))
		a, b := p.Slab.Pose.Plan(e.Start), p.Slab.Pose.Plan(e.End)
		out = append(out, Trim{Edge: e, Start: l.Side(a), End: l.Side(b), At: [2]geom.Vec{a, b}})
	}
	return out
}

// Told writes the entry of a cut part as a job file has it.
func (c CutPart) Told() string {
	num := func(l unit.Length) string { return unit.Style{}.Length(l) }
	list := func(x []unit.Length) string {
		s := ""
		for i, l := range x {
			if i > 0 {
				s += ", "
			}
			s += num(l)
		}
		return s
	}
	out := fmt.Sprintf("- part: %s\n  on: %s\n", c.Part, c.On)
	if c.Length > 0 {
		out += fmt.Sprintf("  length: %s\n", num(c.Length))
	}
	if c.WallHoles != nil {
		out += fmt.Sprintf("  wall_holes: [%s]\n", list(c.WallHoles))
	}
	if c.ScrewHoles != nil {
		out += fmt.Sprintf("  screw_holes: [%s]\n", list(c.ScrewHoles))
	}
	if len(c.Sizes) > 0 {
		out += "  sizes:\n"
	}
	for _, s := range c.Sizes {
		if s.Edge != "" {
			out += fmt.Sprintf("    - {edge: %s, is: %s}\n", s.Edge, num(s.Length))
			continue
		}
		out += fmt.Sprintf("    - {between: %s-%s, is: %s}\n", s.From, s.To, num(s.Length))
	}
	return out
}
