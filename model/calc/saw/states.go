package saw

// states numbers the selections of parts: how many of each kind, up to what is
// wanted of it.
type states struct {
	demand []int
	radix  []int
	n      int
}

// mostStates and mostPairs bound the exact search over selections.
const (
	mostStates = 5000
	mostPairs  = 2_000_000
)

// newStates is false where there are too many selections.
func newStates(demand []int) (states, bool) {
	s := states{demand: demand, n: 1}
	pairs := 1
	for _, d := range demand {
		s.radix = append(s.radix, s.n)
		if s.n *= d + 1; s.n > mostStates {
			return s, false
		}
		if pairs *= (d + 1) * (d + 2) / 2; pairs > mostPairs {
			return s, false
		}
	}
	return s, true
}

// full is the selection of everything.
func (s states) full() int { return s.n - 1 }

// of gives how many of each kind a selection holds.
func (s states) of(state int) []int {
	out := make([]int, len(s.demand))
	for i, d := range s.demand {
		out[i] = state / s.radix[i] % (d + 1)
	}
	return out
}

// one is the selection of a single part.
func (s states) one(kind int) int { return s.radix[kind] }

// within calls do for every selection inside another, neither empty nor whole.
func (s states) within(state int, do func(part int)) {
	counts := s.of(state)
	var walk func(i, part int)
	walk = func(i, part int) {
		if i == len(counts) {
			if part != 0 && part != state {
				do(part)
			}
			return
		}
		for n := 0; n <= counts[i]; n++ {
			walk(i+1, part+n*s.radix[i])
		}
	}
	walk(0, 0)
}
