package motion

// loosen shifts the part a little, straight, to where there is more room round
// it: a slab lies on its angles, and from there every turn would begin with a
// collision. It stays where it is when there is no such place.
func (s *search) loosen() coords {
	s.part.to(s.from)
	best, room := s.from, s.part.closest(s.p.Fixed, far).gap
	for _, d := range s.directions() {
		for _, by := range []float64{0.3, 1, 3, 10, 30, 100} {
			if _, ok := Slide(s.p.Part, s.p.Fixed, s.from.pose(), d.mul(by).out()); !ok {
				break
			}
			to := s.from
			to[X], to[Y], to[Z] = to[X]+d.x*by, to[Y]+d.y*by, to[Z]+d.z*by
			if !s.cells[0].holds(to) {
				break
			}
			s.part.to(to)
			s.looks++
			if gap := s.part.closest(s.p.Fixed, far).gap; gap > room+touch {
				best, room = to, gap
			}
		}
	}
	return best
}

// directions are those in which the part may be shifted: along each way, and
// between any two of them.
func (s *search) directions() []vec {
	var can [3]bool
	for _, w := range s.p.Ways {
		if w <= Z {
			can[w] = true
		}
	}
	var out []vec
	for x := -1.0; x <= 1; x++ {
		for y := -1.0; y <= 1; y++ {
			for z := -1.0; z <= 1; z++ {
				d, ok := vec{x, y, z}.unit()
				if !ok || x != 0 && !can[X] || y != 0 && !can[Y] || z != 0 && !can[Z] {
					continue
				}
				out = append(out, d)
			}
		}
	}
	return out
}
