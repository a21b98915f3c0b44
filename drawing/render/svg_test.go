package render_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"strconv"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

var update = flag.Bool("update", false, "write the golden files anew")

// small is a sheet whose SVG can be read by eye.
func small() drawing.Sheet {
	s := drawing.Sheet{Name: "01-small", Title: `Board "A" & B`, Size: drawing.A4, Scale: "1:5", Number: 1, Of: 2, Stamp: "NOT FOR THE SHOP"}
	g := drawing.Normal
	c := geom.V(100, 100)
	s.Add(drawing.Group{ID: "left angle", Title: "Left angle <1>", Items: []drawing.Item{
		drawing.Outline(drawing.Box(30, 30, 100, 20).Corners(), g.Outline()),
		drawing.Area{Loops: [][]geom.Vec{drawing.Box(40, 35, 10, 10).Corners(), drawing.Box(43, 38, 4, 4).Corners()}, Ink: drawing.Red},
	}}, drawing.Group{ID: "left-angle", Items: []drawing.Item{
		drawing.Circle{Centre: c, Radius: 10, Pen: g.Fine()},
		drawing.Arc{Centre: c, Radius: 20, From: 0, Sweep: 90 * unit.Degree, Pen: g.Fine().In(drawing.Grey)},
		drawing.Arc{Centre: c, Radius: 20, From: 0, Sweep: -270 * unit.Degree, Pen: g.Fine()},
		drawing.Line(geom.V(30, 60), geom.V(130, 60), g.Centre()),
	}}, drawing.Write(geom.V(80, 70), "I I", 5, drawing.Centre).Along(90*unit.Degree))
	return s
}

func TestSVGGolden(t *testing.T) {
	const path = "testdata/small.svg"
	got := mustSVG(t, small())
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// elements reads all start tags of a document and the text in it.
func elements(t *testing.T, doc []byte) (tags []xml.StartElement, text string) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(doc))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return tags, text
		}
		if err != nil {
			t.Fatal(err)
		}
		switch x := tok.(type) {
		case xml.StartElement:
			tags = append(tags, x.Copy())
		case xml.CharData:
			text += string(x)
		}
	}
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// Well-formed, in millimetres, ids unique, every reference met, texts in plain
// text.
func TestSVGStructure(t *testing.T) {
	for _, s := range append(set(), small()) {
		doc := mustSVG(t, s)
		tags, text := elements(t, doc)
		root := tags[0]
		if w := attr(root, "width"); w != trim(s.Size.Width)+"mm" {
			t.Errorf("%s: width %q", s.Size.Name, w)
		}
		if v := attr(root, "viewBox"); v != "0 0 "+trim(s.Size.Width)+" "+trim(s.Size.Height) {
			t.Errorf("%s: view box %q", s.Size.Name, v)
		}
		ids := map[string]bool{}
		for _, e := range tags {
			if id := attr(e, "id"); id != "" {
				if ids[id] || strings.ContainsAny(id, " <&") {
					t.Errorf("id %q is bad or there twice", id)
				}
				ids[id] = true
			}
			if ref := attr(e, "href"); ref != "" && !ids[strings.TrimPrefix(ref, "#")] {
				t.Errorf("%q leads nowhere", ref)
			}
		}
		if !strings.Contains(text, s.Title) {
			t.Errorf("%s: no title", s.Size.Name)
		}
		if s.Name == "03-slab-top" && !(ids["view-top"] && strings.Contains(text, "1200 +0 / -1") && strings.Contains(text, "300 ±0.5")) {
			t.Errorf("%s: groups or texts are missing", s.Size.Name)
		}
		if kb := len(doc) / 1024; kb > 150 {
			t.Errorf("%s: %d kB", s.Size.Name, kb)
		}
	}
}

func trim(v unit.Length) string { return strconv.FormatFloat(float64(v), 'g', -1, 64) }
