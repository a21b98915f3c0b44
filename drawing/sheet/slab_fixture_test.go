package sheet

import (
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/report"
	"slabwright/model/stock"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// crookedRoom is an open room of four walls that is square nowhere; its back
// wall has a bend of 176 degrees.
func crookedRoom(t testing.TB, wide unit.Length) *model.Room {
	t.Helper()
	spots := []struct {
		name string
		at   geom.Vec
	}{
		{"A", geom.V(-14, -1150)}, {"B", geom.V(0, 0)}, {"C", geom.V(0.6*wide, 0)},
		{"D", geom.V(wide, -0.028*wide)}, {"E", geom.V(wide+23, -1210)},
	}
	plan := model.RoomPlan{At: 750, Walls: []model.WallPlan{
		{Name: "left", From: "A", To: "B", Make: model.Brick},
		{Name: "back", From: "B", To: "C", Make: model.Brick},
		{Name: "bend", From: "C", To: "D", Make: model.Brick},
		{Name: "right", From: "D", To: "E", Make: model.Brick},
	}}
	for i, s := range spots {
		plan.Corners = append(plan.Corners, model.CornerPlan{Name: s.name})
		for _, q := range spots[:i] {
			plan.Readings = append(plan.Readings, survey.Reading{ID: q.name + s.name,
				Points: []survey.Point{survey.Point(q.name), survey.Point(s.name)}, Length: q.at.Sub(s.at).Len(), SD: 0.01})
		}
	}
	r, err := model.NewRoom(plan)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// wild is a natural edge in whose line there is something to see.
var wild = []model.NaturalStation{{Along: 0, Top: 30, Under: 41}, {Along: 260, Top: 12, Under: 25}, {Along: 520, Top: 0, Under: 9}, {Along: 900, Top: 44, Under: 50}, {Along: 1320, Top: 21, Under: 30}, {Along: 1700, Top: 35, Under: 44}}

// slabCases are slabs that ask much of their sheets.
var slabCases = []struct {
	name string
	make func(r *model.Room, d *model.Design)
}{
	{"natural front", func(r *model.Room, d *model.Design) {
		d.Add("top", model.Slab(stock.Ash, 45).Between(r.Wall("left"), r.Wall("right")).Against(r.Straight("B", "D")).
			Gaps(4, 5).Depth(620).Front(model.NaturalEdge(wild...)).SurfaceAt(750).Eased(2))
	}},
	{"straight front, holes and grooves", func(r *model.Room, d *model.Design) {
		d.Add("top", model.Slab(stock.Oak, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Straight("B", "D")).
			Gaps(3, 5).Depth(560).SurfaceAt(750).Eased(2).
			Hole("left hole", model.At{X: 220, Back: 90}, 60).Serving("cables").
			Hole("right hole", model.At{X: 1250, Back: 95}, 60).Serving("cables").
			Hole("lamp", model.At{X: 700, Back: 300}, 35).
			CutOut("pipe", model.At{X: 420, Back: -1}, 70, 80).
			Pocket("tray", model.TopFace, model.At{X: 900, Back: 180}, 260, 140, 12).
			Groove("run", model.UnderFace, 20, 15, model.At{X: 220, Back: 90}, model.At{X: 1250, Back: 90}, model.At{X: 1250, Back: 400}).
			Groove("drip", model.TopFace, 8, 6, model.At{X: 120, Back: 480}, model.At{X: 1300, Back: 500}))
	}},
	{"two back edges", func(r *model.Room, d *model.Design) {
		d.Add("top", model.Slab(stock.Beech, 30).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back"), r.Wall("bend")).
			Gaps(3, 5).Depth(500).SurfaceAt(750).Eased(1))
	}},
	{"shelf on rods", func(r *model.Room, d *model.Design) {
		d.AddShelf("shelf", model.Shelf(stock.Walnut, 40).Between(r.Wall("left"), r.Wall("back").Mark(760)).Against(r.Wall("back")).
			Gaps(3, 3).Depth(220).UndersideAt(1400).Eased(2).OnRods(model.Rods{Dia: 16, InWall: 120, InShelf: 150, Pitch: 300, End: 90}).
			Groove("light", model.UnderFace, 18, 12, model.At{X: 30, Back: 190}, model.At{X: 700, Back: 190}))
	}},
	{"small piece", func(r *model.Room, d *model.Design) {
		d.Add("top", model.Slab(stock.Oak, 20).Between(r.Wall("left"), r.Wall("back").Mark(160)).Against(r.Wall("back")).
			Gaps(3, 3).Depth(90).SurfaceAt(750))
	}},
	{"sharp corner", func(r *model.Room, d *model.Design) {
		d.Add("top", model.Slab(stock.Oak, 40).Between(r.Wall("left"), r.Wall("bend").Gap(4)).Against(r.Wall("back")).
			Gaps(4, 5).Depth(300).Front(model.NaturalEdge(wild...)).SurfaceAt(750).Eased(2))
	}},
	{"natural edge not measured", func(r *model.Room, d *model.Design) {
		d.Add("top", model.Slab(stock.Oak, 45).Between(r.Wall("left"), r.Wall("right")).Against(r.Straight("B", "D")).
			Gaps(4, 5).Depth(600).Front(model.NaturalEdge()).SurfaceAt(750))
	}},
	{"on angles", func(r *model.Room, d *model.Design) {
		d.Add("top", model.Slab(stock.Oak, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Straight("B", "D")).
			Gaps(3, 5).Depth(560).SurfaceAt(750).Eased(2))
		l40, err := stock.Angle("L40x40x5")
		if err != nil {
			panic(err)
		}
		for _, wall := range []string{"back", "left", "right"} {
			d.Add("angle "+wall, model.Angle(l40).Along(r.Wall(wall)).Under("top").ClearOf(3).
				Anchored(model.Anchors{Hole: 9, Pitch: 250, End: 40}).ScrewedUp(model.Screws{Hole: 6, Slot: 8, Pitch: 90, End: 60, Pilot: 4, Into: 28}))
		}
	}},
}

// caseOf finds a case by its name.
func caseOf(name string) int {
	for i, c := range slabCases {
		if c.name == name {
			return i
		}
	}
	panic("no case " + name)
}

// slabBuild puts one of the cases into a room.
func slabBuild(t testing.TB, i int, wide unit.Length, show model.Show) report.Build {
	t.Helper()
	r := crookedRoom(t, wide)
	d := model.NewDesign("trial", r)
	slabCases[i].make(r, d)
	d.Finish()
	if len(d.Parts) == 0 || !sound(d.Parts[0]) {
		t.Fatalf("%s: there is no slab: %v", slabCases[i].name, d.Faults())
	}
	return report.Build{Job: model.Job{Title: "Trial", Show: show}, Room: r, Design: d}
}

// finished puts frame and title block round pages.
func finished(m *maker, pages []page) []drawing.Sheet {
	out := make([]drawing.Sheet, len(pages))
	for i, p := range pages {
		p.sheet.Number, p.sheet.Of = i+1, len(pages)
		out[i] = drawing.Finish(p.sheet, m.block(p.block, i+1))
	}
	return out
}

// texts gives all lettering of items.
func texts(items []drawing.Item) []string {
	var out []string
	for _, it := range items {
		switch x := it.(type) {
		case drawing.Text:
			out = append(out, x.String)
		case drawing.Group:
			out = append(out, texts(x.Items)...)
		}
	}
	return out
}

// group finds a group by its name.
func group(items []drawing.Item, id string) (drawing.Group, bool) {
	for _, it := range items {
		if g, ok := it.(drawing.Group); ok {
			if g.ID == id {
				return g, true
			}
			if in, ok := group(g.Items, id); ok {
				return in, true
			}
		}
	}
	return drawing.Group{}, false
}
