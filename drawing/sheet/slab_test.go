package sheet

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/unit"
)

// Every case on every paper, in small and large: what is written can be read
// (ISO 129-1), stays on the paper, and no two groups share a name.
func TestSlabSheetsCanBeRead(t *testing.T) {
	for i, c := range slabCases {
		for _, paper := range []string{"A4", "A3", "A2"} {
			for _, wide := range []unit.Length{1480, 2950} {
				b := slabBuild(t, i, wide, model.Show{Paper: paper})
				m := newMaker(b)
				for _, s := range finished(m, slabSheets(m)) {
					where := c.name + " on " + paper + ", sheet " + s.Name
					if err := drawing.Sound(s); err != nil {
						t.Errorf("%s: %v", where, err)
					}
					for _, clash := range drawing.Overlaps(s) {
						t.Errorf("%s: %v", where, clash)
					}
					if box := drawing.Bounds(s.Items); !s.Size.Paper().Holds(box) {
						t.Errorf("%s leaves the paper: %v", where, box)
					}
				}
			}
		}
	}
}

// The outline on paper is as long as the slab at the scale in the title block.
func TestSlabIsDrawnAtItsScale(t *testing.T) {
	for i, c := range slabCases {
		b := slabBuild(t, i, 1480, model.Show{})
		m := newMaker(b)
		slab := b.Design.Parts[0].Slab
		long, _ := slab.Blank()
		s := slabSheets(m)[0].sheet
		up, down, _ := strings.Cut(s.Scale, ":")
		paper, _ := strconv.Atoi(up)
		real, _ := strconv.Atoi(down)
		if paper == 0 || real == 0 {
			t.Fatalf("%s: scale %q", c.name, s.Scale)
		}
		want := drawing.Scale{Paper: paper, Real: real}.Of(long)
		g, ok := group(s.Items, "top-face-"+stem(b.Design.Parts[0].ID))
		if !ok {
			t.Fatalf("%s: the slab is not on its sheet", c.name)
		}
		got := drawing.Bounds(g.Items).Width() - m.lines.Wide
		if abs(got-want) > 0.02 {
			t.Errorf("%s: %.3f mm long at %s, want %.3f", c.name, float64(got), s.Scale, float64(want))
		}
	}
}

// Three sides and the two diagonals fix a quadrilateral; the fourth side that
// they give is the one that is printed, to the rounding of six printed values.
func TestPrintedSizesBelongToOneQuadrilateral(t *testing.T) {
	tried := 0
	for i, c := range slabCases {
		b := slabBuild(t, i, 1480, model.Show{})
		m := newMaker(b)
		slab := b.Design.Parts[0].Slab
		if len(slab.Edges) != 4 {
			continue
		}
		tried++
		w := m.workpiece(b.Design.Parts[0])
		printed := numbers(t, slabSheets(m)[0].sheet, "top-face-dimensions")
		value := func(p, q int) float64 {
			want := float64(w.corners[p-1].Sub(w.corners[q-1]).Len())
			for _, v := range printed {
				if math.Abs(v-want) <= 0.0501 {
					return v
				}
			}
			t.Errorf("%s: the distance of corners %d and %d, %.2f, is not printed", c.name, p, q, want)
			return want
		}
		left, back, right, d13, d24 := value(1, 2), value(2, 3), value(3, 4), value(1, 3), value(2, 4)
		// corner 2 at the origin, corner 3 on the x axis
		x1 := (left*left + back*back - d13*d13) / (2 * back)
		y1 := -math.Sqrt(left*left - x1*x1)
		x4 := (d24*d24 + back*back - right*right) / (2 * back)
		y4 := -math.Sqrt(d24*d24 - x4*x4)
		if front := math.Hypot(x4-x1, y4-y1); math.Abs(front-value(4, 1)) > 0.35 {
			t.Errorf("%s: the printed sides and diagonals close with %.2f, printed is %.1f", c.name, front, value(4, 1))
		}
	}
	if tried < 4 {
		t.Fatalf("only %d quadrilaterals", tried)
	}
}

