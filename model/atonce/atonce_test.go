package atonce_test

import (
	"strings"
	"sync/atomic"
	"testing"

	"slabwright/model/atonce"
)

func TestEachCallsEveryNumberOnce(t *testing.T) {
	for _, n := range []int{0, 1, 2, 100} {
		calls := make([]atomic.Int32, n)
		atonce.Each(n, func(i int) { calls[i].Add(1) })
		for i := range calls {
			if c := calls[i].Load(); c != 1 {
				t.Errorf("%d of %d was called %d times", i, n, c)
			}
		}
	}
}

// A panic does not end the program: the caller gets the first, after all others
// have been called, and learns where it came from, however deep.
func TestPanicsGoOnInTheCaller(t *testing.T) {
	var calls atomic.Int32
	defer func() {
		p, ok := recover().(atonce.Panic)
		if !ok || p.Error() != "number 3" || !strings.Contains(string(p.Stack), "breaks") || calls.Load() != 8 {
			t.Errorf("got %v after %d calls\n%s", p.Value, calls.Load(), p.Stack)
		}
	}()
	atonce.Each(8, func(i int) {
		calls.Add(1)
		if i >= 3 {
			atonce.Both(func() { breaks(i) }, func() {})
		}
	})
}

func breaks(i int) { panic("number " + string(rune('0'+i))) }
