package sheet

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/job"
	"slabwright/model/report"
	"slabwright/model/stock"
	"slabwright/model/survey"
	"slabwright/presets"
)

// ofPreset builds a preset from its own job file.
func ofPreset(t testing.TB, name string) report.Build {
	t.Helper()
	file := filepath.Join("..", "..", "presets", name, "job.yaml")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	j, mistakes := job.Read(file, data, presets.All())
	for _, m := range mistakes {
		t.Fatal(m)
	}
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(presets.All(), func(p model.Preset) bool { return p.Name == j.Preset })
	d := presets.All()[i].Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
	d.Finish()
	return report.Build{Job: j, Room: r, Design: d}
}

// templateBuilds are the presets and the slabs that ask much of their sheets.
func templateBuilds(t testing.TB) map[string]report.Build {
	out := map[string]report.Build{}
	for _, p := range presets.All() {
		out[p.Name] = ofPreset(t, p.Name)
	}
	for i, c := range slabCases {
		out[c.name] = slabBuild(t, i, 1500, model.Show{})
	}
	return out
}

// printedTemplates gives the sheets of templates as they are printed.
func printedTemplates(b report.Build, stamp string) []drawing.Sheet {
	m := newMaker(b)
	var out []drawing.Sheet
	pages := templateSheets(m)
	for i, p := range pages {
		s := p.sheet
		s.Number, s.Of, s.Stamp = i+1, len(pages), stamp
		finish := drawing.Finish
		if p.finish != nil {
			finish = p.finish
		}
		out = append(out, finish(s, m.block(p.block, i+1)))
	}
	return out
}

// Sheets of templates go through a home printer, which is blind for the last
// 5 to 10 mm, and everything on them can be read; every tile has its name, and
// every cross the name of its side.
func TestTemplatesCanBePrintedAndRead(t *testing.T) {
	for name, b := range templateBuilds(t) {
		set, _ := newMaker(b).templates()
		stamps := []string{""}
		if name == "studio" {
			stamps = append(stamps, "NOT FOR THE SHOP: a check fails")
		}
		for _, stamp := range stamps {
			sheets := printedTemplates(b, stamp)
			if len(sheets) < 2 {
				t.Errorf("%s has no templates", name)
				continue
			}
			for _, s := range sheets {
				if err := drawing.Sound(s); err != nil {
					t.Error(err)
				}
				for _, c := range drawing.Overlaps(s) {
					t.Errorf("%s, %s: %s", name, s.Name, c)
				}
				tiled := strings.HasPrefix(s.Name, "template-t")
				if edge := s.Size.Paper().Grow(-10); tiled && !edge.Holds(drawing.Bounds(s.Items)) {
					t.Errorf("%s, %s: %v is printed, %v can be", name, s.Name, drawing.Bounds(s.Items), edge)
				}
				if stamp != "" && tiled && !slices.Contains(texts(s.Items), stamp) {
					t.Errorf("%s, %s: not stamped", name, s.Name)
				}
			}
			for _, tm := range set.list {
				for _, tl := range tm.tiles {
					named(t, name, sheets, tm, tl)
				}
			}
		}
	}
}

// Every figure and word of a template is on at least one of its tiles.
func TestNoWordOfATemplateIsLost(t *testing.T) {
	for name, b := range templateBuilds(t) {
		m := newMaker(b)
		set, _ := m.templates()
		for _, tm := range set.list {
			var found []string
			for i := range tm.tiles {
				found = append(found, texts(tm.draw(m, &tm.tiles[i]).Items)...)
			}
			for _, l := range tm.labels {
				for _, line := range l.lines {
					if !slices.Contains(found, line) {
						t.Errorf("%s, %s: %q is on no tile", name, tm.name, line)
					}
				}
			}
		}
	}
}

