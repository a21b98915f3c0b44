// Package gltf writes scenes as binary glTF 2.0 (GLB): one named node, mesh and
// material per part, for viewers and the preview page. Standard: glTF 2.0
// Specification, Khronos Group (ISO/IEC 12113:2022).
package gltf

import (
	"bytes"
	"fmt"
	"io"
	"math"

	"github.com/qmuntal/gltf"
	"github.com/qmuntal/gltf/modeler"

	"slabwright/mesh"
)

// Write puts the scene into one GLB file. glTF is in metres with y up, so a
// root node turns and scales the millimetres below it: the room's x stays x,
// its z becomes y, its y becomes -z. Each part counts its vertices from a point
// in its middle, to which its node moves it, so float32 keeps parts up to four
// metres to 1e-4 mm. Extras of a part's node hold its mark ("part") and its
// name ("name"), which some viewers rewrite. The same scene gives the same bytes.
func Write(w io.Writer, s mesh.Scene) error {
	if err := s.Validate(); err != nil {
		return err
	}
	doc := gltf.NewDocument()
	doc.Asset.Generator = "slabwright"
	doc.Scenes[0] = &gltf.Scene{Name: s.Title, Nodes: []int{0}}
	root := &gltf.Node{
		Name:     s.Title,
		Rotation: [4]float64{-math.Sqrt2 / 2, 0, 0, math.Sqrt2 / 2}, // a quarter turn back about x
		Scale:    [3]float64{0.001, 0.001, 0.001},
	}
	doc.Nodes = append(doc.Nodes, root)
	for i, o := range s.Objects {
		m := o.Mesh()
		mid := m.Middle()
		c := corners(m.Single(mid))
		doc.Materials = append(doc.Materials, material(o))
		doc.Meshes = append(doc.Meshes, &gltf.Mesh{Name: o.Name, Primitives: []*gltf.Primitive{{
			Indices: gltf.Index(modeler.WriteIndices(doc, c.index)),
			Attributes: gltf.PrimitiveAttributes{
				gltf.POSITION: modeler.WritePosition(doc, c.place),
				gltf.NORMAL:   modeler.WriteNormal(doc, c.normal),
			},
			Material: gltf.Index(i),
		}}})
		root.Children = append(root.Children, len(doc.Nodes))
		doc.Nodes = append(doc.Nodes, &gltf.Node{
			Name:        o.Name,
			Mesh:        gltf.Index(i),
			Translation: [3]float64{float64(mid.X), float64(mid.Y), float64(mid.Z)},
			Extras:      map[string]any{"part": o.ID, "name": o.Name},
		})
	}
	// The encoder loses some write errors, so the file is made in memory first.
	var buf bytes.Buffer
	if err := gltf.NewEncoder(&buf).Encode(doc); err != nil {
		return fmt.Errorf("writing GLB: %w", err)
	}
	if _, err := w.Write(buf.Bytes()); err != nil {
		return fmt.Errorf("writing GLB: %w", err)
	}
	return nil
}

// material is the surface of a part.
func material(o mesh.Object) *gltf.Material {
	metal := 0.0
	if o.Metal {
		metal = 1
	}
	return &gltf.Material{Name: o.Name, PBRMetallicRoughness: &gltf.PBRMetallicRoughness{
		BaseColorFactor: &[4]float64{linear(o.Color.R), linear(o.Color.G), linear(o.Color.B), 1},
		MetallicFactor:  gltf.Float(metal),
		RoughnessFactor: gltf.Float(o.Roughness),
	}}
}

// linear turns one sRGB channel into the linear light that glTF asks for
// (IEC 61966-2-1).
func linear(c uint8) float64 {
	v := float64(c) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}
