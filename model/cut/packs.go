package cut

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/unit"
)

// PackLot is what to buy of one kind of fixing: how many of each pack on offer.
type PackLot struct {
	Need   Fixing
	Count  int // with those of the same screw that need other washers
	Offers []model.PackOffer
	Buy    []int // of each offer
	Cost   float64
	Found  bool
	Second *Choice
}

// Pieces is how many pieces the packs hold together.
func (l PackLot) Pieces() int {
	n := 0
	for i, k := range l.Buy {
		n += k * l.Offers[i].Pieces
	}
	return n
}

// PackLots chooses the cheapest packs for every kind of fixing of a design.
// Without packs on offer there is none.
func PackLots(d *model.Design, offers []model.PackOffer) []PackLot {
	var out []PackLot
	if len(offers) == 0 {
		return nil
	}
	for _, f := range Fixings(d) {
		l := PackLot{Need: f, Count: f.Count}
		for _, o := range offers {
			if serves(o, f) {
				l.Offers = append(l.Offers, o)
			}
		}
		same := slices.IndexFunc(out, func(x PackLot) bool { return len(l.Offers) > 0 && slices.Equal(x.Offers, l.Offers) })
		if same < 0 {
			out = append(out, l)
			continue
		}
		out[same].share(f)
	}
	for i := range out {
		out[i].choose()
	}
	return out
}

// share adds a fixing that comes out of the same packs.
func (l *PackLot) share(f Fixing) {
	l.Count += f.Count
	for _, x := range f.For {
		if !slices.Contains(l.Need.For, x) {
			l.Need.For = append(slices.Clone(l.Need.For), x)
		}
	}
}

// packs adds the packs to the shopping.
func (s *Shopping) packs(d *model.Design, offers []model.PackOffer) {
	s.Packs = PackLots(d, offers)
	for _, l := range s.Packs {
		s.Cost += l.Cost
		if !l.Found {
			s.PackNotes.Open = append(s.PackNotes.Open, fmt.Sprintf("no pack of %s (%s) is on offer, %d are wanted", l.Need.What, l.Need.Size, l.Count))
		}
	}
}

// shorterScrew is by how much a wood screw may be shorter than the deepest that
// fits: the strength counts on its thread, the top is near. Common practice, no
// source.
const shorterScrew unit.Length = 5

// serves says whether the pieces of a pack do for a fixing.
func serves(o model.PackOffer, f Fixing) bool {
	const fine = 0.05
	if o.Kind != f.Kind || math.Abs(float64(o.Diameter-f.Diameter)) > fine {
		return false
	}
	switch f.Kind {
	case model.WallAnchor:
		return o.Wall == f.Wall && f.Wall != model.UnknownWall
	case model.CoachScrew:
		return o.Length >= f.Length-fine
	case model.Castor:
		return math.Abs(float64(o.Length-f.Length)) <= fine
	}
	return f.Length > 0 && o.Length <= f.Length+fine && o.Length >= f.Length-shorterScrew-fine
}

// choose finds the cheapest packs, and the best choice that takes fewer of one
// kind that the cheapest takes.
func (l *PackLot) choose() {
	limits := make([]int, len(l.Offers))
	for i, o := range l.Offers {
		limits[i] = (l.Count + o.Pieces - 1) / o.Pieces
	}
	if l.Buy, l.Cost, l.Found = cheapest(l.Count, l.Offers, limits); !l.Found {
		return
	}
	for i, n := range l.Buy {
		if n == 0 {
			continue
		}
		fewer := slices.Clone(limits)
		fewer[i] = n - 1
		if buy, cost, ok := cheapest(l.Count, l.Offers, fewer); ok && (l.Second == nil || cost < l.Second.Cost) {
			l.Second = &Choice{Found: true, Buys: packNames(l.Offers, buy), Cost: cost, More: cost - l.Cost}
		}
	}
}

// Buys says what is bought.
func (l PackLot) Buys() []string { return packNames(l.Offers, l.Buy) }

// Places lists where the packs are sold.
func (l PackLot) Places() []string {
	var out []string
	for i, n := range l.Buy {
		if p := l.Offers[i].Place; n > 0 && p != "" && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

func packNames(offers []model.PackOffer, buy []int) []string {
	var out []string
	for i, n := range buy {
		if n > 0 {
			out = append(out, fmt.Sprintf("%d x %s", n, PackName(offers[i])))
		}
	}
	return out
}

// PackName is what a pack is called.
func PackName(o model.PackOffer) string {
	if o.Name != "" {
		return o.Name
	}
	return fmt.Sprintf("pack of %d", o.Pieces)
}

// cheapest takes at least n pieces out of packs, no more of each than its limit:
// least cost, then fewest pieces left over. It is exact: every number of pieces is
// built up pack by pack.
func cheapest(n int, offers []model.PackOffer, limits []int) (buy []int, cost float64, ok bool) {
	type best struct {
		cost  float64
		left  int
		taken []int
	}
	better := func(a, b *best) bool {
		return b == nil || a.cost < b.cost-1e-9 || a.cost < b.cost+1e-9 && a.left < b.left
	}
	at := make([]*best, n+1) // by the pieces that are still wanted
	at[n] = &best{taken: make([]int, len(offers))}
	for i, o := range offers {
		next := slices.Clone(at)
		for want, b := range at {
			for k := 1; b != nil && want > 0 && k <= limits[i]; k++ {
				to := want - k*o.Pieces
				x := &best{cost: b.cost + float64(k)*o.Price, left: b.left + max(0, -to), taken: slices.Clone(b.taken)}
				x.taken[i] = k
				if to = max(0, to); better(x, next[to]) {
					next[to] = x
				}
				if to == 0 {
					break
				}
			}
		}
		at = next
	}
	if at[0] == nil {
		return nil, 0, false
	}
	return at[0].taken, at[0].cost, true
}
