package render_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/testdata/judge"
)

// onDisk writes a file for a program to judge.
func onDisk(t *testing.T, name string, b []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, b, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestPDFIsSound(t *testing.T) {
	out := judge.Run(t, "qpdf", "--check", onDisk(t, "set.pdf", mustPDF(t, set()...)))
	if !strings.Contains(out, "No syntax or stream encoding errors found") || strings.Contains(out, "WARNING") {
		t.Error(out)
	}
}

// One page a sheet, of its size (ISO 216), and a title in any script.
func TestPDFPages(t *testing.T) {
	out := judge.Run(t, "pdfinfo", "-f", "1", "-l", "9", onDisk(t, "set.pdf", mustPDF(t, set()...)))
	for _, want := range []string{`Title: +Print bench – č\n`, `Pages: +4\n`, `Page +1 size: +595\.276 x 841\.89 pts`,
		`Page +2 size: +1190\.55 x 841\.89 pts`, `Page +3 size: +1683\.78 x 1190\.55 pts`, `Page +4 size: +2383\.94 x 1683\.78 pts`} {
		if !regexp.MustCompile(want).MatchString(out) {
			t.Errorf("%q not in\n%s", want, out)
		}
	}
	if strings.Contains(out, "Date") {
		t.Errorf("the document knows a date:\n%s", out)
	}
}

func TestPDFFontsAreEmbedded(t *testing.T) {
	out := judge.Run(t, "pdffonts", onDisk(t, "set.pdf", mustPDF(t, set()...)))
	rows := strings.Split(strings.TrimSpace(out), "\n")[2:]
	if len(rows) != 2 {
		t.Errorf("want a regular and a bold font:\n%s", out)
	}
	for _, r := range rows {
		if !regexp.MustCompile(`yes +yes +yes`).MatchString(r) { // embedded, subset, unicode
			t.Error(r)
		}
	}
}

func TestPDFTextIsSearchable(t *testing.T) {
	const text = "Ø60 ±0.5° ½ × m² ≤ ≥ office fi AVATAR"
	s := drawing.Sheet{Name: "x", Size: drawing.A4, Items: []drawing.Item{
		drawing.Write(geom.V(30, 100), text, 3.5, drawing.Left),
		drawing.Write(geom.V(30, 150), "upright ⌀", 3.5, drawing.Left).Along(quarter),
	}}
	out := judge.Run(t, "pdftotext", onDisk(t, "x.pdf", mustPDF(t, s)), "-")
	for _, want := range []string{text, "upright ⌀"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q not found in %q", want, out)
		}
	}
}

// The width that the drawing reckons with is the width on paper, by the word
// boxes of another program.
func TestPDFTextWidth(t *testing.T) {
	for _, word := range []string{"1234567890", "AVATAR-WoTo", "office-fi-fl", "Ø±°½×²³≤≥äöü"} {
		const h = 20
		text := drawing.Write(geom.V(30, 100), word, h, drawing.Left)
		out := judge.Run(t, "pdftotext", "-bbox", onDisk(t, "x.pdf", mustPDF(t, drawing.Sheet{Size: drawing.A3, Items: []drawing.Item{text}})), "-")
		m := regexp.MustCompile(`<word xMin="([0-9.]+)" yMin="[0-9.]+" xMax="([0-9.]+)"`).FindStringSubmatch(out)
		if m == nil {
			t.Fatal(out)
		}
		x0, _ := strconv.ParseFloat(m[1], 64)
		x1, _ := strconv.ParseFloat(m[2], 64)
		x0, x1 = x0*25.4/72, x1*25.4/72
		if math.Abs(x0-30) > 0.01 || math.Abs(x1-x0-float64(text.Width())) > 0.1 { // 1/1000 em for each letter
			t.Errorf("%q runs from %.3f over %.3f mm, want 30 and %.3f", word, x0, x1-x0, float64(text.Width()))
		}
	}
}

// Bookmarks and page labels, read back by another program.
func TestPDFBookmarks(t *testing.T) {
	path := onDisk(t, "set.pdf", mustPDF(t, set()...))
	var doc struct {
		Outlines []struct {
			Title string `json:"title"`
			Page  int    `json:"destpageposfrom1"`
		} `json:"outlines"`
		Labels []struct {
			Index int            `json:"index"`
			Label map[string]any `json:"label"`
		} `json:"pagelabels"`
	}
	out := judge.Run(t, "qpdf", "--json", "--json-key=outlines", "--json-key=pagelabels", path)
	if err := json.Unmarshal([]byte(out), &doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.Outlines) != 4 || len(doc.Labels) != 4 {
		t.Fatalf("%+v", doc)
	}
	for i, o := range doc.Outlines {
		if want := fmt.Sprintf("%d  Front board, ash, natural edge", i+1); o.Title != want || o.Page != i+1 {
			t.Errorf("bookmark %+v", o)
		}
		if l := doc.Labels[i]; l.Index != i || l.Label["/P"] != "u:03-slab-top" {
			t.Errorf("label %+v", l)
		}
	}
}

// A line of 100 mm by the coordinates in the page: the current matrix turns
// millimetres into points of 1/72 inch.
func TestPDFLineIsExact(t *testing.T) {
	s := drawing.Sheet{Name: "x", Size: drawing.A3, Items: []drawing.Item{
		drawing.Line(geom.V(50, 60), geom.V(150, 60), drawing.Normal.Fine()),
		drawing.Line(geom.V(70, 20.25), geom.V(70, 120.25), drawing.Normal.Fine()),
	}}
	out := judge.Run(t, "qpdf", "--qdf", "--object-streams=disable", onDisk(t, "x.pdf", mustPDF(t, s)), "-")
	cm := regexp.MustCompile(`(?m)^ ?([0-9.]+) 0 0 ([0-9.]+) 0 0 cm`).FindStringSubmatch(out)
	lines := regexp.MustCompile(`([0-9.]+) ([0-9.]+) m ([0-9.]+) ([0-9.]+) l S`).FindAllStringSubmatch(out, -1)
	if cm == nil || len(lines) != 2 {
		t.Fatalf("matrix %v, lines %v", cm, lines)
	}
	num := func(s string) float64 { v, _ := strconv.ParseFloat(s, 64); return v }
	for i, l := range lines {
		dx := (num(l[3]) - num(l[1])) * num(cm[1]) / 72 * 25.4
		dy := (num(l[4]) - num(l[2])) * num(cm[2]) / 72 * 25.4
		if math.Abs(math.Hypot(dx, dy)-100) > 1e-4 {
			t.Errorf("line %d is %v mm long", i, math.Hypot(dx, dy))
		}
	}
}
