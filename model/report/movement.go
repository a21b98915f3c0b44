package report

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/calc/moisture"
	"slabwright/model/find"
)

// movementDoc is how the wood moves over the year. Moistures are in per cent.
type movementDoc struct {
	Slabs []slabMovementDoc `json:"slabs"`
}

type slabMovementDoc struct {
	Part    string            `json:"part"`
	Fitting float64           `json:"moisture_at_fitting"`
	Dry     float64           `json:"moisture_dry"`
	Damp    float64           `json:"moisture_damp"`
	Sawn    string            `json:"sawn"`
	Across  float64           `json:"across_grain_per_percent"`
	Along   float64           `json:"along_grain_per_percent"`
	Width   [2]float64        `json:"width_change_mm"`  // dry, damp
	Length  [2]float64        `json:"length_change_mm"` // dry, damp
	HeldBy  string            `json:"held_by"`
	HeldAt  [2]float64        `json:"held_at_mm"` // from the left end of the back edge, and off it
	Held    []string          `json:"held_screws"`
	Edges   []edgeMovementDoc `json:"edges"`
	Screws  []screwDoc        `json:"screws"`
	Untold  []string          `json:"untold"`
	Assumed []find.Assumption `json:"assumed"`
	Cupping float64           `json:"bow_per_percent_between_faces_mm"`
}

type edgeMovementDoc struct {
	Edge    string   `json:"edge"`
	To      string   `json:"to"`
	Out     float64  `json:"swells_mm"`
	In      float64  `json:"shrinks_mm"`
	Fitting *float64 `json:"gap_at_fitting_mm,omitempty"`
	Least   *float64 `json:"least_gap_mm,omitempty"`
	Widest  *float64 `json:"widest_gap_mm,omitempty"`
}

type screwDoc struct {
	Angle  string     `json:"angle"`
	Hole   string     `json:"hole"`
	Slot   float64    `json:"slot_mm"` // beyond the diameter; 0: round
	Along  bool       `json:"along_the_leg"`
	Travel [2]float64 `json:"travel_mm"`
	Room   [2]float64 `json:"room_mm"`
}

// moving gives every slab with its movement.
func moving(d *model.Design, each func(*model.Part, model.Movement)) {
	for _, p := range d.Parts {
		if p.Slab == nil {
			continue
		}
		if m, err := d.Movement(p.ID); err == nil {
			each(p, m)
		}
	}
}

func movements(d *model.Design) movementDoc {
	out := movementDoc{Slabs: []slabMovementDoc{}}
	moving(d, func(p *model.Part, m model.Movement) {
		_, width := p.Slab.Blank()
		doc := slabMovementDoc{
			Part: p.ID, Fitting: digits(float64(m.Fitting)), Dry: digits(float64(m.Dry)), Damp: digits(float64(m.Damp)), Sawn: string(m.Sawn),
			Across: float64(m.Across), Along: float64(m.Along),
			Width: [2]float64{mm(m.Width(m.Dry)), mm(m.Width(m.Damp))}, Length: [2]float64{mm(m.Length(m.Dry)), mm(m.Length(m.Damp))},
			HeldBy: string(m.Held.By), HeldAt: [2]float64{mm(m.Held.At.X), mm(-m.Held.At.Y)}, Held: append([]string{}, m.Held.Screws...),
			Edges: []edgeMovementDoc{}, Screws: []screwDoc{}, Untold: append([]string{}, m.Untold...), Assumed: m.Assumed,
			Cupping: mm(moisture.Bow(width, p.Slab.Thickness, m.Across, 1)),
		}
		for _, e := range m.Edges {
			x := edgeMovementDoc{Edge: e.Name, To: e.To, Out: mm(e.Out), In: mm(e.In)}
			if bounded(e) {
				fitting, least, widest := mm(e.Gap), mm(e.Gap-e.Out), mm(e.Gap+e.In)
				x.Fitting, x.Least, x.Widest = &fitting, &least, &widest
			}
			doc.Edges = append(doc.Edges, x)
		}
		for _, s := range m.Screws {
			doc.Screws = append(doc.Screws, screwDoc{s.Through.ID, s.Hole.Name, mm(s.Hole.Slot), s.Hole.Along,
				[2]float64{mm(s.Travel.Plus), mm(s.Travel.Minus)}, [2]float64{mm(s.Room.Plus), mm(s.Room.Minus)}})
		}
		out.Slabs = append(out.Slabs, doc)
	})
	return out
}

// bounded tells whether an edge faces something that it can swell against.
func bounded(e model.EdgeTravel) bool { return e.Bound == model.ToWall || e.Bound == model.ToPart }

// movementText is the forecast for a person: sizes, gaps and what holds.
func movementText(w *strings.Builder, d *model.Design) {
	var sizes, gaps []string
	var year string
	moving(d, func(p *model.Part, m model.Movement) {
		year = fmt.Sprintf("The wood has %.1f %% moisture when it is fitted; over the year it goes from %.1f to %.1f %%.", float64(m.Fitting), float64(m.Dry), float64(m.Damp))
		if len(m.Untold) > 0 {
			year += " Nobody has told " + strings.Join(m.Untold, ", ") + "; the rest is assumed."
		}
		sizes = append(sizes, fmt.Sprintf("| %s | %s sawn | %+.1f | %+.1f | %+.1f | %+.1f | %s |", cell(p.ID), m.Sawn, mm(m.Width(m.Dry)), mm(m.Width(m.Damp)), mm(m.Length(m.Dry)), mm(m.Length(m.Damp)), cell(heldText(m))))
		for _, e := range m.Edges {
			if bounded(e) {
				gaps = append(gaps, fmt.Sprintf("| %s | %s | %s | %.1f | %.1f | %.1f |", cell(p.ID), e.Name, cell(e.To), mm(e.Gap), mm(e.Gap-e.Out), mm(e.Gap+e.In)))
			}
		}
	})
	if sizes == nil {
		return
	}
	fmt.Fprintf(w, "## The wood over the year\n\n%s\n\n| slab | | width, dry | width, damp | length, dry | length, damp | held by |\n|---|---|--:|--:|--:|--:|---|\n%s\n\n", year, strings.Join(sizes, "\n"))
	if gaps != nil {
		fmt.Fprintf(w, "| slab | edge | to | gap at fitting | at the dampest | at the driest |\n|---|---|---|--:|--:|--:|\n%s\n\n", strings.Join(gaps, "\n"))
	}
	w.WriteString("A thick slab follows its room by weeks to months; the movement plan shows the slots.\n\n")
}

// heldText says where a slab stands still.
func heldText(m model.Movement) string {
	if m.Held.By == model.ByNone {
		return "nothing: it may move to any side"
	}
	return fmt.Sprintf("%s, %.0f mm from the back edge", m.Held.By, mm(-m.Held.At.Y))
}
