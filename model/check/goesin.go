package check

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/calc/motion"
	"slabwright/model/find"
	"slabwright/model/unit"
)

var goesInRule = Rule{
	ID: "goes-in", Title: "Every part can be brought to its place", Fit: true,
	Basis: "search over all poses of the part between the measured walls and the parts before it; every way is measured every 2 mm. Fingers need 25 mm under a slab: " + practice,
	Why:   "A part that fits where it lies may still not get there: it is as long as its wall is wide, a shelf hangs over it, a bracket stands up before it. Found out on the day, that means sawing in a finished room.",
	Run: func(s Site) []find.Finding {
		order := bring.OrderOf(s.Design)
		var out []find.Finding
		var there []*model.Part
		stuck := 0
		var plain []bring.Way
		for _, w := range order {
			switch {
			case w.Verdict != motion.Found:
				out = append(out, s.cannot(w, there, stuck == 0))
				stuck++
			case w.Part.Slab != nil:
				out = append(out, goesIn(w))
			default:
				plain = append(plain, w)
			}
			there = append(there, w.Part)
		}
		if len(plain) > 0 {
			out = append(out, allPlain(plain))
		}
		if len(order) > 1 {
			out = append(out, mountingOrder(order))
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "There is nothing to bring in."})
		}
		return out
	},
}

var freeInFront = find.Assumption{What: "the room in front of the measured walls is free, and so is the way through it", Source: "job file: nothing is measured there"}

// goesIn tells the way of a slab.
func goesIn(w bring.Way) find.Finding {
	f := find.Finding{Title: fmt.Sprintf("%s goes in", capital(w.Part.ID)), Status: find.Pass, Parts: []string{w.Part.ID}, Assumed: []find.Assumption{freeInFront}}
	f.Why = fmt.Sprintf("%s goes in: %s.", capital(w.Part.ID), strings.Join(w.Moves(), "; "))
	if !math.IsInf(float64(w.Least.Gap), 0) {
		f.At = at(w.Middle(w.Least.Pose))
		f.Measured, f.Required = mm(max(0, w.Least.Gap)), limit(find.AtLeast, unit.Length(0))
		f = f.Judge()
		f.Why += fmt.Sprintf(" On the way it comes within %.1f mm of %s.", float64(max(0, w.Least.Gap)), w.Least.Near)
	}
	switch last := w.Last(); {
	case last == 0:
		f.Why += " It slides in at its height: no fingers under it, push at its front."
	case last < bring.Fingers:
		f.Why += fmt.Sprintf(" It can be lifted by no more than %.0f mm above its place, where fingers need %.0f: lower it on strips and draw them out.", float64(last), float64(bring.Fingers))
	default:
		f.Why += fmt.Sprintf(" No fingers under it over its bearings for the last %.0f mm.", float64(bring.Fingers))
	}
	if w.Least.Gap < 1 && !w.Straight() {
		f.Status = find.Warn
		f.Fix = []find.Fix{hint("leave 1 mm more to %s, or undercut the lower arris of the end that comes down last", w.Least.Near)}
	}
	return f
}

