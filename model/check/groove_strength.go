package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/hold"
)

var grooveStrength = Rule{
	ID: "groove-strength", Title: "Grooves keep away from where the wood is bent most, or the rest bears it",
	Basis: "bending stresses of the slab as it is cut, lids carry nothing: plate reckoning with true thickness, against strengths as in bending-strength; the strip is twice the thickness wide on either side of the largest stress: " + practice,
	Why:   "A groove across the worst-stressed strip takes the outermost fibres, which bear most: at half the thickness a quarter of the strength is left.",
	Run: func(s Site) []find.Finding {
		out := s.eachSlab([]string{"lies", "person", "step", "service_class", "grade"}, func(p *model.Part, b hold.Slab) []find.Finding {
			var out []find.Finding
			along, across := bentAlong(b), bentAcross(b)
			clear := clearAcross(p, across, b)
			for _, f := range p.Slab.Features {
				if f.Kind != model.Groove && f.Kind != model.Pocket {
					continue
				}
				out = append(out,
					s.weakened(p, f, "along", along.Along, geom.V(1, 0), along.Along.Strength),
					s.weakened(p, f, "across", across.Across, geom.V(0, 1), clear))
			}
			return out
		})
		return orNone(out, "No groove and no pocket is cut into a slab.")
	},
}

// weakened judges a groove where bending in a direction stresses the wood most:
// the strip lies across that direction. Up to clear, stresses beyond the strength
// of graded timber only ask for a look at the piece.
func (s Site) weakened(p *model.Part, f model.Feature, way string, peak hold.Peak, dir geom.Vec, clear float64) find.Finding {
	t := p.Slab.Thickness
	mid := p.Slab.Pose.Unplan(peak.At)
	side := dir.Left().Mul(1e5)
	strip := geom.Strip([]geom.Vec{mid.Sub(side), mid.Add(side)}, 4*t, 1)
	whole := p.Slab.TopOutline().Intersect(p.Slab.UnderOutline())
	out := find.Finding{
		Title: fmt.Sprintf("%s %s and bending %s the grain", capital(string(f.Kind)), f.Name, way), Line: f.Line, At: onTop(p, peak.At), Status: find.Pass,
		Why: fmt.Sprintf("%s %s of %s stays clear of the strip in which bending %s the grain is largest, %s.", capital(string(f.Kind)), f.Name, p.ID, way, on(p, peak.At)),
	}
	met := f.Mouth().Intersect(strip).Intersect(whole)
	if met.Empty() {
		return out
	}
	lost := share(met, strip.Intersect(whole), dir.Left())
	left := t - f.Depth
	out.Measured, out.Required = newton(peak.Value), strength(peak.Strength)
	out.Why = fmt.Sprintf("%s %s crosses the strip of %s in which bending %s the grain is largest, %s: there it leaves %.0f of %.0f mm over %.0f %% of the strip's length, and %.0f %% of the bending strength of the full thickness in that place. With the wood that is left %.0f %% of the strength is used.",
		capital(string(f.Kind)), f.Name, p.ID, way, on(p, peak.At), float64(left), float64(t), 100*lost, 100*math.Pow(float64(left/t), 2), 100*peak.Used())
	out = out.Judge()
	if out.Status == find.Fail {
		out.Fix = s.grooveFixes(p, way)
		if peak.Value <= clear {
			out.Status = find.Warn
			out.Why += fmt.Sprintf(" That is more than graded timber bears, and less than the %.2f N/mm2 of clear wood.", clear)
		}
	}
	return out
}

// share is how much of the extent of a region in a direction another one has.
func share(part, whole geom.Region, dir geom.Vec) float64 {
	a, b := span(part, dir)
	from, to := span(whole, dir)
	return (b - a) / (to - from)
}

// span is from where to where a region goes along a direction.
func span(r geom.Region, dir geom.Vec) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, l := range r.Loops() {
		for _, v := range l {
			d := float64(v.Dot(dir))
			low, high = min(low, d), max(high, d)
		}
	}
	return low, high
}

// grooveFixes are how shallow a cut may be and how far it must go.
func (s Site) grooveFixes(p *model.Part, way string) []find.Fix {
	peak := func(b hold.Slab) hold.Peak {
		if way == "along" {
			return bentAlong(b).Along
		}
		return bentAcross(b).Across
	}
	return append(s.remedies(p, hold.Wanted{Of: hold.Strength, Only: hold.CutWays, Used: func(b hold.Slab) float64 { return peak(b).Used() }}, func(b hold.Slab) string {
		return fmt.Sprintf("bending %s the grain then uses %.0f %%", way, 100*peak(b).Used())
	}), hint("or lead the cable clipped in the open there"))
}
