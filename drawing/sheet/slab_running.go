package sheet

import (
	"slices"

	"slabwright/drawing/dim"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// fromB gives places by running dimensions from the datum edge B along A.
func fromB(datum geom.Vec, side dim.Side, points ...geom.Vec) []dim.Request {
	return running(dim.Running{Datum: datum, From: "B", Dir: dim.Horizontal, Side: side}, 1, points)
}

// fromA gives places by running dimensions from the datum edge A, away from it;
// flip as in look.
func fromA(datum geom.Vec, side dim.Side, flip unit.Length, points ...geom.Vec) []dim.Request {
	return running(dim.Running{Datum: datum, From: "A", Dir: dim.Vertical, Side: side}, -flip, points)
}

// towards is the way from the view to the lines on a side.
var towards = map[dim.Side]geom.Vec{dim.Below: {Y: -1}, dim.Above: {Y: 1}, dim.LeftOf: {X: -1}, dim.RightOf: {X: 1}}

// fromNearEnd is fromA at the end of A that places are nearer to, where their
// extension lines are shorter and cross less.
func (w *workpiece) fromNearEnd(flip unit.Length, points ...geom.Vec) []dim.Request {
	_, right, _ := w.reference()
	var sum unit.Length
	for _, p := range points {
		sum += p.X - right.X/2
	}
	if sum < 0 {
		return fromA(geom.V(0, 0), dim.LeftOf, flip, points...)
	}
	return fromA(geom.V(right.X, 0), dim.RightOf, flip, points...)
}

// running fills a running dimension: no place twice, none on the datum, and a
// minus for those on the other side of it; ahead is the sign of the usual side.
func running(q dim.Running, ahead unit.Length, points []geom.Vec) []dim.Request {
	key := func(v geom.Vec) unit.Length {
		if q.Dir == dim.Vertical {
			return (v.Y - q.Datum.Y) * ahead
		}
		return (v.X - q.Datum.X) * ahead
	}
	for _, p := range points {
		same := func(o geom.Vec) bool { return abs(key(o)-key(p)) < printed }
		if same(q.Datum) {
			continue
		}
		if i := slices.IndexFunc(q.Points, same); i >= 0 {
			if ahead := towards[q.Side]; p.Dot(ahead) > q.Points[i].Dot(ahead) {
				q.Points[i] = p // its extension line is shorter and crosses less
			}
			continue
		}
		var l dim.Label
		if key(p) < 0 {
			l.Prefix = "-"
		}
		q.Points, q.Labels = append(q.Points, p), append(q.Labels, l)
	}
	if len(q.Points) == 0 {
		return nil
	}
	return []dim.Request{q}
}
