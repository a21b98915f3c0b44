package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/report"
	"slabwright/model/unit"
	"slabwright/presets"
)

func TestListsCanBeRead(t *testing.T) {
	for _, paper := range []string{"A3", "A4", "A2"} {
		for name, b := range drillBuilds(t, paper) {
			t.Run(name+" "+paper, func(t *testing.T) {
				m := newMaker(b)
				readable(t, m, listSheets(m))
			})
		}
	}
}

func TestQuantitiesSumToTheParts(t *testing.T) {
	for name, b := range drillBuilds(t, "A3") {
		rows := newMaker(b).partsList(0).rows
		n, mass := 0.0, 0.0
		of := map[string]float64{} // mass by material
		for _, r := range rows[:len(rows)-1] {
			if r[0] == "" {
				if math.Abs(value(t, r[6])-of[r[3]]) > 0.6 {
					t.Errorf("%s: %s kg of %s together, the items sum to %.1f", name, r[6], r[3], of[r[3]])
				}
				continue
			}
			n += value(t, r[1])
			mass += value(t, r[6])
			of[r[3]] += value(t, r[6])
		}
		total := rows[len(rows)-1]
		var want unit.Mass
		for _, p := range b.Design.Parts {
			want += p.Mass()
		}
		if int(n) != len(b.Design.Parts) || value(t, total[1]) != n {
			t.Errorf("%s: %v pieces listed, total %s, the design has %d", name, n, total[1], len(b.Design.Parts))
		}
		if math.Abs(mass-float64(want)) > 0.05*float64(len(rows)) || math.Abs(value(t, total[6])-float64(want)) > 0.051 {
			t.Errorf("%s: %.1f kg listed, total %s, the design has %.2f", name, mass, total[6], float64(want))
		}
	}
}

// TestListNamesTheSheets takes the whole set, looks the numbers up that each
// item should have, and wants them in the list of the set.
func TestListNamesTheSheets(t *testing.T) {
	b := presetBuild(t, presets.Alcove, model.Show{Paper: "A4"})
	sheets, err := Set(b)
	if err != nil {
		t.Fatal(err)
	}
	var listed []drawing.Text
	numbers := map[string][]string{} // of the sheets of each item
	for _, s := range sheets {
		name := s.Name[strings.Index(s.Name, "-")+1:]
		if strings.HasPrefix(name, "lists") {
			listed = append(listed, lettering(s.Items)...)
		}
		if strings.HasPrefix(name, "slab-") || strings.HasPrefix(name, "angle-") || strings.HasPrefix(name, "cleat-") {
			mark, _, _ := strings.Cut(s.Title, " ")
			numbers[mark] = append(numbers[mark], fmt.Sprint(s.Number))
		}
	}
	items := 0
	for _, p := range b.Design.Parts {
		items = max(items, p.Mark)
	}
	if len(numbers) != items {
		t.Errorf("%d items of %d have sheets", len(numbers), items)
	}
	for mark, of := range numbers {
		if !says(listed, strings.Join(of, ", ")) {
			t.Errorf("item %s is on %v, the list does not say so", mark, of)
		}
	}
}

// TestEveryCautionIsSaidOnce wants each caution of the design on one list.
func TestEveryCautionIsSaidOnce(t *testing.T) {
	for name, b := range drillBuilds(t, "A3") {
		m := newMaker(b)
		said := map[string]int{}
		for _, list := range []actList{making, buying, onSite} {
			for _, c := range m.cautions(list) {
				said[c]++
			}
		}
		all := report.Cautions(b.Design)
		for _, c := range all {
			if said[c.Act+": "+c.Text] != 1 {
				t.Errorf("%s: %q is said %d times", name, c.Act, said[c.Act+": "+c.Text])
			}
		}
		var words []string
		for _, x := range lettering(itemsOf(listSheets(m))) {
			words = append(words, x.String)
		}
		text := strings.Join(words, " ")
		for _, c := range all {
			if !strings.Contains(text, c.Act+":") {
				t.Errorf("%s: no list warns of %q", name, c.Act)
			}
		}
	}
}

