package presets_test

import (
	"testing"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/job"
	"slabwright/model/unit"
	"slabwright/presets"
)

// fresh runs the job file that a new job begins with.
func fresh(t *testing.T, p model.Preset) (*model.Design, []find.Finding) {
	t.Helper()
	j, mistakes := job.Read("job.yaml", job.Template(p), presets.All())
	for _, m := range mistakes {
		t.Fatal(m)
	}
	return run(t, p, j)
}

// TestFreshJobs: the made-up room of a new job suits its preset. All that may fail
// is what only the user can know: what the anchors of the walls permit.
func TestFreshJobs(t *testing.T) {
	for _, p := range presets.All() {
		_, findings := fresh(t, p)
		for _, f := range findings {
			if (f.Status == find.Fail || f.Status == find.Broken) && f.Rule != "anchor-strength" {
				t.Errorf("%s: %s: %s", p.Name, f.Rule, f.Why)
			}
		}
	}
}

// TestAnchorsKeepOffOutsideCorners: on masonry 100 mm from an outside corner
// (common practice, no source), unless the bar would be left with two anchors that
// stand closer together than that.
func TestAnchorsKeepOffOutsideCorners(t *testing.T) {
	seen := 0
	for _, p := range presets.All() {
		d, _ := build(t, p, nil)
		for _, part := range d.Parts {
			a := part.Angle
			if a == nil || a.Wall.Make == model.Stud {
				continue
			}
			var at []float64
			for _, h := range a.Holes {
				if h.Leg == model.WallLeg {
					at = append(at, float64(a.Start+h.X))
				}
			}
			first, last := at[0], float64(a.Wall.Length())-at[len(at)-1]
			if at[len(at)-1]-at[0] <= 101 {
				continue
			}
			if a.Wall.From.Angle > 181*unit.Degree {
				seen++
				if first < 100 {
					t.Errorf("%s, %s: the first anchor is %.0f mm from an outside corner", p.Name, part.ID, first)
				}
			}
			if a.Wall.To.Angle > 181*unit.Degree {
				seen++
				if last < 100 {
					t.Errorf("%s, %s: the last anchor is %.0f mm from an outside corner", p.Name, part.ID, last)
				}
			}
		}
	}
	if seen < 2 {
		t.Errorf("only %d bars end at an outside corner", seen)
	}
}
