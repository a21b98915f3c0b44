package cut

import (
	"slabwright/model"
	"slabwright/model/unit"
)

// Finish is what the wood takes of oil.
type Finish struct {
	Area   unit.Area // of all faces and edges of slabs and boards
	Litres float64   // for all coats
	Coats  int
}

// oilPerCoat is what a square metre of planed hardwood takes of oil in one coat.
// Common practice, no source: the tin says it better.
const (
	oilPerCoat = 0.05 // litres per m2
	oilCoats   = 2
)

// finishOf adds the faces of all slabs and boards, cut or still to be cut.
func finishOf(d *model.Design) Finish {
	f := Finish{Coats: oilCoats}
	for _, p := range d.Parts {
		if p.RollOut != nil {
			for _, b := range p.RollOut.Boards {
				f.Area += unit.Area(2 * float64(b.Length*b.Width+b.Width*b.Thickness+b.Thickness*b.Length))
			}
		}
		if p.Slab == nil {
			continue
		}
		f.Area += p.Slab.TopOutline().Area() + p.Slab.UnderOutline().Area()
		for i := range p.Slab.Edges {
			top, _ := p.Slab.Course(i)
			for k := 1; k < len(top); k++ {
				f.Area += unit.Area(float64(top[k].Sub(top[k-1]).Len()) * float64(p.Slab.Thickness))
			}
		}
	}
	f.Litres = float64(f.Area) / 1e6 * oilPerCoat * oilCoats
	return f
}
