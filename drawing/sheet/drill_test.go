package sheet

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/report"
	"slabwright/model/stock"
	"slabwright/presets"
)

// onTheWalls is a worktop on three angles, a shelf on rods and one on an angle
// with its leg up, in the straight room.
func onTheWalls(t testing.TB) report.Build {
	t.Helper()
	r := straightRoom(t)
	d := model.NewDesign("trial", r)
	d.Add("top", model.Slab(stock.Oak, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(4, 5).Depth(600).SurfaceAt(750))
	for _, w := range []string{"back", "left", "right"} {
		d.Add("angle "+w, model.Angle(stock.L60x60x6).Along(r.Wall(w)).Under("top").ClearOf(3).
			Anchored(model.Anchors{Hole: 11, Pitch: 600, End: 40}))
	}
	d.AddShelf("shelf", model.Shelf(stock.Oak, 40).Between(r.Wall("left"), r.Wall("back").Mark(900)).Against(r.Wall("back")).
		Gaps(3, 3).Depth(220).UndersideAt(1400).OnRods(model.Rods{Dia: 16, InWall: 120, InShelf: 150, Pitch: 400, End: 90}))
	d.Finish()
	if bad := d.Faults(); len(bad) > 0 {
		t.Fatal(bad)
	}
	return report.Build{Job: model.Job{Title: "Trial"}, Room: r, Design: d}
}

func drillBuilds(t testing.TB, paper string) map[string]report.Build {
	out := map[string]report.Build{}
	for _, p := range presets.All() {
		out[p.Name] = presetBuild(t, p, model.Show{Paper: paper})
	}
	trial := onTheWalls(t)
	trial.Job.Show.Paper = paper
	out["trial"] = trial
	out["six shelves"] = changedBuild(t, presets.Alcove, model.Show{Paper: paper}, "shelves", model.Setting{Number: 6})
	return out
}

func TestDrillingSheetsCanBeRead(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		for name, b := range drillBuilds(t, paper) {
			t.Run(name+" "+paper, func(t *testing.T) {
				m := newMaker(b)
				readable(t, m, drillSheets(m))
			})
		}
	}
}

// TestDrillingFollowsTheSolids finds every hole of the wall from the skins of
// the finished parts, and wants it in the table with whole millimetres.
func TestDrillingFollowsTheSolids(t *testing.T) {
	for name, b := range drillBuilds(t, "A3") {
		m := newMaker(b)
		pages := drillSheets(m)
		walls := map[string]int{}
		for _, w := range b.Room.Walls {
			rows := drillRows(wallPages(pages, w))
			walls[w.Name] = len(rows)
			right := m.countsFromRight(w)
			for _, h := range solidHoles(b.Design, w) {
				off := h.X
				if right {
					off = w.Length() - h.X
				}
				if !hasRow(rows, float64(off), float64(h.Y)) {
					t.Errorf("%s, wall %s: no row for the hole at %.1f from the corner, %.1f high, in %v", name, w.Name, float64(off), float64(h.Y), rows)
				}
				walls[w.Name]--
			}
		}
		for w, n := range walls {
			if n != 0 {
				t.Errorf("%s, wall %s: %d rows too many", name, w, n)
			}
		}
	}
}

// solidHoles gives the middles of all holes at a wall, along it and above the
// floor, from the skins of angles and cleats and the ends of rods.
func solidHoles(d *model.Design, w *model.Wall) []geom.Vec {
	var out []geom.Vec
	add := func(pts []geom.Vec3) {
		lo, hi := pts[0], pts[0]
		for _, p := range pts {
			lo = geom.Vec3{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: min(lo.Z, p.Z)}
			hi = geom.Vec3{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: max(hi.Z, p.Z)}
		}
		mid := lo.Add(hi).Mul(0.5)
		out = append(out, geom.V(w.Chord().Along(mid.Flat()), mid.Z))
	}
	for _, p := range d.Parts {
		surfaces := map[string][]geom.Vec3{}
		for _, f := range p.Bodies[0].Solid.Faces() {
			surfaces[f.Surface] = append(surfaces[f.Surface], f.Loops[0]...)
		}
		if p.Rod != nil && p.Rod.Wall == w {
			add(surfaces["end 1"])
		}
		if b := p.Bracket(); b != nil && b.On().Wall == w {
			name := map[bool]string{true: "anchor "}[p.Cleat != nil]
			for _, h := range b.On().In(model.WallLeg) {
				add(surfaces[name+h.Name])
			}
		}
	}
	return out
}

func wallPages(pages []page, w *model.Wall) []page {
	var out []page
	for _, p := range pages {
		if title, _, _ := strings.Cut(p.sheet.Title, ":"); title == "Drilling, wall "+w.Name {
			out = append(out, p)
		}
	}
	return out
}

// drillRow is what a table says of a hole.
type drillRow struct{ off, height, line float64 }

func drillRows(pages []page) []drillRow {
	var out []drillRow
	for i := 1; i < 6; i++ {
		g, ok := groupOf(itemsOf(pages), fmt.Sprintf("wall-holes-%d", i))
		if !ok {
			continue
		}
		var cells []string
		for _, x := range lettering(g.Items) {
			if !x.Bold {
				cells = append(cells, x.String)
			}
		}
		for k := range cells {
			if !drillName.MatchString(cells[k]) || k+3 >= len(cells) {
				continue
			}
			var r drillRow
			if _, err := fmt.Sscan(strings.Join(cells[k+1:k+4], " "), &r.off, &r.height, &r.line); err == nil {
				out = append(out, r)
			}
		}
	}
	return out
}

