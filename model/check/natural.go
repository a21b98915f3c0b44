package check

import "slabwright/model/find"

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
				if e.Waney && len(e.Natural) == 0 {
					out = append(out, find.Finding{
						Status: find.Note, Parts: []string{p.ID},
						Why: "The natural edge of " + p.ID + " is drawn straight at its least depth: its line has not been measured.",
						Fix: []find.Fix{{Text: "give the usable widths of the slab on offer at stations along it"}},
					})
				}
			}
		}
		return out
	},
}
