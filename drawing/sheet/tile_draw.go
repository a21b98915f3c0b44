package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

const (
	labelSize  = drawing.Small
	labelPitch = drawing.Small * 1.7
	labelClear = 0.7 // around every label
	fineReach  = 12  // how far off a label is looked after closely
)

// draw puts a tile on its place: what it shows, its border, the crosses and the
// labels.
func (t *template) draw(m *maker, tl *tile) drawing.Group {
	by := tl.place.Min.Sub(tl.window.Min)
	items := clipped(t.lines, tl.window)
	items = append(items, drawing.Outline(tl.window.Corners(), drawing.Dense.Fine()))
	for _, j := range tl.joints {
		if j.under {
			items = append(items, drawing.Line(j.border[0], j.border[1], drawing.Dense.Hidden()))
		}
		for _, c := range j.crosses {
			items = append(items, registerCross(c)...)
		}
	}
	ink := takenBy(items)
	// Texts keep out of the margin for filing, where a sheet has none.
	room := tl.window.Grow(-labelClear)
	room.Min.X = max(room.Min.X, templatePaper.Space().Min.X-by.X+labelClear)
	put := func(l label) bool {
		set, ok := l.set(ink, room, t.needs)
		if !ok { // better on paper that is cut off than nowhere
			set, ok = l.set(ink, room, func(drawing.Rect) bool { return true })
		}
		if ok {
			ink.take(set...)
			items = append(items, set...)
		}
		return ok
	}
	head := label{lines: []string{fmt.Sprintf("%d·%s  %s", t.number, tl.name, t.name)}, strong: true, reach: 120,
		at: geom.V(room.Min.X, room.Max.Y), toward: geom.V(1, -0.02)}
	if !put(head) {
		head.lines = []string{fmt.Sprintf("%d·%s", t.number, tl.name)}
		put(head)
	}
	for _, j := range tl.joints {
		for _, c := range j.crosses {
			put(label{lines: []string{tl.name + "-" + m.sideName(j.side)}, at: c, toward: j.aside(), reach: 20})
		}
	}
	for _, l := range t.labels {
		if tl.window.Holds(drawing.Rect{Min: l.at, Max: l.at}) {
			put(l)
		}
	}
	return drawing.Group{ID: fmt.Sprintf("tile-%d-%s", t.number, stem(tl.name)), Title: m.sayf("template %d, tile %s", t.number, tl.name),
		Items: drawing.Move(items, by)}
}

// aside is the direction from a cross to its name.
func (j joint) aside() geom.Vec {
	switch j.side {
	case "right":
		return geom.V(-1, 0)
	case "left":
		return geom.V(1, 0)
	}
	return geom.V(1, 0)
}

// sideName says on which side of its tile a cross is.
func (m *maker) sideName(side string) string {
	switch side {
	case "right":
		return m.say("right")
	case "left":
		return m.say("left")
	case "down":
		return m.say("down")
	}
	return m.say("up")
}

// registerCross is a cross with a ring about its middle.
func registerCross(c geom.Vec) []drawing.Item {
	const h = crossSize / 2
	pen := drawing.Pen{Width: 0.13}
	return []drawing.Item{
		drawing.Line(c.Sub(geom.V(h, 0)), c.Add(geom.V(h, 0)), pen),
		drawing.Line(c.Sub(geom.V(0, h)), c.Add(geom.V(0, h)), pen),
		drawing.Circle{Centre: c, Radius: h / 2, Pen: pen},
	}
}

// needs tells whether a box lies on paper that stays when it has been cut out.
func (t *template) needs(box drawing.Rect) bool {
	for _, p := range box.Corners() {
		if !t.shape.Contains(p) {
			return false
		}
	}
	return true
}

// set finds the free place for a label nearest to where it is wanted.
func (l label) set(ink *taken, room drawing.Rect, fits func(drawing.Rect) bool) ([]drawing.Item, bool) {
	w, h := l.size()
	if l.upright {
		w, h = h, w
	}
	u := l.toward.Unit()
	centre := l.at
	if u != (geom.Vec{}) {
		centre = l.at.Add(geom.V(u.X*(w/2+1.2), u.Y*(h/2+1.2)))
	}
	wanted := drawing.Box(centre.X-w/2, centre.Y-h/2, w, h)
	if room.Holds(wanted) && fits(wanted) && ink.clear(wanted, labelClear) {
		return l.write(wanted), true
	}
	box, ok := ink.nearest(common(room, wanted.Grow(min(l.reach, fineReach))), centre, w, h, labelClear, fits)
	if !ok {
		box, ok = ink.spot(common(room, wanted.Grow(l.reach)), centre, w, h, labelClear, fits)
	}
	if !ok {
		return nil, false
	}
	return l.write(box), true
}

// common is what two rectangles share.
func common(a, b drawing.Rect) drawing.Rect {
	return drawing.Rect{
		Min: geom.V(max(a.Min.X, b.Min.X), max(a.Min.Y, b.Min.Y)),
		Max: geom.V(min(a.Max.X, b.Max.X), min(a.Max.Y, b.Max.Y)),
	}
}

// size is the room that the lines take when they lie.
func (l label) size() (w, h unit.Length) {
	for _, s := range l.lines {
		w = max(w, l.text(geom.Vec{}, s).Width())
	}
	return w, l.rise() + unit.Length(len(l.lines)-1)*labelPitch + 0.7 // descenders
}

// rise is the height of the first line, with what stands above its capitals:
// accents and brackets.
func (l label) rise() unit.Length {
	return max(labelSize, drawing.Bounds([]drawing.Item{l.text(geom.Vec{}, l.lines[0])}).Max.Y)
}

func (l label) text(at geom.Vec, s string) drawing.Text {
	t := drawing.Write(at, s, labelSize, drawing.Left)
	t.Bold = l.strong
	return t
}

// write sets the lines into a box, from the left and from above.
func (l label) write(box drawing.Rect) []drawing.Item {
	var out []drawing.Item
	for i, s := range l.lines {
		down := l.rise() + unit.Length(i)*labelPitch
		if l.upright {
			out = append(out, l.text(geom.V(box.Min.X+down, box.Min.Y), s).Along(90*unit.Degree))
			continue
		}
		t := l.text(geom.V(box.Min.X, box.Max.Y-down), s)
		t.Bold = l.strong && i == 0
		out = append(out, t)
	}
	return out
}
