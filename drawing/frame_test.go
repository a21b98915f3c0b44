package drawing_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Trimmed sizes and drawing spaces of ISO 5457:1999 with ISO 216, and the
// numbers of fields of its grid (BS EN ISO 5457:1999+A1:2010, read in a
// teaching page); spaces and margins from memory, arithmetic checked.
var iso5457 = []struct {
	size          drawing.Size
	short, long   unit.Length
	spaceS, spceL unit.Length
	across, down  int
}{
	{drawing.A4, 210, 297, 180, 277, 4, 6},
	{drawing.A3, 297, 420, 277, 390, 8, 6},
	{drawing.A2, 420, 594, 400, 564, 12, 8},
	{drawing.A1, 594, 841, 574, 811, 16, 12},
}

func TestSheetSizes(t *testing.T) {
	for _, c := range iso5457 {
		short, long := min(c.size.Width, c.size.Height), max(c.size.Width, c.size.Height)
		if short != c.short || long != c.long {
			t.Errorf("%s is %v x %v, want %v x %v", c.size.Name, short, long, c.short, c.long)
		}
		s := c.size.Space()
		if short, long := min(s.Width(), s.Height()), max(s.Width(), s.Height()); short != c.spaceS || long != c.spceL {
			t.Errorf("%s has a drawing space of %v x %v, want %v x %v", c.size.Name, short, long, c.spaceS, c.spceL)
		}
		if s.Min != geom.V(20, 10) { // filing margin 20 on the left
			t.Errorf("%s: drawing space starts at %v", c.size.Name, s.Min)
		}
	}
}

// ink gathers what a sheet leaves on paper.
type ink struct {
	group []string
	lines []stroke
	arcs  []arc
	texts []drawing.Text
}

type stroke struct {
	group  string
	chain  []geom.Vec
	closed bool
	drawing.Stroke
}

type arc struct {
	centre geom.Vec
	radius unit.Length
}

func (k *ink) Begin(id, _ string)             { k.group = append(k.group, id) }
func (k *ink) End()                           { k.group = k.group[:len(k.group)-1] }
func (k *ink) Fill([][]geom.Vec, drawing.Ink) {}
func (k *ink) Write(t drawing.Text)           { k.texts = append(k.texts, t) }
func (k *ink) Arc(c geom.Vec, r unit.Length, _, _ unit.Angle, _ drawing.Stroke) {
	k.arcs = append(k.arcs, arc{c, r})
}
func (k *ink) Lines(chains [][]geom.Vec, closed bool, s drawing.Stroke) {
	for _, c := range chains {
		k.lines = append(k.lines, stroke{strings.Join(k.group, "/"), c, closed, s})
	}
}

func plot(items ...drawing.Item) *ink {
	k := &ink{}
	drawing.Plot(drawing.Sheet{Items: items}, k)
	return k
}

func framed(size drawing.Size) drawing.Sheet {
	return drawing.Finish(drawing.Sheet{Name: "01-x", Title: "Plan", Size: size, Scale: "1:10", Number: 1, Of: 2}, drawing.Block{})
}

// Frame 0.7 wide, grid lines 0.35 (ISO 5457); centring marks at the ends of
// both axes of the trimmed sheet.
func TestFrame(t *testing.T) {
	for _, c := range iso5457 {
		k := &ink{}
		drawing.Plot(framed(c.size), k)
		space, found, marks := c.size.Space(), false, 0
		for _, l := range k.lines {
			if l.group != "sheet-frame" {
				continue
			}
			if l.closed && l.Width == 0.7 {
				found = slices.Equal(l.chain, space.Corners())
			}
			if a, b := l.chain[0], l.chain[1]; !l.closed && l.Width == 0.7 {
				onX := a.X == c.size.Width/2 && b.X == a.X
				onY := a.Y == c.size.Height/2 && b.Y == a.Y
				if onX != onY {
					marks++
				}
			}
			if l.Width != 0.7 && l.Width != 0.35 {
				t.Errorf("%s: line of %v in the frame", c.size.Name, l.Width)
			}
		}
		if !found || marks != 4 {
			t.Errorf("%s: frame %v, %d centring marks", c.size.Name, found, marks)
		}
	}
}

