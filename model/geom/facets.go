package geom

import (
	"math"
	"slices"
)

// TriangulateLoops covers a flat face given by loops in millimetres: the
// outline counter-clockwise first, then its holes, clockwise. It serves faces
// projected from space, whose points are exact but for rounding errors. The
// triangles count in all loops' points one after the other. Every side of the
// loops is a side of exactly one triangle and all other sides are shared by
// two, so that faces with common points make closed meshes; points in line
// with their neighbours are used as well. Points at the very same place in
// several loops count as the first of them. Points that are not numbers or
// beyond 1 km give no triangles.
func TriangulateLoops(loops [][]Vec) [][3]int {
	loops = slices.DeleteFunc(slices.Clone(loops), func(l []Vec) bool { return len(l) == 0 })
	grid, slack, ok := onGrid(loops)
	if !ok {
		return nil
	}
	// Points a rounding error off the line between their neighbours are taken
	// to be in line; without that for shapes that are thinner still.
	for _, slack := range []float64{slack, 0} {
		if tris := cutLoops(loops, grid, slack); tris != nil {
			return tris
		}
	}
	return clipEars(loops)
}

// onGrid rounds the loops to the kernel's grid if they are on it, else to the
// finest one that holds them. slack is what rounding may do to points in line.
func onGrid(loops [][]Vec) (grid [][]pt, slack float64, ok bool) {
	lo, hi := V(limit, limit), V(-limit, -limit)
	exact := true
	for _, loop := range loops {
		for _, v := range loop {
			p, err := snap(v)
			if err != nil {
				return nil, 0, false
			}
			d := v.Sub(p.vec())
			exact = exact && math.Abs(float64(d.X)) < 1e-9 && math.Abs(float64(d.Y)) < 1e-9
			lo = Vec{min(lo.X, v.X), min(lo.Y, v.Y)}
			hi = Vec{max(hi.X, v.X), max(hi.Y, v.Y)}
		}
	}
	fine := 1e9 / max(float64(hi.X-lo.X), float64(hi.Y-lo.Y), 1)
	slack = 2
	if exact {
		lo, fine, slack = Vec{}, perMM, 0
	}
	for _, loop := range loops {
		var g []pt
		for _, v := range loop {
			d := v.Sub(lo).Mul(fine)
			g = append(g, pt{int64(math.Round(float64(d.X))), int64(math.Round(float64(d.Y)))})
		}
		grid = append(grid, g)
	}
	return grid, slack, true
}

// cutLoops triangulates loops by their places on a grid; nil if the result
// would not be closed.
func cutLoops(loops [][]Vec, grid [][]pt, slack float64) [][3]int {
	pts, cut, ok := cutUp(grid, slack)
	if !ok {
		return nil
	}
	first := map[pt]int{}
	index := map[Vec]int{}    // points are the same if they are so bit for bit
	sides := map[[2]int]int{} // what lies left of each side, beyond the loops as well
	n := 0
	for i, loop := range loops {
		for j, v := range loop {
			if _, seen := index[v]; !seen {
				index[v] = n
			}
			if _, seen := first[grid[i][j]]; !seen {
				first[grid[i][j]] = n
			}
			n++
		}
	}
	for _, loop := range loops {
		for j, v := range loop {
			sides[[2]int{index[loop[(j+1)%len(loop)]], index[v]}]++
		}
	}
	tris := make([][3]int, len(cut))
	for i, t := range cut {
		for k, v := range t {
			tris[i][k] = first[pts[v]]
		}
		for k, a := range tris[i] {
			sides[[2]int{a, tris[i][(k+1)%3]}]++
		}
	}
	for e, n := range sides {
		if n != 1 || sides[[2]int{e[1], e[0]}] != 1 {
			return nil
		}
	}
	return tris
}
