package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/calc/moisture"
	"slabwright/model/find"
)

// nearYear is how far the moisture of the wood may be off what it has in the
// room over the year.
const nearYear moisture.Content = 1

// wettest is what wood for a room may have; above it the figures of movement
// are not meant, and it shrinks for a long time.
const wettest = moisture.Highest

var moistureRule = Rule{
	ID: "wood-moisture", Title: "The wood is as dry as the room will make it",
	Basis: "Wood Handbook FPL-GTR-190, chapters 4 and 13; within 1 % of the room's year: " + practice,
	Why:   "\"Dry\" is a number read in the core of the slab. Wood that is fitted too moist shrinks until it cracks or its joints gape, wood that is too dry swells against the walls; a slab with oil on one face only bends.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			m := s.movement(p)
			if out == nil {
				out = append(out, delivered(s.Job.House.Climate, m))
			}
			out = append(out, grows(p, m), faces(s.Job.House.Climate, p, m))
		}
		if out == nil {
			out = append(out, find.Finding{Status: find.Pass, Why: "There is no slab of wood."})
		}
		return out
	},
}

func content(c moisture.Content) *find.Quantity {
	return &find.Quantity{Value: round3(float64(c)), Unit: "% moisture"}
}

// delivered holds the moisture of the wood against the year of the room.
func delivered(c model.Climate, m model.Movement) find.Finding {
	if len(m.Untold) > 0 {
		f := unknown(fmt.Sprintf("nobody has told %s.", list(m.Untold)),
			hint("read the moisture of the wood in its core with a meter, hang a hygrometer in the room, and write both into the job file: house, climate"))
		f.Assumed = m.Assumed
		return f
	}
	low, high := m.Dry-nearYear, min(m.Damp+nearYear, wettest)
	f := find.Finding{
		Measured: content(m.Fitting), Required: &find.Limit{Value: round3(float64(low)), High: round3(float64(high)), Relation: find.Between, Unit: "% moisture"},
		Why:     fmt.Sprintf("The wood has %.1f %% when it is fitted; in the air of the room it goes from %.1f to %.1f %% over the year.", float64(m.Fitting), float64(m.Dry), float64(m.Damp)),
		Assumed: m.Assumed,
	}.Judge()
	if f.Status != find.Fail {
		return f
	}
	f.Status = find.Warn
	if m.Fitting > high {
		f.Fix = []find.Fix{hint("let it lie in the room, on sticks, until a meter in the core reads %.0f %% or less: weeks, for a thick slab months", float64(high))}
		return f
	}
	f.Fix = []find.Fix{hint("let it lie in the room, on sticks, until a meter in the core reads %.0f %% or more", float64(low))}
	return f
}

// grows tells how much a slab grows and shrinks.
func grows(p *model.Part, m model.Movement) find.Finding {
	f := find.Finding{Status: find.Note, Title: "Swelling and shrinking of " + p.ID, Parts: []string{p.ID}, Assumed: m.Assumed}
	f.Why = fmt.Sprintf("%s: width %s, length %s over the year, from the size at fitting.",
		capital(p.ID), fromSize(float64(m.Width(m.Dry)), float64(m.Width(m.Damp))), fromSize(float64(m.Length(m.Dry)), float64(m.Length(m.Damp))))
	if m.Held.By == model.ByNone {
		f.Why += " Nothing holds it: it may move to any side."
	} else {
		f.Why += fmt.Sprintf(" It is held by %s, %.0f mm from its back edge; from there the wood moves.", m.Held.By, math.Round(-float64(m.Held.At.Y))+0)
	}
	if m.Dry < moisture.Lowest || m.Damp > moisture.Highest {
		f.Why += " The room goes beyond 6 to 14 %, for which such figures are meant."
	}
	return f
}

func fromSize(a, b float64) string {
	return fmt.Sprintf("%+.1f to %+.1f mm", round3(a), round3(b))
}

// faces cautions against oil on one face.
func faces(c model.Climate, p *model.Part, m model.Movement) find.Finding {
	_, width := p.Slab.Blank()
	rise := moisture.Bow(width, p.Slab.Thickness, m.Across, 1)
	f := find.Finding{Title: "Both faces of " + p.ID + " are finished alike", Parts: []string{p.ID}, Status: find.Pass, Assumed: m.Assumed}
	bends := fmt.Sprintf("1 %% more moisture in one face than in the other bends it %.1f mm over its width", hundredth(rise))
	switch c.Finished {
	case model.BothFaces:
		f.Why = fmt.Sprintf("%s gets the same finish on both faces. %s.", capital(p.ID), capital(bends))
	case model.OneFace:
		f.Status = find.Warn
		f.Why = fmt.Sprintf("%s is finished on one face: the other takes up and gives off moisture faster, and %s.", capital(p.ID), bends)
		f.Fix = []find.Fix{hint("finish both faces, the edges and above all the ends alike, on the same day")}
	default:
		f.Status = find.Note
		f.Why = fmt.Sprintf("Finish both faces of %s alike: %s.", p.ID, bends)
	}
	return f
}
