// Package motion finds a way for a rigid part between things that do not move:
// how a slab gets from its place out into the room, or, read backwards, in. It
// answers with a way, with "no way" where none exists, or says that it gave up.
//
// The poses of the part (three ways to shift it, three to turn it) are cut into
// boxes. The signed separation of two convex bodies changes by no more than their
// points move, so one measurement in the middle of a box can prove that every
// pose in it is free, or that every pose in it collides. Boxes that are neither
// are cut on along the most promising way, until that way lies in free boxes
// alone, or every way is shut by boxes that collide. No step of this is a guess:
// "no way" is as sure as the measures of the bodies.
//
// Basis: separating axes of convex polytopes; cell decomposition of the space of
// poses, as in any textbook of motion planning. Checked against closed forms for
// long panels (corridor corner, tilting in, swinging), published section cases
// and a lattice search on random small cases.
package motion
