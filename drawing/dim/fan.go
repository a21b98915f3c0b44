package dim

import (
	"cmp"
	"math"
	"slices"

	"slabwright/drawing"
	"slabwright/model/unit"
)

// fan is where the values of running dimensions stand, each at the end of its
// extension line. Where features lie closer than lettering, the extension
// lines have a jog and spread out like a fan.
type fan struct {
	height unit.Length   // of the lettering
	x      []unit.Length // middle of each value along the line
	jog    unit.Length   // height of the jog; zero when none is needed
	lo, hi unit.Length   // along the line, lettering included
	room   unit.Length   // across the value that takes most
	long   unit.Length   // of the longest value
}

const (
	pitchRatio              = 1.35 // distance of turned values, in heights
	patience    unit.Length = 6    // a value further off its feature asks for smaller lettering
	fanStart    unit.Length = 1    // gap between line and value
	leastJog    unit.Length = 3
	barrier     unit.Length = 1 // room kept by an extension line that passes between values
	steepestJog             = 0.6
)

// depth is how far the values reach beyond the dimension line.
func (f *fan) depth(s *Style) unit.Length { return s.Past + f.jog + fanStart + f.long }

// spread places the values; barriers stay where they are.
func (e *entry) spread(s *Style, barriers []bead) fan {
	f := e.spreadAt(s.Height, barriers)
	if s.Crowded < s.Height && e.shift(f.x) > patience {
		f = e.spreadAt(s.Crowded, barriers)
	}
	if d := e.shift(f.x); d > 0.05 {
		f.jog = max(leastJog, d*steepestJog)
	}
	return f
}

func (e *entry) shift(x []unit.Length) unit.Length {
	far := unit.Length(0)
	for i := range x {
		far = max(far, abs(x[i]-e.u[i]))
	}
	return far
}

func (e *entry) spreadAt(height unit.Length, barriers []bead) fan {
	f := fan{height: height, x: make([]unit.Length, len(e.u))}
	list := make([]bead, 0, len(e.u)+len(barriers))
	for i, u := range e.u {
		room := e.texts[i].across(height)
		f.room = max(f.room, room)
		list = append(list, bead{u, room, 1, i})
		f.long = max(f.long, drawing.TextWidth(e.texts[i].lines[0], height))
	}
	list = append(list, merged(e.u, barriers, f.room)...)
	middle := (e.u[0] + e.u[len(e.u)-1]) / 2
	slices.SortStableFunc(list, func(a, b bead) int {
		if a.want != b.want {
			return cmp.Compare(a.want, b.want)
		}
		if a.want < middle { // a value on a barrier goes to its outer side
			return cmp.Compare(b.value, a.value)
		}
		return cmp.Compare(a.value, b.value)
	})
	for i, x := range thread(list) {
		if v := list[i].value; v >= 0 {
			f.x[v] = x
		}
	}
	f.lo, f.hi = slices.Min(f.x)-f.room/2, slices.Max(f.x)+f.room/2
	return f
}

// bead wants to be at a place and takes some room; value is -1 for a barrier.
type bead struct {
	want, room unit.Length
	weight     float64
	value      int
}

// barrierAt keeps values off something that passes between them.
func barrierAt(u, width unit.Length) bead { return bead{u, width + barrier, 1e6, -1} }

// merged sorts barriers. Two that leave too little room between them for the
// values that belong there become one.
func merged(values []unit.Length, list []bead, pitch unit.Length) []bead {
	list = slices.Clone(list)
	slices.SortFunc(list, func(a, b bead) int { return cmp.Compare(a.want, b.want) })
	for i := 0; i+1 < len(list); {
		a, b := list[i], list[i+1]
		n := 0
		for _, u := range values {
			if a.want <= u && u <= b.want {
				n++
			}
		}
		lo := min(a.want-a.room/2, b.want-b.room/2)
		hi := max(a.want+a.room/2, b.want+b.room/2)
		if free := hi - lo - a.room - b.room; free > 0 && free >= unit.Length(n)*pitch {
			i++
			continue
		}
		list[i] = bead{(lo + hi) / 2, hi - lo, 1e6, -1}
		list = slices.Delete(list, i+1, i+2)
		i = max(0, i-1) // what was pushed out may be too much for the gap before
	}
	return list
}

// across is the room that one line of lettering takes across its base line, its
// middle in the middle: more where accents and descenders reach far.
func (b *block) across(height unit.Length) unit.Length {
	q := drawing.Text{String: b.lines[0], Height: height}.Quad()
	return max(pitchRatio*height, 2*max(q[2].Y-height/2, height/2-q[0].Y)+barrier/2)
}

// thread puts beads in order on a line so that none overlap and the sum of the
// squares of their shifts is least: isotonic regression by pooling adjacent
// violators (Barlow, Bartholomew, Bremner, Brunk, Statistical Inference under
// Order Restrictions, 1972, section 1.2).
func thread(list []bead) []unit.Length {
	type pool struct {
		mean, weight float64
		n            int
	}
	var pools []pool
	offset := make([]float64, len(list))
	for i, b := range list {
		if i > 0 {
			offset[i] = offset[i-1] + float64(list[i-1].room+b.room)/2
		}
		p := pool{float64(b.want) - offset[i], b.weight, 1}
		for len(pools) > 0 && pools[len(pools)-1].mean > p.mean {
			q := pools[len(pools)-1]
			w := p.weight + q.weight
			p = pool{(p.mean*p.weight + q.mean*q.weight) / w, w, p.n + q.n}
			pools = pools[:len(pools)-1]
		}
		pools = append(pools, p)
	}
	out := make([]unit.Length, 0, len(list))
	for _, p := range pools {
		for range p.n {
			out = append(out, unit.Length(p.mean+offset[len(out)]))
		}
	}
	return out
}

// crowded tells whether a terminator at a station would lie on the one before,
// seen from the datum.
func (e *entry) crowded(i int, s *Style) bool {
	before := i - 1
	if i < e.datum {
		before = i + 1
	}
	room := s.EndSize + 0.5
	if before == e.datum {
		room += originR
	}
	return math.Abs(float64(e.u[i]-e.u[before])) < float64(room)
}
