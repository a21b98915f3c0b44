package check_test

import (
	"encoding/json"
	"os"
	"testing"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// TestExtremes turns every length of two benches to its least and to its largest
// value: no rule breaks, and all findings can be written as JSON.
func TestExtremes(t *testing.T) {
	alcove, err := os.ReadFile("../../presets/alcove/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	bench := skewRoom(84) + `people: [{name: she, stature: 1910, sex: female}]
offers: {currency: none, slabs: [{name: ash, species: European ash, length: 1700, width: 700, thickness: 45, natural: 1, widths: [612, 604, 618, 631, 622], every: 400, price: 300}]}
`
	for _, text := range []string{string(alcove), bench} {
		j := readJob(t, "extremes", text)
		for _, p := range siteOf(t, j).Params {
			if p.Kind != model.LengthParam {
				continue
			}
			for _, v := range []float64{p.Min, p.Max} {
				x := j
				x.Settings = map[string]model.Setting{p.Name: {Length: unit.Length(v)}, "natural": {Flag: true}, "shelf_under": {Length: 1300}, "table_at": {Length: 500}, "seat_at": {Length: 800}}
				if j.Preset != "trial" {
					x.Settings = map[string]model.Setting{p.Name: {Length: unit.Length(v)}}
				}
				x.Settings[p.Name] = model.Setting{Length: unit.Length(v)}
				found := check.Run(siteOf(t, x))
				if _, err := json.Marshal(found); err != nil {
					t.Errorf("%s of %s at %v: %v", p.Name, j.Preset, v, err)
				}
				for _, f := range found {
					if f.Status == find.Broken {
						t.Errorf("%s of %s at %v: %s: %s", p.Name, j.Preset, v, f.Rule, f.Why)
					}
					if f.Status == find.Fail && f.Why == "" {
						t.Errorf("%s of %s at %v: %s fails without a word", p.Name, j.Preset, v, f.Rule)
					}
				}
			}
		}
	}
}

// TestBrokenRule: a rule that breaks becomes a finding of its own, and the others
// still run.
func TestBrokenRule(t *testing.T) {
	s := siteOf(t, readJob(t, "broken", skewRoom(90)))
	good := len(check.Run(s))
	s.Design.Parts = append(s.Design.Parts, &model.Part{ID: "nothing", Angle: &model.AnglePart{}, Bodies: s.Design.Parts[0].Bodies})
	found := check.Run(s)
	broken := 0
	for _, f := range found {
		if f.Status == find.Broken {
			broken++
			if len(f.Fix) == 0 || f.Basis == "" {
				t.Errorf("says %+v", f)
			}
		}
	}
	if broken == 0 || len(found) < good/2 {
		t.Errorf("%d broken, %d findings of %d", broken, len(found), good)
	}
	if w := find.Worst(found); w != find.Broken || found[0].Status != find.Broken {
		t.Errorf("the worst is %s", w)
	}
}
