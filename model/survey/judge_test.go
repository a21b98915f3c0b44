package survey_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"slabwright/model/survey"
	"slabwright/model/unit"
)

// judgedRoom is what is expected of the statistics of a synthetic room; the
// file names the source.
type judgedRoom struct {
	ID       string
	Widths   []string
	Limit, P float64
	Answer   string
	Groups   [][]string
	Readings []judgedReading
	Rejected []struct {
		ID       string
		W, Error float64
	}
	After *struct {
		Adjusted map[survey.Point][2]float64
		VTPV     float64
		DOF      int
		P        float64
		Groups   [][]string
		Readings []judgedReading
	}
	Worst float64
	Helps []struct {
		Add         string
		SD, Weakest float64
		Unchecked   int
		Least       *float64
	}
	Repeats []struct {
		ID string
		SD float64
	}
}

type judgedReading struct {
	ID                  string
	V, R, W             float64
	Least, Pull, Damage *float64
}

func judgedRooms(t testing.TB) []judgedRoom {
	var f struct{ Rooms []judgedRoom }
	load(t, "statistics.json", &f)
	return f.Rooms
}

// widths are the deciding measures of the tables: the widths of a room.
func (r room) widths(ids []string) []survey.Deciding {
	var out []survey.Deciding
	for _, f := range r.Functionals {
		if slices.Contains(ids, f.ID) {
			out = append(out, survey.Deciding{Name: f.ID, Reading: f.reading(true)})
		}
	}
	return out
}

func ids(r *survey.Result, groups [][]int) [][]string {
	out := [][]string{}
	for _, g := range groups {
		var names []string
		for _, i := range g {
			names = append(names, r.Readings[i].Reading.ID)
		}
		out = append(out, names)
	}
	return out
}

func TestSyntheticRoomsJudged(t *testing.T) {
	for k, want := range judgedRooms(t) {
		t.Run(want.ID, func(t *testing.T) {
			room := rooms(t)[k]
			deciding := room.widths(want.Widths)
			r := adjust(t, room.network())
			v := r.Judge(survey.Options{Deciding: deciding})
			if v.Test.Answer.String() != want.Answer {
				t.Errorf("readings %s, want %s", v.Test.Answer, want.Answer)
			}
			near(t, "limit", v.Test.Limit, want.Limit, 6e-5)
			near(t, "p", v.Test.P, want.P, 6e-6*max(1e-12, want.P*10))
			compareJudged(t, v.Readings, want.Readings)
			sameGroups(t, ids(r, r.Inseparable()), want.Groups)
			near(t, "worst width", worstSD(v, deciding), want.Worst, 6e-5)
			if len(v.Suspects) != len(want.Rejected) || v.More {
				t.Fatalf("%d suspects, more %v", len(v.Suspects), v.More)
			}
			for i, x := range want.Rejected {
				a := v.Suspects[i].Readings[0]
				if a.Reading.ID != x.ID || len(v.Suspects[i].Readings) != 1 || !v.Readings[a.Index].Suspected {
					t.Errorf("suspect %+v, want %s alone", v.Suspects[i], x.ID)
				}
				near(t, "w", a.W, x.W, 6e-5)
				near(t, "error", float64(a.Error), x.Error, 0.006)
			}
			if want.After != nil {
				after := v.Without
				near(t, "vTPv after", after.VTPV, want.After.VTPV, 6e-6)
				near(t, "p after", v.AfterTest.P, want.After.P, 6e-6)
				if after.DOF != want.After.DOF {
					t.Errorf("%d degrees of freedom after", after.DOF)
				}
				for p, at := range want.After.Adjusted {
					got, _ := after.At(p)
					near(t, string(p)+".x after", float64(got.X), at[0], 6e-5)
					near(t, string(p)+".y after", float64(got.Y), -at[1], 6e-5)
				}
				compareJudged(t, after.Judge(survey.Options{Deciding: deciding}).Readings, want.After.Readings)
				sameGroups(t, ids(after, after.Inseparable()), want.After.Groups)
			}
		})
	}
}

// worstSD is the standard deviation of the worst width, after rejection if any.
func worstSD(v survey.Verdict, deciding []survey.Deciding) float64 {
	if v.Without != nil {
		v = v.Without.Judge(survey.Options{Deciding: deciding, Next: -1})
	}
	worst := unit.Length(0)
	for _, d := range v.Deciding {
		worst = max(worst, d.SD)
	}
	return float64(worst)
}

