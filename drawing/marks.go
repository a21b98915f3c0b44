package drawing

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// MarkKind is the form of a terminator or sign.
type MarkKind uint8

// Terminators after ISO 129-1 and small signs of the shop.
const (
	Arrow     MarkKind = iota // filled, three times as long as wide; At is its tip
	OpenArrow                 // two strokes at 15 degrees to the line; At is its tip
	Oblique                   // stroke at 45 degrees to the dimension line, for steelwork
	Dot                       // where arrows find no room, and leaders that end inside an area
	Origin                    // circle at the zero of running dimensions
	Flag                      // filled triangle standing with its base at At, for datum edges
)

// House sizes of the marks.
const (
	ArrowLength  unit.Length = 2.5
	ObliqueSize  unit.Length = 2.5
	DotSize      unit.Length = 1
	OriginSize   unit.Length = 3
	FlagSize     unit.Length = 3
	arrowSlender             = 3 // length to width
)

var markSizes = map[MarkKind]unit.Length{
	Arrow: ArrowLength, OpenArrow: ArrowLength, Oblique: ObliqueSize,
	Dot: DotSize, Origin: OriginSize, Flag: FlagSize,
}

func (x Mark) plot(p Plotter, _ *context) {
	size := x.Size
	if size == 0 {
		size = markSizes[x.Kind]
	}
	d := x.Dir.Unit().Mul(float64(size))
	at := func(along, across float64) geom.Vec {
		return x.At.Add(d.Mul(along)).Add(d.Left().Mul(across))
	}
	s := x.Pen.stroke(nil)
	switch x.Kind {
	case Arrow:
		w := 0.5 / arrowSlender
		p.Fill([][]geom.Vec{{x.At, at(-1, w), at(-1, -w)}}, x.Pen.Ink)
	case OpenArrow:
		w := math.Tan(float64(15 * unit.Degree))
		p.Lines([][]geom.Vec{{at(-1, w), x.At, at(-1, -w)}}, false, s)
	case Oblique: // from lower left to upper right in reading direction
		h := d.Turn(45 * unit.Degree).Mul(0.5)
		p.Lines([][]geom.Vec{{x.At.Sub(h), x.At.Add(h)}}, false, s)
	case Dot:
		p.Fill([][]geom.Vec{ring(x.At, size/2)}, x.Pen.Ink)
	case Origin:
		p.Arc(x.At, size/2, 0, fullTurn, s)
	case Flag:
		p.Fill([][]geom.Vec{{at(0, 0.5), at(0, -0.5), at(0.866, 0)}}, x.Pen.Ink)
	}
}

// ring is a circle as a polygon, true to 1 per cent of its radius.
func ring(c geom.Vec, r unit.Length) []geom.Vec {
	const n = 24
	pts := make([]geom.Vec, n)
	for i := range pts {
		pts[i] = c.Add(geom.V(r, 0).Turn(fullTurn * unit.Angle(i) / n))
	}
	return pts
}
