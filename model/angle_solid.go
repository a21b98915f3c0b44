package model

import "slabwright/model/geom"

// solid is the rolled bar with its holes, at its place.
func (a *AnglePart) solid() geom.Solid {
	s := a.Section
	bar := geom.AngleBar{
		SeatWidth: s.Leg, WallWidth: s.Leg, Thickness: s.Thickness, Root: s.Root, Toe: s.Toe,
		Length: a.Length, LegUp: a.LegUp, Chord: chord,
		Start: geom.BarEnd{Plan: a.Left.Mitre}, End: geom.BarEnd{Plan: a.Right.Mitre},
	}
	for _, h := range a.Holes {
		leg := geom.SeatLeg
		if h.Leg == WallLeg {
			leg = geom.WallLeg
		}
		bar.Holes = append(bar.Holes, geom.BarHole{Name: h.Name, Leg: leg, X: h.X, FromHeel: h.FromHeel, Dia: h.Dia, Slot: h.Slot, Along: h.Along, SinkDia: h.Sink})
	}
	return bar.Solid().Place(a.Pose())
}
