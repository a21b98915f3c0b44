package mesh

import (
	"errors"
	"fmt"
)

// Color is an sRGB colour, eight bits per channel.
type Color struct{ R, G, B uint8 }

// Object is one part as the model files show it. Name is for people, ID is the
// part mark that lists and drawings use.
type Object struct {
	Name, ID  string
	Color     Color
	Metal     bool    // raw steel and the like: reflects in its own colour
	Roughness float64 // 0 mirror ... 1 chalk
	Meshes    []Mesh  // in the axes of the scene; usually one
}

// Mesh is everything the object consists of.
func (o Object) Mesh() Mesh { return Join(o.Meshes...) }

// Scene is what the writers of all formats take. Coordinates are those of the
// room: millimetres, z up.
type Scene struct {
	Title   string
	Objects []Object
}

// Only is the scene with nothing but the named object; false when there is none.
func (s Scene) Only(id string) (Scene, bool) {
	for _, o := range s.Objects {
		if o.ID == id {
			return Scene{Title: o.Name, Objects: []Object{o}}, true
		}
	}
	return Scene{}, false
}

// Validate finds what no writer could put into a file: nothing to write, parts
// without a name or a triangle, two parts with one mark, roughness outside 0..1,
// vertices that are not real numbers or farther than a kilometre away, loose
// indices.
func (s Scene) Validate() error {
	if len(s.Objects) == 0 {
		return errors.New("mesh: scene without parts")
	}
	marks := make(map[string]bool, len(s.Objects))
	for i, o := range s.Objects {
		if o.Name == "" || o.ID == "" {
			return fmt.Errorf("mesh: part %d of the scene has no name or no mark", i+1)
		}
		if marks[o.ID] {
			return fmt.Errorf("mesh: two parts have the mark %s", o.ID)
		}
		marks[o.ID] = true
		if !(o.Roughness >= 0 && o.Roughness <= 1) {
			return fmt.Errorf("mesh: part %s: roughness %g is not between 0 and 1", o.ID, o.Roughness)
		}
		if len(o.Meshes) == 0 {
			return fmt.Errorf("mesh: part %s has no shape", o.ID)
		}
		for _, m := range o.Meshes {
			if err := m.writable(); err != nil {
				return fmt.Errorf("mesh: part %s: %w", o.ID, err)
			}
		}
	}
	return nil
}

// writable finds what makes a single mesh unfit for a file.
func (m Mesh) writable() error {
	if len(m.Triangles) == 0 {
		return errors.New("no triangles")
	}
	for _, v := range m.Vertices {
		if !finite(v) || v.Len() > reach {
			return fmt.Errorf("vertex %v is not within a kilometre", v)
		}
	}
	for i, t := range m.Triangles {
		bad := i >= len(m.FacetOf) || m.FacetOf[i] < 0 || int(m.FacetOf[i]) >= len(m.Facets)
		if bad || min(t[0], t[1], t[2]) < 0 || int(max(t[0], t[1], t[2])) >= len(m.Vertices) {
			return fmt.Errorf("triangle %d points at a missing vertex or facet", i)
		}
	}
	return nil
}

const reach = 1000 * 1000 // mm
