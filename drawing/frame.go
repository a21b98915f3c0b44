package drawing

import (
	"math"
	"strconv"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Frame after ISO 5457:1999: the drawing space lies 20 mm from the left edge of
// the trimmed sheet and 10 mm from the others, its line is 0.7 wide; around it
// runs a border of 5 mm with fields of 50 mm.
const (
	FilingMargin unit.Length = 20
	Margin       unit.Length = 10
	FrameLine    unit.Length = 0.7
	GridLine     unit.Length = 0.35
	GridBorder   unit.Length = 5
	GridField    unit.Length = 50
)

// Inside the frame: how far the centring marks reach in, what stays clear of
// views, and the strip of the upright print gauge along the left side.
const (
	markReach   unit.Length = 5
	insideClear unit.Length = 6
	gaugeStrip  unit.Length = 10
)

// Space is the drawing space inside the frame.
func (s Size) Space() Rect {
	return Rect{geom.V(FilingMargin, Margin), geom.V(s.Width-Margin, s.Height-Margin)}
}

// Free gives the parts of the drawing space that Finish leaves to views: first
// the field above the title block, then, on sheets wider than it, the field to
// its left. The two share a side, so they may be used as one.
func Free(size Size) []Rect {
	s := size.Space()
	left, right := s.Min.X+gaugeStrip, s.Max.X-insideClear
	split := s.Min.Y + size.blockHeight() + insideClear
	free := []Rect{{geom.V(left, split), geom.V(right, s.Max.Y-insideClear)}}
	if beside := s.Max.X - BlockWidth - insideClear; beside-left >= GridField {
		free = append(free, Rect{geom.V(left, s.Min.Y+insideClear), geom.V(beside, split)})
	}
	return free
}

// frame draws the frame, the centring marks and the grid of fields.
func frame(size Size) Group {
	space := size.Space()
	outer := space.Grow(GridBorder)
	items := []Item{
		Outline(outer.Corners(), Pen{Width: GridLine}),
		Outline(space.Corners(), Pen{Width: FrameLine}),
	}
	items = append(items, centringMarks(size)...)
	small := size.Width <= A4.Width || size.Height <= A4.Width // A4 has fields above and on the right only
	for i, f := range fields(space.Min.X, space.Max.X, size.Width/2) {
		name := strconv.Itoa(i + 1)
		items = append(items, field(f, space.Max.Y, true, name, i > 0)...)
		if !small {
			items = append(items, field(f, outer.Min.Y, true, name, i > 0)...)
		}
	}
	down := fields(space.Min.Y, space.Max.Y, size.Height/2)
	for i := range down {
		f := down[len(down)-1-i]
		name := gridLetter(i)
		items = append(items, field(f, space.Max.X, false, name, i > 0)...)
		if !small {
			items = append(items, field(f, outer.Min.X, false, name, i > 0)...)
		}
	}
	return Group{ID: "sheet-frame", Items: items}
}

// fields divides a side of the frame into fields of 50 mm counted from the
// middle of the trimmed sheet; the rest goes to the corner fields.
func fields(from, to, middle unit.Length) [][2]unit.Length {
	half := func(l unit.Length) int { return int(math.Round(float64(l / GridField))) }
	before, after := half(middle-Margin), half(to-middle)
	var out [][2]unit.Length
	for i := -before; i < after; i++ {
		f := [2]unit.Length{middle + unit.Length(i)*GridField, middle + unit.Length(i+1)*GridField}
		if i == -before {
			f[0] = from
		}
		if i == after-1 {
			f[1] = to
		}
		out = append(out, f)
	}
	return out
}

// field draws the name of a field in the border that begins at the height or
// the side edge, and the line that parts it from the field before.
func field(f [2]unit.Length, edge unit.Length, across bool, name string, parted bool) []Item {
	mid := (f[0] + f[1]) / 2
	at := geom.V(mid, edge+GridBorder/2)
	a, b := geom.V(f[0], edge), geom.V(f[0], edge+GridBorder)
	if !across {
		at = geom.V(edge+GridBorder/2, mid)
		a, b = geom.V(edge, f[1]), geom.V(edge+GridBorder, f[1])
	}
	items := []Item{Write(at, name, Standard, Middle)}
	if parted {
		items = append(items, Line(a, b, Pen{Width: GridLine}))
	}
	return items
}

// gridLetter names the fields from the top; I and O are left out.
func gridLetter(i int) string {
	const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"
	return letters[i%len(letters) : i%len(letters)+1]
}

// centringMarks stand at the ends of both axes of the trimmed sheet, from the
// border to 5 mm inside the frame; the title block cuts them short.
func centringMarks(size Size) []Item {
	s := size.Space()
	x, y := size.Width/2, size.Height/2
	in := markReach
	bottom := s.Min.Y + in
	if x > s.Max.X-BlockWidth {
		bottom = s.Min.Y
	}
	pen := Pen{Width: FrameLine}
	return []Item{
		Line(geom.V(x, s.Min.Y-GridBorder), geom.V(x, bottom), pen),
		Line(geom.V(x, s.Max.Y-in), geom.V(x, s.Max.Y+GridBorder), pen),
		Line(geom.V(s.Min.X-GridBorder, y), geom.V(s.Min.X+in, y), pen),
		Line(geom.V(s.Max.X-in, y), geom.V(s.Max.X+GridBorder, y), pen),
	}
}

// gauge is a bar of exactly 100 mm with a stroke every 10: printers shrink the
// two directions differently, so there is one in each.
func gauge(start geom.Vec, upright bool) []Item {
	u, v := geom.V(1, 0), geom.V(0, 1)
	if upright {
		u, v = geom.V(0, 1), geom.V(-1, 0)
	}
	pen := Normal.Fine()
	items := []Item{Line(start, start.Add(u.Mul(100)), Normal.Outline())}
	for i := range 11 {
		h := 1.2
		if i%10 == 0 {
			h = 3
		}
		p := start.Add(u.Mul(float64(10 * i)))
		items = append(items, Line(p, p.Add(v.Mul(h)), pen))
	}
	return items
}
