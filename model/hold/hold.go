// Package hold tells whether the slabs of a design hold: it puts every slab as
// a plate on the angles and rods that carry it, loads it, lets a person stand
// everywhere, and gives deflections, stresses, pressures, what lifts, and what
// every carrier has to take.
//
// A loose slab only rests on its brackets: it presses, mostly at the toe of a
// leg, and lifts elsewhere; screws as drawn hold it down. What carries is found
// for every load case (package calc/plate). Seat legs bend with the slab; how far
// an angle sinks as a bar between its anchors, and how far these give way, is
// worked out from what it carries and added to the slab's deflection. A slab that is
// joined to another stands beside it in the same assembly, on its own carriers; an
// open joint passes nothing on.
package hold

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/atonce"
	"slabwright/model/calc/plate"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// memoKey is under which a design keeps its statics.
type memoKey struct{ loads string }

func keyOf(j model.Job, l model.Loads) memoKey { return memoKey{fmt.Sprint(l, creep(j, l))} }

// Of works out the statics of a finished design, once. It fills in what the job
// does not say of the loads.
func Of(d *model.Design, j model.Job) *Statics {
	loads, assumed := Filled(j)
	return d.Once(keyOf(j, loads), func() any {
		s := &Statics{Loads: loads, Assumed: assumed}
		var parts []*model.Part
		for _, p := range d.Parts {
			if p.Slab != nil {
				parts = append(parts, p)
			}
		}
		s.Slabs = make([]Slab, len(parts))
		atonce.Each(len(parts), func(i int) { s.Slabs[i] = newBench(d, parts[i], loads, creep(j, loads)).slab() })
		return s
	}).(*Statics)
}

func newBench(d *model.Design, p *model.Part, l model.Loads, kDef float64) *bench {
	class, err := stock.ClassByName(l.Grade)
	if err != nil {
		class, _ = stock.ClassByName(stock.Ungraded) // the job reader knows the classes
	}
	return &bench{design: d, part: p, loads: l, creep: kDef, walked: p.Kind == model.KindSlab, variant: variant{class: class}}
}

var errFalls = errors.New("it tips off what carries it by its own weight")

// Meshes, in unknowns wanted: the sweep runs on a coarse one; the answers come
// from a fine one, and from the finest when the deflection moved by more than a
// hundredth from the one before.
const (
	coarse, middling, fine, finest = 1200, 2400, 4500, 9000

	still = 0.01
)

// sizeFor is the side of the cells that gives so many unknowns.
func sizeFor(plates []plate.Plate, unknowns float64) unit.Length {
	var area unit.Area
	for _, p := range plates {
		area += p.Outline.Area()
	}
	return unit.Length(math.Sqrt(float64(area) * 3 / unknowns))
}

// slab solves everything for one slab.
func (b *bench) slab() Slab {
	out := Slab{Part: b.part.ID, Class: b.variant.class, Thick: b.part.Slab.Thickness, Creep: b.creep, Walked: b.walked, Joints: b.variant.joints(b.design, b.part.ID)}
	if len(b.part.Bodies) == 0 {
		out.Trouble = "it could not be built"
		return out
	}
	b.assembly, b.supports, b.seams = build(b.design, b.part, b.variant)
	if len(b.assembly.Links) == 0 {
		out.Trouble = "nothing carries it"
		return out
	}
	if err := b.solve(&out); err != nil {
		out.Trouble, out.Falls = err.Error(), errors.Is(err, errFalls)
	}
	return out
}

// mesh is a slab cut into cells, with the state under its own weight settled.
type mesh struct {
	s    *plate.Solver
	dead *plate.Result
}

