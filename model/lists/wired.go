package lists

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/unit"
	"slabwright/model/wire"
)

// Wired gives what the wiring of a job needs: cables that are cut to length,
// strips, supplies, fuses. Leads that are there already are left out.
func Wired(d *model.Design, w model.Wiring) []Purchase {
	var b basket
	p := wire.Of(d, w)
	for _, r := range p.Runs {
		if !r.Found || r.Cable.Stock > 0 {
			continue
		}
		what := map[model.CableClass]string{model.Mains: "mains cable", model.LowVoltage: "cable for low voltage", model.Data: "data cable"}[r.Cable.Class]
		mind := fmt.Sprintf("bends to %s", mm(r.Wanted))
		if r.Cable.Class == model.Mains {
			mind = fmt.Sprintf("bends to %s; type and section by an electrician", mm(r.Wanted))
		}
		if r.Feeds != "" {
			for _, l := range p.Lights {
				if l.Light.Name == r.Feeds {
					what = fmt.Sprintf("two-core cable 2 x %g mm2", l.Wire.SquareMM)
				}
			}
		}
		b.add(Purchase{What: what, Size: fmt.Sprintf("Ø%s, %.1f m", mm(r.Cable.Dia), math.Ceil(float64(r.Needed)/100)/10), Count: 1, For: []string{runName(r)}, Mind: mind})
	}
	for _, l := range p.Lights {
		if l.Pieces == 0 {
			continue
		}
		s := l.Light.Strip
		mind := fmt.Sprintf("cut every %s", mm(s.Pitch))
		if s.Power > 10 {
			mind = fmt.Sprintf("cut every %s; with an aluminium profile of that length", mm(s.Pitch))
		}
		b.add(Purchase{What: fmt.Sprintf("light strip %g V, %g W/m", float64(s.Supply), float64(s.Power)), Size: fmt.Sprintf("%s, %d pitches", mm(l.Run), l.Pieces), Count: 1, For: []string{l.Light.Name}, Mind: mind})
		fuses := max(1, len(l.Feeds))
		if m := l.Dimmer; m != nil {
			fuses = 1 // before the dimmer
			if m.OK && m.First {
				b.add(Purchase{What: "dimmer for lights at low voltage", Size: fmt.Sprintf("%g V, %g A", float64(s.Supply), float64(m.Rated)), Count: 1, For: []string{l.Light.Name}, Mind: "within reach"})
			}
		}
		if l.Fuse > 0 {
			b.add(Purchase{What: "fuse with holder", Size: fmt.Sprintf("%g A", float64(l.Fuse)), Count: fuses, For: []string{l.Light.Name}})
		}
	}
	lids(&b, d)
	for _, s := range p.Supplies {
		if s.OK {
			b.add(Purchase{What: "supply for lights", Size: fmt.Sprintf("%g V, %g W", float64(s.Voltage), float64(s.Rated)), Count: 1, For: []string{s.Device}, Mind: "within reach, with air around it"})
		}
	}
	return b.list
}

// lids gives the strips that close grooves.
func lids(b *basket, d *model.Design) {
	for _, p := range d.Parts {
		if p.Slab == nil {
			continue
		}
		for _, f := range p.Slab.Features {
			if _, long := f.CutLength(); long > 0 {
				b.add(Purchase{What: "lid strip for a groove", Size: fmt.Sprintf("%s x %s, %s long", mm(f.Lid.Width), mm(f.Lid.Thick), mm(10*unit.Length(math.Ceil(float64(long)/10)))), Count: 1,
					For: []string{p.ID + ": " + f.Name}, Mind: "grain along it; screwed, so that it opens again"})
			}
		}
	}
}

// runName is the name of a cable; feeds are told by what they feed.
func runName(r wire.Run) string {
	switch {
	case r.ToDimmer:
		return fmt.Sprintf("lead to the dimmer of %s", r.Feeds)
	case r.Feeds != "":
		return fmt.Sprintf("feed of %s", r.Feeds)
	}
	return r.Cable.Name
}
