package cmd

import (
	"math"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
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

// presetNamed is a ready design.
func presetNamed(t *testing.T, name string) model.Preset {
	t.Helper()
	for _, p := range presets.All() {
		if p.Name == name {
			return p
		}
	}
	t.Fatalf("no preset %q", name)
	return model.Preset{}
}

// drawnAs draws the set of a preset as another job would have it.
func drawnAs(t *testing.T, name, paper, stand string) []drawing.Sheet {
	t.Helper()
	_, b := presetBuild(t, presetNamed(t, name), paper)
	b.Job.Show.Stand = stand
	sheets, err := sheet.Set(b)
	if err != nil {
		t.Fatal(err)
	}
	return sheets
}

// byPurpose are sheets whose paper is given by what they are for.
func byPurpose(s drawing.Sheet) bool {
	return strings.Contains(s.Name, "-template") || strings.Contains(s.Name, "-labels")
}

// TestSheetsOnOtherPapers: paper of every size (ISO 216) stands or lies as the job
// says, and can be read. Scales of ISO 5455 grow with it.
func TestSheetsOnOtherPapers(t *testing.T) {
	for _, c := range []struct{ preset, paper, stand string }{
		{"studio", "A1", "lying"}, {"studio", "A2", "upright"}, {"studio", "A3", "upright"}, {"studio", "A4", "lying"},
		{"corner", "A3", "upright"}, {"corner", "A4", "lying"}, {"alcove", "A2", "lying"}, {"alcove", "A4", "upright"},
	} {
		t.Run(strings.Join([]string{c.preset, c.paper, c.stand}, " "), func(t *testing.T) {
			t.Parallel()
			for _, s := range drawnAs(t, c.preset, c.paper, c.stand) {
				canBeRead(t, s)
				namesItsScale(t, s)
				staysOnPaper(t, s)
				if byPurpose(s) {
					continue
				}
				if m := scaleText.FindString(s.Scale); m != "" && len(m) > len("1:50") {
					t.Errorf("sheet %s is drawn at %s", s.Name, m)
				}
				if lies := s.Size.Width > s.Size.Height; s.Size.Name != c.paper || lies != (c.stand == "lying") {
					t.Errorf("sheet %s is %s, %v x %v", s.Name, s.Size.Name, s.Size.Width, s.Size.Height)
				}
			}
		})
	}
}

// TestScalesGrowWithThePaper: the plan of the corner office, 2.8 m wide, is drawn at
// 1:20 on A3 and larger on A2 and A1.
func TestScalesGrowWithThePaper(t *testing.T) {
	scale := map[string]string{}
	for _, paper := range []string{"A4", "A3", "A1"} {
		for _, s := range drawnAs(t, "corner", paper, "lying") {
			if strings.HasSuffix(s.Name, "-plan") {
				scale[paper] = s.Scale
			}
		}
	}
	if scale["A1"] == scale["A3"] || scale["A3"] == scale["A4"] {
		t.Errorf("the plan is drawn at %v", scale)
	}
}

// strokes gathers what a sheet is drawn with.
type strokes struct {
	widths []unit.Length
	inks   []drawing.Ink
}

func (p *strokes) Begin(string, string) {}
func (p *strokes) End()                 {}
func (p *strokes) Lines(_ [][]geom.Vec, _ bool, s drawing.Stroke) {
	p.widths, p.inks = append(p.widths, s.Width), append(p.inks, s.Ink)
}
func (p *strokes) Arc(_ geom.Vec, _ unit.Length, _, _ unit.Angle, s drawing.Stroke) {
	p.widths, p.inks = append(p.widths, s.Width), append(p.inks, s.Ink)
}
func (p *strokes) Fill(_ [][]geom.Vec, k drawing.Ink) { p.inks = append(p.inks, k) }
func (p *strokes) Write(x drawing.Text)               { p.inks = append(p.inks, x.Ink) }

// series are the widths of ISO 128-2:2020: 0.13 to 2 in steps of the root of two.
var series = []unit.Length{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2}

// TestLineWork: every line of a set has a width of the series; the views of a sheet
// use two of them, wide to narrow as 2 to 1 (0.35 to 0.18 in the series' figures).
func TestLineWork(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		for _, s := range drawnAs(t, "studio", paper, "") {
			var p strokes
			drawing.Plot(s, &p)
			for _, w := range p.widths {
				if !slices.ContainsFunc(series, func(x unit.Length) bool { return math.Abs(float64(x-w)) < 1e-9 }) {
					t.Fatalf("%s, sheet %s: a line %v wide", paper, s.Name, w)
				}
			}
			var views strokes
			for _, it := range s.Items {
				if g, ok := it.(drawing.Group); ok && !strings.HasPrefix(g.ID, "sheet-") {
					drawing.Plot(drawing.Sheet{Items: []drawing.Item{g}}, &views)
				}
			}
			if len(views.widths) == 0 || byPurpose(s) {
				continue
			}
			widths := slices.Clone(views.widths)
			slices.Sort(widths)
			if widths = slices.Compact(widths); len(widths) > 3 {
				t.Errorf("%s, sheet %s: views in %d widths: %v", paper, s.Name, len(widths), widths)
			}
			if wide, narrow := slices.Max(widths), slices.Min(widths); wide > narrow && wide/narrow < 1.9 {
				t.Errorf("%s, sheet %s: wide %v, narrow %v", paper, s.Name, wide, narrow)
			}
		}
	}
}

