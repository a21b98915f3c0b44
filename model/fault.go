package model

import (
	"fmt"
	"math"
	"path/filepath"
	"runtime"
	"strings"

	"slabwright/model/unit"
)

// fault is a mistake in a description, with the line of the call that made it.
type fault struct {
	what  string
	line  string
	waits bool // no mistake of its own: a part that it needs was left out
}

// faults travel inside the values of the description language.
type faults []fault

// and gives a new list, so that values that share a history never share a tail.
func (f faults) and(more ...fault) faults {
	return append(f[:len(f):len(f)], more...)
}

// within notes a length that is no number or outside what can be described.
func (f faults) within(what string, v, low, high unit.Length) faults {
	if v >= low && v <= high {
		return f
	}
	return f.and(faultf("the %s is %s: %s to %s can be described", what, inWords(v), plain(low), inWords(high)))
}

func faultf(format string, args ...any) fault {
	return fault{what: fmt.Sprintf(format, args...), line: callLine()}
}

// inWords writes a length for a message, whatever it is.
func inWords(l unit.Length) string {
	switch {
	case math.IsNaN(float64(l)):
		return "no number"
	case l >= unit.M*unit.M:
		return "more than a kilometre"
	case l <= -unit.M*unit.M:
		return "less than minus a kilometre"
	}
	return plain(l) + " mm"
}

func plain(l unit.Length) string { return unit.Style{}.Length(l) }

// callLine gives "dir/file.go:12" of the nearest caller outside this package:
// the line of the description.
func callLine() string {
	var pcs [16]uintptr
	frames := runtime.CallersFrames(pcs[:runtime.Callers(2, pcs[:])])
	for {
		f, more := frames.Next()
		if !strings.HasPrefix(f.Function, "slabwright/model.") || strings.HasSuffix(f.File, "_test.go") {
			return fmt.Sprintf("%s:%d", shortPath(f.File), f.Line)
		}
		if !more {
			return ""
		}
	}
}

func shortPath(file string) string {
	return filepath.ToSlash(filepath.Join(filepath.Base(filepath.Dir(file)), filepath.Base(file)))
}

// Nearest gives the word of a list that is closest to what was written, or ""
// if none is close: fewer than half of the letters may differ.
func Nearest(word string, words []string) string {
	best, dist := "", len(word)/2+1
	for _, w := range words {
		if d := editDistance(strings.ToLower(word), strings.ToLower(w)); d < dist {
			best, dist = w, d
		}
	}
	return best
}

// editDistance is the least number of letters inserted, left out, replaced or
// swapped with their neighbour (optimal string alignment).
func editDistance(a, b string) int {
	s, t := []rune(a), []rune(b)
	rows := make([][]int, len(s)+1)
	for i := range rows {
		rows[i] = make([]int, len(t)+1)
		rows[i][0] = i
	}
	for j := range t {
		rows[0][j+1] = j + 1
	}
	for i := range s {
		for j := range t {
			cost := 1
			if s[i] == t[j] {
				cost = 0
			}
			d := min(rows[i][j+1]+1, rows[i+1][j]+1, rows[i][j]+cost)
			if i > 0 && j > 0 && s[i] == t[j-1] && s[i-1] == t[j] {
				d = min(d, rows[i-1][j-1]+1)
			}
			rows[i+1][j+1] = d
		}
	}
	return rows[len(s)][len(t)]
}
