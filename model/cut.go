package model

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// CutPart is a part that is already cut, with the sizes measured on it. A slab
// has Sizes, an angle or a cleat a Length and, once drilled, its holes from the left end as
// seen from the room.
type CutPart struct {
	Part       string
	On         string // day on which it was cut, ISO 8601
	Sizes      []CutSize
	Length     unit.Length
	WallHoles  []unit.Length // holes of the wall leg; nil: not drilled yet
	ScrewHoles []unit.Length // holes of the seat leg; nil: not drilled yet
	Pos        Pos
}

// CutSize is a straight length on the top face of a cut slab: an edge from
// corner to corner, or the line between two corners by their numbers on the
// sheet.
type CutSize struct {
	Edge     string // "" for a line between corners
	From, To string
	Length   unit.Length
	Pos      Pos
}

// called names the size as the job file does.
func (s CutSize) called() string {
	if s.Edge != "" {
		return s.Edge
	}
	return s.From + "-" + s.To
}

// AsCut is what is known of a part that is already cut: the day, the sizes that
// were told, and the part as the design would cut it for the room as it is now.
type AsCut struct {
	CutPart
	WantedSlab *SlabPart
	WantedBar  *Mounted
	Checked    bool // a size more than the shape needs agrees with the others
}

// onSlab is how well a length is read on a cut slab, as a standard deviation: two
// readings of a tape at a sawn corner. Common practice, no source.
const onSlab unit.Length = 0.5

// cutOf gives what the job tells of a part that is already cut.
func (d *Design) cutOf(id string) (CutPart, bool) {
	if d.Room != nil {
		for _, c := range d.Room.cut {
			if c.Part == id {
				return c, true
			}
		}
	}
	return CutPart{}, false
}

// withCut is the room with what is already cut for it.
func (r *Room) withCut(cut []CutPart) *Room {
	if r == nil || len(cut) == 0 {
		return r
	}
	out := *r
	out.cut = cut
	return &out
}

// unmatchedCut reports parts that are said to be cut and that the design has not.
func (d *Design) unmatchedCut(cut []CutPart) {
	if len(cut) == 0 {
		return
	}
	var names []string
	for _, p := range d.Parts {
		names = append(names, p.ID)
	}
	for i, c := range cut {
		first := slices.IndexFunc(cut, func(o CutPart) bool { return o.Part == c.Part })
		_, left := d.gone[c.Part]
		switch {
		case first < i:
			d.report("", fault{what: fmt.Sprintf("the part %q is said to be cut a second time", c.Part), line: c.Pos.String()})
		case d.Part(c.Part) == nil && !left:
			d.report("", fault{what: fmt.Sprintf("the section cut names a part %q, which the design has not%s", c.Part, didYouMean(c.Part, names)), line: c.Pos.String()})
		}
	}
}

// wrong is a mistake in the entry of a cut part.
func (c CutPart) wrong(format string, args ...any) faults {
	return faults{{what: fmt.Sprintf("%s, already cut: ", c.Part) + fmt.Sprintf(format, args...), line: c.Pos.String()}}
}

// asCut gives a slab that is already cut its shape; a bracket has its length by
// now, since its holes follow from it.
func (d *Design) asCut(part *Part, p Piece, c CutPart) faults {
	switch p := p.(type) {
	case SlabPiece:
		return freeze(part, p, c)
	case AnglePiece, CleatPiece:
		return nil
	}
	return c.wrong("only slabs, shelves, angles and cleats can be told as cut; this is a %s", part.Kind)
}

// freeze gives a slab the shape that it was cut to. It lies where a fitter
// would push it: along its back line, or closed to the slab that its front
// meets, with what is over shared between both ends.
func freeze(part *Part, p SlabPiece, c CutPart) faults {
	if c.Length > 0 || c.WallHoles != nil || c.ScrewHoles != nil {
		return c.wrong("a slab has no length or holes of a bar: tell its sizes, edge by edge")
	}
	corners, checked, bad := c.outline(part.Slab)
	if bad != nil {
		return bad
	}
	drawn := *part.Slab
	now := drawn
	now.Features, now.Edges = nil, slices.Clone(drawn.Edges)
	now.lay(corners)
	now.Pose.At = drawn.Pose.Plan(now.pushed(&drawn)).Up(drawn.Pose.At.Z)
	bad = p.placeWork(&now)
	part.Slab, part.Cut = &now, &AsCut{CutPart: c, WantedSlab: &drawn, Checked: checked}
	return bad
}

