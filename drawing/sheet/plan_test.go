package sheet

import (
	"math"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// The clear widths of the studio follow from its two side walls alone: where a
// line along the worktop meets them, worked out here by hand with the lean of
// the left wall.
func TestClearWidths(t *testing.T) {
	b := roomBuild(t, "studio", "A3", nil)
	m := newMaker(b)
	top := b.Design.Part("worktop")
	sp := top.Slab
	left, right := b.Room.Wall("left"), b.Room.Wall("right")
	for _, x := range m.widths(top) {
		mid := x.from.Lerp(x.to, 0.5)
		dir := geom.V(1, 0).Turn(sp.Pose.Turn)
		narrow := math.Inf(1)
		for _, z := range []unit.Length{sp.Top, sp.Top - sp.Thickness} {
			narrow = min(narrow, hit(mid, dir, right, z)-hit(mid, dir, left, z))
		}
		if math.Abs(float64(x.clear)-narrow) > 0.02 {
			t.Errorf("clear width at the %s: %.3f, by hand %.3f", x.name, float64(x.clear), narrow)
		}
		if got := x.left + x.wood + x.right; math.Abs(float64(got-x.clear)) > 0.01 {
			t.Errorf("at the %s gaps and wood make %.3f of %.3f", x.name, float64(got), float64(x.clear))
		}
	}
}

// hit is how far along a ray a wall's straight face is met at a height.
func hit(p, dir geom.Vec, w *model.Wall, z unit.Length) float64 {
	ax, ay := float64(w.From.At.X), float64(w.From.At.Y)
	bx, by := float64(w.To.At.X), float64(w.To.At.Y)
	l := math.Hypot(bx-ax, by-ay)
	out := w.Lean * float64(z-745) // the readings of this job were taken at 745
	nx, ny := -(by-ay)/l, (bx-ax)/l
	ax, ay = ax+nx*out, ay+ny*out
	// Solve p + t dir = a + s (b - a).
	dx, dy := float64(dir.X), float64(dir.Y)
	ex, ey := bx-float64(w.From.At.X), by-float64(w.From.At.Y)
	return ((ax-float64(p.X))*ey - (ay-float64(p.Y))*ex) / (dx*ey - dy*ex)
}

// The gaps on the plan are those that the check of the gaps found.
func TestPlanGapsAreThoseOfTheCheck(t *testing.T) {
	for _, name := range []string{"studio", "alcove", "corner"} {
		b := roomBuild(t, name, "A3", nil)
		m := newMaker(b)
		n := 0
		for _, f := range b.Findings {
			p := b.Design.Part(append(f.Parts, "")[0])
			if f.Rule != "wall-gap" || p == nil || p.Kind != model.KindSlab {
				continue
			}
			for _, o := range m.openings(p) {
				if o.wall.Name == f.Walls[0] {
					n++
					if d := math.Abs(float64(o.least) - f.Measured.Value); d > 0.1 {
						t.Errorf("%s: gap of %s to %s: %.2f, the check says %.2f", name, p.ID, o.wall.Name, float64(o.least), f.Measured.Value)
					}
				}
			}
		}
		if n < 3 {
			t.Errorf("%s: only %d gaps compared", name, n)
		}
	}
}

// Sections carry letters that name no corner: nobody takes the section A for
// the corner A.
func TestSectionLettersNameNoCorner(t *testing.T) {
	for _, name := range []string{"studio", "alcove", "corner"} {
		b := roomBuild(t, name, "A3", nil)
		m := newMaker(b)
		plan := textsOf(groupsNamed(pageNamed(t, presetPages(t, name, "A3"), "plan").Items, "mark-")[0].Items)
		for _, c := range m.cuttings() {
			if _, taken := b.Room.Corner(c.letter); taken {
				t.Errorf("%s: section %s has the name of a corner", name, c.letter)
			}
		}
		if c := m.cuttings()[0]; has(plan, c.letter) != 2 {
			t.Errorf("%s: the plan shows %v, both ends of the section carry %s", name, plan, c.letter)
		}
	}
}

// A failing check shows on the plan: a red triangle with a number and its arrow
// at the very place, and the words beside the widths.
func TestPlanFlagsWhatFails(t *testing.T) {
	b := roomBuild(t, "studio", "A3", func(j *model.Job) {
		j.Settings["surface"] = model.Setting{Text: "735", Length: 735}
	})
	if find.Worst(b.Findings) != find.Fail {
		t.Fatal("a surface at 735 leaves room for legs that need more")
	}
	m := newMaker(b)
	pages := roomPages(t, b)
	plan := pageNamed(t, pages, "plan")
	flags := groupsNamed(plan.Items, "flag-")
	if len(flags) != len(m.planFindings()) || len(flags) == 0 {
		t.Fatalf("%d flags for %d findings", len(flags), len(m.planFindings()))
	}
	red := 0
	for _, it := range flags[0].Items {
		switch x := it.(type) {
		case drawing.Polyline:
			if x.Pen.Ink == drawing.Red {
				red++
			}
		case drawing.Mark:
			if x.Pen.Ink == drawing.Red && x.Kind == drawing.Arrow {
				red++
			}
		}
	}
	if red != 3 {
		t.Errorf("the flag has %d red lines, want a triangle, a leader and its arrow", red)
	}
	if plan.Stamp == "" {
		t.Error("the plan is not stamped")
	}
	for _, s := range pages {
		for _, c := range drawing.Overlaps(s) {
			t.Errorf("%s: %v", s.Name, c)
		}
	}
	section := strings.Join(textsOf(pageNamed(t, pages, "section-cutting-place").Items), " ")
	if !strings.Contains(section, "NOT free") || !strings.Contains(section, "LACKING") {
		t.Error("the section does not say that the legs are not free")
	}
}
