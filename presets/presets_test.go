package presets_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/find"
	"slabwright/model/job"
	"slabwright/model/unit"
	"slabwright/presets"
)

// TestPresetsPass builds every preset from its own job file: no check fails,
// none lacks an input, nothing is broken.
func TestPresetsPass(t *testing.T) {
	for _, p := range presets.All() {
		t.Run(p.Name, func(t *testing.T) {
			d, found := build(t, p, nil)
			if len(d.Parts) < 4 {
				t.Errorf("%d parts: the design is not whole", len(d.Parts))
			}
			for _, f := range found {
				if f.Status.Severity() >= find.Unknown.Severity() {
					t.Errorf("%s: %s: %s (%s)", f.Rule, f.Status, f.Why, f.Line)
				}
			}
			for _, r := range check.All {
				if !spoke(found, r.ID) && !optional[r.ID] {
					t.Errorf("rule %s has nothing to say about %s", r.ID, p.Name)
				}
			}
		})
	}
}

// optional rules speak only where the design has such a thing.
var optional = map[string]bool{"natural-edge": true, "survey-face": true, "obstacle": true, "shelf-room": true}

// TestBrokenParametersAreFound breaks one parameter at a time and wants the
// right rule to fail, with the words that name the trouble.
func TestBrokenParametersAreFound(t *testing.T) {
	for _, c := range []struct {
		preset, name string
		value        unit.Length
		rule, says   string
	}{
		{"studio", "side_gap", 0, "wall-gap", "worktop"},
		{"studio", "shorter_by", 60, "angles-in-corner", "overlap"},
		{"studio", "surface", 735, "leg-room", "worktop"},
		{"studio", "seat_at", 700, "leg-room", "roll-out table"},
		{"studio", "seat_at", 2200, "leg-room", "angle right"},
		{"studio", "table_height", 720, "parts-overlap", "roll-out table"},
		{"studio", "back_gap", 30, "bearing", "mm deep on angle"},
		{"alcove", "first_shelf", 960, "shelf-room", "shelf 1"},
		{"alcove", "shorter_by", 20, "angles-in-corner", "overlap"},
		{"alcove", "side_gap", 0, "wall-gap", "gap is"},
		{"corner", "shorter_by", 100, "angles-in-corner", "overlap"},
		{"corner", "surface", 690, "leg-room", "back worktop"},
	} {
		t.Run(c.preset+"/"+c.name, func(t *testing.T) {
			p := preset(t, c.preset)
			_, found := build(t, p, map[string]model.Setting{c.name: {Length: c.value}})
			for _, f := range found {
				if f.Rule == c.rule && f.Status == find.Fail && strings.Contains(f.Why, c.says) {
					if len(f.Fix) == 0 {
						t.Errorf("%s fails without a hint to mend it", f.Rule)
					}
					return
				}
			}
			t.Errorf("%s = %v: rule %s did not fail with %q", c.name, c.value, c.rule, c.says)
			for _, f := range found {
				if f.Status == find.Fail {
					t.Logf("%s: %s", f.Rule, f.Why)
				}
			}
		})
	}
}

// TestClassicCornerMistake is the common one: angles of 60 mm cut 100 mm
// shorter than their walls and centred overlap by 10 x 10 mm in a square
// corner, and the least set-back that mends it is proposed.
func TestClassicCornerMistake(t *testing.T) {
	plan := `
title: square alcove
revision: A
surveyed: 2026-01-02
room:
  readings_at: 750
  corners: [A, B, C, D]
  closed: no
  walls:
    - {name: left, from: A, to: B, make: solid brick}
    - {name: back, from: B, to: C, make: solid brick}
    - {name: right, from: C, to: D, make: solid brick}
  readings:
    - {between: A-B, is: 800, sd: 0.01}
    - {between: B-C, is: 1600, sd: 0.01}
    - {between: C-D, is: 800, sd: 0.01}
    - {between: A-D, is: 1600, sd: 0.01}
    - {between: A-C, is: 1788.854, sd: 0.01}
    - {between: B-D, is: 1788.854, sd: 0.01}
design:
  preset: alcove
  parameters: {section: L60x60x6, shorter_by: 100, shelves: 0, depth: 780}
`
	p := preset(t, "alcove")
	j, mistakes := job.Read("square.yaml", []byte(plan), presets.All())
	for _, m := range mistakes {
		t.Fatal(m)
	}
	_, found := run(t, p, j)
	n := 0
	for _, f := range found {
		if f.Rule != "angles-in-corner" || f.Status != find.Fail {
			continue
		}
		n++
		if !strings.Contains(f.Why, "overlap by 10 x 10 mm (set back 50.0 and 50.0 mm)") {
			t.Errorf("says %q", f.Why)
		}
		if f.Measured.Value > -9.9 || f.Measured.Value < -10.1 {
			t.Errorf("measured %v, want an overlap of 10 mm", f.Measured.Value)
		}
		// 60 mm for the legs and 2 mm of clearance: 60 + 2/sqrt 2 = 61.4, whole millimetres up.
		if len(f.Fix) < 2 || !strings.Contains(f.Fix[0].Text, "set both back 62 mm") || !strings.Contains(f.Fix[0].Text, "124 mm shorter") {
			t.Errorf("proposes %v", f.Fix)
		}
	}
	if n != 2 {
		t.Errorf("%d corners clash, want both", n)
	}
}

