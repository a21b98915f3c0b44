package sheet

import (
	"fmt"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/presets"
)

func TestCleatSheetsCanBeRead(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		m := newMaker(presetBuild(t, presets.Alcove, model.Show{Paper: paper}))
		readable(t, m, cleatSheets(m))
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
