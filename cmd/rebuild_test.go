package cmd

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/render"
	"slabwright/drawing/sheet"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/presets"
	"slabwright/testdata/judge"
)

// rounding is how far a value printed to a tenth may be off.
const rounding = 0.051

// TestPartsRebuiltFromPrint: a person who knows only what poppler reads from the
// PDF makes the same parts. Outlines of slabs with their blind holes, and both
// legs of every angle with its ends, holes and slots, are built again from
// printed numbers and laid over sections of the exact solids.
func TestPartsRebuiltFromPrint(t *testing.T) {
	judge.Need(t, "pdftotext")
	for _, p := range presets.All() {
		_, b := presetBuild(t, p, "A3")
		sheets, err := sheet.Set(b)
		if err != nil {
			t.Fatal(err)
		}
		angles, slabs, pilots, works := 0, 0, 0, 0
		for _, part := range b.Design.Parts {
			if b.Design.Alike(part)[0] != part {
				continue
			}
			switch {
			case part.Angle != nil:
				angles++
				rebuildAngle(t, part, printed(t, sheets, "angle-"+fileStem(part.ID)))
			case part.Slab != nil:
				slabs++
				text := printed(t, sheets, "slab-"+fileStem(part.ID))
				pilots += rebuildSlab(t, part, text)
				works += rebuildWorks(t, part, text)
			}
		}
		if p.Name == "studio" && works < 2 {
			t.Errorf("%d grooves and pockets rebuilt", works)
		}
		if angles < 3 || slabs < 2 || pilots < 4 {
			t.Errorf("%s: only %d angles, %d slabs and %d blind holes rebuilt", p.Name, angles, slabs, pilots)
		}
	}
}

// printed is what poppler reads from the sheets of a part.
func printed(t *testing.T, sheets []drawing.Sheet, name string) string {
	t.Helper()
	var own []drawing.Sheet
	for _, s := range sheets {
		_, after, _ := strings.Cut(s.Name, "-") // behind its number
		if after == name || strings.HasPrefix(after, name+"-top") || strings.HasPrefix(after, name+"-under") || strings.HasPrefix(after, name+"-edge") || strings.HasPrefix(after, name+"-details") {
			own = append(own, s)
		}
	}
	if len(own) == 0 {
		t.Fatalf("no sheet %s", name)
	}
	pdf, err := render.PDF(own, render.Meta{Title: name})
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "part.pdf")
	if err := os.WriteFile(file, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	return judge.Run(t, "pdftotext", "-layout", file, "-")
}

func mm(t *testing.T, s string) unit.Length {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return unit.Length(v)
}

var (
	printedBar    = regexp.MustCompile(`section +L(\d+)x(\d+)x(\d+)`)
	printedLength = regexp.MustCompile(`net length +([\d.]+)`)
	printedHole   = regexp.MustCompile(`\b([WS]\d+) +([\d.]+) +([\d.]+) (?:Ø([\d.]+)|slot ([\d.]+) x ([\d.]+) (across|along))`)
	printedCorner = regexp.MustCompile(`(?m)\b(\d+) +([-\d.]+) +([-\d.]+) +[\d.]+°`)
	printedPilot  = regexp.MustCompile(`\bP\d+ +([-\d.]+) +([-\d.]+) +([\d.]+) +([\d.]+) `)
)

// rebuildAngle makes both legs of a bar from its sheet.
func rebuildAngle(t *testing.T, p *model.Part, text string) {
	a := p.Angle
	bar, length := printedBar.FindStringSubmatch(text), printedLength.FindStringSubmatch(text)
	if bar == nil || length == nil {
		t.Errorf("%s: section or length not printed", p.ID)
		return
	}
	left, right := printedMitres(t, p.ID, text)
	leg, thick, long := mm(t, bar[1]), mm(t, bar[3]), mm(t, length[1])
	depth := 0.3 * thick // below the outer faces
	legs := map[string]geom.Region{"W": geom.Rect(geom.V(-left*depth, -leg), geom.V(long+right*depth, 0)), "S": geom.Polygon(geom.V(0, 0), geom.V(-left*leg, -leg), geom.V(long+right*leg, -leg), geom.V(long, 0))}
	seen := map[string]bool{}
	for _, h := range printedHole.FindAllStringSubmatch(text, -1) {
		if seen[h[1]] {
			continue
		}
		seen[h[1]] = true
		k := h[1][:1]
		legs[k] = legs[k].Minus(printedShape(t, h))
	}
	if len(seen) != len(a.Holes) {
		t.Errorf("%s: %d holes printed, %d drilled", p.ID, len(seen), len(a.Holes))
	}
	solid := p.Bodies[0].Solid
	pose := a.Pose()
	u := geom.V(1, 0).Turn(pose.Turn)
	wall := solid.Cut(geom.Line{P: pose.Plan(geom.V(0, -depth)), D: u})
	down := geom.Pose{At: geom.V(0, a.Seat).Up(0)}
	if a.LegUp {
		if !strings.Contains(text, "wall leg up") {
			t.Errorf("%s: the sheet does not say that the wall leg stands up", p.ID)
		}
		legs["W"] = legs["W"].Place(geom.Pose{Turn: math.Pi}).Mirror()
		down.At = geom.V(0, a.Seat-thick).Up(0)
	} else if !strings.Contains(text, "wall leg down") {
		t.Errorf("%s: the sheet does not say that the wall leg hangs down", p.ID)
	}
	overlaid(t, p.ID+", wall leg", legs["W"].Place(down), wall)
	seat := solid.At(a.Seat - depth)
	overlaid(t, p.ID+", seat leg", legs["S"].Place(geom.Pose{At: pose.At.Flat().Up(0), Turn: pose.Turn}), seat)
	for _, out := range []unit.Length{1, leg - 2*thick} { // both ends of the cut, near heel and toe
		for _, end := range []struct{ x, way unit.Length }{{-left * out, -1}, {long + right*out, 1}} {
			in, off := geom.V(end.x-end.way*3*rounding, -out), geom.V(end.x+end.way*3*rounding, -out)
			if !seat.Contains(pose.Plan(in)) || seat.Contains(pose.Plan(off)) {
				t.Errorf("%s: the seat leg does not end at %.1f, %.1f from the heel", p.ID, float64(end.x), float64(out))
			}
		}
	}
}

