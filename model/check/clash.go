package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/calc/corner"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// leastLegGap leaves a yard its saw tolerance of +2 mm.
const leastLegGap unit.Length = 2

var cornerClash = Rule{
	ID: "angles-in-corner", Title: "Two brackets do not meet in the corner", Fit: true,
	Basis: "plane geometry of two legs in a corner of any angle; 2 mm for the yard's saw: " + practice,
	Why:   "Two angles each as long as their wall, or shorter by a round amount, still meet where their legs cross: in a square corner a leg of 60 mm needs 60 mm, not 50.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		var clashes []meeting
		for _, m := range meetings(s.Design) {
			f := m.judge()
			if f.Status == find.Fail {
				clashes = append(clashes, m)
			}
			out = append(out, f)
		}
		i := 0
		for k := range out {
			if out[k].Status == find.Fail {
				out[k].Fix = s.legFixes(clashes[i], clashes)
				i++
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "No two brackets reach the same corner at the same height."})
		}
		return out
	},
}

// meeting is the right end of one bracket and the left end of the next, as seen
// from the room, in the corner of their walls.
type meeting struct{ left, right *model.Part }

// meetings gives every two brackets whose ends are near the corner that their
// walls share, at heights that overlap.
func meetings(d *model.Design) []meeting {
	var out []meeting
	for _, a := range d.Parts {
		for _, b := range d.Parts {
			p, q := a.Bracket(), b.Bracket()
			if p == nil || q == nil || p.On().Wall == q.On().Wall || p.On().Wall.Next() != q.On().Wall {
				continue
			}
			_, okA := model.SetBackFrom(p, p.On().Wall, true)
			_, okB := model.SetBackFrom(q, q.On().Wall, false)
			if okA && okB && len(legs(p, q)) > 0 {
				out = append(out, meeting{a, b})
			}
		}
	}
	return out
}

// legs gives the pairs of legs of two brackets that overlap in height, as what
// each takes of the plan beside its wall: the width of the seat leg, or the
// thickness of the wall leg; of a cleat its width.
func legs(a, b model.Bracket) [][2]unit.Length {
	type strip struct{ width, low, high unit.Length }
	strips := func(b model.Bracket) []strip {
		p, ok := b.(*model.AnglePart)
		if !ok {
			low, high := b.Levels()
			return []strip{{b.Deep(), low, high}}
		}
		s := p.Section
		wall := strip{s.Thickness, p.Seat - s.Leg, p.Seat}
		if p.LegUp {
			wall.low, wall.high = p.Seat-s.Thickness, p.Seat-s.Thickness+s.Leg
		}
		return []strip{{s.Leg, p.Seat - s.Thickness, p.Seat}, wall}
	}
	var out [][2]unit.Length
	for _, p := range strips(a) {
		for _, q := range strips(b) {
			if min(p.high, q.high)-max(p.low, q.low) > contact {
				out = append(out, [2]unit.Length{p.width, q.width})
			}
		}
	}
	return out
}

// setBacks are the distances of both ends from where the two heel lines meet.
// A wall that bulges or leans moves the heel line, and with it that place.
func (m meeting) setBacks() (left, right unit.Length, ok bool) {
	p, q := m.left.Bracket().Pose(), m.right.Bracket().Pose()
	along := func(at geom.Pose) geom.Line { return geom.Line{P: at.At.Flat(), D: geom.V(1, 0).Turn(at.Turn)} }
	a, b := along(p), along(q)
	c, ok := a.Meet(b)
	return a.Along(c) - m.left.Bracket().On().Length, -b.Along(c), ok
}

// thetas are the corner's angle and its bounds two standard deviations off.
func (m meeting) thetas() []unit.Angle {
	c := m.left.Bracket().On().Wall.To
	return []unit.Angle{c.Angle - 2*c.AngleSD, c.Angle, c.Angle + 2*c.AngleSD}
}

// worst is the least clearance of any two legs within the uncertainty of the
// corner, and the overlap if there is one.
func (m meeting) worst() (gap unit.Length, clash corner.Clash, err error) {
	if m.mitred() {
		return m.betweenCuts(), clash, nil
	}
	sa, sb, ok := m.setBacks()
	if !ok {
		return 0, clash, fmt.Errorf("its walls run parallel")
	}
	gap = 1e9
	for _, w := range legs(m.left.Bracket(), m.right.Bracket()) {
		for _, t := range m.thetas() {
			c, err := corner.Check(t, corner.Leg{SetBack: sa, Width: w[0]}, corner.Leg{SetBack: sb, Width: w[1]})
			if err != nil {
				return 0, c, err
			}
			g := c.Clearance
			if !c.Free {
				g = -min(c.Box[0], c.Box[1])
			}
			if g < gap {
				gap, clash = g, c
			}
		}
	}
	return gap, clash, nil
}

// mitred tells whether both ends are cut along the middle of the corner.
func (m meeting) mitred() bool {
	a, b := m.left.Angle, m.right.Angle
	return a != nil && b != nil && a.Right.Mitre < 0 && b.Left.Mitre < 0
}

