package sheet

import (
	"math"
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// flag marks the place of a finding: a red triangle with a number, beside it a
// few words.
type flag struct {
	number, text string
	at           geom.Vec // in the view
}

const (
	flagSide  unit.Length = 8  // of the triangle around one digit
	flagText  unit.Length = 42 // width of the words beside it
	flagPitch             = drawing.Small * 1.6
	flagFar   unit.Length = 90 // from the place at most
	flagGap   unit.Length = 1.5
	flagSpot  unit.Length = 1 // around the place that no other flag may cover
)

// flags places flags among what stands on the paper already, each as near to
// its place as there is room and none over the place of another; it tells how
// many found none. A place beyond the view is shown at its edge.
func (m *maker) flags(pl dim.Plate, drawn []drawing.Item, frame drawing.Rect, list []flag) (out []drawing.Item, lost int) {
	c := crowdOf(drawn)
	shown := func(f flag) geom.Vec { return nearestOn(pl.Body, paperAt(pl, f.at)) }
	for _, f := range list {
		at := shown(f)
		c.lines = append(c.lines, newStick(at.Sub(geom.V(flagSpot, 0)), at.Add(geom.V(flagSpot, 0))))
	}
	for _, f := range list {
		at := c.bare(shown(f))
		box, lines, ok := c.place(f, at, pl.Body.Grow(-0.5), frame) // around the body dimension lines find their places
		if !ok {
			lost++
			box = drawing.Box(at.X, at.Y, f.wide(), f.wide()) // over whatever is there: it must show
		}
		g := m.flag(f, box, at, lines)
		out = append(out, g)
		c.take(g)
	}
	return out, lost
}

// place finds room for a flag: inside the body with its words, then there and
// in the frame with its number alone, for the words stand beside the drawing.
func (c *crowd) place(f flag, at geom.Vec, body, frame drawing.Rect) (box drawing.Rect, lines []string, ok bool) {
	near := c.near(at, flagFar+2*flagText)
	lines = wrapped(f.text, drawing.Small, flagText, true)
	if box, ok = near.spot(at, body, f.size(lines)); ok {
		return box, lines, true
	}
	for _, room := range []drawing.Rect{body, frame} {
		if box, ok = near.spot(at, room, f.size(nil)); ok {
			return box, nil, true
		}
	}
	box, ok = c.spotWithin(at, frame, f.size(nil), 3*flagFar, 3)
	return box, nil, ok
}

// bare is the place nearest to another that no text covers, so that an arrow
// can be seen to end there.
func (c *crowd) bare(at geom.Vec) geom.Vec {
	const clear = 1.2
	for d := unit.Length(0); d < flagFar; d += 0.5 {
		for k := range 16 {
			p := at.Add(geom.V(d, 0).Turn(unit.Angle(k) * 22.5 * unit.Degree))
			if !slices.ContainsFunc(c.texts, func(t drawing.Rect) bool { return t.Grow(clear).Holds(drawing.Rect{Min: p, Max: p}) }) {
				return p
			}
		}
	}
	return at
}

// wide is the side of the triangle that holds the number of a flag.
func (f flag) wide() unit.Length {
	return flagSide + 2.4*unit.Length(max(0, len(f.number)-1))
}

// size is the room of a flag with its words.
func (f flag) size(lines []string) geom.Vec {
	size := geom.V(f.wide(), max(f.wide(), unit.Length(len(lines))*flagPitch))
	for _, l := range lines {
		w := drawing.Write(geom.Vec{}, l, drawing.Small, drawing.Left).Strong().Width()
		size.X = max(size.X, f.wide()+flagGap+w)
	}
	return size
}

// spot is the free rectangle of a size nearest to a place, such that a leader
// to the place crosses no text.
func (c *crowd) spot(at geom.Vec, frame drawing.Rect, size geom.Vec) (drawing.Rect, bool) {
	return c.spotWithin(at, frame, size, flagFar, 1.5)
}

// spotWithin is spot on a raster of some pitch, no farther off than reach.
func (c *crowd) spotWithin(at geom.Vec, frame drawing.Rect, size geom.Vec, reach, pitch unit.Length) (drawing.Rect, bool) {
	var box drawing.Rect
	low := math.Inf(1)
	for y := -reach; y <= reach; y += pitch {
		for x := -reach - size.X; x <= reach; x += pitch + 0.5 {
			b := drawing.Box(at.X+x, at.Y+y, size.X, size.Y)
			if far := float64(nearestOn(b, at).Sub(at).Len()); far < low && far > 4 && frame.Holds(b.Grow(1)) && c.clear(b.Grow(1)) && c.readable(b, at) {
				low, box = far, b
			}
		}
	}
	return box, !math.IsInf(low, 1)
}

// readable tells whether a leader from a box to a place crosses no text.
func (c *crowd) readable(box drawing.Rect, at geom.Vec) bool {
	for _, t := range c.texts {
		if _, _, ok := clipLine(t.Grow(0.6), nearestOn(box, at), at); ok {
			return false
		}
	}
	return true
}

// nearestOn is the place of a rectangle that is nearest to a point.
func nearestOn(r drawing.Rect, p geom.Vec) geom.Vec {
	return geom.V(min(max(p.X, r.Min.X), r.Max.X), min(max(p.Y, r.Min.Y), r.Max.Y))
}

func (m *maker) flag(f flag, box drawing.Rect, at geom.Vec, lines []string) drawing.Item {
	red := drawing.Pen{Width: m.lines.Wide, Ink: drawing.Red}
	side := f.wide()
	base := geom.V(box.Min.X, box.Max.Y-side)
	tip := geom.V(base.X+side/2, base.Y+side*0.87)
	write := func(at geom.Vec, s string, align drawing.Align) drawing.Item {
		t := drawing.Write(at, s, drawing.Small, align).Strong()
		t.Ink = drawing.Red
		return t
	}
	g := drawing.Group{ID: "flag-" + f.number, Title: f.text, Items: []drawing.Item{
		drawing.Outline([]geom.Vec{base, base.Add(geom.V(side, 0)), tip}, red),
		write(geom.V(tip.X, base.Y+1), f.number, drawing.Centre),
	}}
	for i, l := range lines {
		g.Items = append(g.Items, write(geom.V(base.X+side+flagGap, box.Max.Y-drawing.Small-0.3-unit.Length(i)*flagPitch), l, drawing.Left))
	}
	if foot := nearestOn(box, at); foot.Sub(at).Len() > 1 {
		fine := m.lines.Fine().In(drawing.Red)
		foot = foot.Add(at.Sub(foot).Unit().Mul(0.5))
		g.Items = append(g.Items, drawing.Line(foot, at, fine), drawing.Mark{Kind: drawing.Arrow, At: at, Dir: at.Sub(foot), Size: drawing.ArrowLength, Pen: fine})
	}
	return g
}
