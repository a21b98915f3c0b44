package fit

import (
	"errors"
	"math"

	"slabwright/model/unit"
)

// Tolerance is how far a shop may miss the size that was ordered. The error is
// equally likely anywhere between the limits or, with Normal set, normal with
// the limits three standard deviations from the middle. Scale is the standard
// deviation by which the shop's rule and the one used in the room differ over
// the whole size.
type Tolerance struct {
	Plus, Minus unit.Length // both 0 or above
	Normal      bool
	Scale       unit.Length
}

// middle is the error to be expected.
func (t Tolerance) middle() float64 { return float64(t.Plus-t.Minus) / 2 }

// errorsOf gives values of the shop's error that are equally likely.
func (t Tolerance) errorsOf() []float64 {
	const own, scale = 40, 12
	half := float64(t.Plus+t.Minus) / 2
	var out []float64
	for i := range own {
		u := (float64(i) + 0.5) / own
		e := half * (2*u - 1)
		if t.Normal {
			e = half / 3 * quantile(u)
		}
		if t.Scale == 0 {
			out = append(out, t.middle()+e)
			continue
		}
		for j := range scale {
			out = append(out, t.middle()+e+float64(t.Scale)*quantile((float64(j)+0.5)/scale))
		}
	}
	return out
}

// Want is what an order is chosen by.
type Want struct {
	Size      unit.Length // as drawn
	Tolerance Tolerance
	Sure      float64 // chance that it must fit with, and that no gap shows too wide; 0: 0.99
}

// Point is one size that can be ordered.
type Point struct {
	Size       unit.Length // whole millimetres
	Jams, Wide float64     // chances that the delivered part does not go in, and that a gap shows too wide
}

// Order is the size to order, in whole millimetres. Good is set when it neither
// jams nor leaves too wide a gap with the chance wanted; else it is the longest
// size that does not jam.
type Order struct {
	Point
	Good     bool
	From, To unit.Length // the sizes that are good
	Curve    []Point
}

// mostPoints bounds the curve of an order: 30 mm to either side.
const mostPoints = 61

// Order finds the size to order: of the good sizes the one whose middle comes
// nearest to the size drawn. It gives an error for a tolerance below 0, a
// chance that is none, and where nothing that decides is trimmed.
func (c *Chance) Order(w Want) (Order, error) {
	if w.Sure == 0 {
		w.Sure = 0.99
	}
	t := w.Tolerance
	if !finite(float64(w.Size), float64(t.Plus), float64(t.Minus), float64(t.Scale)) || t.Plus < 0 || t.Minus < 0 || t.Scale < 0 || !(w.Sure > 0.5 && w.Sure < 1) {
		return Order{}, errors.New("an order with a size, a tolerance or a chance that makes no sense")
	}
	if math.IsInf(c.rank(0.5), 0) {
		return Order{}, errors.New("no size that can be changed decides whether the part goes in")
	}
	shop := t.errorsOf()
	at := func(size float64) Point {
		p := Point{Size: unit.Length(size)}
		for _, e := range shop {
			longer := unit.Length(size + e - float64(w.Size))
			p.Jams += 1 - c.Fits(longer)
			p.Wide += c.TooWide(longer)
		}
		p.Jams /= float64(len(shop))
		p.Wide /= float64(len(shop))
		return p
	}
	o := Order{Curve: c.curve(w, at)}
	best := math.Inf(1)
	bad := 1 - w.Sure
	for _, p := range o.Curve {
		if p.Jams > bad || p.Wide > bad {
			continue
		}
		if !o.Good || p.Size < o.From {
			o.From = p.Size
		}
		o.To, o.Good = p.Size, true
		if off := math.Abs(float64(p.Size-w.Size) + t.middle()); off < best-1e-9 {
			best, o.Point = off, p
		}
	}
	if !o.Good {
		for _, p := range o.Curve {
			if p.Jams <= bad {
				o.Point = p
			}
		}
	}
	return o, nil
}

// curve goes from sizes that surely go in to sizes that surely jam.
func (c *Chance) curve(w Want, at func(float64) Point) []Point {
	top := math.Ceil(float64(w.Size) + c.rank(0.999) + float64(w.Tolerance.Minus) + 1)
	longest := math.Floor(float64(w.Size) + min(0, c.rank(0.001)) - float64(w.Tolerance.Plus) - 2)
	low := min(longest, math.Floor(float64(w.Size))-2)
	var out []Point
	for s := low; s <= top && len(out) < mostPoints; s++ {
		out = append(out, at(s))
	}
	for s := low - 1; s > 0 && len(out) < mostPoints && out[0].Wide < 0.999 && s > low-15; s-- {
		out = append([]Point{at(s)}, out...)
	}
	return out
}
