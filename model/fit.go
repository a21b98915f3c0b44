package model

import (
	"fmt"
	"math"

	"slabwright/model/calc/fit"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Fit is how surely a slab goes in between what bounds it.
type Fit struct {
	Part    string
	Ways    []FitWay // "length" from side to side, "depth" where the front is bound too; none for a slab that is free at an end
	Assumed []find.Assumption
	Measure []string // what to measure to know it better, in words
}

// FitWay is one way across a slab. Chance and Order are nil when no
// probability can be given: Unchecked or Disputed then name the readings.
type FitWay struct {
	Name      string        // "length" or "depth"
	From, To  string        // what bounds it, left to right or front to back
	Size      unit.Length   // as drawn: a length along the back, a depth at the left
	Other     unit.Length   // as drawn: a length along the front, a depth at the right
	Gaps      []FitGap      // at both ends
	Tightest  [2]FitGap     // of them the two that leave least
	Play      unit.Measured // at the tightest place, beyond the least gaps, in the most likely room
	Unchecked []string      // readings that nothing checks and that decide
	Disputed  []string      // readings that contradict the others
	Chance    *fit.Chance
	Order     *fit.Order
	Shape     *fit.Shape // of the space between two side walls
	Scribe    []FitScribe
	Wish      FitWish
}

// FitGap is the gap at one place, square to the edge, as drawn. Low and High
// are its 5 % and 95 % values, 0 when no probability can be given.
type FitGap struct {
	Edge, To  string
	At        geom.Vec // on the slab's edge, in the room
	Height    unit.Length
	Gap       unit.Measured
	Low, High unit.Length
}

// FitScribe is an edge before a wall too uneven for a straight cut: the bow
// that the edge meets, and how much longer the blank must be there.
type FitScribe struct {
	Edge          string
	Bow, OverWood unit.Length
}

// FitWish is what a slab must keep and how surely.
type FitWish struct {
	Least, LeastJoint unit.Length   // gap that must be left to a wall, to another slab
	Wider, WiderJoint unit.Length   // how much wider than asked a gap may show
	Sure              float64       // chance wanted
	Shop              fit.Tolerance // its Scale grows with the slab by itself
	Draws             int           // rooms drawn; 0: 40000
}

// UsualFit is taken when nothing else is said: 2 mm left at each end to get a
// slab in, joints that show 4 mm more than planned (2 mm between slabs), a shop
// that keeps +0/-2. Common practice, no source.
var UsualFit = FitWish{Least: 2, Wider: fit.Visible(), WiderJoint: 2, Sure: 0.99, Shop: fit.Tolerance{Minus: 2}}

// twoTapes is how far two class II tapes differ, one in the room and one in the
// shop, as a standard deviation per length: 0.2 mm per metre each, rectangular
// (directive 2014/32/EU, annex X): 0.2 sqrt(2/3).
const twoTapes = 0.163e-3

// usualDraws is how many rooms are drawn when nobody asks for more: a chance of
// 0.99 is then known within 0.0005, the size that has it within 0.02 mm (1 sd).
const usualDraws = 40_000

// FitOf tells how surely a slab goes in, by UsualFit. It gives an error for a
// part that is no slab, and for a room that was not surveyed.
func (d *Design) FitOf(slab string) (Fit, error) {
	d.fitting.Lock()
	defer d.fitting.Unlock()
	if f, ok := d.fits[slab]; ok {
		return f, nil
	}
	f, err := d.FitWith(slab, UsualFit)
	if err != nil {
		return f, err
	}
	if d.fits == nil {
		d.fits = map[string]Fit{}
	}
	d.fits[slab] = f
	return f, nil
}

// FitWith is FitOf with other wishes.
func (d *Design) FitWith(slab string, wish FitWish) (Fit, error) {
	if wish.Draws == 0 {
		wish.Draws = usualDraws
	}
	p := d.Part(slab)
	if p == nil || p.Slab == nil {
		return Fit{}, fmt.Errorf("there is no slab %q", slab)
	}
	if d.Room == nil || d.Room.known == nil {
		return Fit{}, fmt.Errorf("slab %q: no survey stands behind the room", slab)
	}
	g := newGauge(d.Room)
	places := d.places(g, p)
	f := Fit{Part: slab, Assumed: g.assumed(p, facing(places))}
	f.Measure = g.unread(p, facing(places))
	for _, name := range []string{"length", "depth"} {
		ends := across(places, name)
		if ends == nil {
			continue
		}
		w, err := d.way(g, p, name, ends, wish)
		if err != nil {
			return Fit{}, fmt.Errorf("%s of slab %q: %w", name, slab, err)
		}
		w.Scribe = g.scribes(p, places, name)
		f.Ways = append(f.Ways, w)
	}
	return f, nil
}

// across picks the places at the two ends of a way; nil when one end is free.
func across(places []place, way string) []place {
	var out []place
	start, end := false, false
	for _, q := range places {
		rate := q.rate(way)
		if math.Abs(rate) < 0.5 {
			continue
		}
		start, end = start || rate > 0, end || rate < 0
		out = append(out, q)
	}
	if !start || !end {
		return nil
	}
	return out
}

// way works one way across the slab out.
func (d *Design) way(g *gauge, p *Part, name string, ends []place, wish FitWish) (FitWay, error) {
	w := FitWay{Name: name, Wish: wish}
	w.Size, w.Other = sizes(p.Slab, name)
	gaps, cov, hidden := g.gaps(ends)
	problem := fit.Problem{Covariance: cov, Hidden: hidden, Share: 0.5, Draws: wish.Draws}
	joint := [2]bool{} // is there another slab at the start, at the end
	for i, q := range ends {
		s := fit.Station{Edge: q.edge.Name, Gap: gaps[i], Rate: q.rate(name), Trims: q.trims(p.Slab, name)}
		s.Least, s.Widest = wish.Least, q.edge.Gap+wish.Wider
		if q.wall == nil {
			s.Least, s.Widest = wish.LeastJoint, q.edge.Gap+wish.WiderJoint
			joint[endOf(s.Rate)] = true
		}
		if q.low {
			s.Widest = 0 // nobody looks up from below
		}
		problem.Stations = append(problem.Stations, s)
		if side := []*string{&w.From, &w.To}[endOf(s.Rate)]; *side == "" {
			*side = q.edge.To
		}
	}
	switch joint { // a joint between slabs is pushed closed, the wall hides the rest
	case [2]bool{true, false}:
		problem.Share = 0
	case [2]bool{false, true}:
		problem.Share = 1
	}
	w.Disputed = g.disputed()
	if problem.Unchecked = w.Disputed; g.res.Unchecked {
		problem.Unchecked = g.readings()
	}
	a, err := fit.Solve(problem)
	if err != nil {
		return w, err
	}
	w.Play, w.Chance = a.Tightest.Play, a.Chance
	if len(w.Disputed) == 0 {
		w.Unchecked = a.Unchecked
	}
	for i, q := range ends {
		gap := FitGap{Edge: q.edge.Name, To: q.to, At: q.at, Height: q.z, Gap: a.Gaps[i]}
		if w.Chance != nil {
			gap.Low, gap.High = fit.Within(gap.Gap, 0.05), fit.Within(gap.Gap, 0.95)
		}
		w.Gaps = append(w.Gaps, gap)
	}
	w.Tightest = [2]FitGap{w.Gaps[a.Tightest.Start], w.Gaps[a.Tightest.End]}
	if name == "length" && joint == [2]bool{} {
		w.Shape = shapeOf(p, ends, gaps)
	}
	if w.Chance != nil {
		shop := wish.Shop
		shop.Scale += w.Size * twoTapes
		o, err := w.Chance.Order(fit.Want{Size: w.Size, Tolerance: shop, Sure: wish.Sure})
		if err != nil {
			return w, err
		}
		w.Order = &o
	}
	return w, nil
}

func endOf(rate float64) int {
	if rate > 0 {
		return 0
	}
	return 1
}

// sizes are the two sizes of a slab one way: along the back and the front, or
// at the left and the right.
func sizes(s *SlabPart, way string) (unit.Length, unit.Length) {
	left, right := s.Edges[0], s.Edges[len(s.Edges)-2]
	if way == "depth" {
		return left.End.Y - left.Start.Y, right.Start.Y - right.End.Y
	}
	return right.Start.X - left.End.X, right.End.X - left.Start.X
}

// shapeOf looks at the space between two side walls, at the top of the slab.
func shapeOf(p *Part, ends []place, gaps []unit.Length) *fit.Shape {
	var walls [2][]fit.Reach
	for i, q := range ends {
		rate := q.rate("length")
		if q.low || !q.trims(p.Slab, "length") {
			continue
		}
		at := p.Slab.Pose.Unplan(q.at)
		reach := fit.Reach{Depth: -at.Y, At: at.X - gaps[i]/unit.Length(rate)}
		walls[endOf(rate)] = append(walls[endOf(rate)], reach)
	}
	for i := range walls {
		sortReach(walls[i])
	}
	s, err := fit.ShapeOf(walls[0], walls[1])
	if err != nil {
		return nil // a wall that is met at one place only has no shape
	}
	return &s
}