func preset(t testing.TB, name string) model.Preset {
	t.Helper()
	for _, p := range presets.All() {
		if p.Name == name {
			return p
		}
	}
	t.Fatalf("no preset %q", name)
	return model.Preset{}
}

// build reads the preset's job file and runs it with some settings changed.
func build(t testing.TB, p model.Preset, change map[string]model.Setting) (*model.Design, []find.Finding) {
	t.Helper()
	file := filepath.Join(p.Name, "job.yaml")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	j, mistakes := job.Read(file, data, presets.All())
	for _, m := range mistakes {
		t.Fatal(m)
	}
	if j.Settings == nil {
		j.Settings = map[string]model.Setting{}
	}
	for k, v := range change {
		j.Settings[k] = v
	}
	return run(t, p, j)
}

func run(t testing.TB, p model.Preset, j model.Job) (*model.Design, []find.Finding) {
	t.Helper()
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	d := p.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
	d.Finish()
	return d, check.Run(check.Site{Job: j, Room: r, Design: d, Params: p.Params})
}

func spoke(found []find.Finding, rule string) bool {
	for _, f := range found {
		if f.Rule == rule {
			return true
		}
	}
	return false
}

// TestMitredLegs: with the ends of all angles mitred the presets stand as they do with
// square ends; the bars are longer, and so nearer to a corner the anchors take more.
func TestMitredLegs(t *testing.T) {
	for _, p := range presets.All() {
		d, found := build(t, p, map[string]model.Setting{"leg_ends": {Text: "mitred"}})
		for _, f := range found {
			if f.Status == find.Fail && f.Rule != "anchor-strength" || f.Status == find.Broken {
				t.Errorf("%s: %s: %s", p.Name, f.Rule, f.Why)
			}
		}
		mitred := 0
		for _, q := range d.Parts {
			if q.Angle != nil && (q.Angle.Left.Mitre < 0 || q.Angle.Right.Mitre < 0) {
				mitred++
			}
		}
		if mitred < 3 {
			t.Errorf("%s: %d angles are mitred", p.Name, mitred)
		}
	}
}

// TestWallLegsUp: with the legs up, and slabs as thick as the legs are high, the
// presets pass as they do with the legs down; the steel stands no deeper than a leg's
// thickness below the slabs.
func TestWallLegsUp(t *testing.T) {
	for _, p := range presets.All() {
		change := map[string]model.Setting{"wall_leg": {Text: "up"}}
		if thick := map[string]unit.Length{"alcove": 50, "corner": 60}[p.Name]; thick > 0 {
			change["thickness"] = model.Setting{Length: thick}
		}
		d, found := build(t, p, change)
		n := 0
		for _, f := range found {
			if f.Status == find.Fail {
				t.Errorf("%s: %s", p.Name, f.Why)
			}
			if f.Rule == "leg-up" && f.Status == find.Note {
				n++
			}
		}
		angles := 0
		for _, q := range d.Parts {
			if q.Angle == nil {
				continue
			}
			angles++
			if !q.Angle.LegUp || d.LegBelow(q.Angle.Under) != q.Angle.Section.Thickness {
				t.Errorf("%s: %s: leg up %v, %v below the slab", p.Name, q.ID, q.Angle.LegUp, d.LegBelow(q.Angle.Under))
			}
		}
		if n != angles || n == 0 {
			t.Errorf("%s: %d of %d angles say that their wall screws are covered", p.Name, n, angles)
		}
	}
}