// TestSiteListKnowsTheRoom holds the expected figures against a room that is
// known: 6000 between walls at right angles, the height line 1000 above a level
// floor.
func TestSiteListKnowsTheRoom(t *testing.T) {
	b := onTheWalls(t)
	b.Room.Floor = []model.FloorMark{{Corner: "B"}, {Corner: "C", Height: -7}}
	b.Job.House = model.House{Climate: model.Climate{Moisture: 9}, Way: []model.Passage{{Name: "front door", Width: 800, Height: 2000}}}
	rows := map[string][]string{}
	for _, r := range newMaker(b).siteList().rows {
		rows[r[0]] = r
	}
	for what, want := range map[string]string{
		"top: wall to wall at its back, +710 and +750":   "6000",
		"top: wall to wall at its middle, +710 and +750": "6000",
		"top: wall to wall at its front, +710 and +750":  "6000",
		"wall back: corner B to C at +710":               "6000",
		"corner B: mark to mark at 600":                  "848.5", // 600 times the root of 2
		"corner C: mark to mark at 600":                  "848.5",
		"corner C: line +1.000 m above the floor":        "1007",
		"socket: along wall back from B":                 "1000 to 1080",
		"socket: above the floor":                        "600 to 680",
		"European oak delivered: thickness":              "40",
		"European oak delivered: moisture":               "9 %",
		"way in: front door, clear":                      "800 x 2000",
		"steel delivered: leg, thickness":                "L60x60x6",
		"searched for services: left, back, right":       "clear",
	} {
		if r := rows[what]; r == nil || r[1] != want {
			t.Errorf("%q: the list says %q, want %q", what, r, want)
		}
	}
	if r := rows["top: wall to wall at its back, +710 and +750"]; r != nil && r[2] != "under 5993" { // slab of 5992, gaps of 4: 1 mm is left
		t.Errorf("the list stops at %q", r[2])
	}
}

// TestSiteListHasBoxes wants an empty box beside every row.
func TestSiteListHasBoxes(t *testing.T) {
	b := onTheWalls(t)
	m := newMaker(b)
	boxes, rows := 0, 0
	for _, p := range listSheets(m) {
		for _, it := range p.sheet.Items {
			g, ok := it.(drawing.Group)
			if !ok || !strings.HasPrefix(g.ID, "site-check") || !strings.HasPrefix(g.Title, "Measure on site") {
				continue
			}
			rows++
			for _, l := range g.Items {
				if l, ok := l.(drawing.Polyline); ok && l.Points[0].X == l.Points[1].X {
					boxes++
				}
			}
		}
	}
	if rows == 0 || boxes != 2*rows {
		t.Errorf("%d upright lines in %d parts of the table", boxes, rows)
	}
}

// TestLongTablesRunOver sets many rows and wants each of them once, heads on
// top of every part, and nothing beyond the columns.
func TestLongTablesRunOver(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		m := newMaker(report.Build{Job: model.Job{Title: "Trial", Show: model.Show{Paper: paper}}, Design: &model.Design{}})
		f := newListing(m, "long", "Long")
		f.notes("Before", []string{strings.Repeat("many words ", 60)})
		long := table{heads: []string{"row", "words"}}
		for i := range 230 {
			long.rows = append(long.rows, []string{fmt.Sprintf("row %d", i), strings.Repeat("word ", 1+i%31)})
		}
		f.table("Long", long, tableForm{by: ladderText, boxes: true})
		f.notes("After", []string{"The end."})
		pages := f.pages("list")
		readable(t, m, pages)
		seen, heads := map[string]int{}, 0
		for _, x := range lettering(itemsOf(pages)) {
			seen[x.String]++
			if x.String == "words" {
				heads++
			}
		}
		for i := range 230 {
			if seen[fmt.Sprintf("row %d", i)] != 1 {
				t.Errorf("%s: row %d is set %d times", paper, i, seen[fmt.Sprintf("row %d", i)])
			}
		}
		if len(pages) < 3 || heads < len(pages)-1 || seen["Long"] != 1 || seen["Long, continued"] != heads-1 {
			t.Errorf("%s: %d pages, %d heads, %d first and %d further headings", paper, len(pages), heads, seen["Long"], seen["Long, continued"])
		}
		names := map[string]bool{}
		for _, p := range pages {
			names[p.sheet.Name] = true
		}
		if len(names) != len(pages) {
			t.Errorf("%s: two pages have one name: %v", paper, names)
		}
	}
}

func TestHandsAreInThePartsList(t *testing.T) {
	b := awkwardBars(t)
	rows := newMaker(b).partsList(0).rows
	if rows[0][2] != "plain (L)" || rows[1][2] != "mirrored (R)" {
		t.Errorf("the first items are %q and %q", rows[0][2], rows[1][2])
	}
}
