package lists

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/model/calc/saw"
	"slabwright/model/cut"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// Bought is one kind of slab or bar that is bought of what is on offer.
type Bought struct {
	What, Size string
	Count      int
	Price      float64   // of one
	Mass       unit.Mass // of all, as sold
	For        []string
	Mind       string
	Place      string // where it is sold
}

// BoughtStock gives the slabs, bars and packs that a plan uses.
func BoughtStock(s *cut.Shopping) []Bought {
	if s == nil {
		return nil
	}
	var out []Bought
	for _, l := range s.Wood {
		out = append(out, slabsBought(l)...)
	}
	for _, l := range s.Steel {
		out = append(out, barsBought(l)...)
	}
	for _, l := range s.Packs {
		out = append(out, packsBought(l)...)
	}
	return out
}

func packsBought(l cut.PackLot) []Bought {
	var out []Bought
	for i, n := range l.Buy {
		if o := l.Offers[i]; n > 0 {
			out = append(out, Bought{What: fmt.Sprintf("pack on offer: %s", cut.PackName(o)), Size: fmt.Sprintf("%s, %d in it", l.Need.Size, o.Pieces), Count: n, Price: o.Price, For: l.Need.For, Mind: l.Need.Mind, Place: o.Place})
		}
	}
	return out
}

func slabsBought(l cut.WoodLot) []Bought {
	var out []Bought
	for i, sh := range l.Problem.Sheets {
		b := Bought{What: fmt.Sprintf("slab on offer: %s", sh.ID), Price: sh.Price, Mind: "moisture, checks at the ends, thickness left when flat"}
		o := l.Offers[i]
		b.Place = o.Place
		width := mm(o.Width)
		if len(o.Widths) > 0 {
			width = mm(slices.Min(o.Widths)) + "–" + mm(slices.Max(o.Widths))
		}
		b.Size = fmt.Sprintf("%s x %s x %s", mm(sh.Length), width, mm(o.Thickness))
		for _, lay := range l.Plan.Layouts {
			if lay.Sheet == sh.ID {
				b.Count++
				for _, p := range lay.Placed {
					b.For = with(b.For, p.Item)
				}
			}
		}
		if b.Count > 0 {
			if sp, err := stock.SpeciesByName(l.Species); err == nil {
				b.Mass = sp.Density.Mass(unit.Volume(float64(sh.Length)*float64(o.Width)*float64(o.Thickness))) * unit.Mass(b.Count)
			}
			out = append(out, b)
		}
	}
	return out
}

func barsBought(l cut.SteelLot) []Bought {
	var out []Bought
	for i, bar := range l.Problem.Bars {
		b := Bought{What: "steel angle, bar", Size: bar.ID, Price: bar.Price, Mind: "straight, both legs at a right angle"}
		if i < len(l.Offers) {
			b.Place = l.Offers[i].Place
		}
		for _, row := range l.Plan.Bars {
			if row.Bar == bar.ID {
				b.Count++
				for _, p := range row.Pieces {
					b.For = with(b.For, p.ID)
				}
			}
		}
		if b.Count > 0 {
			if a, err := stock.Angle(l.Section); err == nil {
				b.Mass = unit.Mass(float64(a.Mass) * float64(bar.Length) / 1000 * float64(b.Count))
			}
			out = append(out, b)
		}
	}
	return out
}

// Cuts is cuts.csv: one line per saw cut, in the order of sawing. setting_mm is
// the distance from the edge named in from; with track, a mark on the slab, at_mm
// from its base line. Of bars, at_mm runs from the left end of the bar.
func Cuts(s *cut.Shopping) ([]byte, error) {
	rows := [][]string{{"stock", "no", "cut", "kind", "at_mm", "end_at_mm", "setting_mm", "from", "track", "piece_length_mm", "piece_width_mm", "frees"}}
	if s == nil {
		return table(rows)
	}
	for _, l := range s.Wood {
		for n, lay := range l.Plan.Layouts {
			for k, c := range lay.Cuts {
				rows = append(rows, []string{lay.Sheet, fmt.Sprint(n + 1), fmt.Sprint(k + 1), kindOf(c), mm(c.At), mm(c.EndAt), mm(c.Setting), string(c.From), fmt.Sprint(c.Track || c.Slanted()),
					mm(c.Piece.Length), mm(c.Piece.Width), strings.Join(c.Frees, "; ")})
			}
		}
	}
	for _, l := range s.Steel {
		for n, row := range l.Plan.Bars {
			for k, p := range row.Pieces {
				i := slices.IndexFunc(l.Problem.Pieces, func(x saw.Piece) bool { return x.ID == p.ID })
				x := l.Problem.Pieces[i]
				end := p.At + x.Length
				kind := "cross cut"
				if x.Right != 0 {
					kind = "mitre"
				}
				rows = append(rows, []string{row.Bar, fmt.Sprint(n + 1), fmt.Sprint(k + 1), kind, mm(end), mm(end + x.Right), mm(x.Length), "left", "false", mm(x.Length), "", p.ID})
			}
		}
	}
	return table(rows)
}

func kindOf(c saw.Cut) string {
	switch {
	case c.Slanted():
		return "slanted rip"
	case c.Rip:
		return "rip"
	}
	return "cross cut"
}
