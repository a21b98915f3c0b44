package model

import (
	"errors"
	"fmt"
	"slices"

	"slabwright/model/unit"
)

// Limits of what a plan may say of a wall: beyond them a slip is certain.
const (
	mostBow   unit.Length = 300
	mostLean              = 0.2 // mm per mm of height
	mostFloor unit.Length = 1000
	highest               = 20 * unit.M
	longest               = 100 * unit.M
)

// check finds what a plan says that no room can have. What concerns readings
// is for the survey to find.
func (p RoomPlan) check() error {
	var names []string
	for _, c := range p.Corners {
		if c.Bend != "" && c.Bend != "in" && c.Bend != "out" {
			return placed(c.Pos, "corner %q: a bend is in or out, not %q", c.Name, c.Bend)
		}
		names = append(names, c.Name)
	}
	if !inside(p.At, 0, highest) || !inside(p.Ceiling, 0, highest) {
		return placed(p.Pos, "readings at %s, ceiling at %s: up to %s above the floor", inWords(p.At), inWords(p.Ceiling), inWords(highest))
	}
	for _, m := range p.Floor {
		if m.Wall != "" {
			if !slices.ContainsFunc(p.Walls, func(w WallPlan) bool { return w.called() == m.Wall }) {
				return placed(m.Pos, "floor: there is no wall %q", m.Wall)
			}
			if !inside(m.Along, 0, longest) || !inside(m.Before, 0, longest) || !inside(m.SD, 0, mostFloor) {
				return placed(m.Pos, "floor before wall %q: %s along it, %s before it", m.Wall, inWords(m.Along), inWords(m.Before))
			}
		} else if !slices.Contains(names, m.Corner) {
			return placed(m.Pos, "floor: there is no corner %q%s", m.Corner, didYouMean(m.Corner, names))
		}
		if !inside(m.Height, -mostFloor, mostFloor) {
			return placed(m.Pos, "floor at %s: a height of %s, up to %s either way", m.where(), inWords(m.Height), inWords(mostFloor))
		}
	}
	seen := map[string]bool{}
	for _, w := range p.Walls {
		i, j := slices.Index(names, w.From), slices.Index(names, w.To)
		name := w.called()
		switch {
		case i < 0 || j < 0:
			missing := w.From
			if i >= 0 {
				missing = w.To
			}
			return placed(w.Pos, "wall %q: there is no corner %q%s", name, missing, didYouMean(missing, names))
		case j != i+1 && !(p.Closed && j == 0 && i == len(names)-1):
			return placed(w.Pos, "wall %q: %s and %s are no neighbours, left to right", name, w.From, w.To)
		case seen[name]:
			return placed(w.Pos, "there are two walls %q", name)
		}
		seen[name] = true
		if err := w.check(name); err != nil {
			return err
		}
	}
	return nil
}

// check looks at one wall.
func (p WallPlan) check(name string) error {
	if !inside(p.Bow, -mostBow, mostBow) {
		return placed(p.Pos, "wall %q: a bow of %s, up to %s either way", name, inWords(p.Bow), inWords(mostBow))
	}
	if !inside(p.LeanOver, 0, highest) || !inside(p.Lean, -mostFloor, mostFloor) || p.LeanOver == 0 && p.Lean != 0 ||
		p.LeanOver > 0 && !(abs(p.Lean) <= mostLean*p.LeanOver) {
		return placed(p.Pos, "wall %q: a lean of %s over %s of height, up to %g in 1 either way", name, inWords(p.Lean), inWords(p.LeanOver), mostLean)
	}
	if p.StudsFrom != "" && p.StudsFrom != p.From && p.StudsFrom != p.To {
		return placed(p.Pos, "wall %q: studs are counted from %s or %s, not from %q", name, p.From, p.To, p.StudsFrom)
	}
	for _, s := range p.Studs {
		if !inside(s, -longest, longest) {
			return placed(p.Pos, "wall %q: a stud at %s", name, inWords(s))
		}
	}
	for _, o := range p.Obstacles {
		switch {
		case o.From != "" && o.From != p.From && o.From != p.To:
			return placed(o.Pos, "%s on wall %q: counted from %s or %s, not from %q", o.Name, name, p.From, p.To, o.From)
		case !inside(o.Start, -longest, o.End) || !inside(o.End, o.Start, longest) || o.Start == o.End:
			return placed(o.Pos, "%s on wall %q: from %s to %s along the wall: the end lies beyond the start", o.Name, name, inWords(o.Start), inWords(o.End))
		case !inside(o.Bottom, -highest, o.Top) || !inside(o.Top, o.Bottom, highest) || o.Bottom == o.Top:
			return placed(o.Pos, "%s on wall %q: from %s to %s above the floor: the top lies above the bottom", o.Name, name, inWords(o.Bottom), inWords(o.Top))
		case !inside(o.Depth, 0, highest) || !inside(o.Free, 0, highest):
			return placed(o.Pos, "%s on wall %q: %s deep, %s kept free: both from 0", o.Name, name, inWords(o.Depth), inWords(o.Free))
		}
	}
	return nil
}

func inside(v, low, high unit.Length) bool { return v >= low && v <= high }

// placed is an error with its place in the job file, where that is known.
func placed(at Pos, format string, args ...any) error {
	text := fmt.Sprintf(format, args...)
	if at != (Pos{}) {
		text = at.String() + ": " + text
	}
	return errors.New(text)
}
