package check

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

const swellingBasis = "Wood Handbook FPL-GTR-190, equations 4-5 and 13-2"

// movement is how a slab moves; a slab of a design is always found.
func (s Site) movement(p *model.Part) model.Movement {
	m, err := s.Design.Movement(p.ID)
	if err != nil {
		panic(err)
	}
	return m
}

// travelOf is the travel of an edge.
func travelOf(m model.Movement, e model.Edge) model.EdgeTravel {
	for _, t := range m.Edges {
		if t.Name == e.Name {
			return t
		}
	}
	return model.EdgeTravel{Edge: e}
}

// upTenth rounds up to a tenth of a millimetre.
func upTenth(l unit.Length) unit.Length { return up(l*10) / 10 }

var jointRule = Rule{
	ID: "joint-movement", Title: "A joint stays open when the wood swells", Fit: true,
	Basis: swellingBasis,
	Why:   "Two slabs that meet swell against each other in a damp summer. A joint that closes lifts them, breaks screws or crushes the edge; where the grain of one runs across that of the other it happens at every joint.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			m := s.movement(p)
			for _, t := range m.Edges {
				if t.Bound == model.ToPart {
					j, _ := s.Design.JointOf(p.ID, t.To)
					switch j.Kind {
					case model.GluedJoint:
						out = append(out, s.glued(p, t, m, j))
						continue
					case model.DowelJoint, model.PlateJoint:
						out = append(out, s.slides(p, m, j)...)
					}
					out = append(out, s.joint(p, t, m))
				}
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "No two slabs meet."})
		}
		return out
	},
}

// joint judges the joint of a slab with another one.
func (s Site) joint(p *model.Part, t model.EdgeTravel, m model.Movement) find.Finding {
	need := model.JointSpare + upTenth(t.Out)
	f := find.Finding{
		Parts: []string{p.ID, t.To}, At: at(p.Slab.Pose.Plan(t.Start.Lerp(t.End, 0.5)).Up(p.Slab.Top)),
		Measured: mm(t.Gap), Required: limit(find.AtLeast, need), Assumed: m.Assumed,
		Why: fmt.Sprintf("The joint between %s and %s is %.1f mm wide when they are fitted; over the year it goes from %.1f to %.1f mm.", p.ID, t.To, float64(t.Gap), float64(t.Gap-t.Out), float64(t.Gap+t.In)),
	}.Judge()
	if f.Status == find.Fail {
		f.Why = fmt.Sprintf("The joint between %s and %s is %.1f mm wide when they are fitted; it closes, and they press on each other by %.1f mm.", p.ID, t.To, float64(t.Gap), float64(t.Out-t.Gap))
	}
	if t.Crossed {
		f.Why += " The grain of one runs across that of the other."
	}
	if f.Status == find.Fail {
		if open, ok := s.Design.OpenJoint(p.ID, t.Name); ok {
			f.Fix = append(f.Fix, s.set(hint("make the joint %.1f mm wide", float64(open)), "joint_gap", t.Gap, open))
		}
		f.Fix = append(f.Fix, hint("or fit the slabs when their wood is damper: they swell less then"))
	}
	return f
}

// along is how far a slab goes across its grain over the year, from its dry to
// its damp season.
func along(m model.Movement) unit.Length { return m.Width(m.Damp) - m.Width(m.Dry) }

// slides tells of dowels and plates across which one slab goes along the other.
func (s Site) slides(p *model.Part, m model.Movement, j model.Joint) []find.Finding {
	if !s.Design.Crossed(j) {
		return nil
	}
	goes := along(m)
	return []find.Finding{{
		Status: find.Warn, Title: "A joint lets crossed grain slide", Parts: []string{j.Slab, j.To}, At: at(j.Ends[0].Lerp(j.Ends[1], 0.5).Up(p.Slab.Top)),
		Why:     fmt.Sprintf("The grain of %s runs across that of %s: over the year it goes %.1f mm along the joint, and %d %s tie both.", j.Slab, j.To, float64(goes), len(j.Places), j.Kind),
		Fix:     []find.Fix{hint("glue or screw only the middle one fast, and give the others of %s slots of %.0f mm along the joint", j.Slab, float64(up(goes)))},
		Assumed: m.Assumed,
	}}
}

