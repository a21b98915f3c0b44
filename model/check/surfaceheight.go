package check

import (
	"fmt"

	"slabwright/model/calc/body"
	"slabwright/model/find"
	"slabwright/model/sit"
	"slabwright/model/unit"
)

// Heights of work surfaces, EN 527-1 as quoted in a public table, and where a
// surface to stand at lies below the bent elbow.
const (
	enSitLow, enSitHigh     unit.Length = 650, 850
	enStandLow, enStandHigh unit.Length = 950, 1250
	standLow, standHigh     unit.Length = 100, 50
)

var surfaceHeight = Rule{
	ID: "surface-height", Title: "Surface height proposed for sitting and standing",
	Basis: "sitting: elbow height 0 to +30 mm; standing: 50 to 100 mm below the bent elbow: public teaching text; 650 to 850 and 950 to 1250 mm: EN 527-1 as quoted in a public table; body from the ANSUR II regressions",
	Why:   "A surface that is screwed to walls has one height for years. The height asked for follows from the person; the thickness of slab and steel decides whether thighs and elbows can both have it.",
	Run:   func(s Site) []find.Finding { return s.eachSitter(s.proposed) },
}

// Proposal is the surface that suits somebody, above the floor under the seat.
// Cost is how far above SitHigh the lowest surface lies that clears the thighs:
// what the thickness of the slab takes; 0 or less: both can be had.
type Proposal struct {
	SitLow, SitHigh, StandLow, StandHigh unit.Length
	Thighs, Cost                         unit.Length
}

// Proposed reckons the surface from the elbows and the thighs in shoes.
func Proposed(x *sit.Sitter) Proposal {
	sitting, standing := x.Of(body.Elbow).Mean+x.Shoe, x.Of(body.StandingElbow).Mean+x.Shoe
	p := Proposal{SitLow: sitting, SitHigh: sitting + easiest, StandLow: standing - standLow, StandHigh: standing - standHigh}
	p.Thighs = x.Legs.Thigh + x.Slab.Slab.Thickness
	p.Cost = p.Thighs - p.SitHigh
	return p
}

// proposed compares the surface with what is proposed: for sitting, or for
// standing where it is as high as that.
func (s Site) proposed(x *sit.Sitter) []find.Finding {
	elbow, stand := x.Of(body.Elbow), x.Of(body.StandingElbow)
	top := x.Surface()
	standing := top >= (enSitHigh+enStandLow)/2
	want := Proposed(x)
	thighs := want.Thighs
	low, high, sd := want.SitLow, want.SitHigh, elbow.SD
	if standing {
		low, high, sd = want.StandLow, want.StandHigh, stand.SD
	}
	f := about("Surface height for", x)
	f.Status, f.Measured = find.Note, spread(top, sd)
	f.Assumed = []find.Assumption{rests("elbow, sitting,", x, 3), rests("elbow, standing,", x, 6), {What: fmt.Sprintf("shoe %.0f mm", float64(x.Shoe)), Source: body.Shoe(body.Sex(x.Person.Sex)).Source}}
	f.Why = fmt.Sprintf("Proposed for sitting: %s to %s mm at the elbows; the thighs and %.0f mm of slab ask for %.0f mm or more. Proposed for standing: %s to %s mm.",
		wholeMM(want.SitLow), wholeMM(want.SitHigh), float64(x.Slab.Slab.Thickness), float64(thighs), wholeMM(want.StandLow), wholeMM(want.StandHigh))
	if want.Cost > 0 {
		f.Why += fmt.Sprintf(" The build-up costs %.0f mm: so much too high for the elbows is the lowest surface that clears the thighs.", float64(up(want.Cost)))
	}
	if !x.Told {
		f.Why += fmt.Sprintf(" Nobody is described: elbows of 9 in 10 lie between %s and %s mm sitting, %s and %s mm standing.",
			wholeMM(elbow.Low+x.Shoe), wholeMM(elbow.High+x.Shoe), wholeMM(stand.Low+x.Shoe), wholeMM(stand.High+x.Shoe))
	}
	from, to := enSitLow, enSitHigh
	if standing {
		from, to = enStandLow, enStandHigh
	}
	suits := min(max(low, thighs), max(high, thighs))
	if standing {
		suits = (low + high) / 2
	}
	if top < suits-1 || top > max(high, suits)+1 {
		f.Fix = []find.Fix{hint("a surface at about %.0f mm suits %s; measure the elbow on the person, seated, before that", float64(suits), x.Person.Name)}
	}
	if top < from || top > to {
		f.Status = find.Warn
		f.Why += fmt.Sprintf(" The surface at %.0f mm is outside %.0f to %.0f mm (EN 527-1).", float64(top), float64(from), float64(to))
		f.Fix = append(f.Fix, hint("bring the surface between %.0f and %.0f mm", float64(from), float64(to)))
	}
	return []find.Finding{f}
}
