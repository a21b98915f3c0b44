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
	"slabwright/model/unit"
	"slabwright/presets"
)

// steelBuilds are all presets and the awkward bars, on a paper.
func steelBuilds(t testing.TB, paper string) map[string]report.Build {
	out := map[string]report.Build{}
	for _, p := range presets.All() {
		out[p.Name] = presetBuild(t, p, model.Show{Paper: paper})
	}
	trial := awkwardBars(t)
	trial.Job.Show.Paper = paper
	out["awkward"] = trial
	return out
}

// anglePages gives the sheets of one mark.
func anglePages(pages []page, mark int) []page {
	var out []page
	for _, p := range pages {
		if first, _, _ := strings.Cut(p.sheet.Title, " "); first == fmt.Sprint(mark) {
			out = append(out, p)
		}
	}
	return out
}

func TestAngleSheetsCanBeRead(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		for name, b := range steelBuilds(t, paper) {
			t.Run(name+" "+paper, func(t *testing.T) {
				m := newMaker(b)
				readable(t, m, angleSheets(m))
			})
		}
	}
}

// TestEveryHoleIsOnItsSheet wants the place of every hole of every angle twice:
// as a running dimension in the view of its leg and as a row of the table.
func TestEveryHoleIsOnItsSheet(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		for name, b := range steelBuilds(t, paper) {
			m := newMaker(b)
			all := angleSheets(m)
			for _, p := range b.Design.Parts {
				if p.Angle == nil {
					continue
				}
				items := itemsOf(anglePages(all, p.Mark))
				for _, h := range p.Angle.Holes {
					id := strings.Replace(string(h.Leg), " ", "-", 1) + "-dimensions"
					dims, ok := groupOf(items, id)
					want := h.Name + "  " + fmt.Sprint(float64(h.X))
					if !ok || !says(lettering(dims.Items), want) {
						t.Errorf("%s %s: %s: no dimension %q in %s", name, paper, p.ID, want, id)
					}
				}
				rows := tableRows(items)
				if len(rows) != len(p.Angle.Holes) {
					t.Errorf("%s %s: %s: %d rows for %d holes", name, paper, p.ID, len(rows), len(p.Angle.Holes))
				}
				for _, h := range p.Angle.Holes {
					want := fmt.Sprintf("%s %g %g", h.Name, float64(h.X), float64(h.FromHeel))
					if !rows[want] {
						t.Errorf("%s %s: %s: the table has no row %q", name, paper, p.ID, want)
					}
				}
			}
		}
	}
}

// tableRows are the first three cells of all rows of hole tables.
func tableRows(items []drawing.Item) map[string]bool {
	out := map[string]bool{}
	for i := 1; i < 10; i++ {
		for k := 1; k < 5; k++ {
			g, ok := groupOf(items, fmt.Sprintf("holes-%d-%d", i, k))
			if !ok {
				continue
			}
			byLine := map[float64][]string{}
			var lines []float64
			for _, x := range lettering(g.Items) {
				if x.Bold {
					continue
				}
				y := math.Round(float64(x.At.Y)*100) + math.Floor(float64(x.At.X)/1e6)
				if byLine[y] == nil {
					lines = append(lines, y)
				}
				byLine[y] = append(byLine[y], x.String)
			}
			for _, y := range lines {
				cells := byLine[y]
				for len(cells) >= 4 { // tables may stand in parts beside each other
					out[strings.Join(cells[:3], " ")] = true
					cells = cells[4:]
				}
			}
		}
	}
	return out
}

func TestPrintedLengthIsThatOfTheAngle(t *testing.T) {
	for name, b := range steelBuilds(t, "A3") {
		m := newMaker(b)
		all := angleSheets(m)
		for _, p := range b.Design.Parts {
			if p.Angle == nil {
				continue
			}
			pages := anglePages(all, p.Mark)
			want := fmt.Sprintf("%g +0/-1", float64(p.Angle.Length))
			dims, _ := groupOf(itemsOf(pages), "wall-leg-dimensions")
			if !says(lettering(dims.Items), want) {
				t.Errorf("%s: %s: no length %q", name, p.ID, want)
			}
			for _, leg := range []string{"wall-leg", "seat-leg"} {
				drawnTrue(t, pages, leg, p)
			}
		}
	}
}

