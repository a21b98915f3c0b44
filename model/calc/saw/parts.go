package saw

import "math"

// part is an item on the grid.
type part struct {
	l, w, end grid // end: width at the far end
	turn      bool
	edge      bool // wants a natural edge on its high or low side
	upper     bool // the natural edge is the high side as the part is drawn
	area      float64
}

func partsOf(items []Item) []part {
	var out []part
	for _, it := range items {
		p := part{l: onGrid(it.Length), w: onGrid(it.Width), end: onGrid(it.Width), turn: it.Turn && it.Edge == NoSide, edge: it.Edge != NoSide, upper: it.Edge == High}
		if it.EndWidth > 0 {
			p.end = onGrid(it.EndWidth)
		}
		p.area = float64(p.l) * float64(p.w+p.end) / 2
		out = append(out, p)
	}
	return out
}

// high is the greatest width.
func (p part) high() grid { return max(p.w, p.end) }

// leaf is one way in which a part lies, or two tapering parts that nest, the
// second turned by half a turn above the first.
type leaf struct {
	part       int
	l, w       grid // of the rectangle around it
	across     bool
	turned     bool
	low, high  bool // needs the natural edge of that side of the sheet
	mate       int  // the second part of a pair, -1 without
	at, mateAt grid // of the two parts of a pair, from the left
}

// leavesOf lists the ways in which single parts lie.
func leavesOf(parts []part) []leaf {
	var out []leaf
	for i, p := range parts {
		if p.edge {
			out = append(out,
				leaf{part: i, l: p.l, w: p.high(), low: true, turned: p.upper, mate: -1},
				leaf{part: i, l: p.l, w: p.high(), high: true, turned: !p.upper, mate: -1})
			continue
		}
		out = append(out, leaf{part: i, l: p.l, w: p.high(), mate: -1})
		if p.turn && p.l != p.high() {
			out = append(out, leaf{part: i, l: p.high(), w: p.l, across: true, mate: -1})
		}
	}
	return out
}

// nests lists the pairs of tapering parts that take less width than one above
// the other: both slanted sides face the same cut.
func nests(parts []part, demand []int, kerf grid) []leaf {
	var out []leaf
	for i, a := range parts {
		for j := i; j < len(parts); j++ {
			b := parts[j]
			if a.edge || b.edge || a.w == a.end && b.w == b.end || demand[i] < 1 || demand[j] < 1 || i == j && demand[i] < 2 {
				continue
			}
			l := max(a.l, b.l)
			shifts := []leaf{{mateAt: 0}}
			switch {
			case a.l > b.l:
				shifts = append(shifts, leaf{mateAt: a.l - b.l})
			case b.l > a.l:
				shifts = append(shifts, leaf{at: b.l - a.l})
			}
			for _, s := range shifts {
				if w := nested(a, b, s.at, s.mateAt, kerf); w < a.high()+kerf+b.high() {
					out = append(out, leaf{part: i, mate: j, l: l, w: w, at: s.at, mateAt: s.mateAt})
				}
			}
		}
	}
	return out
}

// nested is the width of b, turned by half a turn, above a: the straight line of
// a's slanted side, carried on, stays a kerf below b.
func nested(a, b part, at, mateAt, kerf grid) grid {
	slope := float64(a.end-a.w) / float64(a.l)
	gap := float64(kerf) * math.Hypot(1, slope)
	y := float64(a.high())
	for _, x := range []grid{0, b.l} {
		line := float64(a.w) + slope*float64(mateAt+x-at)
		width := float64(b.end) + float64(b.w-b.end)*float64(x)/float64(b.l)
		y = max(y, line+gap+width)
	}
	return max(grid(math.Ceil(y)), b.high())
}
