package render

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// SVG draws a sheet in millimetres, true to scale. Groups keep their names as
// ids and titles. Letters are drawn as outlines, which look the same in every
// viewer and cut the same in every shop; an invisible text over them can be
// searched, selected and read aloud. The same sheet gives the same bytes.
//
// It fails when the sheet is not sound (see drawing.Sound).
func SVG(s drawing.Sheet) ([]byte, error) {
	if err := drawing.Sound(s); err != nil {
		return nil, err
	}
	w := &svgWriter{height: s.Size.Height, ids: map[string]bool{}, letters: map[letter]bool{}}
	drawing.Plot(s, w)

	var head svgWriter
	head.add(`<?xml version="1.0" encoding="UTF-8"?>`, "\n")
	head.add(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"`)
	head.size(` width="`, s.Size.Width, `mm"`)
	head.size(` height="`, s.Size.Height, `mm"`)
	head.size(` viewBox="0 0 `, s.Size.Width, " ")
	head.size("", s.Size.Height, `">`+"\n")
	head.add("<title>", escape(s.Title), "</title>\n")
	head.add("<desc>", escape(fmt.Sprintf("%s, scale %s, sheet %d of %d %s", s.Name, s.Scale, s.Number, s.Of, s.Stamp)), "</desc>\n")
	head.define(w.order)
	head.add(`<rect width="100%" height="100%" fill="#fff"/>`, "\n")
	head.add(`<g fill="none" stroke="#000" stroke-miterlimit="4">`, "\n")
	head.buf = append(head.buf, w.buf...)
	head.add("</g>\n</svg>\n")
	return head.buf, nil
}

// letter is one glyph of the lettering.
type letter struct {
	r    rune
	bold bool
}

func (l letter) id() string {
	weight := "r"
	if l.bold {
		weight = "b"
	}
	return "_" + weight + strconv.FormatInt(int64(l.r), 16)
}

// svgWriter is a plotter that writes elements; y is turned downwards here and
// nowhere else.
type svgWriter struct {
	buf     []byte
	height  unit.Length
	ids     map[string]bool
	letters map[letter]bool
	order   []letter
}

func (w *svgWriter) add(parts ...string) {
	for _, p := range parts {
		w.buf = append(w.buf, p...)
	}
}

func (w *svgWriter) num(v float64) { w.buf = appendNum(w.buf, v) }
func (w *svgWriter) size(before string, v unit.Length, after string) {
	w.add(before)
	w.num(float64(v))
	w.add(after)
}

// appendNum writes a number to a thousandth without trailing zeros.
func appendNum(b []byte, v float64) []byte {
	n := int64(math.Round(v * 1000))
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/1000, 10)
	if f := n % 1000; f != 0 {
		b = append(b, '.', byte('0'+f/100))
		if f%100 != 0 {
			b = append(b, byte('0'+f/10%10))
			if f%10 != 0 {
				b = append(b, byte('0'+f%10))
			}
		}
	}
	return b
}

func (w *svgWriter) point(p geom.Vec) {
	w.num(float64(p.X))
	w.add(" ")
	w.num(float64(w.height - p.Y))
}

// Begin opens a group; its id is the name with other signs than letters and
// digits turned to hyphens, made unique.
func (w *svgWriter) Begin(id, title string) {
	slug := strings.Map(func(r rune) rune {
		if r == '.' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r > 127 {
			return r
		}
		return '-'
	}, id)
	unique := slug
	for i := 2; w.ids[unique]; i++ {
		unique = slug + "-" + strconv.Itoa(i)
	}
	w.ids[unique] = true
	w.add(`<g id="`, escape(unique), `">`)
	if title != "" {
		w.add("<title>", escape(title), "</title>")
	}
	w.add("\n")
}

// End closes a group.
func (w *svgWriter) End() { w.add("</g>\n") }

func (w *svgWriter) stroke(s drawing.Stroke) {
	w.size(` stroke-width="`, s.Width, `"`)
	if s.Ink != drawing.Black {
		w.add(` stroke="`, hex(s.Ink), `"`)
	}
	for i, d := range s.Dashes {
		w.add([...]string{` stroke-dasharray="`, " "}[min(i, 1)])
		w.num(float64(d))
	}
	if len(s.Dashes) > 0 {
		w.add(`"`)
	}
	w.add("/>\n")
}

func hex(k drawing.Ink) string { return fmt.Sprintf("#%06x", uint32(k)) }

