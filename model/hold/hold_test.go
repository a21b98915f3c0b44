package hold_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/hold"
	"slabwright/model/stock"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// room is three walls with square corners: 800 deep, 1600 wide.
func room(t testing.TB) *model.Room {
	t.Helper()
	at := map[string]geom.Vec{"A": geom.V(0, -800), "B": geom.V(0, 0), "C": geom.V(1600, 0), "D": geom.V(1600, -800)}
	p := model.RoomPlan{At: 745, Corners: []model.CornerPlan{{Name: "A"}, {Name: "B"}, {Name: "C"}, {Name: "D"}}, Walls: []model.WallPlan{
		{Name: "left", From: "A", To: "B", Make: model.Brick}, {Name: "back", From: "B", To: "C", Make: model.Brick}, {Name: "right", From: "C", To: "D", Make: model.Brick},
	}}
	names := []string{"A", "B", "C", "D"}
	for i, a := range names {
		for _, b := range names[:i] {
			p.Readings = append(p.Readings, survey.Reading{ID: a + b, Points: []survey.Point{survey.Point(a), survey.Point(b)}, Length: at[a].Sub(at[b]).Len(), SD: 0.001})
		}
	}
	r, err := model.NewRoom(p)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// desk is a worktop on angles along some walls, screwed or loose.
func desk(t testing.TB, depth unit.Length, screwed bool, section stock.AngleSection, walls ...string) *model.Design {
	t.Helper()
	r := room(t)
	d := model.NewDesign("desk", r)
	d.Add("top", model.Slab(stock.Ash, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(5, 5).Depth(depth).SurfaceAt(750))
	for _, w := range walls {
		a := model.Angle(section).Along(r.Wall(w)).Under("top").ClearOf(3)
		if screwed {
			a = a.ScrewedUp(model.Screws{Hole: 6, Slot: 8, Pitch: 300, End: 65, Pilot: 4, Into: 25})
		}
		d.Add("angle "+w, a)
	}
	finish(t, d)
	return d
}

func finish(t testing.TB, d *model.Design) {
	t.Helper()
	d.Finish()
	for _, f := range d.Faults() {
		t.Fatal(f.Why)
	}
}

func job(l model.Loads) model.Job { return model.Job{Loads: l} }

func top(t testing.TB, d *model.Design, l model.Loads) hold.Slab {
	t.Helper()
	b, ok := hold.Of(d, job(l)).Of("top")
	if !ok || b.Trouble != "" {
		t.Fatalf("no statics of the top: %s", b.Trouble)
	}
	return b
}

func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s is %.5g, expected %.5g within %.1f %%", what, got, want, 100*share)
	}
}

// In every case the carriers take what lies on the slab, no more and no less.
func TestCarriersTakeTheLoad(t *testing.T) {
	for _, screwed := range []bool{false, true} {
		b := top(t, desk(t, 600, screwed, stock.L50x50x6, "left", "back", "right"), model.Loads{})
		if len(b.Cases) < 9 {
			t.Errorf("only %d cases", len(b.Cases))
		}
		for _, c := range b.Cases {
			var sum float64
			for _, r := range c.Runs {
				sum += r.Force
				if !screwed && len(r.Screws) > 0 {
					t.Errorf("%s: screws that are not there pull", r.Carrier)
				}
			}
			near(t, string(c.Kind)+" "+c.Worst+": sum of the carriers", sum, c.Total, 1e-5)
		}
	}
}

// A board on two angles is a beam from toe to toe: 5 q L4/(384 E I), q L2/8 and
// half the load on each side, any handbook; the legs give a little more.
func TestBoardIsABeam(t *testing.T) {
	b := top(t, desk(t, 300, false, stock.L40x40x5, "left", "right"), model.Loads{Grade: "D30", Worktop: 80})
	c, _ := b.Case(hold.Daily)
	length, span, width, thick, e := 1590.0, 1600.0-2*40, 300.0, 40.0, 11000.0
	q := (700e-9*thick + 80e-6) * 9.81 * width
	near(t, "weight", c.Total, q*length, 1e-6)
	m := q*span*span/8 - q*35*35/2
	near(t, "stress", c.Along.Value, m/(width*thick*thick/6), 0.04)
	near(t, "sinking", float64(c.Lowest.Down), 5*q*math.Pow(span, 4)/(384*e*width*math.Pow(thick, 3)/12), 0.06)
	for _, r := range c.Runs {
		near(t, r.Carrier, r.Force, q*length/2, 0.01)
		if r.FromHeel < 35 || r.FromHeel > 40 {
			t.Errorf("%s is pressed %v from its heel: a loose board rests on the toe, 40", r.Carrier, r.FromHeel)
		}
	}
	near(t, "design strength along the grain", c.Along.Strength, 30*0.7/1.3, 1e-9)
	near(t, "design strength across the grain", c.Across.Strength, 0.6*0.7/1.3, 1e-9)
}

