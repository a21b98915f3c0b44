package report

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/hold"
)

// staticsDoc is the key statics of report.json. Forces are N, stresses N/mm2;
// places are in the room.
type staticsDoc struct {
	Loads   loadsDoc          `json:"loads"`
	Assumed []find.Assumption `json:"assumed"`
	Slabs   []slabDoc         `json:"slabs"`
}

type loadsDoc struct {
	Person  float64 `json:"person_kg"`
	Step    float64 `json:"step"`
	Worktop float64 `json:"worktop_kg_m2"`
	Shelf   float64 `json:"shelf_kg_m2"`
	Service int     `json:"service_class"`
	Grade   string  `json:"grade"`
}

type slabDoc struct {
	Part      string    `json:"part"`
	Trouble   string    `json:"trouble,omitempty"` // why nothing could be computed
	Tips      bool      `json:"tips"`
	Years     float64   `json:"after_years_mm"`
	Span      float64   `json:"span_mm"`
	Frequency float64   `json:"frequency_hz"`
	Unknowns  int       `json:"unknowns"`
	Moved     float64   `json:"mesh_moved_percent"`
	MovedTop  float64   `json:"stress_along_moved_percent"` // of more than 1, the stresses are upper bounds
	MovedOver float64   `json:"stress_across_moved_percent"`
	Places    int       `json:"person_places"`
	Cases     []caseDoc `json:"cases"`
}

type caseDoc struct {
	Case     string      `json:"case"`
	Worst    string      `json:"worst_for,omitempty"`
	Design   bool        `json:"design"` // with partial factors
	KMod     float64     `json:"k_mod"`
	Person   *[2]float64 `json:"person_mm,omitempty"`
	Total    float64     `json:"total_n"`
	Lowest   float64     `json:"sinks_mm"`
	LowestAt [2]float64  `json:"sinks_at_mm"`
	Steel    float64     `json:"of_it_steel_mm"` // of sinks_mm: angles between and at their anchors
	Lifts    float64     `json:"lifts_mm"`
	LiftsAt  [2]float64  `json:"lifts_at_mm"`
	Along    peakDoc     `json:"along_grain"`
	Across   peakDoc     `json:"across_grain"`
	Pressure peakDoc     `json:"bearing"`
	Carriers []runDoc    `json:"carriers"`
}

type peakDoc struct {
	Value    float64    `json:"n_mm2"`
	Strength float64    `json:"design_strength_n_mm2"`
	At       [2]float64 `json:"at_mm"`
}

type runDoc struct {
	Part     string       `json:"part"`
	Force    float64      `json:"force_n"` // down, what screws pull taken off
	Along    float64      `json:"along_mm"`
	FromHeel float64      `json:"from_heel_mm"`
	Peak     float64      `json:"peak_n_mm"`
	PeakAt   float64      `json:"peak_along_mm"`
	BarSag   float64      `json:"bar_sag_mm"` // of an angle, between and at its anchors
	TipSag   float64      `json:"tip_sag_mm"` // of its seat leg, at the toe
	Screws   []pullDoc    `json:"screws"`
	Line     [][3]float64 `json:"line"` // mm along, N/mm, mm from the heel
}

type pullDoc struct {
	Hole  string  `json:"hole"`
	Along float64 `json:"along_mm"`
	Pull  float64 `json:"pull_n"`
}

func staticsOf(b Build) staticsDoc {
	s := hold.Of(b.Design, b.Job)
	l := s.Loads
	out := staticsDoc{Loads: loadsDoc{float64(l.Person), l.Step, l.Worktop, l.Shelf, l.Service, l.Grade}, Assumed: s.Assumed, Slabs: []slabDoc{}}
	if out.Assumed == nil {
		out.Assumed = []find.Assumption{}
	}
	for _, b := range s.Slabs {
		d := slabDoc{Part: b.Part, Trouble: b.Trouble, Tips: b.Tips, Years: mm(b.Years), Span: mm(b.Span), Frequency: digits(b.First),
			Unknowns: b.Unknowns, Moved: digits(100 * b.Moved), MovedTop: digits(100 * b.MovedTop), MovedOver: digits(100 * b.MovedOver), Places: b.Places, Cases: []caseDoc{}}
		for _, c := range b.Cases {
			d.Cases = append(d.Cases, caseOf(c))
		}
		out.Slabs = append(out.Slabs, d)
	}
	return out
}

