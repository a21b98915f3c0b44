package geom

import "slices"

// piece is one connected part of a region: its outline counter-clockwise,
// then its holes clockwise. Loops pass no vertex twice, start at their lowest
// vertex in sorted order, and meet one another in common vertices only.
type piece [][]pt

// choose marks the faces whose winding numbers satisfy in. The unbounded face
// is never chosen.
func (p *partition) choose(in func(w []int32) bool) []bool {
	chosen := make([]bool, len(p.wind)/max(p.owners, 1))
	for f := 1; f < len(chosen); f++ {
		chosen[f] = in(p.wind[f*p.owners : (f+1)*p.owners])
	}
	return chosen
}

// outline gives the boundary of the chosen faces with every vertex of the
// partition on it.
func (p *partition) outline(chosen []bool) []piece {
	group := p.joined(chosen)
	var pieces []piece
	number := make([]int32, len(chosen)) // piece of each group, counted from 1
	done := make([]bool, len(p.from))
	at := make([]int32, len(p.pts)) // place in the walk so far, counted from 1
	for h := range p.from {
		if done[h] || !p.bounds(chosen, int32(h)) {
			continue
		}
		id := &number[group[p.face[h]]]
		if *id == 0 {
			pieces = append(pieces, nil)
			*id = int32(len(pieces))
		}
		for _, loop := range p.trace(chosen, int32(h), done, at) {
			pieces[*id-1] = append(pieces[*id-1], canonical(loop))
		}
	}
	for _, pc := range pieces {
		slices.SortFunc(pc, func(a, b []pt) int {
			if x, y := area2(a) > 0, area2(b) > 0; x != y {
				if x {
					return -1
				}
				return 1
			}
			return slices.CompareFunc(a, b, compare)
		})
	}
	slices.SortFunc(pieces, func(a, b piece) int { return slices.CompareFunc(a[0], b[0], compare) })
	return pieces
}

// bounds tells whether h has a chosen face on its left only.
func (p *partition) bounds(chosen []bool, h int32) bool {
	return chosen[p.face[h]] && !chosen[p.face[h^1]]
}

// trace follows the boundary from h, keeping to the same part of the inside,
// and takes a loop out each time it comes back to a vertex. done and at are
// working space.
func (p *partition) trace(chosen []bool, h int32, done []bool, at []int32) [][]pt {
	var loops [][]pt
	var walk []int32
	pop := func(n int32) {
		loop := make([]pt, 0, int32(len(walk))-n)
		for _, v := range walk[n:] {
			loop = append(loop, p.pts[v])
			at[v] = 0
		}
		loops = append(loops, loop)
		walk = walk[:n]
	}
	for g := h; !done[g]; {
		done[g] = true
		v := p.from[g]
		if at[v] > 0 {
			pop(at[v] - 1)
		}
		walk = append(walk, v)
		at[v] = int32(len(walk))
		g = p.clockwise(g ^ 1)
		for !p.bounds(chosen, g) {
			g = p.clockwise(g)
		}
	}
	pop(0)
	return loops
}

// joined gives every chosen face the number of the connected group it is in.
func (p *partition) joined(chosen []bool) []int32 {
	group := make([]int32, len(chosen))
	for f := range group {
		group[f] = int32(f)
	}
	find := func(f int32) int32 {
		for group[f] != f {
			group[f] = group[group[f]]
			f = group[f]
		}
		return f
	}
	for h := 0; h < len(p.from); h += 2 {
		if l, r := p.face[h], p.face[h+1]; chosen[l] && chosen[r] {
			group[find(l)] = find(r)
		}
	}
	for f := range group {
		group[f] = find(int32(f))
	}
	return group
}

// canonical turns a loop so that it starts at its lowest vertex.
func canonical(loop []pt) []pt {
	low := 0
	for i, q := range loop {
		if q.before(loop[low]) {
			low = i
		}
	}
	return append(slices.Clone(loop[low:]), loop[:low]...)
}

// tidy makes the pieces of a region out of an outline: vertices in line with
// their neighbours go, unless another loop touches there, and so do loops
// that are on average thinner than a grid step, the dust of rounding.
func tidy(pieces []piece) []piece {
	uses := map[pt]int{}
	for _, pc := range pieces {
		for _, loop := range pc {
			for _, q := range loop {
				uses[q]++
			}
		}
	}
	var out []piece
	for _, pc := range pieces {
		var kept piece
		for i, loop := range pc {
			if a := float64(area2(loop)); max(a, -a) < around(loop) {
				if i == 0 {
					break
				}
				continue
			}
			kept = append(kept, straighten(loop, uses))
		}
		if kept != nil {
			out = append(out, kept)
		}
	}
	return out
}

// straighten drops vertices in line with their neighbours that no other loop
// uses.
func straighten(loop []pt, uses map[pt]int) []pt {
	out := make([]pt, 0, len(loop))
	for i, q := range loop {
		if i > 0 && uses[q] == 1 && orient(out[len(out)-1], q, loop[(i+1)%len(loop)]) == 0 {
			continue
		}
		out = append(out, q)
	}
	return out
}
