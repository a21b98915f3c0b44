package plate

import (
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/testdata/judge"
)

var setElastic = [9]float64{11000, 750, 900, 0.43, 0.37, 0.33, 690, 690, 60}

// An L of wood whose grain runs along x, carried along one line of each arm,
// loaded on a corner: CalculiX, made here and now. Half the wood under a line
// yields.
func TestJudgedL(t *testing.T) {
	block := judge.Block{
		Size: [3]float64{900, 600, 36}, Bricks: [3]int{30, 20, 2}, Elastic: setElastic,
		Empty: func(i, j, _ int) bool { return i >= 12 && j >= 10 },
		Held:  func(x, y float64) bool { return (x == 30 && y <= 570) || (x == 870 && y <= 300) },
		Pressure: func(i, j int) float64 {
			if i >= 8 && i < 12 && j >= 16 {
				return 500.0 / (120 * 120)
			}
			return 0
		},
	}
	places := [][2]float64{{360, 600}, {450, 0}, {450, 300}}
	sink := block.Sink(t, places...)
	k := 900 / 18.0 * 36
	links := append(line(geom.V(30, 0), geom.V(30, 570), 38, k, Both), line(geom.V(870, 0), geom.V(870, 300), 20, k, Both)...)
	p := Plate{Outline: geom.Polygon(geom.V(0, 0), geom.V(900, 0), geom.V(900, 300), geom.V(360, 300), geom.V(360, 600), geom.V(0, 600)), Thick: 36, Wood: set}
	s := solver(t, 20, links, p)
	r := solve(t, s, Case{Loads: []Load{{Region: geom.Rect(geom.V(240, 480), geom.V(360, 600)), Force: 500}}})
	for i, at := range places {
		share := []float64{0.03, 0.05, 0.05}[i]
		near(t, "sink", float64(r.Deflection(0, geom.V(unit.Length(at[0]), unit.Length(at[1])))), sink[i], share)
	}
}

// A board that spans across the grain, with a hole and a groove in its
// underside: CalculiX, made here and now.
func TestJudgedGroove(t *testing.T) {
	block := judge.Block{
		Size: [3]float64{400, 480, 40}, Bricks: [3]int{10, 24, 4}, Elastic: setElastic,
		Empty: func(i, j, k int) bool {
			return (i >= 3 && i < 5 && j >= 10 && j < 14) || (k < 2 && j == 6)
		},
		Held:     func(_, y float64) bool { return y == 0 || y == 480 },
		Pressure: func(_, _ int) float64 { return 2e-3 },
	}
	places := [][2]float64{{0, 240}, {400, 240}, {240, 240}}
	sink := block.Sink(t, places...)
	k := 900 / 20.0 * 40
	links := append(line(geom.V(0, 0), geom.V(400, 0), 20, k, Both), line(geom.V(0, 480), geom.V(400, 480), 20, k, Both)...)
	p := Plate{Outline: geom.Rect(geom.V(0, 0), geom.V(400, 480)).Minus(geom.Rect(geom.V(120, 200), geom.V(200, 280))), Thick: 40, Wood: set,
		Thinner: Carved(40, []Cut{{geom.Rect(geom.V(0, 120), geom.V(400, 140)), 20}})}
	s := solver(t, 20, links, p)
	r := solve(t, s, Case{Loads: []Load{s.Spread(0, 2e-3)}})
	for i, at := range places {
		near(t, "sink", float64(r.Deflection(0, geom.V(unit.Length(at[0]), unit.Length(at[1])))), sink[i], 0.07)
	}
}
