package cmd

import (
	"bytes"
	"math"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/sheet"
	"slabwright/model"
	"slabwright/model/report"
	"slabwright/presets"
)

// presetBuild takes a preset's own job file through the line of a build.
func presetBuild(t *testing.T, p model.Preset, paper string) (*tool, report.Build) {
	t.Helper()
	var out, complaints bytes.Buffer
	line := &tool{out: &out, err: &complaints, presets: presets.All()}
	b, ok := line.whole(filepath.Join("..", "presets", p.Name))
	if !ok {
		t.Fatalf("the job of %s cannot be read: %s", p.Name, complaints.String())
	}
	b.Job.Show.Paper = paper
	return line, b
}

// Every sheet of every preset, on usual papers, is sound, names the scale that
// it is drawn at, stays on its paper and can be read.
func TestEverySheet(t *testing.T) {
	for _, p := range presets.All() {
		for _, paper := range []string{"A3", "A4"} {
			t.Run(p.Name+" "+paper, func(t *testing.T) {
				t.Parallel()
				_, b := presetBuild(t, p, paper)
				sheets, err := sheet.Set(b)
				if err != nil {
					t.Fatal(err)
				}
				if len(sheets) < 5 {
					t.Fatalf("%d sheets only", len(sheets))
				}
				for _, s := range sheets {
					if err := drawing.Sound(s); err != nil {
						t.Error(err)
					}
					canBeRead(t, s)
					namesItsScale(t, s)
					staysOnPaper(t, s)
					readsUpright(t, s)
				}
			})
		}
	}
}

// canBeRead: nothing that is written is touched or crossed by anything else
// (ISO 129-1: figures are not crossed or separated by lines).
func canBeRead(t *testing.T, s drawing.Sheet) {
	for _, c := range drawing.Overlaps(s) {
		t.Errorf("sheet %s: %v", s.Name, c)
	}
}

var scaleText = regexp.MustCompile(`(\d+:\d+)$`)

// namesItsScale: the scale in the title block is that of a view of the sheet; a
// sheet without views gives none (ISO 5455: the scale of a sheet stands in its
// title block, others beside their views).
func namesItsScale(t *testing.T, s drawing.Sheet) {
	used := map[string]bool{}
	for _, text := range texts(s.Items) {
		if m := scaleText.FindString(text.String); m != "" && text.Bold {
			used[m] = true
		}
	}
	if scaleText.MatchString(s.Scale) && !used[s.Scale] || !scaleText.MatchString(s.Scale) && len(used) > 0 {
		t.Errorf("sheet %s: the title block says %q, the views %v", s.Name, s.Scale, used)
	}
}

// staysOnPaper: everything lies within the trimmed sheet, and the file has a
// name without spaces.
func staysOnPaper(t *testing.T, s drawing.Sheet) {
	if strings.Contains(s.Name, " ") || s.Title == "" {
		t.Errorf("sheet %q, title %q", s.Name, s.Title)
	}
	if b := drawing.Bounds(s.Items); !s.Size.Paper().Holds(b) {
		t.Errorf("sheet %s leaves its paper: %v", s.Name, b)
	}
}

// readsUpright: all lettering is read from below or from the right (ISO 129-1),
// up to 10 degrees left of the vertical.
func readsUpright(t *testing.T, s drawing.Sheet) {
	for _, x := range texts(s.Items) {
		if d := x.Turn.Degrees(); math.Mod(d+360+80.01, 360) > 180.02 {
			t.Errorf("sheet %s: %q is turned by %.1f degrees", s.Name, x.String, d)
		}
	}
}

// texts gives all lettering of items.
func texts(items []drawing.Item) []drawing.Text {
	var out []drawing.Text
	for _, it := range items {
		switch x := it.(type) {
		case drawing.Text:
			out = append(out, x)
		case drawing.Group:
			out = append(out, texts(x.Items)...)
		}
	}
	return out
}

// Two builds of a job give the same bytes, drawings included.
func TestBuildsRepeat(t *testing.T) {
	for _, p := range presets.All() {
		t.Run(p.Name, func(t *testing.T) {
			t.Parallel()
			var sets [2]fileSet
			for i := range sets {
				line, b := presetBuild(t, p, "A3")
				files, err := line.files(b, true)
				if err != nil {
					t.Fatal(err)
				}
				sets[i] = files
			}
			if len(sets[0]) != len(sets[1]) {
				t.Fatalf("%d files, then %d", len(sets[0]), len(sets[1]))
			}
			if n := len(sets[0]["drawings.pdf"]); n < 50_000 || n > 2_000_000 {
				t.Errorf("drawings.pdf has %d bytes: want less than 2 MB, to be sent about", n)
			}
			for name, data := range sets[0] {
				if !bytes.Equal(data, sets[1][name]) {
					t.Errorf("%s differs between two builds", name)
				}
			}
		})
	}
}
