package render_test

import (
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/testdata/judge"
)

const quarter = 90 * unit.Degree

// rasters are programs that turn a sheet into pixels, with their resolution.
var rasters = []struct {
	name string
	dpi  float64
	draw func(t *testing.T, s drawing.Sheet) image.Image
}{
	{"pdftoppm", 300, func(t *testing.T, s drawing.Sheet) image.Image {
		out := filepath.Join(t.TempDir(), "page")
		judge.Run(t, "pdftoppm", "-r", "300", "-gray", "-png", "-singlefile", onDisk(t, "x.pdf", mustPDF(t, s)), out)
		return readPNG(t, out+".png")
	}},
	{"rsvg-convert", 300, func(t *testing.T, s drawing.Sheet) image.Image {
		out := filepath.Join(t.TempDir(), "page.png")
		judge.Run(t, "rsvg-convert", "-d", "300", "-p", "300", "-o", out, onDisk(t, "x.svg", mustSVG(t, s)))
		return readPNG(t, out)
	}},
	{"chromium", 288, func(t *testing.T, s drawing.Sheet) image.Image { // 3 pixels for each of 1/96 inch
		out := filepath.Join(t.TempDir(), "page.png")
		px := func(v unit.Length) string { return strconv.Itoa(int(math.Ceil(float64(v) * 96 / 25.4))) }
		judge.Run(t, "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--user-data-dir="+t.TempDir(),
			"--force-device-scale-factor=3", "--window-size="+px(s.Size.Width)+","+px(s.Size.Height),
			"--screenshot="+out, "file://"+onDisk(t, "x.svg", mustSVG(t, s)))
		return readPNG(t, out)
	}},
}

func readPNG(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	im, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return im
}

// probe walks along a straight way from p, to the right or up, and gives the
// middle and the width of the ink it meets, in mm from p.
type probe struct {
	im     image.Image
	perMM  float64
	height unit.Length
}

func (p probe) ink(from geom.Vec, length unit.Length, up bool) (middle, width float64) {
	n := int(float64(length) * p.perMM)
	x0, y0 := float64(from.X)*p.perMM, float64(p.height-from.Y)*p.perMM
	var sum, moment float64
	for i := range n {
		x, y := int(x0)+i, int(y0)
		at := float64(int(x0)+i) + 0.5 - x0
		if up {
			x, y = int(x0), int(y0)-i
			at = y0 - (float64(int(y0)-i) + 0.5)
		}
		g := color.GrayModel.Convert(p.im.At(x, y)).(color.Gray)
		dark := 1 - float64(g.Y)/255
		sum += dark
		moment += dark * at
	}
	return moment / sum / p.perMM, sum / p.perMM
}

// A print is true to scale: lines 100 mm apart in both directions, line widths
// of ISO 128-2 and letter heights of ISO 3098-1 measured in the raster of three
// independent programs.
func TestRasterIsTrue(t *testing.T) {
	fine := drawing.Normal.Fine()
	s := drawing.Sheet{Name: "x", Title: "x", Size: drawing.A4, Items: []drawing.Item{
		drawing.Line(geom.V(50, 40), geom.V(50, 200), fine), drawing.Line(geom.V(150, 40), geom.V(150, 200), fine),
		drawing.Line(geom.V(40, 50), geom.V(160, 50), fine), drawing.Line(geom.V(40, 150), geom.V(160, 150), fine),
	}}
	widths := []unit.Length{0.18, 0.25, 0.35, 0.5, 0.7}
	for i, w := range widths {
		x := 60 + 5*unit.Length(i)
		s.Add(drawing.Line(geom.V(x, 90), geom.V(x, 100), drawing.Pen{Width: w}))
	}
	heights := []unit.Length{2.5, 3.5, 5, 7}
	for i, h := range heights { // the full stroke of I is solid from foot to top
		s.Add(drawing.Write(geom.V(100+10*unit.Length(i), 90), "I", h, drawing.Centre))
	}
	for _, r := range rasters {
		t.Run(r.name, func(t *testing.T) {
			judge.Need(t, r.name)
			p := probe{r.draw(t, s), r.dpi / 25.4, s.Size.Height}
			near := func(what string, got, want, slack float64) {
				t.Helper()
				if !(math.Abs(got-want) <= slack) {
					t.Errorf("%s: %.3f mm, want %.3f", what, got, want)
				}
			}
			left, _ := p.ink(geom.V(45, 170), 10, false)
			right, _ := p.ink(geom.V(145, 170), 10, false)
			near("100 mm across", right-left+100, 100, 0.05)
			low, _ := p.ink(geom.V(80, 45), 10, true)
			high, _ := p.ink(geom.V(80, 145), 10, true)
			near("100 mm up", high-low+100, 100, 0.05)
			near("place across", left, 5, 0.05)
			near("place up", low, 5, 0.05)
			for i, w := range widths {
				_, got := p.ink(geom.V(58+5*unit.Length(i), 95), 4, false)
				near("line of "+trim(w), got, float64(w), 0.05)
			}
			for i, h := range heights {
				_, got := p.ink(geom.V(100+10*unit.Length(i), 88), h+4, true)
				near("letter of "+trim(h), got, float64(h), 0.08)
			}
		})
	}
}

// The SVG looks like the PDF: two programs, two formats, the same picture, cell
// by cell of a square millimetre.
func TestSVGLooksLikePDF(t *testing.T) {
	s := demo(drawing.A3, 1)
	judge.Need(t, "pdftoppm")
	judge.Need(t, "rsvg-convert")
	a := probe{rasters[0].draw(t, s), 300 / 25.4, s.Size.Height}
	b := probe{rasters[1].draw(t, s), 300 / 25.4, s.Size.Height}
	cell := func(p probe, x, y int) float64 {
		sum := 0.0
		for v := range 11 {
			for u := range 11 {
				g := color.GrayModel.Convert(p.im.At(int(float64(x)*p.perMM)+u, int(float64(y)*p.perMM)+v)).(color.Gray)
				sum += 1 - float64(g.Y)/255
			}
		}
		return sum / 121
	}
	var inkA, inkB, apart float64
	for y := range int(s.Size.Height) {
		for x := range int(s.Size.Width) {
			ca, cb := cell(a, x, y), cell(b, x, y)
			inkA, inkB, apart = inkA+ca, inkB+cb, max(apart, math.Abs(ca-cb))
		}
	}
	if math.Abs(inkA/inkB-1) > 0.03 || apart > 0.2 {
		t.Errorf("ink %.1f and %.1f mm2, a cell differs by %.2f", inkA, inkB, apart)
	}
}

// The words of a sheet can be read aloud from the picture itself: the outlines
// of the letters carry their text.
func TestSVGTextIsSearchable(t *testing.T) {
	_, text := elements(t, mustSVG(t, demo(drawing.A4, 1)))
	for _, want := range []string{"Do not scale. Work to figured sizes.", "natural edge, do not trim", "300 ±0.5"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in the text", want)
		}
	}
}