// named looks for a tile on its sheet and for the names on it.
func named(t *testing.T, name string, sheets []drawing.Sheet, tm *template, tl tile) {
	t.Helper()
	id := fmt.Sprintf("tile-%d-%s", tm.number, stem(tl.name))
	for _, s := range sheets {
		if s.Name != fmt.Sprintf("template-t%d", tl.sheet) {
			continue
		}
		g, ok := group(s.Items, id)
		if !ok {
			t.Errorf("%s: %s is not on %s", name, id, s.Name)
			return
		}
		found := texts(g.Items)
		if !anyStarts(found, fmt.Sprintf("%d·%s", tm.number, tl.name)) {
			t.Errorf("%s, %s: %s does not say its name", name, s.Name, id)
		}
		for _, j := range tl.joints {
			n := 0
			for _, s := range found {
				if s == tl.name+"-"+j.side {
					n++
				}
			}
			if n != len(j.crosses) {
				t.Errorf("%s, %s: %d of %d crosses are named %s-%s", name, s.Name, n, len(j.crosses), tl.name, j.side)
			}
		}
		return
	}
	t.Errorf("%s: there is no sheet T%d", name, tl.sheet)
}

// Laid together by their crosses, tiles show one and the same drawing: every
// cross of a tile falls on a cross of its neighbour, and what both show of the
// template falls together.
func TestTilesLieTogether(t *testing.T) {
	for name, b := range templateBuilds(t) {
		m := newMaker(b)
		set, _ := m.templates()
		for _, tm := range set.list {
			rings := map[string][]geom.Vec{}
			for i := range tm.tiles {
				for _, it := range tm.draw(m, &tm.tiles[i]).Items {
					if c, ok := it.(drawing.Circle); ok && c.Radius == crossSize/4 {
						rings[tm.tiles[i].name] = append(rings[tm.tiles[i].name], c.Centre)
					}
				}
			}
			for _, tl := range tm.tiles {
				k := 0
				for _, j := range tl.joints {
					mine := rings[tl.name][k : k+2]
					k += 2
					other := slices.IndexFunc(tm.tiles, func(o tile) bool { return o.name == j.to })
					at := 0
					for _, o := range tm.tiles[other].joints {
						if o.to == tl.name {
							break
						}
						at += 2
					}
					his := rings[j.to][at : at+2]
					if d := mine[1].Sub(mine[0]).Sub(his[1].Sub(his[0])).Len(); d > 0.001 {
						t.Errorf("%s, template %d: crosses of %s and %s miss each other by %v", name, tm.number, tl.name, j.to, d)
					}
					by := his[0].Sub(mine[0]).Sub(tm.tiles[other].place.Min.Sub(tm.tiles[other].window.Min)).Add(tl.place.Min.Sub(tl.window.Min))
					if by.Len() > 0.001 {
						t.Errorf("%s, template %d: laid on %s, the lines of %s are off by %v", name, tm.number, tl.name, j.to, by.Len())
					}
				}
			}
		}
	}
}

// The walls of a corner template stand at the angle of the room's corner, which
// is worked out here from the corners' coordinates alone.
func TestCornerTemplatesHaveTheAngleOfTheRoom(t *testing.T) {
	n := 0
	for name, b := range templateBuilds(t) {
		m := newMaker(b)
		set, _ := m.templates()
		for _, tm := range set.list {
			i := strings.Index(tm.name, ", corner ")
			if i < 0 {
				continue
			}
			n++
			want := inside(t, b.Room, tm.name[i+len(", corner "):])
			chords, faces := straight(tm, drawing.LongDashDot), straight(tm, drawing.Solid)
			if len(chords) == 1 { // beside a bowed wall, a straight one
				slices.SortFunc(faces, func(a, b geom.Vec) int {
					return cmp.Compare(math.Abs(b.Cross(chords[0])), math.Abs(a.Cross(chords[0])))
				})
			}
			dirs := append(chords, faces...)
			if len(dirs) < 2 {
				t.Errorf("%s, %s: %d straight walls", name, tm.name, len(dirs))
				continue
			}
			got := math.Asin(math.Min(1, math.Abs(dirs[0].Cross(dirs[1])))) * 180 / math.Pi
			if off := math.Abs(got - math.Min(want, 180-want)); off > 0.05 {
				t.Errorf("%s, %s: the walls stand at %.3f°, the room says %.3f°", name, tm.name, got, want)
			}
		}
	}
	if n < 8 {
		t.Errorf("only %d corners tried", n)
	}
}

