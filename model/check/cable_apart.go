package check

import (
	"fmt"

	"slabwright/model/find"
	"slabwright/model/unit"
)

// apartLeast is how far mains cables keep from others along an edge.
const apartLeast unit.Length = 50

var cableApart = Rule{
	ID: "cable-apart", Title: "Mains cables keep apart from the others",
	Basis: "no channel holds both without a divider, 50 mm between them in the open: " + practice + "; local codes come first",
	Why:   "A damaged mains cable in the same channel puts mains on what people touch, and it disturbs data.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, c := range s.wires.Channels {
			f := find.Finding{Title: "What lies in " + c.Feature, Parts: []string{c.Slab}, Status: find.Pass, Why: fmt.Sprintf("%s of %s is for %s alone.", capital(c.Feature), c.Slab, list(c.Cables))}
			if len(c.Mains) > 0 && len(c.Other) > 0 {
				f.Status = find.Fail
				f.Why = fmt.Sprintf("In %s of %s the mains cable %s lies beside %s.", c.Feature, c.Slab, list(c.Mains), list(c.Other))
				f.Measured, f.Required = mm(unit.Length(0)), limit(find.AtLeast, apartLeast)
				f.Margin = mm(-apartLeast)
				f.Fix = []find.Fix{hint("bore a second hole, or cut a second groove, 50 mm beside the first"), hint("or move the devices so that %s takes another way", list(c.Other))}
			}
			out = append(out, f)
		}
		return orNone(out, "No cable lies in a hole or a groove.")
	},
}
