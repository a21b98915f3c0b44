// Package lists writes what shops and shoppers copy from: parts, holes, things
// to buy, as comma-separated values (RFC 4180) with a heading line.
package lists

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/cut"
	"slabwright/model/unit"
)

// Parts is parts.csv: one line per item, that is for all parts that are made
// the same.
func Parts(d *model.Design) ([]byte, error) {
	rows := [][]string{{"mark", "count", "part", "kind", "material", "size_mm", "length_mm", "width_mm", "thickness_mm", "mass_kg", "mass_all_kg", "bears_on", "already_cut"}}
	for _, i := range Items(d) {
		p := i.First()
		l, w, t := Size(p)
		rows = append(rows, []string{
			fmt.Sprint(i.Mark), fmt.Sprint(i.Count()), strings.Join(i.Names(), "; "), string(p.Kind), p.Material, p.Size(),
			mm(l), mm(w), mm(t), kg(p.Mass()), kg(i.Mass()), strings.Join(i.Bears(), "; "), cutOn(p),
		})
	}
	return table(rows)
}

// cutOn is the day on which a part was cut, "" for one that is still to be made.
func cutOn(p *model.Part) string {
	if p.Cut == nil {
		return ""
	}
	return p.Cut.On
}

// Holes is holes.csv: one line per hole, in the axes of its own part. In slabs
// x runs along the reference edge from its left end and y away from it; in
// angles and cleats x runs from the left end and y from the heel, or the upper back
// arris, across the leg or face.
func Holes(d *model.Design) ([]byte, error) {
	rows := [][]string{{"mark", "part", "hole", "kind", "face_or_leg", "x_mm", "y_mm", "dia_mm", "slot_mm", "slot_along", "depth_mm", "for"}}
	for _, p := range d.Parts {
		if p.Slab != nil {
			for _, f := range p.Slab.Features {
				at := f.At
				if f.Kind == model.Pocket || f.Kind == model.CutOut || f.Kind == model.Groove {
					at = f.Outline.Centroid()
				}
				face, depth := string(f.Face), mm(f.Depth)
				if f.Kind == model.Through || f.Kind == model.CutOut {
					face, depth = "through", mm(p.Slab.Thickness)
				}
				if f.Kind == model.Bore {
					face = "edge " + p.Slab.Edges[f.Edge].Name
				}
				rows = append(rows, []string{fmt.Sprint(p.Mark), p.ID, f.Name, string(f.Kind), face, mm(at.X), mm(-at.Y), mm(f.Dia), "", "", depth, f.For})
			}
		}
		if b := p.Bracket(); b != nil {
			thick := map[model.Leg]unit.Length{}
			if p.Angle != nil {
				thick[model.WallLeg], thick[model.SeatLeg] = p.Angle.Section.Thickness, p.Angle.Section.Thickness
			} else {
				thick[model.WallLeg], thick[model.SeatLeg] = p.Cleat.Wide, p.Cleat.High
			}
			for _, h := range b.On().Holes {
				along, what := "", "leg"
				if p.Cleat != nil {
					what = "cleat"
				}
				if h.Slot > 0 {
					along = "across the " + what
					if h.Along {
						along = "along the " + what
					}
				}
				rows = append(rows, []string{fmt.Sprint(p.Mark), p.ID, h.Name, "through", string(h.Leg), mm(h.X), mm(h.FromHeel), mm(h.Dia), mm(h.Slot), along, mm(thick[h.Leg]), h.For})
			}
		}
	}
	return table(rows)
}

// Buy is buy.csv: what is bought, equal things together: finished parts and what
// holds them, then the slabs, bars and packs on offer that they come out of, with their
// prices, and the oil.
func Buy(d *model.Design, s *cut.Shopping, more ...Purchase) ([]byte, error) {
	rows := [][]string{{"what", "size_mm", "count", "mass_kg", "for", "mind", "price_each", "price_all", "currency", "place"}}
	for _, p := range append(Purchases(d), more...) {
		rows = append(rows, []string{p.What, p.Size, fmt.Sprint(p.Count), kg(p.Mass), strings.Join(p.For, "; "), p.Mind, "", "", "", ""})
	}
	for _, b := range BoughtStock(s) {
		rows = append(rows, []string{b.What, b.Size, fmt.Sprint(b.Count), kg(b.Mass), strings.Join(b.For, "; "), b.Mind, cut.Money("", b.Price), cut.Money("", b.Price*float64(b.Count)), s.Currency, b.Place})
	}
	if s != nil && s.Finish.Area > 0 {
		rows = append(rows, []string{fmt.Sprintf("oil, %d coats", s.Finish.Coats), fmt.Sprintf("for %.2f m2", float64(s.Finish.Area)/1e6), "1", "", "all wood, both faces and edges", fmt.Sprintf("about %.2f litres by common practice: see the tin", s.Finish.Litres), "", "", "", ""})
	}
	return table(rows)
}

// kg writes a mass to ten grams.
func kg(m unit.Mass) string { return fmt.Sprintf("%.2f", float64(m)) }

func mm(l unit.Length) string {
	s := strings.TrimSuffix(fmt.Sprintf("%.1f", float64(l)), ".0")
	if s == "-0" {
		return "0"
	}
	return s
}

func table(rows [][]string) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true // RFC 4180, section 2: lines end in CRLF
	if err := w.WriteAll(rows); err != nil {
		return nil, fmt.Errorf("write a list: %w", err)
	}
	return b.Bytes(), nil
}
