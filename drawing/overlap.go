package drawing

import (
	"fmt"
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Clash is a text that cannot be read for what lies over it, or that lies where
// no text belongs.
type Clash struct {
	With  string // "text", "line", "hatch", "frame", "fill", "outside"
	Text  Text
	Group string // innermost group of the text
	Other string // the other text, or the group of the line or fill
}

// String tells the clash in words.
func (c Clash) String() string {
	return fmt.Sprintf("text %q in %q at %s clashes with %s %q", c.Text.String, c.Group, pointText(c.Text.At), c.With, c.Other)
}

// Overlaps finds every text of a sheet that another text, a line with its full
// width, a hatch or a fill of its own darkness touches, and every text that
// leaves the drawing space. The box of a text is that around its ink, turned
// with it; circles are taken as polygons true to 0.01 mm.
func Overlaps(s Sheet) []Clash {
	f := &clashFinder{}
	Plot(s, f)
	for i := range f.texts {
		t := &f.texts[i]
		f.lines(t)
		f.fills(t)
		for j := range f.texts[:i] {
			if o := &f.texts[j]; t.box.Meets(o.box) && quadsMeet(t.quad, o.quad) {
				f.report("text", t, o.text.String)
			}
		}
		room := s.Size.Space()
		if t.frame {
			room = s.Size.Paper()
		}
		if !room.Holds(t.box) {
			f.report("outside", t, s.Size.Name)
		}
	}
	return f.found
}

// clashFinder gathers what a sheet leaves on paper.
type clashFinder struct {
	groups   []string
	texts    []placedText
	segments []segment
	areas    []placedFill
	found    []Clash
}

type placedText struct {
	text  Text
	quad  [4]geom.Vec
	box   Rect
	group string
	frame bool // stands in the border of the frame
}

type segment struct {
	a, b  geom.Vec
	half  unit.Length
	kind  string
	group string
}

type placedFill struct {
	loops [][]geom.Vec
	box   Rect
	ink   Ink
	group string
}

func (f *clashFinder) report(with string, t *placedText, other string) {
	f.found = append(f.found, Clash{with, t.text, t.group, other})
}

func (f *clashFinder) group() string {
	if len(f.groups) == 0 {
		return ""
	}
	return f.groups[len(f.groups)-1]
}

func (f *clashFinder) Begin(id, _ string) { f.groups = append(f.groups, id) }
func (f *clashFinder) End()               { f.groups = f.groups[:len(f.groups)-1] }

func (f *clashFinder) Lines(chains [][]geom.Vec, closed bool, s Stroke) {
	kind := "line"
	switch {
	case s.Hatch:
		kind = "hatch"
	case f.group() == "sheet-frame" || f.group() == "sheet-block":
		kind = "frame"
	}
	add := func(a, b geom.Vec) {
		f.segments = append(f.segments, segment{a, b, s.Width / 2, kind, f.group()})
	}
	for _, ch := range chains {
		for i := 1; i < len(ch); i++ {
			add(ch[i-1], ch[i])
		}
		if closed {
			add(ch[len(ch)-1], ch[0])
		}
	}
}

func (f *clashFinder) Arc(c geom.Vec, r unit.Length, from, sweep unit.Angle, s Stroke) {
	const sag = 0.01
	step := 2 * math.Acos(1-math.Min(1, sag/math.Max(float64(r), sag)))
	n := max(1, int(math.Ceil(math.Abs(float64(sweep))/step)))
	pts := make([]geom.Vec, n+1)
	for i := range pts {
		pts[i] = arcPoint(c, r, from+sweep*unit.Angle(i)/unit.Angle(n))
	}
	f.Lines([][]geom.Vec{pts}, false, s)
}

func (f *clashFinder) Fill(loops [][]geom.Vec, ink Ink) {
	f.areas = append(f.areas, placedFill{loops, bounds(loops), ink, f.group()})
}

func (f *clashFinder) Write(t Text) {
	q := t.Quad()
	box := bounds([][]geom.Vec{q[:]})
	if math.Abs(q[1].Sub(q[0]).Cross(q[3].Sub(q[0]))) > 0 {
		f.texts = append(f.texts, placedText{t, q, box, f.group(), f.group() == "sheet-frame"})
	}
}

func (f *clashFinder) lines(t *placedText) {
	hit := map[[2]string]bool{}
	for _, s := range f.segments {
		lo, hi := min(s.a.X, s.b.X)-s.half, max(s.a.X, s.b.X)+s.half
		if hi <= t.box.Min.X || lo >= t.box.Max.X {
			continue
		}
		lo, hi = min(s.a.Y, s.b.Y)-s.half, max(s.a.Y, s.b.Y)+s.half
		if hi <= t.box.Min.Y || lo >= t.box.Max.Y {
			continue
		}
		key := [2]string{s.kind, s.group}
		if !hit[key] && quadCut(t.quad, s) {
			hit[key] = true
			f.report(s.kind, t, s.group)
		}
	}
}

// fills reports fills that a text of like darkness stands on.
func (f *clashFinder) fills(t *placedText) {
	for _, a := range f.areas {
		contrast := math.Abs(a.ink.Darkness() - t.text.Ink.Darkness())
		if contrast < 0.5 && t.box.Meets(a.box) && fillMeets(a.loops, t.quad) {
			f.report("fill", t, a.group)
		}
	}
}

// quadCut tells whether a line with its width enters a box: the middle line is
// clipped against the box grown by half the width.
func quadCut(q [4]geom.Vec, s segment) bool {
	u, v := q[1].Sub(q[0]).Unit(), q[3].Sub(q[0]).Unit()
	w, h := float64(q[1].Sub(q[0]).Len()), float64(q[3].Sub(q[0]).Len())
	a, d := s.a.Sub(q[0]), s.b.Sub(s.a)
	t0, t1 := 0.0, 1.0
	clip := func(start, run, low, high float64) bool {
		if run == 0 {
			return low < start && start < high
		}
		e0, e1 := (low-start)/run, (high-start)/run
		t0, t1 = math.Max(t0, math.Min(e0, e1)), math.Min(t1, math.Max(e0, e1))
		return t0 < t1
	}
	g := float64(s.half)
	return clip(a.Dot(u), d.Dot(u), -g, w+g) && clip(a.Dot(v), d.Dot(v), -g, h+g)
}

// quadsMeet tells whether two boxes share ink: no side of either parts them.
func quadsMeet(p, q [4]geom.Vec) bool { return !parted(p, q) && !parted(q, p) }

func parted(p, q [4]geom.Vec) bool {
	const touch = 1e-9
	for i := range p {
		side := geom.Through(p[i], p[(i+1)%4])
		apart := true
		for _, c := range q {
			apart = apart && side.Side(c) <= touch
		}
		if apart {
			return true
		}
	}
	return false
}

func fillMeets(loops [][]geom.Vec, q [4]geom.Vec) bool {
	centre, inside := q[0].Lerp(q[2], 0.5), false
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if quadCut(q, segment{a: a, b: b}) {
				return true
			}
			if (a.Y > centre.Y) != (b.Y > centre.Y) &&
				centre.X < a.X+(b.X-a.X)*(centre.Y-a.Y)/(b.Y-a.Y) {
				inside = !inside
			}
		}
	}
	return inside
}
