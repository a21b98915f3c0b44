package model

import (
	"fmt"
	"strings"

	"slabwright/model/find"
)

// assumed lists what a fit rests on beyond the readings.
func (g *gauge) assumed(p *Part) []find.Assumption {
	const practice = "common practice, no source"
	out := []find.Assumption{
		{What: "the slab lies parallel to its back and is slid until its gaps share what is left; it is not turned", Source: practice},
		{What: "one tape, whose scale error is the same in all readings and seen by none of them", Source: "survey"},
		{What: "the wood neither swells nor shrinks between cutting and fitting", Source: "not computed here"},
	}
	var straight, bowed, plumb, leaning []string
	for _, w := range g.room.Walls {
		if w.Bow == 0 {
			straight = append(straight, w.Name)
		} else {
			bowed = append(bowed, w.Name)
		}
		if w.leanRead {
			leaning = append(leaning, w.Name)
		} else {
			plumb = append(plumb, w.Name)
		}
	}
	add := func(names []string, source, format string, args ...any) {
		if len(names) > 0 {
			out = append(out, find.Assumption{What: strings.Join(names, ", ") + ": " + fmt.Sprintf(format, args...), Source: source})
		}
	}
	sd := float64(g.bowSD())
	add(straight, "no bow was read; "+practice, "straight within %.1f mm (1 sd)", sd)
	add(bowed, practice, "bowed as read within %.1f mm (1 sd), which no other reading checks", sd)
	off := max(abs(p.Slab.Top-g.room.At), abs(p.Slab.Top-p.Slab.Thickness-g.room.At))
	add(plumb, "no lean was read; 6 mm at 1 m (limit of DIN 18202, from memory) as three standard deviations",
		"plumb within 2 mm per m (1 sd), %.1f mm at this slab", leanUnread*float64(off))
	add(leaning, practice, "leaning as read within 0.5 mm per m (1 sd)")
	if g.up > 1 {
		out = append(out, find.Assumption{What: fmt.Sprintf("all spreads taken %.2f times as large: the readings differ by so much more than their tools would", g.up), Source: practice})
	}
	if len(g.res.Squared) > 0 {
		var names []string
		for _, c := range g.res.Squared {
			names = append(names, string(c))
		}
		add(names, "nothing measured tells otherwise", "nearly square")
	}
	return append(out, g.network.Accuracy.Assumptions()...)
}
