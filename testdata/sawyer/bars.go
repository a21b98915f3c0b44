package sawyer

import "math"

func (v *Verdict) bars(p instance, s plan) {
	used, made := map[string]int{}, map[string]int{}
	for n, row := range s.Bars {
		b, ok := find(p.Bars, func(x bar) bool { return x.ID == row.Bar })
		if !ok {
			v.wrong("bar %d: no bar %q", n, row.Bar)
			continue
		}
		used[b.ID]++
		if p.Objective == "cost" {
			v.Worth += b.Price
		} else {
			v.Worth++
		}
		v.row(p, b, row, made, n)
	}
	for _, b := range p.Bars {
		if b.Count > 0 && used[b.ID] > b.Count {
			v.wrong("bar %s: %d used, %d there", b.ID, used[b.ID], b.Count)
		}
	}
	for _, it := range p.Items {
		if made[it.ID] != it.Count {
			v.wrong("item %s: %d cut, %d wanted", it.ID, made[it.ID], it.Count)
		}
	}
}

// row lays the pieces of a bar as quadrilaterals: near edge and far edge each
// from their own start to their own end, the kerf measured square to each face.
func (v *Verdict) row(p instance, b bar, row barRow, made map[string]int, n int) {
	type piece struct{ near, far [2]float64 }
	var all []piece
	for _, x := range row.Row {
		it, ok := find(p.Items, func(i item) bool { return i.ID == x.Item })
		if !ok {
			v.wrong("bar %d: no item %q", n, x.Item)
			continue
		}
		made[it.ID]++
		if x.Turned && !it.Turn {
			v.wrong("bar %d: item %s may not turn", n, it.ID)
		}
		l, left, right := it.Length, it.Left, it.Right
		if x.Turned {
			l, left, right = l+right-left, right, left
		}
		q := piece{[2]float64{x.At, x.At + l}, [2]float64{x.At + left, x.At + l + right}}
		for _, e := range [][2]float64{q.near, q.far} {
			if e[0] < -fine || e[1] > b.Length+fine {
				v.wrong("bar %d: item %s leaves the bar", n, it.ID)
			}
		}
		all = append(all, q)
	}
	for i := 1; i < len(all); i++ {
		a, c := all[i-1], all[i]
		for _, slant := range []float64{a.far[1] - a.near[1], c.far[0] - c.near[0]} {
			need := p.Kerf
			if p.Depth > 0 {
				need *= math.Hypot(1, slant/p.Depth)
			}
			if gap := math.Min(c.near[0]-a.near[1], c.far[0]-a.far[1]); gap < need-fine {
				v.wrong("bar %d: pieces %d and %d lie %.3f apart, the cut takes %.3f", n, i, i+1, gap, need)
			}
		}
	}
}
