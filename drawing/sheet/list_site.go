package sheet

import (
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// siteList is what to measure again on site, with an empty box for each figure.
func (m *maker) siteList() table {
	s := &siteChecks{m: m}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil }) {
		s.widths(p)
	}
	s.walls()
	s.corners()
	s.heights()
	s.obstacles()
	s.delivered()
	s.wayIn()
	s.add(m.say("measured by, on"), "", "")
	return s.t
}

// siteChecks gathers the rows.
type siteChecks struct {
	m *maker
	t table
}

func (s *siteChecks) add(what, says, stop string) {
	if s.t.heads == nil {
		s.t.heads = append(s.m.heads("measure", "sheet says", "stop if"), s.m.say("measured")+"    ")
		s.t.right = []bool{false, true, true, false}
	}
	s.t.rows = append(s.t.rows, []string{what, says, stop, ""})
}

// off says how far a figure may be off.
func (s *siteChecks) off(l unit.Length) string { return s.m.sayf("off by %s", s.m.length(l)) }

// widths are the clear widths between the walls at both ends of a slab, at its
// back, middle and front: the smaller of those at its underside and its top.
func (s *siteChecks) widths(p *model.Part) {
	sp := p.Slab
	var left, right *model.Edge
	for i := range sp.Edges {
		switch e := &sp.Edges[i]; e.Name {
		case "left":
			left = e
		case "right":
			right = e
		}
	}
	if left == nil || right == nil || left.Bound != model.ToWall || right.Bound != model.ToWall {
		return
	}
	low, high := sp.TopOutline().Bounds()
	front := max(sp.Front().Start.Y, sp.Front().End.Y) // the straight line of a natural edge
	inset := min(30, (high.Y-front)/4)
	type place struct {
		said string
		y    unit.Length
	}
	places := []place{{s.m.say("back"), high.Y - inset}, {s.m.say("middle"), (front + high.Y) / 2}, {s.m.say("front"), front + inset}}
	if high.Y-front < 400 {
		places = []place{places[0], places[2]}
	}
	x := (low.X + high.X) / 2
	for _, at := range places {
		own, ok := span(sp.TopOutline(), geom.Pose{}, at.y, x)
		least := unit.Length(math.Inf(1))
		for _, z := range []unit.Length{sp.Top - sp.Thickness, sp.Top} {
			clear, found := span(s.m.b.Room.Plan(z), sp.Pose, at.y, x)
			ok = ok && found
			least = min(least, clear)
		}
		if ok {
			s.add(s.m.sayf("%s: wall to wall at its %s, +%s and +%s", s.m.pass(p.ID), at.said, s.m.length(sp.Top-sp.Thickness), s.m.length(sp.Top)),
				s.m.length(least), s.m.sayf("under %s", s.m.length(own+min(1, max(0, (least-own)/2)))))
		}
	}
}

// span is the length of a region along a line of a pose's own axes, on the
// stretch that holds x.
func span(r geom.Region, pose geom.Pose, y, x unit.Length) (unit.Length, bool) {
	const far unit.Length = 20000
	a, b := pose.Plan(geom.V(x-far, y)), pose.Plan(geom.V(x+far, y))
	for _, t := range r.Inside(a, b) {
		if t[0] <= 0.5 && 0.5 <= t[1] {
			return 2 * far * unit.Length(t[1]-t[0]), true
		}
	}
	return 0, false
}

// walls are the lengths of walls between two corners that carry a bracket, and
// how far they are from straight.
func (s *siteChecks) walls() {
	for _, w := range s.m.b.Room.Walls {
		var longest *model.Mounted
		for _, p := range s.m.parts(func(p *model.Part) bool { return p.Bracket() != nil && p.Bracket().On().Wall == w }) {
			if b := p.Bracket().On(); longest == nil || b.Length > longest.Length {
				longest = b
			}
		}
		if longest == nil {
			continue
		}
		if w.Previous() != nil && w.Next() != nil {
			s.add(s.m.sayf("wall %s: corner %s to %s at +%s", s.m.pass(w.Name), w.From.Name, w.To.Name, s.m.length(longest.Seat)),
				s.m.length(w.Length()), s.m.sayf("under %s", s.m.length(max(longest.Length+2, w.Length()-3))))
		}
		if w.Bow != 0 {
			says := s.m.sayf("hollow %s", s.m.length(-w.Bow))
			if w.Bow > 0 {
				says = s.m.sayf("belly %s", s.m.length(w.Bow))
			}
			s.add(s.m.sayf("wall %s: straightedge, at its middle", s.m.pass(w.Name)), says, s.off(2))
		}
	}
}

