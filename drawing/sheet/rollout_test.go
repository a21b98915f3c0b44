package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/report"
	"slabwright/model/stock"
	"slabwright/presets"
)

// tables are roll-out tables of usual and of odd sizes.
func tables(t testing.TB, show model.Show) report.Build {
	t.Helper()
	r := straightRoom(t)
	d := model.NewDesign("trial", r)
	d.Add("top", model.Slab(stock.Oak, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(4, 5).Depth(700).SurfaceAt(750))
	d.Add("usual", model.RollOut(stock.Ash, 900, 480, 560).Parked("top", 100, 30))
	d.Add("low", model.RollOut(stock.Oak, 1800, 350, 220).Boards(20).Castors(50).Parked("top", 1200, 30))
	d.Add("tall", model.RollOut(stock.Beech, 260, 600, 690).Boards(18).Parked("top", 3200, 30))
	d.Add("usual again", model.RollOut(stock.Ash, 900, 480, 560).Parked("top", 4000, 30))
	d.Finish()
	if bad := d.Faults(); len(bad) > 0 {
		t.Fatal(bad)
	}
	return report.Build{Job: model.Job{Title: "Trial", Show: show}, Room: r, Design: d}
}

func TestRollOutSheetsCanBeRead(t *testing.T) {
	for _, paper := range []string{"A3", "A4", "A2"} {
		for _, projection := range []string{"first", "third"} {
			m := newMaker(tables(t, model.Show{Paper: paper, Projection: projection}))
			readable(t, m, rollOutSheets(m))
			studio := newMaker(presetBuild(t, presets.Studio, model.Show{Paper: paper, Projection: projection}))
			readable(t, studio, rollOutSheets(studio))
		}
	}
}

// TestBoardsMakeTheTable adds up the cut list: the boards have the volume of
// the wood and the mass of its density, and no board is thicker than wide.
func TestBoardsMakeTheTable(t *testing.T) {
	b := tables(t, model.Show{})
	m := newMaker(b)
	pages := rollOutSheets(m)
	if len(anglePages(pages, b.Design.Part("usual").Mark)) != 1 || b.Design.Part("usual").Mark != b.Design.Part("usual again").Mark {
		t.Error("equal tables do not share a sheet")
	}
	for _, p := range b.Design.Parts {
		if p.RollOut == nil {
			continue
		}
		var want float64
		for _, body := range p.Bodies {
			if !strings.HasPrefix(body.Name, "castor") {
				want += float64(body.Solid.Volume())
			}
		}
		table := m.boardTable(p, newRollOutView(m, p).boards)
		var volume float64
		boards := 0
		for _, row := range table.rows {
			n := value(t, row[1])
			l, w, thick := value(t, row[3]), value(t, row[4]), value(t, row[5])
			volume += n * l * w * thick
			boards += int(n)
			if thick > w || thick > l {
				t.Errorf("%s: a board of %v", p.ID, row)
			}
		}
		if math.Abs(volume-want) > 1e-6*want || boards != 5 {
			t.Errorf("%s: %d boards of %.0f mm3 together, want 5 of %.0f", p.ID, boards, volume, want)
		}
		text := lettering(itemsOf(anglePages(pages, p.Mark)))
		for _, row := range table.rows {
			if !says(text, row[0]) || !says(text, row[3]) {
				t.Errorf("%s: the sheet does not list board %v", p.ID, row)
			}
		}
	}
}

func value(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("%q is no number", s)
	}
	return v
}

// TestRollOutViewsStandInLine holds the three views against each other and
// against the scale (ISO 5456-2, first angle: from above below, from the left
// to the right).
func TestRollOutViewsStandInLine(t *testing.T) {
	for _, projection := range []string{"first", "third"} {
		b := tables(t, model.Show{Projection: projection})
		m := newMaker(b)
		for _, p := range b.Design.Parts[1:4] {
			pg := anglePages(rollOutSheets(m), p.Mark)[0]
			var s drawing.Scale
			if _, err := fmt.Sscanf(pg.sheet.Scale, "%d:%d", &s.Paper, &s.Real); err != nil {
				t.Fatal(err)
			}
			box := func(id string) drawing.Rect {
				g, _ := groupOf(pg.sheet.Items, id)
				var out []drawing.Item
				for _, it := range g.Items {
					if in, ok := it.(drawing.Group); ok && !strings.HasSuffix(in.ID, "-dimensions") {
						out = append(out, in)
					}
				}
				return drawing.Bounds(out)
			}
			front, side, top := box("front"), box("side"), box("top")
			r := p.RollOut
			pen := m.lines.Wide
			for _, c := range []struct {
				what      string
				got, want float64
			}{
				{"width", float64(front.Width() - pen), float64(s.Of(r.Width))},
				{"height", float64(front.Height() - pen), float64(s.Of(r.Height))},
				{"depth", float64(side.Width() - pen), float64(s.Of(r.Depth))},
				{"depth from above", float64(top.Height() - pen), float64(s.Of(r.Depth))},
				{"foot of the side", float64(side.Min.Y), float64(front.Min.Y)},
				{"left of the top", float64(top.Min.X), float64(front.Min.X)},
			} {
				if math.Abs(c.got-c.want) > 0.01 {
					t.Errorf("%s, %s angle: %s is %.2f, want %.2f", p.ID, projection, c.what, c.got, c.want)
				}
			}
			if (projection == "first") != (side.Min.X > front.Max.X) || (projection == "first") != (top.Max.Y < front.Min.Y) {
				t.Errorf("%s, %s angle: the views stand on the wrong sides", p.ID, projection)
			}
		}
	}
}

// TestRollOutSizesAreWritten wants overall sizes, thickness and castor places.
func TestRollOutSizesAreWritten(t *testing.T) {
	b := tables(t, model.Show{})
	m := newMaker(b)
	p := b.Design.Part("usual")
	text := lettering(itemsOf(anglePages(rollOutSheets(m), p.Mark)))
	// Castors of 60 mm are drawn 48 wide, 10 from the edges: middles at 34.
	for _, want := range []string{"900", "480", "560", "533", "60", "87", "27", "34", "866", "446"} {
		if !says(text, want) {
			t.Errorf("no %s on the sheet", want)
		}
	}
}
