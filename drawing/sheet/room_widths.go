package sheet

import (
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// width is the clear room for a slab at one depth, along its back edge, with
// what the wood takes of it.
type width struct {
	name        string
	middle      bool        // in the middle of the slab
	from, to    geom.Vec    // between walls or neighbours, in the room's axes
	deep        unit.Length // from the back edge
	clear, wood unit.Length
	left, right unit.Length // gaps
}

// Places at which widths are given lie this far inside the edges: what is
// measured there with a tape is not a corner full of plaster. At the back they
// keep off the angles, so that the line can be seen on the plan.
const (
	insideEdge unit.Length = 20
	legReach   unit.Length = 60
)

// widths gives the clear widths for a slab at its back, in its middle and at
// its front, the smaller one of those at its two faces. A side that ends in the
// air has none.
func (m *maker) widths(p *model.Part) []width {
	sp := p.Slab
	wood := sp.TopOutline()
	lo, hi := wood.Bounds()
	front := min(sp.Front().Start.Y, sp.Front().End.Y)
	deep := -front
	back := -min(2*legReach, deep/4) // clear of the steel below
	var out []width
	for _, at := range []struct {
		name   string
		y      unit.Length
		middle bool
	}{{m.say("back"), back, false}, {m.say("middle"), front / 2, true}, {m.say("front"), front + insideEdge, false}} {
		if deep < 4*insideEdge {
			break
		}
		a, b := geom.V(lo.X-10, at.y), geom.V(hi.X+10, at.y)
		spans := wood.Inside(a, b)
		if len(spans) == 0 {
			continue
		}
		long := b.X - a.X
		w0, w1 := a.X+long*unit.Length(spans[0][0]), a.X+long*unit.Length(spans[len(spans)-1][1])
		c0, c1, ok := m.free(p, at.y, (w0+w1)/2)
		if !ok {
			continue
		}
		out = append(out, width{name: at.name, middle: at.middle, deep: -at.y, from: sp.Pose.Plan(geom.V(c0, at.y)), to: sp.Pose.Plan(geom.V(c1, at.y)),
			clear: c1 - c0, wood: w1 - w0, left: w0 - c0, right: c1 - w1})
	}
	return out
}

// free is how far a slab could reach to both sides at a depth, from a place
// inside it, at both of its faces; false when a side is open.
func (m *maker) free(p *model.Part, y, x unit.Length) (from, to unit.Length, ok bool) {
	const far = 20 * unit.M
	sp := p.Slab
	a, b := sp.Pose.Plan(geom.V(x-far, y)), sp.Pose.Plan(geom.V(x+far, y))
	from, to = -far, far
	for _, z := range []unit.Length{sp.Top - sp.Thickness, sp.Top} {
		plan := m.b.Room.Plan(z)
		for _, q := range m.worktops() {
			if q != p && q.Slab.Top > sp.Top-sp.Thickness && q.Slab.Top-q.Slab.Thickness < sp.Top {
				plan = plan.Minus(q.Outline())
			}
		}
		met := false
		for _, s := range plan.Inside(a, b) {
			lo, hi := x-far+2*far*unit.Length(s[0]), x-far+2*far*unit.Length(s[1])
			if lo <= x && x <= hi {
				from, to, met = max(from, lo), min(to, hi), true
			}
		}
		if !met {
			return 0, 0, false
		}
	}
	for _, c := range []unit.Length{from, to} {
		if at := sp.Pose.Plan(geom.V(c, y)); !m.onWall(at, sp.Top) && !m.besideTop(p, at) {
			return 0, 0, false
		}
	}
	return from, to, true
}

func (m *maker) besideTop(p *model.Part, at geom.Vec) bool {
	for _, q := range m.worktops() {
		if q != p && q.Outline().DistanceTo(at) < 1 {
			return true
		}
	}
	return false
}

// opening is the joint between a slab and a wall along the stretch where they
// face each other.
type opening struct {
	slab          *model.Part
	wall          *model.Wall
	least, widest unit.Length
	at            geom.Vec // on the slab's edge, in the middle of the stretch
}

// openings measures the joints of a slab with the walls at both of its faces:
// at 61 places of every wall and across from every corner of the slab.
func (m *maker) openings(p *model.Part) []opening {
	const reach = 60
	sp := p.Slab
	wood := p.Outline()
	var out []opening
	for _, w := range m.b.Room.Walls {
		o := opening{slab: p, wall: w, least: unit.Length(math.Inf(1))}
		var hits []geom.Vec
		for _, z := range []unit.Length{sp.Top, sp.Top - sp.Thickness} {
			face := w.Face(z)
			in := w.Chord().D.Unit().Left().Mul(-1)
			for _, t := range tries(w, wood) {
				p := along(face, t)
				spans := wood.Inside(p.Sub(in), p.Add(in.Mul(reach)))
				if len(spans) == 0 || spans[0][0] == 0 {
					continue
				}
				// At the ends of a slab a ray may slip past its corner: the nearest
				// wood counts.
				d := min((reach+1)*unit.Length(spans[0][0])-1, wood.DistanceTo(p))
				o.least, o.widest = min(o.least, d), max(o.widest, d)
				if z == sp.Top {
					hits = append(hits, p.Add(in.Mul(float64(d))))
				}
			}
		}
		if len(hits) > 1 && hits[0].Sub(hits[len(hits)-1]).Len() > 40 {
			o.at = hits[len(hits)/2]
			out = append(out, o)
		}
	}
	return out
}

// tries are the places along a wall at which its joint with a slab is measured,
// as shares of its length.
func tries(w *model.Wall, wood geom.Region) []float64 {
	const places = 60
	var out []float64
	for i := range places + 1 {
		out = append(out, float64(i)/places)
	}
	l := w.Chord()
	for _, loop := range wood.Loops() {
		for _, v := range loop {
			if t := float64(l.Along(v) / l.D.Len()); t > 0 && t < 1 && l.D.Len() > 0 && abs(l.Side(v)) < 60 {
				out = append(out, t)
			}
		}
	}
	slices.Sort(out)
	return out
}

// along is the point at a share of the way along a chain whose links are even.
func along(chain []geom.Vec, t float64) geom.Vec {
	x := t * float64(len(chain)-1)
	i := min(int(x), len(chain)-2)
	return chain[i].Lerp(chain[i+1], x-float64(i))
}

// span writes a range of lengths, or one length where both are alike.
func (m *maker) span(a, b unit.Length) string {
	if s, t := m.length(a), m.length(b); s != t {
		return m.sayf("%s to %s", s, t)
	}
	return m.length(a)
}
