package report

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/calc/motion"
)

// handlingDoc is how the parts go together and who lifts them.
type handlingDoc struct {
	Order []mountDoc `json:"order"`
	Lifts []liftDoc  `json:"lifts"`
}

// mountDoc is a part on its way. The least gap is null where nothing is near or
// no way was found.
type mountDoc struct {
	Part  string    `json:"part"`
	Found bool      `json:"found"`
	Moves []string  `json:"moves"`
	Least *float64  `json:"least_gap_mm"`
	Near  string    `json:"near"`
	Poses []poseDoc `json:"poses"`
}

// poseDoc is where the middle of the part is, and how it is turned against its
// place.
type poseDoc struct {
	At   [3]float64 `json:"at_mm"`
	Turn float64    `json:"turn_deg"`
	Roll float64    `json:"roll_deg"`
	Tilt float64    `json:"tilt_deg"`
}

type liftDoc struct {
	Part        string  `json:"part"`
	Mass        float64 `json:"mass_kg"`
	People      int     `json:"people"`
	Enough      bool    `json:"enough"` // four people would do
	Share       float64 `json:"share_kg"`
	Recommended float64 `json:"recommended_kg"` // for one person; 0: out of reach
	From        float64 `json:"from_mm"`
	To          float64 `json:"to_mm"`
}

func handling(d *model.Design) handlingDoc {
	out := handlingDoc{Order: []mountDoc{}, Lifts: []liftDoc{}}
	order := bring.OrderOf(d)
	for _, w := range order {
		m := mountDoc{Part: w.Part.ID, Found: w.Verdict == motion.Found, Moves: w.Moves(), Near: w.Least.Near, Poses: []poseDoc{}}
		if m.Moves == nil {
			m.Moves = []string{}
		}
		if m.Found && !math.IsInf(float64(w.Least.Gap), 0) {
			least := mm(w.Least.Gap)
			m.Least = &least
		}
		for _, p := range w.Poses {
			m.Poses = append(m.Poses, poseDoc{triple(w.Middle(p)), digits(p.Turn.Degrees()), digits(p.Roll.Degrees()), digits(p.Tilt.Degrees())})
		}
		out.Order = append(out.Order, m)
	}
	for _, l := range bring.Lifts(order) {
		out.Lifts = append(out.Lifts, liftDoc{l.Part.ID, digits(float64(l.Mass)), l.People, l.Enough, digits(float64(l.Share)), digits(float64(l.Recommended)), mm(l.From), mm(l.To)})
	}
	return out
}

// mounting is the order of mounting, with masses and hands.
func mounting(w *strings.Builder, d *model.Design) {
	order := bring.OrderOf(d)
	if len(order) == 0 {
		return
	}
	hands := map[*model.Part]string{}
	for _, l := range bring.Lifts(order) {
		hands[l.Part] = fmt.Sprint(l.People)
		if !l.Enough {
			hands[l.Part] = "4 and a lift table"
		}
	}
	fmt.Fprintf(w, "## How it goes together\n\n| no. | part | kg | people | way in |\n|--:|---|--:|--:|---|\n")
	for i, x := range order {
		way := strings.Join(x.Moves(), "; ")
		switch {
		case x.Verdict != motion.Found:
			way = "**no way was found**"
		case x.Part.Slab == nil:
			way = "straight to its place"
		}
		fmt.Fprintf(w, "| %d | %s | %.1f | %s | %s |\n", i+1, cell(x.Part.ID), float64(x.Part.Mass()), hands[x.Part], way)
	}
	w.WriteString("\n")
}