// drawnTrue holds the outline of a leg against the scale of its sheet, and the
// two legs against each other: they stand in line.
func drawnTrue(t *testing.T, pages []page, leg string, p *model.Part) {
	t.Helper()
	var scale drawing.Scale
	if _, err := fmt.Sscanf(pages[0].sheet.Scale, "%d:%d", &scale.Paper, &scale.Real); err != nil {
		t.Fatalf("%s: scale %q", p.ID, pages[0].sheet.Scale)
	}
	g, ok := groupOf(pages[0].sheet.Items, leg+"-"+stem(p.ID))
	if !ok {
		return // an equal part stands for it
	}
	box := drawing.Bounds(g.Items)
	long := p.Angle.Length
	if p.Angle.Left.Mitre != 0 { // the toe of that end reaches beyond the heel
		long += p.Angle.Section.Leg * unit.Length(math.Tan(float64(p.Angle.Left.Mitre)))
	}
	if got, want := box.Width()-0.5, scale.Of(long); math.Abs(float64(got-want)) > 0.3 {
		t.Errorf("%s: the %s is drawn %.2f long, want %.2f at %s", p.ID, leg, got, want, scale)
	}
	wall, _ := groupOf(pages[0].sheet.Items, "wall-leg-"+stem(p.ID))
	seat, _ := groupOf(pages[0].sheet.Items, "seat-leg-"+stem(p.ID))
	a, b := drawing.Bounds(wall.Items), drawing.Bounds(seat.Items)
	if math.Abs(float64(a.Min.X-b.Min.X)) > 0.01 || math.Abs(float64(a.Max.X-b.Max.X)) > 0.01 {
		t.Errorf("%s: the views do not stand in line: %v, %v", p.ID, a, b)
	}
	if a.Min.Y < b.Max.Y { // ISO 5456-2, first angle: the view from above stands below
		t.Errorf("%s: the seat leg does not stand below the wall leg", p.ID)
	}
}

// TestHolesAreDrawnWhereTheyAre finds the outline of every hole in the view of
// its leg, at its place at the scale of the sheet.
func TestHolesAreDrawnWhereTheyAre(t *testing.T) {
	b := awkwardBars(t)
	m := newMaker(b)
	all := angleSheets(m)
	n := 0
	for _, p := range b.Design.Parts {
		pg := anglePages(all, p.Mark)[0]
		var scale drawing.Scale
		if _, err := fmt.Sscanf(pg.sheet.Scale, "%d:%d", &scale.Paper, &scale.Real); err != nil {
			t.Fatal(err)
		}
		if p.Angle.Left.Mitre != 0 {
			continue // the left end of the heel is not the left end of the view
		}
		for _, h := range p.Angle.Holes {
			id := strings.Replace(string(h.Leg), " ", "-", 1) + "-" + stem(p.ID)
			g, _ := groupOf(pg.sheet.Items, id)
			box := drawing.Bounds(g.Items).Grow(-0.25)
			heel := box.Max.Y
			sign := unit.Length(-1)
			if p.Angle.LegUp && h.Leg == model.WallLeg {
				heel, sign = box.Min.Y, 1
			}
			want := geom.V(box.Min.X+scale.Of(h.X), heel+sign*scale.Of(h.FromHeel))
			if !closedAt(g.Items, want) {
				t.Errorf("%s: no outline of %s at %v", p.ID, h.Name, want)
			}
			n++
		}
	}
	if n < 50 {
		t.Errorf("%d holes looked at", n)
	}
}

// closedAt tells whether a closed line has its middle at a place.
func closedAt(items []drawing.Item, at geom.Vec) bool {
	for _, it := range items {
		if l, ok := it.(drawing.Polyline); ok && l.Closed && around(l.Points).Centre().Sub(at).Len() < 0.15 {
			return true
		}
	}
	return false
}