// Sides are those of the solid that is built, taken from its level section just
// below the eased arris.
func TestPrintedSidesAreThoseOfTheSolid(t *testing.T) {
	for i, c := range slabCases {
		b := slabBuild(t, i, 1480, model.Show{})
		p := b.Design.Parts[0]
		if p.Slab.Front().Waney || strings.Contains(c.name, "holes") {
			continue // the corners there are not those of the section
		}
		m := newMaker(b)
		printed := numbers(t, slabSheets(m)[0].sheet, "top-face-dimensions")
		loop := p.Bodies[0].Solid.At(p.Slab.Top - 3).Loops()[0]
		for k, a := range loop {
			side := float64(loop[(k+1)%len(loop)].Sub(a).Len())
			found := false
			for _, v := range printed {
				found = found || math.Abs(v-side) <= 0.0501
			}
			if !found {
				t.Errorf("%s: a side of the solid of %.2f is not printed: %v", c.name, side, printed)
			}
		}
	}
}

// The natural edge is given at every measured station: its distance from B and
// the width there, which is the depth and the measured excess.
func TestStationsOfNaturalEdgeArePrinted(t *testing.T) {
	b := slabBuild(t, caseOf("natural front"), 1480, model.Show{})
	m := newMaker(b)
	slab := b.Design.Parts[0].Slab
	printed := texts(slabSheets(m)[0].sheet.Items)
	start := slab.Front().End.X
	for _, s := range wild[1:4] {
		depth := -slab.Front().End.Y - slab.Front().Start.Y
		if abs(slab.Front().End.Y-slab.Front().Start.Y) > 0.01 {
			t.Fatal("the front is not parallel to the back")
		}
		for _, want := range []unit.Length{start + s.Along, depth/2 + s.Top} {
			if !anyStarts(printed, m.length(want)) {
				t.Errorf("station %v: %s is not printed", s, m.length(want))
			}
		}
	}
	if !anyStarts(printed, "do not trim") {
		t.Error("nothing says that the natural edge is not to be trimmed")
	}
}

// Stations that lie closer on paper than a width is written stand in a table:
// the view keeps its scale, and the narrowest and the widest place.
func TestCloseStationsStandInATable(t *testing.T) {
	b := slabBuild(t, caseOf("natural front"), 4400, model.Show{Paper: "A4"})
	m := newMaker(b)
	pages := slabSheets(m)
	start := b.Design.Parts[0].Slab.Front().End.X
	var table []string
	for _, p := range pages {
		if g, ok := group(p.sheet.Items, "stations-1"); ok {
			table = texts(g.Items)
		}
	}
	dims, _ := group(pages[0].sheet.Items, "top-face-dimensions")
	view := texts(dims.Items)
	for _, s := range wild[1:] {
		x := m.length(start + s.Along)
		if !slices.Contains(table, x) {
			t.Errorf("station at %s is not in the table: %q", x, table)
		}
		if slices.Contains(view, x) {
			t.Errorf("station at %s is dimensioned in the view, too", x)
		}
	}
	for _, x := range []string{" min", " max"} {
		if anyHolds(table, x) != anyHolds(view, x) {
			t.Errorf("table and view differ about the %s width: %q", x, table)
		}
	}
}

// Every hole and every turn of a groove is printed with its distances from A
// and B, and every size of a hole.
func TestAllWorkIsPrinted(t *testing.T) {
	for i, c := range slabCases {
		b := slabBuild(t, i, 1480, model.Show{})
		m := newMaker(b)
		var printed []string
		for _, p := range slabSheets(m) {
			printed = append(printed, texts(p.sheet.Items)...)
		}
		want := func(what string, values ...unit.Length) {
			for _, v := range values {
				if s := m.length(v); !anyHolds(printed, s) {
					t.Errorf("%s: %s: %s is not printed", c.name, what, s)
				}
			}
		}
		for _, f := range b.Design.Parts[0].Slab.Features {
			switch f.Kind {
			case model.Through:
				want(f.Name, f.At.X, -f.At.Y, f.Dia)
			case model.Pilot:
				want(f.Name, f.At.X, -f.At.Y, f.Dia, f.Depth)
			case model.Bore:
				want(f.Name, f.At.X, f.Height, f.Dia, f.Depth)
			case model.Groove:
				for _, p := range f.Path {
					want(f.Name, p.X, -p.Y)
				}
				want(f.Name, f.Dia, f.Depth)
			default:
				lo, hi := f.Outline.Bounds()
				want(f.Name, lo.X, hi.X, -lo.Y)
				if f.Kind == model.Pocket {
					want(f.Name, f.Depth, -hi.Y)
				}
			}
		}
	}
}

