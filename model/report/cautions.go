package report

import (
	"fmt"
	"strings"

	"slabwright/model"
)

// cautions stand where the act happens: only those that this design calls for.
func cautions(w *strings.Builder, b Build) {
	fmt.Fprintf(w, "## Before you act\n\n")
	for _, c := range Cautions(b.Design) {
		fmt.Fprintf(w, "- **%s.** %s\n", c.Act, c.Text)
	}
	w.WriteString("\n")
}

// Caution is a warning bound to an act.
type Caution struct{ Act, Text string }

// Cautions gives the cautions for the acts that a design needs.
func Cautions(d *model.Design) []Caution {
	var steel, cables bool
	var heaviest *model.Part
	for _, p := range d.Parts {
		steel = steel || p.Angle != nil
		if heaviest == nil || p.Mass() > heaviest.Mass() {
			heaviest = p
		}
		if p.Slab != nil {
			for _, f := range p.Slab.Features {
				cables = cables || strings.Contains(f.For, "cable") || strings.Contains(f.For, "light")
			}
		}
	}
	out := []Caution{
		{"Walls", "Ask the owner first; bearing walls and walls shared with a neighbour are not yours to drill."},
		{"Drilling into a wall", "Hidden services: the keep-outs here are what was surveyed, the usual strips are a guess. Detector, power off, test hole. Water, gas and heating run in walls too; a disused flue can leak."},
		{"Anchors", "Use them only with the approval values of the anchor bought, in that wall. Plaster, hollow or aerated block and the wall's edge carry differently. Pull one before trusting all."},
		{"Dust", "Masonry and hardwood dust: mask and extraction."},
		{"Oily rags", "Spread them out singly until they are hard, never in a heap: they catch fire by themselves."},
	}
	if steel {
		out = append(out, Caution{"Cutting and drilling steel", "Sparks away from sawdust and rags, angle clamped, no gloves at the drill, burrs off."})
	}
	if heaviest != nil && heaviest.Mass() > 20 {
		out = append(out, Caution{"Lifting", fmt.Sprintf("%s weighs about %.0f kg. Enough people, props under it before letting go, no fingers between slab and steel.", heaviest.ID, float64(heaviest.Mass()))})
	}
	out = append(out, Caution{"Standing on it", "Nobody before a load test. Edges that carry nothing can tip. It replaces no ladder; mind children."})
	if cables {
		out = append(out, Caution{"Mains electricity", "Fixed wiring by a licensed electrician to the local code. Drivers stay reachable and ventilated; no mains joints in closed wood."})
	}
	return append(out, Caution{"All numbers", "They follow from the readings that were typed in. This is an estimate and no certificate; local codes and the makers' papers come first."})
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
	"strength and stiffness of slab, angle, screws and anchors, standing and sitting loads, tipping",
	"how far the wood swells and shrinks over the year, beyond the fixed gaps",
	"whether the parts can be carried into the room and lowered into place",
	"how likely the readings are right: one tape has one scale error that no closing check sees",
	"cables and light: cross sections, heat, voltage",
}
