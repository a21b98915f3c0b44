package survey

import "sort"

const (
	tries     = 10 // sketches that are adjusted ...
	moreTries = 40 // ... when angles are guessed in fine steps
)

// search adjusts from right-angled sketches and, if that does not convince,
// from sketches with other angles; best result first.
func (s *system) search(n *Network) []candidate {
	all, guessed := s.candidates(n, 90)
	if guessed && !s.convinces(all) {
		fine, _ := s.candidates(n, 15)
		all = append(all, fine...)
		sort.SliceStable(all, func(i, j int) bool { return all[i].cost < all[j].cost })
	}
	return all
}

// candidates adjusts the sketches that come near enough, best result first.
// There is always at least one. It also says whether angles had to be guessed.
func (s *system) candidates(n *Network, step float64) ([]candidate, bool) {
	list, guessed := s.sketches(n, step)
	var starts, turned [][]float64
	limit := 4*list[0].score + 50
	for _, k := range list {
		x := s.framed(s.flat(k))
		if k.score > limit || !s.possible(x, 0.3) || s.mirrored(x) {
			continue
		}
		if len(s.wrong(x, roughPlay)) > 0 {
			turned = append(turned, x)
			continue
		}
		starts = append(starts, x)
	}
	if len(starts) == 0 {
		starts = append(turned, s.framed(s.flat(list[0])))
	}
	most := tries
	if step < 90 {
		most = moreTries
	}
	var out []candidate
	for _, x := range starts[:min(most, len(starts))] {
		c, fresh := s.settle(x), true
		for _, o := range out {
			fresh = fresh && s.differ(c.x, o.x) > sameAs
		}
		if fresh {
			out = append(out, c)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].cost < out[j].cost })
	return out, guessed
}

// convinces says whether a shape fits so well, with readings to spare, that
// starts from other angles need not be tried.
func (s *system) convinces(list []candidate) bool {
	for _, c := range list {
		if c.sol.settled && s.spare() > 1 && c.cost < 9*float64(s.spare()) {
			return true
		}
	}
	return false
}

// given is the start put in by the caller, if it covers all points.
func (s *system) given(n *Network) []float64 {
	x := make([]float64, 2*len(s.names)+len(s.bowed))
	for i, p := range s.names {
		at, ok := n.Start[p]
		if f, held := s.fixed[i]; held {
			at, ok = f, true
		}
		if !ok {
			return nil
		}
		x[2*i], x[2*i+1] = float64(at.X), float64(at.Y)
	}
	return s.framed(x)
}

// framed brings coordinates into the frame of the base wall, if there is one.
func (s *system) framed(x []float64) []float64 {
	if s.base.from < 0 {
		return x
	}
	return s.moveTo(x, s.base.from, s.base.to)
}
