package check_test

import (
	"encoding/json"
	"testing"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// mended are the lengths at whose extremes it is also looked for what would help.
var mended = map[string]bool{"thickness": true, "depth": true, "leg_at": true, "split_at": true}

// TestExtremes turns every length of a bench to its least and to its largest
// value: no rule breaks, and all findings can be written as JSON.
func TestExtremes(t *testing.T) {
	j := readJob(t, "extremes", skewRoom(93)+`people: [{name: she, stature: 1910, sex: female}]
offers: {currency: none, slabs: [{name: ash, species: European ash, length: 1700, width: 700, thickness: 45, natural: 1, widths: [612, 604, 618, 631, 622], every: 400, price: 300}]}
`)
	for _, p := range trial.Params {
		if p.Kind != model.LengthParam {
			continue
		}
		for _, v := range []float64{p.Min, p.Max} {
			j.Settings = map[string]model.Setting{"natural": {Flag: true}, "shelf_under": {Length: 1300}, "table_at": {Length: 500}, "seat_at": {Length: 800}}
			j.Settings[p.Name] = model.Setting{Length: unit.Length(v)}
			site := siteOf(t, j)
			if !mended[p.Name] {
				site = check.Bare(site)
			}
			found := check.Run(site)
			if _, err := json.Marshal(found); err != nil {
				t.Errorf("%s at %v: %v", p.Name, v, err)
			}
			for _, f := range found {
				if f.Status == find.Broken || f.Why == "" {
					t.Errorf("%s at %v: %s: %s %q", p.Name, v, f.Rule, f.Status, f.Why)
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
