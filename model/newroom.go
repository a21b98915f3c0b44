package model

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// NewRoom adjusts the readings of a plan to a room. It gives an error when the
// readings do not determine the room, with the reading that is missing, and
// when the plan says what no room can have.
func NewRoom(p RoomPlan) (*Room, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	p, faces, err := p.fitFaces()
	if err != nil {
		return nil, err
	}
	res, refused, err := survey.AdjustSeen(p.network())
	if err != nil {
		return nil, err
	}
	r := &Room{Closed: p.Closed, At: p.At, Ceiling: p.Ceiling, Floor: p.Floor, Survey: surveyReport(res), known: &known{res.Network(), res}}
	for _, c := range res.Points {
		if slices.ContainsFunc(p.Corners, func(q CornerPlan) bool { return q.Name == string(c.Name) }) {
			r.Corners = append(r.Corners, Corner{Name: string(c.Name), At: c.At, SDX: c.SDX, SDY: c.SDY})
		}
	}
	if err := r.addWalls(p, res); err != nil {
		return nil, err
	}
	r.measureAngles(res)
	r.judge(p, res, refused, faces)
	if err := r.sound(); err != nil {
		return nil, err
	}
	return r, nil
}

// network states the readings as the survey wants them.
func (p RoomPlan) network() survey.Network {
	n := survey.Network{Closed: p.Closed, Turns: map[survey.Point]survey.Turn{}, Readings: slices.Clone(p.Readings), Accuracy: p.Accuracy}
	for _, c := range p.Corners {
		n.Chain = append(n.Chain, survey.Point(c.Name))
		switch c.Bend {
		case "in":
			n.Turns[survey.Point(c.Name)] = survey.Inside
		case "out":
			n.Turns[survey.Point(c.Name)] = survey.Outside
		}
	}
	n.Base = p.base()
	if slices.ContainsFunc(p.Readings, func(r survey.Reading) bool { return r.Kind == survey.Width || r.Kind == survey.SquareOff }) {
		for _, w := range p.Walls {
			if w.Bow != 0 || w.bowSD > 0 {
				n.Readings = append(n.Readings, w.bowReading())
			}
		}
	}
	return n
}

// base is the wall that lies along the drawing: the second of three or more, as
// a back wall between two side walls, else the first.
func (p RoomPlan) base() [2]survey.Point {
	if p.Base[0] != "" {
		return [2]survey.Point{survey.Point(p.Base[0]), survey.Point(p.Base[1])}
	}
	i := 0
	if len(p.Corners) > 2 {
		i = 1
	}
	if len(p.Corners) < i+2 {
		return [2]survey.Point{}
	}
	return [2]survey.Point{survey.Point(p.Corners[i].Name), survey.Point(p.Corners[i+1].Name)}
}

// addWalls joins neighbouring corners; walls that the plan does not describe
// are of unknown make.
func (r *Room) addWalls(p RoomPlan, res *survey.Result) error {
	count := len(r.Corners)
	if !p.Closed {
		count--
	}
	for i := range count {
		a, b := r.Corners[i], r.Corners[(i+1)%len(r.Corners)]
		w := &Wall{Name: WallPlan{From: a.Name, To: b.Name}.called(), From: a, To: b, Make: UnknownWall, Index: i, room: r}
		if l, err := res.Length(survey.Point(a.Name), survey.Point(b.Name)); err == nil {
			w.SD = l.SD
		}
		for _, plan := range p.Walls {
			if plan.From == a.Name && plan.To == b.Name {
				w.describe(plan)
			}
		}
		r.Walls = append(r.Walls, w)
	}
	if len(r.Walls) == 0 {
		return errors.New("a room has two corners at least")
	}
	return nil
}