// mesh cuts the slab; what carried on the mesh before is a good guess.
func (b *bench) mesh(unknowns float64, before *plate.Result) (mesh, error) {
	a := b.assembly
	if before != nil {
		a.Links = slices.Clone(a.Links)
		for i := range a.Links {
			a.Links[i].Starts = before.Carries(i)
		}
	}
	s, err := plate.New(a, sizeFor(a.Plates, unknowns))
	var dead *plate.Result
	if err == nil {
		dead, err = s.Solve(plate.Case{Weight: 1}, nil)
	}
	if err == nil {
		err = s.Settle(dead)
	}
	if errors.Is(err, plate.ErrTips) || errors.Is(err, plate.ErrLoose) {
		err = errFalls
	}
	return mesh{s, dead}, err
}

func (b *bench) solve(out *Slab) error {
	m, err := b.mesh(coarse, nil)
	if err != nil {
		return err
	}
	var finer []mesh
	var trouble error
	atonce.Both(func() {
		switch {
		case b.known != nil:
			out.found = *b.known
		case b.walked:
			out.found, err = b.sweep(m.s, m.dead)
		}
	}, func() {
		if !b.quick { // two more meshes are always wanted: they are cut while the person walks
			finer, trouble = b.meshes(m.dead, middling, fine)
		}
	})
	if err := cmp.Or(err, trouble); err != nil {
		return err
	}
	f := out.found
	out.Places, out.Tips, out.TipsAt = f.places, f.tips, b.part.Slab.Pose.Plan(f.tipsAt)
	if !b.quick {
		if m, err = b.refine(out, finer, b.governing(f)); err != nil {
			return err
		}
	}
	out.Unknowns = m.s.Size()
	return b.finish(out, m, f)
}

// meshes cuts finer and finer.
func (b *bench) meshes(before *plate.Result, unknowns ...float64) ([]mesh, error) {
	var out []mesh
	for _, n := range unknowns {
		m, err := b.mesh(n, before)
		if err != nil {
			return nil, err
		}
		out, before = append(out, m), m.dead
	}
	return out, nil
}

// refine takes the finer of two meshes if the governing case stands still there,
// else the finest.
func (b *bench) refine(out *Slab, two []mesh, governing order) (mesh, error) {
	m := two[1]
	before, err := b.run(two[0], governing)
	if err != nil {
		return m, err
	}
	now, err := b.run(m, governing)
	if err != nil {
		return m, err
	}
	if out.moved(before, now); out.Moved < still {
		return m, nil
	}
	if m, err = b.mesh(finest, m.dead); err != nil {
		return m, err
	}
	last, err := b.run(m, governing)
	out.moved(now, last)
	return m, err
}

// moved notes how much a case moved from one mesh to the next.
func (s *Slab) moved(before, now Case) {
	s.Moved = movedBy(float64(before.Lowest.Down), float64(now.Lowest.Down))
	s.MovedTop = movedBy(before.Along.Value, now.Along.Value)
	s.MovedOver = movedBy(before.Across.Value, now.Across.Value)
}

// order is one case to be solved.
type order struct {
	kind  Kind
	worst string
	at    geom.Vec
}

// governing is the case that decides how fine the mesh must be.
func (b *bench) governing(f found) order {
	if f.sinks.found {
		return order{DesignPerson, "", f.sinks.at}
	}
	return order{kind: DesignSpread}
}

func (b *bench) run(m mesh, o order) (out Case, err error) {
	err = b.solveCases(m, []order{o}, func(_ order, c Case, _ *plate.Result) { out = c })
	return out, err
}

// solveCases solves cases on a mesh and shows each; without a result one in which
// the person tips the slab.
func (b *bench) solveCases(m mesh, list []order, see func(order, Case, *plate.Result)) error {
	loads := make([]plate.Case, len(list))
	for i, o := range list {
		loads[i] = b.loadsOf(m.s, b.recipe(o.kind), o.at)
	}
	return m.s.SolveEach(loads, m.dead, func(i int, res *plate.Result, err error) error {
		o := list[i]
		r := b.recipe(o.kind)
		if errors.Is(err, plate.ErrTips) && r.step > 0 {
			see(o, Case{}, nil)
			return nil
		}
		if err != nil {
			return fmt.Errorf("%s: %w", strings.TrimSpace(string(o.kind)+" "+o.worst), err)
		}
		c := b.read(m.s, loads[i], r, res)
		c.Worst = o.worst
		if r.step > 0 {
			at := b.part.Slab.Pose.Plan(o.at)
			c.Person = &at
		}
		see(o, c, res)
		return nil
	})
}

