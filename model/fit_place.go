package model

import (
	"math"
	"slices"
	"strings"

	"slabwright/model/calc/fit"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

const (
	perFace             = 3  // places along an edge, at either face: a bow shows most at its ends or its middle
	reach   unit.Length = 60 // farther away nothing bounds an edge
	beyond  unit.Length = 10 // how far past its corners a wall is looked for: walls that lean meet elsewhere
)

// place is a point of a slab's edge and what bounds the slab there: a wall, or
// else an edge of another slab. The slab moves with the chord that its back
// lies along; so does the other.
type place struct {
	edge     Edge
	index    int
	at, out  geom.Vec // in the room; out is square to the edge, away from the slab
	z        unit.Length
	low      bool // at the underside
	own      [2]int
	turn     unit.Angle // of the slab's own axes
	to       string
	wall     *Wall
	other    [2]geom.Vec
	otherOwn [2]int
}

// places looks along every edge that is bound, at the underside and at the top.
func (d *Design) places(g *gauge, p *Part) []place {
	var out []place
	s := p.Slab
	own := d.chordOf(p, 0)
	for i, e := range s.Edges {
		if e.Bound != ToWall && e.Bound != ToPart {
			continue
		}
		top, under := s.Course(i)
		for _, face := range []struct {
			line []geom.Vec
			z    unit.Length
			low  bool
		}{{under, s.Top - s.Thickness, true}, {top, s.Top, false}} {
			a, b := s.Pose.Plan(face.line[0]), s.Pose.Plan(face.line[len(face.line)-1])
			for k := range perFace {
				q := place{edge: e, index: i, at: a.Lerp(b, float64(k)/(perFace-1)), out: b.Sub(a).Unit().Left(), z: face.z, low: face.low, own: own, turn: s.Pose.Turn}
				if d.bounded(g, &q) {
					out = append(out, q)
				}
			}
		}
	}
	return out
}

// bounded finds what bounds a place, and whether anything does.
func (d *Design) bounded(g *gauge, q *place) bool {
	best := reach
	found := false
	try := func(c place) {
		if v, along, facing := c.gap(g, g.x); facing && along && unit.Length(math.Abs(v)) < best {
			*q, best, found = c, unit.Length(math.Abs(v)), true
		}
	}
	if q.edge.Bound == ToWall {
		for _, w := range d.Room.Walls {
			c := *q
			c.wall, c.to = w, w.Name
			try(c)
		}
		return found
	}
	other := d.Part(q.edge.To)
	if other == nil || other.Slab == nil {
		return false
	}
	for _, e := range other.Slab.Edges {
		c := *q
		pose := other.Slab.Pose
		c.to, c.other, c.otherOwn = other.ID, [2]geom.Vec{pose.Plan(e.Start), pose.Plan(e.End)}, d.chordOf(other, 0)
		try(c)
	}
	return found
}

// chordOf is the pair of corners along whose line a slab lies: those of its
// reference edge's bound or, for a slab that meets another one, of that one.
func (d *Design) chordOf(p *Part, depth int) [2]int {
	s := p.Slab
	e := s.referenceEdge()
	if f := s.Front(); f.Bound == ToPart {
		e = f
	}
	if other := d.Part(e.To); e.Bound == ToPart && other != nil && other.Slab != nil && depth < len(d.Parts) {
		return d.chordOf(other, depth+1)
	}
	r := d.Room
	for i, w := range r.Walls {
		if w.Name == e.To {
			return [2]int{i, (i + 1) % len(r.Corners)}
		}
	}
	for i, a := range r.Corners {
		if rest, ok := strings.CutPrefix(e.To, a.Name+"-"); ok {
			if j := slices.IndexFunc(r.Corners, func(c Corner) bool { return c.Name == rest }); j >= 0 && j != i {
				return [2]int{i, j}
			}
		}
	}
	base := [2]int{0, 1} // bound by nothing that was measured: any chord that stays
	for k, name := range r.known.network.Base {
		if i := slices.IndexFunc(r.Corners, func(c Corner) bool { return c.Name == string(name) }); i >= 0 {
			base[k] = i
		}
	}
	return base
}

// gap is the distance from the place to what bounds it, for numbers x of the
// gauge: whether the place lies beside it, and whether they face each other.
func (q place) gap(g *gauge, x []float64) (v float64, along, facing bool) {
	at, out := moved(g.x, x, q.own, q.at, q.out)
	if q.wall != nil {
		return q.toWall(g, x, at, out)
	}
	a, dir := moved(g.x, x, q.otherOwn, q.other[0], q.other[1].Sub(q.other[0]))
	den := out.Cross(dir)
	if den <= 0.3*float64(dir.Len()) { // edges run clockwise: one that faces ours runs against it
		return 0, false, false
	}
	to := a.Sub(at)
	u := to.Cross(out) / den
	play := float64(beyond) / float64(dir.Len())
	return to.Cross(dir) / den, u > -play && u < 1+play, true
}

// moved carries a point and a direction along with a chord.
func moved(from, to []float64, chord [2]int, at, dir geom.Vec) (geom.Vec, geom.Vec) {
	a, b := frame(from, chord), frame(to, chord)
	return b.Plan(a.Unplan(at)), dir.Turn(b.Turn - a.Turn)
}

// toWall is the distance to the face of a wall, a parabola over its chord.
func (q place) toWall(g *gauge, x []float64, at, out geom.Vec) (v float64, along, facing bool) {
	i := q.wall.Index
	a, b := cornerOf(x, i), cornerOf(x, (i+1)%len(g.room.Corners))
	length := float64(b.Sub(a).Len())
	e := b.Sub(a).Unit()
	in := e.Left().Mul(-1) // into the room
	bow, back := x[g.bowOf(i)], x[g.leanOf(i)]*float64(q.z-g.room.At)
	p := at.Sub(a)
	if in.Dot(out) > -0.3 {
		return 0, false, false
	}
	s := 0.0
	for range 5 { // Newton; the face is nearly straight
		s = (e.Dot(p) + v*e.Dot(out)) / length
		off := in.Dot(p) + v*in.Dot(out) - (4*bow*s*(1-s) - back)
		slope := in.Dot(out) - 4*bow*(1-2*s)/length*e.Dot(out)
		v -= off / slope
	}
	play := float64(beyond) / length
	return v, s > -play && s < 1+play, true
}

// rate is how the gap grows when the slab slides on: to the right, or back.
func (q place) rate(way string) float64 {
	out := q.out.Turn(-q.turn)
	if way == "depth" {
		return -float64(out.Y)
	}
	return -float64(out.X)
}

// trims tells whether the edge moves when the slab is made longer or deeper.
func (q place) trims(s *SlabPart, way string) bool {
	side := q.index == 0 || q.index == len(s.Edges)-2
	return side == (way == "length")
}

func sortReach(list []fit.Reach) {
	slices.SortStableFunc(list, func(a, b fit.Reach) int {
		switch {
		case a.Depth < b.Depth:
			return -1
		case a.Depth > b.Depth:
			return 1
		}
		return 0
	})
}

// scribes lists the edges of a way whose walls are too uneven for a straight
// cut: farther off straight than the gap that is asked for, or than may show.
func (g *gauge) scribes(p *Part, places []place, way string) []FitScribe {
	var out []FitScribe
	for i, e := range p.Slab.Edges {
		var line []place
		for _, q := range places {
			if q.index == i && !q.low && q.wall != nil && q.trims(p.Slab, way) {
				line = append(line, q)
			}
		}
		if len(line) < perFace {
			continue
		}
		gaps, cov, _ := g.gaps(line)
		bow, spread := 0.0, 0.0
		for k, v := range gaps {
			t := unit.Length(float64(k) / float64(len(gaps)-1))
			bow = max(bow, math.Abs(float64(v-gaps[0]*(1-t)-gaps[len(gaps)-1]*t)))
			spread = max(spread, math.Sqrt(cov[k][k]))
		}
		if bow <= 0.5 || bow <= min(float64(e.Gap), float64(fit.Visible())) {
			continue
		}
		n := len(cov) - 1
		length := e.End.Sub(e.Start).Len()
		askew := math.Sqrt(max(0, cov[0][0]+cov[n][n]-2*cov[0][n])) / float64(length)
		out = append(out, FitScribe{Edge: e.Name, Bow: unit.Length(bow),
			OverWood: fit.OverWood(unit.Length(bow), length, unit.Angle(askew), unit.Length(spread))})
	}
	return out
}
