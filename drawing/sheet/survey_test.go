package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/report"
)

// textsOf gathers what is written in items.
func textsOf(items []drawing.Item) []string {
	var out []string
	for _, it := range items {
		switch x := it.(type) {
		case drawing.Text:
			out = append(out, x.String)
		case drawing.Group:
			out = append(out, textsOf(x.Items)...)
		}
	}
	return out
}

func pageNamed(t *testing.T, list []drawing.Sheet, name string) drawing.Sheet {
	t.Helper()
	for _, s := range list {
		if s.Name == name {
			return s
		}
	}
	t.Fatalf("there is no sheet %q", name)
	return drawing.Sheet{}
}

func has(list []string, want string) int {
	n := 0
	for _, s := range list {
		if s == want {
			n++
		}
	}
	return n
}

// The survey sheet prints the length of every wall and the angle of every
// corner as they follow from the adjusted coordinates (plane geometry).
func TestSurveyPrintsTheRoom(t *testing.T) {
	for _, name := range []string{"studio", "alcove", "corner"} {
		b := roomBuild(t, name, "A3", nil)
		got := textsOf(pageNamed(t, presetPages(t, name, "A3"), "survey").Items)
		cs := b.Room.Corners
		n := len(cs)
		for i, c := range cs {
			last := i == n-1 && !b.Room.Closed
			next := cs[(i+1)%n]
			if !last {
				want := fmt.Sprint(math.Round(10*math.Hypot(float64(next.At.X-c.At.X), float64(next.At.Y-c.At.Y))) / 10)
				if has(got, want) == 0 {
					t.Errorf("%s: the length %s of wall %s-%s is not written", name, want, c.Name, next.Name)
				}
			}
			if last || i == 0 && !b.Room.Closed {
				if has(got, c.Name) == 0 {
					t.Errorf("%s: corner %s is not named", name, c.Name)
				}
				continue
			}
			prev := cs[(i+n-1)%n]
			// Corners run clockwise, so the angle inside is turned from the wall
			// before to the wall behind.
			in := math.Atan2(float64(prev.At.Y-c.At.Y), float64(prev.At.X-c.At.X))
			out := math.Atan2(float64(next.At.Y-c.At.Y), float64(next.At.X-c.At.X))
			deg := math.Mod(720+(out-in)*180/math.Pi, 360)
			want := c.Name + "  " + fmt.Sprint(math.Round(100*deg)/100) + "°"
			if has(got, want) == 0 {
				t.Errorf("%s: the corner %q is not written", name, want)
			}
		}
	}
}

// Every reading stands in the table as it was typed, with a box beside it.
func TestSurveyListsEveryReading(t *testing.T) {
	b := roomBuild(t, "studio", "A3", nil)
	m := newMaker(b)
	rows := m.readings().rows
	if len(rows) != len(b.Job.Room.Readings) {
		t.Fatalf("%d rows for %d readings", len(rows), len(b.Job.Room.Readings))
	}
	for i, r := range b.Job.Room.Readings {
		if want := m.length(r.Length); rows[i][1] != want {
			t.Errorf("row %d says %s, the reading is %s", i, rows[i][1], want)
		}
	}
}

// Without a reading to spare nothing is checked, and every row says so.
func TestSurveyMarksUncheckedReadings(t *testing.T) {
	b := roomBuild(t, "alcove", "A3", func(j *model.Job) {
		j.Room.Readings = j.Room.Readings[:5] // A-B, B-C, C-D, A-D and one diagonal fix four corners
		j.Room.Walls[1].Bow = 0
	})
	m := newMaker(b)
	if b.Room.Survey.Redundancy != 0 {
		t.Fatalf("%d readings to spare", b.Room.Survey.Redundancy)
	}
	for i, r := range m.readings().rows {
		if r[4] != "NO" || !m.readings().bold[i] {
			t.Errorf("the unchecked reading %v is not marked", r)
		}
	}
	text := strings.Join(textsOf(pageNamed(t, roomPages(t, b), "survey").Items), "\n")
	if !strings.Contains(text, "NOTHING checks them") {
		t.Error("the sheet does not say that nothing checks the readings")
	}
}

// A bar is as long as the residual is loud: at 3.2905 standard deviations (two-
// sided 0.1 % of the normal distribution) it reaches the tick. A slip of 40 mm in
// a diagonal goes beyond it, is named, and is to be measured again.
func TestSurveyShowsResiduals(t *testing.T) {
	slip := roomBuild(t, "alcove", "A3", func(j *model.Job) { j.Room.Readings[4].Length += 40 })
	for _, b := range []report.Build{roomBuild(t, "alcove", "A3", nil), slip} {
		m := newMaker(b)
		g := m.readings()
		for i, j := range b.Room.Survey.Verdict.Readings[:len(g.rows)] {
			if want := j.W / 3.2905; !(math.Abs(g.bars[i]-want) < 1e-3) {
				t.Errorf("%s: a bar of %.3f, want %.3f", g.rows[i][0], g.bars[i], want)
			}
			if loud := math.Abs(j.W) > 3.2905; loud != (math.Abs(g.bars[i]) > 1) {
				t.Errorf("%s: w %.2f, bar %.2f", g.rows[i][0], j.W, g.bars[i])
			}
		}
	}
	items := bar(geom.V(0, 0), 0.5, drawing.Normal)
	if box := drawing.Bounds(items[3:]); math.Abs(float64(box.Max.X)-0.5*float64(barReach)) > 1e-9 || box.Min.X != 0 {
		t.Errorf("half of what is suspicious is drawn as %v", box)
	}
	text := strings.Join(textsOf(pageNamed(t, roomPages(t, slip), "survey").Items), "\n")
	if !strings.Contains(text, "SUSPECT") || !strings.Contains(text, "easure ") || !strings.Contains(text, slip.Job.Room.Readings[4].ID) {
		t.Errorf("the slip is not told:\n%s", text)
	}
	if clean := strings.Join(textsOf(pageNamed(t, roomPages(t, roomBuild(t, "alcove", "A3", nil)), "survey").Items), "\n"); strings.Contains(clean, "SUSPECT") {
		t.Error("a sound reading is suspected")
	}
}
