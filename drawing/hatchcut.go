package drawing

import (
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// wave bends hatch lines as a hand does: height in mm, length as the angular
// divisor, and how fast the phase drifts from line to line.
type wave struct{ height, stretch, drift float64 }

// at is the bend at u along the lines and v across them.
func (w wave) at(u, v float64) float64 {
	return w.height * (math.Sin(u/w.stretch+w.drift*v) + 0.7*math.Sin(u/(0.44*w.stretch)-1.8*w.drift*v+1))
}

// straighten gives the v whose bent line passes through (u, y). The bend
// changes slowly across the lines, so a few repeats settle it.
func (w wave) straighten(u, y float64) float64 {
	v := y
	for range 6 {
		v = y - w.at(u, v)
	}
	return v
}

// waveStride is the length of the straight pieces of a bent line.
const waveStride = 1.0

// rule is a family of lines brought into its own frame: u along the lines, v
// across them in pitches, bent lines straightened.
type rule struct {
	origin   geom.Vec
	cos, sin float64
	pitch    float64 // mm
	offset   float64 // mm
	wave     wave
}

// cut lays the lines of a ruling over a region and leaves out the gaps. Bent
// lines are cut as straight ones in the straightened plane.
func (r ruling) cut(loops, gaps [][]geom.Vec, pat Pattern) [][]geom.Vec {
	s, c := math.Sincos(float64(r.turn + pat.Turn))
	f := rule{pat.Origin, c, s, r.pitch * float64(pat.Pitch), r.offset * float64(pat.Pitch), r.wave}
	ink, first := f.spans(loops)
	for i := range ink {
		slices.Sort(ink[i])
	}
	free := make([][]float64, len(ink))
	for _, g := range gaps {
		part, at := f.spans([][]geom.Vec{g})
		for i, us := range part {
			if k := at + i - first; k >= 0 && k < len(free) && len(us) >= 2 {
				free[k] = append(free[k], slices.Min(us), slices.Max(us))
			}
		}
	}
	var out [][]geom.Vec
	for i, us := range ink {
		v := float64(first+i)*f.pitch + f.offset
		for j := 0; j+1 < len(us); j += 2 {
			for _, span := range minus(us[j], us[j+1], free[i]) {
				if span[1]-span[0] > 0.05 {
					out = append(out, f.line(span[0], span[1], v))
				}
			}
		}
	}
	return out
}

// spans gives for each line, from number first on, where it crosses the loops.
func (f rule) spans(loops [][]geom.Vec) (crossings [][]float64, first int) {
	var edges [][2][2]float64
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, l := range loops {
		pts := f.into(l)
		for i, p := range pts {
			edges = append(edges, [2][2]float64{p, pts[(i+1)%len(pts)]})
			lo, hi = min(lo, p[1]), max(hi, p[1])
		}
	}
	const mostLines = 1e5
	if !(hi-lo < mostLines) {
		return nil, 0
	}
	first = int(math.Ceil(lo))
	crossings = make([][]float64, max(0, int(math.Floor(hi))-first+1))
	for _, e := range edges {
		a, b := e[0], e[1]
		if a[1] > b[1] {
			a, b = b, a
		}
		for k := math.Ceil(a[1]); k < b[1]; k++ {
			u := a[0] + (b[0]-a[0])*(k-a[1])/(b[1]-a[1])
			crossings[int(k)-first] = append(crossings[int(k)-first], u)
		}
	}
	return crossings, first
}

// into brings a loop into the frame of the rule; sides are cut short where the
// lines are bent.
func (f rule) into(loop []geom.Vec) [][2]float64 {
	out := make([][2]float64, 0, len(loop))
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		n := 1
		if f.wave.height != 0 {
			n = max(1, int(float64(q.Sub(p).Len())/waveStride))
		}
		for j := range n {
			out = append(out, f.point(p.Lerp(q, float64(j)/float64(n))))
		}
	}
	return out
}

func (f rule) point(p geom.Vec) [2]float64 {
	d := p.Sub(f.origin)
	u := float64(d.X)*f.cos + float64(d.Y)*f.sin
	v := float64(d.Y)*f.cos - float64(d.X)*f.sin
	if f.wave.height != 0 {
		v = f.wave.straighten(u, v)
	}
	return [2]float64{u, (v - f.offset) / f.pitch}
}

// line brings a stretch of a line back to the sheet.
func (f rule) line(u0, u1, v float64) []geom.Vec {
	n := 1
	if f.wave.height != 0 {
		n = max(1, int(math.Ceil((u1-u0)/waveStride)))
	}
	pts := make([]geom.Vec, n+1)
	for i := range pts {
		u := u0 + (u1-u0)*float64(i)/float64(n)
		y := v
		if f.wave.height != 0 {
			y += f.wave.at(u, v)
		}
		pts[i] = f.origin.Add(geom.V(unit.Length(u*f.cos-y*f.sin), unit.Length(u*f.sin+y*f.cos)))
	}
	return pts
}

// minus takes the pairs of gaps out of the span from a to b.
func minus(a, b float64, gaps []float64) [][2]float64 {
	spans := [][2]float64{{a, b}}
	for g := 0; g+1 < len(gaps); g += 2 {
		var next [][2]float64
		for _, s := range spans {
			if gaps[g] > s[0] {
				next = append(next, [2]float64{s[0], min(s[1], gaps[g])})
			}
			if gaps[g+1] < s[1] {
				next = append(next, [2]float64{max(s[0], gaps[g+1]), s[1]})
			}
		}
		spans = next
	}
	return spans
}
