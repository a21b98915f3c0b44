package drawing

import (
	"fmt"
	"strconv"
	"strings"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Dump writes a sheet as text, one item a line, groups indented, numbers to a
// thousandth of a millimetre or degree. The same sheet gives the same text on
// every machine; it is meant for golden tests and for reading.
func Dump(s Sheet) string {
	d := &dumper{}
	d.line("sheet %s %s %sx%s", s.Name, s.Size.Name, num(s.Size.Width), num(s.Size.Height))
	d.line("title %q scale %q number %d of %d stamp %q", s.Title, s.Scale, s.Number, s.Of, s.Stamp)
	d.items(s.Items)
	return d.b.String()
}

// DumpItems writes items alone, in the form of Dump.
func DumpItems(items []Item) string {
	d := &dumper{}
	d.items(items)
	return d.b.String()
}

type dumper struct {
	b     strings.Builder
	depth int
}

func (d *dumper) line(format string, args ...any) {
	d.b.WriteString(strings.Repeat("  ", d.depth))
	fmt.Fprintf(&d.b, format, args...)
	d.b.WriteByte('\n')
}

func (d *dumper) items(items []Item) {
	for _, it := range items {
		switch x := it.(type) {
		case Polyline:
			d.line("%s %s%s", polyName(x), penText(x.Pen), pointsText(x.Points))
		case Arc:
			d.line("arc %s %s r %s from %s sweep %s", penText(x.Pen), pointText(x.Centre), num(x.Radius), deg(x.From), deg(x.Sweep))
		case Circle:
			d.line("circle %s %s r %s", penText(x.Pen), pointText(x.Centre), num(x.Radius))
		case Area:
			d.line("area%s%s", inkText(x.Ink), loopsText(x.Loops))
		case Hatch:
			p := x.Pattern
			d.line("hatch %s turn %s pitch %s width %s origin %s%s%s", p.Material, deg(p.Turn), num(p.Pitch), num(p.Width),
				pointText(p.Origin), inkText(p.Ink), loopsText(x.Loops))
		case Text:
			bold := ""
			if x.Bold {
				bold = " bold"
			}
			d.line("text %s %s h %s %s turn %s%s%s", strconv.Quote(x.String), pointText(x.At), num(x.Height), x.Align, deg(x.Turn), bold, inkText(x.Ink))
		case Mark:
			d.line("mark %s %s %s dir %s size %s", x.Kind, penText(x.Pen), pointText(x.At), pointText(x.Dir.Unit()), num(x.Size))
		case Group:
			d.line("group %s %q", x.ID, x.Title)
			d.depth++
			d.items(x.Items)
			d.depth--
		}
	}
}

func polyName(x Polyline) string {
	if x.Closed {
		return "loop"
	}
	return "line"
}

// num prints a length to the micrometre without trailing zeros.
func num(v unit.Length) string { return trim(float64(v)) }

func deg(a unit.Angle) string { return trim(a.Degrees()) }

func trim(v float64) string {
	s := strconv.FormatFloat(v, 'f', 3, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

func pointText(p geom.Vec) string { return num(p.X) + "," + num(p.Y) }

func pointsText(pts []geom.Vec) string {
	var b strings.Builder
	for _, p := range pts {
		b.WriteByte(' ')
		b.WriteString(pointText(p))
	}
	return b.String()
}

func loopsText(loops [][]geom.Vec) string {
	var b strings.Builder
	for _, l := range loops {
		b.WriteString(" (")
		b.WriteString(strings.TrimPrefix(pointsText(l), " "))
		b.WriteByte(')')
	}
	return b.String()
}

func inkText(k Ink) string {
	if k == Black {
		return ""
	}
	return fmt.Sprintf(" #%06X", uint32(k))
}

func penText(p Pen) string { return num(p.Width) + " " + p.Dash.String() + inkText(p.Ink) }

var (
	dashNames     = [...]string{"solid", "dashed", "dash-dot", "dash-dot-dot", "dotted", "zigzag", "freehand"}
	markNames     = [...]string{"arrow", "open-arrow", "oblique", "dot", "origin", "flag"}
	alignNames    = [...]string{"left", "centre", "right", "middle-left", "middle", "middle-right", "top-left", "top", "top-right"}
	materialNames = [...]string{"plain", "steel", "masonry", "aerated", "concrete", "stud-wall", "plaster", "end-grain", "long-grain", "sheet-board"}
)

func name[T ~uint8](names []string, v T) string {
	if int(v) < len(names) {
		return names[v]
	}
	return strconv.Itoa(int(v))
}

// String names the kind of line.
func (d Dash) String() string { return name(dashNames[:], d) }

// String names the terminator.
func (k MarkKind) String() string { return name(markNames[:], k) }

// String names the point of the text.
func (a Align) String() string { return name(alignNames[:], a) }

// String names the material.
func (m Material) String() string { return name(materialNames[:], m) }

// Texts gives all lettering of items, in the order in which it is drawn.
func Texts(items []Item) []string {
	var out []string
	for _, it := range items {
		switch x := it.(type) {
		case Text:
			out = append(out, x.String)
		case Group:
			out = append(out, Texts(x.Items)...)
		}
	}
	return out
}