// outline finds the corners of the top face from the told sizes, in the slab's
// own axes, as a room is found from its readings.
func (c CutPart) outline(s *SlabPart) (corners []geom.Vec, checked bool, bad faults) {
	n := len(s.Edges)
	if len(c.Sizes) == 0 {
		return nil, false, c.wrong("its sizes are missing: %s", sizesWanted(s))
	}
	net := survey.Network{Closed: true, Turns: map[survey.Point]survey.Turn{}, Start: map[survey.Point]geom.Vec{}}
	drawn := s.TopCorners()
	for i, name := range s.Corners {
		at := survey.Point(name)
		net.Chain, net.Start[at] = append(net.Chain, at), drawn[i]
		net.Turns[at] = survey.Inside
		if drawn[i].Sub(drawn[(i+n-1)%n]).Cross(drawn[(i+1)%n].Sub(drawn[i])) > 0 {
			net.Turns[at] = survey.Outside
		}
		if s.Edges[i].Reference {
			net.Base = [2]survey.Point{at, survey.Point(s.Corners[(i+1)%n])}
		}
	}
	told := map[[2]survey.Point]bool{}
	for _, size := range c.Sizes {
		a, b, bad := size.ends(c, s)
		if bad != nil {
			return nil, false, bad
		}
		if told[[2]survey.Point{a, b}] || told[[2]survey.Point{b, a}] {
			return nil, false, c.wrong("the size %q is told twice", size.called())
		}
		told[[2]survey.Point{a, b}] = true
		net.Readings = append(net.Readings, survey.Reading{ID: size.called(), Kind: survey.Distance, Points: []survey.Point{a, b}, Length: size.Length, SD: onSlab})
	}
	var missing []string
	for i, e := range s.Edges {
		a, b := survey.Point(s.Corners[i]), survey.Point(s.Corners[(i+1)%n])
		if !told[[2]survey.Point{a, b}] && !told[[2]survey.Point{b, a}] {
			missing = append(missing, e.Name)
		}
	}
	if missing != nil || len(told) < 2*n-3 {
		return nil, false, c.wrong("its shape is not known from %d sizes: %s", len(told), sizesWanted(s))
	}
	res, err := survey.Adjust(net)
	if err != nil {
		return nil, false, c.wrong("its sizes make no slab: %v", err)
	}
	for _, o := range res.Readings {
		if o.Checked && math.Abs(o.W) > suspect {
			return nil, false, c.wrong("its sizes contradict each other: %q differs by %.1f mm from what the others ask for; measure it again", o.Reading.ID, math.Abs(float64(o.Residual)/o.Redundancy))
		}
	}
	for _, name := range s.Corners {
		at, _ := res.At(survey.Point(name))
		corners = append(corners, at)
	}
	return corners, res.DOF > 0, nil
}

// sizesWanted says which sizes make the shape of a slab.
func sizesWanted(s *SlabPart) string {
	var edges []string
	for _, e := range s.Edges {
		edges = append(edges, e.Name)
	}
	lines := "no line between corners"
	switch n := len(s.Edges) - 3; {
	case n == 1:
		lines = "one line between opposite corners, such as 1-3; a second one, 2-4, checks it"
	case n > 1:
		lines = fmt.Sprintf("%d lines between corners that share no edge, and one more as a check", n)
	}
	return fmt.Sprintf("tell the edges %s and %s", strings.Join(edges, ", "), lines)
}

// ends gives the corners between which a size was measured.
func (s CutSize) ends(c CutPart, slab *SlabPart) (a, b survey.Point, bad faults) {
	n := len(slab.Edges)
	if s.Edge != "" {
		var names []string
		for i, e := range slab.Edges {
			if e.Name == s.Edge {
				return survey.Point(slab.Corners[i]), survey.Point(slab.Corners[(i+1)%n]), nil
			}
			names = append(names, e.Name)
		}
		return "", "", c.wrong("there is no edge %q%s; its edges are %s", s.Edge, didYouMean(s.Edge, names), strings.Join(names, ", "))
	}
	for _, name := range []string{s.From, s.To} {
		if !slices.Contains(slab.Corners, name) {
			return "", "", c.wrong("there is no corner %q: its corners are numbered %s on its sheet", name, strings.Join(slab.Corners, ", "))
		}
	}
	if s.From == s.To {
		return "", "", c.wrong("a line from corner %s to itself has no length", s.From)
	}
	return survey.Point(s.From), survey.Point(s.To), nil
}

// TopCorners are the corners of the top face in the slab's own axes, in the
// order of Corners.
func (s *SlabPart) TopCorners() []geom.Vec {
	var out []geom.Vec
	for i := range s.Edges {
		top, _ := s.Course(i)
		out = append(out, top[0])
	}
	return out
}

