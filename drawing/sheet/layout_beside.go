package sheet

import (
	"cmp"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// placed is a block at its place.
type placed struct {
	form form
	box  drawing.Rect
}

// besides puts blocks round what stands on a page, in the forms and the order
// in which most of them find room, and gives those that find none.
func (m *maker) besides(p *packer, list []block) ([]placed, []block) {
	tall := slices.Clone(list)
	slices.SortStableFunc(tall, func(a, b block) int { return cmp.Compare(b.forms[0].h, a.forms[0].h) })
	orders := [][]block{list, tall}
	for i := 1; i < len(list); i++ { // each block first, once
		orders = append(orders, slices.Concat(list[i:], list[:i]))
	}
	drawn, written := deepest(list)
	var best []placed
	over := list
	lost := missing(list, over)
	for k := range drawn * written {
		for _, order := range orders {
			if len(over) == 0 {
				break
			}
			got, left := p.copy().putAll(order, k%drawn, k/drawn)
			if l := missing(list, left); l < lost {
				best, over, lost = got, left, l
			}
		}
	}
	if len(over) > 0 && len(over) < len(list) {
		best = m.announced(p, over, best)
	}
	return best, over
}

// deepest is the greatest number of forms of pictures and of notes in a list.
func deepest(list []block) (drawn, written int) {
	drawn, written = 1, 1
	for _, b := range list {
		switch {
		case b.notes:
			written = max(written, len(b.forms))
		case b.forms[0].scale.Real > 0:
			drawn = max(drawn, len(b.forms))
		}
	}
	return drawn, written
}

// missing weighs the blocks that find no room: each counts, the first of the
// list a little more than the last.
func missing(list, left []block) float64 {
	sum := 0.0
	for _, b := range left {
		i := slices.IndexFunc(list, func(c block) bool { return c.name == b.name })
		sum += 1 + 0.5*float64(len(list)-i)/float64(len(list))
	}
	return sum
}

// announced adds what stands on the next sheet, where there is room to say so.
func (m *maker) announced(p *packer, over []block, got []placed) []placed {
	var names []string
	for _, b := range over {
		names = append(names, b.name)
	}
	rest := p.copy()
	for _, g := range got {
		rest.take(g.box)
	}
	for _, w := range []unit.Length{200, 70, 45, 32} {
		lines := drawing.Wrap(m.sayf("On the next sheet: %s", strings.Join(names, "; ")), drawing.Small, w)
		h := drawing.Small * (1 + drawing.LinePitch*unit.Length(len(lines)-1))
		text := drawing.Paragraph(geom.V(0, h-drawing.Small+0.8), lines, drawing.Small, drawing.Left)
		if box, ok := rest.put(drawing.Bounds(text).Max.X, h+1.6, bottomLeft); ok {
			return append(got, placed{form{items: text}, box})
		}
	}
	return got
}

// putAll puts blocks in their forms: pictures and notes each from a level on,
// tables in the first that fits.
func (p *packer) putAll(list []block, drawn, written int) (got []placed, left []block) {
	for _, b := range list {
		level := 0
		switch {
		case b.notes:
			level = written
		case b.forms[0].scale.Real > 0:
			level = drawn
		}
		found := false
		for i := min(level, len(b.forms)-1); i < len(b.forms) && !found; i++ {
			f := b.forms[i]
			var box drawing.Rect
			if box, found = p.put(f.w, f.h, b.pull); found {
				got = append(got, placed{f, box})
			}
		}
		if !found {
			left = append(left, b)
		}
	}
	return got, left
}

// details lays out blocks on a page without pictures, as many as fit.
func (m *maker) details(list []block) laid {
	l := laid{size: m.size, chapters: []chapter{{name: "details", title: m.say("details")}}}
	p := newPacker(m.size)
	list = slices.Clone(list)
	for i := range list {
		list[i].pull = topLeft
	}
	blocks, over := m.besides(p, list)
	if len(blocks) == 0 { // larger than the page: shown as far as it goes
		f := slices.MinFunc(list[0].forms, func(a, b form) int { return cmp.Compare(a.w, b.w) })
		blocks, over = []placed{{f, drawing.Box(p.all.Min.X, p.all.Max.Y-f.h, f.w, f.h)}}, list[1:]
	}
	l.over = over
	for _, b := range blocks {
		if l.scale.Real == 0 {
			l.scale = b.form.scale
		}
		l.items = append(l.items, drawing.Move(b.form.items, b.box.Min)...)
	}
	return l
}

// pictured makes a block of a picture that is drawn at the first of its scales
// for which there is room.
func (m *maker) pictured(p picture, pull pull, scales ...drawing.Scale) block {
	b := block{name: p.title, pull: pull}
	for _, s := range scales {
		const margin unit.Length = 30
		d := m.draw(p, s, geom.V(margin, margin))
		b.forms = append(b.forms, form{d.box.Width(), d.box.Height(), []drawing.Item{d.at(d.box.Min.Mul(-1))}, s})
	}
	return b
}
