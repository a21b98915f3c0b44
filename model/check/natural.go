package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// widestStep is how far apart the places may be where a natural edge is
// measured.
const widestStep unit.Length = 500

var naturalEdge = Rule{
	ID: "natural-edge", Title: "The natural edge has been measured",
	Basis: "offsets from a straight edge every 300 to 500 mm: " + practice,
	Why:   "A natural edge that nobody measured is wider than drawn, and its narrow place may fall where the depth is needed.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			for _, e := range p.Slab.Edges {
				if e.Waney {
					out = append(out, measured(p, e))
				}
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "No slab has a natural edge."})
		}
		return out
	},
}

func measured(p *model.Part, e model.Edge) find.Finding {
	f := find.Finding{Parts: []string{p.ID}}
	if len(e.Natural) == 0 {
		f = unknown(fmt.Sprintf("the natural edge of %s is drawn straight at its least depth, because its line has not been measured.", p.ID),
			hint("give the usable widths of the slab on offer at stations along it"))
		f.Parts = []string{p.ID}
		return f
	}
	length := e.End.Sub(e.Start).Len()
	step := max(e.Natural[0].Along, length-e.Natural[len(e.Natural)-1].Along)
	for i := 1; i < len(e.Natural); i++ {
		step = max(step, e.Natural[i].Along-e.Natural[i-1].Along)
	}
	f.Measured, f.Required = mm(step), limit(find.AtMost, widestStep)
	f = f.Judge()
	f.Why = fmt.Sprintf("The natural edge of %s was measured at %s, nowhere more than %.0f mm apart; the narrowest place has the depth that is drawn.", p.ID, count(len(e.Natural), "place", "places"), float64(step))
	if f.Status == find.Fail {
		f.Status = find.Warn
		f.Why = fmt.Sprintf("The natural edge of %s was measured at %s, but over %.0f mm of its length nobody measured.", p.ID, count(len(e.Natural), "place", "places"), float64(step))
		f.Fix = []find.Fix{hint("measure the edge every 300 to 500 mm over its whole length")}
	}
	return f
}
