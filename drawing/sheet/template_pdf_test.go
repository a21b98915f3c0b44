package sheet

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/render"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/testdata/judge"
)

// pdfLine is a straight line of a PDF in millimetres.
type pdfLine struct{ a, b geom.Vec }

var (
	pdfMatrix = regexp.MustCompile(`(?m)^ ?([0-9.]+) 0 0 ([0-9.]+) 0 0 cm`)
	pdfStroke = regexp.MustCompile(`([0-9.]+) ([0-9.]+) m ([0-9.]+) ([0-9.]+) l S`)
)

// linesOfPDF reads the straight lines of a sheet from its PDF: the current
// matrix turns millimetres into points of 1/72 inch.
func linesOfPDF(t *testing.T, s drawing.Sheet) []pdfLine {
	t.Helper()
	data, err := render.PDF([]drawing.Sheet{s}, render.Meta{})
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "x.pdf")
	if err := os.WriteFile(file, data, 0o644); err != nil {
		t.Fatal(err)
	}
	out := judge.Run(t, "qpdf", "--qdf", "--object-streams=disable", file, "-")
	cm := pdfMatrix.FindStringSubmatch(out)
	if cm == nil {
		t.Fatal("no matrix")
	}
	num := func(s string) float64 { v, _ := strconv.ParseFloat(s, 64); return v }
	sx, sy := num(cm[1])/72*25.4, num(cm[2])/72*25.4
	var lines []pdfLine
	for _, l := range pdfStroke.FindAllStringSubmatch(out, -1) {
		lines = append(lines, pdfLine{
			geom.V(unit.Length(num(l[1])*sx), unit.Length(num(l[2])*sy)),
			geom.V(unit.Length(num(l[3])*sx), unit.Length(num(l[4])*sy))})
	}
	return lines
}

// On paper, by the coordinates in the PDF: both bars are 100 long on every
// sheet, and the crosses of the rods' holes are as far apart as the bores of
// the shelf, to 0.05.
func TestTemplatesAreTrueInThePDF(t *testing.T) {
	judge.Need(t, "qpdf")
	b := ofPreset(t, "studio")
	set, _ := newMaker(b).templates()
	i := slices.IndexFunc(set.list, func(tm *template) bool { return tm.name == "long shelf, rods in the wall" })
	if i < 0 {
		t.Fatal("no strip for the rods")
	}
	shelf := b.Design.Parts[slices.IndexFunc(b.Design.Parts, func(p *model.Part) bool { return p.ID == "long shelf" })]
	var bores []unit.Length
	for _, f := range shelf.Slab.Features {
		if f.Kind == model.Bore {
			bores = append(bores, f.At.X)
		}
	}
	pairs := 0
	for _, s := range printedTemplates(b, "") {
		if !strings.HasPrefix(s.Name, "template-t") {
			continue
		}
		lines := linesOfPDF(t, s)
		level, up := 0, 0
		for _, l := range lines {
			d := l.b.Sub(l.a)
			if math.Abs(float64(d.Len())-100) < 1e-3 && d.Y == 0 && l.a.Y < 25 {
				level++
			}
			if math.Abs(float64(d.Len())-100) < 1e-3 && d.X == 0 && l.a.X < 15 {
				up++
			}
		}
		if level != 1 || up != 1 {
			t.Errorf("%s: %d level and %d upright bars of 100", s.Name, level, up)
		}
		for _, tl := range set.list[i].tiles {
			if s.Name == fmt.Sprintf("template-t%d", tl.sheet) {
				pairs += spacing(t, tl, lines, bores)
			}
		}
	}
	if pairs == 0 {
		t.Error("no tile shows two rods")
	}
}

// spacing compares the upright strokes of the rods' crosses on a tile, 22 long
// (a hole of 18 and 2 on both sides), with the bores, and gives how many
// distances it compared.
func spacing(t *testing.T, tl tile, lines []pdfLine, bores []unit.Length) int {
	t.Helper()
	var got []unit.Length
	for _, l := range lines {
		d := l.b.Sub(l.a)
		mid := l.a.Lerp(l.b, 0.5)
		if d.X == 0 && math.Abs(float64(d.Len())-22) < 1e-3 && tl.place.Holds(drawing.Rect{Min: mid, Max: mid}) {
			got = append(got, mid.X-tl.place.Min.X+tl.window.Min.X)
		}
	}
	slices.Sort(got)
	for i, x := range got {
		k := slices.IndexFunc(bores, func(b unit.Length) bool { return abs(b-x) < 1 })
		if k < 0 {
			t.Errorf("%s: a hole at %v where the shelf has no bore", tl.name, x)
			return 0
		}
		if i > 0 {
			if off := abs(x - got[0] - (bores[k] - bores[k-i])); off > 0.05 {
				t.Errorf("%s: holes %v apart, bores %v", tl.name, x-got[0], bores[k]-bores[k-i])
			}
		}
	}
	return max(0, len(got)-1)
}
