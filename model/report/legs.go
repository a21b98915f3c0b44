package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/hold"
	"slabwright/model/unit"
)

// Turned is a job built once more with its wall legs the other way.
type Turned struct {
	Job      model.Job
	Design   *model.Design
	Findings []find.Finding
}

// legsDoc is the key wall_legs of report.json: the job with wall legs down and
// with wall legs up, side by side. Only in jobs with angles on walls.
type legsDoc struct {
	Drawn       string  `json:"drawn"` // down, up, mixed
	NotCompared string  `json:"not_compared,omitempty"`
	Down        *wayDoc `json:"down,omitempty"`
	Up          *wayDoc `json:"up,omitempty"`
}

// wayDoc is one way. A null was not found: there is nothing of the kind, or the
// check says unknown.
type wayDoc struct {
	SteelBelow   float64     `json:"steel_below_slab_mm"`
	LegRoom      *legRoomDoc `json:"leg_room"` // the tightest
	WallGap      *float64    `json:"gap_needed_at_wall_mm"`
	WallGapDrawn *float64    `json:"least_gap_drawn_mm"`
	Anchor       *float64    `json:"anchor_used_percent"`
	Steel        *float64    `json:"angle_used_percent"`
	Along        *float64    `json:"slab_along_grain_used_percent"`
	Across       *float64    `json:"slab_across_grain_used_percent"`
	Wood         *float64    `json:"bearing_used_percent"`
	LeverLeast   float64     `json:"anchor_lever_least_mm"`
	Pressed      string      `json:"wall_pressed_at"` // toe, heel, toe and heel
	Anchors      int         `json:"anchors"`
	Reachable    int         `json:"anchors_reachable_under_slab"`
	Screws       int         `json:"screws_into_slab"`
	Loses        []string    `json:"loses"` // what fails or is not known this way and not the other
}

type legRoomDoc struct {
	What   string  `json:"what"`
	Free   float64 `json:"free_mm"`
	Need   float64 `json:"needed_mm"`
	Margin float64 `json:"margin_mm"`
}

// legsOf compares both ways; nil for a design without angles on walls.
func legsOf(b Build) *legsDoc {
	drawn := drawnLegs(b.Design)
	if drawn == "" {
		return nil
	}
	out := &legsDoc{Drawn: drawn}
	switch {
	case drawn == "mixed":
		out.NotCompared = "some wall legs are down and some up: the design decides each for itself"
		return out
	case b.Turn == nil:
		out.NotCompared = "the design has no parameter wall_leg with the choices down and up, so the other way could not be built"
		return out
	}
	t := b.Turn()
	here, there := wayOf(b.Job, b.Design, b.Findings, t.Findings), wayOf(t.Job, t.Design, t.Findings, b.Findings)
	if drawn == "down" {
		out.Down, out.Up = here, there
	} else {
		out.Down, out.Up = there, here
	}
	return out
}

// drawnLegs tells how the wall legs of a design stand; "" if it has none.
func drawnLegs(d *model.Design) string {
	ways := map[bool]string{}
	for _, p := range d.Parts {
		if p.Angle != nil {
			ways[p.Angle.LegUp] = map[bool]string{false: "down", true: "up"}[p.Angle.LegUp]
		}
	}
	if len(ways) == 2 {
		return "mixed"
	}
	return ways[false] + ways[true]
}

// wayOf measures one way; what the other way's findings say is not lost here.
func wayOf(j model.Job, d *model.Design, list, other []find.Finding) *wayDoc {
	w := &wayDoc{LegRoom: tightestRoom(list), Anchor: mostOf(list, "anchor-strength"), Steel: mostOf(list, "angle-strength"), Loses: lost(list, other)}
	w.WallGap, w.WallGapDrawn = wallGaps(list)
	lever := unit.Length(math.Inf(1))
	pressed := map[bool]bool{}
	for _, p := range d.Parts {
		a := p.Angle
		if a == nil {
			continue
		}
		w.SteelBelow = math.Max(w.SteelBelow, mm(d.LegBelow(a.Under)))
		lever = min(lever, hold.Lever(a))
		pressed[a.LegUp] = true
		for _, h := range a.Holes {
			switch {
			case h.Leg != model.WallLeg:
				w.Screws++
			case a.LegUp:
				w.Anchors++
			default:
				w.Anchors, w.Reachable = w.Anchors+1, w.Reachable+1
			}
		}
	}
	w.LeverLeast = mm(lever)
	w.Pressed = map[bool]string{false: "toe", true: "heel"}[pressed[true]]
	w.Along, w.Across, w.Wood = slabUse(hold.Of(d, j))
	return w
}

// slabUse is how far the slabs are used by bending along and across the grain,
// and by pressure on their bearings, in percent.
func slabUse(s *hold.Statics) (along, across, press *float64) {
	see := func(to **float64, p hold.Peak) {
		if v := digits(100 * p.Used()); p.Strength > 0 && (*to == nil || v > **to) {
			*to = &v
		}
	}
	for _, b := range s.Slabs {
		for _, c := range b.Cases {
			if !c.Design {
				continue
			}
			see(&along, c.Along)
			see(&across, c.Across)
			see(&press, c.Pressure)
		}
	}
	return along, across, press
}

