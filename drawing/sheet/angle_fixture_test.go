package sheet

import (
	"os"
	"path/filepath"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/job"
	"slabwright/model/report"
	"slabwright/model/stock"
	"slabwright/model/survey"
	"slabwright/model/unit"
	"slabwright/presets"
)

// presetBuild is a preset with its own job, on some paper.
func presetBuild(t testing.TB, p model.Preset, show model.Show) report.Build {
	t.Helper()
	return changedBuild(t, p, show, "", model.Setting{})
}

// changedBuild is the same with one parameter changed.
func changedBuild(t testing.TB, p model.Preset, show model.Show, name string, value model.Setting) report.Build {
	t.Helper()
	file := filepath.Join("..", "..", "presets", p.Name, "job.yaml")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	j, mistakes := job.Read(file, data, presets.All())
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	if name != "" {
		j.Settings = map[string]model.Setting{name: value}
	}
	d := p.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
	d.Finish()
	j.Show = show
	return report.Build{Job: j, Room: r, Design: d}
}

// straightRoom is an open room of three walls at right angles, 6 m wide, and a
// niche-like short end wall: left, back, right.
func straightRoom(t testing.TB) *model.Room {
	t.Helper()
	spots := []struct {
		name string
		at   geom.Vec
	}{{"A", geom.V(0, -900)}, {"B", geom.V(0, 0)}, {"C", geom.V(6000, 0)}, {"D", geom.V(6000, -900)}}
	plan := model.RoomPlan{At: 750, Walls: []model.WallPlan{
		{Name: "left", From: "A", To: "B", Make: model.Stud, Studs: []unit.Length{150, 550}, StudsFrom: "B"},
		{Name: "back", From: "B", To: "C", Make: model.Brick, Obstacles: []model.ObstaclePlan{
			{Name: "socket", Kind: "socket", From: "B", Start: 1000, End: 1080, Bottom: 600, Top: 680, Depth: 10, Free: 30}}},
		{Name: "right", From: "C", To: "D", Make: model.UnknownWall},
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

// madeBar is an angle made by hand, with the solid that belongs to it.
func madeBar(a *model.AnglePart) *model.Part {
	bar := geom.AngleBar{
		SeatWidth: a.Section.Leg, WallWidth: a.Section.Leg, Thickness: a.Section.Thickness, Root: a.Section.Root, Toe: a.Section.Toe,
		Length: a.Length, LegUp: a.LegUp, Start: geom.BarEnd{Plan: a.Left.Mitre}, End: geom.BarEnd{Plan: a.Right.Mitre},
	}
	for _, h := range a.Holes {
		leg := geom.SeatLeg
		if h.Leg == model.WallLeg {
			leg = geom.WallLeg
		}
		bar.Holes = append(bar.Holes, geom.BarHole{Name: h.Name, Leg: leg, X: h.X, FromHeel: h.FromHeel, Dia: h.Dia, Slot: h.Slot, Along: h.Along, SinkDia: h.Sink})
	}
	return &model.Part{Kind: model.KindAngle, Material: "steel S235", Angle: a,
		Bodies: []model.Body{{Solid: bar.Solid().Place(a.Pose()), Density: stock.Steel}}}
}

func wallHoleAt(name string, x unit.Length) model.BracketHole {
	return model.BracketHole{Name: name, Leg: model.WallLeg, X: x, FromHeel: 35, Dia: 11, For: "wall anchor"}
}

func seatHoleAt(name string, x unit.Length) model.BracketHole {
	return model.BracketHole{Name: name, Leg: model.SeatLeg, X: x, FromHeel: 40, Dia: 7, Slot: 6, Along: true, For: "screw into top"}
}

// awkwardBars are angles that ask much of their sheets: long, tiny, leg up,
// mitred, countersunk, without holes, many holes, mirrored.
func awkwardBars(t testing.TB) report.Build {
	t.Helper()
	r := straightRoom(t)
	d := model.NewDesign("trial", r)
	back := r.Wall("back")
	add := func(name string, change func(a *model.AnglePart)) {
		a := &model.AnglePart{Section: stock.L60x60x6, Mounted: model.Mounted{Wall: back, Start: 20, Length: 700, Seat: 710, Under: "top",
			Holes: []model.BracketHole{wallHoleAt("W1", 50), wallHoleAt("W2", 400), seatHoleAt("S1", 90), seatHoleAt("S2", 640)}}}
		change(a)
		p := madeBar(a)
		p.ID = name
		if err := p.Bodies[0].Solid.Err(); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		d.Parts = append(d.Parts, p)
	}
	add("plain", func(*model.AnglePart) {})
	add("mirrored", func(a *model.AnglePart) {
		for i := range a.Holes {
			a.Holes[i].X = a.Length - a.Holes[i].X
		}
		a.Start = 5000
	})
	add("leg up", func(a *model.AnglePart) { a.LegUp, a.Length = true, 720 })
	add("long", func(a *model.AnglePart) {
		a.Length, a.Holes = 5900, nil
		for i := range 21 {
			a.Holes = append(a.Holes, wallHoleAt("W"+string(rune('A'+i)), 50+290*unit.Length(i)))
		}
		for i := range 20 {
			a.Holes = append(a.Holes, seatHoleAt("S"+string(rune('A'+i)), 190+290*unit.Length(i)))
		}
	})
	add("tiny", func(a *model.AnglePart) {
		a.Length, a.Holes = 122, []model.BracketHole{wallHoleAt("W1", 61), seatHoleAt("S1", 61)}
	})
	add("bare", func(a *model.AnglePart) { a.Length, a.Holes = 300, nil })
	add("mitred", func(a *model.AnglePart) {
		a.Length, a.Left.Mitre, a.Right.Mitre = 800, 12*unit.Degree, -20*unit.Degree
	})
	add("two lines", func(a *model.AnglePart) {
		a.Length = 690
		a.Holes = append(a.Holes, model.BracketHole{Name: "W3", Leg: model.WallLeg, X: 300, FromHeel: 28, Dia: 9, Sink: 16, For: "spare"})
	})
	add("crowded", func(a *model.AnglePart) {
		a.Length, a.Section = 660, stock.L100x100x10
		for i := range 6 {
			a.Holes = append(a.Holes, model.BracketHole{Name: "X" + string(rune('1'+i)), Leg: model.WallLeg, X: 200 + 14*unit.Length(i), FromHeel: 55, Dia: 6, For: "plate"})
		}
	})
	d.Finish()
	return report.Build{Job: model.Job{Title: "Trial"}, Room: r, Design: d}
}

// lettering gives all texts of items.
func lettering(items []drawing.Item) []drawing.Text {
	var out []drawing.Text
	for _, it := range items {
		switch x := it.(type) {
		case drawing.Text:
			out = append(out, x)
		case drawing.Group:
			out = append(out, lettering(x.Items)...)
		}
	}
	return out
}

// groupOf finds a group by its id.
func groupOf(items []drawing.Item, id string) (drawing.Group, bool) {
	for _, it := range items {
		if g, ok := it.(drawing.Group); ok {
			if g.ID == id {
				return g, true
			}
			if in, ok := groupOf(g.Items, id); ok {
				return in, true
			}
		}
	}
	return drawing.Group{}, false
}

// says tells whether one of the texts is just this.
func says(list []drawing.Text, want string) bool {
	for _, x := range list {
		if x.String == want {
			return true
		}
	}
	return false
}

// itemsOf are the items of all pages.
func itemsOf(pages []page) []drawing.Item {
	var out []drawing.Item
	for _, p := range pages {
		out = append(out, p.sheet.Items...)
	}
	return out
}

// readable wants pages without a text that cannot be read, all within the frame.
func readable(t *testing.T, m *maker, pages []page) {
	t.Helper()
	for i, p := range pages {
		p.sheet.Number, p.sheet.Of = i+1, len(pages)
		s := drawing.Finish(p.sheet, m.block(p.block, i+1))
		if err := drawing.Sound(s); err != nil {
			t.Error(err)
		}
		var own drawing.Sheet // the gauge of lying A4 sheets is put in place by Set
		own = s
		own.Items = p.sheet.Items
		for _, c := range drawing.Overlaps(own) {
			t.Errorf("sheet %s: %s", p.sheet.Name, c)
		}
		if b := drawing.Bounds(p.sheet.Items); !b.Empty() && !p.sheet.Size.Space().Holds(b) {
			t.Errorf("sheet %s leaves its frame: %v", p.sheet.Name, b)
		}
		block := p.sheet.Size.BlockBox()
		for _, x := range lettering(p.sheet.Items) {
			q := x.Quad()
			if block.Meets(around(q[:])) {
				t.Errorf("sheet %s: %q lies on the title block", p.sheet.Name, x.String)
			}
		}
	}
}
