package check

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/calc/steelangle"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/hold"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// spreadOf is the length of a leg that a load at its toe bends: about twice the
// distance to the wall leg, common practice for a plate that stands out.
const spreadOf = 2

var angleStrength = Rule{
	ID: "angle-strength", Title: "The steel angle carries the slab",
	Basis: "EN 1993-1-1, S235, elastic, gamma_M0 1.0: seat leg as a plate that stands out, bar as a beam from anchor to anchor on its principal axes, twist; von Mises; net section at holes",
	Why:   "The seat leg bends where a load stands at its toe, and the bar sags and twists between its anchors. A leg that yields lets the slab's edge drop for good.",
	Run: func(s Site) []find.Finding {
		st := s.statics()
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Angle == nil {
				continue
			}
			if slab, ok := st.Of(p.Angle.Under); ok && slab.Trouble == "" {
				out = append(out, s.bar(p, slab, st))
				continue
			}
			u := unknown(fmt.Sprintf("what %s carries is not known.", p.ID), hint("mend the slab on it first"))
			u.Parts = []string{p.ID}
			out = append(out, u)
		}
		if out == nil {
			out = append(out, find.Finding{Status: find.Pass, Why: "No steel angle carries anything."})
		}
		return out
	},
}

// bent is the stress at the worst place of an angle.
type bent struct {
	all, leg, bar, twist float64 // N/mm2
	at                   unit.Length
	load                 float64 // N/mm
	arm                  unit.Length
	sag                  unit.Length
	of                   hold.Case
}

// bar judges an angle in its worst design case.
func (s Site) bar(p *model.Part, slab hold.Slab, st *hold.Statics) find.Finding {
	a := p.Angle
	var worst bent
	for _, c := range slab.Cases {
		for _, r := range c.Runs {
			if r.Carrier != p.ID || !c.Design {
				continue
			}
			if b := stressIn(a, rolledOf(a.Section), r); b.all > worst.all {
				worst, worst.of = b, c
			}
		}
	}
	f := find.Finding{
		Parts: []string{p.ID}, Walls: []string{a.Wall.Name}, At: at(a.Pose().Space(seatPlace(worst.at, worst.arm))),
		Measured: &find.Quantity{Value: round3(worst.all), Unit: "N/mm2"}, Required: &find.Limit{Value: steelangle.Yield, Relation: find.AtMost, Unit: "N/mm2"},
		Assumed: st.Assumed,
	}.Judge()
	f.Why = fmt.Sprintf("%s (%s) is stressed by %.0f N/mm2 %.0f mm from its left end (%s): %.0f from its seat leg under %.1f N/mm %.0f mm from the wall, %.0f from sagging and %.0f from twisting between its anchors, which is %.2f mm.",
		capital(p.ID), a.Section.Name, worst.all, float64(worst.at), caseText(worst.of), worst.leg, worst.load, float64(worst.arm), worst.bar, worst.twist, float64(worst.sag))
	if f.Status == find.Fail {
		f.Fix = s.angleFixes(a, slab, p.ID)
	}
	return f
}

// stressIn is the worst place of an angle of some shape under what it takes.
func stressIn(a *model.AnglePart, shape steelangle.Shape, r hold.Run) bent {
	stretches := stretchesOf(&a.Mounted)
	var worst bent
	for _, l := range legLoads(a, r) {
		b := bent{at: l.Along, arm: l.FromHeel, load: l.PerMM()}
		b.leg = steelangle.LegStress(shape, b.load, b.arm)
		for _, t := range stretches {
			if l.Along < t.from || l.Along > t.to {
				continue
			}
			moment, sag, twist := t.bends(shape, r, l.Along)
			b.bar, b.sag, b.twist = steelangle.BarStress(shape, moment), sag, steelangle.TwistStress(shape, twist)
		}
		b.all = steelangle.Combined(b.leg, b.bar, b.twist)
		if net := netStress(a, shape, b); net > b.all {
			b.all, b.leg = net, net
		}
		if b.all > worst.all {
			worst = b
		}
	}
	return worst
}

