// Package atonce does several things at once.
package atonce

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
	"sync/atomic"
)

// Panic is a panic that came up in another goroutine, and where.
type Panic struct {
	Value any
	Stack []byte
}

func (p Panic) Error() string { return fmt.Sprint(p.Value) }

// Each calls f with 0 to n-1, lower numbers first, as many at a time as there are
// processors, and returns when all have. When some panic, the one with the lowest
// number goes on in the caller as a Panic.
func Each(n int, f func(i int)) {
	panics := make([]*Panic, n)
	call := func(i int) {
		defer func() {
			if v := recover(); v != nil {
				if p, ok := v.(Panic); ok {
					panics[i] = &p
					return
				}
				panics[i] = &Panic{v, debug.Stack()}
			}
		}()
		f(i)
	}
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for i := next.Add(1) - 1; i < int64(n); i = next.Add(1) - 1 {
				call(int(i))
			}
		})
	}
	wait.Wait()
	for _, p := range panics {
		if p != nil {
			panic(*p)
		}
	}
}

// Both does two things.
func Both(f, g func()) { Each(2, func(i int) { [2]func(){f, g}[i]() }) }