// describe takes over what the plan says of a wall. Distances may count from
// either corner; here they count from the left one.
func (w *Wall) describe(p WallPlan) {
	w.Name = p.called()
	if p.Make != "" {
		w.Make = p.Make
	}
	w.Anchor = p.Anchor
	w.countsFromRight = p.StudsFrom == p.To
	w.Bow, w.bowSD, w.leanSD = p.Bow, p.bowSD, p.leanSD
	if p.LeanOver > 0 {
		w.Lean, w.leanRead = float64(p.Lean/p.LeanOver), true
	}
	l := w.Length()
	for _, s := range p.Studs {
		if p.StudsFrom == p.To {
			s = l - s
		}
		w.Studs = append(w.Studs, s)
	}
	slices.Sort(w.Studs)
	for _, o := range p.Obstacles {
		start, end := o.Start, o.End
		if o.From == p.To {
			start, end = l-end, l-start
		}
		w.Obstacles = append(w.Obstacles, Obstacle{Name: o.Name, Kind: o.Kind, Wall: w, Start: start, End: end, Bottom: o.Bottom, Top: o.Top, Depth: o.Depth, Free: o.Free})
	}
}

// measureAngles gives every corner its angle inside the room.
func (r *Room) measureAngles(res *survey.Result) {
	for i := range r.Corners {
		in, out := r.neighbourAt(i, -1), r.neighbourAt(i, 0)
		if in == nil || out == nil {
			continue
		}
		a, c, b := in.From, in.To, out.To
		v1, v2 := a.At.Sub(c.At), b.At.Sub(c.At)
		t := math.Atan2(v1.Cross(v2), v1.Dot(v2))
		if t < 0 {
			t += 2 * math.Pi
		}
		r.Corners[i].Angle = unit.Angle(t)
		if f, err := res.Foretell(survey.Reading{Kind: survey.Angle, Points: []survey.Point{survey.Point(a.Name), survey.Point(c.Name), survey.Point(b.Name)}}); err == nil {
			r.Corners[i].AngleSD = f.AngleSD
		}
	}
	for _, w := range r.Walls {
		w.From, w.To = r.Corners[w.Index], r.Corners[(w.Index+1)%len(r.Corners)]
	}
}

// neighbourAt is the wall that starts at corner i (step 0) or ends there (-1).
func (r *Room) neighbourAt(i, step int) *Wall {
	j := i + step
	if r.Closed {
		j = (j + len(r.Walls)) % len(r.Walls)
	}
	if j < 0 || j >= len(r.Walls) {
		return nil
	}
	return r.Walls[j]
}

// sound makes sure that the walls enclose a plan, and from the right side.
func (r *Room) sound() error {
	plan := r.Plan(r.At)
	if err := plan.Err(); err != nil {
		return fmt.Errorf("its walls make no plan: %w", err)
	}
	if r.turn() < -60*unit.Degree {
		return errors.New("the room lies behind its walls: list the corners from left to right, as you stand in the room and face the walls")
	}
	if plan.Empty() || len(plan.Loops()) != 1 {
		return errors.New("its walls cross each other; look at the order of the corners and at the readings of the short walls")
	}
	return nil
}

func surveyReport(res *survey.Result) SurveyReport {
	out := SurveyReport{Redundancy: res.DOF, S0: res.S0}
	if res.Loose != nil {
		out.Loose = res.Loose.Error()
	}
	for _, c := range res.Squared {
		out.Squared = append(out.Squared, string(c))
	}
	for _, c := range res.Assumed {
		out.Assumed = append(out.Assumed, string(c))
	}
	for _, o := range res.Readings {
		rd := o.Reading
		a := AdjustedReading{Name: rd.ID, Checked: o.Redundancy}
		if rd.Kind == survey.Angle || rd.Kind == survey.Interior {
			a.Unit, a.Read, a.SD = "deg", rd.Angle.Degrees(), rd.AngleSD.Degrees()
			a.Adjusted = a.Read + o.AngleResidual.Degrees()
		} else {
			a.Unit, a.Read, a.SD = "mm", float64(rd.Length), float64(rd.SD)
			a.Adjusted = a.Read + float64(o.Residual)
		}
		out.Readings = append(out.Readings, a)
	}
	return out
}

// Centre is a place inside the walls for labels.
func (r *Room) Centre() geom.Vec {
	var c geom.Vec
	for _, k := range r.Corners {
		c = c.Add(k.At.Mul(1 / float64(len(r.Corners))))
	}
	return c
}