// Fields of 50 mm from the middle, letters downwards without I and O, figures
// to the right; A4 has them on two sides only.
func TestGrid(t *testing.T) {
	for _, c := range iso5457 {
		k := &ink{}
		drawing.Plot(framed(c.size), k)
		top, right := map[string]unit.Length{}, map[string]unit.Length{}
		sides := 0
		for _, x := range k.texts {
			switch s := c.size.Space(); {
			case x.At.Y > s.Max.Y:
				top[x.String] = x.At.X
			case x.At.X > s.Max.X:
				right[x.String] = x.At.Y
			case x.At.Y < s.Min.Y, x.At.X < s.Min.X:
				sides++
			}
		}
		if len(top) != c.across || len(right) != c.down {
			t.Errorf("%s: %d x %d fields, want %d x %d", c.size.Name, len(top), len(right), c.across, c.down)
		}
		if (sides == 0) != (c.size == drawing.A4) {
			t.Errorf("%s: %d names below and on the left", c.size.Name, sides)
		}
		if right["I"] != 0 || right["O"] != 0 || right["A"] < right["B"] || top["1"] > top["2"] {
			t.Errorf("%s: fields %v and %v", c.size.Name, top, right)
		}
		if step := top["3"] - top["2"]; c.across > 4 && step != 50 {
			t.Errorf("%s: fields are %v wide", c.size.Name, step)
		}
	}
}

// The print gauges are exactly 100 mm, one along each axis.
func TestGauges(t *testing.T) {
	for _, c := range iso5457 {
		k := &ink{}
		drawing.Plot(framed(c.size), k)
		level, upright := 0, 0
		for _, l := range k.lines {
			if d := l.chain[1].Sub(l.chain[0]); len(l.chain) == 2 {
				if d == geom.V(100, 0) {
					level++
				}
				if d == geom.V(0, 100) {
					upright++
				}
			}
		}
		if level != 1 || upright != 1 {
			t.Errorf("%s: %d level and %d upright gauges", c.size.Name, level, upright)
		}
	}
}

// What Free gives away, Finish leaves empty.
func TestFreeIsFree(t *testing.T) {
	for _, size := range []drawing.Size{drawing.A4, drawing.A3, drawing.A2, drawing.A1, drawing.A4.Turned()} {
		free := drawing.Free(size)
		for _, g := range framed(size).Items {
			for _, it := range g.(drawing.Group).Items {
				b := drawing.Bounds([]drawing.Item{it})
				for _, f := range free {
					inside := b.Meets(f)
					if p, ok := it.(drawing.Polyline); ok && p.Closed { // frame and border run around
						inside = inside && !b.Holds(f)
					}
					if inside {
						t.Errorf("%s: %v reaches into the free field %v", size.Name, it, f)
					}
				}
			}
		}
		if !size.Space().Holds(free[0]) || free[0].Width() < 150 || free[0].Height() < 100 {
			t.Errorf("%s: free field %v", size.Name, free[0])
		}
		if len(free) == 2 && (free[0].Min.Y != free[1].Max.Y || free[0].Min.X != free[1].Min.X) {
			t.Errorf("%s: the free fields do not share a side: %v", size.Name, free)
		}
	}
}

// ISO 5455: enlargements 2:1, 5:1; full size; reductions 1:2 ... 1:500. 1:2.5,
// 1:3, 1:4 and 1:25 are not of the series.
func TestScales(t *testing.T) {
	var got []string
	for _, s := range drawing.Scales {
		got = append(got, s.String())
	}
	if want := "5:1 2:1 1:1 1:2 1:5 1:10 1:20 1:50 1:100 1:200 1:500"; strings.Join(got, " ") != want {
		t.Errorf("series %v, want %v", got, want)
	}
	if l := (drawing.Scale{Paper: 1, Real: 20}).Of(2300); math.Abs(float64(l-115)) > 1e-12 {
		t.Errorf("2300 at 1:20 is %v on paper, want 115", l)
	}
	room := drawing.Box(0, 0, 375, 215)
	for _, c := range []struct {
		w, h unit.Length
		want string
	}{{300, 200, "1:1"}, {376, 10, "1:2"}, {3608, 651, "1:10"}, {3608, 2600, "1:20"}, {1e9, 1, "1:500"}, {10, 10, "1:1"}} {
		if got := drawing.FitScale(c.w, c.h, room).String(); got != c.want {
			t.Errorf("%v x %v: %s, want %s", c.w, c.h, got, c.want)
		}
	}
}
