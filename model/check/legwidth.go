package check

import (
	"fmt"

	"slabwright/model/calc/body"
	"slabwright/model/find"
	"slabwright/model/sit"
	"slabwright/model/unit"
)

// Free widths for legs, between legs, brackets and walls.
const (
	officeWidth unit.Length = 600  // German office practice (GS, BGI 650)
	enWidth     unit.Length = 1000 // EN 527-1, height fixed where it is installed, as quoted in a public table
	oshaWidth   unit.Length = 520  // OSHA eTool computer workstations
)

var legWidth = Rule{
	ID: "leg-width", Title: "Free width for the legs",
	Basis: "600 mm: German office practice; 1000 mm: EN 527-1 as quoted in a public table; 520 mm at least: OSHA eTool; hips from the ANSUR II regressions",
	Why:   "Between a side wall and a bracket, or between two legs, hips must pass, and knees must turn to get out. What is narrower than the hips and a little movement is a trap.",
	Run:   func(s Site) []find.Finding { return s.eachSitter(s.widthOf) },
}

func (s Site) widthOf(x *sit.Sitter) []find.Finding {
	hips := x.Sizes[7]
	need := max(officeWidth, hips.Ample()+2*body.Beside.Value)
	width := x.Left.Free + x.Right.Free
	f := about("Free width for", x)
	f.Measured, f.Required = spread(width, hips.SD), limit(find.AtLeast, need)
	f.Assumed = []find.Assumption{rests("hips", x, 7), {What: fmt.Sprintf("%.0f mm beside each hip, %.0f mm in all at least", float64(body.Beside.Value), float64(officeWidth)), Source: body.Beside.Source}}
	f = f.Judge()
	f.Why = fmt.Sprintf("Below the thighs, as deep as the knees, %s to the left and %s to the right of the seat's middle.%s", inSide(x.Left), inSide(x.Right), nobodyTold(x))
	for _, side := range []sit.Side{x.Left, x.Right} {
		if side.Name != "" {
			involve(&f, side.Part, side.Wall)
		}
	}
	switch {
	case f.Status == find.Fail:
		f.Status = find.Warn
		f.Fix = []find.Fix{hint("make %.0f mm more room beside the seat", float64(up(need-width)))}
		if width < oshaWidth {
			f.Why += fmt.Sprintf(" %.0f mm are the least anywhere (OSHA).", float64(oshaWidth))
		}
	case width < enWidth:
		f.Status = find.Note
		f.Why += fmt.Sprintf(" Enough for the hips; to turn on the chair %.0f mm are usual (EN 527-1).", float64(enWidth))
		f.Fix = []find.Fix{hint("%.0f mm more room beside the seat would allow turning", float64(up(enWidth-width)))}
	}
	if lean := (x.Left.Free - x.Right.Free) / 2; min(x.Left.Free, x.Right.Free) < need/2 && width >= need {
		f.Status = find.Warn
		f.Why += " The seat is not in the middle of it."
		f.Fix = []find.Fix{hint("sit %.0f mm further %s", float64(up(need/2-min(x.Left.Free, x.Right.Free))), leftOrRight(-lean))}
	}
	return []find.Finding{f}
}

// inSide says how much room there is to one side, and what ends it.
func inSide(side sit.Side) string {
	if side.Name == "" {
		return fmt.Sprintf("more than %.0f mm", float64(sit.Widest))
	}
	return fmt.Sprintf("%.0f mm (%s)", float64(side.Free), side.Name)
}