func TestSmallViewsHaveDetails(t *testing.T) {
	b := awkwardBars(t)
	m := newMaker(b)
	all := angleSheets(m)
	for _, p := range b.Design.Parts {
		pages := anglePages(all, p.Mark)
		_, x := groupOf(itemsOf(pages), "detail-X")
		_, y := groupOf(itemsOf(pages), "detail-Y")
		want := p.Angle.Length > 1800 // longer than an A3 sheet at 1:5
		if x != want || y != want {
			t.Errorf("%s at %s: details %v %v, want %v", p.ID, pages[0].sheet.Scale, x, y, want)
		}
	}
}

func TestAngleSheetsSayWhatAYardAsks(t *testing.T) {
	b := awkwardBars(t)
	m := newMaker(b)
	all := angleSheets(m)
	of := func(id string) string {
		var out []string
		for _, x := range lettering(itemsOf(anglePages(all, b.Design.Part(id).Mark))) {
			out = append(out, x.String)
		}
		return strings.Join(out, " ")
	}
	for id, words := range map[string][]string{
		"plain":     {"L60x60x6 EN 10056-1", "S235JR", "both sawn square", "wall leg down", "L, mirror image of item 2", "-0/+2 orders 698", "wall back, under top, seat at +710", "20 from corner B", "R8", "2 × Ø11", "7 x 13 along"},
		"mirrored":  {"R, mirror image of item 1"},
		"leg up":    {"wall leg up"},
		"tiny":      {"none, both ends alike"},
		"mitred":    {"12° off square, toe longer", "20° off square, heel longer"},
		"two lines": {"countersunk Ø16"},
	} {
		text := of(id)
		for _, w := range append(words, "1:", "Section", "wall", "slab", "quantity") {
			if !strings.Contains(text, w) {
				t.Errorf("%s does not say %q", id, w)
			}
		}
	}
	titles := ""
	for _, p := range all {
		titles += p.sheet.Title + "|"
	}
	if !strings.Contains(titles, "1 L  plain|") || !strings.Contains(titles, "2 R  mirrored|") {
		t.Errorf("the hands are not in the titles: %s", titles)
	}
}

func TestEqualAnglesShareASheet(t *testing.T) {
	b := changedBuild(t, presets.Alcove, model.Show{}, "shelves_on", model.Setting{Text: "angles"})
	m := newMaker(b)
	sheets := map[int]int{}
	for _, p := range angleSheets(m) {
		var mark int
		if _, err := fmt.Sscan(p.sheet.Title, &mark); err != nil {
			t.Fatal(err)
		}
		sheets[mark]++
	}
	shared := 0
	for _, p := range b.Design.Parts {
		if p.Angle == nil {
			continue
		}
		if sheets[p.Mark] != 1 {
			t.Errorf("item %d has %d sheets", p.Mark, sheets[p.Mark])
		}
		if n := len(b.Design.Alike(p)); n > 1 {
			shared++
			pages := anglePages(angleSheets(m), p.Mark)
			if !strings.Contains(pages[0].sheet.Title, fmt.Sprintf("(%d pieces)", n)) {
				t.Errorf("the title %q does not say %d pieces", pages[0].sheet.Title, n)
			}
			text := lettering(itemsOf(pages))
			if !says(text, m.placeOf(&p.Angle.Mounted)) {
				t.Errorf("%s: its sheet does not say where it goes", p.ID)
			}
		}
	}
	if shared == 0 {
		t.Error("no angle shares a sheet: the shelves of the alcove should")
	}
}

func TestThirdAngleTurnsTheViews(t *testing.T) {
	b := awkwardBars(t)
	b.Job.Show.Projection = "third"
	m := newMaker(b)
	pg := angleSheets(m)[0]
	wall, _ := groupOf(pg.sheet.Items, "wall-leg-plain")
	seat, _ := groupOf(pg.sheet.Items, "seat-leg-plain")
	if drawing.Bounds(seat.Items).Min.Y < drawing.Bounds(wall.Items).Max.Y {
		t.Error("third angle: the view from above must stand above") // ISO 5456-2
	}
}

func BenchmarkAngleSheets(b *testing.B) {
	m := newMaker(awkwardBars(b))
	for b.Loop() {
		angleSheets(m)
	}
}
