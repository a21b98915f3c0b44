package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// mountingSheets show how the parts go together, step by step: what is there
// already in narrow lines, what comes in wide ones, with its way.
func mountingSheets(m *maker) []page {
	order := bring.OrderOf(m.b.Design)
	if len(order) == 0 {
		return nil
	}
	c := comic{m: m, wide: stepWidth(m.size), lifts: bring.LiftsOf(m.b.Design), there: map[*model.Part]bool{}, faces: map[*model.Part][]geom.Face{}}
	for i, step := range order.Steps() {
		c.add(i+1, step)
		for _, w := range step.Ways {
			c.there[w.Part] = true
		}
	}
	for i := range c.pages {
		c.pages[i].block.DocumentType = m.say("mounting plan")
		if len(c.pages) > 1 {
			c.pages[i].sheet.Name = fmt.Sprintf("mounting-%d", i+1)
		}
	}
	return c.pages
}

// comic sets the pictures of the steps on pages, in rows that are read from left
// to right.
type comic struct {
	m     *maker
	lifts []bring.Lift
	there map[*model.Part]bool
	faces map[*model.Part][]geom.Face
	wide  unit.Length // of a step
	pages []page
	at    geom.Vec    // upper left corner of the next step
	deep  unit.Length // of the row so far
}

// Sizes of one step on paper.
const (
	stepWide unit.Length = 78 // at least
	stepHigh unit.Length = 60 // of its picture
	stepGap  unit.Length = 3  // between picture and text
	wayArrow unit.Length = 4
)

// stepWidth fills the width of a sheet with as many steps as find room.
func stepWidth(size drawing.Size) unit.Length {
	room, gap := fieldOf(size)[0].Width(), gapOn(size)
	n := unit.Length(math.Floor(float64((room + gap) / (stepWide + gap))))
	return (room+gap)/n - gap - 0.01
}

func (c *comic) add(n int, step bring.Step) {
	picture, high := c.picture(n, step)
	heading, said := fmt.Sprintf("%d  %s", n, c.title(step)), c.text(step)
	text, tall := notes(geom.V(0, -high-stepGap), heading, said, c.wide)
	var at geom.Vec
	if free, gap := fieldOf(c.m.size)[0], gapOn(c.m.size); high+stepGap+tall > free.Height() && free.Width() > 1.8*c.wide {
		text, tall = notes(geom.V(c.wide+gap, 0), heading, said, free.Width()-c.wide-gap)
		at = c.wholeRow(max(high, tall))
	} else {
		at = c.room(high + stepGap + tall)
	}
	items := drawing.Move(append(picture, text...), at)
	c.pages[len(c.pages)-1].sheet.Add(drawing.Group{ID: fmt.Sprintf("step-%d", n), Title: c.m.sayf("step %d", n), Items: items})
}

// wholeRow gives the place of a step that has a page's width, its text beside its
// picture, at the top of a new page.
func (c *comic) wholeRow(tall unit.Length) geom.Vec {
	free := fieldOf(c.m.size)[0]
	c.turn()
	c.at, c.deep = geom.V(free.Max.X, free.Max.Y), tall
	return geom.V(free.Min.X, free.Max.Y)
}

// turn starts the next page.
func (c *comic) turn() {
	c.pages = append(c.pages, c.m.new("mounting", c.m.say("Mounting, step by step")))
	c.pages[len(c.pages)-1].sheet.Scale = "-"
}

// room gives the place of the next step: beside the last, in the next row, or on
// a new page.
func (c *comic) room(tall unit.Length) geom.Vec {
	gap := gapOn(c.m.size)
	free := fieldOf(c.m.size)
	fits := func(at geom.Vec) bool {
		box := drawing.Box(at.X, at.Y-tall, c.wide, tall)
		return slices.ContainsFunc(free, func(r drawing.Rect) bool { return r.Holds(box) })
	}
	at := c.at
	if c.pages == nil || !fits(at) {
		at = geom.V(free[0].Min.X, c.at.Y-c.deep-gap)
		c.deep = 0
	}
	if c.pages == nil || !fits(at) {
		c.turn()
		at = geom.V(free[0].Min.X, free[0].Max.Y)
	}
	c.at, c.deep = at.Add(geom.V(c.wide+gap, 0)), max(c.deep, tall)
	return at
}

