package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/hold"
	"slabwright/model/unit"
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
					weakened(p, f, "along", along.Along, geom.V(1, 0), along.Along.Strength),
					weakened(p, f, "across", across.Across, geom.V(0, 1), clear))
			}
			return out
		})
		return orNone(out, "No groove and no pocket is cut into a slab.")
	},
}

// weakened judges a groove where bending in a direction stresses the wood most:
// the strip lies across that direction. Up to clear, stresses beyond the strength
// of graded timber only ask for a look at the piece.
func weakened(p *model.Part, f model.Feature, way string, peak hold.Peak, dir geom.Vec, clear float64) find.Finding {
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
		out.Fix = grooveFixes(p, f, peak, mid, dir)
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

// grooveFixes says how far out of the strip the groove must go if the slab has
// room for it, and how shallow it may be where it is: the stress falls as the
// square of what is left grows.
func grooveFixes(p *model.Part, f model.Feature, peak hold.Peak, mid, dir geom.Vec) []find.Fix {
	t := p.Slab.Thickness
	low, high := span(f.Mouth(), dir)
	first, last := span(p.Slab.TopOutline(), dir)
	at, half := float64(mid.Dot(dir)), 2*float64(t)
	var out []find.Fix
	say := func(by float64, room bool, where string) {
		if room {
			out = append(out, hint("move %s %s by %.0f mm %s, out of that strip", f.Kind, f.Name, float64(up(unit.Length(by))), where))
		}
	}
	right, left := at+half-low, high-at+half
	words := [2]string{"to the right", "to the left"}
	if dir.X == 0 {
		words = [2]string{"towards the back edge", "away from the back edge"}
	}
	say(right, high+right+float64(woodBeside) <= last, words[0])
	say(left, low-left-float64(woodBeside) >= first, words[1])
	if depth := t - (t-f.Depth)*unit.Length(math.Sqrt(peak.Used())); depth > 2 {
		out = append(out, hint("cut it no deeper than about %.0f mm there", float64(down(depth))))
	}
	return append(out, hint("or lead the cable clipped in the open there"))
}
