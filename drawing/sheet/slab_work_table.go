package sheet

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// workTable lists the grooves and pockets of a face, so that each can be made from
// its own rows: of a groove and of the rebate for its lid every place of the middle
// of the cutter, of a pocket two opposite corners.
func (w *workpiece) workTable(face model.Face) table {
	t := table{heads: w.heads("work", "face", "no.", "x from B", "y from A", "wide", "deep"), right: []bool{false, false, true, true, true, true, true}}
	side := w.say("top")
	if face == model.UnderFace {
		side = w.say("underside")
	}
	add := func(what string, deep unit.Length, wide string, places ...geom.Vec) {
		for i, p := range places {
			t.rows = append(t.rows, []string{what, side, fmt.Sprint(i + 1), w.length(p.X), w.length(-p.Y), wide, w.length(deep)})
		}
	}
	for _, f := range w.slab.Features {
		name := w.pass(f.Name)
		switch {
		case f.Face != face:
		case f.Kind == model.Groove:
			add(w.sayf("groove %s", name), f.Depth, w.length(f.Dia), f.Path...)
			if f.Lid != (model.Lid{}) {
				add(w.sayf("rebate of %s", name), f.Lid.Thick, w.length(f.Lid.Width), f.Path...)
			}
		case f.Kind == model.Pocket:
			lo, hi := f.Outline.Bounds()
			add(w.sayf("pocket %s", name), f.Depth, "", geom.V(lo.X, hi.Y), geom.V(hi.X, lo.Y))
		}
	}
	return t
}

// workBlocks is the table of a face on the sheet.
func (w *workpiece) workBlocks(face model.Face) []block {
	return w.workTable(face).blocks("work-"+string(face), w.say("Grooves at the middle of the cutter, round ends beyond; pockets at two corners"), w.lines)
}
