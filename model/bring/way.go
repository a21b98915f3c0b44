package bring

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Way is how a part goes in. Poses are the part's own axes, moved and turned from
// where it lies in the end; they run from the room to its place.
type Way struct {
	Part    *model.Part
	Verdict motion.Verdict
	Poses   []motion.Pose
	Least   motion.Tight // to everything but what carries it
	Looks   int
	Proven  bool // NoWay: nothing was left out of the search
	frame   frame
	box     geom.Box
}

// lifts are the heights to which a slab is first looked at being lifted off what
// it lies on: enough for fingers if possible.
var lifts = []unit.Length{100, 60, 40, 25, 150, 250, 10, 5, 2, 0}

// Fingers is the room that a hand needs under a slab that is being set down:
// common practice, no source.
const Fingers unit.Length = 25

// past is how far in front of its place a part counts as out.
const past unit.Length = 20

// step is the distance at which a way is measured.
const step unit.Length = 2

func (t *task) depth() unit.Length { return t.box.Max.Y - t.box.Min.Y }

// out takes the part out, with these parts in place: straight if it can, else by
// a search.
func (t *task) out(there []*model.Part, looks int) Way {
	if w, ok := t.straight(there); ok {
		return w
	}
	return t.search(there, looks)
}

// straight tries to lift the part and to draw it forward, or to push it up to
// where it can be drawn forward.
func (t *task) straight(there []*model.Part) (Way, bool) {
	fixed := t.fixed(there, t.hangsOn(there)...)
	forward := geom.Vec3{Y: -t.depth() - past}
	for _, h := range t.lifts() {
		at := motion.Pose{At: geom.Vec3{Z: h}}
		if _, ok := motion.Slide(t.moving, fixed, motion.Pose{}, at.At); !ok {
			continue
		}
		if _, ok := motion.Slide(t.moving, fixed, at, forward); !ok {
			continue
		}
		poses := []motion.Pose{{}}
		if h != 0 {
			poses = append(poses, at)
		}
		return t.found(append(poses, motion.Pose{At: at.At.Add(forward)}), there, 0), true
	}
	return Way{}, false
}

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
	return lifts
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

// families are the ways in which hands move a slab: tilted about its long edge,
// about its short one, turned in plan; then all at once.
var families = [][]motion.Way{
	{motion.Y, motion.Z, motion.Tilt},
	{motion.X, motion.Y, motion.Z, motion.Roll},
	{motion.X, motion.Y, motion.Z, motion.Turn},
	{motion.X, motion.Y, motion.Z, motion.Turn, motion.Roll, motion.Tilt},
}

// search looks for a way by families, the simple ones first.
func (t *task) search(there []*model.Part, looks int) Way {
	p := t.problem(there)
	spent := 0
	for i, ways := range families {
		p.Ways = ways
		p.Looks = looks / 5
		if i == len(families)-1 {
			p.Looks = looks - spent
		}
		a := motion.Search(p)
		spent += a.Looks
		switch {
		case a.Verdict == motion.Found:
			return t.found(t.roomier(p, a), there, spent)
		case a.Verdict == motion.NoWay && i == len(families)-1 && a.Bounded:
			w := t.none(motion.NoWay, spent)
			w.Proven = true
			return w
		}
	}
	return t.none(motion.GaveUp, spent)
}

// roomier looks for a way with more room round it; the first that was found may
// graze.
func (t *task) roomier(p motion.Problem, a motion.Answer) []motion.Pose {
	for _, clear := range []unit.Length{8, 4, 2, 1} {
		p.Clear = clear
		p.Looks = max(500, 2*a.Looks)
		if b := motion.Search(p); b.Verdict == motion.Found {
			return b.Way
		}
	}
	return a.Way
}

func (t *task) problem(there []*model.Part) motion.Problem {
	long := t.box.Max.X - t.box.Min.X
	far := geom.Vec3{X: long, Y: long + t.depth(), Z: long}
	return motion.Problem{
		Part: t.moving, Fixed: t.fixed(there), Out: geom.Vec3{Y: -1}, Beyond: -t.box.Min.Y + past,
		Low:  motion.Pose{At: far.Mul(-1), Turn: -math.Pi, Roll: -math.Pi / 2, Tilt: -math.Pi},
		High: motion.Pose{At: far, Turn: math.Pi, Roll: math.Pi / 2, Tilt: math.Pi},
	}
}
