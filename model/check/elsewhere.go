package check

import (
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// reparked moves a roll-out table sideways out of the zone, to the nearer side
// where it still stands under the slab.
func (s Site) reparked(z model.Zone, slab *model.Part, i intruder) find.Fix {
	pose := slab.Slab.Pose
	first, last := unit.Length(math.Inf(1)), unit.Length(math.Inf(-1))
	for _, loop := range z.Plan.Loops() {
		for _, v := range loop {
			x := pose.Unplan(v).X
			first, last = min(first, x), max(last, x)
		}
	}
	ro := i.part.RollOut
	now := pose.Unplan(ro.Corner).X
	length, _ := slab.Slab.Blank()
	left, right := down(first-ro.Width), up(last)
	to := left
	if left < 0 || right+ro.Width <= length && right-now < now-left {
		to = right
	}
	if to < 0 || to+ro.Width > length {
		return hint("park %s elsewhere, or take a narrower one", i.name)
	}
	return s.set(hint("park %s %.0f mm further %s, with its left side %.0f mm from the left end of %s", i.name, math.Abs(float64(to-now)), leftOrRight(to-now), float64(to), slab.ID), "table_at", now, to)
}

// freePlace finds the nearest middle for a seat along the front of the slab,
// from the slab's left end, where every zone of the seat is free and under the
// slab with its whole width, once the surface has been raised by so much.
func (s Site) freePlace(z model.Zone, slab *model.Part, raised unit.Length) (unit.Length, bool) {
	f := frontOf(slab)
	var blocked [][2]unit.Length // middles that are not free
	var width, now unit.Length
	for _, other := range s.Design.Zones {
		if other.Seat != z.Seat || other.Slab != z.Slab {
			continue
		}
		e := f.extentOf(other.Plan)
		half := (e.right - e.left) / 2
		width, now = max(width, 2*half), e.left+half
		band := other
		band.Plan = geom.Polygon(f.at(0, e.near), f.at(f.length, e.near), f.at(f.length, e.far), f.at(0, e.far))
		for _, i := range s.over(band) {
			low := i.low
			if s.rises(i) {
				low += raised
			}
			if low >= other.Height-contact {
				continue
			}
			for _, piece := range i.over.Pieces() {
				b := f.extentOf(piece)
				blocked = append(blocked, [2]unit.Length{b.left - half, b.right + half})
			}
		}
	}
	free := func(middle unit.Length) bool {
		if middle < width/2 || middle > f.length-width/2 {
			return false
		}
		for _, b := range blocked {
			if middle > b[0] && middle < b[1] {
				return false
			}
		}
		return true
	}
	best, found := unit.Length(0), false
	for _, b := range blocked {
		for _, middle := range []unit.Length{b[0] - 1, b[1] + 1} {
			if free(middle) && (!found || abs(middle-now) < abs(best-now)) {
				best, found = middle, true
			}
		}
	}
	own := slab.Slab.Pose.Unplan(f.at(best, 0)).X
	return unit.Length(math.Round(float64(own))), found
}