// A person presses by the law of the lever between where the angles are pressed:
// at their toes, 40 mm from their heels, or a little behind one that the person
// stands near.
func TestPersonAtTheEnd(t *testing.T) {
	b := top(t, desk(t, 300, false, stock.L40x40x5, "left", "right"), model.Loads{Person: 80, Step: 1.5, Worktop: 1e-9})
	for _, c := range b.Cases {
		if c.Person == nil || !c.Design {
			continue
		}
		weight := 700e-9 * 40 * 300 * 1590 * 9.81 * 1.35
		person := 80 * 9.81 * 1.5 * 1.5
		near(t, "all loads", c.Total, weight+person, 1e-6)
		if x := c.Person.X; x <= 60 || x >= 1540 {
			continue
		}
		from := map[string]unit.Length{}
		for _, r := range c.Runs {
			from[r.Carrier] = r.FromHeel
			if r.FromHeel < 35 || r.FromHeel > 40.001 {
				t.Errorf("%s: %s is pressed %v from its heel", c.Worst, r.Carrier, r.FromHeel)
			}
		}
		left, right := from["angle left"], 1600-from["angle right"]
		for _, r := range c.Runs {
			share := func(x unit.Length) float64 {
				if r.Carrier == "angle right" {
					return float64((x - left) / (right - left))
				}
				return float64((right - x) / (right - left))
			}
			near(t, c.Worst+": "+r.Carrier, r.Force, weight*share(800)+person*share(c.Person.X), 1e-5)
		}
	}
}

// The leg bends as a cantilever: 1 N/mm, 54 mm from the wall on a leg of 6 mm
// gives 0.00975 mm (own arithmetic, (54-6)^3/(3 E I)). Against a plate on firm
// legs, thin legs make the desk softer.
func TestLegsYield(t *testing.T) {
	stiff := top(t, desk(t, 600, false, stock.L60x60x8, "left", "back", "right"), model.Loads{})
	soft := top(t, desk(t, 600, false, stock.L60x60x5, "left", "back", "right"), model.Loads{})
	a, _ := stiff.Case(hold.PersonSinks)
	b, _ := soft.Case(hold.PersonSinks)
	if b.Lowest.Down <= a.Lowest.Down {
		t.Errorf("legs of 5 mm: %v, legs of 8 mm: %v", b.Lowest.Down, a.Lowest.Down)
	}
}

// Screws hold down what would lift, and nothing else.
func TestScrewsHoldDown(t *testing.T) {
	loose := top(t, desk(t, 600, false, stock.L50x50x6, "left", "back", "right"), model.Loads{})
	fast := top(t, desk(t, 600, true, stock.L50x50x6, "left", "back", "right"), model.Loads{})
	a, _ := loose.Case(hold.PersonLifts)
	b, _ := fast.Case(hold.PersonLifts)
	if !(a.Highest.Down < -0.3 && b.Highest.Down > a.Highest.Down) {
		t.Errorf("lift: loose %v, screwed %v", a.Highest.Down, b.Highest.Down)
	}
	pulls := 0
	for _, r := range b.Runs {
		pulls += len(r.Screws)
	}
	if pulls == 0 {
		t.Error("no screw pulls though a corner would lift")
	}
}

// A top on the back wall alone tips as soon as it is let go.
func TestTips(t *testing.T) {
	s := hold.Of(desk(t, 600, false, stock.L50x50x6, "back"), job(model.Loads{}))
	if !strings.Contains(s.Slabs[0].Trouble, "tips") {
		t.Errorf("trouble: %q", s.Slabs[0].Trouble)
	}
	s = hold.Of(desk(t, 600, false, stock.L50x50x6), job(model.Loads{}))
	if s.Slabs[0].Trouble != "nothing carries it" {
		t.Errorf("trouble: %q", s.Slabs[0].Trouble)
	}
	// On one side wall and the back it lies, but a person in the free corner
	// turns it off its angles.
	s = hold.Of(desk(t, 600, false, stock.L50x50x6, "left", "back"), job(model.Loads{}))
	if b := s.Slabs[0]; b.Trouble != "" || !b.Tips || b.TipsAt.X < 800 {
		t.Errorf("tips: %v at %v (%s)", b.Tips, b.TipsAt, b.Trouble)
	}
}

// An arm clamped to the back edge of a board on two angles that reaches to the
// front: its couple shifts nothing between left and right, but presses the
// front of the angles.
func TestArm(t *testing.T) {
	at := func(reach unit.Length) hold.Case {
		b := top(t, desk(t, 600, false, stock.L50x50x6, "left", "right"), model.Loads{Things: []model.Thing{{Name: "arm", On: "top", Along: 800, Back: 60, Mass: 15, Reach: reach}}})
		c, _ := b.Case(hold.Daily)
		return c
	}
	plain, reaching := at(0), at(400)
	near(t, "all loads", reaching.Total, plain.Total, 1e-9)
	shift := 0.0
	for i, r := range plain.Runs {
		// Along the left angle the front is at its start, along the right at its end.
		d := float64(reaching.Runs[i].Along*unit.Length(reaching.Runs[i].Force) - r.Along*unit.Length(r.Force))
		if r.Carrier == "angle left" {
			d = -d
		}
		shift += d
	}
	near(t, "moment that goes to the front", shift, 15*9.81*400, 0.01)
}

