package drawing

import (
	"strings"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Align names the point of a text that sits at Text.At. Heights are those of
// the capitals: descenders hang below the bottom.
type Align uint8

// Points of a text: on the base line, at half and at full cap height.
const (
	Left Align = iota
	Centre
	Right
	MiddleLeft
	Middle
	MiddleRight
	TopLeft
	Top
	TopRight
)

// Lettering heights (capitals) of the house, from the series of ISO 3098-1.
const (
	Small    unit.Length = 2.5 // side notes; nothing is smaller
	Standard unit.Length = 3.5 // dimensions and notes
	Large    unit.Length = 5   // titles
	Huge     unit.Length = 7   // item numbers, drawing number
)

// LinePitch is the distance of base lines, in cap heights (1.9 for text with
// accents after ISO 3098, table for type B).
const LinePitch = 1.9

// Write makes a text from left to right.
func Write(at geom.Vec, s string, height unit.Length, align Align) Text {
	return Text{At: at, String: s, Height: height, Align: align}
}

// Strong makes the text bold.
func (t Text) Strong() Text { t.Bold = true; return t }

// Along turns the text.
func (t Text) Along(turn unit.Angle) Text { t.Turn = turn; return t }

// Width is the advance width of the text.
func (t Text) Width() unit.Length { return width(t.String, t.Height, t.Bold) }

// Start is the point where the base line begins.
func (t Text) Start() geom.Vec {
	var d geom.Vec
	switch t.Align % 3 {
	case Centre:
		d.X = -t.Width() / 2
	case Right:
		d.X = -t.Width()
	}
	switch t.Align / 3 {
	case 1:
		d.Y = -t.Height / 2
	case 2:
		d.Y = -t.Height
	}
	return t.At.Add(d.Turn(t.Turn))
}

// Quad is the box around the ink of the text, turned with it: its corners in
// reading direction lower left, lower right, upper right, upper left. A text
// without ink gives a quad without area.
func (t Text) Quad() [4]geom.Vec {
	lo, hi := inkHeights(t.String, t.Bold)
	o, w := t.Start(), t.Width()
	x, y := geom.V(w, 0).Turn(t.Turn), geom.V(0, t.Height).Turn(t.Turn)
	low, high := o.Add(y.Mul(lo)), o.Add(y.Mul(hi))
	return [4]geom.Vec{low, low.Add(x), high.Add(x), high}
}

// Paragraph sets lines of text below each other, the first at at.
func Paragraph(at geom.Vec, lines []string, height unit.Length, align Align) []Item {
	items := make([]Item, len(lines))
	for i, s := range lines {
		y := at.Y - unit.Length(i)*height*LinePitch
		items[i] = Write(geom.V(at.X, y), s, height, align)
	}
	return items
}

// Wrap breaks a text at its spaces so that no line is wider than room, as far
// as its words allow; words of more than 16 letters break too, behind a hyphen
// of their own if they can. Line breaks in s are kept.
func Wrap(s string, height, room unit.Length) []string { return wrap(s, height, room, false) }

// WrapStrong is Wrap for bold lettering.
func WrapStrong(s string, height, room unit.Length) []string { return wrap(s, height, room, true) }

func wrap(s string, height, room unit.Length, bold bool) []string {
	var lines []string
	for _, para := range strings.Split(s, "\n") {
		line := ""
		for _, word := range strings.Fields(para) {
			if longer := line + " " + word; line != "" && width(longer, height, bold) <= room {
				line = longer
				continue
			}
			if line != "" {
				lines = append(lines, line)
			}
			parts := split(word, height, room, bold)
			lines = append(lines, parts[:len(parts)-1]...)
			line = parts[len(parts)-1]
		}
		lines = append(lines, line)
	}
	return lines
}

// Words of more than wholeWord letters may break into parts of leastPart
// letters and more.
const wholeWord, leastPart = 16, 8

// split breaks a long word into parts that fit into a room.
func split(word string, height, room unit.Length, bold bool) []string {
	r := []rune(word)
	if len(r) <= wholeWord {
		return []string{word}
	}
	var parts []string
	for len(r) > leastPart && width(string(r), height, bold) > room {
		n := leastPart
		for n < len(r)-3 && width(hyphened(r[:n+1]), height, bold) <= room {
			n++
		}
		for k := n; k > leastPart; k-- {
			if r[k-1] == '-' || r[k-1] == '/' {
				n = k
				break
			}
		}
		parts = append(parts, hyphened(r[:n]))
		r = r[n:]
	}
	return append(parts, string(r))
}

func hyphened(r []rune) string {
	if last := r[len(r)-1]; last == '-' || last == '/' {
		return string(r)
	}
	return string(r) + "-"
}

// LeastRoom is the width of the widest thing in a text that Wrap cannot break.
func LeastRoom(s string, height unit.Length, bold bool) unit.Length {
	var w unit.Length
	for _, word := range strings.Fields(s) {
		r := []rune(word)
		if len(r) <= wholeWord {
			w = max(w, width(word, height, bold))
			continue
		}
		for i := 0; i+leastPart <= len(r); i++ {
			w = max(w, width(hyphened(r[i:i+leastPart]), height, bold))
		}
	}
	return w
}

// Fit shortens a text with an ellipsis so that it is no wider than room.
func Fit(s string, height, room unit.Length) string { return fit(s, height, room, false) }

func fit(s string, height, room unit.Length, bold bool) string {
	if width(s, height, bold) <= room {
		return s
	}
	r := []rune(s)
	for len(r) > 0 && width(string(r)+"…", height, bold) > room {
		r = r[:len(r)-1]
	}
	return strings.TrimRight(string(r), " ") + "…"
}
