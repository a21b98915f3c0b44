package model

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model/find"
	"slabwright/model/unit"
)

// facing lists the walls that bound a slab at its ends, in the order of the room.
func facing(places []place) []*Wall {
	var out []*Wall
	for _, way := range []string{"length", "depth"} {
		for _, q := range across(places, way) {
			if q.wall != nil && !slices.Contains(out, q.wall) {
				out = append(out, q.wall)
			}
		}
	}
	slices.SortFunc(out, func(a, b *Wall) int { return a.Index - b.Index })
	return out
}

// heightOff is how far a slab is from the height of the readings, at most.
func (g *gauge) heightOff(p *Part) unit.Length {
	return max(abs(p.Slab.Top-g.room.At), abs(p.Slab.Top-p.Slab.Thickness-g.room.At))
}

// unread tells of walls whose lean nobody read, where that matters more than
// half a millimetre.
func (g *gauge) unread(p *Part, walls []*Wall) []string {
	off := g.heightOff(p)
	var names []string
	for _, w := range walls {
		if !w.leanRead && leanUnread*float64(off) > 0.5 {
			names = append(names, w.Name)
		}
	}
	if names == nil {
		return nil
	}
	return []string{fmt.Sprintf("read with a level how %s lean, up to %.0f mm above the floor: %s is %.0f mm off the height of the readings",
		strings.Join(names, " and "), math.Ceil(float64(p.Slab.Top)), p.ID, float64(off))}
}

// assumed lists what a fit between walls rests on beyond the readings.
func (g *gauge) assumed(p *Part, walls []*Wall) []find.Assumption {
	const practice = "common practice, no source"
	out := []find.Assumption{
		{What: "the slab lies parallel to its back and is slid until its gaps share what is left; it is not turned", Source: practice},
		{What: "one tape, whose scale error is the same in all readings and seen by none of them", Source: "survey"},
		{What: "the wood neither swells nor shrinks between cutting and fitting", Source: "not computed here"},
	}
	add := func(want func(*Wall) bool, source, format string, args ...any) {
		var names []string
		for _, w := range walls {
			if want(w) {
				names = append(names, w.Name)
			}
		}
		if len(names) > 0 {
			out = append(out, find.Assumption{What: strings.Join(names, ", ") + ": " + fmt.Sprintf(format, args...), Source: source})
		}
	}
	sd := float64(g.bowSD())
	add(func(w *Wall) bool { return w.Bow == 0 && w.bowSD == 0 }, "no bow was read"+"; "+practice, "straight within %.1f mm (1 sd)", sd)
	add(func(w *Wall) bool { return w.Bow != 0 && w.bowSD == 0 }, practice, "bowed as read within %.1f mm (1 sd), which no other reading checks", sd)
	add(func(w *Wall) bool { return !w.leanRead }, "no lean was read; 6 mm at 1 m (limit of DIN 18202, from memory) as three standard deviations",
		"plumb within 2 mm per m (1 sd), %.1f mm at this slab", leanUnread*float64(g.heightOff(p)))
	add(func(w *Wall) bool { return w.leanRead && w.leanSD == 0 }, practice, "leaning as read within 0.5 mm per m (1 sd)")
	for _, one := range walls {
		add(func(w *Wall) bool { return w == one && w.bowSD > 0 }, practice, "evenly bowed by its readings within %.1f mm (1 sd)", float64(one.bowSD))
		add(func(w *Wall) bool { return w == one && w.leanSD > 0 }, practice, "leaning by its plumb readings within %.1f mm per m (1 sd)", 1000*float64(one.leanSD))
	}
	if g.up > 1 {
		out = append(out, find.Assumption{What: fmt.Sprintf("all spreads taken %.2f times as large: the readings differ by so much more than their tools would", g.up), Source: practice})
	}
	if len(g.res.Squared) > 0 {
		var names []string
		for _, c := range g.res.Squared {
			names = append(names, string(c))
		}
		out = append(out, find.Assumption{What: fmt.Sprintf("these corners are nearly square: %s", strings.Join(names, ", ")), Source: "nothing measured tells otherwise"})
	}
	return append(out, g.network.Accuracy.Assumptions()...)
}
