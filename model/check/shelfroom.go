package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// Heights that a shelf leaves above a worktop and above another shelf.
const (
	leastOverTop   unit.Length = 350
	leastOverShelf unit.Length = 180
)

var shelfRoom = Rule{
	ID: "shelf-room", Title: "There is room under every shelf", Fit: true,
	Basis: "350 mm between worktop and shelf, 180 mm between shelves: " + practice,
	Why:   "A shelf too low takes the worktop's depth: nothing tall stands there, and the slab below can no longer be lifted out.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, shelf := range s.Design.Parts {
			if shelf.Kind != model.KindShelf || shelf.Slab == nil {
				continue
			}
			if f, ok := s.under(shelf); ok {
				out = append(out, f)
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "No shelf hangs over a worktop or another shelf."})
		}
		return out
	},
}

// under judges the room between a shelf and the next slab below it.
func (s Site) under(shelf *model.Part) (find.Finding, bool) {
	underside := shelf.Slab.Top - shelf.Slab.Thickness
	var below *model.Part
	for _, p := range s.Design.Parts {
		if p.Slab == nil || p == shelf || p.Slab.Top > underside+contact || below != nil && p.Slab.Top <= below.Slab.Top {
			continue
		}
		if shelf.Outline().Gap(p.Outline()).Distance < 0 {
			below = p
		}
	}
	if below == nil {
		return find.Finding{}, false
	}
	need := leastOverTop
	if below.Kind == model.KindShelf {
		need = leastOverShelf
	}
	gap := underside - below.Slab.Top
	f := find.Finding{
		Parts: []string{shelf.ID, below.ID}, At: at(shelf.Centroid().Flat().Up(underside)),
		Why:      fmt.Sprintf("%.0f mm are free between %s and %s.", float64(gap), below.ID, shelf.ID),
		Measured: mm(gap), Required: limit(find.AtLeast, need),
	}.Judge()
	if f.Status == find.Fail {
		lack := up(need - gap)
		fix := hint("hang %s %.0f mm higher, with its underside at %.0f mm", shelf.ID, float64(lack), float64(up(underside+lack)))
		if below.Kind == model.KindSlab {
			fix = s.set(s.set(fix, "shelf_under", underside, up(underside+lack)), "first_shelf", underside, up(underside+lack))
		}
		f.Fix = []find.Fix{fix}
	}
	return f, true
}
