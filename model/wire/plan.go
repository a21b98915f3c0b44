package wire

import (
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/calc/wiring"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Plan is how everything is wired. Channels and runs are in the order of the
// job.
type Plan struct {
	Runs     []Run
	Channels []Channel
	Lights   []LightRun
	Supplies []SupplyPlan
	Lost     []string // devices without a place, in words
}

// Run is a cable and its way. Where no way keeps every rule it is the best one
// that breaks some, and Breaks tells which.
type Run struct {
	Cable    model.Cable
	Found    bool
	Points   []geom.Vec3 // in the room
	Pieces   []Piece     // between them
	Length   unit.Length // along the cable, with the loop to a table
	Needed   unit.Length // with slack
	Loop     unit.Length // of Length: to a table that rolls
	Radius   unit.Length // least bend that the way leaves, at most the wanted one
	Wanted   unit.Length // least bend of the cable
	Breaks   []Break
	Feeds    string // light that it feeds
	ToDimmer bool   // the lead to the dimmer of that light
}

// Break is a rule that the best way of a cable breaks.
type Break string

// What a way can break.
const (
	TooTight Break = "bend"
	Shares   Break = "shares a channel"
	NoPlug   Break = "plug"
)

// Slack of a cable beyond its way: a tenth, 300 mm at least (common practice,
// no source).
const (
	slackPart  = 0.1
	slackLeast = 300 * unit.MM
)

// Channel is a groove, slot or hole with the cables in it.
type Channel struct {
	Slab, Feature string
	Kind          Kind        // InGroove, InSlot or InHole
	Width, Depth  unit.Length // a hole: its diameter and the thickness of the slab; a slot: its opening
	Cables        []string
	Fill          float64 // part of the section that cables take
	Most          float64
	Mains, Other  []string // names of the cables of each kind
}

// memoKey tells the wirings of a design apart.
type memoKey struct {
	devices *model.Device
	cables  *model.Cable
	lights  *model.Light
}

func first[T any](list []T) *T {
	if len(list) == 0 {
		return nil
	}
	return &list[0]
}

// Of leads the cables of a job through a finished design, once.
func Of(d *model.Design, w model.Wiring) Plan {
	return d.Once(memoKey{first(w.Devices), first(w.Cables), first(w.Lights)}, func() any { return lead(d, w) }).(Plan)
}

func lead(d *model.Design, w model.Wiring) Plan {
	n, at := build(d, w.Devices)
	l := &layer{d: d, n: n, used: map[int][2]bool{}}
	var out Plan
	for _, v := range w.Devices {
		if _, ok := at[v.Name]; !ok {
			out.Lost = append(out.Lost, v.Name)
		}
	}
	cables := slices.Clone(w.Cables)
	runs := make([]Run, len(cables))
	for _, mains := range [2]bool{true, false} { // mains first: the others give way
		for i, c := range cables {
			if (c.Class == model.Mains) == mains {
				from, okA := at[c.From]
				to, okB := at[c.To]
				moves := inside(w, c.From) || inside(w, c.To)
				runs[i] = Run{Cable: c, Wanted: bendOf(c, moves)}
				if okA && okB {
					runs[i] = l.run(c, from, to, moves)
				}
			}
		}
	}
	out.Runs = runs
	for _, light := range w.Lights {
		r, feeds := l.light(light, at)
		out.Lights = append(out.Lights, r)
		out.Runs = append(out.Runs, feeds...)
	}
	sizeDimmers(out.Lights)
	out.Supplies = supplies(out.Lights)
	out.Channels = channels(d, out.Runs)
	return out
}

// layer lays cables one after the other.
type layer struct {
	d    *model.Design
	n    *network
	used map[int][2]bool // links that mains, others run in
}

// bendOf is the least bend of a cable, laid or moving.
func bendOf(c model.Cable, moving bool) unit.Length {
	switch {
	case c.Bend > 0:
		return c.Bend
	case moving:
		return wiring.BendMoving * c.Dia
	}
	return wiring.BendLaid * c.Dia
}

// inside tells whether a device stands in a table that rolls.
func inside(w model.Wiring, name string) bool {
	return slices.ContainsFunc(w.Devices, func(d model.Device) bool { return d.Name == name && d.Inside != "" })
}

// run finds the way of a cable. If none keeps every rule, rules are given up
// one after the other: the plug, then the bend, then the separation.
func (l *layer) run(c model.Cable, from, to int, moves bool) Run {
	r := Run{Cable: c, Wanted: bendOf(c, moves)}
	for _, give := range [][]Break{nil, {NoPlug}, {TooTight}, {NoPlug, TooTight}, {Shares}, {NoPlug, Shares}, {TooTight, Shares}, {NoPlug, TooTight, Shares}} {
		radius := r.Wanted
		if slices.Contains(give, TooTight) {
			radius = 0
		}
		open := l.open(c, from, to, !slices.Contains(give, NoPlug), !slices.Contains(give, Shares))
		w, ok := wiring.Shortest(l.n.Network, from, to, radius, open)
		if !ok {
			continue
		}
		r.Found, r.Breaks, r.Radius = true, give, radius
		if slices.Contains(give, TooTight) {
			r.Radius, w = l.widest(from, to, r.Wanted, open, w)
		}
		l.take(&r, w)
		return r
	}
	return r
}

// widest finds the largest bend that some way leaves, to half a millimetre.
func (l *layer) widest(from, to int, wanted unit.Length, open func(int) bool, way wiring.Way) (unit.Length, wiring.Way) {
	low, high := unit.Length(0), wanted
	for high-low > 0.5 {
		mid := (low + high) / 2
		if w, ok := wiring.Shortest(l.n.Network, from, to, mid, open); ok {
			low, way = mid, w
		} else {
			high = mid
		}
	}
	return low, way
}

// open tells which links a cable from one place to another may take. The loop
// to a table is for what ends there.
func (l *layer) open(c model.Cable, from, to int, plug, apart bool) func(int) bool {
	mains := c.Class == model.Mains
	return func(i int) bool {
		p := l.n.pieces[i]
		if b := l.n.Links[i].B; p.Kind == MovingLoop && b != from && b != to {
			return false
		}
		if plug && p.Gate > 0 && p.Gate < max(c.Plug, c.Dia) {
			return false
		}
		if apart && p.closed() {
			if u := l.used[i]; mains && u[1] || !mains && u[0] {
				return false
			}
		}
		return true
	}
}

// take writes a way into a run and marks the channels that it uses: all links of
// a groove are one channel.
func (l *layer) take(r *Run, w wiring.Way) {
	mains := r.Cable.Class == model.Mains
	for _, p := range w.Places {
		r.Points = append(r.Points, l.n.Places[p])
	}
	r.Length = w.Length
	for i, k := range w.Links {
		p := l.n.pieces[k]
		r.Pieces = append(r.Pieces, p)
		if p.Kind == MovingLoop {
			r.Loop = l.loop(p, r.Points[i], r.Points[i+1])
			r.Length += r.Loop - r.Points[i].Sub(r.Points[i+1]).Len()
		}
		if !p.closed() {
			continue
		}
		for j, q := range l.n.pieces {
			if q.closed() && q.Slab == p.Slab && q.Feature == p.Feature {
				u := l.used[j]
				if mains {
					u[0] = true
				} else {
					u[1] = true
				}
				l.used[j] = u
			}
		}
	}
	r.Needed = r.Length + max(slackLeast, unit.Length(slackPart*float64(r.Length)))
}

// loop is the length from a strip to a table: enough for the table rolled out,
// and a tenth more so that it hangs.
func (l *layer) loop(p Piece, a, b geom.Vec3) unit.Length {
	table := l.d.Part(p.Slab)
	fixed := a
	if in := tableInlet(table, 0); in.Sub(a).Len() < in.Sub(b).Len() {
		fixed = b
	}
	far := max(tableInlet(table, 0).Sub(fixed).Len(), tableInlet(table, table.RollOut.Travel).Sub(fixed).Len())
	return unit.Length(1.1 * float64(far))
}

// channels tells what lies in each groove and hole that is used.
func channels(d *model.Design, runs []Run) []Channel {
	var out []Channel
	for _, p := range d.Parts {
		if p.Slab == nil {
			continue
		}
		for _, f := range p.Slab.Features {
			c := Channel{Slab: p.ID, Feature: f.Name, Width: f.Dia}
			switch {
			case f.Kind == model.Through:
				c.Kind, c.Depth = InHole, p.Slab.Thickness
			case f.Kind == model.Groove:
				c.Kind, c.Depth = InGroove, f.Clear()
			case IsSlot(f):
				o := OpeningOf(d, p, f)
				c.Kind, c.Width, c.Depth = InSlot, o.Long, o.Deep
			default:
				continue
			}
			var area float64
			for _, r := range runs {
				in := func(q Piece) bool { return q.closed() && q.Slab == p.ID && q.Feature == f.Name }
				if !slices.ContainsFunc(r.Pieces, in) {
					continue
				}
				c.Cables = append(c.Cables, r.Cable.Name)
				area += math.Pi / 4 * float64(r.Cable.Dia*r.Cable.Dia)
				if r.Cable.Class == model.Mains {
					c.Mains = append(c.Mains, r.Cable.Name)
				} else {
					c.Other = append(c.Other, r.Cable.Name)
				}
			}
			if len(c.Cables) == 0 {
				continue
			}
			if c.Kind != InHole {
				c.Fill, c.Most = area/float64(c.Width*c.Depth), wiring.MostFill
			} else {
				c.Fill, c.Most = area/(math.Pi/4*float64(c.Width*c.Width)), wiring.MostFillRound(len(c.Cables))
			}
			out = append(out, c)
		}
	}
	return out
}
