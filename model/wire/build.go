package wire

import (
	"math"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// build makes the network of a design and gives the place of every device;
// devices that have none are left out.
func build(d *model.Design, devices []model.Device) (*network, map[string]int) {
	n := &network{index: map[geom.Vec3]int{}}
	for _, p := range d.Parts {
		if p.Slab != nil {
			n.edges(d, p)
		}
	}
	for _, p := range d.Parts {
		if p.Slab != nil {
			n.works(d, p)
		}
	}
	n.risers()
	at := map[string]int{}
	for _, v := range devices {
		if place, ok := n.device(d, v); ok {
			at[v.Name] = place
		}
	}
	n.lay()
	return n, at
}

// edges lays a strip under every edge of a slab that runs along walls, beside
// the brackets there, and one on the top. Round a free end at the side a cable
// passes from one to the other; the front is left alone.
func (n *network) edges(d *model.Design, p *model.Part) {
	var leg unit.Length
	for _, a := range d.BracketsUnder(p.ID) {
		leg = max(leg, a.Bracket().Deep())
	}
	es := p.Slab.Edges
	free := func(e model.Edge) bool { return e.Bound == model.ToAir && e.Name != p.Slab.Front().Name }
	for i, e := range es {
		if e.Bound != model.ToWall && e.Bound != model.ToMouth {
			continue
		}
		before, after := es[(i+len(es)-1)%len(es)], es[(i+1)%len(es)]
		top := n.strip(p, e, before, after, besideWall, free, true)
		under := n.strip(p, e, before, after, max(besideWall, leg+besideLeg), free, false)
		if top == nil || under == nil {
			continue
		}
		if free(before) {
			n.link(top.hold(top.a), under.hold(under.a), Piece{Kind: RoundEnd, Slab: p.ID})
		}
		if free(after) {
			n.link(top.hold(top.b), under.hold(under.b), Piece{Kind: RoundEnd, Slab: p.ID})
		}
	}
}

// strip adds a strip beside an edge, nil if it has no room; it sticks out beyond
// free ends.
func (n *network) strip(p *model.Part, e, before, after model.Edge, in unit.Length, free func(model.Edge) bool, top bool) *strip {
	line := func(e model.Edge, by unit.Length) geom.Line { return geom.Through(e.Start, e.End).Shift(by) }
	end := func(at model.Edge) (geom.Vec, bool) {
		by := -in
		if free(at) {
			by = aroundEnd
		}
		return line(e, -in).Meet(line(at, by))
	}
	a, okA := end(before)
	b, okB := end(after)
	if !okA || !okB || b.Sub(a).Dot(e.End.Sub(e.Start)) <= 0 {
		return nil
	}
	s := &strip{slab: p, edge: e, a: a, b: b, top: top}
	if top {
		s.z = p.Slab.Thickness
	}
	n.strips = append(n.strips, s)
	return s
}

// works puts in the holes, the slots and the grooves of the underside.
func (n *network) works(d *model.Design, p *model.Part) {
	for _, g := range gates(d, p) {
		n.link(space(p, g.at, 0), space(p, g.at, p.Slab.Thickness), g.piece)
		n.reach(p, g.at, 0, false, acrossMost, UnderSlab)
		n.reach(p, g.at, p.Slab.Thickness, true, acrossMost, OnTop)
	}
	for _, f := range p.Slab.Features {
		if f.Kind == model.Groove && f.Face == model.UnderFace {
			for i := 1; i < len(f.Path); i++ {
				n.link(space(p, f.Path[i-1], 0), space(p, f.Path[i], 0), Piece{Kind: InGroove, Slab: p.ID, Feature: f.Name})
			}
			for _, end := range [2]geom.Vec{f.Path[0], f.Path[len(f.Path)-1]} {
				n.mouth(p, f, end)
			}
		}
	}
}

// mouth links the end of a groove with the hole that it runs into, or else with
// the strips.
func (n *network) mouth(p *model.Part, groove model.Feature, end geom.Vec) {
	for _, f := range p.Slab.Features {
		if f.Kind == model.Through && f.At.Sub(end).Len() <= f.Dia/2+groove.Dia/2 {
			n.link(space(p, end, 0), space(p, f.At, 0), Piece{Kind: InGroove, Slab: p.ID, Feature: groove.Name})
			return
		}
	}
	n.reach(p, end, 0, false, acrossMost, UnderSlab)
}

// risers link the top of a slab with the underside of the next one above it on
// the same wall, up the wall at the ends of the upper one.
func (n *network) risers() {
	for _, up := range n.strips {
		if up.top {
			continue
		}
		for _, end := range [2]geom.Vec{up.a, up.b} {
			from := space(up.slab, end, up.z)
			var low *strip
			var foot geom.Vec
			for _, s := range n.strips {
				z := s.slab.Slab.Pose.At.Z + s.z
				if !s.top || z >= from.Z || low != nil && z < low.slab.Slab.Pose.At.Z+low.z {
					continue
				}
				if at, far := s.join(s.slab.Slab.Pose.Unplan(from.Flat())); far < 150 {
					low, foot = s, at
				}
			}
			if low != nil {
				n.link(from, low.hold(foot), Piece{Kind: OnWall, Wall: up.edge.To})
				up.hold(end)
			}
		}
	}
}

// device finds where a device stands and leads to it.
func (n *network) device(d *model.Design, v model.Device) (int, bool) {
	switch {
	case v.Socket != "":
		return n.socket(d, v.Socket)
	case v.Wall != "":
		return n.entry(d, v)
	case v.Inside != "":
		return n.table(d.Part(v.Inside))
	}
	p, top := d.Part(v.On), true
	if v.Under != "" {
		p, top = d.Part(v.Under), false
	}
	if p == nil || p.Slab == nil {
		return 0, false
	}
	at := geom.V(v.X, -v.Back)
	outline := p.Slab.TopOutline().Intersect(p.Slab.UnderOutline())
	if !outline.Contains(at) {
		return 0, false
	}
	z, kind := unit.Length(0), UnderSlab
	if top {
		z, kind = p.Slab.Thickness, OnTop
	}
	n.reach(p, at, z, top, nearMost, kind)
	var near []geom.Vec
	for _, g := range gates(d, p) {
		near = append(near, g.at)
	}
	for _, f := range p.Slab.Features {
		if f.Kind == model.Groove && f.Face == model.UnderFace && !top {
			near = append(near, f.Path[0], f.Path[len(f.Path)-1])
		}
	}
	for _, q := range near {
		if top || q.Sub(at).Len() <= nearMost {
			n.link(space(p, at, z), space(p, q, z), Piece{Kind: kind, Slab: p.ID})
		}
	}
	return n.place(space(p, at, z)), true
}

// socket leads from the middle of a socket.
func (n *network) socket(d *model.Design, name string) (int, bool) {
	for _, w := range d.Room.Walls {
		for _, o := range w.Obstacles {
			if o.Name == name {
				return n.onWall(d, w, (o.Start+o.End)/2, (o.Bottom+o.Top)/2), true
			}
		}
	}
	return 0, false
}

// entry leads from where cables come out of a wall.
func (n *network) entry(d *model.Design, v model.Device) (int, bool) {
	for _, w := range d.Room.Walls {
		if w.Name == v.Wall && v.Along <= w.Chord().D.Len() {
			return n.onWall(d, w, v.Along, v.Height), true
		}
	}
	return 0, false
}

// onWall leads from a place on a wall up or down to the strips of the slabs
// there, along the wall if the slab begins beside it.
func (n *network) onWall(d *model.Design, w *model.Wall, s, z unit.Length) int {
	chord := w.Chord()
	point := func(s, z unit.Length) geom.Vec3 {
		return chord.P.Add(chord.D.Unit().Mul(float64(s))).Up(z)
	}
	at := point(s, z)
	for _, st := range n.strips {
		under := st.slab.Slab.Pose.At.Z
		if st.top != (z > under) {
			continue
		}
		own := st.slab.Slab.Pose.Unplan(at.Flat())
		foot, far := st.join(own)
		line := geom.Through(st.a, st.b)
		if off := unit.Length(math.Abs(float64(line.Side(own)))); off > 200 || far > wallMost {
			continue
		}
		height := under + st.z + besideWall
		if !st.top {
			height = under - d.LegBelow(st.slab.ID) - belowLeg
		}
		turn := chord.Along(st.slab.Slab.Pose.Plan(foot))
		n.link(at, point(s, height), Piece{Kind: OnWall, Wall: w.Name})
		n.link(point(s, height), point(turn, height), Piece{Kind: OnWall, Wall: w.Name})
		n.link(point(turn, height), st.hold(foot), Piece{Kind: OnWall, Wall: w.Name})
	}
	return n.place(at)
}

// table hangs a loop from the slab over a roll-out table to its back.
func (n *network) table(p *model.Part) (int, bool) {
	if p == nil || p.RollOut == nil {
		return 0, false
	}
	at := tableInlet(p, 0)
	var over *model.Part
	for _, s := range n.strips {
		if z := s.slab.Slab.Pose.At.Z; z > at.Z && (over == nil || z < over.Slab.Pose.At.Z) {
			over = s.slab
		}
	}
	var near *strip // the loop is as short as can be
	far := loopMost
	for _, s := range n.strips {
		if s.top || s.slab != over {
			continue
		}
		foot, _ := s.join(s.slab.Slab.Pose.Unplan(at.Flat()))
		if d := space(s.slab, foot, s.z).Sub(at).Len(); d < far {
			near, far = s, d
		}
	}
	if near != nil {
		foot, _ := near.join(near.slab.Slab.Pose.Unplan(at.Flat()))
		n.link(near.hold(foot), at, Piece{Kind: MovingLoop, Slab: p.ID})
	}
	return n.place(at), true
}

// tableInlet is where a cable enters a table that has been rolled out so far:
// the middle of its back, near the top.
func tableInlet(p *model.Part, out unit.Length) geom.Vec3 {
	r := p.RollOut
	z := p.Bounds().Min.Z + r.Height - 60
	return r.Corner.Add(geom.V(r.Width/2, -out).Turn(r.Turn)).Up(z)
}
