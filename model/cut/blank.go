package cut

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/calc/saw"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Blank is the piece that a part, or a board of a roll-out table, is cut from, as
// ordered. Length and width are those as drawn with what the order size, over-wood
// and the tolerance of the shop add. EndWidth is the width at the far end of a
// piece that tapers, its straight side low; Flipped says that the part as drawn
// has to be turned by half a turn to lie so.
type Blank struct {
	ID            string
	Mark          string
	Part          *model.Part
	Board         *model.Board // nil: the whole part
	Length, Width unit.Length
	EndWidth      unit.Length
	Flipped       bool
	Drawn         [2]unit.Length // length and width as drawn
	Edge          saw.Side
	Ordered       bool // the order size of the fit is in it
	Mass          unit.Mass
}

// Tapers says whether the blank is wider at one end than at the other.
func (b Blank) Tapers() bool { return b.EndWidth != b.Width }

// BlankOf is what a slab is cut from. A natural front counts to its straight
// line at the narrowest place.
func BlankOf(d *model.Design, p *model.Part) Blank {
	b := Blank{ID: p.ID, Mark: fmt.Sprint(p.Mark), Part: p, Mass: p.Mass()}
	low, high := p.Slab.Edges[0].Start, p.Slab.Edges[0].Start
	for _, e := range p.Slab.Edges {
		low.X, low.Y = min(low.X, e.Start.X), min(low.Y, e.Start.Y)
		high.X, high.Y = max(high.X, e.Start.X), max(high.Y, e.Start.Y)
		if e.Waney {
			b.Edge = saw.Low
		}
	}
	b.Drawn = [2]unit.Length{tenthUp(high.X - low.X), tenthUp(high.Y - low.Y)}
	b.Length, b.Width = b.Drawn[0], b.Drawn[1]
	if f, err := d.FitOf(p.ID); err == nil {
		b.more(f)
	}
	if b.EndWidth = b.Width; b.Edge == saw.NoSide {
		b.taper(low)
	}
	return b
}

// more adds what the order size and the over-wood of a fit ask for.
func (b *Blank) more(f model.Fit) {
	for _, w := range f.Ways {
		var more unit.Length
		if w.Order != nil {
			more = w.Order.Size - w.Size
			b.Ordered = true
		}
		for _, s := range w.Scribe {
			more += max(0, s.OverWood)
		}
		if w.Name == "length" {
			b.Length = tenthUp(b.Length + more)
		} else {
			b.Width = tenthUp(b.Width + more)
		}
	}
}

// worthTaper is how much narrower one end must be for a slanted cut to pay: two
// pieces share it, and it takes a kerf itself. Common practice, no source.
const worthTaper unit.Length = 12

// beyond is how much wider than the part a blank may be where slanted ends carry
// its slanted side on.
const beyond unit.Length = 2

// taper narrows one end of a blank where the part lets it. Of both long sides
// that may lie straight the one that saves more wood is taken.
func (b *Blank) taper(low geom.Vec) {
	over, high, best := b.Width-b.Drawn[1], b.Width, b.Width*2-1
	for _, flipped := range []bool{false, true} {
		var top []geom.Vec
		for _, e := range b.Part.Slab.Edges {
			top = append(top, b.lying(e.Start.Sub(low), flipped))
		}
		w, end := roof(top, b.Length)
		w, end = tenthUp(w+over), tenthUp(end+over)
		if max(w, end) <= high+beyond && max(w-end, end-w) >= worthTaper && w+end < best {
			best = w + end
			b.Width, b.EndWidth, b.Flipped = w, end, flipped
		}
	}
}

// Lying gives a point of the part, from the low left corner of its outline, in
// the blank.
func (b Blank) Lying(p geom.Vec) geom.Vec { return b.lying(p, b.Flipped) }

func (b Blank) lying(p geom.Vec, flipped bool) geom.Vec {
	if !flipped {
		return p
	}
	return geom.V(b.Length-p.X, b.Drawn[1]-p.Y)
}

// roof is the straight line over points that is lowest in the middle of a length:
// its heights at 0 and at the far end.
func roof(pts []geom.Vec, length unit.Length) (left, right unit.Length) {
	best := math.Inf(1)
	for i, a := range pts {
		for _, b := range pts[i+1:] {
			if math.Abs(float64(a.X-b.X)) < 1 {
				continue
			}
			slope := float64((b.Y - a.Y) / (b.X - a.X))
			at := func(x unit.Length) float64 { return float64(a.Y) + slope*float64(x-a.X) }
			over := true
			for _, p := range pts {
				over = over && float64(p.Y) <= at(p.X)+1e-6
			}
			if mid := at(length / 2); over && mid < best && at(0) > 0 && at(length) > 0 {
				best, left, right = mid, unit.Length(at(0)), unit.Length(at(length))
			}
		}
	}
	return left, right
}

// item is what the engine is asked for.
func (b Blank) item() saw.Item {
	it := saw.Item{ID: b.ID, Length: b.Length, Width: b.Width, Count: 1, Edge: b.Edge}
	if b.Tapers() {
		it.EndWidth = b.EndWidth
	}
	return it
}

// around is the rectangle that holds the blank: what its halves are cut from.
func (b Blank) around() saw.Item {
	it := b.item()
	it.Width, it.EndWidth = max(b.Width, b.EndWidth), 0
	return it
}

// boardBlank is what a board of a roll-out table is cut from.
func boardBlank(p *model.Part, b *model.Board) Blank {
	return Blank{ID: p.ID + " " + b.Name, Mark: fmt.Sprintf("%d.%d", p.Mark, b.Row), Part: p, Board: b, Length: b.Length, Width: b.Width, EndWidth: b.Width,
		Drawn: [2]unit.Length{b.Length, b.Width}, Mass: b.Mass}
}

// tenthUp rounds up to a tenth of a millimetre.
func tenthUp(l unit.Length) unit.Length {
	return unit.Length(math.Ceil(float64(l)*10-1e-6) / 10)
}
