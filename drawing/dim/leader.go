package dim

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Leaders leave at these angles, with the price of each: 45 and 60 degrees are
// the habit of the board, never along the edges of a rectangular view.
var leaderAngles = [...]struct {
	deg   unit.Angle
	price float64
}{
	{45, 0}, {60, 0}, {30, 1}, {75, 1.5}, {105, 1.5}, {120, 0}, {135, 0}, {150, 1},
	{210, 1}, {225, 0.2}, {240, 0.2}, {255, 1.7}, {285, 1.7}, {300, 0.2}, {315, 0.2}, {330, 1},
}

var (
	leaderLengths = [...]unit.Length{7, 10, 14, 19, 25, 32, 40, 50}
	leaderFar     = [...]unit.Length{65, 80, 100, 125, 155, 190}
)

// landed is the place of a text on a reference line that runs from the knee of
// a leader to the right, or to the left when back is set.
func (s *Style) landed(price float64, text *block, tip, knee geom.Vec, back bool) place {
	end := geom.V(text.width+1, 0)
	at := geom.V(0.5, text.over(s.Above))
	if back {
		end.X = -end.X
		at.X = -text.width - 0.5
	}
	return text.stand(price, knee.Add(at), right, s.leader(tip, knee), s.fine(knee, knee.Add(end), lead))
}

// foldPrice is for a reference line that turns back over its leader.
const foldPrice = 5

// leaders gives the places of a text that hangs on a feature; tip is where a
// leader in some direction touches it.
func (s *Style) leaders(text *block, lengths []unit.Length, tip func(dir geom.Vec) geom.Vec) []place {
	out := make([]place, 0, 2*len(leaderAngles)*len(lengths))
	for _, a := range leaderAngles {
		dir := polar(1, a.deg*unit.Degree)
		from := tip(dir)
		back := dir.X < 0
		fold := math.Abs(float64(dir.X)) < 0.6 && dir.Y > 0 // from above it would pass through the text
		for _, l := range lengths {
			knee := from.Add(dir.Mul(float64(l)))
			out = append(out, s.landed(a.price+float64(l), text, from, knee, back))
			if fold {
				out = append(out, s.landed(a.price+float64(l)+foldPrice, text, from, knee, !back))
			}
		}
	}
	return out
}

// tipped makes the label of a text on a leader with a mark at its tip.
func (p *Plate) tipped(request int, text block, mark drawing.MarkKind, tip func(dir geom.Vec) geom.Vec) *label {
	s := &p.Style
	l := &label{
		request: request, text: text,
		places: s.leaders(&text, leaderLengths[:], tip),
		ends:   func(c *place) []drawing.Item { return []drawing.Item{s.tipMark(mark, c)} },
	}
	l.more = func() []place {
		l.more = func() []place { return p.anywhere(&text, tip) }
		return s.leaders(&text, leaderFar[:], tip)
	}
	return l
}

// anywhere gives the places of a text on a raster over the whole frame, for
// when none of the usual ones is free.
func (p *Plate) anywhere(text *block, tip func(dir geom.Vec) geom.Vec) []place {
	const (
		step    unit.Length = 7
		far     unit.Length = 160
		unusual             = 60
	)
	hub := tip(right)
	room := drawing.Rect{Min: hub, Max: hub}.Grow(far)
	room = drawing.Rect{Min: geom.V(max(room.Min.X, p.Frame.Min.X), max(room.Min.Y, p.Frame.Min.Y)),
		Max: geom.V(min(room.Max.X, p.Frame.Max.X), min(room.Max.Y, p.Frame.Max.Y))}
	var out []place
	for y := room.Min.Y; y <= room.Max.Y; y += step {
		for x := room.Min.X; x <= room.Max.X; x += step {
			knee := geom.V(x, y)
			dir := knee.Sub(hub)
			if abs(dir.Y) < 2 { // along the reference line
				continue
			}
			from := tip(dir.Unit())
			for _, back := range []bool{false, true} {
				c := p.Style.landed(unusual+float64(dir.Len()), text, from, knee, back)
				if !c.box.cut(&c.lines[0], 0) { // it would strike itself out
					out = append(out, c)
				}
			}
		}
	}
	return out
}

// tipMark ends the first line of a place where it starts.
func (s *Style) tipMark(k drawing.MarkKind, c *place) drawing.Item {
	l := c.lines[0]
	size := drawing.DotSize
	if k == drawing.Arrow {
		size = drawing.ArrowLength
	}
	return drawing.Mark{Kind: k, At: l.a, Dir: l.a.Sub(l.b), Size: size, Pen: s.Lines.Fine()}
}

func tipKind(onEdge bool) drawing.MarkKind {
	if onEdge {
		return drawing.Arrow
	}
	return drawing.Dot
}

func (p *Plate) note(i int, q Note) *label {
	at := p.at(q.At)
	height := q.Height
	if height <= 0 {
		height = p.Style.Height
	}
	return p.tipped(i, newBlock(height, p.signed(i, q.Lines)...), tipKind(q.OnEdge), func(geom.Vec) geom.Vec { return at })
}

// diameter hangs the size of a hole on its circle; the leader points at the
// centre.
func (p *Plate) diameter(i int, q Diameter) *label {
	l := q.Label
	l.Prefix += "Ø"
	if q.Count > 1 {
		l.Prefix = unit.Style{}.Number(float64(q.Count), 0) + " × " + l.Prefix
	}
	centre, r := p.at(q.Centre), float64(p.Scale.Of(q.Dia)/2)
	text := p.figure(i, l.text(p.Format(q.Dia)))
	return p.tipped(i, text, drawing.Arrow, func(dir geom.Vec) geom.Vec { return centre.Add(dir.Mul(r)) })
}

// radius hangs the radius on its arc; the leader lies on a ray from the centre
// and comes from outside or, better where there is room, from inside.
func (p *Plate) radius(i int, q Radius) *label {
	l := q.Label
	l.Prefix += "R"
	s := &p.Style
	text := p.figure(i, l.text(p.Format(q.R)))
	centre, r := p.at(q.Centre), p.Scale.Of(q.R)
	reach := func(lengths []unit.Length) []place {
		var out []place
		const rays = 8
		for k := range rays + 1 {
			share := float64(k) / rays
			dir := polar(1, q.From+q.Sweep*unit.Angle(share))
			tip := centre.Add(dir.Mul(float64(r)))
			off := 4 * math.Abs(share-0.5)
			for _, d := range lengths {
				out = append(out, s.landed(off+float64(d), &text, tip, tip.Add(dir.Mul(float64(d))), dir.X < 0))
				if d < r {
					out = append(out, s.landed(off+float64(d)-1, &text, tip, tip.Sub(dir.Mul(float64(d))), dir.X > 0))
				}
			}
		}
		return out
	}
	return &label{
		request: i, text: text, places: reach(leaderLengths[:]),
		more: func() []place { return reach(leaderFar[:]) },
		ends: func(c *place) []drawing.Item { return []drawing.Item{s.tipMark(drawing.Arrow, c)} },
	}
}
