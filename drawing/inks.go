package drawing

// InBlack is a sheet without colours: what was coloured is black, greys stay.
func InBlack(s Sheet) Sheet {
	s.Items = inked(s.Items, func(k Ink) Ink {
		if r, g, b := k>>16&255, k>>8&255, k&255; r == g && g == b {
			return k
		}
		return Black
	})
	return s
}

// inked changes the ink of all items.
func inked(items []Item, by func(Ink) Ink) []Item {
	out := make([]Item, len(items))
	for i, it := range items {
		switch x := it.(type) {
		case Polyline:
			x.Pen.Ink = by(x.Pen.Ink)
			out[i] = x
		case Arc:
			x.Pen.Ink = by(x.Pen.Ink)
			out[i] = x
		case Circle:
			x.Pen.Ink = by(x.Pen.Ink)
			out[i] = x
		case Area:
			x.Ink = by(x.Ink)
			out[i] = x
		case Hatch:
			x.Pattern.Ink = by(x.Pattern.Ink)
			out[i] = x
		case Text:
			x.Ink = by(x.Ink)
			out[i] = x
		case Mark:
			x.Pen.Ink = by(x.Pen.Ink)
			out[i] = x
		case Group:
			x.Items = inked(x.Items, by)
			out[i] = x
		}
	}
	return out
}
