package dim

import (
	"math"

	"slabwright/model/unit"
)

// Distances kept between rows beyond those of the style.
const (
	rowGap  unit.Length = 1.2 // from what stands on a line to what hangs from the next
	pushEnd unit.Length = 30  // a row gives way to what is in its place so far
)

// settle fixes the distance of each row of a side and enters its lines into
// the field; it returns the rulers in the order of the entries.
func (b *board) settle(s *side, f *field) []*ruler {
	var done []*ruler
	style := &b.p.Style
	for k, w := range s.rows {
		w.at = max(style.First, w.inner+2)
		if k > 0 {
			in := s.rows[k-1]
			w.at = in.at + max(style.Next, in.outer+rowGap+w.inner)
		}
		for _, e := range w.entries {
			e.stand(s, w.at)
		}
		b.refan(s, k, f)
		w.at += b.push(s, w, f)
		for _, e := range w.entries {
			e.stand(s, w.at)
		}
		for _, e := range w.entries {
			done = append(done, newRuler(e, style))
		}
	}
	s.stagger(style)
	extend(done, f, style)
	for _, r := range done {
		r.enter(f)
	}
	return done
}

// refan spreads running values anew, now that it is known which lines pass
// between them: extension lines of rows beyond, and what is fixed there.
func (b *board) refan(s *side, k int, f *field) {
	w := s.rows[k]
	for _, e := range w.entries {
		if !e.running {
			continue
		}
		for range 2 { // a fan that spreads farther out may meet more
			barriers := e.barred(f, &b.p.Style)
			for _, far := range s.rows[k+1:] {
				for _, o := range far.entries {
					for i := range o.u {
						barriers = append(barriers, o.passing(i, e, &b.p.Style))
					}
				}
			}
			e.fan = e.spread(&b.p.Style, barriers)
		}
		w.outer = max(w.outer, e.fan.depth(&b.p.Style)+e.skew(s))
	}
}

// barred finds what is fixed where the values of running dimensions would stand.
func (e *entry) barred(f *field, s *Style) []bead {
	const aside = 30 // values may be pushed this far
	lo, hi := e.fan.lo-aside, e.fan.hi+aside
	mid := e.dir.Mul(float64((lo + hi) / 2)).Add(e.out.Mul(float64(e.dist + e.fan.depth(s)/2)))
	zone := newBox(mid, e.dir, hi-lo, e.fan.depth(s))
	lines, boxes := f.near(zone.min, zone.max)
	var out []bead
	for _, i := range lines {
		if l := &f.lines[i]; zone.cut(l, 0) {
			t0, t1 := zone.clipped(l)
			a, b := l.a.Lerp(l.b, t0).Dot(e.dir), l.a.Lerp(l.b, t1).Dot(e.dir)
			out = append(out, barrierAt(unit.Length(a+b)/2, unit.Length(math.Abs(b-a))))
		}
	}
	for _, i := range boxes {
		if o := &f.boxes[i]; zone.meets(o, 0) {
			half := abs(unit.Length(o.dir.Dot(e.dir)))*o.hw + abs(unit.Length(o.dir.Cross(e.dir)))*o.hh
			out = append(out, barrierAt(unit.Length(o.mid.Dot(e.dir)), 2*half))
		}
	}
	return out
}

// passing is the barrier that the extension line of station i makes among the
// values of running dimensions e.
func (o *entry) passing(i int, e *entry, s *Style) bead {
	foot := o.dir.Mul(float64(o.u[i]))
	across := func(v unit.Length) unit.Length { return unit.Length(foot.Add(o.out.Mul(float64(v))).Dot(e.dir)) }
	a, b := across(e.dist), across(e.dist+e.fan.depth(s))
	return barrierAt((a+b)/2, abs(a-b))
}

// stand puts the line of an entry so that its nearest end is at from the base.
func (e *entry) stand(s *side, at unit.Length) {
	slope := unit.Length(e.dir.Dot(s.out))
	near := min(e.u[0]*slope, e.u[len(e.u)-1]*slope)
	e.dist = (s.base + at - near) / unit.Length(e.out.Dot(s.out))
}

// push is how far a row has to give way so that its lines and figures stand
// clear of what is fixed; zero if there is no such place near.
func (b *board) push(s *side, w *row, f *field) unit.Length {
	best, least := unit.Length(0), math.MaxInt
	for d := unit.Length(0); d <= pushEnd; d++ {
		hits := 0
		for _, e := range w.entries {
			e.stand(s, w.at+d)
			hits += f.hits(e.strip(&b.p.Style))
		}
		if hits < least {
			best, least = d, hits
		}
		if hits == 0 {
			break
		}
	}
	return best
}

// strip is the room of a dimension line with its figures.
func (e *entry) strip(s *Style) box {
	inner, outer := e.depth(s, e.out)
	if !e.running && outer == s.Past {
		outer = 1
	}
	lo, hi := e.u[0], e.u[len(e.u)-1]
	if e.running {
		lo, hi = e.fan.lo, e.fan.hi
	}
	mid := e.dir.Mul(float64((lo + hi) / 2)).Add(e.out.Mul(float64(e.dist + (outer-inner)/2)))
	return newBox(mid, e.dir, hi-lo-0.4, outer+inner)
}

// hits counts the lines and boxes in the way of a box.
func (f *field) hits(b box) int {
	n := 0
	lines, boxes := f.near(b.min, b.max)
	for _, i := range lines {
		if b.cut(&f.lines[i], 0) {
			n++
		}
	}
	for _, i := range boxes {
		if b.meets(&f.boxes[i], 0) {
			n++
		}
	}
	return n
}
