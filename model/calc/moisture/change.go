package moisture

import (
	"fmt"

	"slabwright/model/unit"
)

// Coefficient is a relative movement per per cent of moisture: 0.0038 means
// 0.38 % of the size for each per cent.
type Coefficient float64

// Lowest and Highest bound the moisture for which the coefficients of movement
// are meant (Wood Handbook, chapter 13).
const (
	Lowest  Content = 6
	Highest Content = 14
)

// Lengthwise is an upper bound of the movement along the grain of sound, straight
// wood. Shrinkage from green to ovendry is 0.1 to 0.2 % over about 30 % of
// moisture (Wood Handbook, chapter 4), so 0.00003 to 0.00007 for each per cent;
// with wild grain more.
const Lengthwise Coefficient = 0.0001

// Sawn tells how the rings stand in a slab seen at its end.
type Sawn string

// Ways to saw a slab: rings flat to its faces, upright, or aslant.
const (
	Flat    Sawn = "flat"
	Quarter Sawn = "quarter"
	Mixed   Sawn = "mixed"
)

// Ways lists the ways to saw a slab.
var Ways = []Sawn{Flat, Quarter, Mixed}

// Across is the movement over the width of a slab, from that along the rings
// and that along the radius. Rings at 45 degrees to the width move like the
// mean of both; a mixed slab is taken so.
func Across(radial, tangential Coefficient, s Sawn) (Coefficient, error) {
	switch s {
	case Flat:
		return tangential, nil
	case Quarter:
		return radial, nil
	case Mixed:
		return (radial + tangential) / 2, nil
	}
	return 0, fmt.Errorf("a slab sawn %q: there are %v", s, Ways)
}

// Change is how much a size grows, below zero shrinks, when the moisture goes
// from one content to another: Wood Handbook equation 13-2. The size is that at
// the first content.
func Change(size unit.Length, c Coefficient, from, to Content) unit.Length {
	return size * unit.Length(float64(c)*float64(to-from))
}

// Bow is how far the middle of a board rises over the line between its edges
// when one face is moister than the other and the moisture changes evenly
// through the thickness: the faces differ in length by c times the difference,
// so that the board bends to a radius of thickness over that strain, and the
// rise of that arc over the width is width squared over eight radii.
func Bow(width, thickness unit.Length, c Coefficient, difference Content) unit.Length {
	return width * width / 8 / thickness * unit.Length(float64(c)*float64(difference))
}
