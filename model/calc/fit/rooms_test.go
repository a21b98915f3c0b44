package fit

import (
	"math"
	"os"
	"testing"

	"github.com/goccy/go-yaml"

	"slabwright/model/unit"
)

// made is testdata/rooms.yaml: rooms with errors of reading, and what two other
// programs computed for parts in them. Its head says where it comes from.
type made struct {
	Rooms map[string]struct {
		Adjusted map[string][]float64 `yaml:"adjusted"`
		Qxx      [][]float64          `yaml:"Qxx"`
	} `yaml:"rooms"`
	Cases []madeCase `yaml:"cases"`
}

type madeCase struct {
	ID       string    `yaml:"id"`
	Room     string    `yaml:"room"`
	Checked  bool      `yaml:"checked"`
	Stations []float64 `yaml:"stations_y"`
	Side     float64   `yaml:"gap_min_side"`
	Clear    struct {
		At   float64 `yaml:"at_adjusted"`
		Mean float64 `yaml:"mc_mean"`
		SD   float64 `yaml:"mc_sd"`
	} `yaml:"clear_width_aligned"`
	Binding []struct {
		Right float64 `yaml:"y_right"`
		Left  float64 `yaml:"y_left"`
		Mean  float64 `yaml:"mean"`
		SD    float64 `yaml:"sd"`
	} `yaml:"binding_pairs"`
	Widest map[string]struct {
		Linear float64 `yaml:"linear_single_station"`
		Union  float64 `yaml:"union_bound_safe"`
		Drawn  float64 `yaml:"monte_carlo"`
	} `yaml:"max_rectangle_width"`
	Given []struct {
		Width float64 `yaml:"width"`
		Drawn float64 `yaml:"P_aligned_mc"`
		Upper float64 `yaml:"P_upper_min"`
		Lower float64 `yaml:"P_lower_union"`
	} `yaml:"given_rectangles"`
	Trapezoid struct {
		Nominal float64    `yaml:"nominal"`
		Band    [2]float64 `yaml:"band"`
		InBand  float64    `yaml:"P_all_gaps_in_band"`
		Gaps    []struct {
			Edge string  `yaml:"edge"`
			Y    float64 `yaml:"y"`
			Mean float64 `yaml:"mean"`
			SD   float64 `yaml:"sd"`
			Q05  float64 `yaml:"q05"`
			Q95  float64 `yaml:"q95"`
		} `yaml:"gaps"`
	} `yaml:"trapezoid_nominal_gap"`
}

func readMade(t testing.TB) made {
	t.Helper()
	data, err := os.ReadFile("testdata/rooms.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var m made
	if err := yaml.Unmarshal(data, &m); err != nil {
		t.Fatal(err)
	}
	if len(m.Cases) != 3 {
		t.Fatalf("%d cases, want 3", len(m.Cases))
	}
	return m
}

// walls gives where the side walls stand at a depth, with the derivatives by
// C.x, D.x, D.y, A.x, A.y: the lines B-A and C-D.
func (m made) walls(room string, y float64) (left, right float64, dl, dr []float64) {
	a, c, d := m.Rooms[room].Adjusted["A"], m.Rooms[room].Adjusted["C"], m.Rooms[room].Adjusted["D"]
	left = a[0] * y / a[1]
	right = c[0] + (d[0]-c[0])*y/d[1]
	dl = []float64{0, 0, 0, y / a[1], -a[0] * y / (a[1] * a[1])}
	dr = []float64{1 - y/d[1], y / d[1], -(d[0] - c[0]) * y / (d[1] * d[1]), 0, 0}
	return
}

// problem puts a part into a made-up room: a rectangle of a width in the middle
// or, at width 0, a trapezoid with the nominal gap.
func (m made) problem(c madeCase, width float64) Problem {
	var p Problem
	var rows [][]float64
	from, to := math.Inf(-1), math.Inf(1)
	for _, y := range c.Stations {
		l, r, _, _ := m.walls(c.Room, y)
		from, to = max(from, l), min(to, r)
	}
	for _, left := range []bool{true, false} {
		for _, y := range c.Stations {
			l, r, dl, dr := m.walls(c.Room, y)
			gap, rate, row := (from+to-width)/2-l, 1.0, dl
			for k := range dl {
				dl[k] *= -1
			}
			if !left {
				gap, rate, row = r-(from+to+width)/2, -1.0, dr
			}
			least, widest := c.Side, 0.0
			if width == 0 {
				gap, least, widest = c.Trapezoid.Nominal, c.Trapezoid.Band[0], c.Trapezoid.Band[1]
			}
			p.Stations = append(p.Stations, Station{Edge: "side", Gap: unit.Length(gap), Least: unit.Length(least), Widest: unit.Length(widest), Rate: rate, Trims: true})
			rows = append(rows, row)
		}
	}
	q := m.Rooms[c.Room].Qxx
	for _, g := range rows {
		var line []float64
		for _, h := range rows {
			sum := 0.0
			for i := range g {
				for j := range h {
					sum += g[i] * q[i][j] * h[j]
				}
			}
			line = append(line, sum)
		}
		p.Covariance = append(p.Covariance, line)
	}
	p.Share = 0.5
	return p
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %v, want %v within %v", what, got, want, tolerance)
	}
}

