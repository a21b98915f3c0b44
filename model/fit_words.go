package model

import (
	"fmt"
	"strings"

	"slabwright/model/calc/fit"
	"slabwright/model/unit"
)

// OrderOther is the size at the other end of a slab ordered in the size of
// Order: both change alike.
func (w FitWay) OrderOther() unit.Length {
	if w.Order == nil {
		return w.Other
	}
	return w.Other + w.Order.Size - w.Size
}

// Tolerance is the shop's tolerance as it is written on an order: "+0/-2" or
// "±0.5", in millimetres.
func (w FitWay) Tolerance() string {
	t := w.Wish.Shop
	if t.Plus == t.Minus {
		return "±" + trimmed(t.Plus)
	}
	return "+" + trimmed(t.Plus) + "/-" + trimmed(t.Minus)
}

func trimmed(l unit.Length) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", float64(l)), "0"), ".")
}

// Why names the readings that forbid a probability, "" when one is given.
func (w FitWay) Why() string {
	switch {
	case len(w.Disputed) == 1:
		return w.Disputed[0] + " contradicts the other readings"
	case len(w.Disputed) > 1:
		return "one of these contradicts the others: " + strings.Join(w.Disputed, ", ")
	case len(w.Unchecked) > 0:
		return "unchecked: nothing checks " + strings.Join(w.Unchecked, ", ")
	}
	return ""
}

// ShapeText says how the space between two side walls is best filled, with the
// numbers that decide; "" where no shape was looked at.
func (w FitWay) ShapeText() string {
	if w.Shape == nil {
		return ""
	}
	s := w.Shape
	var out string
	switch s.Form {
	case fit.Scribe:
		return fmt.Sprintf("the walls stand %.1f mm off straight lines along the slab, %.0f mm may show: scribe its ends", float64(s.Uneven), float64(s.Limit/2))
	case fit.Rectangle:
		out = fmt.Sprintf("a rectangle would do: parallel to the back it finds %.1f mm clear and shows %.1f mm of open joints, both ends together, where %.0f mm may show", float64(s.Clear), float64(s.Open), float64(s.Limit))
	default:
		out = fmt.Sprintf("cut the ends along the walls: a rectangle finds %.1f mm clear between widths of %.1f to %.1f mm and shows %.1f mm of open joints, both ends together, where %.0f mm may show", float64(s.Clear), float64(s.Narrow), float64(s.Wide), float64(s.Open), float64(s.Limit))
	}
	if s.Narrow-s.Clear > 1 {
		out += "; " + fmt.Sprintf("turned by %.2f degrees a rectangle finds about %.0f mm and leaves a wedge of %.0f mm behind", float64(s.Turn.Degrees()), float64(s.Narrow), float64(s.TurnOpen))
	}
	return out
}