var drillName = regexp.MustCompile(`^[a-z]+[0-9]+$`)

func hasRow(rows []drillRow, off, height float64) bool {
	for _, r := range rows {
		if math.Abs(r.off-off) <= 0.55 && math.Abs(r.height-height) <= 0.55 && math.Abs(r.line-(height-1000)) <= 0.55 {
			return true
		}
	}
	return false
}

// TestDrillingStartsAtARealCorner wants sizes from a corner of the room, never
// from the open end of a wall, and from the nearer corner where all holes are.
func TestDrillingStartsAtARealCorner(t *testing.T) {
	b := onTheWalls(t)
	m := newMaker(b)
	for wall, corner := range map[string]string{"left": "B", "back": "B", "right": "C"} {
		w := b.Room.Wall(wall)
		text := lettering(itemsOf(wallPages(drillSheets(m), w)))
		if !says(text, "from "+corner) || !says(text, "0 "+corner) || !says(text, corner) {
			t.Errorf("wall %s: sizes do not start at corner %s", wall, corner)
		}
	}
	c := presetBuild(t, presets.Corner, model.Show{})
	front := c.Room.Wall("front")
	if !newMaker(c).countsFromRight(front) {
		t.Error("the front wall of the corner has all its holes near the right corner; sizes start at the left one")
	}
}

func TestDrillingSheetsSayWhatIsThere(t *testing.T) {
	b := onTheWalls(t)
	m := newMaker(b)
	pages := drillSheets(m)
	for wall, words := range map[string][]string{
		"left":  {"stud  150", "stud  550", "1 top", "floor", "+1.000 m", "coach screw Ø8", "Timber stud"},
		"back":  {"socket", "keep out", "2 angle back", "Ø18 x 120 deep", "anchor Ø10", "seat  710", "Solid brick", "HIDDEN SERVICES", "ANCHORS"},
		"right": {"The make of this wall is not known"},
	} {
		var all []string
		for _, x := range lettering(itemsOf(wallPages(pages, b.Room.Wall(wall)))) {
			all = append(all, x.String)
		}
		text := strings.Join(all, " ")
		for _, w := range words {
			if !strings.Contains(text, w) {
				t.Errorf("wall %s does not say %q", wall, w)
			}
		}
	}
}

// TestLadderFiguresAreLarge holds the height of the figures: 5 mm in the
// picture (ISO 3098-1 series), for reading on a ladder; 3.5 where the wall is so
// long that they cost it its scale.
func TestLadderFiguresAreLarge(t *testing.T) {
	b := onTheWalls(t)
	m := newMaker(b)
	for _, p := range drillSheets(m) {
		g, _ := groupOf(p.sheet.Items, "wall-dimensions")
		n := 0
		for _, x := range lettering(g.Items) {
			if x.Height < drawing.Standard {
				t.Errorf("%s: %q is %.1f high", p.sheet.Name, x.String, float64(x.Height))
			}
			if x.Height == drawing.Large {
				n++
			}
		}
		if n < 5 && p.sheet.Name != "drilling-back" { // 6 m
			t.Errorf("%s: %d large figures", p.sheet.Name, n)
		}
	}
}

// TestHolesStandAtTheirScale finds every hole of the picture at its place.
func TestHolesStandAtTheirScale(t *testing.T) {
	b := onTheWalls(t)
	m := newMaker(b)
	pages := drillSheets(m)
	n := 0
	for _, w := range b.Room.Walls {
		pg := wallPages(pages, w)[0]
		var s drawing.Scale
		if _, err := fmt.Sscanf(pg.sheet.Scale, "%d:%d", &s.Paper, &s.Real); err != nil {
			t.Fatal(err)
		}
		g, _ := groupOf(pg.sheet.Items, "wall")
		var circles []geom.Vec
		for _, it := range g.Items {
			if c, ok := it.(drawing.Circle); ok {
				circles = append(circles, c.Centre)
			}
		}
		holes := solidHoles(b.Design, w)
		if len(circles) != len(holes) {
			t.Fatalf("wall %s: %d circles for %d holes", w.Name, len(circles), len(holes))
		}
		for _, h := range holes {
			found := false
			for _, c := range circles {
				// from one hole to the others: no need to know where the wall stands
				found = found || c.Sub(circles[0]).Sub(geom.V(s.Of(h.X-holeOf(m, w, 0).X), s.Of(h.Y-holeOf(m, w, 0).Y))).Len() < 0.1
			}
			if !found {
				t.Errorf("wall %s: no circle for the hole at %v", w.Name, h)
			}
			n++
		}
	}
	if n < 12 {
		t.Errorf("%d holes looked at", n)
	}
}

// holeOf is the hole that is drawn as the nth of its wall.
func holeOf(m *maker, w *model.Wall, n int) geom.Vec {
	h := numbered(m.wallHoles(w), m.countsFromRight(w))[n]
	return geom.V(h.s, h.z)
}

func BenchmarkDrillingSheets(b *testing.B) {
	m := newMaker(onTheWalls(b))
	drillSheets(m) // the design keeps its statics
	for b.Loop() {
		drillSheets(m)
	}
}
