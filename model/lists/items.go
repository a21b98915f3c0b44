package lists

import (
	"slabwright/model"
	"slabwright/model/unit"
)

// Item is one line of a parts list: all parts that are made the same.
type Item struct {
	Mark  int
	Parts []*model.Part
}

// Items gives the parts of a design by mark, in the order in which the marks
// first appear.
func Items(d *model.Design) []Item {
	var out []Item
	at := map[int]int{} // place of each mark
	for _, p := range d.Parts {
		i, ok := at[p.Mark]
		if !ok {
			i = len(out)
			at[p.Mark] = i
			out = append(out, Item{Mark: p.Mark})
		}
		out[i].Parts = append(out[i].Parts, p)
	}
	return out
}

// First is the part that stands for all of the item.
func (i Item) First() *model.Part { return i.Parts[0] }

// Count is how many parts of the item there are.
func (i Item) Count() int { return len(i.Parts) }

// Mass is the mass of all parts of the item.
func (i Item) Mass() unit.Mass {
	var m unit.Mass
	for _, p := range i.Parts {
		m += p.Mass()
	}
	return m
}

// Names are the ids of the parts.
func (i Item) Names() []string {
	var out []string
	for _, p := range i.Parts {
		out = append(out, p.ID)
	}
	return out
}

// Bears gives what the parts touch on purpose, each once.
func (i Item) Bears() []string {
	var out []string
	for _, p := range i.Parts {
		out = with(out, p.Bears...)
	}
	return out
}

// with appends what is not in a list yet.
func with(list []string, more ...string) []string {
	for _, s := range more {
		found := false
		for _, t := range list {
			found = found || s == t
		}
		if !found {
			list = append(list, s)
		}
	}
	return list
}

// Size is length, width and thickness of a part: of a slab those of its blank
// along the reference edge, of an angle its length, leg and thickness, of a cleat its
// length, width out from the wall and height, of a rod
// or table leg its length and twice its diameter, of a roll-out table width, depth and
// height.
func Size(p *model.Part) (length, width, thickness unit.Length) {
	switch {
	case p.Slab != nil:
		l, w := p.Slab.Blank()
		return l, w, p.Slab.Thickness
	case p.Angle != nil:
		return p.Angle.Length, p.Angle.Section.Leg, p.Angle.Section.Thickness
	case p.Cleat != nil:
		return p.Cleat.Length, p.Cleat.Wide, p.Cleat.High
	case p.Rod != nil:
		return p.Rod.Length(), p.Rod.Dia, p.Rod.Dia
	case p.Post != nil:
		return p.Post.Height, p.Post.Dia, p.Post.Dia
	case p.RollOut != nil:
		return p.RollOut.Width, p.RollOut.Depth, p.RollOut.Height
	}
	b := p.Bounds()
	return b.Max.X - b.Min.X, b.Max.Y - b.Min.Y, b.Max.Z - b.Min.Z
}

// SizeText is the size of a part as one asks for it: length x width x
// thickness in millimetres, for bars the section and the length.
func SizeText(p *model.Part, length func(unit.Length) string) string {
	l, w, t := Size(p)
	switch {
	case p.Angle != nil:
		return p.Angle.Section.Name + " x " + length(l)
	case p.Rod != nil || p.Post != nil:
		return "Ø" + length(w) + " x " + length(l)
	}
	return length(l) + " x " + length(w) + " x " + length(t)
}
