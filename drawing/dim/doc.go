// Package dim dimensions a view: it finds places for dimension lines, figures,
// leaders, item numbers and captions such that everything can be read.
//
// A Plate is one view placed on paper with all that is there already; a list of
// requests says what is wanted, in the millimetres of the thing drawn. Place
// answers with items in millimetres of paper and with a report of what found no
// good place. Extent and Margins tell beforehand how much room a view needs at
// a scale.
//
// The work is done in three steps, without chance, so that the same view always
// comes out the same:
//
//  1. Dimension lines outside the view get a side and a row, the shortest
//     nearest to the outline, such that few extension lines cross dimension
//     lines (side.go), and stand off by the distances of ISO 129-1 (rows.go).
//     Values of running dimensions that lie close spread out like a fan (fan.go).
//  2. Every figure, leader and sign lists the places where it might stand, each
//     with a price for what is out of habit.
//  3. A solver picks one place for each so that the sum of the prices, and of
//     the prices of what overlaps, crosses or comes too near, is low (solve.go).
//
// Nothing is ever hidden behind a white box: if there is no free place, the
// report says so.
package dim
