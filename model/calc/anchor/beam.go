package anchor

import (
	"math"
	"slices"

	"slabwright/model/unit"
)

// solve gives how far the bracket sinks and turns at the places asked for, each
// an anchor's or a load's: finite elements between all places where there is an anchor or a load; a beam for
// sinking, a shaft for turning.
func solve(bar Bar, z float64, anchors []unit.Length, loads []Load, ask []unit.Length) (down, turned []float64) {
	at := slices.Clone(anchors)
	for _, f := range loads {
		at = append(at, f.Along)
	}
	slices.Sort(at)
	at = slices.Compact(at)
	node := func(x unit.Length) int { i, _ := slices.BinarySearch(at, x); return i }
	n := len(at)
	beam, sinks := square(2*n), make([]float64, 2*n)
	shaft, turns := square(n), make([]float64, n)
	for i := range n - 1 {
		l := float64(at[i+1] - at[i])
		element(beam, 2*i, bar.Bending/(l*l*l), l)
		k := bar.Twist / l
		shaft[i][i] += k
		shaft[i+1][i+1] += k
		shaft[i][i+1] -= k
		shaft[i+1][i] -= k
	}
	for _, x := range anchors {
		i := node(x)
		beam[2*i][2*i] += bar.Anchor
		shaft[i][i] += bar.Anchor * z * z
	}
	if len(anchors) == 1 { // it does not turn in the plane of the wall: the seat holds it
		i := node(anchors[0])
		beam[2*i+1][2*i+1] += bar.Bending
	}
	for _, f := range loads {
		i := node(f.Along)
		sinks[2*i] += f.Force
		turns[i] += f.Force * float64(f.Arm)
	}
	eliminate(beam, sinks)
	eliminate(shaft, turns)
	for _, x := range ask {
		down, turned = append(down, sinks[2*node(x)]), append(turned, turns[node(x)])
	}
	return down, turned
}

// element adds the stiffness of a beam of length l, EI/l3 times the usual
// matrix, to a system whose unknowns at k are sinking and slope at both ends.
func element(m [][]float64, k int, c, l float64) {
	for i, row := range [4][4]float64{
		{12, 6 * l, -12, 6 * l},
		{6 * l, 4 * l * l, -6 * l, 2 * l * l},
		{-12, -6 * l, 12, -6 * l},
		{6 * l, 2 * l * l, -6 * l, 4 * l * l},
	} {
		for j, v := range row {
			m[k+i][k+j] += c * v
		}
	}
}

func square(n int) [][]float64 {
	m := make([][]float64, n)
	for i := range m {
		m[i] = make([]float64, n)
	}
	return m
}

// eliminate solves a system in place (Gauss, rows exchanged); b becomes the
// answer.
func eliminate(a [][]float64, b []float64) {
	n := len(b)
	for k := range n {
		p := k
		for i := k + 1; i < n; i++ {
			if math.Abs(a[i][k]) > math.Abs(a[p][k]) {
				p = i
			}
		}
		a[k], a[p], b[k], b[p] = a[p], a[k], b[p], b[k]
		for i := k + 1; i < n; i++ {
			f := a[i][k] / a[k][k]
			if f == 0 {
				continue
			}
			for j := k; j < n; j++ {
				a[i][j] -= f * a[k][j]
			}
			b[i] -= f * b[k]
		}
	}
	for i := n - 1; i >= 0; i-- {
		for j := i + 1; j < n; j++ {
			b[i] -= a[i][j] * b[j]
		}
		b[i] /= a[i][i]
	}
}
