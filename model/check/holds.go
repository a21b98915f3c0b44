package check

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/hold"
)

// What all rules on statics share.

// statics is what slabs and carriers take; it is worked out once per design.
func (s Site) statics() *hold.Statics { return hold.Of(s.Design, s.Job) }

// eachSlab judges every slab whose statics are known. Where they are not, the
// rule says so: a slab that tips off its carriers fails in the rule on lifting.
func (s Site) eachSlab(keys []string, judge func(*model.Part, hold.Slab) []find.Finding) []find.Finding {
	st := s.statics()
	var out []find.Finding
	for _, b := range st.Slabs {
		if b.Trouble != "" {
			u := unknown(fmt.Sprintf("what %s carries cannot be computed: %s.", b.Part, b.Trouble), hint("mend that first"))
			u.Parts = []string{b.Part}
			out = append(out, u)
			continue
		}
		for _, f := range judge(s.Design.Part(b.Part), b) {
			f.Parts = []string{b.Part}
			f.Assumed = slices.Concat([]find.Assumption{mesh(b)}, b.JointAssumed(), f.Assumed, loadsAssumed(st, b, keys))
			out = append(out, f)
		}
	}
	return out
}

// strayThings are things of the job that stand on no slab: nobody carries them.
func (s Site) strayThings() []find.Finding {
	var out []find.Finding
	for _, t := range s.Job.Loads.Things {
		if p := s.Design.Part(t.On); p == nil || p.Slab == nil {
			u := unknown(fmt.Sprintf("what carries %q: the job puts it on %q, and there is no such slab.", t.Name, t.On), hint("name a slab of the design under loads: things"))
			u.Title, u.Line = "A thing stands on no slab", t.Pos.String()
			out = append(out, u)
		}
	}
	return out
}

// loadsAssumed are the assumptions about some of the loads, by their keys in the
// job file; "lies" is worktop or shelf.
func loadsAssumed(st *hold.Statics, b hold.Slab, keys []string) []find.Assumption {
	lies := "shelf"
	if b.Walked {
		lies = "worktop"
	}
	var out []find.Assumption
	for _, a := range st.Assumed {
		for _, k := range keys {
			if k == "lies" {
				k = lies
			}
			if (b.Walked || k != "person" && k != "step") && strings.HasSuffix(a.Source, "loads: "+k) {
				out = append(out, a)
			}
		}
	}
	return out
}

// onTop is a place in the room on the top of a slab.
func onTop(p *model.Part, v geom.Vec) *[3]float64 { return at(v.Up(p.Slab.Top)) }

// on says where a place is as one measures it on the slab.
func on(p *model.Part, v geom.Vec) string {
	o := p.Slab.Pose.Unplan(v)
	return fmt.Sprintf("%.0f mm from its left end and %.0f mm from its back edge", float64(max(0, o.X)), float64(max(0, -o.Y)))
}

// newton makes a measured stress.
func newton(v float64) *find.Quantity { return &find.Quantity{Value: round3(v), Unit: "N/mm2"} }

func strength(v float64) *find.Limit {
	return &find.Limit{Value: round3(v), Relation: find.AtMost, Unit: "N/mm2"}
}

// mesh tells how well the numbers are known.
func mesh(b hold.Slab) find.Assumption {
	return find.Assumption{What: fmt.Sprintf("a mesh of %d unknowns; the deflection moved by %.1f %% from the one before, the bending stress by %.1f %% along and %.1f %% across the grain; a stress that moved by more than 1 %% is taken higher by what first-order convergence leaves to come", b.Unknowns, 100*b.Moved, 100*b.MovedTop, 100*b.MovedOver), Source: "computed"}
}
