package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/calc/body"
	"slabwright/model/sit"
	"slabwright/model/unit"
)

// kneeItems are all that the knee sheets of a build show.
func kneeItems(t *testing.T, paper string) (*maker, *sit.Sitter, []page, []drawing.Item) {
	t.Helper()
	m := newMaker(roomBuild(t, "studio", paper, nil))
	var items []drawing.Item
	pages := kneeSheets(m)
	for _, pg := range pages {
		items = append(items, pg.sheet.Items...)
	}
	return m, sit.Of(m.b.Design, m.b.Job.Wiring)[0], pages, items
}

// The section says how high legs, slab, elbow and eye are, and how deep knees
// and toes reach from the belly; the plan how wide hips are and what is free
// beside them. By hand for the printmaker, from her sizes: shoe 25 mm on every
// height, 20 mm to move over thigh and knee, 30 mm before the knees, 160 mm to
// stretch the legs.
func TestKneeSheetDimensions(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		m, s, pages, items := kneeItems(t, paper)
		of := func(d body.Dimension) unit.Length { return s.Of(d).Mean }
		have := textsOf(items)
		for _, want := range []string{
			"120 feet",
			m.about(of(body.Popliteal)+25) + " seat",
			m.about(of(body.Knee)+25+20) + " knees, room",
			m.about(of(body.ThighTop)+25+20) + " thighs, room",
			m.length(s.Slab.Slab.Top-s.Slab.Slab.Thickness-s.Floor) + " underside",
			m.length(s.Slab.Slab.Top-s.Floor) + " surface",
			m.about(of(body.Elbow)+25) + " elbow",
			m.about(of(body.Eye)+25) + " eye",
			m.about(of(body.BellyToKnee)+30) + " knees",
			m.about(of(body.BellyToToe)) + " toes",
			m.about(of(body.BellyToToe)+160) + " legs stretched",
			m.about(of(body.HipBreadth)),
			m.about(s.Left.Free), m.about(s.Right.Free),
		} {
			if has(have, want) == 0 {
				t.Errorf("%s: %q does not stand on the knee sheet: %q", paper, want, have)
			}
		}
		for _, pg := range pages {
			if pg.sheet.Scale != "" && pg.sheet.Scale != "1:10" {
				t.Errorf("%s: %s is drawn at %s", paper, pg.sheet.Name, pg.sheet.Scale)
			}
		}
	}
}

// Every thing near the legs has the letter of its row in the table; the plan
// shows them all, the section those beside the seat. A ring stands no two times
// in one picture.
func TestKneeSheetLetters(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		_, s, _, items := kneeItems(t, paper)
		texts := textsOf(items)
		table := texts[slices.Index(texts, "nearest to"):] // the head of its table, past the rings
		for i, x := range s.Things {
			at := slices.Index(table, letter(i))
			if at < 0 || table[at+1] != x.Name || table[at+2] != string(x.Box) {
				t.Errorf("%s: no row %s of %s", paper, letter(i), x.Name)
				continue
			}
			if got := table[at+3]; strings.HasSuffix(got, "INTO IT") != (x.Distance < 0) {
				t.Errorf("%s: %s stands %.1f mm off and is said to be %q", paper, x.Name, float64(x.Distance), got)
			}
			if n := len(groupsNamed(items, "knee-plan-near-"+stem(letter(i)))); n != 1 {
				t.Errorf("%s: %s is marked %d times on the plan", paper, letter(i), n)
			}
		}
		if len(groupsNamed(items, "knee-section-near-")) == 0 {
			t.Errorf("%s: the section marks nothing", paper)
		}
	}
}

// The letters leave out those that look like figures.
func TestLetters(t *testing.T) {
	seen := map[string]bool{}
	for i := range 60 {
		l := letter(i)
		if seen[l] || strings.ContainsAny(l, "IOQ") {
			t.Errorf("%d is %s", i, l)
		}
		seen[l] = true
	}
}

// A lid that lies flush in its rebate is no lower than the slab: the legs come
// as near to the slab with it as without.
func TestFlushLidTakesNoRoom(t *testing.T) {
	var off [2]float64
	for i, l := range []model.Lid{{}, {Width: 40, Thick: 6}} {
		b := roomBuild(t, "studio", "A3", func(j *model.Job) {
			j.Wiring.Channels = append(j.Wiring.Channels, model.Channel{Name: "below the legs", In: "worktop", Width: 25, Depth: 15, Path: []model.At{{X: 1500, Back: 500}, {X: 1900, Back: 500}}, Lid: l})
		})
		for _, x := range sit.Of(b.Design, b.Job.Wiring)[0].Things {
			if x.Name == "worktop" {
				off[i] = float64(x.Distance)
			}
		}
	}
	if off[0] == 0 || math.Abs(off[0]-off[1]) > 1e-6 {
		t.Errorf("the worktop is %g mm over the thighs, %g with a lid", off[0], off[1])
	}
}

// The knee space is drawn at 1:10 on all paper, also below high shelves.
func TestKneeSheetIsLarge(t *testing.T) {
	m := newMaker(roomBuild(t, "alcove", "A4", nil))
	for _, pg := range kneeSheets(m) {
		if s := pg.sheet.Scale; s != "" && s != "1:10" {
			t.Errorf("%s is drawn at %s", pg.sheet.Name, s)
		}
	}
}
