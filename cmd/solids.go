package cmd

import (
	"bytes"
	"fmt"

	"slabwright/mesh"
	"slabwright/mesh/profile"
	"slabwright/mesh/step"
	"slabwright/model"
	"slabwright/model/report"
)

// addSolids writes every part as an exact solid for shops with machines. Slabs
// lie in their own axes, along their reference edge, and come with the profiles
// of both faces as well; all else stands as in the room.
func addSolids(b report.Build, out fileSet) error {
	for _, p := range b.Design.Parts {
		one := step.Part{Name: p.ID}
		for _, body := range p.Bodies {
			solid := body.Solid
			if p.Slab != nil {
				solid = p.Slab.Own
			}
			if solid.Err() == nil {
				one.Bodies = append(one.Bodies, step.Body{Name: body.Name, Color: mesh.Color(body.Colour), Solid: solid})
			}
		}
		if len(one.Bodies) == 0 {
			continue
		}
		var data bytes.Buffer
		if err := step.Write(&data, one); err != nil {
			return fmt.Errorf("part %s: %w", p.ID, err)
		}
		out["models/"+fileStem(p.ID)+".step"] = data.Bytes()
		if p.Slab != nil {
			for _, face := range [2]model.Face{model.TopFace, model.UnderFace} {
				out["models/"+fileStem(p.ID)+"-"+string(face)+".svg"] = profile.SVG(p, face)
			}
		}
	}
	return nil
}
