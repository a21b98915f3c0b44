package job

import (
	"fmt"
	"slices"

	"slabwright/model"
	"slabwright/model/survey"
)

// checkWall looks at a wall by itself.
func checkWall(r *reader, e *entry[wallDraft]) {
	w := &e.v.plan
	w.Pos = r.pos(e.at[""])
	checkFace(r, e)
	if e.at.has("studs") && !slices.IsSorted(w.Studs) {
		for i := 1; i < len(w.Studs); i++ {
			if w.Studs[i] < w.Studs[i-1] {
				r.wrong(e.at["studs"], fmt.Sprintf("a stud at %s mm after one at %s mm", mm(w.Studs[i]), mm(w.Studs[i-1])), "studs in rising order", "look for a slip, or put them in order")
				break
			}
		}
	}
}

// checkFace looks at bow and lean of a wall.
func checkFace(r *reader, e *entry[wallDraft]) {
	w := &e.v.plan
	if e.gave("bow") && e.gave("bow_at") {
		r.wrong(e.at[""], "a wall with bow and with bow_at", "one of them", "bow is the reading at the middle; put it into bow_at with the others")
	}
	if e.gave("lean") && e.gave("plumb") {
		r.wrong(e.at[""], "a wall with lean and with plumb", "one of them", "lean is worked out from plumb")
	}
	if e.at.has("plumb") && !slices.ContainsFunc(w.Plumbs, func(q survey.Plumb) bool { return q.Height != w.Plumbs[0].Height }) {
		r.wrong(e.at["plumb"], fmt.Sprintf("all plumb readings at %s mm", mm(w.Plumbs[0].Height)), "readings at two heights at least", "hang the plumb line once and measure near the floor and as high as you reach")
	}
}

// checkObstacle looks at an obstacle by itself.
func checkObstacle(r *reader, e *entry[model.ObstaclePlan]) {
	o := &e.v
	o.Pos = r.pos(e.at[""])
	if o.Name == "" {
		o.Name = o.Kind
	}
	if e.at.has("start", "end") && o.Start >= o.End {
		r.wrong(e.at["end"], fmt.Sprintf("an obstacle from %s to %s mm", mm(o.Start), mm(o.End)), "an end beyond the start", "count both from the same corner")
	}
	if e.at.has("top") && (e.at.has("bottom") || !e.gave("bottom")) && o.Bottom >= o.Top {
		r.wrong(e.at["top"], fmt.Sprintf("an obstacle from %s up to %s mm", mm(o.Bottom), mm(o.Top)), "a top above the bottom", "count both from the floor")
	}
}
