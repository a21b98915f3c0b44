package dim

import (
	"slabwright/drawing"
	"slabwright/model/unit"
)

// Style is how dimensions look: lengths are millimetres on paper. One drawing
// has one kind of terminator (ISO 129-1).
type Style struct {
	Lines   drawing.LineGroup
	Height  unit.Length      // capitals of figures and notes
	Crowded unit.Length      // capitals of running dimensions that lie close
	End     drawing.MarkKind // Arrow or Oblique
	EndSize unit.Length
	First   unit.Length // first dimension line, from the outline
	Next    unit.Length // from one dimension line to the next
	Off     unit.Length // gap between feature and extension line
	Past    unit.Length // extension line beyond the dimension line
	Above   unit.Length // gap between a line and the figures over it
}

// Wood is the style of joinery sheets: filled arrows. Distances after ISO
// 129-1: 10 to the first dimension line, 8 to the next, extension lines 8 line
// widths beyond.
var Wood = Style{
	Lines: drawing.Normal, Height: drawing.Standard, Crowded: drawing.Small,
	End: drawing.Arrow, EndSize: 3,
	First: 10, Next: 8, Off: 1.5, Past: pastWidths * drawing.Normal.Narrow, Above: 1,
}

// Steel is the style of steelwork sheets: oblique strokes.
var Steel = Wood.with(drawing.Oblique, drawing.ObliqueSize)

const pastWidths = 8

func (s Style) with(end drawing.MarkKind, size unit.Length) Style {
	s.End, s.EndSize = end, size
	return s
}

// Dense is the style for crowded A4 sheets: narrower lines, figures 2.5 high.
func (s Style) Dense() Style {
	s.Lines, s.Height, s.Crowded = drawing.Dense, drawing.Small, drawing.Small
	s.Past = pastWidths * s.Lines.Narrow
	return s
}

// Lengths that follow from habit of the board, not from a standard.
const (
	textClear unit.Length = 1   // between two texts
	lineClear unit.Length = 0.5 // between a text and a line
	tail      unit.Length = 2.5 // line behind an arrow that points in from outside
	ringSize  unit.Length = 10  // balloon
	datumSize unit.Length = 6   // box around the letter of a datum edge
	originR               = drawing.OriginSize / 2
)

// arrowRoom is the shortest dimension line that takes its terminators inside.
func (s *Style) arrowRoom() unit.Length {
	if s.End == drawing.Oblique {
		return s.EndSize
	}
	return 2*s.EndSize + 2
}
