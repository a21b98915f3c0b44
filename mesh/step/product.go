package step

import (
	"fmt"

	"slabwright/mesh"
	"slabwright/model/geom"
)

// context holds what the entities of a file refer to in common.
type context struct{ application, space ref }

// context tells the protocol and the units: millimetres, radians.
func (f *file) context() context {
	app := f.put("APPLICATION_CONTEXT", "core data for automotive mechanical design processes")
	f.put("APPLICATION_PROTOCOL_DEFINITION", "international standard", "automotive_design", raw("2000"), app)
	length := f.complex("LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.)")
	angle := f.complex("NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.)")
	solid := f.complex("NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT()")
	near := f.put("UNCERTAINTY_MEASURE_WITH_UNIT", raw("LENGTH_MEASURE(1.E-06)"), length, "distance_accuracy_value", "")
	space := f.complex(fmt.Sprintf("GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((%s))"+
		"GLOBAL_UNIT_ASSIGNED_CONTEXT((%s,%s,%s))REPRESENTATION_CONTEXT('','')", near, length, angle, solid))
	return context{app, space}
}

// product names the part and ties its solids to it.
func (f *file) product(c context, name string, solids []ref) {
	axes := f.axes(geom.Vec3{}, geom.Vec3{Z: 1}, geom.Vec3{X: 1})
	shape := f.put("ADVANCED_BREP_SHAPE_REPRESENTATION", name, append([]ref{axes}, solids...), c.space)
	frame := f.put("PRODUCT_CONTEXT", "", c.application, "mechanical")
	product := f.put("PRODUCT", name, name, "", []ref{frame})
	version := f.put("PRODUCT_DEFINITION_FORMATION", "", "", product)
	stage := f.put("PRODUCT_DEFINITION_CONTEXT", "part definition", c.application, "design")
	definition := f.put("PRODUCT_DEFINITION", "design", "", version, stage)
	f.put("SHAPE_DEFINITION_REPRESENTATION", f.put("PRODUCT_DEFINITION_SHAPE", "", "", definition), shape)
	f.put("PRODUCT_RELATED_PRODUCT_CATEGORY", "part", raw("$"), []ref{product})
}

// style gives a solid its colour.
func (f *file) style(solid ref, c mesh.Color) ref {
	part := func(v uint8) float64 { return float64(v) / 255 }
	colour := f.put("COLOUR_RGB", "", part(c.R), part(c.G), part(c.B))
	fill := f.put("FILL_AREA_STYLE", "", []ref{f.put("FILL_AREA_STYLE_COLOUR", "", colour)})
	side := f.put("SURFACE_SIDE_STYLE", "", []ref{f.put("SURFACE_STYLE_FILL_AREA", fill)})
	use := f.put("PRESENTATION_STYLE_ASSIGNMENT", []ref{f.put("SURFACE_STYLE_USAGE", raw(".BOTH."), side)})
	return f.put("STYLED_ITEM", "colour", []ref{use}, solid)
}

func (f *file) point(p geom.Vec3) ref { return f.put("CARTESIAN_POINT", "", p) }

func (f *file) direction(d geom.Vec3) ref { return f.put("DIRECTION", "", d.Unit()) }

// axes is a placement: its origin, its z and its x.
func (f *file) axes(at, z, x geom.Vec3) ref {
	return f.put("AXIS2_PLACEMENT_3D", "", f.point(at), f.direction(z), f.direction(x))
}
