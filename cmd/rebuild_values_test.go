package cmd

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"unicode"

	"slabwright/drawing/sheet"
	"slabwright/model"
	"slabwright/model/job"
	"slabwright/model/report"
	"slabwright/model/unit"
	"slabwright/presets"
	"slabwright/testdata/judge"
)

// needed is what a piece of work on a part takes: the values without which
// nobody can make it.
type needed struct {
	kind, name string
	values     []string
}

// TestEveryNeededValueIsPrinted: for every cut, hole, groove, pocket and end of
// every part the values that make it follow from its geometry, and poppler reads
// each of them from the part's own sheets. Presets and jobs that nobody has
// thought of, in their own units.
func TestEveryNeededValueIsPrinted(t *testing.T) {
	judge.Need(t, "pdftotext")
	seen := map[string]int{}
	for _, p := range presets.All() {
		_, b := presetBuild(t, p, "A3")
		valuesPrinted(t, p.Name, b, seen)
	}
	for seed := uint64(1); seed <= 3; seed++ {
		if b, ok := randomBuild(t, seed); ok {
			valuesPrinted(t, fmt.Sprintf("random job %d", seed), b, seen)
		}
	}
	for _, kind := range []string{"corner", "end", "round hole", "slot", string(model.Through), string(model.Groove), string(model.Pilot), string(model.Bore)} {
		if seen[kind] < 3 {
			t.Errorf("only %d of %s looked for", seen[kind], kind)
		}
	}
	for _, kind := range slices.Sorted(maps.Keys(seen)) {
		t.Logf("%s: %d", kind, seen[kind])
	}
}

// randomBuild is a random job up to its findings; false when its room is not
// determined.
func randomBuild(t *testing.T, seed uint64) (report.Build, bool) {
	t.Helper()
	j, mistakes := job.Read("job.yaml", []byte(randomJob(seed)), presets.All())
	if len(mistakes) > 0 {
		t.Fatal(job.Text(mistakes))
	}
	var complaints bytes.Buffer
	line := &tool{out: &complaints, err: &complaints, presets: presets.All()}
	room, ok := line.room(j)
	if !ok {
		return report.Build{}, false
	}
	return line.design(j, room)
}

func valuesPrinted(t *testing.T, job string, b report.Build, seen map[string]int) {
	t.Helper()
	sheets, err := sheet.Set(b)
	if err != nil {
		t.Fatal(err)
	}
	style := b.Job.Show.Style()
	for _, p := range b.Design.Parts {
		var list []needed
		var name string
		switch {
		case b.Design.Alike(p)[0] != p:
			continue
		case p.Slab != nil && len(p.Bodies) > 0:
			list, name = slabNeeds(p.Slab, style), "slab-"+fileStem(p.ID)
		case p.Angle != nil && len(p.Bodies) > 0:
			list, name = angleNeeds(p.Angle, style), "angle-"+fileStem(p.ID)
		default:
			continue
		}
		text := strings.Join(strings.Fields(printed(t, sheets, name)), " ")
		for _, n := range list {
			seen[n.kind]++
			for _, v := range n.values {
				if !holdsValue(text, v) {
					t.Errorf("%s: %s: %s %q: %s is not printed", job, p.ID, n.kind, n.name, v)
				}
			}
		}
	}
}

// slabNeeds lists what a slab takes: its corners, and of all work place, size
// and depth, from the datum edges.
func slabNeeds(s *model.SlabPart, style unit.Style) []needed {
	var out []needed
	add := func(kind, name string, values ...unit.Length) {
		out = append(out, needed{kind, name, written(style, values)})
	}
	add("thickness", "", s.Thickness)
	n := len(s.Edges)
	for i, e := range s.Edges {
		at := e.Start
		if e.Waney { // its course ends where the sides end
			course, _ := s.Course(i)
			at = course[0]
		} else if before := (i + n - 1) % n; s.Edges[before].Waney {
			course, _ := s.Course(before)
			at = course[len(course)-1]
		}
		add("corner", s.Corners[i], at.X, -at.Y)
	}
	for _, f := range s.Features {
		switch f.Kind {
		case model.Through:
			add(string(f.Kind), f.Name, f.At.X, -f.At.Y, f.Dia)
		case model.Pilot:
			add(string(f.Kind), f.Name, f.At.X, -f.At.Y, f.Dia, f.Depth)
		case model.Bore:
			add(string(f.Kind), f.Name, f.Height, f.Dia, f.Depth)
		case model.Groove:
			for _, q := range f.Path {
				add(string(f.Kind), f.Name, q.X, -q.Y, f.Dia, f.Depth)
			}
		case model.CutOut, model.Pocket:
			lo, hi := f.Outline.Bounds()
			add(string(f.Kind), f.Name, lo.X, hi.X, -lo.Y)
			if f.Kind == model.Pocket {
				add(string(f.Kind), f.Name, -hi.Y, f.Depth)
			}
		}
	}
	return out
}

// angleNeeds lists what a bar takes: its length, how its ends are cut, and of
// every hole place, size and way.
func angleNeeds(a *model.AnglePart, style unit.Style) []needed {
	out := []needed{{"length", "", written(style, []unit.Length{a.Length})}}
	for _, e := range []model.End{a.Left, a.Right} {
		n := needed{kind: "end", values: []string{"square"}}
		if e.Mitre != 0 {
			n = needed{kind: "mitre", values: []string{style.Number(max(e.Mitre, -e.Mitre).Degrees(), 1) + "°"}}
		}
		out = append(out, n)
	}
	for _, h := range a.Holes {
		v := written(style, []unit.Length{h.X, h.FromHeel})
		if h.Slot == 0 {
			out = append(out, needed{"round hole", h.Name, append(v, "Ø"+style.Length(h.Dia))})
			continue
		}
		way := "across"
		if h.Along {
			way = "along"
		}
		out = append(out, needed{"slot", h.Name, append(v, fmt.Sprintf("%s x %s %s", style.Length(h.Dia), style.Length(h.Dia+h.Slot), way))})
	}
	return out
}

func written(style unit.Style, values []unit.Length) []string {
	out := make([]string, len(values))
	for i, v := range values {
		out[i] = strings.TrimPrefix(style.Length(v), "-") // the side is told by the drawing, too
	}
	return out
}

// holdsValue tells whether a value stands in a text, not as part of another.
func holdsValue(text, value string) bool {
	for from := 0; ; {
		i := strings.Index(text[from:], value)
		if i < 0 {
			return false
		}
		i += from
		before, after := text[:i], text[i+len(value):]
		if !endsInNumber(before) && !beginsWithNumber(after) {
			return true
		}
		from = i + 1
	}
}

func endsInNumber(s string) bool {
	return s != "" && (unicode.IsDigit(rune(s[len(s)-1])) || strings.HasSuffix(s, ".") || strings.HasSuffix(s, ",") || strings.HasSuffix(s, "/"))
}

func beginsWithNumber(s string) bool {
	if s == "" {
		return false
	}
	if unicode.IsDigit(rune(s[0])) || s[0] == '/' {
		return true
	}
	return len(s) > 1 && (s[0] == '.' || s[0] == ',') && unicode.IsDigit(rune(s[1]))
}