// bound is the factor that takes a stress which moved by a share from the mesh
// before to an upper bound: each mesh has twice the unknowns, so that its cells
// are smaller by the root of two, and what is left to come at the first order of
// convergence is that share over the root of two less one (Richardson). Stresses
// that stand still stay as they are.
func bound(moved float64) float64 {
	if moved <= still {
		return 1
	}
	return 1 + moved/(math.Sqrt2-1)
}

func movedBy(before, now float64) float64 {
	if now == 0 {
		return 0
	}
	return math.Abs(now/before - 1)
}

// orders lists the cases that are reported.
func (b *bench) orders(f found) []order {
	out := []order{{kind: OwnWeight}, {kind: Lasting}, {kind: Daily}, {kind: DesignWeight}, {kind: DesignSpread}}
	if !f.sinks.found {
		return out
	}
	out = append(out, order{PersonSinks, "deflection", f.sinks.at}, order{PersonLifts, "lift", f.lifts.at})
	design := func(what string, w worst) {
		for i := range out {
			if out[i].kind == DesignPerson && out[i].at == w.at {
				out[i].worst += ", " + what
				return
			}
		}
		if w.found {
			out = append(out, order{DesignPerson, what, w.at})
		}
	}
	design("deflection", f.sinks)
	design("stress along the grain", f.along)
	design("stress across the grain", f.across)
	design("bearing pressure", f.press)
	design("joint", f.joint)
	for i, sup := range b.supports {
		if i < len(f.carriers) && sup.part != nil && !sup.beside {
			design(sup.part.ID, f.carriers[i])
		}
	}
	return out
}

// finish solves the cases on the last mesh.
func (b *bench) finish(out *Slab, m mesh, f found) error {
	var daily, lasting *plate.Result
	list := slices.DeleteFunc(b.orders(f), func(o order) bool { return !b.wants.has(o.kind) })
	err := b.solveCases(m, list, func(o order, c Case, res *plate.Result) {
		if res == nil { // less holds it down than in the sweep
			if !out.Tips {
				out.Tips, out.TipsAt = true, b.part.Slab.Pose.Plan(o.at)
			}
			return
		}
		c.Along.Value *= bound(out.MovedTop)
		c.Across.Value *= bound(out.MovedOver)
		out.Cases = append(out.Cases, c)
		switch o.kind {
		case Daily:
			daily = res
		case Lasting:
			lasting = res
		case PersonSinks:
			out.Standing, out.lowestOwn = *c.Person, o.at
			b.picture(out, res)
		}
	})
	if err != nil || daily == nil {
		return err
	}
	at, _ := daily.Lowest(0)
	if _, stood := out.Case(PersonSinks); !stood { // nobody stands on it, or it tips wherever somebody does
		out.lowestOwn = at
		b.picture(out, daily)
	}
	steel, _ := out.Case(Daily)
	out.Years = daily.Deflection(0, at) + unit.Length(b.creep)*lasting.Deflection(0, at) + steel.Steel
	if !b.wants.has(swing) {
		return nil
	}
	hz, err := m.s.Frequency(lasting, b.loadsOf(m.s, b.recipe(Lasting), geom.Vec{}).Loads...)
	out.First = hz
	return err
}

// picture keeps how a case looks.
func (b *bench) picture(out *Slab, res *plate.Result) {
	at, _ := res.Lowest(0)
	out.Span = spanThrough(b.assembly.Plates[0].Outline, b.bearings(), at)
	if !b.quick {
		out.Contours = b.contours(res)
	}
}
