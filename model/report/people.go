package report

import (
	"fmt"
	"strings"

	"slabwright/model/check"
	"slabwright/model/sit"
)

// personDoc is somebody at a seat. Heights are above the floor under the seat,
// depths in from the straight front edge, sizes of the body barefoot.
type personDoc struct {
	Person    string       `json:"person"`
	Seat      string       `json:"seat"`
	Part      string       `json:"part"` // the worktop
	Described bool         `json:"described"`
	Shoe      float64      `json:"shoe_mm"`
	Measures  []measureDoc `json:"measures"`
	Zones     []boxDoc     `json:"zones"`
	Near      []nearDoc    `json:"near"` // within 150 mm, straight or turned on the chair; negative: into it
	Left      sideDoc      `json:"left"`
	Right     sideDoc      `json:"right"`
	Surface   surfaceDoc   `json:"surface"`
}

// measureDoc is one size of the body: 9 in 10 lie between low and high. The sd
// is null for a percentile of everybody.
type measureDoc struct {
	Name         string   `json:"name"`
	Size         float64  `json:"size_mm"`
	SD           *float64 `json:"sd_mm"`
	Low          float64  `json:"low_mm"`
	High         float64  `json:"high_mm"`
	Basis        string   `json:"basis"`
	Extrapolated bool     `json:"extrapolated"`
	Source       string   `json:"source"`
}

type boxDoc struct {
	Name  string  `json:"name"`
	Near  float64 `json:"near_mm"`
	Far   float64 `json:"far_mm"`
	Width float64 `json:"width_mm"`
	Low   float64 `json:"low_mm"`
	High  float64 `json:"high_mm"`
}

type nearDoc struct {
	Name     string     `json:"name"`
	Part     string     `json:"part"`
	Wall     string     `json:"wall"`
	Zone     string     `json:"zone"`
	Distance float64    `json:"distance_mm"`
	At       [3]float64 `json:"at_mm"`
}

// sideDoc is the room to one side of the middle of the seat; no name: nothing
// within 2000 mm.
type sideDoc struct {
	Free float64 `json:"free_mm"`
	Name string  `json:"ends_at"`
	Part string  `json:"part"`
	Wall string  `json:"wall"`
}

// surfaceDoc compares the surface with what is proposed, and says what the slab
// and the steel below it take of the room between elbow and thigh.
type surfaceDoc struct {
	Height          float64    `json:"height_mm"`
	Underside       float64    `json:"underside_mm"`
	Sitting         [2]float64 `json:"sitting_mm"`
	Standing        [2]float64 `json:"standing_mm"`
	ThighsAsk       float64    `json:"thighs_ask_mm"`
	TooHigh         float64    `json:"too_high_for_elbows_mm"` // the lowest surface that clears the thighs
	Slab            float64    `json:"slab_mm"`
	SteelFront      float64    `json:"steel_front_mm"`
	SteelBehind     float64    `json:"steel_behind_mm"`
	ElbowAboveThigh float64    `json:"elbow_above_thigh_mm"`
	Free            float64    `json:"left_of_it_mm"`
}

func people(b Build) []personDoc {
	out := []personDoc{}
	site := check.Site{Job: b.Job, Room: b.Room, Design: b.Design}
	for _, x := range sit.Of(b.Design, b.Job.Wiring) {
		d := personDoc{Person: x.Person.Name, Seat: x.Seat.Name, Part: x.Slab.ID, Described: x.Told, Shoe: mm(x.Shoe),
			Measures: []measureDoc{}, Zones: []boxDoc{}, Near: []nearDoc{}, Left: side(x.Left), Right: side(x.Right), Surface: surface(x, site.LayersOver(x))}
		for _, m := range x.Sizes {
			d.Measures = append(d.Measures, measure(m))
		}
		for _, z := range x.Boxes {
			d.Zones = append(d.Zones, boxDoc{string(z.Kind), mm(z.Near), mm(z.Far), mm(2 * z.Half), mm(z.Low), mm(z.High)})
		}
		for _, t := range x.Things {
			d.Near = append(d.Near, nearDoc{t.Name, t.Part, t.Wall, string(t.Box), mm(t.Distance), triple(t.At)})
		}
		out = append(out, d)
	}
	return out
}

func side(s sit.Side) sideDoc { return sideDoc{mm(s.Free), s.Name, s.Part, s.Wall} }

