package bring

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// slants are the angles at which one end of a slab is looked at being raised, in
// degrees: enough to come free of two walls that it fits between.
var slants = []unit.Angle{3, 5, 8, 12, 16, 20, 30, 45, 60}

// raised lifts the part and raises one of its ends, where it lies or in front of
// its place, so that it comes free of two walls that it fits between.
func (t *task) raised(there []*model.Part) (Way, bool) {
	if t.part.Slab == nil && t.part.Bracket() == nil || len(t.hangsOn(there)) > 0 {
		return Way{}, false
	}
	fixed := t.fixed(there)
	forward := geom.Vec3{Y: -t.depth() - past}
	heights := []unit.Length{40, 100, 10, 5, 2}
	if t.part.Bracket() != nil { // it may come from below as well
		heights = []unit.Length{-60, -200, -400, 40}
	}
	for _, h := range heights {
		lifted := motion.Pose{At: geom.Vec3{Z: h}}
		if _, ok := motion.Slide(t.moving, fixed, motion.Pose{}, lifted.At); !ok {
			continue
		}
		for _, share := range []float64{0, 0.25, 0.5, 0.75, 1} { // of the way forward that is drawn before
			drawn := motion.Pose{At: lifted.At.Add(forward.Mul(share))}
			if _, ok := motion.Slide(t.moving, fixed, lifted, forward.Mul(share)); !ok {
				break
			}
			for _, end := range []unit.Angle{1, -1} { // the left end up, the right end up
				poses, ok := t.raise(fixed, drawn, end, forward.Mul(1-share))
				if !ok {
					continue
				}
				if share > 0 {
					poses = append([]motion.Pose{lifted}, poses...)
				}
				return t.found(append([]motion.Pose{{}}, poses...), there, 0), true
			}
		}
	}
	return Way{}, false
}

// raise turns the part up about one of its ends until it can be drawn on, and is
// out then.
func (t *task) raise(fixed []motion.Body, from motion.Pose, end unit.Angle, on geom.Vec3) ([]motion.Pose, bool) {
	half := (t.box.Max.X - t.box.Min.X) / 2
	up := []motion.Pose{from}
	for _, a := range slants {
		by := a * unit.Degree
		at := from
		at.At.Z += half * unit.Length(math.Sin(float64(by)))
		at.Roll = end * by
		if motion.Follow(t.moving, fixed, []motion.Pose{up[len(up)-1], at}, 1).Gap < 0.5 {
			return nil, false // closer than a step of 1 mm can be trusted with
		}
		up = append(up, at)
		out := at
		out.At = out.At.Add(on)
		if _, ok := motion.Slide(t.moving, fixed, at, on); !ok || motion.Follow(t.moving, fixed, []motion.Pose{out}, step).Gap < t.roomy()/3 {
			continue
		}
		if on != (geom.Vec3{}) {
			up = append(up, out)
		}
		return up, true
	}
	return nil, false
}
