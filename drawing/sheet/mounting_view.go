package sheet

import (
	"fmt"
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// stepSpeck is the size of holes and facets that a picture of a step leaves out:
// less than a millimetre on paper.
const stepSpeck unit.Length = 30

// plainly shows parts as pictorial does, without their small holes.
func (c *comic) plainly(id string, look view.Look, parts []*model.Part) shot {
	return c.m.staged(id, "", look, parts, func(p *model.Part) []geom.Face {
		if _, ok := c.faces[p]; !ok {
			c.faces[p] = plain(p)
		}
		return c.faces[p]
	})
}

// plain are the faces of a part without holes and facets that are too small to
// be seen in a small picture.
func plain(p *model.Part) []geom.Face {
	var out []geom.Face
	for _, b := range p.Bodies {
		for _, f := range b.Solid.Faces() {
			if extent(f.Loops[0]) < stepSpeck {
				continue
			}
			kept := f.Loops[:1:1]
			for _, l := range f.Loops[1:] {
				if extent(l) >= stepSpeck {
					kept = append(kept, l)
				}
			}
			f.Loops = kept
			out = append(out, f)
		}
	}
	return out
}

// extent is the diagonal of the box around a loop.
func extent(loop []geom.Vec3) unit.Length {
	lo, hi := loop[0], loop[0]
	for _, v := range loop {
		lo = geom.Vec3{X: min(lo.X, v.X), Y: min(lo.Y, v.Y), Z: min(lo.Z, v.Z)}
		hi = geom.Vec3{X: max(hi.X, v.X), Y: max(hi.Y, v.Y), Z: max(hi.Z, v.Z)}
	}
	return hi.Sub(lo).Len()
}

// mostPlaces bounds the places on a part that its ring may point at.
const mostPlaces = 3

// stepRings number every mark that is set in a step, within the field of its
// picture: where it is seen, else by a dot over it.
func (m *maker) stepRings(n int, pl dim.Plate, look view.Look, step bring.Step, parts []*model.Part, v view.View, wide unit.Length) []drawing.Item {
	var list []ring
	for i, p := range parts {
		if !step.Has(p) {
			continue
		}
		r := ring{id: fmt.Sprintf("step-%d-number-%d", n, p.Mark), number: fmt.Sprint(p.Mark), places: seen(v, i)}
		if len(r.places) == 0 {
			r.places, r.inside = []geom.Vec{look.Project(p.Centroid())}, true
		}
		r.places = r.places[:min(len(r.places), mostPlaces)]
		switch k := slices.IndexFunc(list, func(q ring) bool { return q.id == r.id }); {
		case k < 0:
			list = append(list, r)
		case list[k].inside:
			list[k] = r
		}
	}
	frame := pl.Body
	middle := frame.Centre().X
	frame.Min.X, frame.Max.X = middle-wide/2, middle+wide/2
	return m.rings(pl, pl.Drawn, frame, list)
}
