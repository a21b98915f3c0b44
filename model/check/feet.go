package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/calc/body"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// roomToStretch is the depth of foot room in which legs can be stretched.
const roomToStretch unit.Length = 800

// stretch judges how far the feet reach before a wall, straight in from the
// middle of the seat: toes of somebody whose shanks stand upright must have
// room.
func (s Site) stretch(z model.Zone) (find.Finding, bool) {
	slab := s.slabOf(z)
	_, person, ok := s.seatOfZone(z)
	if z.Kind != model.FootZone || slab == nil || !ok {
		return find.Finding{}, false
	}
	toes, err := person.Body().Estimate(body.BellyToToe)
	if err != nil {
		return find.Finding{}, false
	}
	f := frontOf(slab)
	e := f.extentOf(z.Plan)
	belly, far := f.at((e.left+e.right)/2, -f.bulge), f.at((e.left+e.right)/2, roomToStretch)
	depth := unit.Length(0)
	for _, span := range s.Room.Plan(z.Floor+z.Height/2).Inside(belly, far) {
		if span[0] == 0 {
			depth = unit.Length(span[1]) * (roomToStretch + f.bulge)
		}
	}
	if depth >= roomToStretch {
		return find.Finding{}, false
	}
	need := toes.Mean
	if toes.SD == 0 {
		need = toes.High
	}
	wall := belly.Lerp(far, float64(depth/(roomToStretch+f.bulge)))
	out := find.Finding{
		Title: "Room to stretch for " + z.Name, At: at(wall.Up(z.Floor)), Line: z.Line,
		Measured: spread(depth, toes.SD), Required: limit(find.AtLeast, need),
		Assumed: []find.Assumption{{What: fmt.Sprintf("toes %.0f mm in front of the belly with upright shanks, barefoot (%s)", float64(need), toes.Basis), Source: toes.Source}},
		Why:     fmt.Sprintf("From the belly at the front edge to the wall there are %.0f mm; with upright shanks the toes need %.0f mm, and to stretch the legs %.0f mm are usual.", float64(depth), float64(need), float64(roomToStretch)),
		Basis:   "ANSUR II regression for the toes; foot room 800 mm deep: EN 527-1 as quoted in a public table",
	}
	if w := nearestWall(s.Room, wall); w != nil {
		out.Walls = []string{w.Name}
	}
	out = out.Judge()
	if out.Status == find.Fail {
		out.Status = find.Warn
		out.Fix = []find.Fix{hint("make %s %.0f mm deeper there, or sit that much further out", slab.ID, float64(up(need-depth)))}
		return out, true
	}
	if lack := need + body.LegStretch.Value - depth; lack > 0 {
		out.Status = find.Note
		out.Why += fmt.Sprintf(" The toes have room; to slide the feet forward by %.0f mm, %.0f mm are missing.", float64(body.LegStretch.Value), float64(up(lack)))
		out.Assumed = append(out.Assumed, find.Assumption{What: body.LegStretch.Name, Source: body.LegStretch.Source})
		out.Fix = []find.Fix{hint("sit %.0f mm further out to stretch the legs, or put the feet up on a rest", float64(up(lack)))}
	}
	return out, true
}
