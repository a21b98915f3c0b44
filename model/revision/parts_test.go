package revision

import (
	"bytes"
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

type benchParams struct {
	Depth   unit.Length `is:"500" min:"300" max:"900" help:"depth"`
	SideGap unit.Length `is:"4" min:"0" max:"30" help:"gap to the side walls"`
	Shelf   bool        `is:"no" help:"a shelf"`
	Wood    string      `is:"ash" of:"ash oak" help:"wood"`
}

// bench is a worktop between three walls on an angle along the back, and an
// infill that meets a second one.
var bench = model.NewPreset("bench", "a bench", func(s model.Site, p benchParams) *model.Design {
	r := s.Room
	left, back, right := r.Wall("left"), r.Wall("back"), r.Wall("right")
	wood := map[string]stock.Species{"ash": stock.Ash, "oak": stock.Oak}[p.Wood]
	d := model.NewDesign("bench", r)
	d.Add("top", model.Slab(wood, 40).Between(left, right).Against(back).Gaps(p.SideGap, 5).Depth(p.Depth).SurfaceAt(750))
	steel := model.Angle(stock.L50x50x5).Under("top").ClearOf(3)
	d.Add("angle back", steel.Along(back))
	d.Add("angle right", steel.Along(right))
	if p.Shelf {
		d.Add("shelf", model.Shelf(stock.Ash, 30).Between(back.Mark(300), right).Against(back).Gaps(4, 5).Depth(250).UndersideAt(1200))
	}
	return d
})

// threeWalls is an alcove without errors: B at the origin, the back 1600 long.
func threeWalls(wide, outRight unit.Length) truth {
	r := truth{names: []string{"A", "B", "C", "D"}, at: []geom.Vec{geom.V(0, -900), geom.V(0, 0), geom.V(wide, 0), geom.V(wide+outRight, -900)},
		tapes: [][2]string{{"A", "B"}, {"B", "C"}, {"C", "D"}, {"A", "D"}, {"A", "C"}, {"B", "D"}}}
	for i, n := range []string{"left", "back", "right"} {
		r.walls = append(r.walls, model.WallPlan{Name: n, From: r.names[i], To: r.names[i+1], Make: model.Brick})
	}
	return r
}

// light loads keep statics out of what these tests are about.
var light = model.Loads{Person: 20, Step: 1, Worktop: 1, Shelf: 1}

func state(t *testing.T, r truth, set map[string]model.Setting, cut ...model.CutPart) State {
	t.Helper()
	room := r.measured(t, 0)
	j := model.Job{Title: "bench", Revision: "A", Preset: "bench", Settings: set, Cut: cut, Loads: light}
	d := bench.Build(model.Site{Room: room, Cut: cut}, set)
	d.Finish()
	return State{Job: j, Preset: bench, Room: room, Design: d, Findings: check.Run(check.Site{Job: j, Room: room, Design: d, Params: bench.Params})}
}

func compare(t *testing.T, old, now State) Comparison {
	t.Helper()
	c, err := Compare(old, now)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func partOf(t *testing.T, c Comparison, id string) PartChange {
	t.Helper()
	for _, p := range c.Parts {
		if p.ID == id {
			return p
		}
	}
	t.Fatalf("no part %q in %+v", id, c.Parts)
	return PartChange{}
}

func gapAt(t *testing.T, p PartChange, edge string) GapRange {
	t.Helper()
	for _, g := range p.Gaps {
		if g.Edge == edge {
			return g
		}
	}
	t.Fatalf("%s: no gap at the %s edge: %+v", p.ID, edge, p.Gaps)
	return GapRange{}
}

// The right wall moves by a known distance; the slab was made with 4 mm at each
// end. Gaps, trims and fates follow from geometry alone: 2 mm must be left, up
// to 12 mm can be covered.
func TestFatesFollowFromGeometry(t *testing.T) {
	old := state(t, threeWalls(1600, 0), nil)
	for _, x := range []struct {
		wide, out   unit.Length // of the new room
		fate        Fate
		least, most float64 // gap at the right end
		mend        string
	}{
		{1600, 0, Same, 0, 0, ""},
		{1603, 0, Stays, 5.5, 5.5, ""},
		{1599.5, 0, Stays, 3.75, 3.75, ""},
		{1598.5, 0, Smaller, 3.25, 3.25, ""},
		{1594, 0, Smaller, 1, 1, "take 6.0 mm off its"},
		{1590, 0, Smaller, -1, -1, "take 10.0 mm off its"},
		{1612, 0, Stays, 10, 10, "let the gap show evenly: 10.0 mm instead of 4.0 mm"},
		{1630, 0, Larger, 19, 19, "glue a strip of the same wood, 15 mm"},
		// square slab in a room that opens by 9 mm over 900: 0.05 at the back edge, 5 mm more at the front
		{1600, 9, Stays, 4, 9.05, "cover the joint along its right edge"},
	} {
		now := state(t, threeWalls(x.wide, x.out), nil)
		p := partOf(t, compare(t, old, now), "top")
		if p.Fate != x.fate {
			t.Errorf("%.1f wide: %s, want %s: %s", x.wide, p.Fate, x.fate, p.Why)
			continue
		}
		if x.fate == Same {
			continue
		}
		g := gapAt(t, p, "right")
		if x.out == 0 && (math.Abs(float64(g.Least)-x.least) > 0.02 || math.Abs(float64(g.Widest)-x.most) > 0.02) {
			t.Errorf("%.1f wide: gap %.2f to %.2f at the right, want %.2f to %.2f", x.wide, g.Least, g.Widest, x.least, x.most)
		}
		if x.out > 0 && math.Abs(float64(g.Widest-g.Least)-9*500./900) > 0.05 {
			t.Errorf("opening room: the gap grows by %.2f over the depth, want %.2f", g.Widest-g.Least, 9*500./900)
		}
		if x.mend != "" && !slices.ContainsFunc(p.Mend, func(m string) bool { return strings.Contains(m, x.mend) }) {
			t.Errorf("%.1f wide: %q does not say %q", x.wide, p.Mend, x.mend)
		}
		if x.mend == "" && x.fate == Stays && len(p.Mend) > 0 {
			t.Errorf("%.1f wide: nothing to mend, yet %q", x.wide, p.Mend)
		}
		if (p.Sure != nil && *p.Sure > 0.99) != (x.fate != Smaller) {
			t.Errorf("%.1f wide: goes in with %v", x.wide, p.Sure)
		}
		back := slices.IndexFunc(p.Sizes, func(s SizeChange) bool { return s.What == "back edge" })
		if x.wide != 1600 && (back < 0 || math.Abs(float64(p.Sizes[back].Difference()-(x.wide-1600))) > 0.01) {
			t.Errorf("%.1f wide: sizes %+v", x.wide, p.Sizes)
		}
	}
}

// bars: an angle of the old room in a narrower one comes too near to its corners.
func TestFatesOfAngles(t *testing.T) {
	old := state(t, threeWalls(1600, 0), nil)
	for wide, want := range map[unit.Length]Fate{1600: Same, 1606: Stays, 1599: Stays, 1590: Smaller} {
		if p := partOf(t, compare(t, old, state(t, threeWalls(wide, 0), nil)), "angle back"); p.Fate != want {
			t.Errorf("%.0f wide: angle back %s, want %s: %s", wide, p.Fate, want, p.Why)
		}
	}
}

func TestWhatElseChanges(t *testing.T) {
	old := state(t, threeWalls(1600, 0), nil)
	now := state(t, threeWalls(1600, 0), map[string]model.Setting{"depth": {Text: "480", Length: 480}, "shelf": {Text: "yes", Flag: true}})
	c := compare(t, old, now)
	if want := []ParamChange{{"depth", "500", "480"}, {"shelf", "no", "yes"}}; !slices.Equal(c.Params, want) {
		t.Errorf("parameters %v", c.Params)
	}
	if p := partOf(t, c, "shelf"); p.Fate != Added {
		t.Errorf("shelf: %s", p.Fate)
	}
	if p := partOf(t, compare(t, now, old), "shelf"); p.Fate != Dropped {
		t.Errorf("shelf taken out: %s", p.Fate)
	}
	if p := partOf(t, c, "angle right"); p.Fate != Stays || !strings.Contains(p.Why, "Its left end stays, its right end comes 20.0 mm further out") {
		t.Errorf("angle under a shallower top: %s, %s", p.Fate, p.Why)
	}
	if p := partOf(t, c, "top"); p.Fate != Stays || !strings.Contains(p.Why, "front edge stands over by 20.0 mm") {
		t.Errorf("top of another depth: %s, %s", p.Fate, p.Why)
	}
	oak := state(t, threeWalls(1600, 0), map[string]model.Setting{"wood": {Text: "oak"}})
	if p := partOf(t, compare(t, old, oak), "top"); p.Fate != Unfit || !strings.Contains(p.Why, "European oak") {
		t.Errorf("top of another wood: %s, %s", p.Fate, p.Why)
	}
	shelfless := slices.ContainsFunc(c.Findings, func(f FindingChange) bool { return f.Old == "" && slices.Contains(f.Parts, "shelf") })
	if !shelfless {
		t.Errorf("a shelf that nothing carries is no change: %+v", c.Findings)
	}
}

// A part that the new job tells as cut is judged by the sizes told, not by the
// old drawing.
func TestToldSizesCount(t *testing.T) {
	old := state(t, threeWalls(1600, 0), nil)
	told, _ := old.Design.Part("top").CutAsDrawn("2026-10-02")
	now := state(t, threeWalls(1594, 0), nil, told)
	c := compare(t, old, now)
	p := partOf(t, c, "top")
	if p.Fate != Smaller || !strings.Contains(p.Why, "told as cut on 2026-10-02") || p.Entry != "" {
		t.Errorf("%s: %s", p.Fate, p.Why)
	}
	if p := partOf(t, compare(t, now, old), "top"); p.Fate != NotKnown {
		t.Errorf("a part that is no longer told as cut: %s", p.Fate)
	}
}

func TestOtherPresetsCannotBeCompared(t *testing.T) {
	old := state(t, threeWalls(1600, 0), nil)
	now := old
	now.Job.Preset = "other"
	if _, err := Compare(old, now); err == nil || !strings.Contains(err.Error(), `"bench", the new one of "other"`) {
		t.Errorf("got %v", err)
	}
}

func TestComparisonsRepeat(t *testing.T) {
	old := state(t, threeWalls(1600, 0), nil)
	now := state(t, threeWalls(1594, 3), map[string]model.Setting{"shelf": {Text: "yes", Flag: true}})
	a, err := compare(t, old, now).JSON()
	if err != nil {
		t.Fatal(err)
	}
	b, _ := compare(t, old, now).JSON()
	if !bytes.Equal(a, b) || compare(t, old, now).Text() != compare(t, old, now).Text() {
		t.Error("two comparisons of the same jobs differ")
	}
}

func TestFigures(t *testing.T) {
	for _, x := range []struct {
		old, now []string
		want     []Figure
	}{
		{[]string{"12", "a", "13"}, []string{"12", "b", "13"}, nil},
		{[]string{"12", "13", "14"}, []string{"12", "13.5", "14"}, []Figure{{"", "13", "13.5"}}},
		{[]string{"1", "2", "3"}, []string{"1", "3"}, []Figure{{"", "2", ""}}},
		{[]string{"1", "3"}, []string{"1", "2", "3", "4"}, []Figure{{"", "", "2"}, {"", "", "4"}}},
		{nil, nil, nil},
	} {
		if got := Figures(x.old, x.now); !slices.Equal(got, x.want) {
			t.Errorf("%v to %v: %v, want %v", x.old, x.now, got, x.want)
		}
	}
}

func TestSheets(t *testing.T) {
	old := []Sheet{{Name: "a", Number: 2, Groups: []Group{{"view", []string{"10", "20"}, "x"}}}, {Name: "b", Number: 3, Groups: []Group{{"view", []string{"10"}, "x"}}}, {Name: "gone", Number: 4}}
	now := []Sheet{{Name: "new", Number: 2}, {Name: "a", Number: 3, Groups: []Group{{"view", []string{"10", "21"}, "y"}}}, {Name: "b", Number: 4, Groups: []Group{{"view", []string{"10"}, "y"}}}}
	got := Sheets(old, now)
	if len(got) != 4 || got[0].Fate != Added || got[1].Number != 3 || !slices.Equal(got[1].Figures, []Figure{{"view", "20", "21"}}) || !got[2].Lines || got[3].Fate != Dropped {
		t.Errorf("%+v", got)
	}
	if len(Sheets(now, now)) != 0 {
		t.Error("a set differs from itself")
	}
}