// straight gives the directions of the walls of a corner template: its heavy
// solid lines, or the dash-dotted ones that stand for bowed walls.
func straight(tm *template, dash drawing.Dash) []geom.Vec {
	var out []geom.Vec
	for _, it := range tm.lines {
		l, ok := it.(drawing.Polyline)
		if ok && len(l.Points) == 2 && l.Pen.Dash == dash && (dash != drawing.Solid || l.Pen.Width == 0.5) {
			out = append(out, l.Points[1].Sub(l.Points[0]).Unit())
		}
	}
	return out
}

// inside is the angle inside a room at a corner, in degrees.
func inside(t *testing.T, r *model.Room, name string) float64 {
	t.Helper()
	i := slices.IndexFunc(r.Corners, func(c model.Corner) bool { return c.Name == name })
	k := len(r.Corners)
	a, c, b := r.Corners[(i+k-1)%k].At, r.Corners[i].At, r.Corners[(i+1)%k].At
	u, v := a.Sub(c), b.Sub(c)
	return math.Abs(math.Atan2(u.Cross(v), u.Dot(v))) * 180 / math.Pi
}

// The studio's templates fit in a dozen sheets. Each rod of its long shelf is
// figured from the right wall: by the places of the holes in the walls, that is
// its distance from the corner of the back and the right wall.
func TestStudioTemplates(t *testing.T) {
	b := ofPreset(t, "studio")
	sheets := printedTemplates(b, "")
	if len(sheets) > 12 {
		t.Errorf("%d sheets", len(sheets))
	}
	var all []string
	for _, s := range sheets {
		all = append(all, texts(s.Items)...)
	}
	for _, want := range []string{"corner C", "corner F", "cut along the face of wall right;", "W1 Ø11"} {
		if !slices.Contains(all, want) {
			t.Errorf("%q is on no sheet", want)
		}
	}
	right, rods := b.Room.Wall("right"), 0
	for _, p := range b.Design.Parts {
		if p.Rod == nil || p.Rod.Shelf != "long shelf" {
			continue
		}
		rods++
		l := p.Rod.Wall.LineAt(p.Rod.Height)
		hole := l.P.Add(l.D.Unit().Mul(float64(p.Rod.At)))
		corner, _ := right.Previous().LineAt(p.Rod.Height).Meet(right.LineAt(p.Rod.Height))
		off := float64(corner.Sub(hole).Len())
		if !slices.ContainsFunc(all, func(s string) bool {
			v, err := strconv.ParseFloat(s, 64)
			return err == nil && math.Abs(v-off) < 0.15
		}) {
			t.Errorf("%s, %.1f from the corner, is figured nowhere", p.ID, off)
		}
	}
	if rods < 4 {
		t.Errorf("%d rods", rods)
	}
}

