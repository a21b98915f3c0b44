package drawing

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// farthest is how far from the origin of a sheet an item may lie.
const farthest unit.Length = 1e5

// Sound tells why a sheet cannot be drawn: a coordinate that is no number or
// lies beyond 100 m, a line without width, a character that the lettering
// lacks, a group without a name or with the name of another. It returns nil
// when the sheet can be drawn.
func Sound(s Sheet) error {
	c := &soundness{sheet: s.Name, ids: map[string]bool{}}
	if s.Size.Width <= 0 || s.Size.Height <= 0 || !finite(s.Size.Paper().Max) {
		c.fault("has no size")
	}
	c.text(s.Title)
	c.items(s.Items)
	return c.err
}

type soundness struct {
	sheet string
	group string
	ids   map[string]bool
	err   error
}

// fault keeps the first fault.
func (c *soundness) fault(format string, args ...any) {
	if c.err == nil {
		c.err = fmt.Errorf("sheet %q, group %q: %s", c.sheet, c.group, fmt.Sprintf(format, args...))
	}
}

func finite(p geom.Vec) bool {
	return math.Abs(float64(p.X)) <= float64(farthest) && math.Abs(float64(p.Y)) <= float64(farthest)
}

func (c *soundness) points(pts ...geom.Vec) {
	for _, p := range pts {
		if !finite(p) {
			c.fault("point %v, %v cannot be drawn", float64(p.X), float64(p.Y))
		}
	}
}

func (c *soundness) pen(p Pen) {
	if !(p.Width > 0 && p.Width < 100) {
		c.fault("line of width %v", float64(p.Width))
	}
}

func (c *soundness) text(s string) {
	if lack := Unprintable(s); len(lack) > 0 {
		c.fault("text %q has characters that the lettering lacks: %q", s, string(lack))
	}
}

func (c *soundness) items(items []Item) {
	for _, it := range items {
		c.item(it)
	}
}

func (c *soundness) item(it Item) {
	switch x := it.(type) {
	case Polyline:
		c.points(x.Points...)
		c.pen(x.Pen)
	case Arc:
		c.points(x.Centre, geom.V(x.Radius, 0), geom.V(unit.Length(x.From), unit.Length(x.Sweep)))
		c.pen(x.Pen)
	case Circle:
		c.points(x.Centre, geom.V(x.Radius, 0))
		c.pen(x.Pen)
	case Area:
		for _, l := range x.Loops {
			c.points(l...)
		}
	case Hatch:
		for _, l := range x.Loops {
			c.points(l...)
		}
		c.points(x.Pattern.Origin, geom.V(x.Pattern.Pitch, x.Pattern.Width))
	case Text:
		c.points(x.At, geom.V(x.Height, unit.Length(x.Turn)))
		if !(x.Height > 0) {
			c.fault("text %q of height %v", x.String, float64(x.Height))
		}
		c.text(x.String)
	case Mark:
		c.points(x.At, x.Dir, geom.V(x.Size, 0))
		if x.Kind != Arrow && x.Kind != Dot && x.Kind != Flag {
			c.pen(x.Pen)
		}
	case Group:
		outer := c.group
		c.group = x.ID
		if x.ID == "" || c.ids[x.ID] {
			c.fault("the name is empty or used twice")
		}
		c.ids[x.ID] = true
		c.text(x.Title)
		c.items(x.Items)
		c.group = outer
	}
}

// Readable replaces the characters that the lettering lacks by "\uFFFD" in all
// texts of a sheet, and warns of each text touched. Use it on sheets that show
// what a user wrote.
func Readable(s Sheet) (Sheet, []find.Finding) {
	var found []find.Finding
	mend := func(text string) string {
		lack := Unprintable(text)
		if len(lack) == 0 {
			return text
		}
		found = append(found, find.Finding{
			Rule: "drawing.lettering", Status: find.Warn,
			Title: fmt.Sprintf("the lettering lacks %q", string(lack)),
			Why:   fmt.Sprintf("sheet %s cannot show %q as written; a mark stands for each lost character", s.Name, text),
			Fix:   []find.Fix{{Text: "write the text with other characters"}},
			Basis: "the embedded lettering has no such signs",
		})
		for _, r := range lack {
			text = strings.ReplaceAll(text, string(r), string(lost))
		}
		return text
	}
	var walk func(items []Item) []Item
	walk = func(items []Item) []Item {
		out := make([]Item, len(items))
		for i, it := range items {
			switch x := it.(type) {
			case Text:
				x.String = mend(x.String)
				it = x
			case Group:
				x.Title = mend(x.Title)
				x.Items = walk(x.Items)
				it = x
			}
			out[i] = it
		}
		return out
	}
	s.Title = mend(s.Title)
	s.Items = walk(s.Items)
	return s, found
}