func compareJudged(t *testing.T, got []survey.Judged, want []judgedReading) {
	t.Helper()
	for i, w := range want {
		g := got[i]
		if g.Reading.ID != w.ID {
			t.Fatalf("reading %d is %s, want %s", i, g.Reading.ID, w.ID)
		}
		if w.W != 0 {
			near(t, w.ID+" w", g.W, w.W, 6e-5)
			near(t, w.ID+" v", float64(g.Residual)+g.AngleResidual.Degrees(), w.V, 6e-5)
			near(t, w.ID+" r", g.Redundancy, w.R, 6e-6)
		}
		sd, least := float64(g.Reading.SD), float64(g.Least)
		if g.Reading.Kind == survey.Angle {
			sd, least = g.Reading.AngleSD.Degrees(), g.LeastAngle.Degrees()
		}
		near(t, w.ID+" pull", float64(g.Sway)/sd, *w.Pull, 6e-5)
		if w.Least == nil {
			if g.Checked || g.Least != 0 || g.LeastAngle != 0 || g.Damage != 0 {
				t.Errorf("%s: nothing checks it, but %+v", w.ID, g)
			}
			continue
		}
		near(t, w.ID+" least", least, *w.Least, 6e-4)
		near(t, w.ID+" damage", float64(g.Damage), *w.Damage, 6e-4)
	}
}

func sameGroups(t *testing.T, got, want [][]string) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("groups %v, want %v", got, want)
	}
	for _, w := range want {
		if !slices.ContainsFunc(got, func(g []string) bool { slices.Sort(g); slices.Sort(w); return slices.Equal(g, w) }) {
			t.Errorf("groups %v, want %v", got, want)
		}
	}
}

// One more reading, or a second one of the same thing: the rank-one formula
// against the numbers of two other programs, and against a full adjustment.
func TestWeighing(t *testing.T) {
	p := func(list ...survey.Point) []survey.Point { return list }
	square := func(at survey.Point, a, c survey.Point, m, n unit.Length) survey.Reading {
		return survey.Reading{Kind: survey.SquareOff, Points: p(a, at, c), A: m, B: n}
	}
	width := func(depth unit.Length) survey.Reading {
		return survey.Reading{Kind: survey.Width, Points: p("B", "C"), A: depth, SD: 1.2}
	}
	candidates := map[string]survey.Reading{
		"R1 width_700": width(700), "R1 345_C": square("C", "B", "D", 600, 800), "R1 345_D": square("D", "C", "A", 600, 800),
		"R1 prot_B":    {Kind: survey.Interior, Points: p("B")},
		"R2 width_700": width(700), "R2 345_D": square("D", "C", "A", 600, 800),
		"R3 AD": {Points: p("A", "D")}, "R3 w_front2": width(800), "R3 345_B_big": square("B", "A", "C", 600, 800),
		"R3 prot_B": {Kind: survey.Interior, Points: p("B")},
		"R4 w_mid":  width(350), "R4 diag_BD": {Points: p("B", "D")}, "R4 prot_C": {Kind: survey.Interior, Points: p("C")},
		"R4 345_C": square("C", "B", "D", 400, 300), "R4 diag_AC": {Points: p("A", "C")},
	}
	used := 0
	for k, want := range judgedRooms(t) {
		room := rooms(t)[k]
		deciding := room.widths(want.Widths)
		r := adjust(t, room.network())
		if v := r.Judge(survey.Options{Deciding: deciding}); v.Without != nil {
			r = v.Without
		}
		for _, h := range want.Helps {
			label := room.ID + " " + h.Add
			rd, ok := candidates[label]
			if !ok {
				t.Fatalf("no candidate for %s", label)
			}
			used++
			c, err := r.Weigh(rd, deciding)
			if err != nil {
				t.Fatal(err)
			}
			near(t, label+" sd", float64(c.Worst), h.SD, 6e-5)
			near(t, label+" weakest", c.Weakest, h.Weakest, 6e-5)
			if len(c.Left) != h.Unchecked {
				t.Errorf("%s leaves %v unchecked, want %d", label, c.Left, h.Unchecked)
			}
			if h.Least != nil {
				near(t, label+" unseen", float64(c.Unseen), *h.Least, 0.006)
			}
			confirm(t, label, r, rd, c, deciding)
		}
		for _, again := range want.Repeats {
			for _, o := range r.Readings {
				if o.Reading.ID == again.ID {
					c, err := r.Weigh(o.Reading, deciding)
					if err != nil {
						t.Fatal(err)
					}
					near(t, room.ID+" again "+again.ID, float64(c.Worst), again.SD, 6e-5)
				}
			}
		}
	}
	if used != len(candidates) {
		t.Errorf("%d of %d candidates used", used, len(candidates))
	}
}