// picture draws a step with the upper left corner of its field at the origin, and
// tells how high it is.
func (c *comic) picture(n int, step bring.Step) ([]drawing.Item, unit.Length) {
	m := c.m
	look := m.coverLook()
	parts := m.parts(func(p *model.Part) bool { return c.there[p] || step.Has(p) })
	p := c.plainly(fmt.Sprintf("step-view-%d", n), look, parts)
	usual := p.paint.pen
	p.paint.pen = func(st view.Stroke) (drawing.Pen, bool) {
		if st.Item >= len(parts) {
			return usual(st)
		}
		if step.Has(parts[st.Item]) {
			return m.lines.Outline(), true
		}
		return m.lines.Fine(), true
	}
	bounds := p.view.Bounds
	for _, w := range step.Ways {
		for _, loop := range ghosts(w) {
			for _, v := range loop {
				q := look.Project(v)
				bounds = bounds.Union(drawing.Rect{Min: q, Max: q})
			}
		}
	}
	s := drawing.Scale{Paper: 1, Real: int(math.Ceil(float64(max(bounds.Width()/c.wide, bounds.Height()/stepHigh))))}
	pl := m.exposedView(p, s)
	for _, w := range step.Ways {
		pl.Drawn = append(pl.Drawn, m.wayItems(pl, look, w))
	}
	pl.Drawn = append(pl.Drawn, m.stepRings(n, pl, look, step, parts, p.view, c.wide)...)
	high := s.Of(bounds.Height())
	to := geom.V((c.wide-s.Of(bounds.Width()))/2-s.Of(bounds.Min.X), -s.Of(bounds.Max.Y))
	return drawing.Move(pl.Drawn, to), high
}

// ghosts are the upper outlines of a slab in the poses of its way that are shown.
func ghosts(w bring.Way) [][]geom.Vec3 {
	s := w.Part.Slab
	if s == nil || w.Verdict != motion.Found {
		return nil
	}
	var out [][]geom.Vec3
	for _, pose := range shown(w.Poses) {
		var loop []geom.Vec3
		for _, v := range s.TopOutline().Loops()[0] {
			loop = append(loop, w.Moved(pose, s.Pose.Space(v.Up(s.Thickness))))
		}
		out = append(out, loop)
	}
	return out
}

// shown are the poses of a way that tell it: the first, the one that is tilted
// most, and the last but one.
func shown(poses []motion.Pose) []motion.Pose {
	n := len(poses) - 1
	if n < 1 {
		return nil
	}
	most := 0
	for i, p := range poses[:n] {
		if leaning(p) > leaning(poses[most]) {
			most = i
		}
	}
	out := poses[:1:1]
	for _, i := range []int{most, n - 1} {
		if p := poses[i]; p != out[len(out)-1] {
			out = append(out, p)
		}
	}
	return out
}

func leaning(p motion.Pose) float64 {
	return math.Abs(float64(p.Roll)) + math.Abs(float64(p.Tilt)) + math.Abs(float64(p.Turn))
}

// wayItems draws a slab where it starts and where it is turned, and the way of
// its middle with an arrow to each pose.
func (m *maker) wayItems(pl dim.Plate, look view.Look, w bring.Way) drawing.Item {
	g := drawing.Group{ID: "way-" + stem(w.Part.ID), Title: m.sayf("way of %s", w.Part.ID)}
	if w.Part.Slab == nil || w.Verdict != motion.Found {
		return g
	}
	for _, loop := range ghosts(w) {
		var pts []geom.Vec
		for _, v := range loop {
			pts = append(pts, paperAt(pl, look.Project(v)))
		}
		g.Items = append(g.Items, drawing.Outline(pts, m.lines.Adjacent()))
	}
	var way []geom.Vec
	for _, pose := range append(shown(w.Poses), w.Poses[len(w.Poses)-1]) {
		at := paperAt(pl, look.Project(w.Middle(pose)))
		if n := len(way); n > 1 && at.Sub(way[n-1]).Len() < wayArrow {
			way[n-1] = at // too short for an arrow of its own
			continue
		}
		way = append(way, at)
	}
	for i := 1; i < len(way); i++ {
		g.Items = append(g.Items, drawing.Line(way[i-1], way[i], m.lines.Fine()),
			drawing.Mark{Kind: drawing.Arrow, At: way[i], Dir: way[i].Sub(way[i-1]).Unit(), Size: wayArrow})
	}
	return g
}

