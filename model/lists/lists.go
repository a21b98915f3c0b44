// Package lists writes what shops and shoppers copy from: parts, holes, things
// to buy, as comma-separated values (RFC 4180) with a heading line.
package lists

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/unit"
)

// Parts is parts.csv: one line per part.
func Parts(d *model.Design) ([]byte, error) {
	rows := [][]string{{"mark", "part", "kind", "material", "size_mm", "mass_kg", "bears_on"}}
	for _, p := range d.Parts {
		rows = append(rows, []string{fmt.Sprint(p.Mark), p.ID, string(p.Kind), p.Material, p.Size(), fmt.Sprintf("%.2f", float64(p.Mass())), strings.Join(p.Bears, "; ")})
	}
	return table(rows)
}

// Holes is holes.csv: one line per hole, in the axes of its own part. In slabs
// x runs along the reference edge from its left end and y away from it; in
// angles x runs from the left end and y from the heel across the leg.
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
		if p.Angle != nil {
			for _, h := range p.Angle.Holes {
				along := ""
				if h.Slot > 0 {
					along = "across the leg"
					if h.Along {
						along = "along the leg"
					}
				}
				rows = append(rows, []string{fmt.Sprint(p.Mark), p.ID, h.Name, "through", string(h.Leg), mm(h.X), mm(h.FromHeel), mm(h.Dia), mm(h.Slot), along, mm(p.Angle.Section.Thickness), h.For})
			}
		}
	}
	return table(rows)
}

// Buy is buy.csv: what is bought, equal things together, without prices.
func Buy(d *model.Design) ([]byte, error) {
	rows := [][]string{{"what", "size_mm", "count", "mass_kg", "for"}}
	add := func(what, size string, count int, mass unit.Mass, parts ...string) {
		rows = append(rows, []string{what, size, fmt.Sprint(count), fmt.Sprintf("%.2f", float64(mass)), strings.Join(parts, "; ")})
	}
	anchors, screws := 0, 0
	for _, p := range d.Parts {
		switch {
		case p.Slab != nil:
			add(p.Material+" slab, finished size", p.Size(), 1, p.Mass(), p.ID)
		case p.Angle != nil:
			add("steel angle EN 10056-1", p.Size(), 1, p.Mass(), p.ID)
			for _, h := range p.Angle.Holes {
				if h.Leg == model.WallLeg {
					anchors++
				} else {
					screws++
				}
			}
		case p.Rod != nil:
			add("round bar", p.Size(), 1, p.Mass(), p.ID)
		case p.RollOut != nil:
			add(p.Material+", roll-out table with four castors", p.Size(), 1, p.Mass(), p.ID)
		}
	}
	if anchors > 0 {
		add("wall anchor or stud screw by the wall's make, with washer", "", anchors, 0, "angles")
	}
	if screws > 0 {
		add("wood screw with washer, for slotted holes", "", screws, 0, "slab to angle")
	}
	return table(rows)
}

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
	if err := w.WriteAll(rows); err != nil {
		return nil, fmt.Errorf("write a list: %w", err)
	}
	return b.Bytes(), nil
}
