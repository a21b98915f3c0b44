package mesh

import (
	"math"
	"strings"
	"testing"

	"slabwright/model/unit"
)

func TestSceneRefusesWhatNoFileCanHold(t *testing.T) {
	good := func() Scene {
		m := build(t, prism(0, 10, rectangle(0, 0, 10, 10)))
		return Scene{Title: "bench", Objects: []Object{{Name: "top", ID: "T1", Roughness: 0.6, Meshes: []Mesh{m}}}}
	}
	if err := good().Validate(); err != nil {
		t.Fatal(err)
	}
	for say, spoil := range map[string]func(*Scene){
		"without parts":             func(s *Scene) { s.Objects = nil },
		"no name or no mark":        func(s *Scene) { s.Objects[0].ID = "" },
		"the mark T1":               func(s *Scene) { s.Objects = append(s.Objects, s.Objects[0]) },
		"roughness NaN":             func(s *Scene) { s.Objects[0].Roughness = math.NaN() },
		"no shape":                  func(s *Scene) { s.Objects[0].Meshes = nil },
		"no triangles":              func(s *Scene) { s.Objects[0].Meshes[0].Triangles = nil },
		"not within a kilometre":    func(s *Scene) { s.Objects[0].Meshes[0].Vertices[2].X = unit.Length(math.Inf(-1)) },
		"missing vertex or facet":   func(s *Scene) { s.Objects[0].Meshes[0].Triangles[2][1] = 8 },
		"triangle 11 points at a m": func(s *Scene) { s.Objects[0].Meshes[0].FacetOf = s.Objects[0].Meshes[0].FacetOf[:11] },
	} {
		s := good()
		spoil(&s)
		if err := s.Validate(); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("want %q, got %v", say, err)
		}
	}
}

func TestOnlyTakesOnePart(t *testing.T) {
	s := Scene{Objects: []Object{{ID: "A", Name: "first"}, {ID: "B", Name: "second"}}}
	one, ok := s.Only("B")
	if !ok || len(one.Objects) != 1 || one.Title != "second" {
		t.Errorf("%+v %v", one, ok)
	}
	if _, ok := s.Only("C"); ok {
		t.Error("a part that is not there was found")
	}
}
