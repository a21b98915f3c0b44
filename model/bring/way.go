package bring

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Way is how a part goes in. NoWay is proven, touching allowed, for every way of
// moving that Proven names, the first of them kept along the wall behind it; in
// the others a way was looked for, and none was found. Poses are the part's own axes, moved and turned from
// where it lies in the end; they run from the room to its place.
type Way struct {
	Part    *model.Part
	Verdict motion.Verdict
	Poses   []motion.Pose
	Least   motion.Tight // to everything but what carries it
	Looks   int
	Proven  []string
	frame   frame
	box     geom.Box
}

// heights are those to which a slab is first looked at being lifted off what
// it lies on: enough for fingers if possible.
var heights = []unit.Length{100, 60, 40, 25, 150, 250, 10, 5, 2, 0}

// Fingers is the room that a hand needs under a slab that is being set down:
// common practice, no source.
const Fingers unit.Length = 25

// past is how far in front of its place a part counts as out.
const past unit.Length = 20

// roomy is what is free round a slab that is out: one that is wedged between two
// walls in front of its place is not.
const roomy unit.Length = 30

// air is what must be left round a part for the search: nobody moves a slab along
// a wall that it touches all over.
const air unit.Length = 0.2

// grain is the overlap that a proof lets pass, so that what touches is not in the
// way.
const grain unit.Length = 0.05

// proofLooks bounds the searches that prove, for all parts of a design together;
// one that gives up before proves nothing.
const proofLooks = 16000

// step is the distance at which a way is measured.
const step unit.Length = 2

func (t *task) depth() unit.Length { return t.box.Max.Y - t.box.Min.Y }

// out takes the part out, with these parts in place: with one end raised if that
// will do, else by a search.
func (t *task) out(there []*model.Part) Way {
	if w, ok := t.raised(there); ok {
		return w
	}
	return t.search(there)
}

// straight tries to lift the part and to draw it forward, or to push it up to
// where it can be drawn forward.
func (t *task) straight(there []*model.Part) (Way, bool) {
	fixed := t.fixed(there, t.hangsOn(there)...)
	for _, forward := range t.forward() {
		if w, ok := t.drawn(there, fixed, forward); ok {
			return w, true
		}
	}
	return Way{}, false
}

// forward are the distances after which a part may be out: when it has left the
// space before its place, and when it has passed the ends of the measured walls.
func (t *task) forward() []unit.Length {
	out := []unit.Length{t.depth() + past}
	if far := t.box.Max.Y - t.ends + past; t.part.Slab != nil && far > out[0] {
		out = append(out, far)
	}
	return out
}

// drawn lifts the part off what it lies on and draws it forward. Of the heights
// that will do it takes the first that leaves enough room, else the roomiest.
func (t *task) drawn(there []*model.Part, fixed []motion.Body, by unit.Length) (Way, bool) {
	forward := geom.Vec3{Y: -by}
	var best Way
	for _, h := range t.lifts() {
		at := motion.Pose{At: geom.Vec3{Z: h}}
		if _, ok := motion.Slide(t.moving, fixed, motion.Pose{}, at.At); !ok {
			continue
		}
		if _, ok := motion.Slide(t.moving, fixed, at, forward); !ok {
			continue
		}
		end := motion.Pose{At: at.At.Add(forward)}
		if t.part.Slab != nil && motion.Follow(t.moving, fixed, []motion.Pose{end}, step).Gap < roomy/3 {
			continue
		}
		poses := []motion.Pose{{}}
		if h != 0 {
			poses = append(poses, at)
		}
		w := t.found(append(poses, end), there, 0)
		if w.Least.Gap >= enough || t.part.Slab == nil {
			return w, true
		}
		if best.Poses == nil || w.Least.Gap > best.Least.Gap {
			best = w
		}
	}
	return best, best.Poses != nil
}

// enough is the room on the way that hands can keep without looking twice.
const enough unit.Length = 3

// lifts: what hangs on rods, or is no slab, comes straight out of its wall.
func (t *task) lifts() []unit.Length {
	if t.part.Slab == nil {
		return []unit.Length{0, -5, 5}
	}
	for q := range t.others {
		if q.Rod != nil && carries(q, t.part) {
			return []unit.Length{0}
		}
	}
	return heights
}

// hangsOn are the rods that stick in the part.
func (t *task) hangsOn(there []*model.Part) []*model.Part {
	var out []*model.Part
	for _, q := range there {
		if q.Rod != nil && carries(q, t.part) {
			out = append(out, q)
		}
	}
	return out
}

