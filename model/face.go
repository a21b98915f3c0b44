package model

import (
	"fmt"

	"slabwright/model/survey"
	"slabwright/model/unit"
)

// faces is what the stations and plumb readings of a plan's walls come to, by
// the name of the wall.
type faces struct {
	bows  map[string]survey.BowFit
	leans map[string]survey.LeanFit
}

// fitFaces works out bow and lean of the walls that were read at several places,
// and gives the plan with them. It gives an error with the place in the job file
// when the readings of a wall do not tell.
func (p RoomPlan) fitFaces() (RoomPlan, faces, error) {
	f := faces{map[string]survey.BowFit{}, map[string]survey.LeanFit{}}
	walls := append([]WallPlan(nil), p.Walls...)
	for i := range walls {
		w := &walls[i]
		if len(w.Stations) > 0 {
			length, err := p.chord(*w)
			if err != nil {
				return p, f, err
			}
			fit, err := survey.FitBow(length, w.fromLeft(length), p.Accuracy)
			if err != nil {
				return p, f, placed(w.Pos, "wall %q: %v", w.called(), err)
			}
			w.Bow, w.bowSD, f.bows[w.called()] = fit.Bow.Value, fit.Bow.SD, fit
		}
		if len(w.Plumbs) > 0 {
			fit, err := survey.FitLean(w.Plumbs, p.Accuracy)
			if err != nil {
				return p, f, placed(w.Pos, "wall %q: %v", w.called(), err)
			}
			w.Lean, w.LeanOver, w.leanSD = fit.PerMetre.Value, unit.M, fit.PerMetre.SD/1000
			f.leans[w.called()] = fit
		}
	}
	p.Walls = walls
	return p, f, nil
}

// chord is the length of a wall as read, or else as the other readings give it.
func (p RoomPlan) chord(w WallPlan) (unit.Length, error) {
	a, b := survey.Point(w.From), survey.Point(w.To)
	for _, r := range p.Readings {
		if r.Kind == survey.Distance && (r.Points[0] == a && r.Points[1] == b || r.Points[0] == b && r.Points[1] == a) {
			return r.Length, nil
		}
	}
	res, _, err := survey.AdjustSeen(p.network())
	if err != nil {
		return 0, err
	}
	l, err := res.Length(a, b)
	return l.Value, err
}

// fromLeft gives the stations of a wall as they count from its left corner.
func (p WallPlan) fromLeft(length unit.Length) []survey.Station {
	var out []survey.Station
	for _, s := range p.Stations {
		along := s.Along
		if p.StudsFrom == p.To {
			along = length - along
		}
		// A tape may read a little more than the wall is long.
		out = append(out, survey.Station{Along: min(max(along, 0), length), Off: s.Off, SD: s.SD})
	}
	return out
}

// uneven tells of the station that an even bow misses most; "" if the stations
// agree with an even bow, or one alone tells nothing of it.
func (f faces) uneven(w WallPlan) string {
	fit, ok := f.bows[w.called()]
	if !ok || fit.Test.Answer != survey.Disagree {
		return ""
	}
	s := w.Stations[fit.Worst]
	return fmt.Sprintf("no even bow: at %.0f mm from %s it was read %.1f mm off straight, an even bow is %.1f mm there",
		float64(s.Along), w.countsFrom(), float64(s.Off), float64(s.Off+fit.Residuals[fit.Worst]))
}

// notPlane tells that a wall is bowed upwards; "" if its plumb readings lie in a
// line, or two alone tell nothing of it.
func (f faces) notPlane(w WallPlan) string {
	if fit, ok := f.leans[w.called()]; ok && fit.Test.Answer == survey.Disagree {
		return "no even lean: the plumb readings lie in no line, so the wall is bowed upwards"
	}
	return ""
}

// countsFrom is the corner from which places on the wall count.
func (p WallPlan) countsFrom() string {
	if p.StudsFrom != "" {
		return p.StudsFrom
	}
	return p.From
}
