package plate

import (
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/testdata/judge"
)

// Two boards side by side, 900 x 240 x 36 each, along whose joint something passes
// on what stands on one of them: CalculiX, made here and now, of solids with springs
// between the nodes at half their height, or of one solid where they are glued.
var (
	boards     = [2]Plate{{Outline: geom.Rect(geom.V(0, 0), geom.V(900, 240)), Thick: 36, Wood: set}, {Outline: geom.Rect(geom.V(0, 240), geom.V(900, 480)), Thick: 36, Wood: set}}
	stoodOn    = geom.Rect(geom.V(390, 120), geom.V(510, 240))
	lookedAt   = [][2]float64{{450, 0}, {450, 210}, {450, 270}, {450, 480}, {210, 240}}
	boardBlock = judge.Block{
		Size: [3]float64{900, 480, 36}, Bricks: [3]int{30, 16, 2}, Elastic: setElastic,
		Held: func(x, _ float64) bool { return x == 30 || x == 870 },
		Pressure: func(i, j int) float64 {
			if i >= 13 && i < 17 && j >= 4 && j < 8 {
				return 500.0 / (120 * 120)
			}
			return 0
		},
	}
)

// joined solves the boards with some links between them and compares.
func joined(t *testing.T, block judge.Block, joint []Link, share float64) {
	t.Helper()
	sink := block.Sink(t, lookedAt...)
	var links []Link
	for n := range boards {
		y := unit.Length(240 * n)
		for _, x := range []unit.Length{30, 870} {
			for _, l := range line(geom.V(x, y), geom.V(x, y+240), 16, 900/18.0*36, Both) {
				l.On.Plate = n
				links = append(links, l)
			}
		}
	}
	s := solver(t, 20, append(links, joint...), boards[0], boards[1])
	r := solve(t, s, Case{Loads: []Load{{Region: stoodOn, Force: 500}}})
	for i, at := range lookedAt {
		n := 0
		if at[1] > 240 {
			n = 1
		}
		is := float64(r.Deflection(n, geom.V(unit.Length(at[0]), unit.Length(at[1]))))
		near(t, "sink", is, sink[i], share)
	}
}

// across links both boards at a place of the joint, a millimetre inside each.
func across(x unit.Length, k float64, slope geom.Vec) Link {
	other := Spot{Plate: 1, At: geom.V(x, 241), Slope: slope}
	return Link{On: Spot{At: geom.V(x, 239), Slope: slope}, Ground: Ground{Other: &other}, Stiffness: k, Acts: Both, Starts: true}
}

// A row of springs passes shear and no bending, as dowels do: a hinge. They stand as
// near as the nodes, since a force on one node of a solid dents it.
func TestJudgedHinge(t *testing.T) {
	const k = 30 // N/mm: so soft that a quarter more of it shows
	block := boardBlock
	block.Split, block.Spring = 8, k
	var joint []Link
	for x := 15.0; x < 900; x += 30 {
		block.Springs = append(block.Springs, x)
		joint = append(joint, across(unit.Length(x), k, geom.Vec{}))
	}
	joined(t, block, joint, 0.05)
}

// Glue passes both: one board of twice the width.
func TestJudgedGlue(t *testing.T) {
	const n, perMM = 23, 2000 // N/mm for each millimetre of joint
	long := 900.0 / n
	var joint []Link
	for i := range n {
		x := unit.Length(long * (float64(i) + 0.5))
		joint = append(joint, across(x, perMM*long, geom.Vec{}), across(x, perMM*long*36*36, geom.V(0, 1)))
	}
	joined(t, boardBlock, joint, 0.02)
}
