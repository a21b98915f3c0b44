package presets

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// ledger is a set of angles of one section that carry slabs along walls.
type ledger struct {
	section   stock.AngleSection
	legGap    unit.Length
	pitch     unit.Length
	shorterBy unit.Length // above 0: every angle is shorter than its run by this
	into      unit.Length // screw length in the wood
	suffix    string      // behind the names of the angles
	up        bool        // wall legs behind the slabs
	mitred    bool        // ends in inside corners
}

// anchorHole is the hole in the steel for the wall anchors.
const anchorHole unit.Length = 11

func newLedger(section, wallLeg string, legGap, pitch, shorterBy, thickness unit.Length) ledger {
	s, err := stock.Angle(section)
	if err != nil {
		panic(err) // the parameter is a choice of known sections
	}
	return ledger{section: s, legGap: legGap, pitch: pitch, shorterBy: shorterBy, into: min(thickness-12, 30), up: wallLeg == "up"}
}

// named tells the angles of one slab from those of another on the same wall.
func (l ledger) named(suffix string) ledger {
	l.suffix = " " + suffix
	return l
}

// behind is the gap that a slab on these angles keeps to a wall: with the wall
// legs up, leg, root and anchor heads stand in it.
func (l ledger) behind(gap unit.Length) unit.Length {
	if !l.up {
		return gap
	}
	return model.GapBehind(l.section, anchorHole, gap)
}

// carry puts one angle under a slab along each wall, named after the wall.
func (l ledger) carry(d *model.Design, slab string, walls ...*model.Wall) {
	for _, w := range walls {
		a := model.Angle(l.section).Along(w).Under(slab).ClearOf(l.legGap).
			Anchored(model.Anchors{Hole: anchorHole, Pitch: l.pitch, End: 40, OffArris: 105, NearHeel: true}).
			ScrewedUp(model.Screws{Hole: 6, Moving: true, Pitch: l.pitch, End: 65, Pilot: 4, Into: l.into})
		if l.up {
			a = a.LegUp()
		}
		if l.mitred {
			a = a.Mitred()
		}
		if l.shorterBy > 0 {
			a = a.ShorterBy(l.shorterBy)
		}
		d.Add(fmt.Sprintf("angle %s", w.Name+l.suffix), a)
	}
}
