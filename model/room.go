package model

import (
	"fmt"
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Room is the measured room: corners with coordinates, walls between them,
// what is on the walls. Make one with NewRoom. Seen from above, with the base
// wall along x and the room in front of it (y below 0), corners follow each
// other clockwise, so the room lies to the right of every wall.
type Room struct {
	Corners []Corner
	Walls   []*Wall
	Closed  bool
	At      unit.Length // height of the readings
	Ceiling unit.Length // 0: not given
	Floor   []FloorMark
	Survey  SurveyReport

	known  *known    // nil: a room that no survey stands behind
	cut    []CutPart // what is already cut for it
	wiring Wiring    // work for cables that the job adds
}

// Corner is an adjusted corner. Angle is the angle inside the room; it is 0 at
// the two ends of an open chain.
type Corner struct {
	Name     string
	At       geom.Vec
	SDX, SDY unit.Length
	Angle    unit.Angle
	AngleSD  unit.Angle
}

// Wall is the straight chord between two neighbouring corners, with bow, lean
// and what is on it. Bow and Lean are signed into the room and back from it as
// in WallPlan.
type Wall struct {
	Name            string
	From, To        Corner
	SD              unit.Length // of the length
	Make            WallMake
	Bow             unit.Length
	Lean            float64 // mm back from the room per mm upwards
	Studs           []unit.Length
	Obstacles       []Obstacle
	Anchor          *Approval // nil: no paper of an anchor at hand
	Index           int
	countsFromRight bool        // places on it were counted from To
	leanRead        bool        // Lean was measured, even if it is 0
	bowSD           unit.Length // of Bow; 0: as usual
	leanSD          unit.Length // of Lean, per mm of height; 0: as usual
	room            *Room
	faults          faults
}

// Obstacle is something on a wall; Start and End count from the wall's From
// corner.
type Obstacle struct {
	Name, Kind  string
	Wall        *Wall
	Start, End  unit.Length
	Bottom, Top unit.Length
	Depth, Free unit.Length
}

// Wall gives the wall of that name. An unknown name gives a wall that carries
// the fault into everything that is built on it.
func (r *Room) Wall(name string) *Wall {
	var names []string
	for _, w := range r.Walls {
		if w.Name == name {
			return w
		}
		names = append(names, w.Name)
	}
	return &Wall{Name: name, room: r, Index: -1, faults: faults{faultf("there is no wall %q%s", name, didYouMean(name, names))}}
}

// Corner gives the corner of that name, and whether there is one.
func (r *Room) Corner(name string) (Corner, bool) {
	for _, c := range r.Corners {
		if c.Name == name {
			return c, true
		}
	}
	return Corner{}, false
}

func didYouMean(word string, words []string) string {
	if n := Nearest(word, words); n != "" {
		return fmt.Sprintf(" (nearest: %q)", n)
	}
	return ""
}

// Length is the length of the chord.
func (w *Wall) Length() unit.Length { return w.To.At.Sub(w.From.At).Len() }

// Chord is the line from corner to corner at the height of the readings.
func (w *Wall) Chord() geom.Line { return geom.Through(w.From.At, w.To.At) }

// LineAt is the chord at height z, moved back or forth by the wall's lean.
func (w *Wall) LineAt(z unit.Length) geom.Line {
	return w.Chord().Shift(unit.Length(w.Lean * float64(z-w.room.At)))
}

// Hull is the line that no point of the wall passes into the room between two
// heights: the chord, moved in by lean and by a bow that bulges.
func (w *Wall) Hull(z0, z1 unit.Length) geom.Line {
	out := unit.Length(min(w.Lean*float64(z0-w.room.At), w.Lean*float64(z1-w.room.At)))
	return w.Chord().Shift(out - max(0, w.Bow))
}

// Face is the wall's face at height z as a polyline from corner to corner: a
// parabola through the bow, in steps whose chord error stays below 0.02 mm.
func (w *Wall) Face(z unit.Length) []geom.Vec {
	n := 1
	if b := math.Abs(float64(w.Bow)); b > 0 {
		n = 2 * int(math.Ceil(math.Sqrt(b/0.02)/2)) // error of a parabola in n steps: bow/n^2
	}
	a, out := w.LineAt(z), make([]geom.Vec, 0, n+1)
	right := a.D.Unit().Left().Mul(-1)
	for i := 0; i <= n; i++ {
		t := float64(i) / float64(n)
		out = append(out, a.P.Add(a.D.Mul(t)).Add(right.Mul(4*float64(w.Bow)*t*(1-t))))
	}
	return out
}

// Keep is the rectangle that an obstacle claims on its wall, with its free
// margin: along the wall from the From corner, and above the floor.
func (o Obstacle) Keep() (start, end, bottom, top unit.Length) {
	return o.Start - o.Free, o.End + o.Free, o.Bottom - o.Free, o.Top + o.Free
}

// Next is the wall that follows at the To corner, nil at an open end.
func (w *Wall) Next() *Wall { return w.room.neighbour(w.Index, +1) }

// Previous is the wall before the From corner, nil at an open end.
func (w *Wall) Previous() *Wall { return w.room.neighbour(w.Index, -1) }

func (r *Room) neighbour(i, step int) *Wall {
	j := i + step
	if r.Closed {
		j = (j + len(r.Walls)) % len(r.Walls)
	}
	if i < 0 || j < 0 || j >= len(r.Walls) {
		return nil
	}
	return r.Walls[j]
}

// forward is how far an open room is taken to go on beyond its two ends, unless
// its first and last wall would meet before.
const forward = 4 * unit.M

// Plan is the floor plan at height z: the region between the walls' faces.
// An open room goes on beyond its two ends, 4 m if it can, in the direction of
// its first and last wall; where the walls hardly turn it is 4 m deep.
func (r *Room) Plan(z unit.Length) geom.Region {
	var pts []geom.Vec
	for i, w := range r.Walls {
		face := w.Face(z)
		if i > 0 {
			face[0] = joint(r.Walls[i-1], w, z, face[0])
		}
		if n := w.Next(); n != nil {
			face[len(face)-1] = joint(w, n, z, face[len(face)-1])
		}
		if r.Closed && i == 0 {
			face[0] = joint(w.Previous(), w, z, face[0])
		}
		if i > 0 {
			face = face[1:]
		}
		pts = append(pts, face...)
	}
	if r.Closed {
		return geom.Polygon(pts[:len(pts)-1]...)
	}
	first := geom.Line{P: pts[0], D: r.Walls[0].LineAt(z).D.Unit().Mul(-1)}
	last := geom.Line{P: pts[len(pts)-1], D: r.Walls[len(r.Walls)-1].LineAt(z).D.Unit()}
	on := forward
	if p, ok := first.Meet(last); ok && first.Along(p) > 0 && last.Along(p) > 0 {
		on = min(on, 0.9*min(first.Along(p), last.Along(p)))
	}
	end := last.P.Add(last.D.Mul(float64(on)))
	start := first.P.Add(first.D.Mul(float64(on)))
	if r.turn() > 60*unit.Degree {
		return geom.Polygon(append(pts, end, start)...)
	}
	deep := float64(forward)
	return geom.Polygon(append(pts, end, end.Sub(last.D.Left().Mul(deep)), start.Add(first.D.Left().Mul(deep)), start)...)
}

// turn is how far the walls turn to the right, from the first to the last.
func (r *Room) turn() unit.Angle {
	var t unit.Angle
	for _, c := range r.Corners {
		if c.Angle > 0 {
			t += math.Pi - c.Angle
		}
	}
	return t
}

// joint is where two neighbouring walls meet at height z.
func joint(a, b *Wall, z unit.Length, fallback geom.Vec) geom.Vec {
	if p, ok := a.LineAt(z).Meet(b.LineAt(z)); ok && p.Sub(fallback).Len() < 100 {
		return p
	}
	return fallback
}

// Solid is the space that an obstacle takes in the room, without its free
// margin: a block on the wall's chord. What is hidden in the wall is a thin
// sheet on its face.
func (o Obstacle) Solid() geom.Solid {
	l := o.Wall.Hull(o.Bottom, o.Top)
	along, in := l.D.Unit(), l.D.Unit().Left().Mul(-1)
	a, b := l.P.Add(along.Mul(float64(o.Start))), l.P.Add(along.Mul(float64(o.End)))
	deep := in.Mul(float64(max(o.Depth, 1)))
	return geom.Prism(geom.Polygon(a, b, b.Add(deep), a.Add(deep)), o.Bottom, o.Top, o.Name)
}
