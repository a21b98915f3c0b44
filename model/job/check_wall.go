package job

import (
	"fmt"
	"slices"

	"slabwright/model"
)

// checkWall looks at a wall by itself.
func checkWall(r *reader, e *entry[wallDraft]) {
	w := &e.v.plan
	w.Pos = r.pos(e.at[""])
	if e.at.has("studs") && !slices.IsSorted(w.Studs) {
		for i := 1; i < len(w.Studs); i++ {
			if w.Studs[i] < w.Studs[i-1] {
				r.wrong(e.at["studs"], fmt.Sprintf("a stud at %s mm after one at %s mm", mm(w.Studs[i]), mm(w.Studs[i-1])), "studs in rising order", "look for a slip, or put them in order")
				break
			}
		}
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
