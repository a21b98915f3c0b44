package model

import (
	"math"
	"slices"

	"slabwright/model/calc/fit"
	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// known is what stands behind a room: its readings and their adjustment.
type known struct {
	network survey.Network
	res     *survey.Result
}

// suspect is how many standard deviations a reading may differ from the room
// (Baarda 1968, two-sided 0.1 %).
const suspect = 3.29

// Spreads of how walls lean, as standard deviations, mm per mm of height.
const (
	leanRead   = 0.5e-3 // read with a level: common practice, no source
	leanUnread = 2e-3   // taken as plumb: 6 mm at 1 m (limit of DIN 18202, from memory) as three of them
)

// gauge is the room as far as gaps depend on it: a list of numbers, the
// coordinates of the corners, then the bows of the walls, then their leans; and
// how they spread together.
type gauge struct {
	room *Room
	*known
	x   []float64
	cov [][]float64
	up  float64 // factor on the survey's standard deviations
}

func newGauge(r *Room) *gauge {
	g := &gauge{room: r, known: r.known, up: 1}
	for _, c := range r.Corners {
		g.x = append(g.x, float64(c.At.X), float64(c.At.Y))
	}
	for _, w := range r.Walls {
		g.x = append(g.x, float64(w.Bow))
	}
	for _, w := range r.Walls {
		g.x = append(g.x, w.Lean)
	}
	if g.res.DOF >= 5 { // fewer residuals say too little: common practice, no source
		g.up = max(1, g.res.S0)
	}
	g.cov = make([][]float64, len(g.x))
	for i := range g.cov {
		g.cov[i] = make([]float64, len(g.x))
	}
	for i, w := range r.Walls {
		bow, lean := g.bowOf(i), g.leanOf(i)
		sd := float64(g.bowSD())
		if w.bowSD > 0 {
			sd = float64(w.bowSD)
		}
		g.cov[bow][bow] = sd * sd
		sd = leanUnread
		if w.leanRead {
			sd = leanRead
		}
		if w.leanSD > 0 {
			sd = float64(w.leanSD)
		}
		g.cov[lean][lean] = sd * sd
	}
	at := g.entries()
	for i, a := range at {
		for j, b := range at {
			if a >= 0 && b >= 0 {
				g.cov[a][b] = g.up * g.up * g.res.Covariance[i][j]
			}
		}
	}
	return g
}

// bowSD is how well a bow is known, read or not.
func (g *gauge) bowSD() unit.Length {
	if s := g.network.Accuracy.Bow; s != 0 {
		return s
	}
	return survey.Usual.Bow
}

func (g *gauge) bowOf(wall int) int  { return 2*len(g.room.Corners) + wall }
func (g *gauge) leanOf(wall int) int { return 2*len(g.room.Corners) + len(g.room.Walls) + wall }

// entries says for every row of the survey's covariance which number of the
// gauge it is, -1 for none.
func (g *gauge) entries() []int {
	var out []int
	for _, p := range g.res.Points {
		i := slices.IndexFunc(g.room.Corners, func(c Corner) bool { return c.Name == string(p.Name) })
		if i < 0 {
			out = append(out, -1, -1)
			continue
		}
		out = append(out, 2*i, 2*i+1)
	}
	for _, b := range g.res.Bows {
		i := slices.IndexFunc(g.room.Walls, func(w *Wall) bool { return w.From.Name == string(b.From) && w.To.Name == string(b.To) })
		if i >= 0 {
			i = g.bowOf(i)
		}
		out = append(out, i)
	}
	return out
}

// gaps measures the gaps of places, with their covariance, and how they move
// with every reading that nothing checks.
func (g *gauge) gaps(places []place) (gaps []unit.Length, cov [][]float64, hidden []fit.Influence) {
	rows := make([][]float64, len(places))
	for i, p := range places {
		v, _, _ := p.gap(g, g.x)
		gaps = append(gaps, unit.Length(v))
		rows[i] = g.derivative(p)
	}
	cov = make([][]float64, len(rows))
	for i, a := range rows {
		spread := make([]float64, len(g.x)) // the covariance times a
		for k := range spread {
			for l, v := range a {
				spread[k] += g.cov[k][l] * v
			}
		}
		cov[i] = make([]float64, len(rows))
		for j, b := range rows {
			cov[i][j] = dot(spread, b)
		}
	}
	for _, s := range g.slips() {
		h := fit.Influence{Reading: s.reading}
		for _, row := range rows {
			k := 1.0 // the room stands or falls with the reading
			if s.moves != nil {
				k = dot(row, s.moves)
			}
			h.PerUnit = append(h.PerUnit, k)
		}
		hidden = append(hidden, h)
	}
	return gaps, cov, hidden
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

// derivative is how a gap grows with every number of the gauge, by central
// differences: their error is a millionth here.
func (g *gauge) derivative(p place) []float64 {
	out := make([]float64, len(g.x))
	x := slices.Clone(g.x)
	for k := range x {
		h := 0.01 // mm
		if k >= g.leanOf(0) {
			h = 1e-5
		}
		x[k] = g.x[k] + h
		more, _, _ := p.gap(g, x)
		x[k] = g.x[k] - h
		less, _, _ := p.gap(g, x)
		x[k] = g.x[k]
		out[k] = (more - less) / (2 * h)
	}
	return out
}

func cornerOf(x []float64, i int) geom.Vec {
	return geom.V(unit.Length(x[2*i]), unit.Length(x[2*i+1]))
}

// frame is where something stands that lies along a straight line between two
// corners.
func frame(x []float64, chord [2]int) geom.Pose {
	a := cornerOf(x, chord[0])
	return geom.Pose{At: a.Up(0), Turn: cornerOf(x, chord[1]).Sub(a).Angle()}
}

// slip is how the room would move if a reading were off.
type slip struct {
	reading string
	moves   []float64 // numbers of the gauge per millimetre or degree; nil: there would be no room
}

// slips goes through the readings that no other reading checks and adjusts the
// room once more with each of them a little off. Bows stand for themselves:
// they are named among the assumptions.
func (g *gauge) slips() []slip {
	var out []slip
	if g.res.Unchecked {
		return nil // all of them are
	}
	at := g.entries()
	for i, o := range g.res.Readings {
		if o.Checked || o.Reading.Kind == survey.Bow {
			continue
		}
		const off = 0.1 // mm or degrees
		n := g.network
		n.Readings = slices.Clone(n.Readings)
		n.Readings[i].Length += off
		n.Readings[i].Angle += off * unit.Degree
		s := slip{reading: o.Reading.ID}
		if res, err := survey.Adjust(n); err == nil {
			s.moves = make([]float64, len(g.x))
			for k, p := range g.res.Points {
				if a := at[2*k]; a >= 0 {
					d := res.Points[k].At.Sub(p.At)
					s.moves[a], s.moves[a+1] = float64(d.X)/off, float64(d.Y)/off
				}
			}
		}
		out = append(out, s)
	}
	return out
}

// disputed names the readings that do not agree: those among which the slip is,
// nothing when every reading is within its spread.
func (g *gauge) disputed() []string {
	if !slices.ContainsFunc(g.res.Readings, func(o survey.Outcome) bool { return o.Checked && math.Abs(o.W) > suspect }) {
		return nil
	}
	var out []string
	for _, s := range g.res.Judge(survey.Options{Next: -1}).Suspects {
		for _, a := range s.Readings {
			out = append(out, a.Reading.ID)
		}
	}
	return out
}

// readings names all readings but bows.
func (g *gauge) readings() []string {
	var out []string
	for _, o := range g.res.Readings {
		if o.Reading.Kind != survey.Bow {
			out = append(out, o.Reading.ID)
		}
	}
	return out
}