// A groove weakens, and is taken with its true section.
func TestGrooveWeakens(t *testing.T) {
	with := func(depth unit.Length) hold.Slab {
		r := room(t)
		d := model.NewDesign("desk", r)
		s := model.Slab(stock.Ash, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(5, 5).Depth(600).SurfaceAt(750)
		if depth > 0 {
			s = s.Groove("run", model.UnderFace, 20, depth, model.At{X: 800, Back: 80}, model.At{X: 800, Back: 560})
		}
		d.Add("top", s)
		for _, w := range []string{"left", "right"} {
			d.Add("angle "+w, model.Angle(stock.L50x50x6).Along(r.Wall(w)).Under("top").ClearOf(3))
		}
		finish(t, d)
		return top(t, d, model.Loads{})
	}
	plain, grooved := with(0), with(20)
	a, _ := plain.Case(hold.Daily)
	b, _ := grooved.Case(hold.Daily)
	if !(b.Lowest.Down > 1.05*a.Lowest.Down && b.Along.Value > 2*a.Along.Value) {
		t.Errorf("a groove of half the thickness across the grain: sinks %v and %v, stress %v and %v", a.Lowest.Down, b.Lowest.Down, a.Along.Value, b.Along.Value)
	}
}

// A shelf on rods is a cantilever: half the load on each rod, its weight times
// its depth as the moment at the wall.
func TestRods(t *testing.T) {
	r := room(t)
	d := model.NewDesign("shelf", r)
	d.AddShelf("shelf", model.Shelf(stock.Ash, 45).Between(r.Wall("back").Mark(400), r.Wall("back").Mark(1000)).Against(r.Wall("back")).Gaps(0, 3).Depth(240).UndersideAt(1400).
		OnRods(model.Rods{Dia: 16, InWall: 120, InShelf: 160, Pitch: 450, End: 100}))
	finish(t, d)
	b, _ := hold.Of(d, job(model.Loads{})).Of("shelf")
	if b.Trouble != "" || b.Walked {
		t.Fatalf("trouble %q, walked on %v", b.Trouble, b.Walked)
	}
	c, _ := b.Case(hold.Daily)
	for _, run := range c.Runs {
		near(t, run.Carrier, run.Force, c.Total/2, 0.01)
		near(t, run.Carrier+": lever from the wall", float64(run.FromHeel), 3+120, 0.03)
	}
}

func TestAssumptionsAndUse(t *testing.T) {
	l, assumed := hold.Filled(model.Job{People: []model.Person{{Mass: 75}, {Mass: 120}}})
	if l.Person != 120 || l.Grade != stock.Ungraded || l.Service != 1 || len(assumed) != 6 {
		t.Errorf("loads %+v, %d assumptions", l, len(assumed))
	}
	given := model.Loads{Person: 60, Step: 2, Worktop: 10, Shelf: 20, Service: 2, Grade: "D30"}
	if l, assumed := hold.Filled(job(given)); len(assumed) != 0 || !reflect.DeepEqual(l, given) {
		t.Errorf("given loads came out as %+v with %v", l, assumed)
	}
	wet := model.Job{House: model.House{Climate: model.Climate{Moisture: 25}}}
	d := desk(t, 300, false, stock.L40x40x5, "left", "right")
	dry, _ := hold.Of(d, model.Job{}).Of("top")
	green, _ := hold.Of(d, wet).Of("top")
	near(t, "k_def of dry wood", dry.Creep, 0.6, 1e-9)
	near(t, "k_def of wet wood", green.Creep, 1.6, 1e-9)
	if green.Years <= dry.Years {
		t.Error("wet wood creeps no more than dry wood")
	}
	again := hold.Of(desk(t, 300, false, stock.L40x40x5, "left", "right"), model.Job{})
	if first := hold.Of(d, model.Job{}); !reflect.DeepEqual(first.Slabs[0].Cases, again.Slabs[0].Cases) {
		t.Error("the same desk gives other numbers the second time")
	}
}

// A screw keeps its pilot hole wherever it stands in its slot.
func TestPilotOffTheMiddleOfASlot(t *testing.T) {
	lift := func(by unit.Length) unit.Length {
		d := desk(t, 600, true, stock.L50x50x6, "left", "back", "right")
		s := d.Part("top").Slab
		for i := range s.Features {
			if f := &s.Features[i]; f.Kind == model.Pilot && f.For == "angle back" {
				f.At = f.At.Add(geom.V(0, by))
			}
		}
		b := top(t, d, model.Loads{})
		c, _ := b.Case(hold.PersonLifts)
		return c.Highest.Down
	}
	if middle, off, missed := lift(0), lift(3), lift(12); middle != off || middle == missed {
		t.Errorf("lift with pilots in the middle of their slots %v, 3 mm off %v, beside them %v", middle, off, missed)
	}
}
