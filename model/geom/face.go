package geom

// Face is one flat polygon of a solid's skin. Loops[0] is the outline,
// counter-clockwise seen from outside the solid; further loops are holes,
// clockwise. Normal is the outward unit normal.
//
// Surface names what the face belongs to ("top", "underside", "edge 3",
// "hole a", "end 1", "fillet"). Two faces that meet in an edge and carry the
// same Surface are one smooth or split surface: the edge between them is not
// drawn and shares its shading normal when Curved is set.
//
// All faces of one solid share their vertices bit for bit along common edges:
// triangulating every face by its own loops gives a closed mesh.
type Face struct {
	Loops   [][]Vec3
	Normal  Vec3
	Surface string
	Curved  bool
}

// Box is an axis-parallel box.
type Box struct{ Min, Max Vec3 }
