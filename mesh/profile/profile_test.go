package profile

import (
	"encoding/xml"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/presets"
	"slabwright/testdata/judge"
	"slabwright/testdata/sample"
)

type drawn struct {
	Width  string `xml:"width,attr"`
	Height string `xml:"height,attr"`
	Box    string `xml:"viewBox,attr"`
	Body   struct {
		Groups []struct {
			ID      string `xml:"id,attr"`
			Title   string `xml:"title"`
			Circles []struct {
				X float64 `xml:"cx,attr"`
				Y float64 `xml:"cy,attr"`
				R float64 `xml:"r,attr"`
			} `xml:"circle"`
			Paths []struct {
				D string `xml:"d,attr"`
			} `xml:"path"`
		} `xml:"g"`
	} `xml:"g"`
}

// TestProfilesAreTrue: for every slab of every preset the profile has the area
// of its face, one millimetre to the unit, and every round cut of that face as
// a circle at its distance from the right or left end; the underside is turned
// over.
func TestProfilesAreTrue(t *testing.T) {
	for _, p := range presets.All() {
		for _, part := range sample.Parts(t, "../..", p) {
			if part.Slab == nil {
				continue
			}
			for _, face := range []model.Face{model.TopFace, model.UnderFace} {
				t.Run(p.Name+"/"+part.ID+"/"+string(face), func(t *testing.T) { compare(t, part, face) })
			}
		}
	}
}

func compare(t *testing.T, part *model.Part, face model.Face) {
	var d drawn
	if err := xml.Unmarshal(SVG(part, face), &d); err != nil {
		t.Fatal(err)
	}
	if want := "0 0 " + strings.TrimSuffix(d.Width, "mm") + " " + strings.TrimSuffix(d.Height, "mm"); d.Box != want {
		t.Errorf("size %s x %s, but view box %s", d.Width, d.Height, d.Box)
	}
	outline := part.Slab.TopOutline()
	if face == model.UnderFace {
		outline = part.Slab.UnderOutline()
	}
	if got, want := area(t, d.Body.Groups[0].Paths[0].D), float64(outline.Area()); math.Abs(math.Abs(got)-want) > 1 || (got > 0) != (face == model.UnderFace) {
		t.Errorf("outline of %.1f mm2, want %.1f; turned over for the underside only", got, want)
	}
	lo, hi := outline.Bounds()
	want := map[string][3]float64{}
	for _, f := range part.Slab.Features {
		if f.Dia > 0 && f.Path == nil && f.Kind != model.Bore && (f.Kind == model.Through || f.Face == face) {
			x := f.At.X - lo.X
			if face == model.UnderFace {
				x = hi.X - f.At.X
			}
			want[string(f.Kind)+"-"+strings.ReplaceAll(f.Name, " ", "-")] = [3]float64{float64(x) + 10, float64(hi.Y-f.At.Y) + 10, float64(f.Dia) / 2}
		}
	}
	for _, g := range d.Body.Groups {
		for _, c := range g.Circles {
			w := want[g.ID]
			if max(math.Abs(c.X-w[0]), math.Abs(c.Y-w[1]), math.Abs(c.R-w[2])) > 0.001 {
				t.Errorf("%s at %v, want %v", g.ID, c, w)
			}
			delete(want, g.ID)
		}
		if !strings.Contains(g.Title, " mm") {
			t.Errorf("%s does not say how deep it is: %q", g.ID, g.Title)
		}
	}
	if len(want) > 0 {
		t.Errorf("missing: %v", want)
	}
}

// area inside a path, y downwards: negative for a loop that runs
// counter-clockwise as it is seen.
func area(t *testing.T, d string) float64 {
	t.Helper()
	var pts [][2]float64
	for _, m := range regexp.MustCompile(`[ML]([-0-9.]+) ([-0-9.]+)`).FindAllStringSubmatch(d, -1) {
		x, err := strconv.ParseFloat(m[1], 64)
		y, err2 := strconv.ParseFloat(m[2], 64)
		if err != nil || err2 != nil {
			t.Fatal(m)
		}
		pts = append(pts, [2]float64{x, y})
	}
	var sum float64
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		sum += (a[0]*b[1] - a[1]*b[0]) / 2
	}
	return sum
}

// TestSizeByRsvg: rsvg-convert takes the profile for as large as the slab with
// 10 mm around it.
func TestSizeByRsvg(t *testing.T) {
	judge.Need(t, "rsvg-convert")
	judge.Need(t, "pdfinfo")
	dir := t.TempDir()
	for _, part := range sample.Parts(t, "../..", presets.All()[0])[:1] {
		in, out := filepath.Join(dir, "in.svg"), filepath.Join(dir, "out.pdf")
		if err := os.WriteFile(in, SVG(part, model.TopFace), 0o644); err != nil {
			t.Fatal(err)
		}
		judge.Run(t, "rsvg-convert", "-f", "pdf", "-o", out, in)
		m := regexp.MustCompile(`Page size:\s*([0-9.]+) x ([0-9.]+) pts`).FindStringSubmatch(judge.Run(t, "pdfinfo", out))
		if m == nil {
			t.Fatal("pdfinfo tells no page size")
		}
		lo, hi := part.Slab.TopOutline().Bounds()
		for i, want := range []float64{float64(hi.X-lo.X) + 20, float64(hi.Y-lo.Y) + 20} {
			pt, err := strconv.ParseFloat(m[i+1], 64)
			if got := pt * 25.4 / 72; err != nil || math.Abs(got-want) > 0.05 {
				t.Errorf("side %d: %.2f mm, want %.2f", i, got, want)
			}
		}
	}
}
