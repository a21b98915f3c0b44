package saw

import "slices"

// sack asks for the most profitable content of one length: how many of each
// item, at most Limit of it. May looks at a content before it is taken; a
// content that is refused is refused with anything more in it as well.
type sack struct {
	profit []int64
	size   []grid
	limit  []int
	room   grid
	may    func(counts []int) bool
}

// sackNodes bounds the search for one content.
const sackNodes = 300_000

// fill finds the best content by depth first search with the bound of the
// fractional problem. exact is false where the search was cut short.
func (s sack) fill() (best int64, counts []int, exact bool) {
	nodes := 0
	var order []int
	for i, p := range s.profit {
		if p > 0 && s.limit[i] > 0 && s.size[i] <= s.room {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int {
		l, r := float64(s.profit[i])*float64(s.size[j]), float64(s.profit[j])*float64(s.size[i])
		switch {
		case l > r:
			return -1
		case l < r:
			return 1
		}
		return 0
	})
	least := make([]grid, len(order)+1) // smallest size from here on
	least[len(order)] = s.room + 1
	for k := len(order) - 1; k >= 0; k-- {
		least[k] = min(least[k+1], s.size[order[k]])
	}
	now := make([]int, len(s.profit))
	counts = make([]int, len(s.profit))
	var walk func(k int, room grid, worth int64)
	walk = func(k int, room grid, worth int64) {
		if worth > best {
			best = worth
			copy(counts, now)
		}
		if k == len(order) || room < least[k] || nodes > sackNodes {
			return
		}
		nodes++
		i := order[k]
		if float64(worth)+float64(room)*float64(s.profit[i])/float64(s.size[i]) < float64(best)+0.5 {
			return
		}
		n := min(int(room/s.size[i]), s.limit[i])
		now[i] = n
		for n > 0 && s.may != nil && !s.may(now) {
			n--
			now[i] = n
		}
		for ; n >= 0; n-- {
			now[i] = n
			walk(k+1, room-grid(n)*s.size[i], worth+int64(n)*s.profit[i])
		}
		now[i] = 0
	}
	walk(0, s.room, 0)
	return best, counts, nodes <= sackNodes
}
