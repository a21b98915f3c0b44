package fit

import (
	"errors"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"slabwright/model/unit"
)

// two is a part with one station at each end, gaps and spreads as given, the
// least gap 2 and the widest 6.
func two(gapL, sdL, gapR, sdR, covariance float64) Problem {
	return Problem{
		Stations: []Station{
			{Edge: "left", Gap: unit.Length(gapL), Least: 2, Widest: 6, Rate: 1, Trims: true},
			{Edge: "right", Gap: unit.Length(gapR), Least: 2, Widest: 6, Rate: -1, Trims: true},
		},
		Covariance: [][]float64{{sdL * sdL, covariance}, {covariance, sdR * sdR}},
		Share:      0.5,
	}
}

func solve(t testing.TB, p Problem) *Chance {
	t.Helper()
	a, err := Solve(p)
	if err != nil {
		t.Fatal(err)
	}
	if a.Chance == nil {
		t.Fatal("no chance given")
	}
	return a.Chance
}

// cdf is the standard normal distribution by Simpson's rule, so that nothing
// rests on the function under test.
func cdf(z float64) float64 {
	const n = 4000
	lo := -10.0
	h := (z - lo) / n
	f := func(x float64) float64 { return math.Exp(-x*x/2) / math.Sqrt(2*math.Pi) }
	sum := f(lo) + f(z)
	for i := 1; i < n; i++ {
		sum += f(lo+h*float64(i)) * float64(2+2*(i%2))
	}
	return sum * h / 3
}

// TestRectangleOfKnownSpread has closed forms: the play is normal with mean
// (4 - 2) + (3 - 2) = 3 and variance 0.6^2 + 0.8^2 = 1.
func TestRectangleOfKnownSpread(t *testing.T) {
	c := solve(t, two(4, 0.6, 3, 0.8, 0))
	near(t, "as drawn", c.AsDrawn, (cdf(2/0.6)-cdf(-2/0.6))*(cdf(3/0.8)-cdf(-1/0.8)), 0.004)
	for _, longer := range []float64{-2, 0, 1.5, 3, 4} {
		want := cdf(3 - longer)
		near(t, "drawn rooms", c.Fits(unit.Length(longer)), want, 0.005)
		low, high := c.Bounds(unit.Length(longer))
		near(t, "sum", low, want, 1e-9)
		near(t, "tightest", high, want, 1e-9)
		// In place the part shows (play - longer)/2 + 2 on both sides; 6 is too
		// wide when the play is more than 8 + longer.
		near(t, "too wide", c.TooWide(unit.Length(longer)), cdf(3-longer-8), 0.005)
	}
	long := c.Longest(0.99)
	near(t, "longest", float64(long.Linear), 3-2.3263479, 1e-6)
	near(t, "longest, safe", float64(long.Safe), 3-2.3263479, 1e-6)
	near(t, "longest, drawn", float64(long.Drawn), 3-2.3263479, 0.03)
	// Slid fast, or with both gaps growing alike, the numbers change as they should.
	p := two(4, 0.6, 3, 0.8, 0)
	p.Stations[0].Rate, p.Stations[1].Rate = 0.5, -0.5
	near(t, "walls at 60 degrees", float64(solve(t, p).Play().Value), 6, 0.03)
	c = solve(t, two(4, 0.7, 3, 0.7, -0.49))
	near(t, "walls that shift together", float64(c.Play().SD), 0, 1e-6)
	near(t, "fits surely", c.Fits(2.999), 1, 0)
	near(t, "fits never", c.Fits(3.001), 0, 0)
	c = solve(t, two(4, 0.7, 3, 0.7, 0.49))
	near(t, "walls that part together", float64(c.Play().SD), 1.4, 0.01)
}

// TestShareOfThePlay: a part whose joint is kept closed at its end shows all
// the play at its start.
func TestShareOfThePlay(t *testing.T) {
	p := two(4, 0.6, 3, 0.8, 0)
	p.Share = 1
	c := solve(t, p)
	near(t, "too wide", c.TooWide(0), cdf(3-4), 0.005) // play more than 4
	p.Share = 0
	p.Stations[1].Widest = 0
	near(t, "nobody looks", solve(t, p).TooWide(0), 0, 0)
}

// TestKnownRoomIsCertain: without any spread the part fits or it does not.
func TestKnownRoomIsCertain(t *testing.T) {
	c := solve(t, two(4, 0, 3, 0, 0))
	near(t, "as drawn", c.AsDrawn, 1, 0)
	near(t, "fits", c.Fits(3), 1, 0)
	near(t, "fits not", c.Fits(3.01), 0, 0)
	low, high := c.Bounds(3)
	near(t, "bounds", low+high, 2, 0)
	near(t, "longest", float64(c.Longest(0.99).Safe), 3, 1e-9)
}

// TestTongue: an edge that is not trimmed feels half of a longer part, and two
// of them feel nothing of it.
func TestTongue(t *testing.T) {
	p := two(6, 0, 6, 0, 0)
	p.Stations[1].Trims = false
	near(t, "tongue at the end", float64(solve(t, p).Longest(0.99).Linear), 16, 1e-9)
	p.Stations[0].Trims = false
	c := solve(t, p)
	near(t, "both fixed", c.Fits(1000), 1, 0)
	if _, err := c.Order(Want{Size: 1000}); err == nil {
		t.Error("an order is made where no size decides")
	}
	p.Stations[0].Gap, p.Stations[1].Gap = 1, 2
	near(t, "both fixed and too wide", solve(t, p).Fits(-1000), 0, 0)
}

