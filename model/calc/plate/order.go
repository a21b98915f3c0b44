package plate

import (
	"cmp"
	"slices"
)

// order numbers blocks so that the skyline stays low: E. Cuthill, J. McKee,
// Reducing the bandwidth of sparse symmetric matrices, 1969, turned round (A.
// George, 1971), starting far out. The numbering as given stays when it is
// lower. It gives the place of every block.
func order(near [][]int) []int {
	given := make([]int, len(near))
	for i := range given {
		given[i] = i
	}
	turned := reversed(near)
	if profile(near, turned) < profile(near, given) {
		return turned
	}
	return given
}

func reversed(near [][]int) []int {
	place := make([]int, len(near))
	for i := range place {
		place[i] = -1
	}
	next := len(near)
	for i := range near {
		if place[i] >= 0 {
			continue
		}
		start := farOut(near, i)
		walk, _ := levels(near, start)
		for _, k := range walk {
			next--
			place[k] = next
		}
	}
	return place
}

// farOut walks to the last level from a block, as long as that goes on.
func farOut(near [][]int, start int) int {
	deepest := -1
	for {
		walk, depth := levels(near, start)
		last := walk[len(walk)-1]
		if depth <= deepest {
			return start
		}
		deepest, start = depth, last
	}
}

// levels walks breadth first, neighbours with few neighbours first, and tells how
// many levels there are below the start.
func levels(near [][]int, start int) (walk []int, depth int) {
	level := make([]int, len(near)) // counted from 1
	level[start] = 1
	walk = []int{start}
	for k := 0; k < len(walk); k++ {
		from := len(walk)
		for _, n := range near[walk[k]] {
			if level[n] == 0 {
				level[n] = level[walk[k]] + 1
				walk = append(walk, n)
			}
		}
		slices.SortStableFunc(walk[from:], func(a, b int) int { return cmp.Compare(len(near[a]), len(near[b])) })
	}
	return walk, level[walk[len(walk)-1]] - 1
}

// lowest gives the first block column of every block row after numbering.
func lowest(near [][]int, place []int) []int {
	first := make([]int, len(near))
	for i, p := range place {
		f := p
		for _, n := range near[i] {
			f = min(f, place[n])
		}
		first[p] = f
	}
	return first
}

// profile is the work of a factorisation: sum of the squared row lengths.
func profile(near [][]int, place []int) int {
	sum := 0
	for p, f := range lowest(near, place) {
		sum += (p - f + 1) * (p - f + 1)
	}
	return sum
}
