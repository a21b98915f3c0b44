package sheet

import (
	"math"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// tag is a short name that stands beside a point, without a leader.
type tag struct {
	text string
	at   geom.Vec // in the view
}

// tags places names near their points, where nothing stands yet. A name for
// which there is no room within 20 mm is left out.
func (m *maker) tags(pl dim.Plate, drawn []drawing.Item, frame drawing.Rect, list []tag) []drawing.Item {
	c := crowdOf(drawn)
	var out []drawing.Item
	for _, t := range list {
		at := paperAt(pl, t.at)
		text := drawing.Write(at, t.text, pl.Style.Height, drawing.Middle).Strong()
		ink := drawing.Bounds([]drawing.Item{text})
		w, h := ink.Width(), ink.Height()
		off := ink.Centre().Sub(at) // of the ink from the place of the text
		low := math.Inf(1)
		near := c.near(at, 20+w)
		for d := unit.Length(0); d < 20; d++ {
			for k := range 24 {
				dir := geom.V(1, 0).Turn(unit.Angle(k)*15*unit.Degree + 45*unit.Degree)
				mid := at.Add(geom.V(dir.X*(d+w/2+1), dir.Y*(d+h/2+1)))
				box := drawing.Box(mid.X-w/2, mid.Y-h/2, w, h).Grow(0.8)
				if price := float64(d) + 0.01*float64(k); price < low && frame.Holds(box) && near.clear(box) {
					low, text.At = price, mid.Sub(off)
				}
			}
			if !math.IsInf(low, 1) {
				break
			}
		}
		if !math.IsInf(low, 1) {
			out = append(out, text)
			c.take(text)
		}
	}
	return out
}

// clear tells whether nothing stands in a rectangle.
func (c *crowd) clear(r drawing.Rect) bool {
	if c.met < len(c.lines) && c.lines[c.met].enters(r) {
		return false
	}
	for _, t := range c.texts {
		if t.Meets(r) {
			return false
		}
	}
	for i := range c.lines {
		if c.lines[i].enters(r) {
			c.met = i
			return false
		}
	}
	return true
}

// cornerTags names the corners of the room inside a window of the plan.
func (m *maker) cornerTags(w drawing.Rect) []tag {
	var out []tag
	for _, c := range m.b.Room.Corners {
		if w.Holds(drawing.Rect{Min: c.At, Max: c.At}) {
			out = append(out, tag{text: c.Name, at: c.At})
		}
	}
	return out
}