// legLoads are the line loads of a seat leg, each spread over the length of leg
// that bends with it.
func legLoads(a *model.AnglePart, r hold.Run) []hold.LineLoad {
	out := make([]hold.LineLoad, len(r.Line))
	for i, l := range r.Line {
		half := max(l.Width/2, spreadOf*(l.FromHeel-a.Section.Thickness)/2)
		low, high := max(a.Left.Short(l.FromHeel), l.Along-half), min(a.Length-a.Right.Short(l.FromHeel), l.Along+half)
		if high-low < l.Width/2 { // in the tip of a mitre: what presses there has this much leg at least
			low, high = l.Along-l.Width/4, l.Along+l.Width/4
		}
		n := hold.LineLoad{Along: l.Along, Width: high - low, FromHeel: l.FromHeel}
		var turn float64
		for _, o := range r.Line {
			from, to := o.Along-o.Width/2, o.Along+o.Width/2
			if over := min(to, high) - max(from, low); over > 0 && o.Width > 0 {
				part := o.Force * float64(over/o.Width)
				n.Force += part
				turn += part * float64(o.FromHeel)
			}
		}
		if n.Force > 0 {
			n.FromHeel = unit.Length(turn / n.Force)
		}
		out[i] = n
	}
	return out
}

// stretch is a part of a bar between two anchors, or beyond the last one.
type stretch struct {
	from, to unit.Length
	held     unit.Length // of one beyond the last anchor: where it is held
	beyond   bool
}

// stretchesOf are the stretches of a bar.
func stretchesOf(a *model.Mounted) []stretch {
	at := a.Places(model.WallLeg)
	if len(at) == 0 {
		return []stretch{{from: 0, to: a.Length}}
	}
	out := []stretch{{from: 0, to: at[0], held: at[0], beyond: true}}
	for i := 1; i < len(at); i++ {
		out = append(out, stretch{from: at[i-1], to: at[i]})
	}
	last := at[len(at)-1]
	return append(out, stretch{from: last, to: a.Length, held: last, beyond: true})
}

// bends gives moment and twist at a place of a stretch, and how far it sags:
// between two anchors a simple beam, and a shaft that is held at both ends;
// beyond the last anchor a cantilever.
func (t stretch) bends(shape steelangle.Shape, r hold.Run, x unit.Length) (moment float64, sag unit.Length, twist float64) {
	beam := steelangle.Span{Length: t.to - t.from}
	ei := steelangle.Modulus * shape.Section().V
	for _, l := range r.Line {
		turn := l.Force * float64(l.FromHeel)
		switch d := float64(abs(l.Along - t.held)); {
		case l.Along < t.from || l.Along > t.to:
		case !t.beyond:
			share := float64((t.to - l.Along) / beam.Length)
			beam.Loads = append(beam.Loads, steelangle.Force{At: l.Along - t.from, Value: l.Force})
			moment += l.Force * share * float64(x-t.from)
			twist += turn * share
			if l.Along < x {
				moment -= l.Force * float64(x-l.Along)
				twist -= turn
			}
		default:
			sag += unit.Length(l.Force * d * d * d / 3 / ei)
			if d >= float64(abs(x-t.held)) {
				moment += l.Force * float64(abs(l.Along-x))
				twist += turn
			}
		}
	}
	if !t.beyond {
		sag = beam.Sag(shape)
	}
	return math.Abs(moment), sag, math.Abs(twist)
}

