package survey

import "math"

// shortcuts sums up, for each distance, by how much the way round is too short
// wherever the distance is part of that way or is the straight line itself.
func (n Network) shortcuts() []float64 {
	out := make([]float64, len(n.Readings))
	for i, rd := range n.Readings {
		if rd.Kind != Distance {
			continue
		}
		long, way := n.wayRound(i)
		if over := float64(rd.Length) - long; over > 10 { // mm; tapes do not err by that
			out[i] += over
			for _, j := range way {
				out[j] += over
			}
		}
	}
	return out
}

// wayRound is the shortest way between the points of a distance along other
// distances, and the readings on it; infinite if there is none.
func (n Network) wayRound(skip int) (float64, []int) {
	from, to := n.Readings[skip].Points[0], n.Readings[skip].Points[1]
	best, by, done := map[Point]float64{from: 0}, map[Point]int{}, map[Point]bool{}
	for {
		at, long := Point(""), math.Inf(1)
		for p, l := range best {
			if !done[p] && (l < long || l == long && p < at) {
				at, long = p, l
			}
		}
		if at == to || math.IsInf(long, 1) {
			break
		}
		done[at] = true
		for i, rd := range n.Readings {
			if rd.Kind != Distance || i == skip || rd.Points[0] != at && rd.Points[1] != at {
				continue
			}
			p := rd.Points[0]
			if p == at {
				p = rd.Points[1]
			}
			if old, ok := best[p]; !ok || long+float64(rd.Length) < old {
				best[p], by[p] = long+float64(rd.Length), i
			}
		}
	}
	long, ok := best[to]
	if !ok {
		return math.Inf(1), nil
	}
	var way []int
	for p := to; p != from; {
		i := by[p]
		way = append(way, i)
		if n.Readings[i].Points[0] == p {
			p = n.Readings[i].Points[1]
		} else {
			p = n.Readings[i].Points[0]
		}
	}
	return long, way
}