// lay puts the edges between corners of the top face. The straight line behind
// a natural edge is found so that the edge itself ends in those corners: what
// the wood has beyond the line stays as it is.
func (s *SlabPart) lay(corners []geom.Vec) {
	n := len(corners)
	for i := range s.Edges {
		s.Edges[i].Start, s.Edges[i].End = corners[i], corners[(i+1)%n]
	}
	for i := range s.Edges {
		if len(s.Edges[i].Natural) == 0 {
			continue
		}
		e, before, after := &s.Edges[i], &s.Edges[(i+n-1)%n], &s.Edges[(i+1)%n]
		for range 20 {
			top, _ := s.naturalCourse(i)
			e.Start = e.Start.Add(corners[i].Sub(top[0]))
			e.End = e.End.Add(corners[(i+1)%n].Sub(top[len(top)-1]))
			before.End, after.Start = e.Start, e.End
		}
	}
}

// pushed is where the left end of the reference edge comes to lie, in the axes
// of the slab as drawn.
func (s *SlabPart) pushed(drawn *SlabPart) geom.Vec {
	var by geom.Vec
	n := len(s.Edges)
	if f := n - 1; s.Edges[f].Bound == ToPart {
		by.Y = -s.play(drawn, f, by)
	}
	left, right := s.play(drawn, 0, by), s.play(drawn, n-2, by)
	switch holdsL, holdsR := drawn.Edges[0].holds(), drawn.Edges[n-2].holds(); {
	case holdsL && holdsR:
		by.X = (right - left) / 2
	case holdsL:
		by.X = -left
	case holdsR:
		by.X = right
	}
	return by
}

// holds tells whether something stands beside the edge.
func (e Edge) holds() bool { return e.Bound == ToWall || e.Bound == ToPart }

// play is how far edge i, moved, stays inside the line that it was drawn on, at
// the nearer of its two ends; below 0 it stands over.
func (s *SlabPart) play(drawn *SlabPart, i int, by geom.Vec) unit.Length {
	l := geom.Through(drawn.Edges[i].Start, drawn.Edges[i].End)
	return -max(l.Side(s.Edges[i].Start.Add(by)), l.Side(s.Edges[i].End.Add(by)))
}

// drilled gives the places of the holes of a leg: those that are in the steel
// already, else those that are wanted.
func (p *Part) drilled(leg Leg, wanted func() []unit.Length) []unit.Length {
	if p.Cut != nil && leg == WallLeg && p.Cut.WallHoles != nil {
		return p.Cut.WallHoles
	}
	if p.Cut != nil && leg == SeatLeg && p.Cut.ScrewHoles != nil {
		return p.Cut.ScrewHoles
	}
	return wanted()
}

// cutTo gives a bracket the length that it was cut to. It keeps its distance from
// the one corner that it runs into; between two corners, or none, its middle is
// where it would have been.
func (m *Mounted) cutTo(c CutPart, r run) faults {
	switch {
	case len(c.Sizes) > 0:
		return c.wrong("an angle or a cleat has no edges of a slab: tell its length")
	case c.Length == 0:
		return c.wrong("its length is missing")
	}
	for _, x := range slices.Concat(c.WallHoles, c.ScrewHoles) {
		if x >= c.Length {
			return c.wrong("a hole %s from its left end is beyond its length of %s", inWords(x), inWords(c.Length))
		}
	}
	short := m.Length - c.Length
	left := short / 2
	switch {
	case r.leftCorner && !r.rightCorner:
		left = 0
	case r.rightCorner && !r.leftCorner:
		left = short
	}
	m.Start, m.Length = m.Start+left, c.Length
	m.Left.SetBack, m.Right.SetBack = m.Left.SetBack+left, m.Right.SetBack+short-left
	return nil
}

// cutTo is the angle as it was cut, and as the design would cut it.
func (a *AnglePart) cutTo(c CutPart, r run) (*AsCut, faults) {
	wanted := *a
	if bad := a.Mounted.cutTo(c, r); bad != nil {
		return nil, bad
	}
	return &AsCut{CutPart: c, WantedBar: &wanted.Mounted}, nil
}

// cutTo is the cleat as it was cut, and as the design would cut it.
func (c *CleatPart) cutTo(told CutPart, r run) (*AsCut, faults) {
	wanted := *c
	if bad := c.Mounted.cutTo(told, r); bad != nil {
		return nil, bad
	}
	return &AsCut{CutPart: told, WantedBar: &wanted.Mounted}, nil
}
