package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/calc/body"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// Where a surface lies best above the elbow, and from where on the feet need a
// footrest.
const (
	easiest  unit.Length = 30
	footrest unit.Length = 50
)

var elbowRule = Rule{
	ID: "elbow-height", Title: "The surface suits the elbows",
	Basis: "surface at elbow height, 0 to +30 mm: public teaching text; a footrest from 50 mm on: " + practice,
	Why:   "Arms rest and work best on a surface at the height of the elbow. Thighs ask for it to be high, elbows for it to be low: between them there is room for the slab and a little movement, or there is not, and no height mends that.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, seat := range s.Design.Seats {
			for _, p := range sitters(seat) {
				if f, ok := s.elbows(seat, p); ok {
					out = append(out, f)
				}
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "Nobody is said to sit here."})
		}
		return out
	},
}

// elbows compares the surface with the elbows of one person: the wish that
// pulls against the thighs.
func (s Site) elbows(seat model.Seat, p model.Person) (find.Finding, bool) {
	slab := s.Design.Part(seat.At)
	r, err := model.LegRoomOf(p)
	if err != nil || slab == nil || slab.Slab == nil {
		return find.Finding{}, false
	}
	var floor unit.Length
	for _, z := range s.Design.Zones {
		if z.Seat == seat.Name && z.Person == r.Person {
			floor = z.Floor
		}
	}
	f := find.Finding{
		Title: fmt.Sprintf("Surface and elbows of %s at %s", p.Name, seat.Name), Parts: []string{slab.ID}, Line: seat.Line,
		Required: &find.Limit{Value: 0, High: float64(easiest), Relation: find.Between, Unit: "mm"},
	}
	top, elbow := slab.Slab.Top-floor, r.Elbow
	if p.Stature == 0 && p.Elbow == 0 {
		return s.elbowRange(f, p, top), true
	}
	over := top - elbow
	f.Measured = spread(over, r.SDElbow)
	f = f.Judge()
	f.Why = fmt.Sprintf("Sitting with shoes on, the elbows of %s are at about %.0f mm; the surface is %.0f mm %s. Work is easiest at 0 to %.0f mm above.", p.Name, float64(elbow), float64(abs(over)), aboveOrBelow(over), float64(easiest))
	if p.Elbow == 0 {
		f.Assumed = []find.Assumption{{What: "elbow height from stature is a weak guess: measure it on the person, seated", Source: "ANSUR II regression, R2 0.03 for the elbow above the seat"}}
	}
	lowest := r.Thigh + slab.Slab.Thickness // the lowest surface that clears the thighs
	switch pull := lowest - elbow - easiest; {
	case pull > 0:
		f.Status = find.Warn
		f.Why += fmt.Sprintf(" Thighs and elbows pull apart: the thighs ask for a surface at %.0f mm or more, the elbows for %.0f mm or less.", float64(lowest), float64(elbow+easiest))
		f.Fix = append(f.Fix,
			hint("take the slab %.0f mm thinner, or thin its front 250 mm from below by that much", float64(up(pull))),
			hint("or accept a surface %.0f mm above the elbows: a higher seat and a footrest lift thighs and elbows alike, so they do not help", float64(lowest-elbow)))
	case over > footrest:
		f.Status = find.Note
		f.Why += fmt.Sprintf(" Seat and feet must go up by %.0f mm: a footrest.", float64(over-easiest))
	case over < 0 || over > easiest:
		f.Status = find.Note
		f.Why += fmt.Sprintf(" From %.0f to %.0f mm both thighs and elbows would be served.", float64(max(lowest, elbow)), float64(elbow+easiest))
	default:
		f.Why += fmt.Sprintf(" The thighs ask for %.0f mm at least.", float64(lowest))
	}
	return f, true
}

// elbowRange says what is known of somebody who is not described: nothing but
// the range of most people.
func (s Site) elbowRange(f find.Finding, p model.Person, top unit.Length) find.Finding {
	b := body.Person{Sex: body.Sex(p.Sex)}
	e, err := b.Estimate(body.Elbow)
	if err != nil {
		return f
	}
	shoe := p.Shoe
	if shoe == 0 {
		shoe = body.Shoe(b.Sex).Value
	}
	f.Status, f.Required = find.Note, nil
	f.Why = fmt.Sprintf("Nobody is described who will sit here: elbows of most people, shoes on, are between %.0f and %.0f mm; the surface is at %.0f mm. Stature, or better the elbow's height above the seat, decides.",
		float64(e.Low+shoe), float64(e.High+shoe), float64(top))
	f.Assumed = []find.Assumption{{What: string(e.Basis), Source: e.Source}}
	return f
}

func aboveOrBelow(over unit.Length) string {
	if over < 0 {
		return "below them"
	}
	return "above them"
}