func measure(m sit.Size) measureDoc {
	d := measureDoc{Name: m.Name, Size: mm(m.Mean), Low: mm(m.Low), High: mm(m.High), Basis: string(m.Basis), Extrapolated: m.Extrapolated, Source: m.Source}
	if m.SD > 0 {
		sd := mm(m.SD)
		d.SD = &sd
	}
	return d
}

func surface(x *sit.Sitter, l check.Layers) surfaceDoc {
	p, slab := check.Proposed(x), x.Slab.Slab.Thickness
	return surfaceDoc{
		Height: mm(x.Surface()), Underside: mm(x.Underside()),
		Sitting: [2]float64{mm(p.SitLow), mm(p.SitHigh)}, Standing: [2]float64{mm(p.StandLow), mm(p.StandHigh)},
		ThighsAsk: mm(p.Thighs), TooHigh: mm(max(0, p.Cost)),
		Slab: mm(slab), SteelFront: mm(l.Front - slab), SteelBehind: mm(l.Behind - slab), ElbowAboveThigh: mm(l.Room), Free: mm(l.Free),
	}
}

// peopleText is everybody with the room that they have.
func peopleText(w *strings.Builder, b Build) {
	list := people(b)
	if len(list) == 0 {
		return
	}
	w.WriteString("## People\n\n| person, seat | surface, is | proposed sitting | proposed standing | thighs ask for | elbow above thigh | slab | steel in front / behind | left of it |\n|---|--:|--:|--:|--:|--:|--:|--:|--:|\n")
	for _, p := range list {
		s := p.Surface
		fmt.Fprintf(w, "| %s, %s | %.0f | %.0f to %.0f | %.0f to %.0f | %.0f | %.0f | %.0f | %.0f / %.0f | %.0f |\n", cell(p.Person), cell(p.Seat),
			s.Height, s.Sitting[0], s.Sitting[1], s.Standing[0], s.Standing[1], s.ThighsAsk, s.ElbowAboveThigh, s.Slab, s.SteelFront, s.SteelBehind, s.Free)
	}
	w.WriteString("\nAll in millimetres, heights above the floor under the seat. What is left of the room between elbow and thigh is after 20 mm to move; below 0 the surface comes that far above the elbows.\n\n")
	for _, p := range list {
		p.write(w)
	}
}

// write gives the measures of one person, where they come from, and what is near.
func (p personDoc) write(w *strings.Builder) {
	fmt.Fprintf(w, "### %s at %s\n\n| body, barefoot | size | 9 in 10 | sd | from |\n|---|--:|--:|--:|---|\n", cell(p.Person), cell(p.Seat))
	for _, m := range p.Measures {
		sd, from := "", m.Basis
		if m.SD != nil {
			sd = fmt.Sprintf("%.0f", *m.SD)
		}
		if m.Extrapolated {
			from += ", extrapolated"
		}
		fmt.Fprintf(w, "| %s | %.0f | %.0f to %.0f | %s | %s |\n", m.Name, m.Size, m.Low, m.High, sd, cell(from))
	}
	w.WriteString("\n| room of the legs | high | deep from the front | wide |\n|---|--:|--:|--:|\n")
	for _, z := range p.Zones {
		fmt.Fprintf(w, "| %s | %.0f to %.0f | %.0f to %.0f | %.0f |\n", z.Name, z.Low, z.High, z.Near, z.Far, z.Width)
	}
	fmt.Fprintf(w, "\nFree from the middle of the seat: %s; %s.\n\n", p.Left.words("left"), p.Right.words("right"))
	if len(p.Near) == 0 {
		fmt.Fprintf(w, "Nothing is within %.0f mm of the legs.\n\n", float64(sit.Near))
		return
	}
	w.WriteString("| near the legs, straight or turned | nearest to | distance |\n|---|---|--:|\n")
	for _, n := range p.Near {
		d := fmt.Sprintf("%.0f", n.Distance)
		if n.Distance < 0 {
			d = fmt.Sprintf("%.0f into it", -n.Distance)
		}
		fmt.Fprintf(w, "| %s | %s | %s |\n", cell(n.Name), n.Zone, d)
	}
	w.WriteString("\n")
}

func (s sideDoc) words(where string) string {
	if s.Name == "" {
		return fmt.Sprintf("%.0f mm or more to the %s", s.Free, where)
	}
	return fmt.Sprintf("%.0f mm to the %s (%s)", s.Free, where, s.Name)
}