// netStress is the leg's stress on the line of its holes.
func netStress(a *model.AnglePart, shape steelangle.Shape, b bent) float64 {
	worst := 0.0
	for _, h := range a.Holes {
		if h.Leg != model.SeatLeg || b.arm <= h.FromHeel {
			continue
		}
		wide := h.Dia
		if h.Along {
			wide += h.Slot
		}
		if h.Sink > 0 {
			wide = max(wide, (h.Dia+h.Sink)/2)
		}
		bends := max(2*wide, spreadOf*(a.Section.Leg-a.Section.Thickness))
		if abs(h.X-b.at) < bends/2 {
			worst = math.Max(worst, steelangle.NetStress(shape, b.load, b.arm, h.FromHeel, 1-float64(wide/bends)))
		}
	}
	return worst
}

// angleFixes are ways out, each computed: the least angle that holds and the fewest
// anchors with which this one does, under the same loads; else a shorter span.
func (s Site) angleFixes(a *model.AnglePart, slab hold.Slab, id string) []find.Fix {
	var out []find.Fix
	for _, sec := range heavier(a) {
		if worst := mostIn(a, rolledOf(sec), slab, id); worst <= 0.97*steelangle.Yield {
			out = append(out, hint("take %s: %.0f N/mm2 under the same loads", sec.Name, worst))
			break
		}
	}
	first, last, n := anchorSpan(a)
	for more := 1; n >= 2 && more <= n; more++ {
		closer := *a
		closer.Holes = anchoredAt(a, first, last, n+more)
		if worst := mostIn(&closer, rolledOf(a.Section), slab, id); worst <= steelangle.Yield {
			pitch := up((last - first) / unit.Length(n+more-1))
			out = append(out, hint("or set %d anchors instead of %d, %.0f mm apart: %.0f N/mm2", n+more, n, float64(pitch), worst))
			break
		}
	}
	if out != nil {
		return out
	}
	return s.remedies(s.Design.Part(slab.Part), hold.Wanted{Of: hold.Strength, Only: hold.SpanWays, Used: func(b hold.Slab) float64 {
		return mostIn(a, rolledOf(a.Section), b, id) / steelangle.Yield
	}}, func(b hold.Slab) string {
		return fmt.Sprintf("%s is then stressed by %.0f N/mm2", id, mostIn(a, rolledOf(a.Section), b, id))
	})
}

// mostIn is the largest stress in an angle of some shape over all design cases.
func mostIn(a *model.AnglePart, shape steelangle.Shape, slab hold.Slab, id string) float64 {
	worst := 0.0
	for _, c := range slab.Cases {
		for _, r := range c.Runs {
			if r.Carrier == id && c.Design {
				worst = math.Max(worst, stressIn(a, shape, r).all)
			}
		}
	}
	return worst
}

// anchorSpan is where the first and the last of the anchors of an angle are, and
// how many there are.
func anchorSpan(a *model.AnglePart) (first, last unit.Length, n int) {
	at := a.Places(model.WallLeg)
	if len(at) == 0 {
		return 0, 0, 0
	}
	return slices.Min(at), slices.Max(at), len(at)
}

// anchoredAt are the holes of an angle with so many anchors, evenly spread.
func anchoredAt(a *model.AnglePart, first, last unit.Length, n int) []model.BracketHole {
	out := slices.DeleteFunc(slices.Clone(a.Holes), func(h model.BracketHole) bool { return h.Leg == model.WallLeg })
	for i := range n {
		h := a.In(model.WallLeg)[0]
		h.X = first + (last-first)*unit.Length(i)/unit.Length(n-1)
		out = append(out, h)
	}
	return out
}

// heavier are the sections of the same leg and more thickness, and larger ones.
func heavier(a *model.AnglePart) []stock.AngleSection {
	var out []stock.AngleSection
	for _, s := range stock.Angles() {
		if s.Leg >= a.Section.Leg && s.Thickness > a.Section.Thickness {
			out = append(out, s)
		}
	}
	return out
}

// seatPlace is a place on the seat in the angle's own axes.
func seatPlace(along, fromHeel unit.Length) geom.Vec3 { return geom.Vec3{X: along, Y: -fromHeel} }