// corners are checked by the distance of two marks at the same distance from
// the corner.
func (s *siteChecks) corners() {
	for _, w := range s.m.b.Room.Walls {
		n := w.Next()
		if n == nil || !s.carries(w) || !s.carries(n) {
			continue
		}
		arm := math.Min(600, math.Floor(float64(min(w.Length(), n.Length()))/100)*100)
		if arm < 100 || w.To.Angle == 0 {
			continue
		}
		chord := unit.Length(2 * arm * math.Sin(float64(w.To.Angle)/2))
		s.add(s.m.sayf("corner %s: mark to mark at %s", w.To.Name, s.m.length(unit.Length(arm))), s.m.length(chord), s.off(3))
	}
}

// carries tells whether a bracket or a rod is on a wall.
func (s *siteChecks) carries(w *model.Wall) bool { return len(s.m.wallHoles(w)) > 0 }

// heights are those of the line over the floor, and that the walls to be
// drilled have been searched.
func (s *siteChecks) heights() {
	for _, f := range s.m.b.Room.Floor {
		s.add(s.m.sayf("corner %s: line %s above the floor", f.Corner, s.m.heightLineName()), s.m.length(heightLine-f.Height), s.off(2))
	}
	var walls []string
	for _, w := range s.m.b.Room.Walls {
		if s.carries(w) {
			walls = append(walls, s.m.pass(w.Name))
		}
	}
	if len(walls) > 0 {
		s.add(s.m.sayf("searched for services: %s", strings.Join(walls, ", ")), s.m.say("clear // of services"), s.m.say("found // of services"))
	}
}

// obstacles are where the sheets take them to be.
func (s *siteChecks) obstacles() {
	m := s.m.whole()
	for _, w := range s.m.b.Room.Walls {
		if !s.carries(w) {
			continue
		}
		for _, o := range w.Obstacles {
			s.add(s.m.sayf("%s: along wall %s from %s", o.Name, s.m.pass(w.Name), w.From.Name), m.sayf("%s to %s", m.length(o.Start), m.length(o.End)), s.off(5))
			s.add(s.m.sayf("%s: above the floor", o.Name), m.sayf("%s to %s", m.length(o.Bottom), m.length(o.Top)), s.off(5))
		}
	}
}

// delivered is what the wood and the steel must be like before they are cut.
func (s *siteChecks) delivered() {
	seen := map[string]bool{}
	once := func(what, says, stop string) {
		if !seen[what+says] {
			seen[what+says] = true
			s.add(what, says, stop)
		}
	}
	for _, p := range s.m.parts(func(*model.Part) bool { return true }) {
		if p.Slab != nil {
			once(s.m.sayf("%s delivered: thickness", s.m.pass(p.Material)), s.m.length(p.Slab.Thickness), s.m.sayf("under %s", s.m.length(p.Slab.Thickness)))
			if u := s.m.b.Job.House.Climate.Moisture; u > 0 {
				once(s.m.sayf("%s delivered: moisture", s.m.pass(p.Material)), s.m.content(u)+" %", s.m.say("off by 2 %"))
			}
		}
	}
	for _, p := range s.m.parts(func(p *model.Part) bool { return p.Angle != nil }) {
		once(s.m.say("steel delivered: leg, thickness"), p.Angle.Section.Name, s.off(2))
	}
	for _, p := range s.m.parts(func(p *model.Part) bool { return p.Cleat != nil }) {
		once(s.m.say("battens delivered: width, height"), s.m.profile(p.Cleat), s.off(1))
	}
}

// wayIn is what the parts must pass.
func (s *siteChecks) wayIn() {
	for _, w := range s.m.b.Job.House.Way {
		says := ""
		for _, l := range []unit.Length{w.Width, w.Height} {
			if l > 0 && says != "" {
				says += " x "
			}
			if l > 0 {
				says += s.m.length(l)
			}
		}
		if says != "" {
			s.add(s.m.sayf("way in: %s, clear", w.Name), says, s.m.say("less"))
		}
	}
}
