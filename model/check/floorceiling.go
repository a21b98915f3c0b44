package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// standingRoom is the height up to which somebody who measured the room stood
// upright in it: lower than any ceiling, even an unmeasured one.
const standingRoom unit.Length = 2000

var floorCeiling = Rule{
	ID: "floor-ceiling", Title: "Every part is between floor and ceiling", Fit: true,
	Basis: "geometry: highest and lowest place of every part; floor as levelled, ceiling as measured",
	Why:   "Heights count from one datum. Where the floor falls or rises between the corners, or the ceiling is lower than thought, a part that fits in plan does not stand or hang where it is drawn.",
	Run: func(s Site) []find.Finding {
		out := unbuilt(s.Design)
		if low := s.extreme(func(p *model.Part, box geom.Box) unit.Length { return box.Min.Z - s.floorUnder(p) }); low != nil {
			out = append(out, s.aboveFloor(low))
		}
		if high := s.extreme(func(_ *model.Part, box geom.Box) unit.Length { return -box.Max.Z }); high != nil {
			out = append(out, s.belowCeiling(high))
		}
		return out
	},
}

// extreme finds the part for which a measure is least. A table on castors and
// a table leg stand on the floor and are left out.
func (s Site) extreme(of func(*model.Part, geom.Box) unit.Length) *model.Part {
	var best *model.Part
	var least unit.Length
	for _, p := range s.Design.Parts {
		if len(p.Bodies) == 0 || p.RollOut != nil || p.Post != nil {
			continue
		}
		if v := of(p, s.shapes[p]().bounds); best == nil || v < least {
			best, least = p, v
		}
	}
	return best
}

func (s Site) floorUnder(p *model.Part) unit.Length { return s.Room.FloorAt(p.Centroid().Flat()) }

func (s Site) aboveFloor(p *model.Part) find.Finding {
	gap := p.Bounds().Min.Z - s.floorUnder(p)
	f := find.Finding{
		Title: "Room above the floor", Parts: []string{p.ID}, At: at(p.Centroid().Flat().Up(p.Bounds().Min.Z)),
		Measured: mm(gap), Required: limit(find.AtLeast, 0.0),
		Assumed: []find.Assumption{s.assumedFloor()},
		Why:     fmt.Sprintf("The lowest part, %s, is %.0f mm above the floor below it.", p.ID, float64(gap)),
	}.Judge()
	if f.Status == find.Fail {
		f.Why = fmt.Sprintf("%s reaches %.0f mm below the floor.", capital(p.ID), -float64(gap))
		f.Fix = []find.Fix{hint("put %s at least %.0f mm higher", p.ID, float64(up(-gap)))}
	}
	return f
}

func (s Site) assumedFloor() find.Assumption {
	if len(s.Room.Floor) < 2 {
		return find.Assumption{What: "the floor is level: its heights at the corners were not measured", Source: "job file"}
	}
	low, high := s.Room.Floor[0].Height, s.Room.Floor[0].Height
	for _, m := range s.Room.Floor {
		low, high = min(low, m.Height), max(high, m.Height)
	}
	return find.Assumption{What: fmt.Sprintf("the floor differs by %.0f mm between %s", float64(high-low), count(len(s.Room.Floor), "measured place", "measured places")), Source: "job file"}
}

func (s Site) belowCeiling(p *model.Part) find.Finding {
	top := p.Bounds().Max.Z
	f := find.Finding{Title: "Room below the ceiling", Parts: []string{p.ID}, At: at(p.Centroid().Flat().Up(top)), Measured: mm(top)}
	if s.Room.Ceiling > 0 {
		f.Required = limit(find.AtMost, s.Room.Ceiling)
		f = f.Judge()
		f.Why = fmt.Sprintf("The highest part, %s, ends at %.0f mm, under a ceiling at %.0f mm.", p.ID, float64(top), float64(s.Room.Ceiling))
		if f.Status == find.Fail {
			f.Why = fmt.Sprintf("%s ends at %.0f mm, above the ceiling at %.0f mm.", capital(p.ID), float64(top), float64(s.Room.Ceiling))
			f.Fix = []find.Fix{hint("hang %s at least %.0f mm lower", p.ID, float64(up(top-s.Room.Ceiling)))}
		}
		return f
	}
	if top > standingRoom {
		u := unknown(fmt.Sprintf("%s ends at %.0f mm, and nobody has measured the ceiling.", p.ID, float64(top)), hint("measure the ceiling at its lowest place and write it into the job file"))
		u.Title, u.Parts, u.At, u.Measured = f.Title, f.Parts, f.At, f.Measured
		return u
	}
	f.Required = limit(find.AtMost, standingRoom)
	f = f.Judge()
	f.Why = fmt.Sprintf("The highest part, %s, ends at %.0f mm.", p.ID, float64(top))
	f.Assumed = []find.Assumption{{What: fmt.Sprintf("the ceiling, which was not measured, is higher than %.0f mm", float64(standingRoom)), Source: practice}}
	return f
}