// mostOf is the largest share that a rule measured, in percent of what it
// requires; nil where it measured nothing or something is unknown without a
// number.
func mostOf(list []find.Finding, rule string) *float64 {
	var most *float64
	for _, f := range list {
		if f.Rule != rule {
			continue
		}
		if f.Measured == nil || f.Required == nil || f.Required.Value == 0 {
			if f.Status == find.Unknown {
				return nil
			}
			continue
		}
		if v := digits(100 * f.Measured.Value / f.Required.Value); most == nil || v > *most {
			most = &v
		}
	}
	return most
}

// tightestRoom is the leg room with the least margin.
func tightestRoom(list []find.Finding) *legRoomDoc {
	var least *legRoomDoc
	for _, f := range list {
		if f.Rule != "leg-room" || f.Measured == nil || f.Required == nil || f.Margin == nil {
			continue
		}
		if least == nil || f.Margin.Value < least.Margin {
			least = &legRoomDoc{f.Title, digits(f.Measured.Value), digits(f.Required.Value), digits(f.Margin.Value)}
		}
	}
	return least
}

// wallGaps are the widest gap that is needed at a wall, and the least one drawn.
func wallGaps(list []find.Finding) (need, drawn *float64) {
	for _, f := range list {
		if f.Rule != "wall-gap" || f.Measured == nil || f.Required == nil {
			continue
		}
		if v := digits(f.Required.Value); need == nil || v > *need {
			need = &v
		}
		if v := digits(f.Measured.Value); drawn == nil || v < *drawn {
			drawn = &v
		}
	}
	return need, drawn
}

// lost are the titles of what fails or is not known in one list, with how often,
// where it does so less often in the other; notes on the wall screws as well.
func lost(list, other []find.Finding) []string {
	count := func(list []find.Finding) (map[string]int, []string) {
		n := map[string]int{}
		var order []string
		for _, f := range list {
			bad := f.Status == find.Fail || f.Status == find.Unknown || f.Rule == "leg-up" && f.Status == find.Note
			if !bad {
				continue
			}
			what := f.Title
			if f.Status != find.Note {
				what = fmt.Sprintf("%s: %s", f.Status, f.Title)
			}
			if n[what]++; n[what] == 1 {
				order = append(order, what)
			}
		}
		return n, order
	}
	here, order := count(list)
	there, _ := count(other)
	slices.Sort(order)
	out := []string{}
	for _, what := range order {
		if more := here[what] - there[what]; more > 0 {
			out = append(out, fmt.Sprintf("%s (%d)", what, more))
		}
	}
	return out
}

// legsText prints both ways side by side.
func legsText(w *strings.Builder, b Build) {
	l := legsOf(b)
	if l == nil {
		return
	}
	fmt.Fprintf(w, "## Wall legs down or up\n\n")
	if l.NotCompared != "" {
		fmt.Fprintf(w, "Not compared: %s.\n\n", l.NotCompared)
		return
	}
	fmt.Fprintf(w, "Drawn with the wall legs %s. Both ways were built from this job and checked; nothing but `wall_leg` and the gaps that it asks for differs.\n\n", l.Drawn)
	d, u := l.Down, l.Up
	fmt.Fprintf(w, "| | down, below the slab | up, behind its edge |\n|---|--:|--:|\n")
	row := func(what string, of func(*wayDoc) string) { fmt.Fprintf(w, "| %s | %s | %s |\n", what, of(d), of(u)) }
	some := func(format string, v *float64) string {
		if v == nil {
			return "not known"
		}
		return fmt.Sprintf(format, *v)
	}
	row("tightest leg room", func(x *wayDoc) string {
		if x.LegRoom == nil {
			return "nobody sits here"
		}
		return fmt.Sprintf("%s: %.0f mm free, %.0f mm needed", cell(x.LegRoom.What), x.LegRoom.Free, x.LegRoom.Need)
	})
	row("steel below the slab", func(x *wayDoc) string { return fmt.Sprintf("%.0f mm", x.SteelBelow) })
	row("gap needed at a wall", func(x *wayDoc) string { return some("%.1f mm", x.WallGap) })
	row("least gap drawn", func(x *wayDoc) string { return some("%.1f mm", x.WallGapDrawn) })
	row("worst anchor takes, of its load", func(x *wayDoc) string { return some("%.0f %%", x.Anchor) })
	row("the brackets turn about", func(x *wayDoc) string { return fmt.Sprintf("the %s, least lever %.1f mm", x.Pressed, x.LeverLeast) })
	row("worst angle is stressed, of yield", func(x *wayDoc) string { return some("%.0f %%", x.Steel) })
	row("worst slab bends along the grain, of its strength", func(x *wayDoc) string { return some("%.0f %%", x.Along) })
	row("worst slab bends across the grain, of its strength", func(x *wayDoc) string { return some("%.0f %%", x.Across) })
	row("worst bearing pressure, of its strength", func(x *wayDoc) string { return some("%.0f %%", x.Wood) })
	row("wall screws that stay in reach", func(x *wayDoc) string { return fmt.Sprintf("%d of %d", x.Reachable, x.Anchors) })
	row("screws up into the slab", func(x *wayDoc) string { return fmt.Sprintf("%d", x.Screws) })
	row("what is lost", func(x *wayDoc) string {
		if len(x.Loses) == 0 {
			return "nothing found"
		}
		return cell(strings.Join(x.Loses, "; "))
	})
	w.WriteString("\n")
}