// A page is split rather than drawn smaller: a long worktop with a worked
// underside takes two pages at 1:10, a small one shares a page.
func TestPagesAreSplitForScale(t *testing.T) {
	for _, c := range []struct {
		name  string
		wide  unit.Length
		scale string
		pages int
	}{{"on angles", 2950, "1:10", 2}, {"shelf on rods", 1480, "1:5", 1}, {"small piece", 1480, "1:1", 1}} {
		m := newMaker(slabBuild(t, caseOf(c.name), c.wide, model.Show{}))
		pages := slabSheets(m)
		if len(pages) != c.pages || pages[0].sheet.Scale != c.scale {
			t.Errorf("%s: %d pages at %s, want %d at %s", c.name, len(pages), pages[0].sheet.Scale, c.pages, c.scale)
		}
	}
}

// Units and decimal sign of the job reach every figure.
func TestSlabSheetsFollowTheUnits(t *testing.T) {
	m := newMaker(slabBuild(t, caseOf("natural front"), 1480, model.Show{Unit: "cm", Decimal: ","}))
	for _, s := range texts(slabSheets(m)[0].sheet.Items) {
		if v := strings.Trim(s, "()"); strings.Contains(v, ".") && strings.IndexFunc(v, func(r rune) bool { return (r < '0' || r > '9') && r != '.' }) < 0 {
			t.Errorf("%q has a decimal point", s)
		}
	}
}

// Equal slabs share their sheets.
func TestEqualSlabsShareSheets(t *testing.T) {
	b := slabBuild(t, caseOf("small piece"), 1480, model.Show{})
	twin := *b.Design.Parts[0]
	twin.ID = "twin"
	b.Design.Parts = append(b.Design.Parts, &twin)
	pages := slabSheets(newMaker(b))
	if len(pages) != 1 || !strings.Contains(pages[0].sheet.Title, "make 2") {
		t.Errorf("%d pages, title %q", len(pages), pages[0].sheet.Title)
	}
}

// numbers gives the values that a group prints, without their tolerances.
func numbers(t *testing.T, s drawing.Sheet, id string) []float64 {
	t.Helper()
	g, ok := group(s.Items, id)
	if !ok {
		t.Fatalf("sheet %s has no group %s", s.Name, id)
	}
	var out []float64
	for _, text := range texts(g.Items) {
		first, _, _ := strings.Cut(strings.Trim(text, "()"), " ")
		if v, err := strconv.ParseFloat(first, 64); err == nil {
			out = append(out, v)
		}
	}
	return out
}

func anyStarts(list []string, with string) bool {
	for _, s := range list {
		if strings.HasPrefix(s, with) {
			return true
		}
	}
	return false
}

// anyHolds tells whether a text holds a number as a word of its own.
func anyHolds(list []string, number string) bool {
	for _, s := range list {
		for _, word := range strings.FieldsFunc(s, func(r rune) bool { return !(r >= '0' && r <= '9' || r == '.' || r == '-') }) {
			if word == number {
				return true
			}
		}
	}
	return false
}

func BenchmarkSlabSheets(b *testing.B) {
	m := newMaker(slabBuild(b, caseOf("straight front, holes and grooves"), 1480, model.Show{}))
	pages := 0
	for b.Loop() {
		pages += len(slabSheets(m))
	}
	b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(pages), "ms/sheet")
}

// The slab sheets tell the gaps that their sizes leave, with the spread that the
// survey gives them, as the fit has them.
func TestSlabSheetsTellTheirGaps(t *testing.T) {
	b := roomBuild(t, "alcove", "A3", nil)
	f, err := b.Design.FitOf("worktop")
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, pg := range slabSheets(newMaker(b)) {
		all = append(all, textsOf(pg.sheet.Items)...)
	}
	text := strings.Join(all, " ")
	for _, w := range f.Ways {
		for _, g := range w.Tightest {
			if g.Gap.SD <= 0 {
				t.Errorf("the gap to %s has no spread", g.To)
			}
			if want := fmt.Sprintf("(sd %.1f) to %s", float64(g.Gap.SD), g.To); !strings.Contains(text, want) {
				t.Errorf("no sheet says %q", want)
			}
		}
	}
}
