package stock

import (
	"math"
	"strings"

	"slabwright/model/unit"
)

// Steel is the density of steel: the masses of EN 10056-1 are its areas times
// 7850 kg/m3 (tested). EN 1991-1-1 gives 77 to 78.5 kN/m3, from memory.
const Steel unit.Density = 7850

// AngleSection is a hot-rolled steel angle with equal legs. Root is the fillet
// between the legs inside, Toe the rounding of the leg ends inside; the heel
// is sharp. BackMark is the distance of the hole line from the heel, MaxHole
// the largest hole on it.
type AngleSection struct {
	Name           string
	Leg, Thickness unit.Length
	Root, Toe      unit.Length
	Mass           unit.LineMass // as printed in the table
	Area           unit.Area     // as printed in the table
	BackMark       unit.Length
	MaxHole        unit.Length
	Source         string
	MarkSource     string // of BackMark and MaxHole
}

const (
	en10056 = "EN 10056-1 equal leg angles as in public section tables; recomputed from the shape within rounding"
	din997  = "DIN 997 back marks, from memory"
)

// The equal angles of EN 10056-1 that a wall bracket may be made of.
var (
	L30x30x3    = angle("L30x30x3", 30, 3, 5, 2.5, 1.36, 1.74, 17, 8.5)
	L40x40x4    = angle("L40x40x4", 40, 4, 6, 3, 2.42, 3.08, 22, 11)
	L40x40x5    = angle("L40x40x5", 40, 5, 6, 3, 2.97, 3.79, 22, 11)
	L45x45x5    = angle("L45x45x5", 45, 5, 7, 3.5, 3.38, 4.30, 25, 13)
	L50x50x5    = angle("L50x50x5", 50, 5, 7, 3.5, 3.77, 4.80, 30, 13)
	L50x50x6    = angle("L50x50x6", 50, 6, 7, 3.5, 4.47, 5.69, 30, 13)
	L60x60x5    = angle("L60x60x5", 60, 5, 8, 4, 4.57, 5.82, 35, 17)
	L60x60x6    = angle("L60x60x6", 60, 6, 8, 4, 5.42, 6.91, 35, 17)
	L60x60x8    = angle("L60x60x8", 60, 8, 8, 4, 7.09, 9.03, 35, 17)
	L70x70x6    = angle("L70x70x6", 70, 6, 9, 4.5, 6.38, 8.13, 40, 21)
	L70x70x7    = angle("L70x70x7", 70, 7, 9, 4.5, 7.38, 9.40, 40, 21)
	L80x80x6    = angle("L80x80x6", 80, 6, 10, 5, 7.34, 9.35, 45, 23)
	L80x80x8    = angle("L80x80x8", 80, 8, 10, 5, 9.63, 12.3, 45, 23)
	L90x90x9    = angle("L90x90x9", 90, 9, 11, 5.5, 12.2, 15.5, 50, 25)
	L100x100x8  = angle("L100x100x8", 100, 8, 12, 6, 12.2, 15.5, 55, 25)
	L100x100x10 = angle("L100x100x10", 100, 10, 12, 6, 15.0, 19.2, 55, 25)
)

func angle(name string, leg, t, root, toe unit.Length, mass unit.LineMass, cm2 float64, mark, hole unit.Length) AngleSection {
	return AngleSection{
		Name: name, Leg: leg, Thickness: t, Root: root, Toe: toe,
		Mass: mass, Area: unit.Area(cm2 * 100), BackMark: mark, MaxHole: hole,
		Source: en10056, MarkSource: din997,
	}
}

// Angles lists the steel angles, small ones first.
func Angles() []AngleSection {
	return []AngleSection{
		L30x30x3, L40x40x4, L40x40x5, L45x45x5, L50x50x5, L50x50x6, L60x60x5, L60x60x6, L60x60x8,
		L70x70x6, L70x70x7, L80x80x6, L80x80x8, L90x90x9, L100x100x8, L100x100x10,
	}
}

// Angle finds a steel angle by its name. "L50x50x6", "50 x 50 x 6" and
// "L 50×6" name the same one. An unknown name gives an error with the nearest
// one.
func Angle(name string) (AngleSection, error) {
	key := sectionKey(name)
	var names []string
	for _, a := range Angles() {
		if full := sectionKey(a.Name); full == key || full[strings.Index(full, "x")+1:] == key {
			return a, nil
		}
		names = append(names, a.Name)
	}
	return AngleSection{}, unknown("steel angle", name, names)
}

// sectionKey reduces a section name to its numbers: "50x50x6".
func sectionKey(name string) string {
	s := strings.NewReplacer(" ", "", "×", "x", "*", "x").Replace(strings.ToLower(name))
	return strings.TrimPrefix(s, "l")
}

// ShapeArea is the area of the section computed from its shape,
// t(2b-t) + (1-pi/4)(r1^2 - 2 r2^2): two legs, the fillet in the root, the
// roundings off the two toes.
func (a AngleSection) ShapeArea() unit.Area {
	b, t, r1, r2 := float64(a.Leg), float64(a.Thickness), float64(a.Root), float64(a.Toe)
	return unit.Area(t*(2*b-t) + (1-math.Pi/4)*(r1*r1-2*r2*r2))
}
