package sheet

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/calc/moisture"
	"slabwright/model/unit"
)

// edgeTable says of every edge what it runs up to and how it is worked.
func (w *workpiece) edgeTable() table {
	t := table{heads: w.heads("edge", "corners", "runs up to", "gap", "worked", "detail"), right: []bool{false, false, false, true, false, false}}
	n := len(w.slab.Edges)
	for i, e := range w.slab.Edges {
		name, worked, see := w.pass(e.Name), w.say("sawn"), ""
		switch {
		case e.Waney:
			worked, see = w.say("natural, do not trim"), w.letter("natural")
		case e.Ease > 0:
			worked, see = w.sayf("sawn, arrises %s × 45°", w.length(e.Ease)), w.letter(easeKey(e))
		}
		if e.Reference {
			name += " = A"
		}
		to, gap := w.pass(e.To), w.length(e.Gap)
		switch e.Bound {
		case model.ToAir:
			to, gap = w.say("free // edge"), ""
		case model.ToWall:
			to = w.sayf("wall %s", w.pass(e.To))
		}
		t.rows = append(t.rows, []string{name, fmt.Sprintf("%s-%s", w.slab.Corners[i], w.slab.Corners[(i+1)%n]), to, gap, worked, see})
	}
	return t
}

// cornerTable gives the corners of the top face in the system of the datum
// edges, for marking out and as a check of sides and diagonals.
func (w *workpiece) cornerTable() table {
	t := table{heads: w.heads("corner", "x from B", "y from A", "angle"), right: []bool{false, true, true, true}}
	n := len(w.corners)
	for i, c := range w.corners {
		a, b := w.corners[(i+n-1)%n].Sub(c), w.corners[(i+1)%n].Sub(c)
		angle := math.Atan2(a.Cross(b), a.Dot(b)) // corners run clockwise
		if angle < 0 {
			angle += 2 * math.Pi
		}
		angle = 2*math.Pi - angle
		if angle > math.Pi && a.Cross(b) > 0 {
			angle = 2*math.Pi - angle
		}
		t.rows = append(t.rows, []string{w.slab.Corners[i], w.length(c.X), w.length(-c.Y), w.style.Number(unit.Angle(angle).Degrees(), 2) + "°"})
	}
	return t
}

// gapNotes tell what gaps the sizes leave where they are tightest, and how well
// these are known from the survey.
func (w *workpiece) gapNotes() []string {
	f, err := w.b.Design.FitOf(w.part.ID)
	if err != nil {
		return nil // the findings say why
	}
	var out []string
	for _, way := range f.Ways {
		a, b := way.Tightest[0], way.Tightest[1]
		out = append(out, w.sayf("Cut so, gaps of %s (sd %s) to %s and %s (sd %s) to %s are left at the tightest places.",
			w.length(a.Gap.Value), w.style.Number(float64(a.Gap.SD), 1), w.pass(a.To), w.length(b.Gap.Value), w.style.Number(float64(b.Gap.SD), 1), w.pass(b.To)))
	}
	return out
}

// orderedNotes give the sizes to order from a shop, which differ from those drawn.
func (w *workpiece) orderedNotes() []string {
	f, err := w.b.Design.FitOf(w.part.ID)
	if err != nil {
		return nil // the findings say why
	}
	var out []string
	for _, way := range f.Ways {
		if way.Order == nil {
			continue
		}
		where := w.endsOf(way)
		out = append(out, w.sayf("From a shop order instead: %s %s, %s %s, each %s (sheet Order sizes).",
			where[0], w.length(way.Order.Size), where[1], w.length(way.OrderOther()), w.shopTolerance(way)))
	}
	return out
}

// makeNotes tell how sizes are to be taken, and what to order.
func (w *workpiece) makeNotes() []string {
	l, across := w.slab.Blank()
	up := func(x unit.Length) string { return w.length(unit.Length(math.Ceil(float64(x) - 1e-6))) }
	var out []string
	if w.pieces > 1 {
		out = append(out, w.sayf("Make %d: %s.", w.pieces, w.equals()))
	}
	if c := w.part.Cut; c != nil {
		return append(out, w.sayf("Already cut on %s: do not cut. Sizes are those measured on the piece; see the rule as-cut in report.md for what to trim.", c.On),
			w.sayf("A: reference edge. B: its left end, corner %s. x from B along A, y square from A: for holes that are still to be drilled.", w.cornerB()))
	}
	out = append(out,
		w.sayf("Sizes are as drawn, for sawing on site. The wood to begin with measures L × W × T at least %s × %s × %s, fibre along L; no allowance is in it.", up(l), up(across), w.length(w.slab.Thickness)),
		w.sayf("A: reference edge, planed first. B: its left end, corner %s. x from B along A, y square from A.", w.cornerB()))
	out = append(out, w.gapNotes()...)
	out = append(out, w.orderedNotes()...)
	for _, j := range w.b.Design.Joints {
		if j.Kind != model.OpenJoint && (j.Slab == w.part.ID || j.To == w.part.ID) {
			out = append(out, w.jointText(j))
		}
	}
	if len(w.corners) == 4 {
		out = append(out, w.say("Measure both diagonals before the cut."))
	}
	for i, e := range w.slab.Edges {
		if len(e.Natural) > 0 {
			top, under := w.slab.Course(i)
			least, most := widths(top)
			low, high := widths(under)
			out = append(out, w.sayf("Natural edge: width %s to %s on the top face, %s to %s on the underside.", w.length(least), w.length(most), w.length(low), w.length(high)))
		}
	}
	c := w.b.Job.House.Climate
	year := c.Seasons()
	switch {
	case c.Moisture > 0 && c.Winter != nil && c.Summer != nil:
		out = append(out, w.sayf("Wood moisture %s %% when it is cut; in the air of this room it goes between %s and %s %% over the year.", w.content(year.Fitting), w.content(year.Dry), w.content(year.Damp)))
	case c.Moisture > 0:
		out = append(out, w.sayf("Wood moisture %s %% when it is cut.", w.content(year.Fitting)))
	default:
		out = append(out, w.say("Wood moisture is not given in the job: let the slab lie in the room before the cut."))
	}
	return out
}

// content writes a moisture in per cent, without the sign.
func (m *maker) content(c moisture.Content) string { return m.style.Number(float64(c), 1) }

// equals names the slabs that are made to this sheet.
func (w *workpiece) equals() string {
	var names []string
	for _, p := range w.b.Design.Parts {
		if p.Mark == w.part.Mark {
			names = append(names, w.pass(p.ID))
		}
	}
	return strings.Join(names, ", ")
}

// cornerB is the number of the corner where A begins.
func (w *workpiece) cornerB() string {
	_, _, i := w.reference()
	return w.slab.Corners[i]
}

// cautions are those for the acts that this sheet calls for.
func (w *workpiece) cautions() []string {
	var out []string
	wall, between := false, false
	for i, e := range w.slab.Edges {
		wall, between = wall || e.Bound == model.ToWall, between || w.betweenWalls(i)
	}
	switch {
	case between:
		out = append(out, w.say("Cutting: check the width between the walls on site first, at the height of the slab."))
	case wall:
		out = append(out, w.say("Cutting: check on site first where the walls stand, at the height of the slab."))
	}
	lift := w.sayf("Lifting: %s.", w.kg(w.part.Mass()))
	for _, f := range w.b.Findings {
		if f.Rule == "mass" && len(f.Parts) == 1 && f.Parts[0] == w.part.ID {
			lift = w.sayf("Lifting: %s", w.passSentences(f.Why))
		}
	}
	return append(out, lift, w.say("Dust of hardwood: mask and extraction."))
}
