package report_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/model/find"
	"slabwright/model/report"
)

type peopleDoc struct {
	People []struct {
		Person, Seat string
		Described    bool
		Shoe         float64 `json:"shoe_mm"`
		Measures     []struct {
			Name, Basis, Source string
			Size                float64  `json:"size_mm"`
			SD                  *float64 `json:"sd_mm"`
			Low                 float64  `json:"low_mm"`
			High                float64  `json:"high_mm"`
		}
		Surface struct {
			Height  float64    `json:"height_mm"`
			Sitting [2]float64 `json:"sitting_mm"`
			Slab    float64    `json:"slab_mm"`
			Steel   float64    `json:"steel_front_mm"`
			Room    float64    `json:"elbow_above_thigh_mm"`
			Left    float64    `json:"left_of_it_mm"`
		}
	}
}

func peopleIn(t *testing.T, b report.Build) peopleDoc {
	t.Helper()
	data, err := report.JSON(b)
	if err != nil {
		t.Fatal(err)
	}
	var doc peopleDoc
	if err := json.Unmarshal(data, &doc); err != nil {
		t.Fatal(err)
	}
	return doc
}

// The report says what the checks say; 9 in 10 lie within 1.645 sd of an estimate
// (table of the normal distribution).
func TestPeopleAreReported(t *testing.T) {
	b := built(t, "studio")
	doc := peopleIn(t, b)
	if len(doc.People) == 0 {
		t.Fatal("nobody")
	}
	text := string(report.Markdown(b))
	for _, p := range doc.People {
		of := func(rule string) find.Finding {
			i := slices.IndexFunc(b.Findings, func(f find.Finding) bool {
				return f.Rule == rule && strings.HasSuffix(f.Title, " "+p.Person+" at "+p.Seat)
			})
			if i < 0 {
				t.Fatalf("no %s of %s", rule, p.Person)
			}
			return b.Findings[i]
		}
		s := p.Surface
		if got := of("build-up").Measured.Value; math.Abs(s.Slab+s.Steel-got) > 0.01 {
			t.Errorf("%s: slab and steel %g and %g, the check has %g", p.Person, s.Slab, s.Steel, got)
		}
		if got := of("elbow-height").Measured.Value; math.Abs(s.Height-s.Sitting[0]-got) > 0.01 {
			t.Errorf("%s: elbows at %g under a surface at %g, the check has %g between", p.Person, s.Sitting[0], s.Height, got)
		}
		if math.Abs(s.Room-20-s.Slab-s.Steel-s.Left) > 0.01 || s.Sitting[1]-s.Sitting[0] != 30 {
			t.Errorf("%s: %+v", p.Person, s)
		}
		for _, m := range p.Measures {
			if m.Source == "" || m.Basis == "" {
				t.Errorf("%s of %s comes from nowhere", m.Name, p.Person)
			}
			if m.SD != nil && (math.Abs(m.High-m.Size-1.645**m.SD) > 0.01 || math.Abs(m.Size-m.Low-1.645**m.SD) > 0.01) {
				t.Errorf("%s of %s: %+v", m.Name, p.Person, m)
			}
		}
		if !strings.Contains(text, "### "+p.Person+" at "+p.Seat+"\n") {
			t.Errorf("report.md does not speak of %s", p.Person)
		}
	}
}

// Nobody described: percentiles of everybody, and no spread about a mean.
func TestNobodyDescribedIsReported(t *testing.T) {
	b := built(t, "studio", "people:\n  - {name: printmaker, stature: 1910, sex: female, mass: 96 kg, shoe: 25}\n", "")
	for _, p := range peopleIn(t, b).People {
		if p.Described {
			t.Errorf("%s is described", p.Person)
		}
		for _, m := range p.Measures {
			if m.SD != nil || m.High <= m.Low || !strings.Contains(m.Basis, "5th percentile woman") {
				t.Errorf("%+v", m)
			}
		}
	}
}
