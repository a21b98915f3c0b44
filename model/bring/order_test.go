package bring_test

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/job"
	"slabwright/model/unit"
	"slabwright/presets"
)

func design(t testing.TB, preset string) *model.Design {
	t.Helper()
	data, err := os.ReadFile("../../presets/" + preset + "/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return build(t, string(data))
}

func build(t testing.TB, text string) *model.Design {
	t.Helper()
	j, bad := job.Read("job.yaml", []byte(text), presets.All())
	if len(bad) > 0 {
		t.Fatal(job.Text(bad))
	}
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(presets.All(), func(p model.Preset) bool { return p.Name == j.Preset })
	d := presets.All()[i].Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
	d.Finish()
	return d
}

// Every part of the presets goes in, in an order in which what carries comes
// before what is carried.
func TestPresetsGoTogether(t *testing.T) {
	for _, p := range presets.All() {
		d := design(t, p.Name)
		order := bring.NewScene(d).Order()
		if len(order) != len(d.Parts) {
			t.Errorf("%s: %d of %d parts are in the order", p.Name, len(order), len(d.Parts))
		}
		at := map[string]int{}
		for i, w := range order {
			at[w.Part.ID] = i
			if w.Verdict != motion.Found {
				t.Errorf("%s: %s: %s", p.Name, w.Part.ID, w.Verdict)
			}
			if w.Least.Gap < -0.01 {
				t.Errorf("%s: %s meets %s by %.3f mm", p.Name, w.Part.ID, w.Least.Near, float64(-w.Least.Gap))
			}
		}
		for _, q := range d.Parts {
			if q.Angle != nil && at[q.ID] > at[q.Angle.Under] || q.Rod != nil && at[q.ID] > at[q.Rod.Shelf] {
				t.Errorf("%s: %s is mounted after what it carries", p.Name, q.ID)
			}
		}
	}
}

// The ways of slabs that are not turned are followed once more with the solids
// as they are drawn, by the kernel's own distances: only what carries a slab may
// touch it.
func TestStraightWaysAreClearForTheSolids(t *testing.T) {
	for _, p := range presets.All() {
		d := design(t, p.Name)
		var there []*model.Part
		followed := 0
		for _, w := range bring.NewScene(d).Order() {
			if w.Part.Slab != nil && w.Straight() {
				followed++
				for _, by := range stations(w.Poses) {
					solid := w.Part.Bodies[0].Solid.Place(geom.Pose{At: by.Flat().Turn(w.Part.Slab.Pose.Turn).Up(by.Z)})
					for _, q := range there {
						if q.Rod != nil { // sticks in its shelf
							continue
						}
						for _, b := range q.Bodies {
							if g := geom.Clearance(solid, b.Solid); g.Err != nil || g.Distance < -0.05 {
								t.Fatalf("%s: %s meets %s by %.2f mm, %v off its place", p.Name, w.Part.ID, q.ID, float64(-g.Distance), by)
							}
						}
					}
				}
			}
			there = append(there, w.Part)
		}
		if followed == 0 && p.Name != "corner" {
			t.Errorf("%s: no slab goes in straight", p.Name)
		}
	}
}

// stations are shifts along a way, some 60 mm apart.
func stations(way []motion.Pose) []geom.Vec3 {
	var out []geom.Vec3
	for i := 1; i < len(way); i++ {
		a, b := way[i-1].At, way[i].At
		n := int(b.Sub(a).Len()/60) + 1
		for k := range n + 1 {
			v := a.Add(b.Sub(a).Mul(float64(k) / float64(n)))
			out = append(out, v)
		}
	}
	return out
}

func TestMovesRead(t *testing.T) {
	order := bring.NewScene(design(t, "corner")).Order()
	for _, w := range order {
		if w.Part.ID != "back worktop" {
			continue
		}
		got := strings.Join(w.Moves(), "; ")
		for _, part := range []string{"hold it in front of its place", "push it back", "lower its left end", "lower it 40 mm"} {
			if !strings.Contains(got, part) {
				t.Errorf("%q lacks %q", got, part)
			}
		}
	}
}

// A hollow that narrows to the front, with a rack close over the whole slab: it
// can neither be drawn out nor lifted, until it is as short as the front is wide.
const narrowing = `title: narrowing
room:
  readings_at: 750
  ceiling: 2480
  corners: [A, B, C, D]
  walls:
    - {name: left, from: A, to: B, make: solid brick}
    - name: back
      from: B
      to: C
      make: solid brick
      obstacles:
        - {name: rack, kind: rack, from: B, start: 5, end: 1455, bottom: 775, top: 2300, depth: 600, free: 5}
    - {name: right, from: C, to: D, make: solid brick}
  readings:
    - {between: A-B, is: 701.1}
    - {between: B-C, is: 1460.0}
    - {between: C-D, is: 701.1}
    - {between: A-D, is: 1380}
    - {between: A-C, is: 1583.2}
    - {between: B-D, is: 1583.2}
design:
  preset: alcove
  parameters: {surface: 750, shelves: 0, sitting: no, thickness: 40, depth: 540}
`

func TestShutInAndFreed(t *testing.T) {
	d := build(t, narrowing)
	s := bring.NewScene(d)
	order := s.Order()
	last := order[len(order)-1]
	if last.Part.ID != "worktop" || last.Verdict != motion.NoWay {
		t.Fatalf("%s: %s", last.Part.ID, last.Verdict)
	}
	if len(last.Proven) == 0 || !strings.Contains(last.Proven[0], "along the wall") {
		t.Errorf("proven: %v", last.Proven)
	}
	trouble := s.Trouble(last.Part, d.Parts)
	// closed form: it comes out square when it is no longer than the front is wide
	long, _, _ := bring.Size(last.Part)
	want := fmt.Sprintf("make it %.0f mm shorter", math.Ceil(float64(long-front(d))))
	if len(trouble.Ways) == 0 || trouble.Ways[0].Text != want {
		t.Errorf("%+v, want %s", trouble.Ways, want)
	}
	// and on the straight way half of that is missing at each side
	half := float64(long-front(d)) / 2
	if len(trouble.Lacks) != 2 {
		t.Fatalf("not two gaps are missing: %+v", trouble.Lacks)
	}
	for _, x := range trouble.Lacks {
		if !strings.HasPrefix(x.Name, "the wall ") || math.Abs(float64(x.By)-half) > 0.3 {
			t.Errorf("%.2f mm are missing at %s, want %.2f", float64(x.By), x.Name, half)
		}
	}
	if len(trouble.Vain) != 2 {
		t.Errorf("no other order and no halves free it, but tried in vain are %q", trouble.Vain)
	}
	free := strings.Replace(narrowing, "bottom: 775", "bottom: 1900", 1)
	order = bring.NewScene(build(t, free)).Order()
	if w := order[len(order)-1]; w.Verdict != motion.Found {
		t.Errorf("without the rack over it: %s", w.Verdict)
	}
}

// front is how far the ends of the side walls are apart.
func front(d *model.Design) unit.Length {
	c := d.Room.Corners
	return c[len(c)-1].At.Sub(c[0].At).Len()
}

// The least cut that frees is worked out for no more than some looks of the
// search, however much is shut in.
func BenchmarkTrouble(b *testing.B) {
	d := build(b, narrowing)
	for b.Loop() {
		s := bring.NewScene(d)
		order := s.Order()
		s.Trouble(order[len(order)-1].Part, d.Parts)
	}
}

func BenchmarkStudio(b *testing.B) {
	d := design(b, "studio")
	for b.Loop() {
		bring.NewScene(d).Order()
	}
}

// What is shut in takes longest.
func BenchmarkShutIn(b *testing.B) {
	d := build(b, narrowing)
	for b.Loop() {
		bring.NewScene(d).Order()
	}
}
