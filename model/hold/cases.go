package hold

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/plate"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// patch is the foot of a person or a load, 100 x 100 mm.
const patch unit.Length = 100

// recipe makes a load case: what of each load, and how long it acts.
type recipe struct {
	kind                         Kind
	weight, spread, things, step float64 // factors; step multiplies the person's weight
	acts                         duration
	design                       bool
}

// recipes are the combinations of EN 1990: characteristic and quasi-permanent
// for deflections, 6.10 for strength. A person stands among what lies there.
func (b *bench) recipe(k Kind) recipe {
	lasts := psi2
	if !b.walked {
		lasts = psi2Shelf
	}
	switch k {
	case OwnWeight:
		return recipe{k, 1, 0, 0, 0, permanent, false}
	case Lasting:
		return recipe{k, 1, lasts, 1, 0, longTerm, false}
	case Daily:
		return recipe{k, 1, 1, 1, 0, longTerm, false}
	case PersonSinks, PersonLifts:
		return recipe{k, 1, 0, 1, 1, shortTerm, false}
	case DesignWeight:
		return recipe{k, gammaG, 0, 0, 0, permanent, true}
	case DesignSpread:
		return recipe{k, gammaG, gammaQ, gammaQ, 0, longTerm, true}
	}
	return recipe{k, gammaG, gammaQ * psi0, gammaQ * psi0, gammaQ * b.loads.Step, shortTerm, true}
}

// bench is a slab being solved.
type bench struct {
	design   *model.Design
	part     *model.Part
	loads    model.Loads
	creep    float64
	walked   bool
	variant  variant
	assembly plate.Assembly
	supports []support
	seams    []seam
	quick    bool   // the coarse mesh is enough
	known    *found // where a person is worst, when that is known
	wants    Wants
}

// kilos is the spread load, kg/m2.
func (b *bench) kilos() float64 {
	if b.walked {
		return b.loads.Worktop
	}
	return b.loads.Shelf
}

// loadsOf makes the case of a recipe on a solver, with a person at a place in
// the slab's axes.
func (b *bench) loadsOf(s *plate.Solver, r recipe, person geom.Vec) plate.Case {
	c := plate.Case{Weight: r.weight}
	if r.spread > 0 {
		for n := range b.assembly.Plates {
			c.Loads = append(c.Loads, s.Spread(n, r.spread*b.kilos()*plate.Gravity*1e-6))
		}
	}
	if r.things > 0 {
		for _, t := range b.loads.Things {
			if t.On == b.part.ID {
				c.Loads = append(c.Loads, thing(t, r.things)...)
			}
		}
	}
	if r.step > 0 {
		c.Loads = append(c.Loads, plate.Load{Region: foot(person, patch), Force: r.step * float64(b.loads.Person) * plate.Gravity})
	}
	return c
}

// thing presses with its weight on its foot, which stands whole on the slab, and
// turns it by a couple on the front and the back of the foot when it hangs out
// of its middle.
func thing(t model.Thing, factor float64) []plate.Load {
	at := geom.V(t.Along, -max(t.Back, patch/2))
	force := factor * float64(t.Mass) * plate.Gravity
	out := []plate.Load{{Region: foot(at, patch), Force: force}}
	if t.Reach == 0 {
		return out
	}
	const strip = patch / 5
	arm := geom.V(0, (patch-strip)/2)
	couple := force * float64(t.Reach) / float64(patch-strip)
	half := geom.V(patch/2, strip/2)
	front, back := at.Sub(arm), at.Add(arm)
	return append(out,
		plate.Load{Region: geom.Rect(front.Sub(half), front.Add(half)), Force: couple},
		plate.Load{Region: geom.Rect(back.Sub(half), back.Add(half)), Force: -couple})
}

func foot(at geom.Vec, side unit.Length) geom.Region {
	h := geom.V(side/2, side/2)
	return geom.Rect(at.Sub(h), at.Add(h))
}

