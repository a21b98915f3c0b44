// Package render writes sheets as SVG and PDF, true to scale and the same
// bytes for the same sheets.
package render

import (
	"bytes"
	"errors"
	"fmt"
	"image/color"
	"math"
	"sync"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/pdf"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Meta is what a PDF says about itself. Empty fields are left out; there is no
// date, because nothing here knows one.
type Meta struct{ Title, Subject, Author, Creator string }

// PDF draws sheets as the pages of one document, true to scale, with a
// bookmark and a page label for each and the lettering embedded. It asks
// viewers to print without scaling.
//
// It fails when there is no sheet or one of them is not sound (see
// drawing.Sound).
func PDF(sheets []drawing.Sheet, meta Meta) ([]byte, error) {
	if len(sheets) == 0 {
		return nil, errors.New("a document needs at least one sheet")
	}
	for _, s := range sheets {
		if err := drawing.Sound(s); err != nil {
			return nil, err
		}
	}
	loaded, err := lettering()
	if err != nil {
		return nil, err
	}
	fonts, shapes := unshaped(loaded)
	var buf bytes.Buffer
	size := sheets[0].Size
	doc := pdf.New(&buf, float64(size.Width), float64(size.Height), &pdf.Options{SubsetFonts: true})
	plotter := &pdfPlotter{page: doc, fonts: fonts, faces: map[faceKey]*canvas.FontFace{}, lines: map[lineKey]*canvas.Text{}}
	for i, s := range sheets {
		if i > 0 {
			doc.NewPage(float64(s.Size.Width), float64(s.Size.Height))
		}
		drawing.Plot(s, plotter)
	}
	shapes()
	if err := doc.Close(); err != nil {
		return nil, fmt.Errorf("writing the document: %w", err)
	}
	return finish(buf.Bytes(), sheets, meta)
}

// lettering loads the fonts once. Kerning and ligatures are off, so that texts
// are as wide as package drawing measures them.
var lettering = sync.OnceValues(func() (fonts [2]*canvas.Font, err error) {
	for i := range fonts {
		if fonts[i], err = canvas.LoadFont(drawing.FontData(i == 1), 0, canvas.FontRegular); err != nil {
			return fonts, fmt.Errorf("loading the lettering: %w", err)
		}
		fonts[i].SetFeatures("-kern,-liga,-clig,-calt,-locl,-mark")
	}
	return fonts, nil
})

// unshaped gives fonts of one document whose letters have no outlines until they
// are given back. Of every text canvas traces the letters, in case it is
// underlined, which took half the time of a document; a document needs the
// outlines only where its fonts are embedded, at its end.
func unshaped(fonts [2]*canvas.Font) (out [2]*canvas.Font, giveBack func()) {
	for i, f := range fonts {
		own, shapes := *f, *f.SFNT
		shapes.IsTrueType, shapes.IsCFF = false, false
		own.SFNT = &shapes
		out[i] = &own
	}
	return out, func() {
		for i, f := range fonts {
			out[i].SFNT = f.SFNT
		}
	}
}

// pdfPlotter hands the marks of a sheet to a page.
type pdfPlotter struct {
	page  *pdf.PDF
	fonts [2]*canvas.Font
	faces map[faceKey]*canvas.FontFace
	lines map[lineKey]*canvas.Text // what was set once is not set again
}

type faceKey struct {
	bold   bool
	height unit.Length
	ink    drawing.Ink
}

type lineKey struct {
	face *canvas.FontFace
	text string
}

// Begin and End: a page has no groups.
func (p *pdfPlotter) Begin(string, string) {}
func (p *pdfPlotter) End()                 {}

func rgba(k drawing.Ink) color.RGBA {
	return color.RGBA{uint8(k >> 16), uint8(k >> 8), uint8(k), 255}
}

func pen(s drawing.Stroke) canvas.Style {
	st := canvas.Style{
		Stroke:       canvas.Paint{Color: rgba(s.Ink)},
		StrokeWidth:  float64(s.Width),
		StrokeCapper: canvas.ButtCap,
		StrokeJoiner: canvas.MiterJoiner{GapJoiner: canvas.BevelJoin, Limit: 4},
	}
	for _, d := range s.Dashes { // canvas takes dashes as multiples of the width
		st.Dashes = append(st.Dashes, float64(d/s.Width))
	}
	return st
}

// short rounds to a ten-thousandth of a millimetre, which keeps documents small.
func short(v unit.Length) float64 { return math.Round(float64(v)*1e4) / 1e4 }

func trace(chains [][]geom.Vec, closed bool) *canvas.Path {
	p := &canvas.Path{}
	for _, c := range chains {
		for i, v := range c {
			if i == 0 {
				p.MoveTo(short(v.X), short(v.Y))
			} else {
				p.LineTo(short(v.X), short(v.Y))
			}
		}
		if closed {
			p.Close()
		}
	}
	return p
}

// Lines draws chains in one stroke.
func (p *pdfPlotter) Lines(chains [][]geom.Vec, closed bool, s drawing.Stroke) {
	p.draw(trace(chains, closed), pen(s))
}

func (p *pdfPlotter) draw(path *canvas.Path, st canvas.Style) {
	if !path.Empty() {
		p.page.RenderPath(path, st, canvas.Identity)
	}
}

// Arc draws a circle or part of one.
func (p *pdfPlotter) Arc(c geom.Vec, r unit.Length, from, sweep unit.Angle, s drawing.Stroke) {
	if r <= 0 || sweep == 0 {
		return
	}
	start := c.Add(geom.V(r, 0).Turn(from))
	path := &canvas.Path{}
	path.MoveTo(float64(start.X), float64(start.Y))
	full := math.Abs(float64(sweep)) > 2*math.Pi-1e-9
	path.Arc(float64(r), float64(r), 0, from.Degrees(), (from + sweep).Degrees())
	if full {
		path.Close()
	}
	p.draw(path, pen(s))
}

// Fill fills loops by the even-odd rule.
func (p *pdfPlotter) Fill(loops [][]geom.Vec, ink drawing.Ink) {
	p.draw(trace(loops, true), canvas.Style{Fill: canvas.Paint{Color: rgba(ink)}, FillRule: canvas.EvenOdd})
}

// Write sets a text.
func (p *pdfPlotter) Write(t drawing.Text) {
	if t.String == "" {
		return
	}
	key := faceKey{t.Bold, t.Height, t.Ink}
	face := p.faces[key]
	if face == nil {
		const pointsPerMM = 72 / 25.4
		size := float64(t.Height) / drawing.CapRatio(t.Bold) * pointsPerMM
		face = p.fonts[b2i(t.Bold)].Face(size, rgba(t.Ink))
		p.faces[key] = face
	}
	o := t.Start()
	m := canvas.Identity.Translate(float64(o.X), float64(o.Y)).Rotate(t.Turn.Degrees())
	line := p.lines[lineKey{face, t.String}]
	if line == nil {
		line = canvas.NewTextLine(face, t.String, canvas.Left)
		p.lines[lineKey{face, t.String}] = line
	}
	p.page.RenderText(line, m)
}
