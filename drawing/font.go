package drawing

import (
	"sync"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"slabwright/model/unit"
)

// The lettering is DejaVu Sans Condensed (Bitstream Vera licence, changes in
// the public domain), set without kerning and ligatures, so that the width of
// a text is the sum of its advances in every output.

// FontData gives the TrueType file of the lettering.
func FontData(bold bool) []byte {
	if bold {
		return dejavusanscondensedbold.TTF
	}
	return dejavusanscondensed.TTF
}

// glyph holds the measures of one character in font units: advance width and
// the lowest and highest ink above the base line.
type glyph struct {
	index         sfnt.GlyphIndex
	advance       int32
	bottom, above int32
}

// face is one parsed font with the measures of its common characters.
type face struct {
	font *sfnt.Font
	em   fixed.Int26_6
	cap  int32 // height of H
	low  [0x2800]glyph
}

var faces = [2]func() *face{
	sync.OnceValue(func() *face { return parseFace(dejavusanscondensed.TTF) }),
	sync.OnceValue(func() *face { return parseFace(dejavusanscondensedbold.TTF) }),
}

func faceOf(bold bool) *face {
	if bold {
		return faces[1]()
	}
	return faces[0]()
}

// parseFace reads an embedded font; only a broken build can make it fail.
func parseFace(ttf []byte) *face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("embedded font: " + err.Error())
	}
	c := &face{font: f, em: fixed.Int26_6(f.UnitsPerEm())}
	for r := range c.low {
		c.low[r] = c.measure(rune(r))
	}
	c.cap = c.low['H'].above
	return c
}

// lost is the sign that Readable puts in the place of one that the lettering
// lacks.
const lost = '\uFFFD'

// measure reads one glyph at a size of one em per em, so that the 26.6 numbers
// are font units. A sign that the lettering lacks has the measures of the one
// that will stand for it, so that texts keep their places.
func (c *face) measure(r rune) glyph {
	var buf sfnt.Buffer
	i, err := c.font.GlyphIndex(&buf, r)
	if !settable(r) || err != nil || i == 0 {
		if r == lost {
			return glyph{}
		}
		g := c.measure(lost)
		g.index = 0
		return g
	}
	b, adv, err := c.font.GlyphBounds(&buf, i, c.em, font.HintingNone)
	if err != nil {
		return glyph{}
	}
	return glyph{i, int32(adv), int32(-b.Max.Y), int32(-b.Min.Y)}
}

// settable tells whether a character stands for itself from left to right. Not
// so are scripts written from right to left, accents that join the letter
// before, and signs without a form.
func settable(r rune) bool {
	switch {
	case r < ' ', r == 0xAD, 0x300 <= r && r < 0x370, 0x590 <= r && r < 0x900,
		0x200B <= r && r < 0x2010, 0x2028 <= r && r < 0x202F, 0x2060 <= r && r < 0x2070,
		0x20D0 <= r && r < 0x2100, 0xFB1D <= r && r < 0xFE30, 0xFE70 <= r && r < 0xFF00:
		return false
	}
	return true
}

func (c *face) glyph(r rune) glyph {
	if int(r) < len(c.low) && r >= 0 {
		return c.low[r]
	}
	return c.measure(r)
}

func width(s string, height unit.Length, bold bool) unit.Length {
	c := faceOf(bold)
	var sum int32
	for _, r := range s {
		sum += c.glyph(r).advance
	}
	return height * unit.Length(sum) / unit.Length(c.cap)
}

// inkHeights gives the lowest and highest ink of a text in cap heights.
func inkHeights(s string, bold bool) (low, high float64) {
	c := faceOf(bold)
	first := true
	var lo, hi int32
	for _, r := range s {
		g := c.glyph(r)
		if g.bottom == g.above {
			continue
		}
		if first {
			lo, hi, first = g.bottom, g.above, false
		}
		lo, hi = min(lo, g.bottom), max(hi, g.above)
	}
	return float64(lo) / float64(c.cap), float64(hi) / float64(c.cap)
}

// TextWidth is the width of a text in the regular lettering with capitals of
// this height: the sum of the advances of its glyphs.
func TextWidth(s string, capHeight unit.Length) unit.Length { return width(s, capHeight, false) }

// CapRatio is the height of the capitals in parts of the em, which converts a
// cap height to the size of the font.
func CapRatio(bold bool) float64 {
	c := faceOf(bold)
	return float64(c.cap) / float64(c.em)
}

// Unprintable gives the characters of a text that the lettering lacks, each once.
func Unprintable(s string) []rune {
	var out []rune
	seen := map[rune]bool{}
	for _, r := range s {
		if !seen[r] && (faceOf(false).glyph(r).index == 0 || faceOf(true).glyph(r).index == 0) {
			out = append(out, r)
		}
		seen[r] = true
	}
	return out
}