// TestMadeRooms holds clear widths, widest parts, chances and gaps against the
// other programs. Their Monte Carlo has an error of its own: 200000 draws, so
// 0.0011 for a chance in the middle, 0.01 mm for sizes.
func TestMadeRooms(t *testing.T) {
	m := readMade(t)
	for _, c := range m.Cases {
		t.Run(c.ID, func(t *testing.T) {
			p := m.problem(c, 1800)
			a, err := Solve(p)
			if err != nil {
				t.Fatal(err)
			}
			clear := 1800 + 2*c.Side
			near(t, "clear width", clear+float64(a.Tightest.Play.Value), c.Clear.At, 0.002)
			near(t, "drawn clear width", clear+float64(a.Chance.Play().Value), c.Clear.Mean, 0.02)
			near(t, "its spread", float64(a.Chance.Play().SD), c.Clear.SD, 0.01)
			for _, b := range c.Binding {
				q := find(t, p, c, b.Left, b.Right)
				near(t, "pair", clear+float64(q.Play.Value), b.Mean, 0.002)
				near(t, "its spread", float64(q.Play.SD), b.SD, 0.001)
			}
			for name, w := range c.Widest {
				long := a.Chance.Longest(map[string]float64{"p90": 0.90, "p95": 0.95, "p99": 0.99}[name])
				near(t, name+" linear", 1800+float64(long.Linear), w.Linear, 0.006)
				near(t, name+" union", 1800+float64(long.Safe), w.Union, 0.006)
				near(t, name+" drawn", 1800+float64(long.Drawn), w.Drawn, 0.03)
			}
			for _, g := range c.Given {
				low, high := a.Chance.Bounds(unit.Length(g.Width - 1800))
				near(t, "lower bound", low, g.Lower, 0.0002)
				near(t, "upper bound", high, g.Upper, 0.0002)
				near(t, "drawn chance", a.Chance.Fits(unit.Length(g.Width-1800)), g.Drawn, 0.004)
			}
		})
		t.Run(c.ID+"/trapezoid", func(t *testing.T) {
			a, err := Solve(m.problem(c, 0))
			if err != nil {
				t.Fatal(err)
			}
			near(t, "all gaps in the band", a.Chance.AsDrawn, c.Trapezoid.InBand, 0.005)
			for i, g := range c.Trapezoid.Gaps {
				near(t, "mean", float64(a.Gaps[i].Value), g.Mean, 0.01)
				near(t, "spread", float64(a.Gaps[i].SD), g.SD, 0.008)
				// Theirs come from drawn corners, not from linear gaps.
				tolerance := 0.01 + 0.015*g.SD
				near(t, "5 %", float64(Within(a.Gaps[i], 0.05)), g.Q05, tolerance)
				near(t, "95 %", float64(Within(a.Gaps[i], 0.95)), g.Q95, tolerance)
			}
		})
	}
}

// find gives the pair at two depths.
func find(t *testing.T, p Problem, c madeCase, left, right float64) Pair {
	t.Helper()
	n := len(c.Stations)
	for _, q := range p.pairs() {
		if c.Stations[q.Start] == left && c.Stations[q.End-n] == right {
			return q
		}
	}
	t.Fatalf("no pair at %v and %v", left, right)
	return Pair{}
}

// TestUncheckedRoomGivesNoChance is room R4: five readings for five unknowns. A
// slip of 15 mm in it leaves no trace, and the chance computed all the same
// would be 1.00 for a part that does not go in.
func TestUncheckedRoomGivesNoChance(t *testing.T) {
	m := readMade(t)
	c := m.Cases[1]
	p := m.problem(c, 1490)
	p.Unchecked = []string{"BC", "AB", "CD", "w_front", "345_B"}
	a, err := Solve(p)
	if err != nil {
		t.Fatal(err)
	}
	if a.Chance != nil || len(a.Unchecked) != 5 {
		t.Errorf("chance %v, unchecked %v: want none, and five readings named", a.Chance, a.Unchecked)
	}
	near(t, "clear width", 1490+2*c.Side+float64(a.Tightest.Play.Value), c.Clear.At, 0.002)
}

// TestHiddenReadingGivesNoChance: single readings that nothing checks forbid a
// chance when the way in moves with them by more than 0.05 mm per mm.
func TestHiddenReadingGivesNoChance(t *testing.T) {
	m := readMade(t)
	p := m.problem(m.Cases[0], 1800)
	move := func(left, right float64) []float64 { return []float64{left, left, left, right, right, right} }
	p.Hidden = []Influence{{"harmless", move(0.04, 0)}, {"shift", move(1, -1)}}
	a, err := Solve(p)
	if err != nil {
		t.Fatal(err)
	}
	if a.Chance == nil || len(a.Unchecked) != 0 {
		t.Errorf("unchecked %v: one reading moves the way by 0.04 only, the other shifts both walls alike", a.Unchecked)
	}
	p.Hidden = append(p.Hidden, Influence{"width", move(0, 0.06)})
	if a, err = Solve(p); err != nil || a.Chance != nil || len(a.Unchecked) != 1 || a.Unchecked[0] != "width" {
		t.Errorf("unchecked %v, %v: want the width alone", a.Unchecked, err)
	}
}
