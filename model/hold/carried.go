package hold

import "slabwright/model/unit"

// Carried is the most that a carrier takes in any design case: forces, line
// loads and pulls need not come from the same case.
type Carried struct {
	Carrier  string
	Force    float64     // N
	PerMM    float64     // N/mm
	At       unit.Length // of the largest line load, from the carrier's left end
	FromHeel unit.Length // of the largest line load
	Pull     float64     // N, of one screw
	BarSag   unit.Length // of an angle, between and at its anchors
	TipSag   unit.Length // of the toe of its seat leg
}

// Carried gives what every carrier of a slab has to take at most.
func (b *Slab) Carried() []Carried {
	var out []Carried
	for _, c := range b.Cases {
		if !c.Design {
			continue
		}
		for i, r := range c.Runs {
			if i == len(out) {
				out = append(out, Carried{Carrier: r.Carrier})
			}
			most := &out[i]
			most.Force = max(most.Force, r.Force)
			most.BarSag, most.TipSag = max(most.BarSag, r.BarSag), max(most.TipSag, r.TipSag)
			if p := r.Peak(); p.PerMM() > most.PerMM {
				most.PerMM, most.At, most.FromHeel = p.PerMM(), p.Along, p.FromHeel
			}
			for _, s := range r.Screws {
				most.Pull = max(most.Pull, s.Force)
			}
		}
	}
	return out
}
