package model

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Board is one board of a roll-out table, in the table's own axes: x from the
// left, y from the back, z from the floor. Length runs along the grain. Row
// counts the sizes from 1: boards of one size share theirs.
type Board struct {
	Name                     string
	Box                      geom.Box
	Row                      int
	Mass                     unit.Mass
	Length, Width, Thickness unit.Length
}

// newBoard finds which way a board lies: uprights have their grain upright,
// all others along the table.
func newBoard(name string, box geom.Box) Board {
	d := box.Max.Add(box.Min.Mul(-1))
	b := Board{Name: name, Box: box}
	switch {
	case d.X <= d.Y && d.X <= d.Z:
		b.Length, b.Width, b.Thickness = d.Z, d.Y, d.X
	case d.Y <= d.Z:
		b.Length, b.Width, b.Thickness = d.X, d.Z, d.Y
	default:
		b.Length, b.Width, b.Thickness = d.X, d.Y, d.Z
	}
	return b
}

// boards are a top, two sides, a back rail and a shelf.
func (p RollOutPiece) boards() []Board {
	w, dp, h, t, c := p.width, p.depth, p.height, p.board, p.castor
	rows := map[[3]unit.Length]int{}
	var out []Board
	add := func(name string, x0, x1, y0, y1, z0, z1 unit.Length) {
		b := newBoard(name, geom.Box{Min: geom.V(x0, y0).Up(z0), Max: geom.V(x1, y1).Up(z1)})
		b.Mass = p.species.Density.Mass(unit.Volume(float64(b.Length) * float64(b.Width) * float64(b.Thickness)))
		size := [3]unit.Length{b.Length, b.Width, b.Thickness}
		if rows[size] == 0 {
			rows[size] = len(rows) + 1
		}
		b.Row = rows[size]
		out = append(out, b)
	}
	add("top", 0, w, -dp, 0, h-t, h)
	add("left side", 0, t, -dp, 0, c, h-t)
	add("right side", w-t, w, -dp, 0, c, h-t)
	add("back rail", t, w-t, -t, 0, max(c+t, h-t-120), h-t)
	add("shelf", t, w-t, -dp, 0, c, c+t)
	return out
}