// random is a part with some stations on bowed walls, gaps spread by a few
// independent causes.
func random(r *rand.Rand, each int) Problem {
	p := Problem{Share: 0.5}
	var rows [][]float64
	causes := 3 + r.IntN(5)
	for _, rate := range []float64{1, -1} {
		for i := range each {
			s := float64(i) / float64(each-1)
			p.Stations = append(p.Stations, Station{Gap: unit.Length(4 + 3*r.Float64()*4*s*(1-s)), Least: 2, Widest: 9, Rate: rate * (0.8 + 0.4*r.Float64()), Trims: true})
			var row []float64
			for range causes {
				row = append(row, 0.5*r.NormFloat64())
			}
			rows = append(rows, row)
		}
	}
	for _, g := range rows {
		var line []float64
		for _, h := range rows {
			sum := 0.0
			for i := range g {
				sum += g[i] * h[i]
			}
			line = append(line, sum)
		}
		p.Covariance = append(p.Covariance, line)
	}
	return p
}

// TestBoundsHoldTheDrawnChance: whatever the room, the chance from drawn rooms
// lies between the two bounds, it falls with the size, and the safe size is
// never longer than the drawn one.
func TestBoundsHoldTheDrawnChance(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for range 25 {
		p := random(r, 5)
		p.Draws = 40_000
		c := solve(t, p)
		last, wide := 1.0, 0.0
		for l := unit.Length(-8); l < 8; l += 0.5 {
			f := c.Fits(l)
			low, high := c.Bounds(l)
			const noise = 0.008 // three standard deviations of a chance of one half in 40000 draws
			if f < low-noise || f > high+noise {
				t.Errorf("%v longer: %v outside of %v to %v", l, f, low, high)
			}
			if f > last {
				t.Errorf("%v longer: fits with %v, the smaller one with %v", l, f, last)
			}
			last = f
			if w := 1 - c.TooWide(l); w < wide {
				t.Errorf("%v longer: shows too wide more often than the shorter one", l)
			} else {
				wide = w
			}
		}
		long := c.Longest(0.95)
		if long.Safe > long.Linear+1e-9 || long.Safe > long.Drawn+0.06 || long.Linear < long.Drawn-0.06 {
			t.Errorf("longest %+v: safe <= drawn <= linear is wanted", long)
		}
	}
}

// TestSameRoomsEverywhere: the same draws on one and on many processors; others
// with another seed.
func TestSameRoomsEverywhere(t *testing.T) {
	p := random(rand.New(rand.NewPCG(1, 1)), 4)
	p.Draws = 5000
	a := solve(t, p)
	before := runtime.GOMAXPROCS(1)
	b := solve(t, p)
	runtime.GOMAXPROCS(before)
	if !slices.Equal(a.room, b.room) || !slices.Equal(a.wide, b.wide) || a.AsDrawn != b.AsDrawn {
		t.Error("one processor draws other rooms than many")
	}
	p.Seed = 1
	c := solve(t, p)
	if slices.Equal(a.room, c.room) {
		t.Error("another seed draws the same rooms")
	}
	near(t, "play", float64(c.Play().Value), float64(a.Play().Value), 0.1)
}

func TestBadProblems(t *testing.T) {
	nan := math.NaN()
	good := func() Problem { return two(4, 1, 4, 1, 0) }
	for name, spoil := range map[string]func(*Problem){
		"no stations":      func(p *Problem) { p.Stations = nil },
		"gap no number":    func(p *Problem) { p.Stations[0].Gap = unit.Length(nan) },
		"gap endless":      func(p *Problem) { p.Stations[1].Gap = unit.Length(math.Inf(1)) },
		"along the way":    func(p *Problem) { p.Stations[0].Rate = 0 },
		"rows missing":     func(p *Problem) { p.Covariance = p.Covariance[:1] },
		"columns missing":  func(p *Problem) { p.Covariance[1] = p.Covariance[1][:1] },
		"covariance none":  func(p *Problem) { p.Covariance[0][0] = nan },
		"variance below 0": func(p *Problem) { p.Covariance[0][0] = -1 },
		"correlation of 2": func(p *Problem) { p.Covariance[0][1], p.Covariance[1][0] = 2, 2 },
		"share":            func(p *Problem) { p.Share = 1.5 },
		"draws":            func(p *Problem) { p.Draws = -1 },
		"influence":        func(p *Problem) { p.Hidden = []Influence{{"x", []float64{1}}} },
	} {
		p := good()
		spoil(&p)
		if _, err := Solve(p); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	p := good()
	p.Stations[1].Rate = 1
	if _, err := Solve(p); !errors.Is(err, ErrFree) {
		t.Errorf("free at its end: %v", err)
	}
}

// BenchmarkSolve draws 100000 rooms for one part with 20 stations.
func BenchmarkSolve(b *testing.B) {
	p := random(rand.New(rand.NewPCG(1, 1)), 10)
	for b.Loop() {
		solve(b, p)
	}
}
