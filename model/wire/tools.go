package wire

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/wiring"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Guide tells what leads a tool.
type Guide string

// Guides of tools.
const (
	ByFence    Guide = "fence along an edge"
	ByBatten   Guide = "batten beside it"
	ByTemplate Guide = "template"
	ByStand    Guide = "drill stand"
	ByJig      Guide = "jig on the edge"
)

// Cutting is one step of work in a slab for cables or rods, and the tool for it.
type Cutting struct {
	Work   model.Feature
	Rebate bool        // for the lid, cut before the groove
	Bit    unit.Length // diameter; of a hole, that of the hole
	Long   unit.Length // how long the bit must be
	Tracks int         // side by side
	Passes int         // one below the other; of a hole: faces that it is bored from
	Each   unit.Length // depth of a pass
	Guide  Guide
	From   unit.Length // from the edge that guides, or from the nearest edge
	Room   unit.Length // that the tool has, and what it
	Needs  unit.Length // needs
}

// What tools need. (Common practice, no source.)
const (
	fenceMost  unit.Length = 250 // reach of a router's fence
	routerBase unit.Length = 75  // half the width of a router's base
	drillBody  unit.Length = 40  // half the width of a drill
	bitHeld    unit.Length = 60  // of a bit, in the chuck and in the jig
)

// LongestBit is that of the longest usual bit for bores along a slab (common
// practice, no source).
const LongestBit unit.Length = 460

// Cuttings lists the steps of all grooves, pockets, holes and edge bores of a
// slab. Slots are sawn and not listed.
func Cuttings(p *model.Part) []Cutting {
	var out []Cutting
	for _, f := range p.Slab.Features {
		switch f.Kind {
		case model.Groove:
			if f.Lid != (model.Lid{}) {
				out = append(out, routed(p, f, f.Lid.Width, f.Lid.Thick, true))
			}
			out = append(out, routed(p, f, f.Dia, f.Depth, false))
		case model.Pocket:
			low, high := f.Outline.Bounds()
			c := routed(p, f, min(high.X-low.X, high.Y-low.Y), f.Depth, false)
			c.Guide = ByTemplate
			out = append(out, c)
		case model.Through:
			near := edgeFrom(p, f.At)
			out = append(out, Cutting{Work: f, Bit: f.Dia, Long: p.Slab.Thickness + 5, Passes: 2, Each: p.Slab.Thickness / 2, Guide: ByStand, From: near, Room: near, Needs: max(drillBody, f.Dia/2)})
		case model.Bore:
			long := f.Depth + bitHeld
			out = append(out, Cutting{Work: f, Bit: f.Dia, Long: long, Passes: 1, Each: f.Depth, Guide: ByJig, Room: LongestBit, Needs: long})
		}
	}
	return out
}

// routed is a groove, a rebate or a pocket: passes no deeper than half the bit,
// tracks that overlap until the width is cut.
func routed(p *model.Part, f model.Feature, width, depth unit.Length, rebate bool) Cutting {
	c := Cutting{Work: f, Rebate: rebate, Long: depth, Bit: wiring.Bit(width), Guide: ByBatten, Needs: routerBase, From: farthest(p)}
	if c.Bit > 0 {
		c.Passes, c.Each = wiring.Passes(depth, c.Bit)
		c.Tracks = int(math.Ceil(float64(width/c.Bit) - 1e-9))
	}
	line := f.Path
	if len(line) == 0 {
		line = []geom.Vec{f.Outline.Centroid()}
	}
	for _, v := range line {
		c.From = min(c.From, edgeFrom(p, v))
	}
	c.Room = c.From
	if from, ok := alongEdge(p, f.Path); ok && from <= fenceMost {
		c.Guide, c.From = ByFence, from
	}
	return c
}

func farthest(p *model.Part) unit.Length {
	long, deep := p.Slab.Blank()
	return long + deep
}

// edgeFrom is how far a place lies inside the outline of a slab.
func edgeFrom(p *model.Part, at geom.Vec) unit.Length {
	return -p.Slab.TopOutline().Intersect(p.Slab.UnderOutline()).DistanceTo(at)
}

// alongEdge tells whether a path runs straight beside a sawn edge, and how far
// from it.
func alongEdge(p *model.Part, path []geom.Vec) (from unit.Length, ok bool) {
	if len(path) != 2 {
		return 0, false
	}
	for _, e := range p.Slab.Edges {
		l := geom.Through(e.Start, e.End)
		a, b := unit.Length(math.Abs(float64(l.Side(path[0])))), unit.Length(math.Abs(float64(l.Side(path[1]))))
		if off := unit.Length(math.Abs(float64(a - b))); !e.Waney && off < 0.2 && (!ok || a < from) {
			from, ok = a, true
		}
	}
	return from, ok
}
