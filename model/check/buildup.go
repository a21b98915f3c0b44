package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/calc/body"
	"slabwright/model/find"
	"slabwright/model/sit"
	"slabwright/model/unit"
)

// How thick the top with all that is below it may be over the thighs.
const (
	enFront     unit.Length = 55 // within frontStrip of the front edge
	enBehind    unit.Length = 80 // further in
	frontStrip  unit.Length = 200
	ownMovement             = 20
)

var buildUp = Rule{
	ID: "build-up", Title: "Slab and steel leave room between elbow and thigh",
	Basis: "EN 527-1 as quoted in a public table: 55 mm at most with all below it in the front 200 mm, 80 mm further in; elbow above thigh: ANSUR II regression",
	Why:   "Between the elbow and the top of the thigh most people have 65 mm. A thick slab with steel below it uses up more: then either the arms lie too high or the thighs are wedged, at any height of the surface.",
	Run:   func(s Site) []find.Finding { return s.eachSitter(s.builtUp) },
}

// Layers is how far the slab and the steel below it reach down over somebody's
// thighs: within 200 mm of the front, and further in. The part is what is lowest
// in front. Free is what is left of the room between elbow and thigh after 20 mm
// to move and the front; negative: the surface comes above the elbows.
type Layers struct {
	Front, Behind         unit.Length
	FrontName, BehindName string
	FrontPart             string
	Room, Free            unit.Length
}

// LayersOver gives them for somebody at a seat of the design.
func (s Site) LayersOver(x *sit.Sitter) Layers {
	if s.shapes == nil {
		s.shapes = shapesOf(s.Design)
	}
	top := x.Slab.Slab.Top - x.Floor
	l := Layers{Front: x.Slab.Slab.Thickness, FrontName: x.Slab.ID, FrontPart: x.Slab.ID}
	l.Behind, l.BehindName = l.Front, l.FrontName
	for _, z := range s.Design.Zones {
		if z.Seat != x.Seat.Name || z.Person != x.Person.Name || z.Kind == model.FootZone {
			continue
		}
		for _, i := range s.over(z) {
			if i.part == nil || i.low >= top || i.low < top-200 {
				continue
			}
			if e := s.extentIn(x, i); e < frontStrip && top-i.low > l.Front {
				l.Front, l.FrontName, l.FrontPart = top-i.low, i.name, i.part.ID
			} else if e >= frontStrip && top-i.low > l.Behind {
				l.Behind, l.BehindName = top-i.low, i.name
			}
		}
	}
	l.Room = x.Of(body.ElbowAboveThigh).Mean
	l.Free = l.Room - ownMovement - l.Front
	return l
}

func (s Site) builtUp(x *sit.Sitter) []find.Finding {
	l := s.LayersOver(x)
	front, part, behind := l.Front, l.FrontPart, l.Behind
	room := x.Of(body.ElbowAboveThigh)
	f := about("Build-up over the thighs of", x)
	f.Measured, f.Required = mm(front), limit(find.AtMost, enFront)
	f = f.Judge()
	involve(&f, part, "")
	f.Why = fmt.Sprintf("From the surface down to %s there are %.0f mm in the front %.0f mm, %.0f mm further in (%s; %.0f mm are usual). Elbows are %.0f mm above the thighs",
		l.FrontName, float64(front), float64(frontStrip), float64(behind), l.BehindName, float64(enBehind), float64(room.Mean))
	left := l.Free
	switch {
	case hundredth(left) <= -0.5:
		f.Why += fmt.Sprintf("; %d mm to move and the build-up take %.0f mm more than that: the surface comes that far above the elbows.", ownMovement, float64(-left))
	default:
		f.Why += fmt.Sprintf("; %d mm to move and the build-up leave %.0f mm.", ownMovement, float64(max(0, left)))
	}
	f.Assumed = []find.Assumption{{What: fmt.Sprintf("elbow above thigh %.0f to %.0f mm for 9 in 10 (%s)", float64(room.Low), float64(room.High), room.Basis), Source: room.Source}}
	if f.Status == find.Fail {
		f.Status = find.Warn
		f.Fix = []find.Fix{hint("thin the front %.0f mm from below by %.0f mm, or keep steel out of it", float64(frontStrip), float64(up(front-enFront)))}
		if t := x.Slab.Slab.Thickness; part == x.Slab.ID {
			f.Fix = append(f.Fix, s.set(hint("or take the slab %.0f mm thinner", float64(up(t-enFront))), "thickness", t, down(enFront)))
		}
	} else if behind > enBehind {
		f.Status = find.Note
		f.Fix = []find.Fix{hint("further in than %.0f mm keep steel %.0f mm higher, or out of the width of the legs", float64(frontStrip), float64(up(behind-enBehind)))}
	}
	return []find.Finding{f}
}

// extentIn is how far in from the straight front an intruder begins.
func (s Site) extentIn(x *sit.Sitter, i intruder) unit.Length {
	near := farthest
	for _, loop := range i.over.Loops() {
		for _, v := range loop {
			_, in := x.From(v)
			near = min(near, in)
		}
	}
	return near
}