// betweenCuts is the distance of both bars as seen from above, less what the corner's
// angle may be off over the wider leg, by two standard deviations.
func (m meeting) betweenCuts() unit.Length {
	gap := m.left.Footprint().Gap(m.right.Footprint()).Distance
	return gap - 2*max(m.left.Angle.Section.Leg, m.right.Angle.Section.Leg)*unit.Length(m.left.Angle.Wall.To.AngleSD)
}

func (m meeting) judge() find.Finding {
	p, q := m.left.Bracket(), m.right.Bracket()
	a, b := p.On(), q.On()
	c := a.Wall.To
	f := find.Finding{Parts: []string{m.left.ID, m.right.ID}, Walls: []string{a.Wall.Name, b.Wall.Name}, At: at(c.At.Up(a.Seat))}
	gap, clash, err := m.worst()
	if err != nil {
		u := unknown(fmt.Sprintf("corner %s: %v.", c.Name, err), hint("measure the angle at %s again", c.Name))
		u.Parts, u.Walls, u.At = f.Parts, f.Walls, f.At
		return u
	}
	f.Measured, f.Required = mm(gap), limit(find.AtLeast, leastLegGap)
	f.Assumed = []find.Assumption{{What: fmt.Sprintf("the corner %s has %.2f° inside the room; twice its standard deviation of %.2f° to either side counts as well", c.Name, c.Angle.Degrees(), c.AngleSD.Degrees()), Source: "survey"}}
	f = f.Judge()
	sa, _ := model.SetBackFrom(p, a.Wall, true)
	sb, _ := model.SetBackFrom(q, b.Wall, false)
	ends := fmt.Sprintf("set back %.1f and %.1f mm", float64(sa), float64(sb))
	legs := fmt.Sprintf("At corner %s %s%s and %s", c.Name, m.legsOf(), m.left.ID, m.right.ID)
	if m.mitred() {
		ends = fmt.Sprintf("mitred, %s", ends)
	}
	switch h := hundredth(gap); {
	case m.mitred() && h < 0:
		f.Why = fmt.Sprintf("%s overlap by %.1f mm between their cuts (%s).", legs, -float64(h), ends)
	case h > 0:
		f.Why = fmt.Sprintf("%s are %.1f mm apart (%s).", legs, h, ends)
	case h == 0:
		f.Why = fmt.Sprintf("%s touch (%s).", legs, ends)
	default:
		f.Why = fmt.Sprintf("%s overlap by %.0f x %.0f mm (%s).", legs, float64(clash.Box[0]), float64(clash.Box[1]), ends)
	}
	return f
}

// legsOf names what meets: the legs of angles, whole cleats.
func (m meeting) legsOf() string {
	if m.left.Angle != nil && m.right.Angle != nil {
		return "the legs of "
	}
	return ""
}

// alike is the least set-back from the corner, the same for both ends, that
// clears every two legs; butt is the least one of the left angle when the right
// one runs as far into the corner as its wall allows.
func (m meeting) alike() (both, butt, own unit.Length, ok bool) {
	sa, sb, ok := m.setBacks()
	if !ok {
		return 0, 0, 0, false
	}
	// What lies between the corner of the room and that of the heel lines.
	ca, _ := model.SetBackFrom(m.left.Bracket(), m.left.Bracket().On().Wall, true)
	cb, _ := model.SetBackFrom(m.right.Bracket(), m.right.Bracket().On().Wall, false)
	moveA, moveB := ca-sa, cb-sb
	wide := m.right.Bracket().Deep()
	for _, t := range m.thetas() {
		start, err := corner.Start(t, wide)
		if err != nil {
			return 0, 0, 0, false
		}
		own = max(own, start+leastLegGap)
	}
	for _, w := range legs(m.left.Bracket(), m.right.Bracket()) {
		for _, t := range m.thetas() {
			s, err1 := corner.Alike(t, w[0], w[1], leastLegGap)
			one, err2 := corner.Butt(t, corner.Leg{SetBack: own, Width: w[1]}, w[0], leastLegGap)
			if err1 != nil || err2 != nil {
				return 0, 0, 0, false
			}
			both, butt = max(both, s), max(butt, one)
		}
	}
	return up(both + max(moveA, moveB)), up(butt + moveA), up(own + moveB), true
}

// legFixes proposes the least set-backs that clear: both alike, which is the
// "shorter by" of an angle between two such corners, or one running through and
// the other butting against it.
func (s Site) legFixes(m meeting, clashes []meeting) []find.Fix {
	both, butt, own, ok := m.alike()
	if !ok {
		return nil
	}
	most := both // what serves every corner that fails
	for _, c := range clashes {
		if b, _, _, ok := c.alike(); ok {
			most = max(most, b)
		}
	}
	fix := hint("set both back %.0f mm from corner %s: one between two such corners is then %.0f mm shorter than its wall", float64(both), m.left.Bracket().On().Wall.To.Name, float64(2*both))
	if now, ok := s.now("shorter_by"); ok && now > 0 {
		fix = s.set(fix, "shorter_by", now, 2*most)
	}
	return []find.Fix{
		fix,
		hint("or let %s start %.0f mm from the corner and end %s %.0f mm before it", m.right.ID, float64(own), m.left.ID, float64(butt)),
	}
}
