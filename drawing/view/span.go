package view

import (
	"cmp"
	"slices"
)

// span is a stretch of a line, as fractions of its length.
type span struct{ lo, hi float64 }

// whole is all of a line.
var whole = []span{{0, 1}}

// union sorts spans and joins those that touch or lie less than gap apart. It
// works in place.
func union(s []span, gap float64) []span {
	if len(s) < 2 {
		return s
	}
	slices.SortFunc(s, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	out := s[:1]
	for _, x := range s[1:] {
		if end := &out[len(out)-1].hi; x.lo <= *end+gap {
			*end = max(*end, x.hi)
		} else {
			out = append(out, x)
		}
	}
	return out
}

// common appends to out what is in both a and b, each a union.
func common(out, a, b []span) []span {
	for len(a) > 0 && len(b) > 0 {
		lo, hi := max(a[0].lo, b[0].lo), min(a[0].hi, b[0].hi)
		if lo < hi {
			out = append(out, span{lo, hi})
		}
		if a[0].hi < b[0].hi {
			a = a[1:]
		} else {
			b = b[1:]
		}
	}
	return out
}

// minus appends to out what is in a but not in b, each a union.
func minus(out, a, b []span) []span {
	for _, x := range a {
		for _, y := range b {
			if y.lo > x.lo && y.lo < x.hi {
				out = append(out, span{x.lo, y.lo})
			}
			if y.hi > x.lo {
				x.lo = y.hi
			}
		}
		if x.lo < x.hi {
			out = append(out, x)
		}
	}
	return out
}

// settle takes out changes shorter than speck: crumbs go, gaps close, at the
// ends of the line as well. Of a line that is itself shorter, half decides.
func settle(s []span, speck float64) []span {
	s = union(s, speck/20)
	s = slices.DeleteFunc(s, func(x span) bool { return x.hi-x.lo < min(speck, 0.5) })
	s = union(s, speck)
	if len(s) == 0 {
		return s
	}
	if s[0].lo < speck {
		s[0].lo = 0
	}
	if end := &s[len(s)-1].hi; *end > 1-speck {
		*end = 1
	}
	return s
}
