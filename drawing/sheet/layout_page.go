package sheet

import (
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
		l := m.better(list)
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
		pages[i].sheet.Size = l.size
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
	size     drawing.Size
	chapters []chapter
	items    []drawing.Item
	scale    drawing.Scale
	over     []block // what found no room
	lacks    int     // letterings that have no place of their own
}

// better fills a page of the paper upright or, where that makes the pictures
// larger without calling for one more page of left-overs, lying.
func (m *maker) better(list []chapter) laid {
	l := m.fill(list)
	if m.stands || m.size.Height < m.size.Width {
		return l
	}
	turned := *m
	turned.size = m.size.Turned()
	k := turned.fill(list)
	done := len(l.chapters) == len(list) && len(l.over) == 0
	if larger(l.scale, k.scale) == l.scale || done && len(k.over) > 0 {
		return l
	}
	return k
}

// fill takes as many chapters on a page as may share it, at least one. Fewer or
// smaller ones are taken where some lettering has no place otherwise.
func (m *maker) fill(list []chapter) laid {
	var best laid
	clean := func(l laid) bool {
		if best.chapters == nil || l.lacks < best.lacks {
			best = l
		}
		return l.lacks == 0
	}
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
				if clean(l) {
					return l
				}
				break
			}
		}
	}
	tries := 0
	for _, s := range drawing.Scales {
		if larger(s, own[0]) == own[0] {
			if l, ok := m.arrange(list[:1], s); (ok || best.chapters == nil) && clean(l) {
				return l
			}
			if tries++; tries > smallerAtMost {
				break
			}
		}
	}
	return best
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
	l := laid{size: m.size, chapters: list, scale: s}
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
	blocks, l.over = m.besides(p, beside)
	for i, st := range columns {
		l.lacks += st.lacks
		others := append([]drawing.Rect(nil), boxes[:i]...)
		others = append(others, boxes[i+1:]...)
		for _, b := range blocks {
			others = append(others, b.box)
		}
		boxes[i] = centred(boxes[i], others, fieldOf(m.size), p.gap)
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

// centred moves a box to the middle of the room that it has between others.
func centred(b drawing.Rect, others, field []drawing.Rect, gap unit.Length) drawing.Rect {
	left, right, _, _ := stretch(b, others, field, gap)
	b = shifted(b, geom.V((right-left)/2, 0))
	_, _, down, up := stretch(b, others, field, gap)
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
