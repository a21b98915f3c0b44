package view

import (
	"math"

	"slabwright/model/geom"
)

// section cuts the skin at the plane w = 0 and keeps what lies behind it. It
// gives the skin that is left, closed by lids, the outlines of the cuts and
// their areas. A body that only touches the plane is not cut: it is kept as it
// is, or left out if it lies in front.
func section(skin []face) (left []face, outlines []piece, areas []CutArea) {
	for len(skin) > 0 {
		n := 1
		for n < len(skin) && skin[n].item == skin[0].item {
			n++
		}
		var seams []seam
		for _, body := range bodies(skin[:n]) {
			if nearest(body) <= 0 {
				left = append(left, body...)
				continue
			}
			for _, f := range body {
				kept, made := clip(f.loops, f.n, alongW, 0, false)
				for _, s := range made {
					outlines = append(outlines, piece{s.from, s.to, f.stroke(Cut)})
				}
				seams = append(seams, made...)
				f.loops = kept
				if len(kept) > 0 {
					left = append(left, f)
				}
			}
		}
		if loops := chain(seams); len(loops) > 0 {
			item := skin[0].item
			left = append(left, face{loops: loops, n: vertex{w: 1}, item: item})
			areas = append(areas, CutArea{item, flatten(loops)})
		}
		skin = skin[n:]
	}
	return left, outlines, areas
}

// bodies sets corners within rounding of the plane onto it, and takes an item
// that has such corners apart into its bodies: faces that hang together by
// their corners.
func bodies(item []face) [][]face {
	touches := false
	for _, f := range item {
		for _, loop := range f.loops {
			for i := range loop {
				if math.Abs(loop[i].w) < onPlane {
					loop[i].w = 0
					touches = true
				}
			}
		}
	}
	if !touches {
		return [][]face{item}
	}
	// Every face points to another of its body, or to itself if it is the
	// first.
	lead := make([]int, len(item))
	first := func(i int) int {
		for lead[i] != i {
			lead[i] = lead[lead[i]]
			i = lead[i]
		}
		return i
	}
	at := map[vertex]int{}
	for i, f := range item {
		lead[i] = i
		for _, loop := range f.loops {
			for _, p := range loop {
				if j, seen := at[p]; seen {
					a, b := first(i), first(j)
					lead[max(a, b)] = min(a, b)
				} else {
					at[p] = i
				}
			}
		}
	}
	var out [][]face
	place := map[int]int{}
	for i, f := range item {
		k, seen := place[first(i)]
		if !seen {
			k = len(out)
			place[first(i)] = k
			out = append(out, nil)
		}
		out[k] = append(out[k], f)
	}
	return out
}

// nearest is the greatest w of a body.
func nearest(body []face) float64 {
	w := math.Inf(-1)
	for _, f := range body {
		for _, loop := range f.loops {
			for _, p := range loop {
				w = max(w, p.w)
			}
		}
	}
	return w
}

// chain joins seams into the loops of the lid that closes them. The lid runs
// along each seam against the direction of the face that was cut. Seams of
// open skins, which close no loop, are left out.
func chain(seams []seam) [][]vertex {
	starts := map[vertex][]int{}
	for i, s := range seams {
		starts[s.to] = append(starts[s.to], i)
	}
	used := make([]bool, len(seams))
	follow := func(p vertex) int {
		for _, i := range starts[p] {
			if !used[i] {
				used[i] = true
				return i
			}
		}
		return -1
	}
	var loops [][]vertex
	for _, s := range seams {
		var loop []vertex
		at := s.to
		for i := follow(at); i >= 0; i = follow(at) {
			loop = append(loop, at)
			at = seams[i].from
		}
		if len(loop) > 2 && at == s.to {
			loops = append(loops, loop)
		}
	}
	return loops
}

// flatten gives loops as drawn, without points in line with their neighbours.
func flatten(loops [][]vertex) [][]geom.Vec {
	var out [][]geom.Vec
	for _, loop := range loops {
		var flat []geom.Vec
		for i, p := range loop {
			before, after := loop[(i+len(loop)-1)%len(loop)], loop[(i+1)%len(loop)]
			if offLine(p, before, after) > straight {
				flat = append(flat, p.flat())
			}
		}
		if len(flat) > 2 {
			out = append(out, flat)
		}
	}
	return out
}

// offLine is the distance of p from the line a-b as drawn.
func offLine(p, a, b vertex) float64 {
	du, dv := b.u-a.u, b.v-a.v
	size := math.Hypot(du, dv)
	if size == 0 {
		return math.Hypot(p.u-a.u, p.v-a.v)
	}
	return math.Abs(du*(p.v-a.v)-dv*(p.u-a.u)) / size
}
