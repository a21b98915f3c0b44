package job

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/unit"
)

func channelForm() form[entry[model.Channel]] {
	type C = model.Channel
	return record("a groove", []field[C]{
		need("name", "what it is called", text(), func(c *C) *string { return &c.Name }),
		need("in", "slab or shelf whose underside it is cut into", text(), func(c *C) *string { return &c.In }),
		need("width", "width below its lid", length(3, 200), func(c *C) *unit.Length { return &c.Width }),
		need("depth", "depth from the underside", length(2, 150), func(c *C) *unit.Length { return &c.Depth }),
		need("path", "its centre line, place by place", list("places", placeForm(), 2, 50), func(c *C) *[]model.At { return &c.Path }),
		may("lid", "lid that is let in flush", lidForm(), func(c *C) *model.Lid { return &c.Lid }),
	}, func(r *reader, e *entry[C]) {
		e.v.Pos = r.pos(e.at[""])
		if e.at.has("lid", "width", "depth") {
			lidFits(r, e.at["lid"], e.v.Lid, e.v.Width, e.v.Depth)
		}
	})
}

func placeForm() form[model.At] {
	type A = model.At
	return inner(record("a place", []field[A]{
		need("x", "from the left end of the slab's reference edge", length(-100, 20000), func(a *A) *unit.Length { return &a.X }),
		need("back", "from the reference edge into the room", length(-100, 5000), func(a *A) *unit.Length { return &a.Back }),
	}, nil))
}

func lidForm() form[model.Lid] {
	type L = model.Lid
	return inner(record("a lid", []field[L]{
		need("width", "width of the lid and of its rebate", length(4, 300), func(l *L) *unit.Length { return &l.Width }),
		need("thickness", "thickness of the lid and depth of its rebate", length(1, 50), func(l *L) *unit.Length { return &l.Thick }),
	}, nil))
}

// lidFits notes a lid that does not close its groove.
func lidFits(r *reader, at place, l model.Lid, width, depth unit.Length) {
	if l.Width > 0 && l.Width <= width {
		r.wrong(at, fmt.Sprintf("a lid %s mm wide on a groove of %s mm", mm(l.Width), mm(width)), "a lid wider than its groove, so that it lies on both sides", "")
	}
	if l.Thick >= depth {
		r.wrong(at, fmt.Sprintf("a lid %s mm thick in a groove %s mm deep", mm(l.Thick), mm(depth)), "a lid thinner than its groove is deep", "")
	}
}

func slotForm() form[entry[model.Slot]] {
	type S = model.Slot
	return record("a slot", []field[S]{
		need("name", "what it is called", text(), func(s *S) *string { return &s.Name }),
		need("in", "slab or shelf whose reference edge it is cut into", text(), func(s *S) *string { return &s.In }),
		need("x", "its middle, from the left end of the reference edge", length(0, 20000), func(s *S) *unit.Length { return &s.X }),
		need("width", "along the edge", length(5, 500), func(s *S) *unit.Length { return &s.Width }),
		need("depth", "from the edge into the slab", length(5, 300), func(s *S) *unit.Length { return &s.Depth }),
	}, func(r *reader, e *entry[S]) { e.v.Pos = r.pos(e.at[""]) })
}

func lidOnForm() form[entry[model.LidOn]] {
	type L = model.LidOn
	return record("a lid on a groove", []field[L]{
		need("groove", "the groove, as it is called on the sheets", text(), func(l *L) *string { return &l.Groove }),
		need("width", "width of the lid and of its rebate, more than the groove's", length(4, 300), func(l *L) *unit.Length { return &l.Lid.Width }),
		need("thickness", "thickness of the lid and depth of its rebate, less than the groove's depth", length(1, 50), func(l *L) *unit.Length { return &l.Lid.Thick }),
	}, func(r *reader, e *entry[L]) { e.v.Pos = r.pos(e.at[""]) })
}
