package bring

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Trouble is why a part does not go in, as far as could be found out. Short is
// how much overlap would have to be let pass at the tightest place on the way, 0
// if that was not found; Lacks are what is met on the straight way then. Ways are
// changes with which a way was found, Vain those that were tried and free nothing.
type Trouble struct {
	Short unit.Length
	Tight motion.Tight
	Lacks []Lack
	Ways  []Mend
	Vain  []string
}

// Mend is one change that frees a part.
type Mend struct {
	Text string
	by   unit.Length // of wood that goes
}

// looks of one attempt, and of all of a kind: squeezes, other orders and cuts,
// halves.
const (
	attemptLooks = 400
	troubleLooks = 2500
)

// attempt is a search with a budget of its own.
type attempt struct {
	t     *task
	there []*model.Part
	spent int
}

// Trouble looks into a part that found no way out with those in place that the
// order mounts before it.
func (s *Scene) Trouble(p *model.Part, there []*model.Part) Trouble {
	a := &attempt{t: s.task(p), there: there}
	var out Trouble
	if out.Short, out.Tight = a.short(); out.Short == 0 {
		out.Lacks = a.lacks()
	}
	a.spent = 0
	if out.Ways = a.later(out.Tight); out.Ways == nil {
		out.Vain = append(out.Vain, fmt.Sprintf("to mount any one other part after %s", p.ID))
	}
	if p.Slab != nil {
		out.Ways = append(out.Ways, a.trims()...)
		a.spent = 0
		if a.halves() {
			out.Ways = append(out.Ways, Mend{Text: "make it in two halves, with a joint across the middle, and bring them in one after the other"})
		} else {
			out.Vain = append(out.Vain, "to make it in two halves with a joint across the middle")
		}
	}
	return out
}

// frees tells whether a changed part finds a way, past all but one of the others.
func (a *attempt) frees(own []lump, without *model.Part) bool {
	t := *a.t
	t.own, t.moving, t.box = own, bodies(own), boxOf(own, geom.Pose{})
	there := slices.DeleteFunc(slices.Clone(a.there), func(q *model.Part) bool { return q == without })
	if _, ok := t.straight(there); ok {
		return true
	}
	if _, ok := t.raised(there); ok {
		return true
	}
	_, ok := a.searched(t.problem(there))
	return ok
}

// searched looks for a way with little work.
func (a *attempt) searched(p motion.Problem) ([]motion.Pose, bool) {
	for _, f := range families {
		if a.spent >= troubleLooks {
			return nil, false
		}
		p.Ways, p.Looks = f.ways, attemptLooks
		r := motion.Search(p)
		a.spent += r.Looks
		if r.Verdict == motion.Found {
			return r.Way, true
		}
	}
	return nil, false
}

// squeezed looks for a way on which so much overlap is let pass.
func (a *attempt) squeezed(by unit.Length) ([]motion.Pose, bool) {
	p := a.t.problem(a.there)
	p.Clear = -by
	return a.searched(p)
}

// short finds the least overlap with which there is a way, to half a millimetre
// or a tenth of it, and where the way is tightest then.
func (a *attempt) short() (unit.Length, motion.Tight) {
	least, most := unit.Length(0), unit.Length(0)
	var poses []motion.Pose
	for s := unit.Length(1); s <= 64; s *= 2 {
		if w, ok := a.squeezed(s); ok {
			most, poses = s, w
			break
		}
		least = s
	}
	if most == 0 {
		return 0, motion.Tight{Gap: unit.Length(math.Inf(1))}
	}
	for most-least > max(0.5, most/10) {
		mid := (least + most) / 2
		if w, ok := a.squeezed(mid); ok {
			most, poses = mid, w
		} else {
			least = mid
		}
	}
	return most, motion.Follow(a.t.moving, a.t.fixed(a.there), poses, step)
}

// later tries to leave away what could be mounted afterwards: angles from below,
// what else stands in the way.
func (a *attempt) later(tight motion.Tight) []Mend {
	var out []Mend
	for _, q := range a.there {
		if q == a.t.part || q.Rod != nil || a.t.scene.Design.Part(tight.Near) != nil && q.ID != tight.Near {
			continue
		}
		if a.frees(a.t.own, q) {
			text := fmt.Sprintf("mount %s after %s", q.ID, a.t.part.ID)
			if carries(q, a.t.part) {
				text = fmt.Sprintf("mount %s after %s, which stands on props meanwhile", q.ID, a.t.part.ID)
			}
			out = append(out, Mend{Text: text})
		}
	}
	return out
}

// steps of wood that may go; between the first that frees and the last that does
// not the least is found to a millimetre.
var trims = []unit.Length{2, 5, 10, 20, 40, 80}

// trims tries what a saw can do: shorter, shallower, thinner, an end or the back
// edge undercut.
func (a *attempt) trims() []Mend {
	var out []Mend
	for _, c := range []struct {
		text string
		cut  func(v geom.Vec3, by unit.Length) geom.Vec3
	}{
		{"cut the lower arris of its right end back by %.0f mm, sloping", func(v geom.Vec3, by unit.Length) geom.Vec3 {
			if v.Z < 0 && v.X > 0 {
				v.X -= by
			}
			return v
		}},
		{"cut its lower back arris back by %.0f mm, sloping", func(v geom.Vec3, by unit.Length) geom.Vec3 {
			if v.Z < 0 && v.Y > 0 {
				v.Y -= by
			}
			return v
		}},
		{"make it %.0f mm shorter", func(v geom.Vec3, by unit.Length) geom.Vec3 {
			v.X -= by / 2 * unit.Length(math.Copysign(1, float64(v.X)))
			return v
		}},
		{"make it %.0f mm shallower", func(v geom.Vec3, by unit.Length) geom.Vec3 {
			if v.Y < 0 {
				v.Y += by
			}
			return v
		}},
		{"make it %.0f mm thinner, its underside where it is", func(v geom.Vec3, by unit.Length) geom.Vec3 {
			if v.Z > 0 {
				v.Z -= by
			}
			return v
		}},
	} {
		cut := func(by unit.Length) bool {
			return a.frees(changed(a.t.own, func(v geom.Vec3) geom.Vec3 { return c.cut(v, by) }), nil)
		}
		least := unit.Length(0)
		for _, by := range trims {
			if c.text == "make it %.0f mm thinner, its underside where it is" && by > a.t.box.Max.Z {
				break
			}
			if cut(by) {
				by = narrowed(least, by, cut)
				out = append(out, Mend{Text: fmt.Sprintf(c.text, float64(by)), by: by})
				break
			}
			least = by
		}
	}
	slices.SortStableFunc(out, func(x, y Mend) int { return int(x.by) - int(y.by) })
	return out
}

// narrowed finds the least whole millimetre that still frees, between one that
// does not and one that does.
func narrowed(no, yes unit.Length, frees func(unit.Length) bool) unit.Length {
	for yes-no > 1 {
		if mid := unit.Length(math.Floor(float64(no+yes) / 2)); frees(mid) {
			yes = mid
		} else {
			no = mid
		}
	}
	return yes
}

func changed(list []lump, to func(geom.Vec3) geom.Vec3) []lump {
	var out []lump
	for _, l := range list {
		out = append(out, l.moved(to))
	}
	return out
}
