package drawing

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Bend is one quadratic curve of a letter: its control point and its end. A
// straight side has the control point on its end.
type Bend struct{ Control, End geom.Vec }

// Contour is one closed curve of a letter.
type Contour struct {
	Start geom.Vec
	Bends []Bend
}

// Advance is the distance from one letter to the next at capitals 1 mm high.
func Advance(r rune, bold bool) unit.Length {
	c := faceOf(bold)
	return unit.Length(c.glyph(r).advance) / unit.Length(c.cap)
}

// Letter gives the curves of a letter with capitals 1 mm high, standing on
// the base line at the origin; fill them by the non-zero rule. A space has
// none.
func Letter(r rune, bold bool) []Contour {
	c := faceOf(bold)
	var buf sfnt.Buffer
	segments, err := c.font.LoadGlyph(&buf, c.glyph(r).index, c.em, nil)
	if err != nil {
		return nil
	}
	at := func(p fixed.Point26_6) geom.Vec { // font units run down
		return geom.V(unit.Length(p.X)/unit.Length(c.cap), -unit.Length(p.Y)/unit.Length(c.cap))
	}
	var out []Contour
	for _, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			out = append(out, Contour{Start: at(s.Args[0])})
			continue
		}
		last := &out[len(out)-1]
		switch s.Op {
		case sfnt.SegmentOpLineTo:
			last.Bends = append(last.Bends, Bend{at(s.Args[0]), at(s.Args[0])})
		case sfnt.SegmentOpQuadTo:
			last.Bends = append(last.Bends, Bend{at(s.Args[0]), at(s.Args[1])})
		}
	}
	return out
}
