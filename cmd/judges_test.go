package cmd

import (
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slabwright/presets"
	"slabwright/testdata/judge"
)

// built builds a preset into a folder of the test.
func built(t *testing.T, name string) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), name)
	if out, errs, code := run(t, "build", "../presets/"+name, "-o", dir, "--quiet"); code != exitFine {
		t.Fatalf("exit %d\n%s%s", code, out, errs)
	}
	return dir
}

// TestModelsByAdmesh: admesh finds nothing to mend in any part of any preset,
// and agrees on the volume with the analytic one of report.json. Parts with a
// natural edge are bulged in the models and may be a hundredth larger.
func TestModelsByAdmesh(t *testing.T) {
	judge.Need(t, "admesh")
	for _, p := range presets.All() {
		dir := built(t, p.Name)
		var report struct {
			Parts []struct {
				ID     string  `json:"id"`
				Volume float64 `json:"volume_mm3"`
			} `json:"parts"`
		}
		readJSON(t, filepath.Join(dir, "report.json"), &report)
		if len(report.Parts) < 4 {
			t.Fatalf("%s: %d parts", p.Name, len(report.Parts))
		}
		for _, part := range report.Parts {
			a := judge.ReadAdmesh(t, filepath.Join(dir, "models", fileStem(part.ID)+".stl"))
			if !a.Sound() {
				t.Errorf("%s, %s: %+v", p.Name, part.ID, a)
			}
			allowed := 2e-5 // float32 sums of admesh
			if strings.Contains(part.ID, "worktop") {
				allowed = 0.01
			}
			if off := math.Abs(a.Volume/part.Volume - 1); off > allowed {
				t.Errorf("%s, %s: admesh %.0f mm3, report %.0f mm3", p.Name, part.ID, a.Volume, part.Volume)
			}
		}
	}
}

// TestAssemblyByAssimp: assimp reads 3MF and GLB of every preset; what it
// writes as STL has the volume of all parts, in millimetres and in metres.
func TestAssemblyByAssimp(t *testing.T) {
	judge.Need(t, "assimp")
	judge.Need(t, "admesh")
	for _, p := range presets.All() {
		dir := built(t, p.Name)
		whole := judge.ReadAdmesh(t, filepath.Join(dir, "models", "assembly.stl")).Volume
		for file, scale := range map[string]float64{"assembly.3mf": 1, "assembly.glb": 1e-9} {
			a := judge.ReadAdmesh(t, judge.ToSTL(t, filepath.Join(dir, "models", file)))
			if off := math.Abs(a.Volume/(whole*scale) - 1); off > 1e-4 {
				t.Errorf("%s, %s: volume %g, the STL has %g", p.Name, file, a.Volume, whole)
			}
		}
	}
}

// TestDrawingsByPoppler: the PDF of every preset is sound, has the page size of
// its paper, embeds its fonts, and its text is found again.
func TestDrawingsByPoppler(t *testing.T) {
	for _, program := range []string{"qpdf", "pdfinfo", "pdffonts", "pdftotext"} {
		judge.Need(t, program)
	}
	for _, p := range presets.All() {
		pdf := filepath.Join(built(t, p.Name), "drawings.pdf")
		if out := judge.Run(t, "qpdf", "--check", pdf); !strings.Contains(out, "No syntax or stream encoding errors") {
			t.Errorf("%s: qpdf: %s", p.Name, out)
		}
		info := judge.Run(t, "pdfinfo", "-l", "99", pdf)
		size := regexp.MustCompile(`Page +\d+ size: +([\d.]+) x ([\d.]+) pts`)
		pages := size.FindAllStringSubmatch(info, -1)
		if len(pages) < 8 {
			t.Errorf("%s: %d pages", p.Name, len(pages))
		}
		for _, m := range pages {
			w, h := number(t, m[1])/72*25.4, number(t, m[2])/72*25.4
			long, short := max(w, h), min(w, h)
			a3 := math.Abs(long-420) < 0.05 && math.Abs(short-297) < 0.05 // ISO 216
			a4 := math.Abs(long-297) < 0.05 && math.Abs(short-210) < 0.05 // templates
			if !a3 && !a4 {
				t.Errorf("%s: a page of %.2f x %.2f mm", p.Name, w, h)
			}
		}
		text := judge.Run(t, "pdftotext", "-layout", pdf, "-")
		for _, want := range []string{"Ø", "worktop", "European", "EN 10056-1", "Do not scale"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not found in the PDF's text", p.Name, want)
			}
		}
		for _, line := range strings.Split(judge.Run(t, "pdffonts", pdf), "\n")[2:] {
			if f := strings.Fields(line); len(f) > 5 && f[len(f)-5] != "yes" {
				t.Errorf("%s: font not embedded: %s", p.Name, line)
			}
		}
	}
}

// TestSheetsByRsvg: every SVG is well-formed, in millimetres, and rsvg-convert
// draws it.
func TestSheetsByRsvg(t *testing.T) {
	judge.Need(t, "rsvg-convert")
	dir := built(t, "studio")
	files, err := filepath.Glob(filepath.Join(dir, "sheets", "*.svg"))
	if err != nil || len(files) < 10 {
		t.Fatalf("%d sheets, %v", len(files), err)
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		d := xml.NewDecoder(strings.NewReader(string(data)))
		for {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Errorf("%s: %v", filepath.Base(f), err)
				break
			}
		}
		if !regexp.MustCompile(`width="(420|297|210)mm"`).Match(data[:600]) { // A3, A4 lying and standing
			t.Errorf("%s is not as wide as its paper: %s", filepath.Base(f), data[:200])
		}
		png := filepath.Join(dir, "x.png")
		judge.Run(t, "rsvg-convert", "-o", png, f)
		if info, err := os.Stat(png); err != nil || info.Size() < 5000 {
			t.Errorf("%s: rsvg-convert drew nothing: %v", filepath.Base(f), err)
		}
	}
}

func readJSON(t *testing.T, file string, to any) {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, to); err != nil {
		t.Fatal(err)
	}
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
