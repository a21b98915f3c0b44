package sheet

import (
	"fmt"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model/report"
)

// groupsNamed gathers the groups whose names begin with a text.
func groupsNamed(items []drawing.Item, start string) []drawing.Group {
	var out []drawing.Group
	for _, it := range items {
		if g, ok := it.(drawing.Group); ok {
			if strings.HasPrefix(g.ID, start) {
				out = append(out, g)
			}
			out = append(out, groupsNamed(g.Items, start)...)
		}
	}
	return out
}

// Every number of the parts list stands once on the cover.
func TestCoverNumbersEveryPartOnce(t *testing.T) {
	for _, name := range []string{"studio", "alcove", "corner"} {
		for _, paper := range []string{"A3", "A4"} {
			b := roomBuild(t, name, paper, nil)
			count := map[string]int{}
			for _, s := range presetPages(t, name, paper) {
				if strings.HasPrefix(s.Name, "cover") {
					for _, g := range groupsNamed(s.Items, "cover-number-") {
						for _, text := range textsOf(g.Items) {
							count[text]++
						}
					}
				}
			}
			for _, p := range b.Design.Parts {
				if n := count[fmt.Sprint(p.Mark)]; n != 1 {
					t.Errorf("%s %s: number %d of %s stands %d times on the cover", name, paper, p.Mark, p.ID, n)
				}
			}
		}
	}
}

// The cover begins with the verdict and lists the other sheets by the numbers
// that the set gives them.
func TestCoverListsTheSet(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		b := roomBuild(t, "corner", paper, nil)
		set, err := Set(b)
		if err != nil {
			t.Fatal(err)
		}
		var covers []string
		n := 0
		for _, s := range set {
			if strings.Contains(s.Name, "-cover") || strings.Contains(s.Name, "-sheets-") {
				covers = append(covers, textsOf(s.Items)...)
				n++
			}
		}
		if words := strings.Join(covers, " "); !strings.Contains(words, strings.Fields(report.Sentence(b.Findings))[0]) {
			t.Errorf("%s: the cover does not begin with the verdict", paper)
		}
		all := strings.Join(covers, "\n")
		for _, s := range set[n:] {
			row := fmt.Sprintf("%d\n%s", s.Number, strings.Join(strings.Fields(s.Title), " "))
			if len(s.Title) > 30 {
				row = row[:25] // long titles are wrapped or cut off
			}
			if !strings.Contains(all, row) {
				t.Errorf("%s: sheet %d %q is not in the list", paper, s.Number, s.Title)
			}
		}
	}
}

// On A3 the cover is one sheet, with pictures, parts and the list of sheets.
func TestCoverIsOneSheetOnA3(t *testing.T) {
	for _, name := range []string{"studio", "alcove", "corner"} {
		var covers []drawing.Sheet
		for _, s := range presetPages(t, name, "A3") {
			if strings.HasPrefix(s.Name, "cover") || strings.HasPrefix(s.Name, "sheets-") {
				covers = append(covers, s)
			}
		}
		if len(covers) != 1 {
			t.Errorf("%s: %d sheets of cover", name, len(covers))
			continue
		}
		for _, id := range []string{"cover-number-", "cover-parts", "sheet-list", "margins"} {
			if len(groupsNamed(covers[0].Items, id)) == 0 {
				t.Errorf("%s: no %s on the cover", name, id)
			}
		}
	}
}