func caseOf(c hold.Case) caseDoc {
	d := caseDoc{Case: string(c.Kind), Worst: c.Worst, Design: c.Design, KMod: c.KMod, Total: digits(c.Total),
		Lowest: mm(c.Sinks()), Steel: mm(c.Steel), LowestAt: xy(c.Lowest.At), Lifts: mm(max(0, -c.Highest.Down)), LiftsAt: xy(c.Highest.At),
		Along: peakOf(c.Along), Across: peakOf(c.Across), Pressure: peakOf(c.Pressure), Carriers: []runDoc{}}
	if c.Person != nil {
		p := xy(*c.Person)
		d.Person = &p
	}
	for _, r := range c.Runs {
		p := r.Peak()
		run := runDoc{Part: r.Carrier, Force: digits(r.Force), Along: mm(r.Along), FromHeel: mm(r.FromHeel), Peak: digits(p.PerMM()), PeakAt: mm(p.Along), BarSag: mm(r.BarSag), TipSag: mm(r.TipSag), Screws: []pullDoc{}, Line: [][3]float64{}}
		for _, s := range r.Screws {
			run.Screws = append(run.Screws, pullDoc{s.Hole, mm(s.Along), digits(s.Force)})
		}
		for _, l := range r.Line {
			run.Line = append(run.Line, [3]float64{mm(l.Along), digits(l.PerMM()), mm(l.FromHeel)})
		}
		d.Carriers = append(d.Carriers, run)
	}
	return d
}

func xy(v geom.Vec) [2]float64 { return [2]float64{mm(v.X), mm(v.Y)} }

func peakOf(p hold.Peak) peakDoc { return peakDoc{digits(p.Value), digits(p.Strength), xy(p.At)} }

// staticsText is what the slabs carry, and what their carriers have to take.
func staticsText(w *strings.Builder, b Build) {
	s := hold.Of(b.Design, b.Job)
	if len(s.Slabs) == 0 {
		return
	}
	l := s.Loads
	fmt.Fprintf(w, "## What the slabs carry\n\n")
	fmt.Fprintf(w, "A person of %.0f kg anywhere on a worktop, climbing up with %.2f times the weight; %.0f kg/m2 on worktops and %.0f kg/m2 on shelves for years; service class %d; wood of class %s. Slabs rest on supports that only push, screws as drawn pull; a joint between slabs passes nothing on. Seat legs bend with the slab; the most that one of its angles sinks between and at its anchors is added to what a slab sinks. Every load case is solved for itself.\n\n", float64(l.Person), l.Step, l.Worktop, l.Shelf, l.Service, l.Grade)
	fmt.Fprintf(w, "| slab | sinks, years | sinks, person | lifts | bending along | bending across | bearing | swings |\n|---|--:|--:|--:|--:|--:|--:|--:|\n")
	for _, b := range s.Slabs {
		if b.Trouble != "" {
			fmt.Fprintf(w, "| %s | not known: %s | | | | | | |\n", cell(b.Part), cell(b.Trouble))
			continue
		}
		person := "–"
		lifts, _ := b.Case(hold.Daily)
		if c, ok := b.Case(hold.PersonSinks); ok {
			person = fmt.Sprintf("%.1f mm", float64(c.Sinks()))
			lifts, _ = b.Case(hold.PersonLifts)
		}
		used := func(of func(hold.Case) hold.Peak) string {
			var most hold.Peak
			for _, c := range b.Cases {
				if p := of(c); c.Design && (most.Strength == 0 || p.Used() > most.Used()) {
					most = p
				}
			}
			return fmt.Sprintf("%.2f of %.2f N/mm2", most.Value, most.Strength)
		}
		fmt.Fprintf(w, "| %s | %.1f mm | %s | %.1f mm | %s | %s | %s | %.0f Hz |\n", cell(b.Part), float64(b.Years), person, math.Max(0, -float64(lifts.Highest.Down)),
			used(func(c hold.Case) hold.Peak { return c.Along }), used(func(c hold.Case) hold.Peak { return c.Across }), used(func(c hold.Case) hold.Peak { return c.Pressure }), b.First)
	}
	fmt.Fprintf(w, "\nWhat every carrier has to take, the largest of all cases with partial factors:\n\n| carrier | of | force | line load at most | from its heel | pull of a screw | bar sags | its toe sags |\n|---|---|--:|--:|--:|--:|--:|--:|\n")
	for _, b := range s.Slabs {
		for _, r := range b.Carried() {
			fmt.Fprintf(w, "| %s | %s | %.0f N | %.1f N/mm | %.0f mm | %.0f N | %.2f mm | %.2f mm |\n", cell(r.Carrier), cell(b.Part), r.Force, r.PerMM, float64(r.FromHeel), r.Pull, float64(r.BarSag), float64(r.TipSag))
		}
	}
	w.WriteString("\n")
}
