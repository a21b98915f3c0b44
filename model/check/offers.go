package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

var offerRule = Rule{
	ID: "on-offer", Title: "The slab can be cut from one on offer",
	Basis: "length, width and thickness of each part against what the job file says is on offer, each part by itself; saw cuts and several parts from one slab: see what to buy in report.md",
	Why:   "A slab that is longer, wider or thicker than anything that can be bought has to be joined, or drawn again, before anything else is worth ordering.",
	Run: func(s Site) []find.Finding {
		if len(s.Job.Offers.Slabs) == 0 {
			return []find.Finding{{Status: find.Note, Why: "The job file says nothing of slabs on offer, so sizes are not compared with any.", Fix: []find.Fix{hint("write what can be bought into the job file")}}}
		}
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab != nil && p.Cut == nil {
				out = append(out, onOffer(p, s.Job.Offers.Slabs))
			}
		}
		return out
	},
}

// sizes of a slab: length along the grain, width, thickness.
type sizes [3]unit.Length

var sizeNames = [3]string{"length", "width", "thickness"}

// blankOf is what a slab needs of a raw one. The width of a natural front counts
// to the straight line at its narrowest place.
func blankOf(sp *model.SlabPart) (need sizes, natural int) {
	low, high := sp.Edges[0].Start, sp.Edges[0].Start
	for _, e := range sp.Edges {
		low.X, low.Y = min(low.X, e.Start.X), min(low.Y, e.Start.Y)
		high.X, high.Y = max(high.X, e.Start.X), max(high.Y, e.Start.Y)
		if e.Waney {
			natural++
		}
	}
	return sizes{high.X - low.X, high.Y - low.Y, sp.Thickness}, natural
}

// usable is what a slab on offer has at its narrowest place.
func usable(o model.SlabOffer) sizes {
	width := o.Width
	for i, w := range o.Widths {
		if i == 0 || w < width {
			width = w
		}
	}
	return sizes{o.Length, width, o.Thickness}
}

// spare is what a raw slab has beyond what is needed: the least of its sizes
// counts.
type spare struct {
	name  string
	by    sizes
	least int // index of the size with the least to spare
}

func spareOf(o model.SlabOffer, need sizes) spare {
	out := spare{name: o.Name}
	for i, have := range usable(o) {
		out.by[i] = have - need[i]
		if out.by[i] < out.by[out.least] {
			out.least = i
		}
	}
	return out
}

// onOffer finds the offer that leaves most to spare where it leaves least.
func onOffer(p *model.Part, offers []model.SlabOffer) find.Finding {
	need, natural := blankOf(p.Slab)
	f := find.Finding{Parts: []string{p.ID}}
	var best *spare
	for _, o := range offers {
		if o.Species != p.Slab.Species.Name || o.Natural < natural {
			continue
		}
		if x := spareOf(o, need); best == nil || x.by[x.least] > best.by[best.least] {
			best = &x
		}
	}
	size := fmt.Sprintf("%.1f x %.1f x %.0f mm", float64(need[0]), float64(need[1]), float64(need[2]))
	if best == nil {
		kind := p.Slab.Species.Name
		if natural > 0 {
			kind += " with a natural edge"
		}
		f.Status = find.Note
		f.Why = fmt.Sprintf("%s takes %s of %s, and nothing of the kind is on offer.", capital(p.ID), size, kind)
		f.Fix = []find.Fix{hint("ask for it, or take a species that is on offer")}
		return f
	}
	f.Measured, f.Required = mm(best.by[best.least]), limit(find.AtLeast, 0.0)
	f = f.Judge()
	if f.Status == find.Fail {
		f.Status = find.Note
		f.Why = fmt.Sprintf("%s takes %s; the nearest on offer, %q, lacks %.1f mm in %s.", capital(p.ID), size, best.name, -float64(best.by[best.least]), sizeNames[best.least])
		f.Fix = []find.Fix{hint("look for a larger slab, or join %s from two with the joint over a bearing", p.ID)}
		if best.least == 2 {
			f.Fix = []find.Fix{hint("look for a thicker slab, or make %s thinner", p.ID)}
		}
		return f
	}
	f.Why = fmt.Sprintf("%s takes %s; %q has %.1f mm to spare in length, %.1f in width and %.1f in thickness.", capital(p.ID), size, best.name, float64(best.by[0]), float64(best.by[1]), float64(best.by[2]))
	return f
}
