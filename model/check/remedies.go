package check

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/hold"
	"slabwright/model/unit"
)

// A slab is made thicker by mostThicker at most where it fails, by someThicker
// where that only saves a look at the wood.
const (
	mostThicker unit.Length = 40
	someThicker unit.Length = 20
)

// vain begins a hint where nothing does it by itself.
const vain = "tried in vain, each by itself: "

func inVain(f find.Fix) bool { return strings.HasPrefix(f.Text, vain) }

// remedies are hints that were found by computing them; says tells what comes
// of each.
func (s Site) remedies(p *model.Part, w hold.Wanted, says func(hold.Slab) string) []find.Fix {
	if s.bare {
		return nil
	}
	if w.Thicker == 0 {
		w.Thicker = mostThicker
	}
	var out []find.Fix
	found, missed := hold.Remedies(s.Design, s.Job, p.ID, w)
	for _, r := range found {
		out = append(out, s.remedy(p, r, says(r.With)))
	}
	if out == nil && missed == nil {
		return []find.Fix{hint("carry %s along one more edge: what carries it now leaves nothing to try", p.ID)}
	}
	if out == nil {
		tried := strings.Replace(list(missed), "more wood", fmt.Sprintf("%.0f mm more wood", float64(w.Thicker)), 1)
		out = []find.Fix{hint(vain+"%s", tried)}
	}
	return out
}

// remedy says what to change, and the parameter that does it.
func (s Site) remedy(p *model.Part, r hold.Remedy, then string) find.Fix {
	switch {
	case r.Thick > 0:
		f := s.set(hint("make %s %.0f mm thick: %s", p.ID, float64(r.Thick), then), "thickness", p.Slab.Thickness, r.Thick)
		if f.Value == nil && p.Kind == model.KindShelf {
			f = s.set(f, "shelf_thick", p.Slab.Thickness, r.Thick)
		}
		return f
	case r.Shallow != "":
		return hint("cut %s of %s %.0f mm deep: %s", r.Shallow, p.ID, float64(r.Depth), then)
	case r.Cuts != nil:
		return hint("move %s of %s by %s: %s", list(r.Cuts), p.ID, onSlab(r.Way), then)
	case r.Joint != "":
		return hint("join %s with its neighbour by %s: %s (set joint to %s)", p.ID, joints[r.Joint], then, r.Joint)
	case r.Section != "":
		return hint("take %s for the angles of %s: %s", r.Section, p.ID, then)
	case r.Wall != "":
		return hint("carry %s on %s %s along the wall %s too: %s", p.ID, bracketWord(r.Bracket), r.Bracket.Bracket().Profile(), r.Wall, then)
	case r.Rods > 0:
		return hint("hang %s on %d rods, evenly from the first to the last: %s", p.ID, r.Rods, then)
	case r.Post != "":
		to := hint("move %s by %s, to %s of %s: %s", r.Post, onSlab(r.Way), placeOn(r.To), p.ID, then)
		return s.set(to, "leg_at", r.To.X-r.Way.X, r.To.X)
	}
	return hint("stand one more table leg under %s, %s: %s", p.ID, placeOn(*r.Prop), then)
}

func bracketWord(p *model.Part) string {
	if p.Cleat != nil {
		return "a cleat"
	}
	return "an angle"
}

// placeOn says where something stands, told from the left end and the back edge.
func placeOn(v geom.Vec) string {
	return fmt.Sprintf("%.0f mm from the left end and %.0f mm from the back edge", float64(v.X), float64(v.Y))
}

// onSlab says how far to go along a slab or across it.
func onSlab(way geom.Vec) string {
	switch {
	case way.X > 0:
		return fmt.Sprintf("%.0f mm to the right", float64(way.X))
	case way.X < 0:
		return fmt.Sprintf("%.0f mm to the left", -float64(way.X))
	case way.Y > 0:
		return fmt.Sprintf("%.0f mm towards the back edge", float64(way.Y))
	}
	return fmt.Sprintf("%.0f mm away from the back edge", -float64(way.Y))
}

// joints are the kinds of joints in words.
var joints = map[model.JointKind]string{model.DowelJoint: "dowels", model.PlateJoint: "steel plates from below", model.GluedJoint: "gluing both into one"}