// glued judges slabs that are glued into one.
func (s Site) glued(p *model.Part, t model.EdgeTravel, m model.Movement, j model.Joint) find.Finding {
	f := find.Finding{Title: "Glued slabs move as one", Parts: []string{p.ID, t.To}, At: at(p.Slab.Pose.Plan(t.Start.Lerp(t.End, 0.5)).Up(p.Slab.Top)), Assumed: m.Assumed}
	switch {
	case t.Crossed:
		f.Status = find.Fail
		f.Why = fmt.Sprintf("The grain of %s runs across that of %s: one goes %.1f mm along the other over the year, and a glued joint tears or the wood does.", p.ID, t.To, float64(along(m)))
		f.Fix = []find.Fix{hint("join them by dowels that are glued into one of them only (set joint to dowels)")}
	case t.Gap > model.Closed:
		f.Status = find.Fail
		f.Measured, f.Required = mm(t.Gap), limit(find.AtMost, 0.0)
		f.Why = fmt.Sprintf("The joint between %s and %s is drawn %.1f mm open: glue fills no gap.", p.ID, t.To, float64(t.Gap))
		f.Fix = []find.Fix{s.set(hint("draw both edges together"), "joint_gap", t.Gap, 0)}
	default:
		f.Status = find.Warn
		f.Why = fmt.Sprintf("%s and %s move as one across both widths; slots and gaps here are worked out for each by itself.", capital(p.ID), t.To)
		f.Fix = []find.Fix{hint("hold only one of them by round holes, and give the screws of the other slots %.0f mm longer", float64(up(m.Width(m.Damp)-m.Width(m.Dry))))}
	}
	return f
}

var slotRule = Rule{
	ID: "screw-slots", Title: "Every screw can go with the wood",
	Basis: swellingBasis,
	Why:   "Screws in round holes hold the wood still while it wants to shrink: it cracks along the grain, often within the first winter. One row of round holes holds the slab, every other screw needs a slot across the grain.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab != nil {
				out = append(out, s.slots(p)...)
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "No screw from below holds a slab."})
		}
		return out
	},
}

// slots judges the screws of a slab, the tightest of each bracket.
func (s Site) slots(p *model.Part) []find.Finding {
	m := s.movement(p)
	var out []find.Finding
	for _, a := range carriersOf(s.Design, p) {
		var worst *find.Finding
		for _, t := range m.Screws {
			if t.Through != a {
				continue
			}
			if f := screwWay(p, t, m); worst == nil || f.Margin.Value < worst.Margin.Value-0.0005 {
				worst = &f
			}
		}
		if worst != nil {
			out = append(out, *worst)
		}
	}
	return out
}

// screwWay holds the way of a screw against the hole it sits in, at its tighter
// side.
func screwWay(p *model.Part, t model.ScrewTravel, m model.Movement) find.Finding {
	f := find.Finding{Parts: []string{p.ID, t.Through.ID}, At: at(p.Slab.Pose.Plan(t.At).Up(t.Through.Bracket().On().Seat)), Assumed: m.Assumed}
	goes, room := t.Beside, t.Clearance
	for _, w := range [][2]unit.Length{{t.Travel.Plus, t.Room.Plus}, {t.Travel.Minus, t.Room.Minus}} {
		if w[1]-w[0] < room-goes {
			goes, room = w[0], w[1]
		}
	}
	f.Measured, f.Required = mm(room), limit(find.AtLeast, goes)
	f.Why = fmt.Sprintf("Screw %s of %s: the wood takes it up to %.1f mm one way, and its %s leaves it %.1f mm there; no other screw of %s has less to spare.",
		t.Hole.Name, t.Through.ID, hundredth(goes), strings.ToLower(holeOrSlot(t.Hole)), hundredth(room), t.Through.ID)
	f = f.Judge()
	if m.Held.By == model.ByNone {
		f.Why += fmt.Sprintf(" No screw of %s sits in a round hole: it may wander.", p.ID)
		if f.Status == find.Pass {
			f.Status = find.Warn
		}
		f.Fix = append(f.Fix, hint("give one row of screws round holes, so that the wood moves from there"))
	}
	switch {
	case f.Status == find.Fail && goes == t.Beside:
		f.Fix = append(f.Fix, hint("drill that hole %.0f mm wider and put a washer under the head: there the wood moves along its grain", float64(up(2*(goes-room)))))
	case f.Status == find.Fail:
		f.Fix = append(f.Fix, hint("cut a slot of %.0f mm beyond the hole across the grain, its middle where the screw has as far to go to both sides, or let the slots follow the wood (Moving)", float64(up(t.Travel.Plus+t.Travel.Minus)+1)))
	}
	return f
}
