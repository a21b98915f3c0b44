package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/presets"
)

func TestCleatSheetsCanBeRead(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		m := newMaker(presetBuild(t, presets.Alcove, model.Show{Paper: paper}))
		readable(t, m, cleatSheets(m))
	}
}

// A cleat unfolds so that its printed side is the outside: along the batten, up the
// paper, then out of the wood make a right-handed system on its top (towards the wall,
// up) and on its face (up, into the room); every hole is as far from the fold as it is
// from the upper front edge.
func TestCleatsUnfoldToTheOutside(t *testing.T) {
	b := presetBuild(t, presets.Alcove, model.Show{})
	m := newMaker(b)
	p := b.Design.Part("cleat left 1")
	c := p.Cleat
	tm := m.cleatTemplate(p)
	x := geom.Vec3{X: 1}
	for _, h := range c.Holes {
		place := slices.IndexFunc(tm.labels, func(l label) bool { return strings.HasPrefix(l.lines[0], h.Name+" ") })
		if place < 0 {
			t.Fatalf("%s is not on the template", h.Name)
		}
		at, up, out, off := tm.labels[place].at.Y, geom.Vec3{Z: 1}, geom.Vec3{Y: -1}, -h.FromHeel
		if h.Leg == model.SeatLeg {
			up, out, off = geom.Vec3{Y: 1}, geom.Vec3{Z: 1}, c.Wide-h.FromHeel
		}
		if x.Cross(up).Dot(out) < 0.99 || math.Abs(float64(at-off)) > 1e-9 {
			t.Errorf("%s in the %s is at %v of the paper, %v off the fold", h.Name, h.Leg, at, off)
		}
	}
	set, _ := m.templates()
	if !anyStarts(set.without, "Cleats longer than") {
		t.Errorf("the long cleats are left without a word: %q", set.without)
	}
}

// TestCleatSheetsSayAllThatIsMade: equal cleats share a sheet, which says the section,
// the length and every hole, and where each of them goes.
func TestCleatSheetsSayAllThatIsMade(t *testing.T) {
	b := presetBuild(t, presets.Alcove, model.Show{})
	m := newMaker(b)
	pages := cleatSheets(m)
	seen := 0
	for _, p := range b.Design.Parts {
		c := p.Cleat
		if c == nil {
			continue
		}
		seen++
		var own []page
		for _, pg := range pages {
			if strings.HasPrefix(pg.sheet.Title, fmt.Sprintf("%d  ", p.Mark)) {
				own = append(own, pg)
			}
		}
		if len(own) == 0 {
			t.Errorf("%s has no sheet", p.ID)
			continue
		}
		if n := len(b.Design.Alike(p)); n > 1 && !strings.Contains(own[0].sheet.Title, fmt.Sprintf("(%d pieces)", n)) {
			t.Errorf("the title %q does not say %d pieces", own[0].sheet.Title, n)
		}
		text := lettering(itemsOf(own))
		want := []string{m.placeOf(&c.Mounted), m.length(c.Wide), m.length(c.High), m.length(c.Length) + " " + m.shorter()}
		for _, h := range b.Design.Alike(p)[0].Cleat.Holes {
			want = append(want, h.Name+"  "+m.length(h.X), m.length(h.FromHeel), m.holeSize(h))
		}
		for _, w := range want {
			if !says(text, w) {
				t.Errorf("the sheet of %s does not say %q", p.ID, w)
			}
		}
	}
	if seen < 9 || len(pages) != 3 {
		t.Errorf("%d cleats on %d sheets", seen, len(pages))
	}
}