// found makes a way of poses that lead out, and measures it.
func (t *task) found(poses []motion.Pose, there []*model.Part, looks int) Way {
	var bearers []*model.Part
	for _, q := range there {
		if carries(q, t.part) || carries(t.part, q) {
			bearers = append(bearers, q)
		}
	}
	w := t.none(motion.Found, looks)
	w.Least = motion.Follow(t.moving, t.fixed(there, bearers...), poses, step)
	for i := len(poses) - 1; i >= 0; i-- {
		w.Poses = append(w.Poses, poses[i])
	}
	return w
}

func (t *task) none(v motion.Verdict, looks int) Way {
	return Way{Part: t.part, Verdict: v, Looks: looks, frame: t.frame, box: t.box, Least: motion.Tight{Gap: unit.Length(math.Inf(1))}}
}

// families are the ways in which hands move a slab: kept along its wall and tilted
// about its long edge; with one end raised; turned in plan; all at once. The first
// is searched until it is settled, as a rule.
var families = []struct {
	name  string
	ways  []motion.Way
	looks int
}{
	{"kept along the wall behind it, however it is shifted and tilted", []motion.Way{motion.Y, motion.Z, motion.Tilt}, 4000},
	{"with an end raised, however far", []motion.Way{motion.X, motion.Y, motion.Z, motion.Roll}, 600},
	{"turned in plan and kept level", []motion.Way{motion.X, motion.Y, motion.Z, motion.Turn}, 600},
	{"turned about all three axes at once", []motion.Way{motion.X, motion.Y, motion.Z, motion.Turn, motion.Roll, motion.Tilt}, 600},
}

// search looks for a way by families, the simple ones first. A part that stands in
// another thing where it lies is not looked at: that has to be mended first.
func (t *task) search(there []*model.Part) Way {
	if in := motion.Follow(t.moving, t.fixed(there, t.hangsOn(there)...), []motion.Pose{{}}, step); in.Gap < -0.05 {
		w := t.none(motion.GaveUp, 0)
		w.Least = in
		return w
	}
	p := t.problem(there)
	var proven []string
	spent := 0
	for i, f := range families {
		p.Ways, p.Looks = f.ways, min(f.looks, t.scene.looks)
		if t.part.Slab == nil {
			p.Looks /= 5
		}
		if p.Looks < 1 {
			break
		}
		a := motion.Search(p)
		spent += a.Looks
		t.scene.looks -= a.Looks
		switch {
		case a.Verdict == motion.Found:
			return t.found(t.roomier(p, a), there, spent)
		case a.Verdict == motion.NoWay && a.Bounded && (i == 0 || len(proven) > 0):
			exact := p
			exact.Clear, exact.Looks = -grain, t.scene.proof
			b := motion.Search(exact)
			t.scene.proof = max(1, t.scene.proof-b.Looks)
			if b.Verdict == motion.NoWay && b.Bounded {
				proven = append(proven, f.name)
			}
		}
	}
	w := t.none(motion.GaveUp, spent)
	if w.Proven = proven; len(proven) > 0 {
		w.Verdict = motion.NoWay
	}
	return w
}

// roomier looks for a way with more room round it; the first that was found may
// graze.
func (t *task) roomier(p motion.Problem, a motion.Answer) []motion.Pose {
	for _, clear := range []unit.Length{8, 4, 2, 1} {
		p.Clear = clear
		p.Looks = min(max(500, 2*a.Looks), 3000)
		if b := motion.Search(p); b.Verdict == motion.Found {
			return b.Way
		}
	}
	return a.Way
}

func (t *task) roomy() unit.Length {
	if t.part.Slab == nil {
		return 0
	}
	return roomy
}

func (t *task) problem(there []*model.Part) motion.Problem {
	long := t.box.Max.X - t.box.Min.X
	far := geom.Vec3{X: long, Y: max(long+t.depth(), t.depth()-t.ends+t.depth()), Z: long}
	return motion.Problem{
		Part: t.moving, Fixed: t.fixed(there), Out: geom.Vec3{Y: -1}, Beyond: -t.box.Min.Y + past, Roomy: t.roomy(), Clear: air,
		Low:  motion.Pose{At: far.Mul(-1), Turn: -math.Pi, Roll: -math.Pi / 2, Tilt: -math.Pi},
		High: motion.Pose{At: far, Turn: math.Pi, Roll: math.Pi / 2, Tilt: math.Pi},
	}
}
