package sheet

import (
	"strings"

	"slabwright/model"
	"slabwright/model/geom"
)

// cutting is one vertical section of the set: where it cuts, and who sits
// there. Its line starts on the back edge of the slab and runs to the wall.
type cutting struct {
	letter string
	name   string
	slab   *model.Part
	line   geom.Line
	seat   *model.Seat
	zones  []model.Zone
}

// cutTitle is what stands on the sheet of a section and below its picture.
func (m *maker) cutTitle(c cutting) string {
	return m.sayf("Section %[1]s-%[1]s through %[2]s", c.letter, c.name)
}

// cuttings are the sections of the set: one through every seat, and one
// through the middle of every worktop that no seat's section meets.
func (m *maker) cuttings() []cutting {
	next := m.letters()
	var out []cutting
	d := m.b.Design
	tops := m.worktops()
	for i := range d.Seats {
		seat := &d.Seats[i]
		if slab := d.Part(seat.At); slab != nil && sound(slab) {
			c := cutting{letter: next(), name: seat.Name, slab: slab, line: across(slab, geom.V(seat.Centre, 0)), seat: seat}
			for _, z := range d.Zones {
				if z.Seat == seat.Name {
					c.zones = append(c.zones, z)
				}
			}
			out = append(out, c)
		}
	}
	for _, p := range tops {
		met := false
		for _, c := range out {
			met = met || len(p.Outline().Inside(c.line.P.Sub(c.line.D.Mul(4000)), c.line.P.Add(c.line.D.Mul(1000)))) > 0
		}
		if !met {
			out = append(out, cutting{letter: next(), name: m.pass(p.ID), slab: p, line: across(p, geom.V(p.Slab.TopOutline().Centroid().X, 0))})
		}
	}
	return out
}

// across is the line square to a slab's back edge through a place of its own axes.
func across(slab *model.Part, at geom.Vec) geom.Line {
	p := slab.Slab.Pose
	return geom.Line{P: p.Plan(at), D: geom.V(0, 1).Turn(p.Turn)}
}

// worktops are the slabs that one works at, without the shelves.
func (m *maker) worktops() []*model.Part {
	return m.parts(func(p *model.Part) bool { return p.Kind == model.KindSlab })
}

// letters gives the letters of sections one after the other: those that name
// no corner of the room, without I, O and Q.
func (m *maker) letters() func() string {
	const usable = "ABCDEFGHJKLMNPRSTUVWXYZ"
	taken := map[string]bool{}
	for _, c := range m.b.Room.Corners {
		taken[strings.ToUpper(c.Name)] = true
	}
	i, round := 0, 1
	return func() string {
		for {
			if i == len(usable) {
				i, round = 0, round+1
			}
			l := strings.Repeat(usable[i:i+1], round)
			i++
			if !taken[l] {
				return l
			}
		}
	}
}
