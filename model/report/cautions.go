package report

import (
	"fmt"
	"strings"

	"slabwright/model"
)

// cautions stand in the order of the work, each where its act is: only those
// that this design calls for.
func cautions(w *strings.Builder, b Build) {
	fmt.Fprintf(w, "## What to look out for, in the order of the work\n\n")
	for i, c := range Cautions(b.Design) {
		fmt.Fprintf(w, "%d. **%s.** %s\n", i+1, c.Act, c.Text)
	}
	w.WriteString("\n")
}

// Caution is a warning bound to an act.
type Caution struct{ Act, Text string }

// Cautions gives the cautions for the acts that a design needs, in the order in
// which the acts come.
func Cautions(d *model.Design) []Caution {
	var steel, drilled, cables, wood bool
	var heaviest *model.Part
	for _, p := range d.Parts {
		steel = steel || p.Angle != nil || p.Rod != nil
		drilled = drilled || p.Rod != nil || p.Bracket() != nil && len(p.Bracket().On().Holes) > 0
		if heaviest == nil || p.Mass() > heaviest.Mass() {
			heaviest = p
		}
		if p.Slab == nil {
			continue
		}
		wood = true
		for _, f := range p.Slab.Features {
			cables = cables || strings.Contains(f.For, "cable") || strings.Contains(f.For, "light")
		}
	}
	out := []Caution{{"Before anything is ordered", "All numbers follow from the readings that were typed in: measure the deciding widths once more. This is an estimate and no certificate; local codes and the makers' papers come first."}}
	if drilled {
		out = append(out,
			Caution{"Before drilling a wall", "Ask the owner first; bearing walls and walls shared with a neighbour are not yours to drill. Hidden services: the keep-outs here are what was surveyed, the usual strips are a guess. Detector, power off, test hole. Water, gas and heating run in walls too; a disused flue can leak."},
			Caution{"Setting anchors", "Only with the approval values of the anchor bought, in that wall. Plaster, hollow or aerated block and the wall's edge carry differently. Pull one before trusting all. Mask and extraction against masonry dust."})
	}
	if steel {
		out = append(out, Caution{"Cutting and drilling steel", "Sparks away from sawdust and rags, the bar clamped, no gloves at the drill, burrs off."})
	}
	if wood {
		out = append(out, Caution{"Sawing and sanding", "Hardwood dust: mask and extraction."})
	}
	if heaviest != nil && heaviest.Mass() > 20 {
		out = append(out, Caution{"Lifting", fmt.Sprintf("The heaviest part, %s, weighs about %.0f kg. Enough people, props under it before letting go, no fingers between slab and bearings.", heaviest.ID, float64(heaviest.Mass()))})
	}
	if cables {
		out = append(out, Caution{"Mains electricity", "Fixed wiring by a licensed electrician to the local code. Drivers stay reachable and ventilated; no mains joints in closed wood."})
	}
	if wood {
		out = append(out, Caution{"Oiling", "Spread oily rags out singly until they are hard, never in a heap: they catch fire by themselves."})
	}
	return append(out, Caution{"Before anybody stands on it", "A load test first. Edges that carry nothing can tip. It replaces no ladder; mind children."})
}

// notChecked says what this report does not speak of.
func notChecked(w *strings.Builder) {
	fmt.Fprintf(w, "## Not checked\n\n")
	for _, s := range NotChecked {
		fmt.Fprintf(w, "- %s\n", s)
	}
}

// NotChecked lists what no rule looks at.
var NotChecked = []string{
	"what a wall takes beyond its anchors, welds and mitres of the steel, how anchors creep; shear in the slabs, and what a jump or a fall does to them",
	"how the boards of the roll-out table swell and shrink, and how a slab that is drying warps",
	"winding flights, landings, handrails and door leaves on the way in; what stands in the room in front of the measured walls",
	"how likely the readings are right: one tape has one scale error that no closing check sees",
	"mains cables: their sizes, fuses, joints and protection are for an electrician; cables that the job does not name",
}
