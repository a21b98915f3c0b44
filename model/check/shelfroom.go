package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// leastOverTop is the height that a shelf leaves above the worktop.
const leastOverTop unit.Length = 350

var shelfRoom = Rule{
	ID: "shelf-room", Title: "There is room over the worktop",
	Basis: "350 mm between worktop and shelf: " + practice,
	Why:   "A shelf too low takes the worktop's depth: nothing tall stands there, and the slab below can no longer be lifted out.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, shelf := range s.Design.Parts {
			if shelf.Kind != model.KindShelf || shelf.Slab == nil {
				continue
			}
			under := shelf.Slab.Top - shelf.Slab.Thickness
			for _, top := range s.Design.Parts {
				if top.Kind != model.KindSlab || top.Slab.Top > under || shelf.Outline().Intersect(top.Outline()).Empty() {
					continue
				}
				gap := under - top.Slab.Top
				out = append(out, find.Finding{
					Parts: []string{shelf.ID, top.ID}, At: at(shelf.Centroid()),
					Why:      fmt.Sprintf("%.0f mm are free between %s and %s.", float64(gap), top.ID, shelf.ID),
					Measured: find.MM(gap), Required: find.LimitMM(find.AtLeast, leastOverTop),
					Fix: lowShelfFix(gap, shelf),
				}.Judge())
			}
			if c := s.Room.Ceiling; c > 0 && shelf.Slab.Top > c {
				out = append(out, find.Finding{
					Parts: []string{shelf.ID}, Why: fmt.Sprintf("%s lies above the ceiling at %.0f mm.", shelf.ID, float64(c)),
					Measured: find.MM(shelf.Slab.Top), Required: find.LimitMM(find.AtMost, c), Fix: []find.Fix{{Text: "hang it lower"}},
				}.Judge())
			}
		}
		return out
	},
}

func lowShelfFix(gap unit.Length, shelf *model.Part) []find.Fix {
	if gap >= leastOverTop {
		return nil
	}
	return []find.Fix{{Text: fmt.Sprintf("hang %s %.0f mm higher", shelf.ID, float64(leastOverTop-gap))}}
}
