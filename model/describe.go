package model

import (
	"fmt"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Name is what the part is called on sheets and in lists.
func (p *Part) Name() string { return p.ID }

// Blank is the length and width of the smallest rectangle along the reference
// edge that holds the slab: what it is cut from.
func (s *SlabPart) Blank() (length, width unit.Length) {
	low, high := s.TopOutline().Union(s.UnderOutline()).Bounds()
	return high.X - low.X, high.Y - low.Y
}

// Size is the size in the order length x width x thickness.
func (p *Part) Size() string {
	switch {
	case p.Slab != nil:
		l, w := p.Slab.Blank()
		return fmt.Sprintf("%.1f x %.1f x %.0f", float64(l), float64(w), float64(p.Slab.Thickness))
	case p.Angle != nil:
		return p.Angle.Title()
	case p.Cleat != nil:
		return p.Cleat.Title()
	case p.Rod != nil:
		return fmt.Sprintf("Ø%.0f x %.0f", float64(p.Rod.Dia), float64(p.Rod.InWall+p.Rod.InShelf+p.Rod.Gap))
	case p.Post != nil:
		return fmt.Sprintf("Ø%.0f x %.0f", float64(p.Post.Dia), float64(p.Post.Height))
	case p.RollOut != nil:
		return fmt.Sprintf("%.0f x %.0f x %.0f", float64(p.RollOut.Width), float64(p.RollOut.Depth), float64(p.RollOut.Height))
	}
	b := p.Bounds()
	return fmt.Sprintf("%.1f x %.1f x %.1f", float64(b.Max.X-b.Min.X), float64(b.Max.Y-b.Min.Y), float64(b.Max.Z-b.Min.Z))
}

// Footprint is the part as seen from above.
func (p *Part) Footprint() geom.Region {
	var out geom.Region
	for i, b := range p.Bodies {
		if i == 0 {
			out = b.Solid.Footprint()
			continue
		}
		out = out.Union(b.Solid.Footprint())
	}
	return out
}
