package drawing

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Material picks the hatch of a cut material.
type Material uint8

// Cut materials and their hatches. Timber follows the habit of joinery
// drawings (DIN 919), the others the general hatch of ISO 128-3.
const (
	Plain      Material = iota // single lines at 45 degrees
	Steel                      // the same, closer
	Masonry                    // pairs of lines at 45 degrees
	Aerated                    // lines at 45 degrees with rows of dots between
	Concrete                   // lines at 45 degrees, every second one chain-dotted
	StudWall                   // crossing lines, wide
	Plaster                    // dots
	EndGrain                   // timber cut across the fibre: 45 degrees, as by hand
	LongGrain                  // timber cut along the fibre: lines with the fibre, as by hand
	SheetBoard                 // wood-based board lying along x: lines square to its plane
)

// Pattern is the hatch of one part. The same part has the same pattern in
// every section; its neighbour is turned a quarter.
type Pattern struct {
	Material Material
	Turn     unit.Angle  // turns the pattern out of its usual direction
	Pitch    unit.Length // distance of the lines; zero chooses it by the size of the area
	Width    unit.Length // of the lines; zero takes the narrow line of the normal group
	Ink      Ink
	Origin   geom.Vec // a point of the first line
}

// Limits of the pitch chosen by area, and the least clear distance between
// parallel lines (ISO 128-2: 0.7).
const (
	leastPitch    unit.Length = 1.5
	greatestPitch unit.Length = 6
	leastClear    unit.Length = 0.7
)

// ruling is one family of parallel lines: its direction, its pitch and offset
// in pitches of the pattern, and how its lines run.
type ruling struct {
	turn          unit.Angle
	pitch, offset float64
	dash          Dash
	wave          wave
}

// closest is the least distance of neighbouring lines in any ruling, in pitches.
const closest = 0.7

const diagonal = 45 * unit.Degree

var rulings = map[Material][]ruling{
	Plain:      {{turn: diagonal, pitch: 1}},
	Steel:      {{turn: diagonal, pitch: 0.75}},
	Masonry:    {{turn: diagonal, pitch: 2.4}, {turn: diagonal, pitch: 2.4, offset: 0.7}},
	Aerated:    {{turn: diagonal, pitch: 2}, {turn: diagonal, pitch: 2, offset: 1, dash: Dotted}},
	Concrete:   {{turn: diagonal, pitch: 2}, {turn: diagonal, pitch: 2, offset: 1, dash: LongDashDot}},
	StudWall:   {{turn: 60 * unit.Degree, pitch: 2.5}, {turn: 120 * unit.Degree, pitch: 2.5}},
	Plaster:    {{turn: 0, pitch: 0.8, dash: Dotted}},
	EndGrain:   {{turn: diagonal, pitch: 1, wave: wave{0.22, 2.9, 0.23}}},
	LongGrain:  {{pitch: 2.2, wave: wave{0.4, 9, 0.11}}, {pitch: 2.2, offset: 0.9, wave: wave{0.4, 9, 0.11}}},
	SheetBoard: {{turn: 90 * unit.Degree, pitch: 1}},
}

// pitchFor chooses the pitch by the mean thickness of the region.
func pitchFor(loops [][]geom.Vec) unit.Length {
	var area, edge float64
	for _, l := range loops {
		edge += float64(length(l, true))
		for i, p := range l {
			area += p.Cross(l[(i+1)%len(l)]) / 2
		}
	}
	thick := unit.Length(2 * math.Abs(area) / max(edge, 1e-9))
	return min(max(thick/5, leastPitch), greatestPitch)
}

func (x Hatch) plot(p Plotter, c *context) {
	var loops [][]geom.Vec
	for _, l := range x.Loops {
		if len(l) >= 3 {
			loops = append(loops, l)
		}
	}
	if len(loops) == 0 {
		return
	}
	pat := x.Pattern
	if pat.Pitch <= 0 {
		pat.Pitch = pitchFor(loops)
	}
	if pat.Width <= 0 {
		pat.Width = Normal.Narrow
	}
	pat.Pitch = max(pat.Pitch, (leastClear+pat.Width)/closest)
	gaps := c.near(bounds(loops))
	for _, r := range rulings[pat.Material] {
		pen := Pen{Width: pat.Width, Dash: r.dash, Ink: pat.Ink}
		chains := r.cut(loops, gaps, pat)
		if len(chains) == 0 {
			continue
		}
		switch r.dash {
		case Solid:
			s := pen.stroke(nil)
			s.Hatch = true
			p.Lines(chains, false, s)
		default:
			for _, ch := range chains {
				s := pen.stroke(fitDashes(pen, length(ch, false), false))
				s.Hatch = true
				p.Lines([][]geom.Vec{ch}, false, s)
			}
		}
	}
}

// textGap is the clear space that a hatch leaves around a text.
const textGap unit.Length = 0.7

// near gives the boxes of texts that touch r, grown by the gap.
func (c *context) near(r Rect) [][]geom.Vec {
	var out [][]geom.Vec
	for _, q := range c.quads {
		g := growQuad(q, textGap)
		if r.Meets(bounds([][]geom.Vec{g})) {
			out = append(out, g)
		}
	}
	return out
}

func growQuad(q [4]geom.Vec, d unit.Length) []geom.Vec {
	x := q[1].Sub(q[0]).Unit().Mul(float64(d))
	y := x.Left()
	return []geom.Vec{q[0].Sub(x).Sub(y), q[1].Add(x).Sub(y), q[2].Add(x).Add(y), q[3].Sub(x).Add(y)}
}

func bounds(loops [][]geom.Vec) Rect {
	r := emptyRect
	for _, l := range loops {
		for _, p := range l {
			r = r.Union(Rect{p, p})
		}
	}
	return r
}

var emptyRect = Rect{
	geom.V(unit.Length(math.Inf(1)), unit.Length(math.Inf(1))),
	geom.V(unit.Length(math.Inf(-1)), unit.Length(math.Inf(-1))),
}