// TestBlackSetsHoldNoColour: a job with a failing check marks it red; in black
// nothing coloured is left, in SVG nor, as qpdf opens it, in PDF, and as many words
// stand on the sheets.
func TestBlackSetsHoldNoColour(t *testing.T) {
	_, b := presetBuild(t, presetNamed(t, "corner"), "A3")
	for i := range b.Findings {
		if b.Findings[i].At != nil {
			b.Findings[i].Status = "fail"
			break
		}
	}
	coloured := regexp.MustCompile(`#([0-9a-fA-F]{2})([0-9a-fA-F]{2})([0-9a-fA-F]{2})`)
	colours := map[string]int{}
	words := map[string]int{}
	var black []drawing.Sheet
	for _, ink := range []string{"colour", "black"} {
		b.Job.Show.Ink = ink
		sheets, err := sheet.Set(b)
		if err != nil {
			t.Fatal(err)
		}
		black = sheets
		for _, s := range sheets {
			words[ink] += len(texts(s.Items))
			svg, err := render.SVG(s)
			if err != nil {
				t.Fatal(err)
			}
			for _, m := range coloured.FindAllStringSubmatch(string(svg), -1) {
				if m[1] != m[2] || m[2] != m[3] {
					colours[ink]++
				}
			}
		}
	}
	if colours["colour"] == 0 || colours["black"] != 0 || words["black"] != words["colour"] {
		t.Errorf("coloured things %v, words %v", colours, words)
	}
	judge.Need(t, "qpdf")
	dir := t.TempDir()
	pdf, err := render.PDF(black, render.Meta{Title: "black"})
	if err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(dir, "black.pdf"), string(pdf))
	open, err := exec.Command("qpdf", "--qdf", "--object-streams=disable", filepath.Join(dir, "black.pdf"), "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range regexp.MustCompile(`(?m)(?:^| )([0-9.]+) ([0-9.]+) ([0-9.]+) (?:rg|RG)\b`).FindAllStringSubmatch(string(open), -1) {
		if m[1] != m[2] || m[2] != m[3] {
			t.Fatalf("the PDF sets the colour %v", m[1:])
		}
	}
}

// TestSymbolOfTheProjection: the title block of every sheet shows the sign of the
// job's projection (ISO 5456-2): the small end of the cone points to its round view,
// which stands right of it in first angle and left of it in third.
func TestSymbolOfTheProjection(t *testing.T) {
	for _, projection := range []string{"first", "third"} {
		_, b := presetBuild(t, presetNamed(t, "alcove"), "A3")
		b.Job.Show.Projection = projection
		sheets, err := sheet.Set(b)
		if err != nil {
			t.Fatal(err)
		}
		seen := 0
		for _, s := range sheets {
			cone, eye, ok := symbolOf(s.Items)
			if !ok {
				continue
			}
			seen++
			if left := eye < cone; left != (projection == "third") {
				t.Errorf("%s angle: sheet %s has the cone at %v and its round view at %v", projection, s.Name, cone, eye)
			}
		}
		if seen < len(sheets)/2 {
			t.Errorf("%d of %d sheets have the sign", seen, len(sheets))
		}
	}
}

// symbolOf finds the cone, a closed line of four corners, and two circles about one
// middle beside it.
func symbolOf(items []drawing.Item) (cone, eye unit.Length, ok bool) {
	for _, it := range items {
		g, is := it.(drawing.Group)
		if !is {
			continue
		}
		var rounds []drawing.Circle
		for _, x := range g.Items {
			if c, is := x.(drawing.Circle); is {
				rounds = append(rounds, c)
			}
		}
		for _, x := range g.Items {
			l, is := x.(drawing.Polyline)
			if !is || !l.Closed || len(l.Points) != 4 || len(rounds) != 2 || rounds[0].Centre != rounds[1].Centre {
				continue
			}
			if l.Points[0].Y != l.Points[1].Y && l.Points[0].X != l.Points[1].X { // slanted: no frame
				return (l.Points[0].X + l.Points[1].X) / 2, rounds[0].Centre.X, true
			}
		}
		if cone, eye, ok = symbolOf(g.Items); ok {
			return cone, eye, true
		}
	}
	return 0, 0, false
}