// title says what comes in a step.
func (c *comic) title(step bring.Step) string {
	m := c.m
	var names []string
	for _, w := range step.Ways {
		names = append(names, m.pass(w.Part.ID))
	}
	if len(names) > 6 {
		names = slices.Concat(names[:2], []string{"..."}, names[len(names)-1:])
	}
	return strings.Join(names, ", ") + ": " + m.sayf("%s kg", m.tenth(step.Mass()))
}

// text says what is done in a step.
func (c *comic) text(step bring.Step) []string {
	m := c.m
	var out []string
	w, isSlab := step.Slab()
	if !isSlab {
		return append(out, c.plain(step)...)
	}
	if w.Verdict != motion.Found {
		out = append(out, m.sayf("No way was found for it (%s): see report.md before anything is cut.", m.pass(string(w.Verdict))))
	}
	for _, l := range c.lifts {
		if l.Part == w.Part {
			out = append(out, c.hands(l))
		}
	}
	if len(w.Poses) > 1 {
		out = append(out, c.moves(w)...)
	}
	if list := w.Props(m.b.Design); list != nil {
		out = append(out, m.sayf("Props before it comes down: %s and %s high, at %s and %s from the left end of its back edge.", m.about(list[0].High), m.about(list[1].High), m.about(list[0].At.X), m.about(list[1].At.X)))
	}
	if n := m.seatScrews(w.Part); n > 0 {
		out = append(out, m.sayf("Then from below: %d screws through the brackets.", n))
	}
	return out
}

func (c *comic) hands(l bring.Lift) string {
	m := c.m
	if !l.Enough {
		return m.say("Too heavy for four by the rule: a lift table, or one end at a time on props.")
	}
	if l.People == 1 {
		return m.say("One person; hands: carrying plan.")
	}
	return m.sayf("%d people, about %s each; hands: carrying plan.", l.People, m.kg(l.Share))
}

// moves says the way of a slab in few words, that of one that is turned move by
// move.
func (c *comic) moves(w bring.Way) []string {
	m := c.m
	var out []string
	switch last := w.Last(); {
	case !w.Straight():
		for i, move := range w.Moves() {
			out = append(out, fmt.Sprintf("%d. %s", i+1, m.passMove(move)))
		}
	case last == 0:
		out = append(out, m.say("Slide it in at its height."))
	default:
		out = append(out, m.sayf("Push it in %s above its place, then lower it.", m.about(last)))
	}
	if gap := w.Least.Gap; !math.IsInf(float64(gap), 0) {
		out = append(out, m.sayf("Closest: %s to %s.", m.length(unit.Length(math.Floor(10*max(0, float64(gap)))/10)), m.pass(w.Least.Near)))
	}
	return out
}

// passMove says a move piece by piece.
func (m *maker) passMove(move string) string {
	return capital(strings.Join(m.passEach(strings.Split(move, ", ")), ", "))
}

// plain says how steel and other parts are set.
func (c *comic) plain(step bring.Step) []string {
	m := c.m
	anchors, rods := 0, 0
	for _, w := range step.Ways {
		switch {
		case w.Part.Bracket() != nil:
			anchors += len(w.Part.Bracket().On().In(model.WallLeg))
		case w.Part.Rod != nil:
			rods++
		}
	}
	var out []string
	if anchors > 0 {
		out = append(out, m.sayf("%d anchors through the brackets, by the approval of the anchor; heights: drilling sheets.", anchors))
	}
	if rods > 0 {
		out = append(out, m.sayf("%d rods into their holes, level and square: drilling sheets.", rods))
	}
	if out == nil {
		out = append(out, m.say("To its place, straight."))
	}
	return out
}

// seatScrews counts the holes below a slab through which screws go into it.
func (m *maker) seatScrews(slab *model.Part) int {
	n := 0
	for _, p := range m.b.Design.BracketsUnder(slab.ID) {
		n += len(p.Bracket().On().In(model.SeatLeg))
	}
	return n
}
