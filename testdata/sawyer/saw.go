package sawyer

import "math"

// saw makes the cuts of a layout one after the other on the pieces that are
// there, and looks whether every part is among what comes off.
func (v *Verdict) saw(p instance, sh sheet, l layout, shapes []shape, n int) {
	y0, y1 := 0.0, sh.Width
	if len(sh.Low) > 0 {
		y0 = math.Inf(1)
		for _, q := range sh.Low {
			y0 = math.Min(y0, q[1])
		}
	}
	if len(sh.High) > 0 {
		y1 = math.Inf(-1)
		for _, q := range sh.High {
			y1 = math.Max(y1, q[1])
		}
	}
	pieces := []rect{{0, y0, sh.Length, y1 - y0}}
	freed := map[string]int{}
	for k, c := range l.Cuts {
		for _, id := range c.Frees {
			freed[id]++
		}
		at := -1
		for i, q := range pieces {
			if same(q, c.Piece) {
				at = i
			}
		}
		if at < 0 {
			v.wrong("layout %d, cut %d: no piece %v is left to saw", n, k+1, c.Piece)
			return
		}
		if c.At != c.EndAt {
			continue // a slanted cut parts tapering shapes, whose gap was measured
		}
		q := pieces[at]
		pieces = append(pieces[:at:at], pieces[at+1:]...)
		a, b, ok := cutOf(q, c, p.Kerf)
		if !ok {
			v.wrong("layout %d, cut %d: the cut misses the piece", n, k+1)
			return
		}
		v.setting(q, c, n, k)
		for _, o := range sh.KeepOut {
			if meets(o, q, c, p.Kerf) {
				v.wrong("layout %d, cut %d runs through a place to keep off", n, k+1)
			}
		}
		for _, r := range []rect{a, b} {
			if r.Length > fine/2 && r.Width > fine/2 {
				pieces = append(pieces, r)
			}
		}
	}
	v.parts(p, l, shapes, pieces, [2]float64{y0, y1}, n)
	for _, s := range shapes {
		freed[s.id]--
	}
	for id, k := range freed {
		if k != 0 && len(l.Cuts) > 0 {
			v.wrong("layout %d: the cuts free %s %+d times too often", n, id, k)
		}
	}
}

func same(a, b rect) bool {
	return math.Abs(a.X-b.X)+math.Abs(a.Y-b.Y)+math.Abs(a.Length-b.Length)+math.Abs(a.Width-b.Width) < fine
}

// cutOf parts a piece; what the kerf reaches over is dust.
func cutOf(q rect, c sawCut, kerf float64) (a, b rect, ok bool) {
	lo, hi := c.At, c.At+kerf
	if !c.KerfAbove {
		lo, hi = c.At-kerf, c.At
	}
	a, b = q, q
	if c.Rip {
		a.Width, b.Y = lo-q.Y, hi
		b.Width = q.Y + q.Width - hi
		return a, b, c.At > q.Y-fine && c.At < q.Y+q.Width+fine
	}
	a.Length, b.X = lo-q.X, hi
	b.Length = q.X + q.Length - hi
	return a, b, c.At > q.X-fine && c.At < q.X+q.Length+fine
}

// setting compares the distance on the fence with the cut.
func (v *Verdict) setting(q rect, c sawCut, n, k int) {
	want := map[string]float64{"left": c.At - q.X, "right": q.X + q.Length - c.At, "low": c.At - q.Y, "high": q.Y + q.Width - c.At}[c.From]
	if math.Abs(want-c.Setting) > fine {
		v.wrong("layout %d, cut %d: %.3f set from the %s edge, %.3f is there", n, k+1, c.Setting, c.From, want)
	}
}

func meets(o, q rect, c sawCut, kerf float64) bool {
	lo, hi := c.At, c.At+kerf
	if !c.KerfAbove {
		lo, hi = c.At-kerf, c.At
	}
	if c.Rip {
		return o.Y < hi-fine && lo < o.Y+o.Width-fine && o.X < q.X+q.Length-fine && q.X < o.X+o.Length-fine
	}
	return o.X < hi-fine && lo < o.X+o.Length-fine && o.Y < q.Y+q.Width-fine && q.Y < o.Y+o.Width-fine
}

// parts looks for every shape among the pieces.
func (v *Verdict) parts(p instance, l layout, shapes []shape, pieces []rect, outer [2]float64, n int) {
	for _, s := range shapes {
		if s.taper {
			continue
		}
		want := rect{s.x0, s.low[0], s.x1 - s.x0, s.high[0] - s.low[0]}
		switch s.edge {
		case "low":
			want.Y, want.Width = outer[0], s.high[0]-outer[0]
		case "high":
			want.Width = outer[1] - s.low[0]
		}
		if _, ok := find(pieces, func(q rect) bool { return same(q, want) }); !ok {
			v.wrong("layout %d: the cuts do not free %s as %v", n, s.id, want)
		}
	}
}
