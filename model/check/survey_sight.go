package check

import (
	"fmt"
	"strings"

	"slabwright/model/find"
)

var sightRule = Rule{
	ID: "survey-sight", Title: "Every reading can have been taken",
	Basis: "geometry: the straight line of each reading against the walls as adjusted; it may pass 10 mm behind a corner, and three standard deviations of the corners",
	Why:   "A tape cannot be drawn through a chimney breast. Such a reading is the distance of other corners, or was worked out on paper, and it spoils the room or seems to prove it.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, x := range s.Room.Survey.Refused {
			where := ""
			if x.Where != "" {
				where = " (" + x.Where + ")"
			}
			f := find.Finding{
				Status: find.Warn, Title: "A reading runs through a wall",
				Why: fmt.Sprintf("%s%s was left out: %s.", x.Name, where, x.Why),
				Fix: []find.Fix{hint("look on your paper which corners %s was measured between, and mend or delete that line", x.Name)},
			}
			if x.Needed {
				f = unknown(fmt.Sprintf("the room hangs on %s%s, but %s.", x.Name, where, x.Why),
					hint("look on your paper which corners %s was measured between, and mend that line", x.Name))
				f.Title = "The room hangs on a reading that runs through a wall"
				if x.Instead != nil {
					f.Fix = append(f.Fix, hint("or measure %s instead", strings.Join(x.Instead, " or ")))
				}
			}
			out = append(out, f)
		}
		if out == nil {
			out = []find.Finding{{Status: find.Pass, Why: fmt.Sprintf("The straight lines of all %d readings run through the room.", len(s.Room.Survey.Readings))}}
		}
		return out
	},
}
