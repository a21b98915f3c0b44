package revision

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/unit"
)

// printed is the least difference that shows on a sheet.
const printed = 0.05

// SizeChange is one size of a part, old and new. A size that only one of the
// two has is 0 in the other.
type SizeChange struct {
	What     string
	Old, New unit.Length
}

// Difference is by how much it grew.
func (s SizeChange) Difference() unit.Length { return s.New - s.Old }

// size is a size under its name.
type size struct {
	what string
	l    unit.Length
}

// sizesOf lists what is measured on a part when it is made.
func sizesOf(p *model.Part) []size {
	var out []size
	add := func(what string, l unit.Length) { out = append(out, size{what, l}) }
	switch {
	case p.Slab != nil:
		for _, s := range p.Slab.Sizes() {
			if s.Edge != "" {
				add(s.Edge+" edge", s.Length)
			} else {
				add("corner "+s.From+" to "+s.To, s.Length)
			}
		}
		add("thickness", p.Slab.Thickness)
		seen := map[string]int{}
		for _, f := range p.Slab.Features {
			if f.Kind == model.Pilot {
				continue // drilled from the steel
			}
			name := fmt.Sprintf("%s %s", f.Kind, f.Name)
			if seen[name]++; seen[name] > 1 {
				name = fmt.Sprintf("%s (%d)", name, seen[name])
			}
			at := f.At
			if f.Kind == model.Pocket || f.Kind == model.CutOut || f.Kind == model.Groove {
				at = f.Outline.Centroid()
			}
			add(name+" from B", at.X)
			add(name+" from A", -at.Y)
			if f.Dia > 0 {
				add(name+" diameter", f.Dia)
			}
			if f.Depth > 0 {
				add(name+" depth", f.Depth)
			}
			if f.Lid != (model.Lid{}) {
				add(name+" lid width", f.Lid.Width)
				add(name+" lid thickness", f.Lid.Thick)
			}
		}
	case p.Angle != nil:
		add("length", p.Angle.Length)
		add("leg", p.Angle.Section.Leg)
		add("leg thickness", p.Angle.Section.Thickness)
		for _, h := range p.Angle.Holes {
			add(h.Name+" from end A", h.X)
			add(h.Name+" from the heel", h.FromHeel)
			add(h.Name+" diameter", h.Dia)
		}
	case p.Cleat != nil:
		add("length", p.Cleat.Length)
		add("width", p.Cleat.Wide)
		add("height", p.Cleat.High)
		for _, h := range p.Cleat.Holes {
			add(h.Name+" from end A", h.X)
			add(h.Name+" from the wall face or the top", h.FromHeel)
			add(h.Name+" diameter", h.Dia)
		}
	case p.Rod != nil:
		add("length", p.Rod.Length())
		add("diameter", p.Rod.Dia)
	case p.Post != nil:
		add("diameter", p.Post.Dia)
		add("height", p.Post.Height)
	case p.RollOut != nil:
		add("width", p.RollOut.Width)
		add("depth", p.RollOut.Depth)
		add("height", p.RollOut.Height)
	}
	return out
}

// sizes lists the sizes that differ on paper.
func sizes(old, now *model.Part) []SizeChange {
	a, b := sizesOf(old), sizesOf(now)
	var out []SizeChange
	for _, s := range a {
		c := SizeChange{What: s.what, Old: s.l}
		if i := slices.IndexFunc(b, func(t size) bool { return t.what == s.what }); i >= 0 {
			c.New = b[i].l
		}
		if math.Abs(float64(c.Difference())) >= printed {
			out = append(out, c)
		}
	}
	for _, s := range b {
		if !slices.ContainsFunc(a, func(t size) bool { return t.what == s.what }) {
			out = append(out, SizeChange{What: s.what, New: s.l})
		}
	}
	return out
}
