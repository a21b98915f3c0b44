package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/words"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/job"
	"slabwright/model/survey"
	"slabwright/presets"
)

// written gathers texts and boxes of the measuring sheets of a preset.
func written(p model.Preset, lang *words.Language) (texts []string, boxes []drawing.Rect) {
	var walk func(items []drawing.Item)
	walk = func(items []drawing.Item) {
		for _, it := range items {
			switch x := it.(type) {
			case drawing.Text:
				texts = append(texts, x.String)
			case drawing.Group:
				walk(x.Items)
			case drawing.Polyline:
				if b := drawing.Bounds([]drawing.Item{x}); x.Closed && b.Width() > 15 {
					boxes = append(boxes, b)
				}
			}
		}
	}
	for _, s := range Measuring(job.MeasuresFor(p), lang) {
		walk(s.Items)
	}
	return texts, boxes
}

// The measuring sheets of all presets can be read: nothing lies over a text,
// nothing is shortened, and no box is lower than a figure written on a ladder.
func TestMeasuringSheetsCanBeRead(t *testing.T) {
	for _, p := range presets.All() {
		for _, lang := range words.All {
			for _, s := range Measuring(job.MeasuresFor(p), lang) {
				if err := drawing.Sound(s); err != nil {
					t.Error(err)
				}
				for _, c := range drawing.Overlaps(s) {
					t.Errorf("%s %s %s: %v", p.Name, lang.Code, s.Name, c)
				}
			}
			texts, boxes := written(p, lang)
			for _, s := range texts {
				if strings.HasSuffix(s, "\u2026") {
					t.Errorf("%s %s: %q is shortened", p.Name, lang.Code, s)
				}
			}
			for _, b := range boxes {
				if b.Height() < 9 {
					t.Errorf("%s: a box of %.1f mm", p.Name, float64(b.Height()))
				}
			}
		}
	}
}

// Every reading of the template has its box on the measuring sheet, and the
// sheet has no box for a reading that the template lacks.
func TestMeasuringSheetAsksWhatTheTemplateHas(t *testing.T) {
	for _, p := range presets.All() {
		j, mistakes := job.Read("job.yaml", job.Template(p), presets.All())
		if len(mistakes) > 0 {
			t.Fatalf("%s: %s", p.Name, job.Text(mistakes))
		}
		var want []string
		for i, r := range j.Room.Readings {
			want = append(want, fmt.Sprint(i+1), readingName(job.Measure{Reading: r}, nil))
		}
		for _, w := range j.Room.Walls {
			for _, s := range w.Stations {
				want = append(want, fmt.Sprintf("bow %.0f off %s", float64(s.Along), w.From))
			}
			for _, q := range w.Plumbs {
				want = append(want, fmt.Sprintf("plumb %.0f", float64(q.Height)))
			}
		}
		for _, f := range j.Room.Floor {
			want = append(want, "at "+f.Corner)
		}
		texts, boxes := written(p, nil)
		left := slices.Clone(texts)
		for _, w := range want {
			i := slices.Index(left, w)
			if i < 0 {
				t.Errorf("%s: the template asks for %q, the sheet does not", p.Name, w)
				continue
			}
			left = slices.Delete(left, i, i+1)
		}
		for _, s := range left {
			if strings.HasPrefix(s, "bow ") || strings.HasPrefix(s, "plumb ") || slices.ContainsFunc(j.Room.Corners, func(c model.CornerPlan) bool { return s == "at "+c.Name || strings.HasPrefix(s, c.Name+" to ") }) {
				t.Errorf("%s: the sheet asks for %q, the template does not", p.Name, s)
			}
		}
		const others = 3 + 3 + 6*8 + 4 + 2 + 3 + 4 + 4 + 2 // head, obstacles, way
		if n := len(want) - len(j.Room.Readings) + others; len(boxes) != n {
			t.Errorf("%s: %d boxes for %d things to write", p.Name, len(boxes), n)
		}
	}
}

// What is said to check a reading is what the survey computes from a room
// measured like that; a reading that does not matter is not named.
func TestChecksAreComputed(t *testing.T) {
	for _, p := range presets.All() {
		m := job.MeasuresFor(p)
		n := survey.Network{Closed: m.Closed, Base: [2]survey.Point{survey.Point(m.Base[0]), survey.Point(m.Base[1])}, Start: map[survey.Point]geom.Vec{}}
		for i, c := range m.Corners {
			n.Chain = append(n.Chain, survey.Point(c))
			n.Start[survey.Point(c)] = m.At[i]
		}
		for _, r := range m.Readings {
			n.Readings = append(n.Readings, r.Reading)
		}
		res, err := survey.Adjust(n)
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range m.Readings {
			if o := res.Readings[i]; math.Abs(o.Redundancy-r.Redundancy) > 1e-6 {
				t.Errorf("%s: %s is checked to %.3f, told as %.3f", p.Name, r.ID, o.Redundancy, r.Redundancy)
			}
			if r.Redundancy < 0.05 {
				t.Errorf("%s: a slip in %s would stay unseen", p.Name, r.ID)
			}
			for _, by := range r.CheckedBy {
				less := n
				less.Readings = slices.Delete(slices.Clone(n.Readings), by, by+1)
				k := i
				if i > by {
					k--
				}
				left, err := survey.Adjust(less)
				if err == nil && left.Readings[k].Redundancy > 0.9*r.Redundancy+1e-9 {
					t.Errorf("%s: without %s, %s is checked to %.3f as before", p.Name, m.Readings[by].ID, r.ID, left.Readings[k].Redundancy)
				}
			}
		}
	}
}
