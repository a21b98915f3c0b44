package dim

import "slabwright/model/unit"

// staggerGap is kept between figures of stacked lines, along them.
const staggerGap unit.Length = 2

// stagger moves figures along their lines so that they do not stand over each
// other in stacked rows: drawing practice, for the eye runs along a line.
func (s *side) stagger(style *Style) {
	for k, w := range s.rows {
		for _, e := range w.entries {
			e.lean = make([]unit.Length, len(e.texts))
			if k == 0 || e.running {
				continue
			}
			for i := range e.lean {
				e.lean[i] = e.aside(i, s.rows[k-1], style)
			}
		}
	}
}

// figure is the middle and the width of the figures of link i along the side.
func (e *entry) figure(i int) (mid, width unit.Length) {
	return (e.flat[i]+e.flat[i+1])/2 + e.lean[i], e.texts[i].width
}

// aside is the shift that takes the figures of link i off those of the row
// inside; zero when they are clear or there is no such shift.
func (e *entry) aside(i int, inner *row, style *Style) unit.Length {
	mid, width := e.figure(i)
	room := (e.u[i+1]-e.u[i]-width)/2 - style.inset()
	under, right, left := inner.covers(mid, width)
	if !under {
		return 0
	}
	for _, d := range [...]unit.Length{right, left} {
		if again, _, _ := inner.covers(mid+d, width); !again && abs(d) <= room {
			return d
		}
	}
	return 0
}

// covers tells whether figures of the row stand under a stretch, and how far it
// would have to move off the first of them to the right and to the left.
func (w *row) covers(mid, width unit.Length) (under bool, right, left unit.Length) {
	for _, o := range w.entries {
		if o.running {
			continue
		}
		for j := range o.texts {
			at, wide := o.figure(j)
			if clear := (width+wide)/2 + staggerGap; abs(mid-at) < clear-0.01 {
				return true, at + clear - mid, at - clear - mid
			}
		}
	}
	return false, 0, 0
}
