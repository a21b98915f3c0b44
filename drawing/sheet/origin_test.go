package sheet

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/presets"
)

// ends are the places along the back wall of everything that plan and front
// elevation both show, by name of the thing, read off the parts.
func ends(m *maker) map[string][]unit.Length {
	out := map[string][]unit.Length{}
	for _, p := range m.b.Design.Parts {
		b := p.Bounds()
		switch {
		case p.RollOut != nil, p.Slab != nil, p.Bracket() != nil:
			out[p.ID] = []unit.Length{b.Min.X, b.Max.X}
		case p.Post != nil:
			out[p.ID] = []unit.Length{p.Post.Middle.X}
		}
	}
	for _, s := range m.b.Design.Seats {
		if sp := m.b.Design.Part(s.At).Slab; math.Abs(math.Cos(float64(sp.Pose.Turn))) > 0.9 {
			out[s.Name] = []unit.Length{sp.Pose.Plan(geom.V(s.Centre, 0)).X}
		}
	}
	return out
}

var zeroAt = regexp.MustCompile(`^0 corner (\S+)$`)

// zeros are the corners that running dimensions of a sheet count from.
func zeros(texts []string) []string {
	var out []string
	for _, s := range texts {
		if f := zeroAt.FindStringSubmatch(s); f != nil && !slices.Contains(out, f[1]) {
			out = append(out, f[1])
		}
	}
	return out
}

// A joiner who lays plan and front elevation side by side reads the same figure
// for the same thing: both count from one corner, named on both (one datum for
// each direction: ISO 129-1, running dimensioning), and what the one says of an
// end, the other says too.
func TestPlanAndFrontCountFromOneCorner(t *testing.T) {
	for _, preset := range presets.All() {
		b := roomBuild(t, preset.Name, "A3", nil)
		m := newMaker(b)
		pages := presetPages(t, preset.Name, "A3")
		dimensions := func(of string) []string {
			return textsOf(groupsNamed(pageNamed(t, pages, of).Items, of+"-dimensions")[0].Items)
		}
		plan, front := dimensions("plan"), dimensions("front")
		from := zeros(front)
		if len(from) != 1 || !slices.Equal(zeros(plan), from) {
			t.Fatalf("%s: the plan counts from %v, the front elevation from %v", preset.Name, zeros(plan), from)
		}
		corner, _ := b.Room.Corner(from[0])
		both := 0
		for name, list := range ends(m) {
			for _, x := range list {
				figure := m.length(abs(x - corner.At.X))
				onPlan, onFront := tells(plan, figure, name), tells(front, figure, name)
				hidden := b.Design.Part(name) != nil && b.Design.Part(name).Post != nil // behind the cut
				if onPlan != onFront && !hidden {
					t.Errorf("%s: %s is %s from corner %s: on the plan %v, on the front elevation %v", preset.Name, name, figure, corner.Name, onPlan, onFront)
				}
				if onPlan && onFront {
					both++
				}
			}
		}
		if least := map[string]int{"studio": 7, "alcove": 1, "corner": 1}[preset.Name]; both < least {
			t.Errorf("%s: only %d places compared", preset.Name, both)
		}
	}
}

// tells tells whether a figure stands among texts, alone or with what is there.
func tells(texts []string, figure, name string) bool {
	return slices.ContainsFunc(texts, func(s string) bool {
		what, ok := strings.CutPrefix(s, figure)
		return ok && (what == "" || what == " seat" || what == " "+name)
	})
}

// A wall is drilled from the corner that its elevation counts from, which is the
// room's own where the wall reaches it.
func TestElevationAndDrillingCountFromOneCorner(t *testing.T) {
	for _, preset := range presets.All() {
		b := roomBuild(t, preset.Name, "A3", nil)
		m := newMaker(b)
		compared := 0
		for _, p := range m.wallPages() {
			for _, w := range b.Room.Walls {
				elevation := groupsNamed(p.sheet.Items, "wall-"+stem(w.Name))
				if len(elevation) == 0 {
					continue
				}
				compared++
				from := zeros(textsOf(elevation[0].Items))
				if len(from) != 1 || !says(lettering(itemsOf(wallPages(drillSheets(m), w))), "0 "+from[0]) {
					t.Errorf("%s: the elevation of wall %s counts from %v, its drilling does not", preset.Name, w.Name, from)
				}
				if o := m.origin().Name; (w.From.Name == o || w.To.Name == o) && !slices.Equal(from, []string{o}) {
					t.Errorf("%s: wall %s counts from %v and reaches %s", preset.Name, w.Name, from, o)
				}
			}
		}
		if compared < 2 {
			t.Errorf("%s: only %d walls compared", preset.Name, compared)
		}
	}
}