// cannot tells of a part for which no way was found: proven, or given up. What
// would free it is looked for with the first only.
func (s Site) cannot(w bring.Way, there []*model.Part, first bool) find.Finding {
	f := find.Finding{Title: "No way in for " + w.Part.ID, Parts: []string{w.Part.ID}, Assumed: []find.Assumption{freeInFront}}
	if w.Least.Gap < 0 {
		f.Status = find.Unknown
		f.Why = fmt.Sprintf("Not known yet: %s stands %.1f mm in %s where it lies, so no way to its place was looked for.", w.Part.ID, float64(-w.Least.Gap), w.Least.Near)
		f.Fix = []find.Fix{hint("make room for %s in its place first", w.Part.ID)}
		return f
	}
	var trouble bring.Trouble
	if first {
		trouble = bring.NewScene(s.Design).Trouble(w.Part, append([]*model.Part{w.Part}, there...))
	}
	if w.Verdict == motion.NoWay {
		f.Status = find.Fail
		f.Why = fmt.Sprintf("%s cannot be brought to its place as long as it is %s: that is proven, with the measures as they are and touching allowed. For other ways of moving it %d poses were looked at, no way was found, and nothing is proven.", capital(w.Part.ID), strings.Join(w.Proven, ", or "), w.Looks)
	} else if f.Status = find.Unknown; w.Looks == 0 {
		f.Why = fmt.Sprintf("Not known yet: %s does not go in straight, and no other way was looked for: the searches for parts that come after it had used up all their looks.", w.Part.ID)
	} else {
		f.Why = fmt.Sprintf("Not known yet: no way in was found for %s; the search gave up after looking at %d poses, which proves nothing.", w.Part.ID, w.Looks)
	}
	if trouble.Short > 0 {
		f.At = at(w.Middle(trouble.Tight.Pose))
		f.Measured, f.Required = mm(-trouble.Short), limit(find.AtLeast, unit.Length(0))
		status := f.Status
		f = f.Judge()
		f.Status = status
		f.Why += fmt.Sprintf(" At the tightest place, at %s, about %.1f mm are missing.", trouble.Tight.Near, float64(trouble.Short))
		s.meets(&f, trouble.Tight.Near)
	}
	if len(trouble.Lacks) > 0 {
		s.lacking(&f, w, trouble.Lacks)
	}
	if trouble.Vain != nil {
		f.Why += fmt.Sprintf(" Tried, and no way was found: %s.", list(trouble.Vain))
	}
	for _, m := range trouble.Ways {
		f.Fix = append(f.Fix, hint("%s: a way was found then", m.Text))
	}
	if f.Fix == nil {
		f.Fix = []find.Fix{hint("try it with a board of that size in the room, or change what stands round it; no single small change that was tried frees it")}
	}
	return f
}

// lacking names the gaps that are too narrow on the straight way, and by how much.
func (s Site) lacking(f *find.Finding, w bring.Way, lacks []bring.Lack) {
	var gaps []string
	for _, l := range lacks {
		gaps = append(gaps, fmt.Sprintf("%.1f mm at %s", float64(l.By), l.Name))
		s.meets(f, l.Name)
	}
	f.At = at(w.Middle(lacks[0].Pose))
	status := f.Status
	f.Measured, f.Required = mm(-lacks[0].By), limit(find.AtLeast, unit.Length(0))
	*f = f.Judge()
	f.Status = status
	f.Why += fmt.Sprintf(" Straight in it lacks %s.", list(gaps))
}

// meets adds what a part meets on its way to the parts and walls of a finding.
func (s Site) meets(f *find.Finding, name string) {
	if s.Design.Part(name) != nil {
		involve(f, name, "")
	} else if wall, ok := strings.CutPrefix(name, "the wall "); ok {
		involve(f, "", wall)
	}
}

// allPlain sums up what is held against its wall or rolled in.
func allPlain(ways []bring.Way) find.Finding {
	f := find.Finding{Title: "Steel and what rolls", Status: find.Pass}
	for _, w := range ways {
		f.Parts = append(f.Parts, w.Part.ID)
	}
	f.Why = fmt.Sprintf("The other %s can be held to their walls or rolled in.", count(len(ways), "part", "parts"))
	if len(ways) == 1 {
		f.Why = fmt.Sprintf("%s can be brought to its place.", capital(ways[0].Part.ID))
	}
	return f
}

// mountingOrder lists the parts in the order in which they can be mounted.
func mountingOrder(order bring.Order) find.Finding {
	f := find.Finding{Title: "Order of mounting", Status: find.Pass}
	var names []string
	for _, w := range order {
		names = append(names, w.Part.ID)
		if w.Verdict != motion.Found {
			f.Status = find.Note
			f.Why = fmt.Sprintf("No order was found in which %s goes in. ", w.Part.ID)
		}
	}
	f.Parts = names
	f.Why += fmt.Sprintf("The parts go in one after the other: %s.", list(names))
	return f
}