func (w *svgWriter) chain(pts []geom.Vec, closed bool) {
	for i, p := range pts {
		w.add([...]string{"M", "L"}[min(i, 1)])
		w.point(p)
	}
	if closed {
		w.add("Z")
	}
}

// Lines draws chains in one path.
func (w *svgWriter) Lines(chains [][]geom.Vec, closed bool, s drawing.Stroke) {
	w.add(`<path d="`)
	for _, c := range chains {
		w.chain(c, closed)
	}
	w.add(`"`)
	w.stroke(s)
}

// Arc draws a circle or part of one.
func (w *svgWriter) Arc(c geom.Vec, r unit.Length, from, sweep unit.Angle, s drawing.Stroke) {
	if math.Abs(float64(sweep)) > 2*math.Pi-1e-9 {
		w.size(`<circle cx="`, c.X, `"`)
		w.size(` cy="`, w.height-c.Y, `"`)
		w.size(` r="`, r, `"`)
		w.stroke(s)
		return
	}
	w.add(`<path d="M`)
	w.point(c.Add(geom.V(r, 0).Turn(from)))
	w.size("A", r, " ")
	w.size("", r, " 0 ")
	w.add([...]string{"0", "1"}[b2i(math.Abs(float64(sweep)) > math.Pi)], " ")
	w.add([...]string{"1", "0"}[b2i(sweep > 0)], " ") // y turned: counter-clockwise is flag 0
	w.point(c.Add(geom.V(r, 0).Turn(from + sweep)))
	w.add(`"`)
	w.stroke(s)
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// Fill fills loops by the even-odd rule.
func (w *svgWriter) Fill(loops [][]geom.Vec, ink drawing.Ink) {
	w.add(`<path stroke="none" fill-rule="evenodd" fill="`, hex(ink), `" d="`)
	for _, l := range loops {
		w.chain(l, true)
	}
	w.add("\"/>\n")
}

// letterUnits is the cap height of the letters as they are defined.
const letterUnits = 1000

// Write sets a text letter by letter.
func (w *svgWriter) Write(t drawing.Text) {
	o := t.Start()
	k := float64(t.Height) / letterUnits
	sin, cos := math.Sincos(float64(t.Turn))
	w.add(`<g transform="matrix(`)
	for _, v := range []float64{k * cos, -k * sin, k * sin, k * cos} {
		w.buf = strconv.AppendFloat(w.buf, math.Round(v*1e7)/1e7+0, 'f', -1, 64)
		w.add(" ")
	}
	w.point(o)
	w.add(`)" stroke="none" fill="`, hex(t.Ink), `">`)
	x := 0.0
	for _, r := range t.String {
		l := letter{r, t.Bold}
		if !w.letters[l] {
			w.letters[l] = true
			w.order = append(w.order, l)
		}
		if r != ' ' && r != '\u00a0' {
			w.add(`<use xlink:href="#`, l.id(), `" x="`)
			w.num(math.Round(x))
			w.add(`"/>`)
		}
		x += letterUnits * float64(drawing.Advance(r, t.Bold))
	}
	w.size(`<text fill-opacity="0" font-family="sans-serif" font-size="`, unit.Length(math.Round(letterUnits/drawing.CapRatio(t.Bold))), `"`)
	w.size(` textLength="`, unit.Length(math.Round(x)), `" lengthAdjust="spacingAndGlyphs">`)
	w.add(escape(t.String), "</text></g>\n")
}

// define writes the outlines of letters.
func (w *svgWriter) define(letters []letter) {
	if len(letters) == 0 {
		return
	}
	w.add("<defs>\n")
	at := func(cmd string, p geom.Vec) {
		w.add(cmd)
		w.num(math.Round(letterUnits * float64(p.X)))
		w.add(" ")
		w.num(math.Round(-letterUnits * float64(p.Y)))
	}
	for _, l := range letters {
		contours := drawing.Letter(l.r, l.bold)
		if len(contours) == 0 {
			continue
		}
		w.add(`<path id="`, l.id(), `" d="`)
		for _, c := range contours {
			at("M", c.Start)
			for _, b := range c.Bends {
				if b.Control == b.End {
					at("L", b.End)
				} else {
					at("Q", b.Control)
					at(" ", b.End)
				}
			}
			w.add("Z")
		}
		w.add("\"/>\n")
	}
	w.add("</defs>\n")
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escape(s string) string { return escaper.Replace(s) }
