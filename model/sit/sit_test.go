package sit_test

import (
	"math"
	"os"
	"testing"

	"slabwright/model"
	"slabwright/model/job"
	"slabwright/model/sit"
	"slabwright/model/unit"
	"slabwright/presets"
)

func studio(t testing.TB, people ...model.Person) []*sit.Sitter {
	t.Helper()
	d, j := design(t, people...)
	return sit.Of(d, j.Wiring)
}

func design(t testing.TB, people ...model.Person) (*model.Design, model.Job) {
	t.Helper()
	data, err := os.ReadFile("../../presets/studio/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j, bad := job.Read("job.yaml", data, presets.All())
	if len(bad) > 0 {
		t.Fatal(bad[0])
	}
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	if people != nil {
		j.People = people
	}
	d := presets.Studio.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
	d.Finish()
	return d, j
}

func near(t *testing.T, what string, got unit.Length, want, tol float64) {
	t.Helper()
	if !(math.Abs(float64(got)-want) <= tol) {
		t.Errorf("%s: got %.1f, want %.1f within %g", what, got, want, tol)
	}
}

// The corner of a box, turned about the post: its way to the side is
// half cos 30 + (far - post) sin 30 at most as far as it is not over its own
// circle (closed form), and its way in the radius of the circle.
func TestSweep(t *testing.T) {
	s := studio(t)[0]
	post := s.Pivot()
	for _, b := range s.Boxes {
		half := float64(b.Half + sit.Sideways)
		sin, cos := math.Sincos(math.Pi / 6)
		side := half*cos + float64(b.Far-post)*sin
		if math.Atan2(half, float64(b.Far-post)) > math.Pi/3 {
			t.Fatal("the corner passes its widest place: another formula holds")
		}
		var left, right, in unit.Length
		for _, loop := range b.Sweep.Loops() {
			for _, v := range loop {
				x, y := s.From(v)
				left, right, in = min(left, x), max(right, x), max(in, y)
			}
		}
		near(t, string(b.Kind)+" right", right, side, 0.01)
		near(t, string(b.Kind)+" left", left, -side, 0.01)
		near(t, string(b.Kind)+" in", in-post, math.Hypot(half, float64(b.Far-post)), 0.05)
	}
}

// A middle man, as printed with the fits: leaning by 30 degrees brings his
// forehead 390 mm past the edge, 430 + 90 + 828 cos 30 = 1237 above the floor,
// barefoot; the head of the 95th percentile man is at 1434 + 25 sitting, 1870 +
// 25 + 50 standing; his p5 hand comes to 1719 - 80 overhead.
func TestHead(t *testing.T) {
	s := studio(t, model.Person{Name: "middle", Stature: 1756.2, Sex: "male"})[0]
	in, up := s.Head(sit.RisingLean)
	near(t, "forehead in", in+s.Bulge, 390, 1.5)
	near(t, "forehead up", up-s.Shoe, 1237, 1.5)
	lean, ok := s.LeanUnder(up)
	near(t, "back to the lean", unit.Length(lean), math.Pi/6, 1e-9)
	if _, under := s.LeanUnder(2000); under || !ok {
		t.Error("2 m is above a sitting head, 1237 mm below")
	}
	anybody := studio(t, model.Person{Name: "anybody", Sex: "male"})[0]
	if anybody.Told {
		t.Error("nothing is told")
	}
	_, up = anybody.Head(0)
	near(t, "tall head sitting", up, 1434+25, 0.01)
	stand, _ := anybody.Standing()
	near(t, "tall head standing", stand, 1945, 0.01)
	a := anybody.Hand()
	near(t, "overhead grip of the small", a.Up+a.Reach, 1719-80+25, 0.01)
	in, ok = a.At(a.Up)
	near(t, "forward grip of the small", in+s.Bulge, 477, 0.01)
	if _, reached := a.At(1700); reached || !ok {
		t.Error("1700 mm is above the small hand")
	}
}

// What is near the legs in the studio: the slab above the thighs by the room
// that the design leaves, 710 - 706.2 mm and what the floor falls there; the
// table on castors is met by turned feet; cable and wall to the right are named.
func TestThings(t *testing.T) {
	s := studio(t)[0]
	byName := map[string]sit.Thing{}
	for _, x := range s.Things {
		byName[string(x.Box)+" "+x.Name] = x
	}
	near(t, "worktop", byName["thighs worktop"].Distance, float64(s.Underside()-s.Legs.Thigh), 0.01)
	for _, want := range []string{"feet a castor of roll-out table", "feet the wall right", "thighs angle right", "feet the cable lead of the fan"} {
		if _, ok := byName[want]; !ok {
			t.Errorf("%q is not named: %v", want, byName)
		}
	}
	for i := range s.Things[1:] {
		if s.Things[i].Distance > s.Things[i+1].Distance {
			t.Error("the nearest comes first")
		}
	}
	// The table stands from 230 to 1130 mm, the seat at 1700.
	near(t, "free to the left", s.Left.Free, 570, 0.5)
	if s.Left.Part != "roll-out table" || s.Right.Name == "" {
		t.Errorf("%+v %+v", s.Left, s.Right)
	}
}

func TestNobodySits(t *testing.T) {
	d, j := design(t)
	d2 := model.NewDesign("empty", d.Room)
	d2.Finish()
	if got := sit.Of(d2, j.Wiring); len(got) != 0 {
		t.Errorf("%v", got)
	}
}

// BenchmarkStudio measures all that is worked out of the people of a design.
func BenchmarkStudio(b *testing.B) {
	for b.Loop() {
		b.StopTimer()
		d, j := design(b)
		b.StartTimer()
		sit.Of(d, j.Wiring)
	}
}
