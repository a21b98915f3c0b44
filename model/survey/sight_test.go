package survey_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// breast is an alcove whose back wall has a chimney breast C-D-E-F, with
// readings that hold it and those named besides, true to the millimetre.
func breast(more ...string) survey.Network {
	for _, p := range plans() {
		if p.name != "breast out of the back wall" {
			continue
		}
		p.links, p.hints = append(p.links, [2]int{0, 2}, [2]int{7, 5}), ".iiooii."
		for _, m := range more {
			p.links = append(p.links, [2]int{int(m[0] - 'A'), int(m[2] - 'A')})
		}
		return p.measure(0, nil)
	}
	panic("no such plan")
}

// Lines behind the breast: from B to its far corner E, from root to root C-F,
// across the whole wall B-G, and its own diagonals. They cannot have been
// measured.
func TestThroughTheBreast(t *testing.T) {
	n := breast("B-E", "C-F", "B-G", "A-F", "G-D")
	for i := range n.Readings {
		n.Readings[i].Where = fmt.Sprintf("job.yaml:%d", 20+i)
	}
	r, refused, err := survey.AdjustSeen(n)
	if err != nil {
		t.Fatal(err)
	}
	says := map[string]string{}
	for _, p := range refused {
		says[p.Reading] = p.Error()
		if p.Trouble != survey.OutOfSight {
			t.Errorf("trouble %d: %v", p.Trouble, p)
		}
	}
	for id, wall := range map[string]string{"B-E": "the wall C-D", "C-F": "the wall", "B-G": "the walls C-D and E-F", "G-D": "the wall E-F", "A-F": "the wall D-E", "C-E": "the wall", "D-F": "the wall"} {
		if !strings.Contains(says[id], wall) || !strings.HasPrefix(says[id], "job.yaml:") || !strings.Contains(says[id], "cannot have been measured") {
			t.Errorf("%s: %q, want %s", id, says[id], wall)
		}
	}
	if len(refused) != 7 || len(r.Readings) != len(n.Readings)-7 {
		t.Errorf("refused %v, %d readings left of %d", refused, len(r.Readings), len(n.Readings))
	}
	for _, c := range r.Judge(survey.Options{Next: 500}).Next {
		if c.Reading.Kind == survey.Distance && slices.Contains([]string{"BE", "CF", "BG", "DG", "CE", "DF", "CG", "BF", "AF", "CH"}, string(c.Reading.Points[0]+c.Reading.Points[1])) {
			t.Errorf("%v is proposed", c.Reading.Points)
		}
	}
}

// A reading that cannot have been taken is kept when the others do not tell the
// room without it, and says so.
func TestRefusedReadingIsNeeded(t *testing.T) {
	n := studio() // A-D runs behind the wall B-C; only it holds the niche to the room
	n.Turns = map[survey.Point]survey.Turn{"B": survey.Inside, "C": survey.Outside, "D": survey.Inside, "E": survey.Inside, "F": survey.Outside, "G": survey.Inside}
	r, refused, err := survey.AdjustSeen(n)
	if err != nil || len(refused) != 1 || refused[0].Reading != "A-D" || !refused[0].Needed || r.DOF != 2 {
		t.Errorf("refused %v, %v", refused, err)
	}
	n.Readings = append(n.Readings, dist("A", "F", 2209, "C", "H", 2021)...)
	r, refused, err = survey.AdjustSeen(n)
	if err != nil || len(refused) != 1 || refused[0].Reading != "A-D" || refused[0].Needed || r.DOF != 3 {
		t.Errorf("refused %v, %v", refused, err)
	}
	if got := len(r.Network().Readings); got != len(n.Readings)-1 {
		t.Errorf("%d readings adjusted", got)
	}
}

// Other kinds of reading have lines of sight as well.
func TestSightOfOtherReadings(t *testing.T) {
	type P = []survey.Point
	for _, c := range []struct {
		rd     survey.Reading
		hidden bool
	}{
		{survey.Reading{Kind: survey.Width, Points: P{"B", "G"}, A: 100}, true},
		{survey.Reading{Kind: survey.Width, Points: P{"B", "G"}, A: 700}, false},
		{survey.Reading{Kind: survey.Width, Points: P{"B", "C"}, A: 100}, false},
		{survey.Reading{Kind: survey.Offset, Points: P{"D", "B", "G"}}, true},
		{survey.Reading{Kind: survey.Offset, Points: P{"D", "B", "C"}}, false},
		{survey.Reading{Kind: survey.Offset, Points: P{"D", "A", "H"}}, false},
		{survey.Reading{Kind: survey.SquareOff, Points: P{"A", "B", "C"}, A: 400, B: 300}, false},
		{survey.Reading{Kind: survey.SquareOff, Points: P{"C", "D", "E"}, A: 300, B: 400}, true}, // round an outside corner
		{survey.Reading{Kind: survey.Interior, Points: P{"D"}}, false},
		{survey.Reading{Kind: survey.Angle, Points: P{"C", "B", "E"}}, true},
	} {
		n := breast()
		r := adjust(t, n)
		f, err := r.Foretell(c.rd)
		if err != nil {
			t.Fatal(err)
		}
		c.rd.ID, c.rd.Length, c.rd.Angle = "tried", f.Length.Value, f.Angle
		n.Readings = append(n.Readings, c.rd)
		got := adjust(t, n).OutOfSight()
		if hidden := slices.ContainsFunc(got, func(p *survey.Problem) bool { return p.Reading == "tried" }); hidden != c.hidden {
			t.Errorf("%s of %v: hidden %v", c.rd.Kind, c.rd.Points, hidden)
		}
	}
}

// The lines of all pairs of corners against points along them, each looked up
// in the true plan by itself.
func TestSightAgainstSteps(t *testing.T) {
	hidden, free := 0, 0
	for _, p := range plans() {
		if !p.closed {
			continue
		}
		room := geom.Polygon(p.at...)
		p.links = nil
		for i := range p.at {
			for j := range i {
				if j != i-1 && !(j == 0 && i == len(p.at)-1) {
					p.links = append(p.links, [2]int{i, j})
				}
			}
		}
		blocked := map[string]bool{}
		for _, q := range adjust(t, p.measure(0, nil)).OutOfSight() {
			blocked[q.Reading] = true
		}
		for _, l := range p.links {
			a, b := p.at[l[0]], p.at[l[1]]
			worst := unit.Length(0)
			for k := range 401 {
				if v := a.Lerp(b, float64(k)/400); !room.Contains(v) {
					worst = max(worst, room.DistanceTo(v))
				}
			}
			id := string(name(l[0])) + "-" + string(name(l[1]))
			switch {
			case worst > 45: // 10 mm and three standard deviations of the corners
				hidden++
				if !blocked[id] {
					t.Errorf("%s: %s runs %.0f mm inside the wall", p.name, id, float64(worst))
				}
			case worst < 10:
				free++
				if blocked[id] {
					t.Errorf("%s: %s is free", p.name, id)
				}
			}
		}
	}
	if hidden < 5 || free < 10 {
		t.Errorf("%d hidden, %d free lines tried", hidden, free)
	}
}
