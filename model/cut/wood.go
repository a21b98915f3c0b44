package cut

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"slabwright/model"
	"slabwright/model/calc/saw"
	"slabwright/model/unit"
)

// woodLots groups the slabs and boards that are still to be made, the thickest
// first: what it takes is gone for the thinner ones.
func woodLots(d *model.Design) []WoodLot {
	var out []WoodLot
	add := func(species string, thickness unit.Length, b Blank) {
		i := slices.IndexFunc(out, func(l WoodLot) bool { return l.Species == species && l.Thickness == thickness })
		if i < 0 {
			i = len(out)
			out = append(out, WoodLot{Species: species, Thickness: thickness})
		}
		out[i].Blanks = append(out[i].Blanks, b)
	}
	for _, p := range d.Parts {
		if p.Cut != nil {
			continue
		}
		if p.Slab != nil {
			add(p.Slab.Species.Name, p.Slab.Thickness, BlankOf(d, p))
		}
		if p.RollOut != nil {
			for i := range p.RollOut.Boards {
				b := &p.RollOut.Boards[i]
				add(p.Material, b.Thickness, boardBlank(p, b))
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Thickness > out[j].Thickness })
	return out
}

// wood plans one lot and takes what it uses out of the offers.
func (s *Shopping) wood(l WoodLot, left []model.SlabOffer, o model.Offers) {
	l.Problem = saw.Problem{Kerf: o.KerfWood, Aim: saw.LeastCost}
	l.Problem.Keep.Length, l.Problem.Keep.Width = worthLength, worthWidth
	if o.KerfWood == 0 {
		l.Problem.Kerf = usualWoodKerf
		s.WoodNotes.assume(fmt.Sprintf("The saw takes %s mm in wood: the job file says nothing. Common practice, no source.", mm(usualWoodKerf)))
	}
	for _, b := range l.Blanks {
		l.Problem.Items = append(l.Problem.Items, b.item())
	}
	var at []int // of each sheet among the offers
	for i, offer := range left {
		if offer.Species == l.Species && l.planes(offer.Thickness) && offer.Count >= 0 {
			l.Offers = append(l.Offers, offer)
			l.Problem.Sheets = append(l.Problem.Sheets, s.sheetOf(offer, i))
			at = append(at, i)
		}
	}
	if len(l.Offers) == 0 {
		s.WoodNotes.Open = append(s.WoodNotes.Open, fmt.Sprintf("no %s of %s to %s mm is on offer for %s", l.Species, mm(l.Thickness), mm(l.Thickness*mostPlaned), strings.Join(l.names(), ", ")))
		s.Wood = append(s.Wood, l)
		return
	}
	l.Plan = saw.PlanSheets(l.Problem, saw.Effort{Steps: steps})
	for _, m := range l.Plan.Missing {
		s.WoodNotes.Open = append(s.WoodNotes.Open, m.Why)
	}
	s.Cost += l.Plan.Objective
	l.Second = s.secondSlabs(l)
	l.Halved = s.halves(l)
	for k, n := range usedSheets(l.Problem, l.Plan) {
		if offer := &left[at[k]]; offer.Count > 0 && n > 0 {
			if offer.Count -= n; offer.Count == 0 {
				offer.Count = -1
			}
		}
	}
	s.Wood = append(s.Wood, l)
}

// mostPlaned is how many times as thick as the part a slab may be: more turns too
// much of it into chips. Common practice, no source.
const mostPlaned = 1.5

// planes says whether a slab of that thickness can be planed to the lot's.
func (l WoodLot) planes(thickness unit.Length) bool {
	return thickness >= l.Thickness && thickness <= l.Thickness*mostPlaned
}

// names lists the parts of a lot, each once.
func (l WoodLot) names() []string {
	var out []string
	for _, b := range l.Blanks {
		if !slices.Contains(out, b.Part.ID) {
			out = append(out, b.Part.ID)
		}
	}
	return out
}

// Offcuts at least this large are listed as worth keeping. Common practice, no
// source.
const (
	worthLength unit.Length = 250
	worthWidth  unit.Length = 60
)

// sheetOf draws a slab on offer: a straight edge stays at the bottom, the natural
// edge of one lies on top; of two, the widths lie evenly about a middle line.
func (s *Shopping) sheetOf(o model.SlabOffer, n int) saw.Sheet {
	out := saw.Sheet{ID: SlabName(o, n), Length: o.Length, Width: o.Width, Price: o.Price, Count: max(o.Count, 0)}
	for _, w := range o.Widths {
		out.Width = max(out.Width, w)
	}
	for _, f := range o.Flaws {
		out.KeepOut = append(out.KeepOut, saw.Rect{X: f.From, Y: f.Up, Length: f.Length, Width: f.Width})
	}
	switch o.Natural {
	case 1:
		out.Natural = []saw.Side{saw.High}
	case 2:
		out.Natural = []saw.Side{saw.Low, saw.High}
	}
	if len(o.Widths) == 0 {
		if o.Natural > 0 {
			s.WoodNotes.assume(fmt.Sprintf("%s is as wide as its narrowest place all along: its widths are not told.", capital(out.ID)))
		}
		return out
	}
	if o.Natural == 2 {
		s.WoodNotes.assume("Slabs with two natural edges are taken to lie evenly about a straight middle line: one width at a station does not tell more.")
	}
	for i, w := range o.Widths {
		at := unit.Length(i) * o.Every
		if o.Natural == 2 {
			out.Low = append(out.Low, saw.Station{At: at, Y: (out.Width - w) / 2})
			out.High = append(out.High, saw.Station{At: at, Y: (out.Width + w) / 2})
			continue
		}
		out.High = append(out.High, saw.Station{At: at, Y: w})
	}
	return out
}

// SlabName is what a slab on offer is called; n is its place among the offers.
func SlabName(o model.SlabOffer, n int) string {
	if o.Name == "" {
		return fmt.Sprintf("slab %d", n+1)
	}
	return o.Name
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// usedSheets counts how often a plan uses each sheet.
func usedSheets(p saw.Problem, plan saw.Plan) []int {
	out := make([]int, len(p.Sheets))
	for _, l := range plan.Layouts {
		if k := slices.IndexFunc(p.Sheets, func(s saw.Sheet) bool { return s.ID == l.Sheet }); k >= 0 {
			out[k]++
		}
	}
	return out
}
