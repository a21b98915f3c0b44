package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/report"
	"slabwright/model/stock"
	"slabwright/model/survey"
	"slabwright/model/unit"
	"slabwright/presets"
)

func TestOrderSizesCanBeRead(t *testing.T) {
	for _, paper := range []string{"A3", "A4", "A2"} {
		for name, b := range drillBuilds(t, paper) {
			t.Run(name+" "+paper, func(t *testing.T) {
				m := newMaker(b)
				readable(t, m, fitSheets(m))
			})
		}
	}
	for _, show := range []model.Show{{Paper: "A4", Unit: "in"}, {Paper: "A3", Unit: "cm", Decimal: ","}} {
		m := newMaker(presetBuild(t, presets.Studio, show))
		readable(t, m, fitSheets(m))
	}
}

// TestOrderSizesAreThoseOfTheFit reads the table and the curves back from the
// page: sizes, tolerance, and how often the size to order jams.
func TestOrderSizesAreThoseOfTheFit(t *testing.T) {
	m := newMaker(presetBuild(t, presets.Studio, model.Show{Paper: "A3"}))
	pages := fitSheets(m)
	if len(pages) != 1 {
		t.Fatalf("%d pages, want all slabs on one", len(pages))
	}
	var said []string
	for _, x := range lettering(pages[0].sheet.Items) {
		said = append(said, x.String)
	}
	curves := map[string]drawing.Group{}
	inGroups(pages[0].sheet.Items, func(g drawing.Group) {
		if strings.HasPrefix(g.ID, "curve-") {
			curves[g.ID] = g
		}
	})
	n := 0
	for _, p := range m.b.Design.Parts {
		if p.Slab == nil {
			continue
		}
		f, err := m.b.Design.FitOf(p.ID)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range f.Ways {
			n++
			for _, want := range []string{m.length(w.Size), m.length(w.Other), m.length(w.Order.Size) + " +0/-2", m.length(w.OrderOther()) + " +0/-2"} {
				if !slices.Contains(said, want) {
					t.Errorf("%s: %q is not on the page", p.ID, want)
				}
			}
			readCurve(t, curves["curve-"+stem(p.ID)+"-"+w.Name], w)
		}
	}
	if n != 3 || len(curves) != 3 {
		t.Errorf("%d ways, %d curves", n, len(curves))
	}
}

// readCurve measures a curve with a ruler: the axis from the figures below it,
// the height from 0 to 100.
func readCurve(t *testing.T, g drawing.Group, w model.FitWay) {
	t.Helper()
	var zero, full unit.Length
	var bold drawing.Text
	sizes := map[unit.Length]unit.Length{} // places of figures below the axis
	for _, x := range lettering(g.Items) {
		switch {
		case x.String == "0":
			zero = x.At.Y + x.Height/2
		case x.String == "100" && x.Align == drawing.Right:
			full = x.At.Y + x.Height/2
		case x.Align == drawing.Centre:
			sizes[unit.Length(value(t, x.String))] = x.At.X
			if x.Bold {
				bold = x
			}
		}
	}
	if bold.String != trimZero(w.Order.Size) {
		t.Errorf("%s: the figure in bold is %q, the order %v", g.ID, bold.String, w.Order.Size)
	}
	low, high := unit.Length(math.Inf(1)), unit.Length(math.Inf(-1))
	for s := range sizes {
		low, high = min(low, s), max(high, s)
	}
	perMM := (sizes[high] - sizes[low]) / (high - low)
	lines := 0
	for _, it := range g.Items {
		l, ok := it.(drawing.Polyline)
		if !ok || len(l.Points) != len(w.Order.Curve) {
			continue
		}
		lines++
		for i, v := range l.Points {
			q := w.Order.Curve[i]
			want := q.Jams
			if l.Pen.Dash == drawing.Dashed {
				want = q.Wide
			}
			size, share := low+(v.X-sizes[low])/perMM, float64((v.Y-zero)/(full-zero))
			if math.Abs(float64(size-q.Size)) > 0.01 || math.Abs(share-want) > 0.001 {
				t.Errorf("%s: a point at %v and %v, want %v and %v", g.ID, size, share, q.Size, want)
			}
		}
	}
	if lines != 2 {
		t.Errorf("%s: %d lines, want jams and shows", g.ID, lines)
	}
}

func trimZero(l unit.Length) string { return (unit.Style{}).Length(l) }

func inGroups(items []drawing.Item, each func(drawing.Group)) {
	for _, it := range items {
		if g, ok := it.(drawing.Group); ok {
			each(g)
			inGroups(g.Items, each)
		}
	}
}

// TestUncheckedOrderSizes: where nothing checks the readings the page gives no
// size, no chance and no curve.
func TestUncheckedOrderSizes(t *testing.T) {
	read := func(p, q survey.Point, l unit.Length) survey.Reading {
		return survey.Reading{ID: string(p + "-" + q), Points: []survey.Point{p, q}, Length: l}
	}
	plan := model.RoomPlan{At: 750, Corners: []model.CornerPlan{{Name: "A"}, {Name: "B", Bend: "in"}, {Name: "C", Bend: "in"}, {Name: "D"}},
		Walls:    []model.WallPlan{{Name: "left", From: "A", To: "B"}, {Name: "back", From: "B", To: "C"}, {Name: "right", From: "C", To: "D"}},
		Readings: []survey.Reading{read("A", "B", 800), read("B", "C", 1600), read("C", "D", 800), read("A", "D", 1601), read("A", "C", 1789)}}
	r, err := model.NewRoom(plan)
	if err != nil {
		t.Fatal(err)
	}
	d := model.NewDesign("unchecked", r)
	d.Add("top", model.Slab(stock.Ash, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(4, 4).Depth(500).SurfaceAt(750))
	d.Finish()
	m := newMaker(report.Build{Job: model.Job{Title: "Trial", Room: plan}, Room: r, Design: d})
	pages := fitSheets(m)
	readable(t, m, pages)
	var said []string
	for _, x := range lettering(pages[0].sheet.Items) {
		said = append(said, x.String)
	}
	if !slices.Contains(said, "unchecked") || !slices.Contains(said, "not yet") {
		t.Errorf("the page says %q", said)
	}
	inGroups(pages[0].sheet.Items, func(g drawing.Group) {
		if strings.HasPrefix(g.ID, "curve-") {
			t.Errorf("there is a curve %s", g.ID)
		}
	})
}

// TestNoOrderSizes: slabs that are free at an end give no page.
func TestNoOrderSizes(t *testing.T) {
	r := straightRoom(t)
	d := model.NewDesign("free", r)
	d.Add("shelf", model.Shelf(stock.Ash, 40).Between(r.Wall("back").Mark(400), r.Wall("back").Mark(1400)).Against(r.Wall("back")).Gaps(4, 4).Depth(240).UndersideAt(1400))
	d.Finish()
	if pages := fitSheets(newMaker(report.Build{Room: r, Design: d})); pages != nil {
		t.Errorf("%d pages", len(pages))
	}
}