var printedMitre = regexp.MustCompile(`([\d.]+)° off square, (toe|heel) longer|(square)`)

// printedMitres is how much longer a bar gets at both ends for each millimetre from
// its heel.
func printedMitres(t *testing.T, name, text string) (left, right unit.Length) {
	t.Helper()
	if strings.Contains(text, "both sawn square") {
		return 0, 0
	}
	words := strings.Join(strings.Fields(text), " ")
	i := strings.Index(words, " ends A ")
	if i < 0 {
		t.Fatalf("%s: the sheet does not say how its ends are cut", name)
	}
	found := printedMitre.FindAllStringSubmatch(words[i:], 2)
	var slope [2]unit.Length
	for k, f := range found {
		if f[3] != "" {
			continue
		}
		slope[k] = unit.Length(math.Tan(float64(mm(t, f[1])) * math.Pi / 180))
		if f[2] == "heel" {
			slope[k] = -slope[k]
		}
	}
	return slope[0], slope[1]
}

// printedShape is a hole or slot as printedHole finds it.
func printedShape(t *testing.T, h []string) geom.Region {
	at := geom.V(mm(t, h[2]), -mm(t, h[3]))
	if h[4] != "" {
		return geom.Circle(at, mm(t, h[4])/2, 0.01)
	}
	wide, run := mm(t, h[5]), mm(t, h[6])
	way := geom.V((run-wide)/2, 0)
	if h[7] == "across" {
		way = geom.V(0, (run-wide)/2)
	}
	return geom.Slot(at.Sub(way), at.Add(way), wide, 0.01)
}

// rebuildSlab makes the outline of a slab from its corners and drills its blind
// holes, and gives how many there are.
func rebuildSlab(t *testing.T, p *model.Part, text string) int {
	var outline []geom.Vec
	for _, c := range printedCorner.FindAllStringSubmatch(text, -1) {
		if n, _ := strconv.Atoi(c[1]); n == len(outline)+1 {
			outline = append(outline, geom.V(mm(t, c[2]), -mm(t, c[3])))
		}
	}
	if len(outline) != len(p.Slab.Corners) {
		t.Errorf("%s: %d corners printed of %d", p.ID, len(outline), len(p.Slab.Corners))
		return 0
	}
	for i, j := 0, len(outline)-1; i < j; i, j = i+1, j-1 { // clockwise on the sheet
		outline[i], outline[j] = outline[j], outline[i]
	}
	solid := p.Slab.Own
	thick := p.Slab.Thickness
	top := solid.At(thick * 0.6)
	rebuilt := geom.Polygon(outline...)
	front := max(outline[0].Y, outline[len(outline)-1].Y) + 60 // a natural edge swings about the straight line
	stray := func(piece geom.Region) bool {
		lo, _ := piece.Bounds()
		return 2*float64(piece.Area()) > 2*rounding*float64(piece.Perimeter()) && !(p.Slab.Front().Waney && lo.Y < front)
	}
	for _, gone := range rebuilt.Minus(top).Pieces() {
		if stray(gone) && !worked(p.Slab, gone) {
			t.Errorf("%s: the solid lacks %.0f mm² of the printed outline", p.ID, float64(gone.Area()))
		}
	}
	for _, more := range top.Minus(rebuilt).Pieces() {
		if stray(more) {
			t.Errorf("%s: the solid goes %.0f mm² beyond the printed outline", p.ID, float64(more.Area()))
		}
	}
	n := 0
	for _, h := range printedPilot.FindAllStringSubmatch(text, -1) {
		at, dia, deep := geom.V(mm(t, h[1]), -mm(t, h[2])), mm(t, h[3]), mm(t, h[4])
		n++
		inside, below := solid.At(deep-0.5), solid.At(deep+0.5)
		for _, way := range []geom.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
			in, out := at.Add(way.Mul(float64(dia/2)-2*rounding)), at.Add(way.Mul(float64(dia/2)+2*rounding))
			if inside.Contains(in) || !inside.Contains(out) || !below.Contains(in) {
				t.Errorf("%s: no blind hole Ø%g, %g deep, at %v in the solid", p.ID, float64(dia), float64(deep), at)
				break
			}
		}
	}
	return n
}

// worked tells whether a hole, groove or bore of a slab takes a piece away.
func worked(s *model.SlabPart, gone geom.Region) bool {
	c := gone.Centroid()
	for _, f := range s.Features {
		if f.Outline.Grow(0.2, 0.01).Contains(c) || f.Kind == model.Bore {
			return true
		}
	}
	return false
}

// overlaid lays two regions over each other: what is in one of them only is as thin
// as rounding makes it.
func overlaid(t *testing.T, what string, rebuilt, solid geom.Region) {
	t.Helper()
	if off, most := float64(rebuilt.Xor(solid).Area()), rounding*float64(solid.Perimeter()); off > most {
		t.Errorf("%s: %.0f mm² differ between print and solid, %.0f at most by rounding", what, off, most)
	}
}
