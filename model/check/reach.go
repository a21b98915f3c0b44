package check

import (
	"fmt"

	"slabwright/model/find"
	"slabwright/model/sit"
)

var reachRule = Rule{
	ID: "reach", Title: "Hands reach the back edge and the shelves",
	Basis: "grip forward and overhead from the ANSUR II regressions, put on one circle about the shoulder; 80 mm from fingertip to grip: from memory",
	Why:   "What is beyond the reach of somebody who sits is fetched by leaning or standing up. That is no harm once a day, and one a hundred times.",
	Run:   func(s Site) []find.Finding { return s.eachSitter(s.reachOf) },
}

func (s Site) reachOf(x *sit.Sitter) []find.Finding {
	arm := x.Hand()
	back := about("Reach to the back edge for", x)
	back.Assumed = []find.Assumption{rests("grip past the front edge", x, 10), {What: fmt.Sprintf("shoulder %.0f mm above the floor, arm %.0f mm to the grip", float64(arm.Up), float64(arm.Reach)), Source: "derived: head, stature, shoulder, both reaches"}}
	in, ok := arm.At(x.Surface())
	if !ok {
		in = 0
	}
	back.Measured, back.Required = spread(in, x.Sizes[10].SD), limit(find.AtLeast, x.Depth)
	back = back.Judge()
	back.Why = fmt.Sprintf("Sitting straight, the hand grips %.0f mm in from the front on the surface; the back edge is %.0f mm in.%s", float64(in), float64(x.Depth), nobodyTold(x))
	if back.Status == find.Fail {
		back.Status = find.Note
		back.Fix = []find.Fix{hint("keep what is used often within %.0f mm of the front; sockets and switches at the back want leaning by %.0f mm", float64(down(in)), float64(up(x.Depth-in)))}
	}
	out := []find.Finding{back}
	for _, o := range x.Over {
		if o.Shelf {
			out = append(out, shelfReach(x, o, arm))
		}
	}
	return out
}

// shelfReach judges the hand against the top face of a shelf at its front edge.
func shelfReach(x *sit.Sitter, o sit.Overhang, arm sit.Arm) find.Finding {
	f := about("Reach to "+o.Name+" for", x)
	involve(&f, o.Part, o.Wall)
	f.At = at(x.At(0, o.Edge).Up(x.Floor + o.High))
	f.Assumed = []find.Assumption{{What: fmt.Sprintf("shoulder %.0f mm above the floor, arm %.0f mm to the grip", float64(arm.Up), float64(arm.Reach)), Source: "derived: head, stature, shoulder, both reaches"}}
	in, ok := arm.At(o.High)
	f.Required = limit(find.AtLeast, o.Edge)
	if !ok {
		f.Status = find.Note
		f.Why = fmt.Sprintf("The top of %s, %.0f mm above the floor, is higher than the hand comes, sitting: it is reached standing.%s", o.Name, float64(o.High), nobodyTold(x))
		f.Required = nil
		return f
	}
	f.Measured = spread(in, x.Sizes[10].SD)
	f = f.Judge()
	f.Why = fmt.Sprintf("At the height of the top of %s, %.0f mm, the hand comes %.0f mm in from the front, sitting; the shelf begins at %.0f mm.%s", o.Name, float64(o.High), float64(in), float64(o.Edge), nobodyTold(x))
	if f.Status == find.Fail {
		f.Status = find.Note
		f.Fix = []find.Fix{hint("lean forward by %.0f mm or stand up for it", float64(up(o.Edge-in)))}
	}
	return f
}
