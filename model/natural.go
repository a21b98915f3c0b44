package model

import (
	"math"
	"sort"

	"slabwright/model/unit"
)

// FrontEdge is what a front edge is: straight (the zero value) or natural.
type FrontEdge struct {
	natural  bool
	stations []NaturalStation
	faults   faults
}

// NaturalEdge is a natural edge whose line has been measured: at each station,
// how far the wood goes beyond the narrowest place, on the top face and on the
// underside. Without stations the edge is drawn straight at its least depth,
// and a finding says that it has not been measured.
func NaturalEdge(stations ...NaturalStation) FrontEdge {
	s := append([]NaturalStation(nil), stations...)
	sort.SliceStable(s, func(i, j int) bool { return s[i].Along < s[j].Along })
	e := FrontEdge{natural: true, stations: s}
	for i, n := range s {
		e.faults = e.faults.within("station of the natural edge", n.Along, -10*unit.M, 10*unit.M).
			within("natural edge beyond its narrowest place, at the top face,", n.Top, 0, 500).
			within("natural edge beyond its narrowest place, at the underside,", n.Under, 0, 500)
		if i > 0 && n.Along-s[i-1].Along < 1 {
			e.faults = e.faults.and(faultf("the natural edge has two stations at %s", inWords(n.Along)))
		}
	}
	return e
}

// NaturalOf is the natural edge of a slab on offer, from its usable widths at
// stations. The bark side slopes outwards by slope from the top face to the
// underside. An offer without widths gives an edge that is not measured.
func NaturalOf(o SlabOffer, slope unit.Length) FrontEdge {
	if len(o.Widths) == 0 || !(o.Every > 0) {
		return NaturalEdge()
	}
	least := o.Widths[0]
	for _, w := range o.Widths {
		least = min(least, w)
	}
	var s []NaturalStation
	for i, w := range o.Widths {
		s = append(s, NaturalStation{Along: o.Every * unit.Length(i), Top: w - least, Under: w - least + slope})
	}
	return NaturalEdge(s...)
}

// OfferOf gives the first slab on offer of a species with the wanted number of
// natural edges or more, or an empty offer.
func (o Offers) OfferOf(species string, natural int) SlabOffer {
	for _, s := range o.Slabs {
		if s.Species == species && s.Natural >= natural {
			return s
		}
	}
	return SlabOffer{}
}

// curve is a smooth line through stations that never overshoots them: a
// monotone cubic (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 1980).
type curve struct{ x, y, m []float64 }

func newCurve(x, y []float64) curve {
	n := len(x)
	c := curve{x, y, make([]float64, n)}
	if n < 2 {
		return c
	}
	d := make([]float64, n-1)
	for i := range d {
		d[i] = (y[i+1] - y[i]) / (x[i+1] - x[i])
	}
	c.m[0], c.m[n-1] = d[0], d[n-2]
	for i := 1; i < n-1; i++ {
		if d[i-1]*d[i] > 0 {
			c.m[i] = (d[i-1] + d[i]) / 2
		}
	}
	for i := range d {
		if d[i] == 0 {
			c.m[i], c.m[i+1] = 0, 0
			continue
		}
		a, b := c.m[i]/d[i], c.m[i+1]/d[i]
		if s := math.Hypot(a, b); s > 3 {
			c.m[i], c.m[i+1] = 3*a/s*d[i], 3*b/s*d[i]
		}
	}
	return c
}

// at evaluates the curve; beyond its ends it stays level.
func (c curve) at(x float64) float64 {
	n := len(c.x)
	if n == 0 {
		return 0
	}
	if x <= c.x[0] {
		return c.y[0]
	}
	if x >= c.x[n-1] {
		return c.y[n-1]
	}
	i := sort.SearchFloat64s(c.x, x) - 1
	h := c.x[i+1] - c.x[i]
	t := (x - c.x[i]) / h
	return c.y[i]*(1+2*t)*(1-t)*(1-t) + c.m[i]*h*t*(1-t)*(1-t) + c.y[i+1]*t*t*(3-2*t) + c.m[i+1]*h*t*t*(t-1)
}
