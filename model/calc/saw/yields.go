package saw

// yields answers which selections each board can be cut into.
type yields struct {
	c      *composites
	boards []board
	parts  []part
	strict [][]answer // by board and selection
	loose  [][]answer
	b      *budget
	short  bool // the budget ran out somewhere
}

type answer int8

const (
	open answer = iota
	no
	yes
)

func newYields(c *composites, boards []board, parts []part, b *budget) *yields {
	y := &yields{c: c, boards: boards, parts: parts, b: b}
	for k := range boards {
		y.strict = append(y.strict, make([]answer, c.n))
		y.loose = append(y.loose, make([]answer, c.n))
		for state := 1; state < c.n; state++ {
			y.glance(k, state)
		}
	}
	return y
}

// glance answers what areas and sizes alone tell.
func (y *yields) glance(k, state int) {
	switch {
	case !y.roomy(k, state):
		y.strict[k][state], y.loose[k][state] = no, no
	case y.boards[k].straight && y.boards[k].whole:
		y.strict[k][state], y.loose[k][state] = yes, yes
	}
}

// asked is whether a board yields a selection.
func (y *yields) asked(k, state int) answer {
	if y.strict[k][state] == open {
		y.search(k, state)
	}
	return y.strict[k][state]
}

// cheapest gives the bill of everything, as answers say. What is still open counts
// as a yes until the cheapest bill rests on it.
func (y *yields) cheapest(st states, answers [][]answer) *bill {
	for {
		b := cover{st, y.boards, func(k, state int) bool { return answers[k][state] != no }}.cheapest()
		settled := true
		kinds, parts := b.used()
		for n, k := range kinds {
			if answers[k][parts[n]] == open {
				y.search(k, parts[n])
				settled = settled && answers[k][parts[n]] == yes
			}
		}
		if settled {
			return b
		}
	}
}

// roomy compares areas, and sizes where the rectangle around the board could
// not hold the parts.
func (y *yields) roomy(k, state int) bool {
	var area float64
	for i, n := range y.c.of(state) {
		area += float64(n) * y.parts[i].area
	}
	if area > y.boards[k].area {
		return false
	}
	_, ok := y.rect(k, state)
	return ok
}

// rect finds a composite that the rectangle around a board holds.
func (y *yields) rect(k, state int) (ref, bool) {
	b := y.boards[k]
	best, found := ref{}, false
	for i, n := range y.c.list[state] {
		if n.l-y.c.kerf > b.in.x1-b.in.x0 || n.w-y.c.kerf > b.in.y1-b.in.y0 || n.low && !b.naturalLo || n.high && !b.naturalHi {
			continue
		}
		if !found || n.cuts < y.c.list[state][best.index].cuts {
			best, found = ref{state, i}, true
		}
	}
	return best, found
}

// search asks whether an uneven board yields a selection.
func (y *yields) search(k, state int) {
	impossible := false
	y.c.within(state, func(part int) { impossible = impossible || y.loose[k][part] == no })
	if impossible {
		y.strict[k][state], y.loose[k][state] = no, no
		return
	}
	u := y.uneven(k, false)
	fits := u.fits(state)
	y.b.spend(u.b.spent)
	switch {
	case fits:
		y.strict[k][state], y.loose[k][state] = yes, yes
		return
	case u.done:
		y.short = true
	}
	y.strict[k][state] = no
	u = y.uneven(k, true)
	y.loose[k][state] = yes
	if !u.fits(state) && !u.done {
		y.loose[k][state] = no
	}
	y.b.spend(u.b.spent)
	y.short = y.short || u.done
}

// unevenShare is the part of the budget that one selection on one board may take.
const unevenShare = 60_000

func (y *yields) uneven(k int, loose bool) *uneven {
	own := &budget{left: max(0, min(unevenShare, y.b.left))}
	return &uneven{c: y.c, board: &y.boards[k], kerf: y.c.kerf, loose: loose, known: map[question]grid{}, b: own}
}

// layout gives the places of a selection on a board that yields it.
func (y *yields) layout(k, state int) ([]located, bool) {
	b := y.boards[k]
	if b.straight && b.whole {
		r, ok := y.rect(k, state)
		return y.c.place(r, b.in, nil), ok
	}
	return y.uneven(k, false).put(state, b.in, nil)
}
