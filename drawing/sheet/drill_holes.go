package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/unit"
)

// wallHole is one hole to be drilled into a wall.
type wallHole struct {
	name   string // row and number: "a1"
	part   *model.Part
	hole   string      // its name in the part
	s      unit.Length // along the wall from its left corner
	z      unit.Length // above the floor
	dia    unit.Length // in the part, or in the wall for rods
	inWall unit.Length // depth in the wall; 0: as the anchor asks
	row    int
}

// wallHoles gives the holes that brackets and rods ask of a wall, the lowest row
// first, from left to right.
func (m *maker) wallHoles(w *model.Wall) []wallHole {
	var out []wallHole
	for _, p := range m.parts(func(p *model.Part) bool { return p.Bracket() != nil || p.Rod != nil }) {
		if b := p.Bracket(); b != nil && b.On().Wall == w {
			for _, h := range b.On().In(model.WallLeg) {
				out = append(out, wallHole{part: p, hole: h.Name, s: b.On().Start + h.X, z: b.HeightOf(h), dia: h.Dia})
			}
		}
		if r := p.Rod; r != nil && r.Wall == w {
			out = append(out, wallHole{part: p, s: r.At, z: r.Height, dia: r.WallHole, inWall: r.InWall})
		}
	}
	slices.SortStableFunc(out, func(a, b wallHole) int {
		if c := cmp.Compare(math.Round(float64(a.z)), math.Round(float64(b.z))); c != 0 {
			return c
		}
		return cmp.Compare(a.s, b.s)
	})
	return out
}

// numbered names holes by row, lowest first, and number, counted from the
// corner at which the sizes start.
func numbered(holes []wallHole, fromRight bool) []wallHole {
	out := slices.Clone(holes)
	for i := range out {
		if i > 0 {
			out[i].row = out[i-1].row
			if math.Round(float64(out[i].z)) != math.Round(float64(out[i-1].z)) {
				out[i].row++
			}
		}
	}
	if fromRight {
		slices.SortStableFunc(out, func(a, b wallHole) int {
			return cmp.Or(cmp.Compare(a.row, b.row), cmp.Compare(b.s, a.s))
		})
	}
	n := 0
	for i := range out {
		n++
		if i > 0 && out[i].row != out[i-1].row {
			n = 1
		}
		out[i].name = fmt.Sprintf("%s%d", rowLetter(out[i].row), n)
	}
	return out
}

func rowLetter(i int) string {
	const letters = "abcdefghjkmnpqrstuvwxyz"
	return strings.Repeat(letters[i%len(letters):i%len(letters)+1], 1+i/len(letters))
}
