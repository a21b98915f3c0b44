package check

import (
	"fmt"

	"slabwright/model/find"
	"slabwright/model/sit"
	"slabwright/model/unit"
)

var headRoom = Rule{
	ID: "head-room", Title: "Heads stay clear of what hangs above",
	Basis: "head and trunk from the ANSUR II regressions; the trunk leans 30 degrees to stand up; hinge and forehead from memory",
	Why:   "Who leans over the work or stands up in haste brings the forehead forward and up. A shelf edge there is met once a week.",
	Run: func(s Site) []find.Finding {
		return orNone(s.headsOf(), "Nothing hangs over a worktop where somebody sits.")
	},
}

func (s Site) headsOf() []find.Finding {
	var out []find.Finding
	for _, x := range sit.Of(s.Design, s.Job.Wiring) {
		for _, o := range x.Over {
			out = append(out, s.headUnder(x, o))
		}
	}
	return out
}

// headUnder judges the front edge of something above: how far it stays behind
// the forehead of somebody who rises, as long as the head is not below it.
func (s Site) headUnder(x *sit.Sitter, o sit.Overhang) find.Finding {
	f := about("Head of", x)
	f.Title += " below " + o.Name
	involve(&f, o.Part, o.Wall)
	f.At = at(x.At(0, o.Edge).Up(x.Floor + o.Low))
	f.Assumed = []find.Assumption{rests("head, sitting,", x, 5), {What: "trunk leans 30 degrees to stand up; hip 130 before the back, 90 above the seat, forehead 100 before the trunk", Source: "from memory"}}
	reach, _ := x.Head(sit.RisingLean)
	_, sitting := x.Head(0)
	bent, under := x.LeanUnder(o.Low)
	stand, known := x.Standing()
	f.Measured, f.Required = spread(o.Edge, x.Sizes[5].SD), limit(find.AtLeast, reach)
	f = f.Judge()
	f.Why = fmt.Sprintf("The edge of %s is %s and %.0f mm above the floor. Sitting straight the head is at %.0f mm; rising it comes %.0f mm in from the front.%s",
		o.Name, fromFront(o.Edge), float64(o.Low), float64(sitting), float64(reach), nobodyTold(x))
	switch {
	case known && o.Low >= stand:
		f.Status = find.Pass
		f.Why += fmt.Sprintf(" It hangs above the head of somebody standing, %.0f mm.", float64(stand))
		f.Measured, f.Required, f.Margin = mm(o.Low), limit(find.AtLeast, stand), mm(o.Low-stand)
		return f
	case under:
		if in, _ := x.Head(bent); bent > sit.RisingLean && in > o.Edge {
			f.Why += fmt.Sprintf(" Leaning over the work by more than %.0f degrees brings the head under it: look up before rising.", bent.Degrees())
		}
	}
	if f.Status == find.Fail {
		f.Status = find.Warn
		lack := up(reach - o.Edge)
		f.Fix = []find.Fix{hint("take %s %.0f mm less deep, or hang it above the head of somebody standing", o.Name, float64(lack))}
		if o.Edge < 0 {
			f.Fix = []find.Fix{hint("hang %s elsewhere, or above the head of somebody standing", o.Name)}
		}
		if known {
			f.Fix[0].Text += fmt.Sprintf(", its underside at %.0f mm", float64(up(stand)))
		}
	}
	return f
}

// fromFront says how far an edge is in from the front of the worktop, or out
// beyond it.
func fromFront(edge unit.Length) string {
	if edge < 0 {
		return fmt.Sprintf("%.0f mm out beyond the front", -float64(edge))
	}
	return fmt.Sprintf("%.0f mm in from the front", float64(edge))
}