// A wall of 1500 bulges by 4 in the middle; a slab keeps 5 from the bulge and 3
// from square side walls. The gap is 9 at the ends, 5 in the middle, and between
// them a parabola: at 300 from the slab's end, 303 along the wall, it is
// 9 - 16 · 0.202 · 0.798 = 6.42, at 700 it is 9 - 16 · 0.4687 · 0.5313 = 5.02.
func TestScribeFigures(t *testing.T) {
	at := map[string]geom.Vec{"A": geom.V(0, -800), "B": geom.V(0, 0), "C": geom.V(1500, 0), "D": geom.V(1500, -800)}
	plan := model.RoomPlan{At: 750, Walls: []model.WallPlan{
		{Name: "left", From: "A", To: "B", Make: model.Brick},
		{Name: "back", From: "B", To: "C", Make: model.Brick, Bow: 4},
		{Name: "right", From: "C", To: "D", Make: model.Brick},
	}}
	names := []string{"A", "B", "C", "D"}
	for i, n := range names {
		plan.Corners = append(plan.Corners, model.CornerPlan{Name: n})
		for _, o := range names[:i] {
			plan.Readings = append(plan.Readings, survey.Reading{ID: o + n, Points: []survey.Point{survey.Point(o), survey.Point(n)},
				Length: at[o].Sub(at[n]).Len(), SD: 0.01})
		}
	}
	r, err := model.NewRoom(plan)
	if err != nil {
		t.Fatal(err)
	}
	d := model.NewDesign("trial", r)
	d.Add("top", model.Slab(stock.Oak, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(3, 5).Depth(600).SurfaceAt(750))
	d.Finish()
	set, _ := newMaker(report.Build{Room: r, Design: d}).templates()
	if len(set.list) != 1 { // square corners need none
		t.Fatalf("%d templates, want the strip alone", len(set.list))
	}
	var got []string
	for _, l := range set.list[0].labels {
		got = append(got, l.lines[0])
	}
	for _, want := range []string{"0: 9", "300: 6.4", "700: 5", "1494: 9"} {
		if !slices.Contains(got, want) {
			t.Errorf("%q is not among %q", want, got)
		}
	}
	if len(set.without) != 2 || !anyStarts(set.without, "Corner B of top: square within 1") {
		t.Errorf("of the square corners is said: %q", set.without)
	}
}

// The figures of a cut-out are those that describe it: 420 from the left end,
// 70 wide, from 1 behind the back edge to 79 before it.
func TestCutOutFigures(t *testing.T) {
	sheets := printedTemplates(slabBuild(t, caseOf("straight front, holes and grooves"), 1500, model.Show{}), "")
	var all []string
	for _, s := range sheets {
		all = append(all, texts(s.Items)...)
	}
	for _, want := range []string{"420 from the left", "490", "79 from the edge", "0"} {
		if !slices.Contains(all, want) {
			t.Errorf("%q is on no sheet", want)
		}
	}
}

// A bar unfolds so that its printed side is the outside: the direction along
// the bar, then across the paper, then out of the steel make a right-handed
// system on both legs, hanging or standing.
func TestBarsUnfoldToTheOutside(t *testing.T) {
	b := slabBuild(t, caseOf("on angles"), 1500, model.Show{})
	p := b.Design.Parts[slices.IndexFunc(b.Design.Parts, func(p *model.Part) bool { return p.Angle != nil && len(p.Angle.Holes) > 1 })]
	x := geom.Vec3{X: 1}
	for _, up := range []bool{false, true} {
		bar := *p
		a := *p.Angle
		a.LegUp, bar.Angle = up, &a
		tm := newMaker(b).angleTemplate(&bar)
		for _, h := range a.Holes {
			place := slices.IndexFunc(tm.labels, func(l label) bool { return strings.HasPrefix(l.lines[0], h.Name+" ") })
			toToe := geom.Vec3{Y: -1} // in the bar's own axes: into the room
			out := geom.Vec3{Z: 1}
			if up {
				out.Z = -1
			}
			if h.Leg == model.WallLeg {
				toToe, out = geom.Vec3{Z: -1}, geom.Vec3{Y: 1}
				if up {
					toToe.Z = 1
				}
			}
			y := tm.labels[place].at.Y // from the heel, which is 0, to the hole
			across := toToe.Mul(float64(y) / math.Abs(float64(y)))
			if x.Cross(across).Dot(out) < 0.99 || math.Abs(math.Abs(float64(y))-float64(h.FromHeel)) > 1e-9 {
				t.Errorf("leg up %v: %s in the %s is at %v of the paper", up, h.Name, h.Leg, y)
			}
		}
	}
}

// What has no template is said with its reason.
func TestWhatHasNoTemplate(t *testing.T) {
	for name, want := range map[string]string{
		"studio":         "Angles longer than",
		"two back edges": "Corner C of top, 176°: too flat",
	} {
		set, _ := newMaker(templateBuilds(t)[name]).templates()
		if !anyStarts(set.without, want) {
			t.Errorf("%s: %q is not among %q", name, want, set.without)
		}
	}
}

// A design without slabs in corners, rods or short angles has no templates.
func TestNothingToTrace(t *testing.T) {
	r := crookedRoom(t, 1500)
	d := model.NewDesign("empty", r)
	d.Finish()
	if pages := templateSheets(newMaker(report.Build{Room: r, Design: d})); len(pages) != 0 {
		t.Errorf("%d pages", len(pages))
	}
}

func BenchmarkTemplates(b *testing.B) {
	build := ofPreset(b, "studio")
	for b.Loop() {
		if len(templateSheets(newMaker(build))) == 0 {
			b.Fatal("no sheets")
		}
	}
}