// total is the sum of all loads, N.
func total(s *plate.Solver, c plate.Case) float64 {
	sum := 0.0
	for n := range s.Plates() {
		sum += c.Weight * float64(s.Mass(n)) * plate.Gravity
	}
	for _, l := range c.Loads {
		sum += l.Force
	}
	return sum
}

// read turns a solved case into its results, in the room's axes.
func (b *bench) read(s *plate.Solver, c plate.Case, r recipe, res *plate.Result) Case {
	out := Case{Kind: r.kind, Design: r.design, KMod: kMod[r.acts][b.loads.Service], Total: total(s, c)}
	pose := b.part.Slab.Pose
	at, down := res.Lowest(0)
	out.Lowest = Point{pose.Plan(at), down}
	at, up := res.Highest(0)
	out.Highest = Point{pose.Plan(at), up}
	cl := b.variant.class
	out.Along.Strength = b.strength(cl.Bending, r.acts)
	out.Across.Strength = b.strength(cl.TensionOver, r.acts)
	out.Pressure.Strength = b.strength(cl.PressOver, r.acts)
	along, across := extremes(res.Samples(0))
	out.Along.At, out.Along.Value = pose.Plan(along.at), along.value
	out.Across.At, out.Across.Value = pose.Plan(across.at), across.value
	for _, s := range b.seams {
		out.Seams = append(out.Seams, s.read(res))
	}
	for _, sup := range b.supports {
		run, press := readRun(sup, res)
		if sup.beside {
			out.Beside = append(out.Beside, run)
			continue
		}
		if sup.part != nil && sup.part.Bracket() != nil {
			run.BarSag, run.TipSag = sunk(sup.part.Bracket(), b.variant, run)
			out.Steel = max(out.Steel, run.BarSag)
		}
		out.Runs = append(out.Runs, run)
		if press.value > out.Pressure.Value {
			out.Pressure.At, out.Pressure.Value = pose.Plan(press.at), press.value
		}
	}
	return out
}

// strength is a design strength: f k_mod / gamma_M (EN 1995-1-1, 2.17).
func (b *bench) strength(f float64, acts duration) float64 {
	return f * kMod[acts][b.loads.Service] / gammaM
}

type spot struct {
	at    geom.Vec
	value float64
}

// extremes are the largest bending stresses along and across the grain.
func extremes(samples []plate.Sample) (along, across spot) {
	for _, s := range samples {
		l, o, _ := s.Stress()
		if v := math.Abs(l); v > along.value {
			along = spot{s.At, v}
		}
		if v := math.Abs(o); v > across.value {
			across = spot{s.At, v}
		}
	}
	return along, across
}

// readRun sums what a carrier takes.
func readRun(sup support, res *plate.Result) (Run, spot) {
	var run Run
	var press spot
	if sup.part != nil {
		run.Carrier = sup.part.ID
	}
	var along, heel float64
	for _, st := range sup.stations {
		l := LineLoad{Along: st.along, Width: st.width}
		var turn float64
		for _, p := range st.points {
			f := res.Force(p.link)
			l.Force += f
			if sup.part != nil && sup.part.Rod != nil {
				l.Points = append(l.Points, PointLoad{p.fromHeel, f})
			}
			turn += f * float64(p.fromHeel)
			if v := f / float64(p.area); v > press.value {
				press = spot{p.at, v}
			}
		}
		if l.Force != 0 {
			l.FromHeel = unit.Length(turn / l.Force)
		}
		run.Force += l.Force
		along += l.Force * float64(l.Along)
		heel += turn
		run.Line = append(run.Line, l)
	}
	if run.Force > 0 {
		run.Along, run.FromHeel = unit.Length(along/run.Force), unit.Length(heel/run.Force)
	}
	for _, sc := range sup.screws {
		if f := res.Force(sc.link); f > 0 {
			run.Screws = append(run.Screws, ScrewPull{sc.hole.Name, sc.hole.X, f})
			run.Force -= f
		}
	}
	return run, press
}
