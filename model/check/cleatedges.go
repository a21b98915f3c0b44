package check

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// Least distances of a bolt in wood that is loaded across its grain, in its
// diameters.
const (
	boltLoaded   = 4 // to the edge towards which it presses
	boltUnloaded = 3
	boltEnd      = 7
	boltApart    = 4
)

var cleatEdges = Rule{
	ID: "cleat-left", Title: "Enough wood is left round the anchors of a cleat",
	Basis: "EN 1995-1-1 table 8.4, load across the grain, from memory: 4 d to the loaded edge, which is the top, 3 d to the lower one, 7 d to an end, 4 d apart; d of the bolt",
	Why:   "The slab presses the cleat down on its bolts: too near to its top or its end, the wood splits along the row.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Cleat != nil && len(p.Cleat.In(model.WallLeg)) > 0 {
				out = append(out, woodRound(p))
			}
		}
		return orNone(out, "There is no cleat.")
	},
}

// higher asks for a cleat in which a bolt has room above and below.
func higher(bolt unit.Length) string {
	return fmt.Sprintf("take a cleat at least %.0f mm high, or thinner anchors", float64(up((boltLoaded+boltUnloaded)*bolt)))
}

// woodRound finds the anchor of a cleat with the least margin.
func woodRound(p *model.Part) find.Finding {
	c := p.Cleat
	type web struct {
		hole       model.BracketHole
		left, need unit.Length
		to, mend   string
	}
	var worst *web
	bolts := c.In(model.WallLeg)
	for i, h := range bolts {
		a, ok := stock.AnchorThrough(h.Dia)
		d := a.Bolt
		if !ok {
			d = h.Dia
		}
		webs := []web{
			{h, h.FromHeel, boltLoaded * d, "its top", higher(d)},
			{h, c.High - h.FromHeel, boltUnloaded * d, "its lower edge", higher(d)},
			{h, min(h.X, c.Length-h.X), boltEnd * d, "its end", "set the anchor %.0f mm further in"},
		}
		if i > 0 {
			webs = append(webs, web{h, abs(h.X - bolts[i-1].X), boltApart * d, "the next anchor", "set them %.0f mm further apart"})
		}
		for k, w := range webs {
			if worst == nil || w.left-w.need < worst.left-worst.need-0.001 {
				worst = &webs[k]
			}
		}
	}
	f := find.Finding{
		Parts: []string{p.ID}, Walls: []string{c.Wall.Name}, At: at(c.Pose().Space(seatPlace(worst.hole.X, c.Wide))),
		Measured: mm(worst.left), Required: limit(find.AtLeast, worst.need),
		Why: fmt.Sprintf("Anchor %s of %s stands %.0f mm from %s.", worst.hole.Name, p.ID, float64(worst.left), worst.to),
	}.Judge()
	if f.Status == find.Fail {
		f.Fix = []find.Fix{{Text: strings.Replace(worst.mend, "%.0f", fmt.Sprintf("%.0f", float64(up(worst.need-worst.left))), 1)}}
	}
	return f
}