// confirm takes a candidate at its expected value and adjusts in full.
func confirm(t *testing.T, label string, r *survey.Result, rd survey.Reading, c survey.Candidate, deciding []survey.Deciding) {
	t.Helper()
	n := survey.Network{Chain: []survey.Point{"A", "B", "C", "D"}, Closed: label[:2] < "R3", Base: [2]survey.Point{"B", "C"}}
	for _, o := range r.Readings {
		x := o.Reading
		x.Length, x.Angle = x.Length+o.Residual, x.Angle+o.AngleResidual
		n.Readings = append(n.Readings, x)
	}
	rd.ID, rd.Length, rd.Angle = "added", c.Expected.Length.Value, c.Expected.Angle
	rd.SD, rd.AngleSD = c.Reading.SD, c.Reading.AngleSD
	n.Readings = append(n.Readings, rd)
	v := adjust(t, n).Judge(survey.Options{Deciding: deciding, Next: -1})
	for i, d := range v.Deciding {
		near(t, label+" "+d.Name, float64(c.SDs[i]), float64(d.SD), 1e-6)
	}
	damage, left := unit.Length(0), 0
	for _, j := range v.Readings {
		damage = max(damage, j.Damage)
		if !j.Checked {
			left++
		}
	}
	near(t, label+" damage", float64(c.Damage), float64(damage), 1e-4*float64(damage))
	near(t, label+" redundancy", c.Redundancy, v.Readings[len(v.Readings)-1].Redundancy, 1e-6)
	if left != len(c.Left) {
		t.Errorf("%s leaves %d unchecked, foretold %d", label, left, len(c.Left))
	}
}

// Values of the chi-square table of any textbook (95 %), and of the normal
// distribution.
func TestTables(t *testing.T) {
	for dof, want := range map[int]float64{1: 3.84, 2: 5.99, 3: 7.81, 4: 9.49, 5: 11.07, 8: 15.51} {
		n := box()
		for i := range dof {
			n.Readings = append(n.Readings, dist("A", "D", 2000+i%2)...)
			n.Readings[len(n.Readings)-1].ID = ""
		}
		n.Readings = append(n.Readings, dist("A", "C", 2332, "B", "D", 2332)...)
		// 6 readings more than the 5 unknowns of three walls: dof readings to spare.
		r := adjust(t, n)
		if r.DOF != dof {
			t.Fatalf("%d degrees of freedom, want %d", r.DOF, dof)
		}
		near(t, "limit", r.Test().Limit, want, 0.005)
	}
	near(t, "an error of 4.1321 standard deviations is noticed in 80 %", survey.Detection(4.1321, 1), 0.80, 1e-4)
	near(t, "one of 3.2905 in half of all cases", survey.Detection(-3.2905, 1), 0.5, 1e-6)
	// A reading of redundancy 0.05: 20 mm on 1.14 mm are predicted to be found
	// in 73 % (own simulation: 74 %).
	near(t, "20 mm at redundancy 0.04997", survey.Detection(20/1.14, 0.04997), 0.736, 0.01)
	near(t, "where nothing checks", survey.Detection(1000, 0), 0, 0)
}

// Three walls, one width, one 3-4-5: five readings, five unknowns. Nothing may
// be called passed, and no chance may be told.
func TestNothingToSpareIsUnchecked(t *testing.T) {
	r := adjust(t, rooms(t)[3].network())
	v := r.Judge(survey.Options{})
	if v.Test != (survey.GlobalTest{Answer: survey.NothingChecks, Sum: v.Test.Sum}) || v.Test.Answer.String() != "unchecked" {
		t.Errorf("test %+v", v.Test)
	}
	if len(v.Unchecked) != 5 || len(v.Suspects) != 0 || v.Without != nil {
		t.Errorf("unchecked %v, suspects %v", v.Unchecked, v.Suspects)
	}
	for _, d := range v.Deciding {
		if !d.Unchecked || d.By != -1 {
			t.Errorf("%s hangs on unchecked readings: %+v", d.Name, d)
		}
	}
	// A 3-4-5 in the other corner checks all that the fit hangs on; a diagonal
	// alone would leave errors of hundreds of millimetres unseen.
	best := v.Next[0]
	if best.Reading.Kind != survey.SquareOff || best.Reading.Points[1] != "C" || best.LeftMatter != 0 || len(best.Checks) != 3 {
		t.Errorf("best next reading %+v", best)
	}
	for i := 1; i < len(v.Next); i++ {
		a, b := v.Next[i-1], v.Next[i]
		if a.LeftMatter > b.LeftMatter || a.LeftMatter == b.LeftMatter && a.Worst > b.Worst && a.Damage > b.Damage {
			t.Errorf("%v stands before %v", a.Reading, b.Reading)
		}
	}
}

