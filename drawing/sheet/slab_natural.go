package sheet

import (
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// natural gives the width of a natural edge from the reference edge at every
// measured station, the stations from B, and the edge's name.
func (w *workpiece) natural() []dim.Request {
	var ask []dim.Request
	for i, e := range w.slab.Edges {
		if !e.Waney {
			continue
		}
		top, _ := w.slab.Course(i)
		points := w.stations(i)
		close := w.tooClose(points)
		for _, p := range points {
			extreme := w.extreme(top, p)
			if close && extreme == "" {
				continue // the table has it
			}
			label := dim.Label{}
			if extreme != "" {
				label.Suffix = " " + extreme
			}
			ask = append(ask, dim.Across{A: geom.V(p.X, 0), B: p, Label: label})
		}
		if !close {
			ask = append(ask, fromB(w.footOfB(top), dim.Below, points...)...)
		}
		lines := []string{w.say("natural edge,"), w.say("do not trim")}
		if len(e.Natural) == 0 {
			lines = append(lines, w.say("not measured: drawn"), w.say("at its least width"))
		}
		ask = append(ask, dim.Note{At: w.betweenStations(top, points), Lines: lines, OnEdge: true})
	}
	return ask
}

// extreme says whether a place of a natural edge is its narrowest or its widest.
func (w *workpiece) extreme(course []geom.Vec, p geom.Vec) string {
	switch least, most := widths(course); {
	case abs(-p.Y-least) < printed:
		return w.say("min")
	case abs(-p.Y-most) < printed:
		return w.say("max")
	}
	return ""
}

// stationPitch is how far apart stations must lie on paper to be dimensioned in
// the view: a width is written between two lines there, and diagonals cross it.
const stationPitch unit.Length = 14

// tooClose tells whether stations lie so close that a table gives their widths:
// at the scale that lets the slab take about half the width of the paper, as
// views and what is read beside them need.
func (w *workpiece) tooClose(points []geom.Vec) bool {
	long, _ := w.slab.Blank()
	for _, s := range drawing.Scales {
		if s.Paper > s.Real || s.Of(long) > 0.6*w.size.Width {
			continue
		}
		for i := 1; i < len(points); i++ {
			if s.Of(abs(points[i].X-points[i-1].X)) < stationPitch {
				return true
			}
		}
		return false
	}
	return true
}

// stationTable gives the widths of natural edges at stations that lie too close
// to be dimensioned.
func (w *workpiece) stationTable() table {
	t := table{heads: w.heads("x from B", "width"), right: []bool{true, true}}
	for i, e := range w.slab.Edges {
		if !e.Waney || !w.tooClose(w.stations(i)) {
			continue
		}
		top, _ := w.slab.Course(i)
		for _, p := range w.stations(i) {
			t.rows = append(t.rows, []string{w.length(p.X), strings.TrimSpace(w.length(-p.Y) + " " + w.extreme(top, p))})
		}
	}
	return t
}

// stations are the measured places of a natural edge, without those that fall
// together with its ends, where the sides are measured.
func (w *workpiece) stations(i int) []geom.Vec {
	e := w.slab.Edges[i]
	top, _ := w.slab.Course(i)
	var out []geom.Vec
	for _, st := range e.Natural {
		x := e.End.X + st.Along
		if x < e.End.X+20 || x > e.Start.X-20 {
			continue
		}
		if p, ok := atX(top, x); ok {
			out = append(out, p)
		}
	}
	return out
}

// atX is the point of a course that runs from right to left over x.
func atX(course []geom.Vec, x unit.Length) (geom.Vec, bool) {
	for i := range course[:len(course)-1] {
		if a, b := course[i], course[i+1]; x <= a.X && x >= b.X && a.X > b.X {
			return a.Lerp(b, float64((a.X-x)/(a.X-b.X))), true
		}
	}
	return geom.Vec{}, false
}

// footOfB is where datum B stands at a front edge.
func (w *workpiece) footOfB(front []geom.Vec) geom.Vec {
	if p, ok := atX(front, 0); ok {
		return p
	}
	return geom.V(0, front[len(front)-1].Y)
}

// widths are the least and the greatest distance of a course from the reference
// edge.
func widths(course []geom.Vec) (least, most unit.Length) {
	least, most = -course[0].Y, -course[0].Y
	for _, p := range course {
		least, most = min(least, -p.Y), max(most, -p.Y)
	}
	return least, most
}

// betweenStations is the point of a natural edge in the middle of the widest
// gap between its stations.
func (w *workpiece) betweenStations(course, stations []geom.Vec) geom.Vec {
	last := course[len(course)-1]
	mid, widest := last, unit.Length(0)
	left := last.X
	for _, p := range append(slices.Clone(stations), course[0]) {
		if gap := p.X - left; gap > widest+1 {
			if q, ok := atX(course, left+gap/2); ok {
				mid, widest = q, gap
			}
		}
		left = p.X
	}
	return mid
}
