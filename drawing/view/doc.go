// Package view turns the skins of solids into lines to draw: plans, elevations,
// sections and axonometric pictures, with hidden lines told apart from visible
// ones.
//
// Everything is computed from the faces, without a raster. A view is in true
// millimetres of its plane, x to the right and y up, and knows nothing of
// paper or scale.
//
//	v := view.Of(scene, view.Section(geom.Through(a, b)))
//
// How it works: the faces are turned so that the viewer looks along -w (skin),
// cut if the look is a section (section, clip), and reduced to the edges worth
// drawing (edges). Every edge is then compared with the faces in front of it
// (tile, hide), lines that fall together are thinned out by the order of
// ISO 128 (coincide), and touching pieces are joined (join).
package view
