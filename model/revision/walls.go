package revision

import (
	"math"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"

	"gonum.org/v1/gonum/mat"
)

// Level is how often a room that did not change is said to have: once in twenty
// second measurements.
const Level = 0.05

// WallChange is what became of a wall. Its ends are seen square to it, positive
// into the room, against the walls that stay.
type WallChange struct {
	Name       string
	Start, End unit.Measured // at its left and its right corner
	Moved      bool
	Chance     float64 // how often a wall that did not move differs by more
	Length     [2]unit.Measured
	Bow, Lean  [2]float64 // mm; mm per m, old and new
}

// RoomChange compares two surveys of a room.
type RoomChange struct {
	Walls     []WallChange
	Chance    float64 // how often a room that did not change differs by more, all walls together
	Instead   []string
	Gone, New []string // walls that only one of the surveys has
	NotKnown  string   // why nothing can be said, "" if something can
	Unchecked [2]bool  // the survey checks none of its readings
	Unsettled [2]bool  // its readings contradict each other, or what decides hangs on one alone
}

// Rooms compares the walls of two rooms by name.
func Rooms(old, now *model.Room) RoomChange {
	var c RoomChange
	for i, r := range []*model.Room{old, now} {
		c.Unchecked[i], c.Unsettled[i] = r.Survey.Redundancy == 0, !r.Survey.Settled()
	}
	var pairs [][2]*model.Wall
	for _, w := range old.Walls {
		if v := named(now, w.Name); v != nil {
			pairs = append(pairs, [2]*model.Wall{w, v})
		} else {
			c.Gone = append(c.Gone, w.Name)
		}
	}
	for _, w := range now.Walls {
		if named(old, w.Name) == nil {
			c.New = append(c.New, w.Name)
		}
	}
	for _, p := range pairs {
		c.Walls = append(c.Walls, WallChange{Name: p[0].Name, Chance: 1,
			Length: [2]unit.Measured{{Value: p[0].Length(), SD: p[0].SD}, {Value: p[1].Length(), SD: p[1].SD}},
			Bow:    [2]float64{float64(p[0].Bow), float64(p[1].Bow)}, Lean: [2]float64{1000 * p[0].Lean, 1000 * p[1].Lean}})
	}
	covA, okA := old.Covariance()
	covB, okB := now.Covariance()
	switch {
	case !okA || !okB:
		c.NotKnown = "no survey stands behind one of the rooms"
	case len(pairs) < 2:
		c.NotKnown = "fewer than two walls have the same name in both surveys"
	default:
		c.judge(endsOf(pairs, covA, covB))
	}
	return c
}

func named(r *model.Room, name string) *model.Wall {
	for _, w := range r.Walls {
		if w.Name == name {
			return w
		}
	}
	return nil
}

// judge tells the walls that moved from those that stay.
func (c *RoomChange) judge(e ends) {
	var all []int
	for w := range c.Walls {
		all = append(all, w)
	}
	whole := e.agree(all)
	if whole.dof < 1 {
		c.NotKnown = "the walls that both surveys have can be laid over each other in any case"
		return
	}
	c.Chance = whole.chance()
	stay, moved, others := e.stay(Level)
	if stay == nil {
		c.NotKnown = "no two walls agree: nothing is left to compare the others with"
		return
	}
	for w := range c.Walls {
		off, cov := e.against(stay, w)
		x := &c.Walls[w]
		x.Start = unit.Measured{Value: unit.Length(off[0]), SD: unit.Length(math.Sqrt(max(0, cov[0][0])))}
		x.End = unit.Measured{Value: unit.Length(off[1]), SD: unit.Length(math.Sqrt(max(0, cov[1][1])))}
		x.Chance = pair(off, cov).chance()
	}
	for _, w := range moved {
		c.Walls[w].Moved = true
	}
	for _, w := range others {
		c.Instead = append(c.Instead, c.Walls[w].Name)
	}
}

// Deviations is the larger difference of the two ends, in its standard
// deviations.
func (w WallChange) Deviations() float64 {
	z := func(m unit.Measured) float64 {
		if m.SD == 0 {
			return 0
		}
		return math.Abs(float64(m.Value / m.SD))
	}
	return max(z(w.Start), z(w.End))
}

// endsOf lays the second survey roughly over the first, by the ends of all
// walls, and measures what is left square to each wall.
func endsOf(pairs [][2]*model.Wall, covA, covB [][]float64) ends {
	var a, b []geom.Vec
	for _, p := range pairs {
		a, b = append(a, p[0].From.At, p[0].To.At), append(b, p[1].From.At, p[1].To.At)
	}
	turn, from, to := over(a, b)
	n := len(a)
	e := ends{off: make([]float64, n), cov: mat.NewSymDense(n, nil), motion: mat.NewDense(n, 3, nil)}
	normal := make([]geom.Vec, n)
	cornersA, cornersB := make([]int, n), make([]int, n)
	for i, p := range pairs {
		in := p[0].Chord().D.Unit().Left().Mul(-1)
		normal[2*i], normal[2*i+1] = in, in
		cornersA[2*i], cornersA[2*i+1] = p[0].Index, next(p[0], covA)
		cornersB[2*i], cornersB[2*i+1] = p[1].Index, next(p[1], covB)
	}
	for i := range n {
		moved := b[i].Sub(from).Turn(turn).Add(to)
		e.off[i] = normal[i].Dot(moved.Sub(a[i]))
		at := a[i].Sub(to)
		e.motion.SetRow(i, []float64{float64(normal[i].X), float64(normal[i].Y), normal[i].Dot(at.Left()) / 1000})
		for j := range i + 1 {
			v := along(covA, cornersA[i], cornersA[j], normal[i], normal[j])
			v += along(covB, cornersB[i], cornersB[j], normal[i].Turn(-turn), normal[j].Turn(-turn))
			e.cov.SetSym(i, j, v)
		}
	}
	return e
}

// next is the index of a wall's right corner.
func next(w *model.Wall, cov [][]float64) int { return (w.Index + 1) % (len(cov) / 2) }

// along is the covariance of two corners in two directions.
func along(cov [][]float64, i, j int, u, v geom.Vec) float64 {
	return float64(u.X)*(cov[2*i][2*j]*float64(v.X)+cov[2*i][2*j+1]*float64(v.Y)) +
		float64(u.Y)*(cov[2*i+1][2*j]*float64(v.X)+cov[2*i+1][2*j+1]*float64(v.Y))
}

// over is the turn that lays points b over points a, about the middle of b,
// which comes to the middle of a (least squares).
func over(a, b []geom.Vec) (turn unit.Angle, from, to geom.Vec) {
	share := 1 / float64(len(a))
	for i := range a {
		from, to = from.Add(b[i].Mul(share)), to.Add(a[i].Mul(share))
	}
	var dot, cross float64
	for i := range a {
		p, q := b[i].Sub(from), a[i].Sub(to)
		dot += p.Dot(q)
		cross += p.Cross(q)
	}
	return unit.Angle(math.Atan2(cross, dot)), from, to
}