// A room may pass its test while a niche hangs on readings that nothing checks.
func TestPartlyUnchecked(t *testing.T) {
	n := survey.Network{
		Chain: []survey.Point{"A", "B", "C", "D", "E"}, Base: [2]survey.Point{"B", "C"},
		Turns: map[survey.Point]survey.Turn{"D": survey.Outside},
		Readings: append(dist("A", "B", 800, "B", "C", 1800, "C", "D", 700, "A", "C", 1970, "B", "D", 1931, "A", "D", 1803, "D", "E", 300),
			survey.Reading{ID: "angle D", Kind: survey.Interior, Points: []survey.Point{"D"}, Angle: 270 * unit.Degree}),
	}
	v := adjust(t, n).Judge(survey.Options{})
	if v.Test.Answer != survey.Agree {
		t.Fatalf("test %+v", v.Test)
	}
	if !slices.Equal(v.Unchecked, []int{6, 7}) {
		t.Errorf("unchecked %v, want the wall D-E and the angle at D", v.Unchecked)
	}
}

// A second reading of the same wall catches a slip of the tape; it does not
// make the wall checked by the rest of the room.
func TestRepeatsAreToldApart(t *testing.T) {
	n := rooms(t)[3].network()
	again := n.Readings[0]
	again.ID = "BC again"
	n.Readings = append(n.Readings, again)
	v := adjust(t, n).Judge(survey.Options{})
	for i, want := range []bool{true, false, false, false, false, true} {
		if v.Readings[i].Repeated != want || v.Readings[i].Checked != want {
			t.Errorf("%s: repeated %v, checked %v", v.Readings[i].Reading.ID, v.Readings[i].Repeated, v.Readings[i].Checked)
		}
	}
	for _, j := range adjust(t, rooms(t)[2].network()).Judge(survey.Options{}).Readings {
		if j.Repeated {
			t.Errorf("%s was read once only", j.Reading.ID)
		}
	}
}

// With a slip left out, what a further reading checks is still numbered as the
// whole network is.
func TestCandidatesAreNumberedAsTheWhole(t *testing.T) {
	n := box(dist("A", "C", 2332, "B", "D", 2332)...)
	n.Readings = append(dist("A", "D", 2050), n.Readings...) // nothing else checks A-D's side of the room
	v := adjust(t, n).Judge(survey.Options{})
	if len(v.Suspects) != 1 || v.AfterTest.Answer != survey.NothingChecks || len(v.Next) == 0 {
		t.Fatalf("suspects %+v, next %d", v.Suspects, len(v.Next))
	}
	left := -1 // the one that was left out
	for i := range n.Readings {
		if !slices.ContainsFunc(v.Without.Readings, func(o survey.Outcome) bool { return o.Reading.ID == n.Readings[i].ID }) {
			left = i
		}
	}
	for _, c := range v.Next {
		var all []int
		all = append(append(all, c.Checks...), c.Left...)
		slices.Sort(all)
		want := []int{0, 1, 2, 3, 4, 5}
		if !slices.Equal(all, slices.Delete(want, left, left+1)) {
			t.Errorf("%s speaks of %v, %d was left out", c.Reading.Name(), all, left)
		}
	}
}

func TestJudgingIsRepeatable(t *testing.T) {
	n := studio()
	n.Readings[3].Length += 25
	first := adjust(t, n).Judge(survey.Options{Next: 20})
	for range 5 {
		v := adjust(t, n).Judge(survey.Options{Next: 20})
		v.Without, first.Without = nil, nil
		if !reflect.DeepEqual(v, first) {
			t.Fatal("the same readings are judged differently")
		}
	}
	if len(first.Next) != 20 {
		t.Errorf("%d candidates", len(first.Next))
	}
}

// The niche of the studio hangs on few readings, and the verdict says what
// would help: readings of the corner E or F, across the line.
func TestStudioJudged(t *testing.T) {
	n := studio()
	n.Readings = append(n.Readings, dist("A", "F", 2209, "C", "H", 2021)...)
	v := adjust(t, n).Judge(survey.Options{})
	names := map[string]bool{}
	for _, d := range v.Deciding {
		names[d.Name] = true
		if d.Unchecked || d.SD <= 0 || math.IsNaN(float64(d.Damage)) {
			t.Errorf("%+v", d)
		}
	}
	for _, want := range []string{"width 50 mm before B-G", "width 800 mm before B-G", "slant of A-B over 800 mm", "length B-C", "E off the line B-G", "width 229 mm before D-E"} {
		if !names[want] {
			t.Errorf("no deciding measure %q in %v", want, names)
		}
	}
	worst := unit.Length(0)
	for _, d := range v.Deciding {
		worst = max(worst, d.Damage)
	}
	if best := v.Next[0]; !slices.Contains(best.Reading.Points, "E") && !slices.Contains(best.Reading.Points, "F") || best.Damage > worst/2 {
		t.Errorf("best next reading %v leaves %.1f of %.1f mm", best.Reading.Points, float64(best.Damage), float64(worst))
	}
}
