package sheet

import (
	"fmt"
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Tiles of templates: neighbours share a strip of paper in which two crosses of
// the one lie on two crosses of the other.
const (
	tileOverlap unit.Length = 12
	leastTile   unit.Length = 40 // a remainder narrower than this is shared out among all
	crossSize   unit.Length = 6
	crossInset  unit.Length = 25 // from the ends of a joint, at most
)

// tile is one piece of paper of a template.
type tile struct {
	column, row int
	name        string       // "B2": column from the left, row from the top
	window      drawing.Rect // what it shows, in the axes of the template, overlaps included
	joints      []joint
	sheet       int          // template sheet on which it is printed, from 1
	place       drawing.Rect // of the window on that sheet
}

// joint is where a tile lies on a neighbour or below one.
type joint struct {
	side    string // of this tile: "right", "left", "down", "up"
	to      string // the neighbour
	under   bool   // this tile lies below
	border  [2]geom.Vec
	crosses []geom.Vec
}

// tiles cuts the paper of a template into pieces no larger than a room. Paper
// that the shape does not need is left off.
func tiles(shape geom.Region, room geom.Vec) []tile {
	lo, hi := shape.Bounds()
	columns, rows := stretches(hi.X-lo.X, room.X, false), stretches(hi.Y-lo.Y, room.Y, true)
	var out []tile
	index := map[[2]int]int{}
	for r, y := range rows {
		for c, x := range columns {
			cell := geom.Rect(geom.V(lo.X+x[0], hi.Y-y[1]), geom.V(lo.X+x[1], hi.Y-y[0]))
			used := shape.Intersect(cell)
			if used.Empty() {
				continue
			}
			a, b := used.Bounds()
			index[[2]int{c, r}] = len(out)
			out = append(out, tile{column: c, row: r, name: columnName(c) + fmt.Sprint(r+1), window: drawing.Rect{Min: a, Max: b}})
		}
	}
	for r := range rows {
		for c := range columns {
			i, ok := index[[2]int{c, r}]
			if !ok {
				continue
			}
			if j, ok := index[[2]int{c + 1, r}]; ok {
				join(shape, &out[i], &out[j], "right", "left")
			}
			if j, ok := index[[2]int{c, r + 1}]; ok {
				join(shape, &out[i], &out[j], "down", "up")
			}
		}
	}
	return out
}

// stretches divides a length into parts no longer than room that overlap: even
// ones, or full ones and a remainder.
func stretches(length, room unit.Length, full bool) [][2]unit.Length {
	n := max(1, int(math.Ceil(float64((length-tileOverlap)/(room-tileOverlap))-1e-9)))
	step := (length - tileOverlap) / unit.Length(n)
	if rest := length - unit.Length(n-1)*(room-tileOverlap); full && rest >= leastTile {
		step = room - tileOverlap
	}
	out := make([][2]unit.Length, n)
	for i := range out {
		start := unit.Length(i) * step
		out[i] = [2]unit.Length{start, min(start+step+tileOverlap, length)}
	}
	return out
}

// columnName counts A to Z, AA, AB and so on.
func columnName(i int) string {
	if i >= 26 {
		return columnName(i/26-1) + columnName(i%26)
	}
	return string(rune('A' + i))
}

// join lays tile b on tile a: right of it or below it.
func join(shape geom.Region, a, b *tile, side, back string) {
	both := common(a.window, b.window)
	p, q := geom.V(both.Centre().X, both.Min.Y), geom.V(both.Centre().X, both.Max.Y)
	border := [2]geom.Vec{both.Min, geom.V(both.Min.X, both.Max.Y)}
	if side == "down" {
		p, q = geom.V(both.Min.X, both.Centre().Y), geom.V(both.Max.X, both.Centre().Y)
		border = [2]geom.Vec{geom.V(both.Min.X, both.Max.Y), both.Max}
	}
	spans := shape.Inside(p, q)
	if len(spans) == 0 {
		return
	}
	p, q = p.Lerp(q, spans[0][0]), p.Lerp(q, spans[len(spans)-1][1])
	in := q.Sub(p).Unit().Mul(float64(min(crossInset, q.Sub(p).Len()/5)))
	crosses := []geom.Vec{p.Add(in), q.Sub(in)}
	a.joints = append(a.joints, joint{side, b.name, true, border, crosses})
	b.joints = append(b.joints, joint{back, a.name, false, border, crosses})
}
