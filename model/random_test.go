package model_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/job"
	"slabwright/model/unit"
	"slabwright/presets"
)

// sets is how many parameter sets every preset is given; thousands were run
// before this was set to what a few seconds allow.
var sets = flag.Int("sets", 12, "random parameter sets for every preset")

// TestPresetsTakeAnyParameters gives presets random parameters, within and
// outside of what they allow: nothing panics, and every part has closed solids
// or a finding.
func TestPresetsTakeAnyParameters(t *testing.T) {
	for _, p := range presets.All() {
		t.Run(p.Name, func(t *testing.T) {
			t.Parallel()
			site := siteOf(t, p)
			rnd := rand.New(rand.NewPCG(7, uint64(len(p.Params))))
			whole := 0
			for range *sets {
				set := randomSettings(rnd, p)
				d, broke := build(p, site, set)
				if broke != "" {
					t.Fatalf("%s\nsettings %v", broke, set)
				}
				if complaint := look(d); complaint != "" {
					t.Fatalf("%s\nsettings %v", complaint, set)
				}
				if len(d.Faults()) == 0 {
					whole++
				}
			}
			t.Logf("%d of %d designs without a fault", whole, *sets)
		})
	}
}

func siteOf(t *testing.T, p model.Preset) model.Site {
	data, err := os.ReadFile("../presets/" + p.Name + "/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j, mistakes := job.Read(p.Name, data, presets.All())
	for _, m := range mistakes {
		t.Fatal(m)
	}
	return model.Site{Room: newRoom(t, j.Room), People: j.People, Offers: j.Offers, House: j.House}
}

// build builds a design, and catches what it throws.
func build(p model.Preset, s model.Site, set map[string]model.Setting) (d *model.Design, broke string) {
	defer func() {
		if r := recover(); r != nil {
			broke = fmt.Sprint("panic: ", r)
		}
	}()
	d = p.Build(s, set)
	d.Finish()
	return d, ""
}

// randomSettings leaves a parameter alone or gives it a value within its
// bounds, on them, outside of them or none at all.
func randomSettings(rnd *rand.Rand, p model.Preset) map[string]model.Setting {
	odd := []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, -1e9, 1e-9, 1e300, math.MaxFloat64, -math.MaxFloat64}
	set := map[string]model.Setting{}
	for _, q := range p.Params {
		var x float64
		switch rnd.IntN(20) {
		case 0:
			x = odd[rnd.IntN(len(odd))]
		case 1:
			x = q.Min
		case 2:
			x = q.Max
		case 3, 4, 5, 6, 7, 8, 9:
			x = q.Min + (q.Max-q.Min)*rnd.Float64()
		default:
			continue
		}
		s := model.Setting{Length: unit.Length(x), Number: math.Round(x), Flag: x > q.Min, Text: "nonsense"}
		if q.Kind == model.ChoiceParam && rnd.IntN(4) > 0 {
			s.Text = q.Choices[rnd.IntN(len(q.Choices))]
		}
		set[q.Name] = s
	}
	return set
}

// look finds a part whose solid is neither closed nor explained, or a finding
// that a person could not act on.
func look(d *model.Design) string {
	explained := map[string]bool{}
	for _, f := range d.Faults() {
		if f.Why == "" || strings.Contains(f.Why, "NaN") || len(f.Fix) == 0 || f.Line == "" && !strings.HasPrefix(f.Why, "parameter ") {
			return fmt.Sprintf("finding that helps nobody: %+v", f)
		}
		for _, id := range f.Parts {
			explained[id] = true
		}
	}
	for _, p := range d.Parts {
		if len(p.Bodies) == 0 && !explained[p.ID] {
			return p.ID + " has no solid and nobody says why"
		}
		for _, b := range p.Bodies {
			if err := b.Solid.Err(); err != nil {
				return fmt.Sprintf("%s: a solid that could not be built: %v", p.ID, err)
			}
			if v := b.Solid.Volume(); !(v > 0 && v < 1e10) {
				return fmt.Sprintf("%s: a volume of %v", p.ID, v)
			}
			if n := openEdges(b.Solid); n > 0 {
				return fmt.Sprintf("%s: %d edges of its skin have one side only", p.ID, n)
			}
		}
	}
	return ""
}

// openEdges counts edges that do not run once in each direction.
func openEdges(s geom.Solid) int {
	runs := map[[2]geom.Vec3]int{}
	for _, f := range s.Faces() {
		for _, loop := range f.Loops {
			for i, a := range loop {
				b := loop[(i+1)%len(loop)]
				runs[[2]geom.Vec3{a, b}]++
				runs[[2]geom.Vec3{b, a}]--
			}
		}
	}
	n := 0
	for _, k := range runs {
		if k != 0 {
			n++
		}
	}
	return n / 2
}

// TestRoomsTakeAnyReadings puts odd numbers and names into the plan of a room:
// it becomes a room whose walls are in order, or an error that says something.
func TestRoomsTakeAnyReadings(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 9))
	odd := func() unit.Length {
		list := []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1e-9, 1e9, 1e300, 5000 * rnd.Float64()}
		return unit.Length(list[rnd.IntN(len(list))])
	}
	rooms := 0
	for range 300 {
		p := studioPlan()
		for range 1 + rnd.IntN(3) {
			w := &p.Walls[rnd.IntN(len(p.Walls))]
			switch rnd.IntN(12) {
			case 0:
				p.Readings[rnd.IntN(len(p.Readings))].Length = odd()
			case 1:
				p.Readings[rnd.IntN(len(p.Readings))].SD = odd()
			case 2:
				w.Bow = odd()
			case 3:
				w.Lean = odd()
			case 4:
				w.LeanOver = odd()
			case 5:
				w.Studs = append(w.Studs, odd())
			case 6:
				w.Obstacles = []model.ObstaclePlan{{Name: "thing", Start: odd(), End: odd(), Bottom: odd(), Top: odd(), Depth: odd(), Free: odd()}}
			case 7:
				p.Floor[1].Height = odd()
			case 8:
				p.At = odd()
			case 9:
				p.Closed = !p.Closed
			case 10:
				p.Readings = p.Readings[:rnd.IntN(len(p.Readings))]
			case 11:
				p.Corners[rnd.IntN(8)].Bend = []string{"in", "out", "", "up"}[rnd.IntN(4)]
			}
		}
		r, err := model.NewRoom(p)
		if err != nil {
			if err.Error() == "" {
				t.Errorf("an error without words: %+v", p)
			}
			continue
		}
		rooms++
		if plan := r.Plan(p.At); plan.Err() != nil || plan.Empty() || len(r.Walls) < 7 {
			t.Errorf("%d walls, plan %v: %+v", len(r.Walls), plan.Err(), p)
		}
		for _, w := range r.Walls {
			for _, o := range w.Obstacles {
				if err := o.Solid().Err(); err != nil {
					t.Errorf("%+v: %v", o, err)
				}
			}
		}
	}
	if rooms < 30 {
		t.Errorf("only %d plans became rooms", rooms)
	}
}
