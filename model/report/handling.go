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
	Props []propDoc `json:"props"` // under it before it is lowered for the last time
}

// propDoc is where a prop stands, from the left end of the slab's back edge and
// from that edge, and how high.
type propDoc struct {
	At   [2]float64 `json:"at_mm"`
	High float64    `json:"high_mm"`
}

// gripDoc is where one person takes hold: at an edge, in the slab's own axes.
type gripDoc struct {
	At    [2]float64 `json:"at_mm"`
	Edge  string     `json:"edge"`
	Share float64    `json:"share_kg"`
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

	Grips    []gripDoc    `json:"grips"`       // empty: no even places were found
	Trestles [][2]float64 `json:"trestles_mm"` // x of the line across the slab, and its length
}

func handling(d *model.Design) handlingDoc {
	out := handlingDoc{Order: []mountDoc{}, Lifts: []liftDoc{}}
	order := bring.OrderOf(d)
	for _, w := range order {
		m := mountDoc{Part: w.Part.ID, Found: w.Verdict == motion.Found, Moves: w.Moves(), Near: w.Least.Near, Poses: []poseDoc{}, Props: []propDoc{}}
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
		for _, p := range w.Props(d) {
			m.Props = append(m.Props, propDoc{[2]float64{mm(p.At.X), mm(p.At.Y)}, mm(p.High)})
		}
		out.Order = append(out.Order, m)
	}
	for _, l := range bring.LiftsOf(d) {
		doc := liftDoc{l.Part.ID, digits(float64(l.Mass)), l.People, l.Enough, digits(float64(l.Share)), digits(float64(l.Recommended)), mm(l.From), mm(l.To), []gripDoc{}, [][2]float64{}}
		for _, g := range l.Grips {
			doc.Grips = append(doc.Grips, gripDoc{[2]float64{mm(g.At.X), mm(g.At.Y)}, g.Edge, digits(float64(g.Share))})
		}
		for _, t := range l.Trestles {
			doc.Trestles = append(doc.Trestles, [2]float64{mm(t.X), mm(t.Far - t.Near)})
		}
		out.Lifts = append(out.Lifts, doc)
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
	for _, l := range bring.LiftsOf(d) {
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
	grips(w, d)
	props(w, d, order)
}

// grips is where hands take a slab and where trestles stand under it.
func grips(w *strings.Builder, d *model.Design) {
	lifts := bring.LiftsOf(d)
	if len(lifts) == 0 {
		return
	}
	w.WriteString("Where to take hold, and where trestles stand: millimetres from the left end of the back edge, and forward from that edge. Never by a natural edge.\n\n| part | hands | trestles across it at |\n|---|---|---|\n")
	for _, l := range lifts {
		hands, on := "no even places on whole sawn edges were found: carry it on straps or a board", "nowhere: no line across it is whole on its underside"
		if l.Grips != nil {
			var list []string
			for _, g := range l.Grips {
				list = append(list, fmt.Sprintf("%s edge, %.0f / %.0f, %.1f kg", g.Edge, float64(g.At.X), -float64(g.At.Y), float64(g.Share)))
			}
			hands = strings.Join(list, "; ")
		}
		if l.Trestles != nil {
			on = fmt.Sprintf("%.0f and %.0f", float64(l.Trestles[0].X), float64(l.Trestles[1].X))
		}
		fmt.Fprintf(w, "| %s | %s | %s |\n", cell(l.Part.ID), hands, on)
	}
	w.WriteString("\n")
}

// props is where a slab is propped before it is lowered for the last time.
func props(w *strings.Builder, d *model.Design, order bring.Order) {
	var lines []string
	for _, x := range order {
		if list := x.Props(d); list != nil {
			lines = append(lines, fmt.Sprintf("- %s: %.0f mm high at %.0f / %.0f and %.0f mm high at %.0f / %.0f", x.Part.ID,
				float64(list[0].High), float64(list[0].At.X), -float64(list[0].At.Y), float64(list[1].High), float64(list[1].At.X), -float64(list[1].At.Y)))
		}
	}
	if lines != nil {
		fmt.Fprintf(w, "Props under a slab before it is lowered for the last time; nobody lets go before they carry:\n\n%s\n\n", strings.Join(lines, "\n"))
	}
}
