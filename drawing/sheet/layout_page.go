package sheet

import (
	"cmp"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// chapter is a group of pictures that share a scale, with the blocks that are
// read beside them.
type chapter struct {
	name, title string // added to the page's where it has a page of its own
	pictures    []picture
	beside      []block
}

// largeEnough is the scale beyond which chapters are not parted to become
// larger: workpieces are read well at it, and details have their own scale.
var largeEnough = drawing.Scale{Paper: 1, Real: 5}

// pages lays chapters out on as few pages as their scale allows: chapters share
// a page where that costs none of them its scale and all that is read beside
// them finds room. What finds none goes on to the next page.
func (m *maker) pages(name, title string, list []chapter) []page {
	var out []laid
	var over []block
	for len(list) > 0 {
		list[0].beside = append(list[0].beside, over...)
		l := m.fill(list)
		out = append(out, l)
		over, list = l.over, list[len(l.chapters):]
	}
	for len(over) > 0 {
		l := m.details(over)
		out = append(out, l)
		over = l.over
	}
	pages := make([]page, len(out))
	for i, l := range out {
		n, t := name, title
		if len(out) > 1 {
			var names, titles []string
			for _, c := range l.chapters {
				names, titles = append(names, c.name), append(titles, c.title)
			}
			n, t = n+"-"+strings.Join(names, "-"), t+": "+strings.Join(titles, ", ")
		}
		pages[i] = m.new(n, t)
		pages[i].sheet.Add(l.items...)
		pages[i].sheet.Scale = "-"
		if l.scale.Real > 0 {
			pages[i].sheet.Scale = l.scale.String()
		}
	}
	return pages
}

// laid is a page laid out.
type laid struct {
	chapters []chapter
	items    []drawing.Item
	scale    drawing.Scale
	over     []block // what found no room
}

// fill takes as many chapters on a page as may share it, at least one.
func (m *maker) fill(list []chapter) laid {
	own := make([]drawing.Scale, len(list))
	for i, c := range list {
		own[i] = m.largest(c.pictures)
	}
	for n := len(list); n > 1; n-- {
		wanted := own[0]
		for _, s := range own[1:n] {
			wanted = larger(wanted, s)
		}
		if larger(wanted, largeEnough) == wanted {
			wanted = largeEnough
		}
		for _, s := range drawing.Scales {
			if s.Paper > s.Real || larger(s, wanted) == wanted && s != wanted {
				continue
			}
			if l, ok := m.arrange(list[:n], s); ok && len(l.over) == 0 {
				return l
			}
		}
	}
	l, _ := m.arrange(list[:1], own[0])
	return l
}

func larger(a, b drawing.Scale) drawing.Scale {
	if a.Paper*b.Real >= b.Paper*a.Real {
		return a
	}
	return b
}

// largest is the largest scale at which pictures find room on a page.
func (m *maker) largest(pictures []picture) drawing.Scale {
	for _, s := range drawing.Scales {
		if s.Paper > s.Real {
			continue
		}
		for _, room := range fieldOf(m.size) {
			if _, ok := m.stacked(room.Width(), room.Height(), s, pictures); ok {
				return s
			}
		}
	}
	return smallest
}

// arrange lays out a page at a scale: the pictures in a column or, where that
// is too tall, wherever they fit, and the blocks around them. It tells whether
// the pictures fit.
func (m *maker) arrange(list []chapter, s drawing.Scale) (laid, bool) {
	l := laid{chapters: list, scale: s}
	var pictures []picture
	var beside []block
	for _, c := range list {
		pictures = append(pictures, c.pictures...)
		beside = append(beside, c.beside...)
	}
	columns, ok := m.columns(pictures, s)
	if !ok && s != smallest {
		return laid{}, false
	}
	p := newPacker(m.size)
	boxes := make([]drawing.Rect, len(columns))
	for i := range columns {
		box, fits := p.put(columns[i].w, columns[i].h, topLeft)
		if !fits {
			box = drawing.Box(p.all.Min.X, p.all.Max.Y-columns[i].h, columns[i].w, columns[i].h)
			ok = false
		}
		boxes[i] = box
	}
	var blocks []placed
	blocks, l.over = besides(p, beside)
	for i, st := range columns {
		others := append([]drawing.Rect(nil), boxes[:i]...)
		others = append(others, boxes[i+1:]...)
		for _, b := range blocks {
			others = append(others, b.box)
		}
		boxes[i] = centred(boxes[i], others, fieldOf(m.size))
		l.items = append(l.items, st.into(boxes[i])...)
	}
	for _, b := range blocks {
		l.items = append(l.items, drawing.Move(b.form.items, b.box.Min)...)
	}
	return l, ok
}

// columns is all pictures in one column, or each by itself.
func (m *maker) columns(pictures []picture, s drawing.Scale) ([]stack, bool) {
	field := fieldOf(m.size)
	for _, room := range field {
		if st, ok := m.stacked(room.Width(), room.Height(), s, pictures); ok {
			return []stack{st}, true
		}
	}
	var out []stack
	for _, p := range pictures {
		room := field[0].Width()
		if len(pictures) > 1 {
			room /= 2
		}
		st, ok := m.stacked(room, field[0].Height(), s, []picture{p})
		if !ok && s != smallest {
			return nil, false
		}
		out = append(out, st)
	}
	return out, true
}

// placed is a block at its place.
type placed struct {
	form form
	box  drawing.Rect
}

// besides puts blocks round what stands on a page, in the forms and the order
// in which most of them find room, and gives those that find none.
func besides(p *packer, list []block) ([]placed, []block) {
	deepest := 1
	for _, b := range list {
		deepest = max(deepest, len(b.forms))
	}
	tall := slices.Clone(list)
	slices.SortStableFunc(tall, func(a, b block) int { return cmp.Compare(b.forms[0].h, a.forms[0].h) })
	orders := [][]block{list, tall}
	for i := 1; i < len(list); i++ { // each block first, once
		orders = append(orders, slices.Concat(list[i:], list[:i]))
	}
	var best []placed
	over := list
	lost := missing(list, over)
	for level := range deepest {
		for _, order := range orders {
			if len(over) == 0 {
				break
			}
			try := &packer{all: p.all, free: slices.Clone(p.free)}
			got, left := try.putAll(order, level)
			if l := missing(list, left); l < lost {
				best, over, lost = got, left, l
			}
		}
	}
	if len(over) > 0 && len(over) < len(list) {
		best = announced(p, over, best)
	}
	return best, over
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
func announced(p *packer, over []block, got []placed) []placed {
	var names []string
	for _, b := range over {
		names = append(names, b.name)
	}
	rest := &packer{all: p.all, free: slices.Clone(p.free)}
	for _, g := range got {
		rest.take(g.box)
	}
	for _, w := range []unit.Length{200, 70, 45, 32} {
		lines := drawing.Wrap("on the next sheet: "+strings.Join(names, ", "), drawing.Small, w)
		h := drawing.Small * (1 + drawing.LinePitch*unit.Length(len(lines)-1))
		text := drawing.Paragraph(geom.V(0, h-drawing.Small+0.8), lines, drawing.Small, drawing.Left)
		if box, ok := rest.put(drawing.Bounds(text).Max.X, h+1.6, bottomLeft); ok {
			return append(got, placed{form{items: text}, box})
		}
	}
	return got
}

// putAll puts blocks in their forms from a level on.
func (p *packer) putAll(list []block, level int) (got []placed, left []block) {
	for _, b := range list {
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
	l := laid{chapters: []chapter{{name: "details", title: "details"}}}
	p := newPacker(m.size)
	blocks, over := besides(p, list)
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

// centred moves a box to the middle of the room that it has between others.
func centred(b drawing.Rect, others, field []drawing.Rect) drawing.Rect {
	left, right, _, _ := stretch(b, others, field)
	b = shifted(b, geom.V((right-left)/2, 0))
	_, _, down, up := stretch(b, others, field)
	return shifted(b, geom.V(0, (up-down)/2))
}

func shifted(r drawing.Rect, by geom.Vec) drawing.Rect {
	return drawing.Rect{Min: r.Min.Add(by), Max: r.Max.Add(by)}
}

// into gives the pictures of a stack with its box at a place.
func (st *stack) into(box drawing.Rect) []drawing.Item {
	all := st.bounds()
	by := geom.V(box.Min.X-all.Min.X, box.Max.Y-all.Max.Y)
	var out []drawing.Item
	for i, d := range st.pictures {
		out = append(out, d.at(st.at[i].Add(by)))
	}
	return out
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
