package saw

import "slices"

// board is a sheet on the grid.
type board struct {
	in              box // what trim leaves; the outermost of both edges
	lo, hi          []point
	naturalLo       bool
	naturalHi       bool
	keep            []box
	price           float64
	count           int
	area            float64
	straight, whole bool // straight edges; no places to keep off
}

type point struct{ x, y grid }

func boardOf(s Sheet, p Problem) board {
	t := onGrid(p.Trim)
	b := board{price: s.Price, count: s.Count, naturalLo: slices.Contains(s.Natural, Low), naturalHi: slices.Contains(s.Natural, High)}
	if p.Aim == Fewest {
		b.price = 1
	}
	b.lo, b.hi = edgeOf(s.Low, 0, onGrid(s.Length)), edgeOf(s.High, onGrid(s.Width), onGrid(s.Length))
	b.straight = level(b.lo) && level(b.hi)
	if !b.naturalLo {
		b.lo = shifted(b.lo, t)
	}
	if !b.naturalHi {
		b.hi = shifted(b.hi, -t)
	}
	b.in = box{x0: t, x1: onGrid(s.Length) - t, y0: b.lo[0].y, y1: b.hi[0].y}
	for _, q := range b.lo {
		b.in.y0 = min(b.in.y0, q.y)
	}
	for _, q := range b.hi {
		b.in.y1 = max(b.in.y1, q.y)
	}
	for _, k := range s.KeepOut {
		b.keep = append(b.keep, box{onGrid(k.X), onGrid(k.Y), onGrid(k.X + k.Length), onGrid(k.Y + k.Width)})
	}
	b.whole = len(b.keep) == 0
	b.area = between(b.lo, b.hi) // keep-outs may lie on each other or outside: not taken off
	return b
}

func edgeOf(list []Station, y, length grid) []point {
	if len(list) == 0 {
		return []point{{0, y}, {length, y}}
	}
	var out []point
	for _, s := range list {
		out = append(out, point{onGrid(s.At), onGrid(s.Y)})
	}
	if out[0].x > 0 {
		out = slices.Insert(out, 0, point{0, out[0].y})
	}
	if last := out[len(out)-1]; last.x < length {
		out = append(out, point{length, last.y})
	}
	return out
}

func level(list []point) bool {
	for _, p := range list {
		if p.y != list[0].y {
			return false
		}
	}
	return true
}

func shifted(list []point, by grid) []point {
	out := slices.Clone(list)
	for i := range out {
		out[i].y += by
	}
	return out
}

// between is the area between two edges.
func between(lo, hi []point) float64 {
	area := func(list []point) (sum float64) {
		for i := 1; i < len(list); i++ {
			sum += float64(list[i].x-list[i-1].x) * float64(list[i].y+list[i-1].y) / 2
		}
		return sum
	}
	return area(hi) - area(lo)
}

// heightAt is the height of an edge at x, rounded away from the wood.
func heightAt(list []point, x grid, up bool) grid {
	i, _ := slices.BinarySearchFunc(list, x, func(p point, x grid) int {
		switch {
		case p.x < x:
			return -1
		case p.x > x:
			return 1
		}
		return 0
	})
	if i == 0 {
		return list[0].y
	}
	if i == len(list) {
		return list[i-1].y
	}
	a, b := list[i-1], list[i]
	num, den := (b.y-a.y)*(x-a.x), b.x-a.x
	y := num / den
	if rest := num % den; up && rest > 0 {
		y++
	} else if !up && rest < 0 {
		y--
	}
	return a.y + y
}

// band is the straight strip of wood between x and x + l: from the highest place
// of the low edge to the lowest of the high one.
func (b *board) band(x, l grid) (y0, y1 grid) {
	y0 = max(heightAt(b.lo, x, true), heightAt(b.lo, x+l, true))
	y1 = min(heightAt(b.hi, x, false), heightAt(b.hi, x+l, false))
	for _, p := range b.lo {
		if p.x > x && p.x < x+l {
			y0 = max(y0, p.y)
		}
	}
	for _, p := range b.hi {
		if p.x > x && p.x < x+l {
			y1 = min(y1, p.y)
		}
	}
	return y0, y1
}

// hits says whether a box reaches into another one.
func (a box) hits(b box) bool { return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1 }

// lowest is the lowest y from which a part of a size keeps off every keep-out
// below a top, and can be sawn out of the box that it then lies in; false if there
// is none.
func (b *board) lowest(x, l, y, w, top, kerf grid, in func(at box) box) (grid, bool) {
	if b.whole {
		return y, y+w <= top
	}
	places := []grid{y}
	for _, k := range b.keep {
		for _, p := range []grid{k.y1, k.y1 + kerf} {
			if p > y {
				places = append(places, p)
			}
		}
	}
	slices.Sort(places)
	for _, p := range places {
		at := box{x, p, x + l, p + w}
		if at.y1 <= top && !slices.ContainsFunc(b.keep, at.hits) && b.freeable(at, in(at), kerf) {
			return p, true
		}
	}
	return 0, false
}

// freeable says whether cuts right across free a part from a box, none of them
// through a keep-out.
func (b *board) freeable(at, in box, kerf grid) bool {
	if !slices.ContainsFunc(b.keep, in.hits) || at == in {
		return true
	}
	type trim struct {
		needed bool
		line   grid
		cross  bool
		rest   box
	}
	for _, t := range []trim{
		{at.x1 < in.x1, at.x1, true, box{in.x0, in.y0, at.x1, in.y1}},
		{at.x0 > in.x0, at.x0 - kerf, true, box{at.x0, in.y0, in.x1, in.y1}},
		{at.y1 < in.y1, at.y1, false, box{in.x0, in.y0, in.x1, at.y1}},
		{at.y0 > in.y0, at.y0 - kerf, false, box{in.x0, at.y0, in.x1, in.y1}},
	} {
		if t.needed && b.clear(t.line, kerf, in, t.cross) == t.line && b.freeable(at, t.rest, kerf) {
			return true
		}
	}
	return false
}

// clear moves a cut of the width of a kerf to the first place from at on where
// it meets no keep-out of a box: along x for a cross cut, else along y.
func (b *board) clear(at, kerf grid, in box, cross bool) grid {
	for moved := true; moved; {
		moved = false
		for _, k := range b.keep {
			line := box{at, in.y0, at + kerf, in.y1}
			if !cross {
				line = box{in.x0, at, in.x1, at + kerf}
			}
			if k.hits(line) || kerf == 0 && k.crossed(at, in, cross) {
				moved = true
				if cross {
					at = k.x1
				} else {
					at = k.y1
				}
			}
		}
	}
	return at
}

// crossed says whether a cut without width runs through a box inside another.
func (a box) crossed(at grid, in box, cross bool) bool {
	if cross {
		return a.x0 < at && at < a.x1 && a.y0 < in.y1 && in.y0 < a.y1
	}
	return a.y0 < at && at < a.y1 && a.x0 < in.x1 && in.x0 < a.x1
}
