package model

import (
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// Kind is what a part is.
type Kind string

// Kinds of parts.
const (
	KindSlab    Kind = "slab"
	KindShelf   Kind = "shelf"
	KindAngle   Kind = "angle"
	KindCleat   Kind = "cleat"
	KindRod     Kind = "rod"
	KindRollOut Kind = "roll-out table"
	KindPost    Kind = "table leg"
)

// Part is one thing that is made and put in, finished: its solids stand in the
// room's axes.
type Part struct {
	ID       string
	Mark     int // number in balloons and lists, from 1
	Kind     Kind
	Material string
	Bodies   []Body
	Slab     *SlabPart  // slabs and shelves
	Angle    *AnglePart // steel angles
	Cleat    *CleatPart // wooden cleats
	Rod      *RodPart
	RollOut  *RollOutPart
	Post     *PostPart
	Cut      *AsCut   // set when it is already cut
	Bears    []string // parts and walls that it is meant to touch
	Line     string   // line of the description
}

// Body is one solid of a part.
type Body struct {
	Name     string
	Solid    geom.Solid
	Material string
	Density  unit.Density
	Colour   Colour
}

// Colour is an sRGB colour for models.
type Colour struct{ R, G, B uint8 }

// Colours of the materials in models.
var (
	SteelColour = Colour{96, 102, 110}
	woodColours = map[string]Colour{"ash": {214, 190, 150}, "oak": {188, 152, 106}, "beech": {208, 164, 126}, "walnut": {110, 78, 56}, "cherry": {176, 112, 78}, "maple": {226, 202, 164}}
)

// Mass is the mass of the part from its volumes and densities.
func (p *Part) Mass() unit.Mass {
	var m unit.Mass
	for _, b := range p.Bodies {
		m += b.Density.Mass(b.Solid.Volume())
	}
	return m
}

// Volume is the volume of all solids of the part.
func (p *Part) Volume() unit.Volume {
	var v unit.Volume
	for _, b := range p.Bodies {
		v += b.Solid.Volume()
	}
	return v
}

// Centroid is the centre of mass of the part.
func (p *Part) Centroid() geom.Vec3 {
	var c geom.Vec3
	var sum float64
	for _, b := range p.Bodies {
		m := float64(b.Density.Mass(b.Solid.Volume()))
		c = c.Add(b.Solid.Centroid().Mul(m))
		sum += m
	}
	if sum == 0 {
		return c
	}
	return c.Mul(1 / sum)
}

// Bounds is the box around the part.
func (p *Part) Bounds() geom.Box {
	var out geom.Box
	for i, b := range p.Bodies {
		box := b.Solid.Bounds()
		if i == 0 {
			out = box
			continue
		}
		out.Min = geom.Vec3{X: min(out.Min.X, box.Min.X), Y: min(out.Min.Y, box.Min.Y), Z: min(out.Min.Z, box.Min.Z)}
		out.Max = geom.Vec3{X: max(out.Max.X, box.Max.X), Y: max(out.Max.Y, box.Max.Y), Z: max(out.Max.Z, box.Max.Z)}
	}
	return out
}

// SlabPart is the making of a slab, in its own axes: x along the reference
// edge from its left end, y from the reference edge towards the wall (so the
// slab lies at y below 0), heights above the underside.
type SlabPart struct {
	Species   stock.Species
	Thickness unit.Length
	Top       unit.Length // height of the surface above the floor
	Pose      geom.Pose   // own axes to the room, at the underside
	Edges     []Edge      // clockwise seen from above, starting at the left side
	Features  []Feature
	Corners   []string   // names of the outline's corners, 1, 2, 3 ..., at the start of each edge
	Own       geom.Solid // in its own axes, once the design is finished
}

// Edge is one edge of a slab's outline, straight from Start to End in the
// slab's own axes. A natural edge swells beyond the straight line by Natural.
type Edge struct {
	Name       string // "left", "back 1", "front"
	Bound      BoundKind
	To         string      // wall, part or line that it runs up to
	Gap        unit.Length // asked for
	Start, End geom.Vec
	Reference  bool // sizes start here
	Waney      bool // natural edge
	Natural    []NaturalStation
	Ease       unit.Length // chamfer on both arrises
}

// NaturalStation is one point of a natural edge: how far the wood goes beyond
// the straight front line at the top face and at the underside.
type NaturalStation struct{ Along, Top, Under unit.Length }

// FeatureKind is a kind of wood work.
type FeatureKind string

// Kinds of wood work in a slab.
const (
	Through FeatureKind = "hole"   // through the slab
	Pilot   FeatureKind = "pilot"  // blind hole for a screw
	Pocket  FeatureKind = "pocket" // blind, any outline
	Groove  FeatureKind = "groove" // blind, along a path
	CutOut  FeatureKind = "cut-out"
	Bore    FeatureKind = "bore" // into an edge
)

// Feature is one hole, pocket, groove, cut-out or edge bore of a slab, in the
// slab's own axes.
type Feature struct {
	Name    string
	Kind    FeatureKind
	Face    Face // for blind work
	At      geom.Vec
	Dia     unit.Length // holes, pilots, bores; width of a groove
	Depth   unit.Length
	Outline geom.Region // shape as seen from above
	Path    []geom.Vec  // grooves
	Lid     Lid         // grooves
	Edge    int         // bores: index of the edge; At is on it
	Height  unit.Length // bores: height of the axis above the underside
	For     string      // what it serves: a part's name, "cable"
	Line    string
}

// Face tells from which face blind work is cut.
type Face string

// Faces of a slab.
const (
	TopFace   Face = "top"
	UnderFace Face = "underside"
)

// AnglePart is the making of a steel angle, in its own axes: x along the heel
// from the left end as seen from the room, facing the wall.
type AnglePart struct {
	Mounted
	Section stock.AngleSection
	LegUp   bool // vertical leg above the seat, behind the slab
}

// RodPart is a hidden rod that carries a shelf.
type RodPart struct {
	Dia      unit.Length
	Wall     *Wall
	At       unit.Length // along the wall from its left corner
	Height   unit.Length
	InWall   unit.Length
	InShelf  unit.Length
	Gap      unit.Length // between wall and shelf
	Shelf    string
	WallHole unit.Length
}

// RollOutPart is a table on castors.
type RollOutPart struct {
	Width, Depth, Height unit.Length
	Castor               unit.Length
	Corner               geom.Vec // left back corner in the room
	Turn                 unit.Angle
	Travel               unit.Length // how far it rolls out
	Boards               []Board
}
