package survey

import (
	"fmt"
	"math"
	"sort"
	"strings"
)

// hangs tells which point can still move although all readings are kept, and
// which distance would hold it; nil for a network that is held.
func (s *system) hangs(c candidate) error {
	if c.held {
		return nil
	}
	free, pushed := s.floppy(c.x)
	if len(free) == 0 {
		free, pushed = weakest(c.sol.jacobian, floppyLimit), c.x
	}
	if len(free) == 0 && c.prec.q == nil {
		all := weakest(c.sol.jacobian, 1)
		free = all[len(all)-1:]
	}
	if len(free) == 0 {
		return nil
	}
	p := s.moving(c.x, pushed, free, HangsFree, "hangs free", "the readings do not hold it")
	if len(free) > 1 {
		p.Why += fmt.Sprintf("; at least %d readings are missing", len(free))
	}
	return p
}

// loosely tells which point the readings hold only loosely.
func (s *system) loosely(c candidate) *Problem {
	all := weakest(c.sol.jacobian, 1)
	return s.moving(c.x, c.x, all[len(all)-1:], HeldLoosely, "is held loosely",
		"the lengths that hold it lie in line; corners had to be taken as square")
}

// moving makes a Problem of points x that can move in some directions, which
// were found with the points at pushed.
func (s *system) moving(x, pushed []float64, free [][]float64, t Trouble, how, why string) *Problem {
	move := make([]float64, len(s.names))
	for _, d := range free {
		for i := range s.names {
			for _, e := range []int{2 * i, 2*i + 1} {
				if j := s.column[e]; j >= 0 {
					move[i] = math.Hypot(move[i], d[j])
				}
			}
		}
	}
	worst := 0
	for i, m := range move {
		if m > move[worst]*(1+1e-9) {
			worst = i
		}
	}
	p := &Problem{Trouble: t, Points: []Point{s.names[worst]}}
	with := ""
	for i, m := range move {
		if i != worst && m > 0.05*move[worst] {
			p.Points = append(p.Points, s.names[i])
			with += ", " + string(s.names[i])
		}
	}
	if with != "" {
		with = " (and with it " + with[2:] + ")"
	}
	p.Why = fmt.Sprintf("%s %s%s: %s", s.names[worst], how, with, why)
	p.Measure = s.wouldHold(x, pushed, free, worst)
	return p
}

// wouldHold ranks distances by how much they change as the loose points move,
// those of the loosest point first.
func (s *system) wouldHold(x, pushed []float64, free [][]float64, worst int) [][2]Point {
	return s.best(func(p, q int) (gain float64, seen bool) {
		u := point(pushed, p).Sub(point(pushed, q)).Unit()
		for _, d := range free {
			g := 0.0
			for k, way := range []float64{float64(u.X), float64(u.Y)} {
				if j := s.column[2*p+k]; j >= 0 {
					g += way * d[j]
				}
				if j := s.column[2*q+k]; j >= 0 {
					g -= way * d[j]
				}
			}
			gain = math.Hypot(gain, g)
		}
		if gain < 0.05 {
			return 0, false
		}
		if p == worst || q == worst {
			gain += 10
		}
		return gain, s.sees(x, p, q)
	})
}

// best lists the two distances, not measured yet, that gain most; those that a
// tape can reach before the others.
func (s *system) best(worth func(p, q int) (gain float64, seen bool)) [][2]Point {
	type try struct {
		p, q int
		gain float64
		seen bool
	}
	measured := map[wall]bool{}
	for _, r := range s.rows {
		if r.kind == Distance {
			measured[wall{r.points[0], r.points[1]}], measured[wall{r.points[1], r.points[0]}] = true, true
		}
	}
	var list []try
	for q := range s.names {
		for p := range s.names[:q] {
			if gain, seen := worth(p, q); gain > 0 && !measured[wall{p, q}] {
				list = append(list, try{p, q, gain, seen})
			}
		}
	}
	sort.SliceStable(list, func(i, j int) bool {
		if list[i].seen != list[j].seen {
			return list[i].seen
		}
		return list[i].gain > list[j].gain+1e-6
	})
	var out [][2]Point
	for _, t := range list[:min(2, len(list))] {
		if t.seen == list[0].seen {
			out = append(out, [2]Point{s.names[t.p], s.names[t.q]})
		}
	}
	return out
}

// twoShapes asks for what would tell apart the shapes that fit equally well.
func (s *system) twoShapes(list []candidate) *Problem {
	p := &Problem{Trouble: TwoShapes}
	x, y := list[0].x, list[1].x
	var names []string
	for _, c := range s.contested(list) {
		p.Points = append(p.Points, s.names[c])
		names = append(names, string(s.names[c]))
	}
	p.Why = "the readings fit two different shapes"
	if len(names) > 0 {
		p.Why += fmt.Sprintf("; say of %s whether it is an inside or an outside corner", strings.Join(names, " and "))
	}
	p.Measure = s.best(func(i, j int) (float64, bool) {
		gain := math.Abs(float64(point(x, i).Sub(point(x, j)).Len() - point(y, i).Sub(point(y, j)).Len()))
		if gain < sameAs {
			return 0, false
		}
		return gain, s.sees(x, i, j) && s.sees(y, i, j)
	})
	return p
}

// wrongTurn tells that a corner does not turn as told.
func (s *system) wrongTurn(c candidate) error {
	p := &Problem{Trouble: WrongTurn}
	var parts []string
	for _, i := range s.wrong(c.x, finePlay) {
		p.Points = append(p.Points, s.names[i])
		parts = append(parts, fmt.Sprintf("%s is told to be an %s corner, but the readings make it an %s one, %.0f degrees wide in the room",
			s.names[i], s.turns[i], s.turnOf(c.x, i, finePlay), 180-s.bend(c.x, i)*180/math.Pi))
	}
	p.Why = strings.Join(parts, "; ") + "; mend its bend (in or out), or look for a slip in the readings that reach it"
	if s.round(c.x) < 0 {
		p.Why += "; where the walls turn left as a whole, tell the bend of every corner"
	}
	return p
}

// astray tells that no shape was found, and names the reading furthest off.
func (s *system) astray(c candidate) error {
	worst, far := 0, 0.0
	for i := range s.rows {
		if m := math.Abs(c.sol.miss[i]); m > far {
			worst, far = i, m
		}
	}
	var pts []Point
	for _, i := range s.rows[worst].points {
		pts = append(pts, s.names[i])
	}
	return &Problem{Trouble: NoAgreement, Points: pts, Why: fmt.Sprintf(
		"no shape was found that comes near the readings in %d rounds; the %s of %v is furthest off", most, s.rows[worst].kind, pts)}
}
