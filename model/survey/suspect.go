package survey

import (
	"math"
	"slices"
	"sort"

	"slabwright/model/unit"
)

const (
	// inseparable is the correlation of two residuals from which on nothing
	// tells which of the two readings is wrong. Judgement.
	inseparable = 0.95
	// certainly is how much worse another explanation has to fit, in the sum of
	// squares, before it is ruled out: it is one twentieth as likely, 2 ln 20.
	certainly = 5.99
	// manyExplanations are enough to know that nothing is known.
	manyExplanations = 60
	// manyTries is how many readings are left out one by one in search of a
	// gross slip.
	manyTries = 20
	// slips is how many wrong readings are looked for.
	slips = 2
)

// Suspect is a contradiction among the readings, with the readings that may
// have caused it. One reading: nothing else explains it as well. Several: any
// of them may be the wrong one, so all of them are to be measured again.
type Suspect struct {
	Slips    int       // how many of the readings are wrong
	Readings []Accused // the likeliest first
}

// Accused is a reading that may be wrong. Error is what it reads too much, if
// it is the wrong one; ShouldRead follows from the other readings alone.
type Accused struct {
	Index      int // of the reading in the network
	Reading    Reading
	W          float64 // its residual over the standard deviation of that
	Error      unit.Length
	AngleError unit.Angle
	ShouldRead Foretold
}

// contradiction is what the search for slips came to.
type contradiction struct {
	list []Suspect
	rest trimmed // adjusted without one reading for each slip
	more bool
}

// suspects looks for wrong readings: the fewest that end the contradiction.
func (r *Result) suspects() contradiction {
	if r.whole().loudest() < 0 {
		return contradiction{}
	}
	out, rest := r.snoop()
	if len(out) != 1 || !rest.peaceful() {
		if one, alone, ok := r.single(); ok {
			out, rest = one, alone
		}
	}
	if len(out) == 0 {
		return contradiction{more: true, rest: r.whole()}
	}
	var sets [][]int
	for range 3 { // the linear picture may know better; its answer makes a better picture
		p, ok := rest.picture(r.network.Readings, out)
		if !ok {
			break
		}
		sets = p.explanations(len(out))
		if len(sets) == 0 || equalSets(sets[0], out) {
			break
		}
		next, err := r.without(sets[0], rest.Result, false)
		if err != nil || next.VTPV >= rest.VTPV {
			break
		}
		out, rest = sets[0], next
	}
	return contradiction{list: r.accuse(r.tried(sets, out, rest), rest.Result), rest: rest, more: rest.loudest() >= 0}
}

// tried keeps the explanations that stand up to an adjustment without them;
// those found first stay in any case, in front.
func (r *Result) tried(sets [][]int, out []int, rest trimmed) [][]int {
	kept := [][]int{out}
	for _, s := range sets {
		if equalSets(s, out) || len(kept) == manyExplanations {
			continue
		}
		next, err := r.without(s, rest.Result, false)
		if err == nil && (next.DOF == 0 || next.VTPV <= max(hopeless(next.DOF), rest.VTPV+certainly)) {
			kept = append(kept, s)
		}
	}
	return kept
}

func equalSets(a, b []int) bool {
	a, b = slices.Sorted(slices.Values(a)), slices.Sorted(slices.Values(b))
	return slices.Equal(a, b)
}

// snoop is Baarda's data snooping: the reading with the largest residual, in
// standard deviations of it, is left out, the rest adjusted again, and so on.
func (r *Result) snoop() (out []int, rest trimmed) {
	rest = r.whole()
	for len(out) < slips {
		i := rest.loudest()
		if i < 0 {
			break
		}
		next, err := r.without(append(slices.Clone(out), i), rest.Result, true)
		if err != nil {
			break
		}
		out, rest = append(out, i), next
	}
	return out, rest
}

// single looks for one reading without which all others agree: those left out
// first are put back like this.
func (r *Result) single() (out []int, rest trimmed, ok bool) {
	var loud []int
	for i, o := range r.Readings {
		if math.Abs(o.W) > Critical {
			loud = append(loud, i)
		}
	}
	sort.SliceStable(loud, func(i, j int) bool {
		return math.Abs(r.Readings[loud[i]].W) > math.Abs(r.Readings[loud[j]].W)*(1+1e-9)
	})
	for _, i := range loud[:min(manyTries, len(loud))] {
		next, err := r.without([]int{i}, r, true)
		if err != nil || !next.peaceful() {
			continue
		}
		if !ok || next.VTPV < rest.VTPV {
			out, rest, ok = []int{i}, next, true
		}
	}
	return out, rest, ok
}

// accuse turns explanations into suspects. Where of each explanation with two
// slips one is in a first group and the other in a second, each group is a
// contradiction of its own; else they are told as one.
func (r *Result) accuse(sets [][]int, rest *Result) []Suspect {
	side, apart := sides(sets)
	suspects := make([]Suspect, 1)
	if apart {
		suspects = make([]Suspect, 2)
	}
	seen := map[int]bool{}
	for _, set := range sets {
		for k, i := range set {
			if seen[i] {
				continue
			}
			seen[i] = true
			s := &suspects[0]
			if apart {
				s = &suspects[side[i]]
			}
			others := slices.Delete(slices.Clone(set), k, k+1)
			s.Readings = append(s.Readings, r.accused(i, others, rest))
		}
	}
	for k := range suspects {
		s := &suspects[k]
		s.Slips = len(sets[0])
		if apart {
			s.Slips = 1
		}
		sort.SliceStable(s.Readings, func(i, j int) bool {
			return math.Abs(s.Readings[i].W) > math.Abs(s.Readings[j].W)*(1+1e-6)
		})
	}
	sort.SliceStable(suspects, func(i, j int) bool {
		return math.Abs(suspects[i].Readings[0].W) > math.Abs(suspects[j].Readings[0].W)*(1+1e-6)
	})
	return suspects
}

// sides parts the readings of explanations with two slips so that each has one
// on either side; false when that is not possible, or when some explanations
// have nothing to do with the others.
func sides(sets [][]int) (map[int]int, bool) {
	if len(sets[0]) < 2 {
		return nil, false
	}
	side := map[int]int{sets[0][0]: 0, sets[0][1]: 1}
	for range sets {
		for _, s := range sets {
			a, knownA := side[s[0]]
			b, knownB := side[s[1]]
			switch {
			case knownA && knownB && a == b:
				return nil, false
			case knownA && !knownB:
				side[s[1]] = 1 - a
			case knownB && !knownA:
				side[s[0]] = 1 - b
			}
		}
	}
	for _, s := range sets {
		if _, ok := side[s[0]]; !ok {
			return nil, false
		}
	}
	return side, true
}

// accused fills in what a reading should have read, when it is wrong and so are
// the others named.
func (r *Result) accused(i int, others []int, rest *Result) Accused {
	a := Accused{Index: i, Reading: r.Readings[i].Reading}
	if with, err := r.without(others, rest, false); err == nil {
		a.W = with.Readings[slices.Index(with.of, i)].W
	}
	if clean, err := r.without(append(slices.Clone(others), i), rest, false); err == nil {
		a.expect(clean.Result)
	}
	return a
}

// expect takes what the reading should have read from an adjustment without it.
func (a *Accused) expect(rest *Result) {
	f, err := rest.Foretell(a.Reading)
	if err != nil {
		return
	}
	a.ShouldRead = f
	if a.Reading.Kind.angular() {
		a.AngleError = unit.Angle(math.Remainder(float64(a.Reading.Angle-f.Angle), 2*math.Pi))
	} else {
		a.Error = a.Reading.Length - f.Length.Value
	}
}
