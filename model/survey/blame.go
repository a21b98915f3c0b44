package survey

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
)

// blame looks for a reading that keeps a network from being adjusted. A gross
// slip can leave no shape near the readings, and then it looks as if a point
// were loose or a corner could go either way. If the shape that was reached
// fits badly and leaving out one reading makes all others agree, that reading
// is named, with all those that would do it equally well. Else the trouble
// stays, with a word about that.
func (n Network) blame(far reached, trouble error) error {
	if far.spare < 1 || far.cost <= hopeless(far.spare) {
		return trouble
	}
	order := n.bySuspicion(far)
	for _, i := range order[:min(2*manyTries, len(order))] {
		r, a, ok := n.spared(i)
		if !ok {
			continue
		}
		list := []Accused{a}
		if p, ok := r.picture(n.Readings, []int{i}); ok {
			for _, set := range p.explanations(1) {
				if _, b, ok := n.spared(set[0]); ok && set[0] != i {
					list = append(list, b)
				}
			}
		}
		return contradicts(list)
	}
	if p := (*Problem)(nil); errors.As(trouble, &p) {
		p.Why += "; and no shape comes near the readings: more than one of them may be grossly wrong"
	}
	return trouble
}

// spared adjusts without reading i. It is true if then all agrees but the
// reading.
func (n Network) spared(i int) (*Result, Accused, bool) {
	m := n
	m.Readings = append(append([]Reading(nil), n.Readings[:i]...), n.Readings[i+1:]...)
	r, _, err := adjust(m)
	if err != nil || r.DOF > 0 && r.VTPV > hopeless(r.DOF) {
		return nil, Accused{}, false
	}
	a := Accused{Index: i, Reading: n.Readings[i]}
	a.expect(r)
	return r, a, a.off(n.Accuracy) > Critical
}

// bySuspicion orders the readings: first those that make a way round shorter
// than the straight line, or that are such a line, by how much in all; then by
// how far they are off in the shape that was reached.
func (n Network) bySuspicion(far reached) []int {
	order := make([]int, len(n.Readings))
	bent := n.shortcuts()
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(bent[j], bent[i]), cmp.Compare(math.Abs(far.miss[j]), math.Abs(far.miss[i])))
	})
	return order
}

// contradicts makes a Problem of the readings that may be grossly wrong.
func contradicts(list []Accused) *Problem {
	first := list[0]
	p := bad(first.Reading, "it does not agree with the other readings at all: %s", first.says())
	p.Trouble, p.Accused = Contradiction, list
	if len(list) > 1 {
		p.Reading, p.Where = "", ""
		p.Why = "one of these readings is grossly wrong, and nothing tells which"
		for _, a := range list {
			where := ""
			if a.Reading.Where != "" {
				where = " (" + a.Reading.Where + ")"
			}
			p.Why += fmt.Sprintf("; %q%s: %s", a.Reading.ID, where, a.says())
		}
	}
	p.Why += "; measure it again, or look for a slip of the pen or a wrong corner"
	return p
}

// says tells what an accused reading reads and what it should.
func (a Accused) says() string {
	if a.Reading.Kind.angular() {
		return fmt.Sprintf("it reads %.1f degrees, by the others it should be %.1f", a.Reading.Angle.Degrees(), a.ShouldRead.Angle.Degrees())
	}
	s := fmt.Sprintf("it reads %.0f mm, by the others it should be %.0f", float64(a.Reading.Length), float64(a.ShouldRead.Length.Value))
	if pen := a.Pen(); pen != "" {
		s += " (" + pen + "?)"
	}
	return s
}

// off is by how much the reading differs from what it should read, in standard
// deviations of that difference.
func (a Accused) off(tools Accuracy) float64 {
	sd := tools.of(a.Reading)
	if a.Reading.Kind.angular() {
		return math.Abs(float64(a.AngleError)) / math.Hypot(sd, float64(a.ShouldRead.AngleSD))
	}
	return math.Abs(float64(a.Error)) / math.Hypot(sd, float64(a.ShouldRead.Length.SD))
}
