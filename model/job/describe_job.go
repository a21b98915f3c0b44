package job

import (
	"github.com/goccy/go-yaml/ast"

	"slabwright/drawing/words"
	"slabwright/model"
	"slabwright/model/unit"
)

// draft is a job file before its parts are held against each other.
type draft struct {
	job    model.Job
	room   entry[roomDraft]
	design entry[designDraft]
}

// jobForm describes the whole file.
func jobForm(presets []model.Preset) form[entry[draft]] {
	return record("a job", []field[draft]{
		need("title", "name of the job; it stands on every sheet", text(), func(d *draft) *string { return &d.job.Title }),
		may("revision", "revision of the job: A, B, C or 1, 2, 3", text(), func(d *draft) *string { return &d.job.Revision }),
		may("revisions", "what was given out before and what changed, the latest last; it stands over the title block", list("revisions", revisionForm(), 1, 40), func(d *draft) *[]model.Revision { return &d.job.History }),
		may("surveyed", "day on which the room was measured; the only date on the sheets", date(), func(d *draft) *string { return &d.job.Surveyed }),
		may("author", "who made the job", text(), func(d *draft) *string { return &d.job.Author }),
		may("show", "how numbers and sheets are written", showForm(), func(d *draft) *model.Show { return &d.job.Show }),
		need("room", "the room as measured", roomForm(), func(d *draft) *entry[roomDraft] { return &d.room }),
		may("people", "who will sit and stand there", list("people", personForm(), 0, 20), func(d *draft) *[]model.Person { return &d.job.People }),
		may("screens", "screens on worktops, for eyes and necks", list("screens", screenForm(), 0, 20), func(d *draft) *[]model.Screen { return &d.job.Screens }),
		may("offers", "what can be bought, with your prices in one currency", offersForm(), func(d *draft) *model.Offers { return &d.job.Offers }),
		may("house", "the way from the street into the room, and the climate in it", houseForm(), func(d *draft) *model.House { return &d.job.House }),
		may("loads", "what the slabs have to carry", loadsForm(), func(d *draft) *model.Loads { return &d.job.Loads }),
		may("wiring", "devices, cables and light strips", wiringForm(), func(d *draft) *model.Wiring { return &d.job.Wiring }),
		need("design", "which preset, with which parameters", designForm(presets), func(d *draft) *entry[designDraft] { return &d.design }),
		may("cut", "parts that are already cut, with the sizes measured on them: they stay as they are", list("parts", cutForm(), 0, 200), func(d *draft) *[]model.CutPart { return &d.job.Cut }),
	}, latest)
}

// inner drops the places of a section that nothing else is held against.
func inner[T any](f form[entry[T]]) form[T] {
	return form[T]{what: f.what, schema: f.schema, partly: f.partly, read: func(r *reader, n ast.Node) (T, bool) {
		e, ok := f.read(r, n)
		return e.v, ok
	}}
}

// usualShow is how sheets look when nothing is said.
var usualShow = model.Show{Paper: "A3", Unit: "mm", Decimal: ".", Projection: "first", Language: "en", Natural: 0.5}

// languages are the codes of those that sheets can be written in.
func languages() []string {
	var out []string
	for _, l := range words.All {
		out = append(out, l.Code)
	}
	return out
}

func showForm() form[model.Show] {
	type S = model.Show
	return inner(record("a show section", []field[S]{
		may("paper", "size of the sheets; A3 if nothing is said", word("a size of paper", "A4", "A3", "A2", "A1"), func(s *S) *string { return &s.Paper }),
		may("stand", "how all sheets but templates and labels stand; as suits each of them if nothing is said", word("a way to stand", "upright", "lying"), func(s *S) *string { return &s.Stand }),
		may("ink", "colour or black; nothing is told by colour alone, colour if nothing is said", word("an ink", "colour", "black"), func(s *S) *string { return &s.Ink }),
		may("cover", "how the cover shows the desk: in the room, taken apart, or both; both if nothing is said", word("a way to show it", "both", "together", "apart"), func(s *S) *string { return &s.Cover }),
		may("unit", "unit of the lengths on the sheets; mm if nothing is said", word("a unit", "mm", "cm", "in"), func(s *S) *string { return &s.Unit }),
		may("fraction", "smallest part of an inch, 16 or 32; 16 if nothing is said", oneOf(16, 32), func(s *S) *int { return &s.Fraction }),
		may("decimal", "decimal sign on the sheets; that of the language if nothing is said. In this file it is always a point", word("a decimal sign", "point", "comma"), func(s *S) *string { return &s.Decimal }),
		may("projection", "how views lie beside each other; first angle if nothing is said", word("a projection", "first", "third"), func(s *S) *string { return &s.Projection }),
		may("natural_edge", "how closely the models follow a natural edge; 0.5 if nothing is said", length(0.05, 20), func(s *S) *unit.Length { return &s.Natural }),
		may("language", "language of the sheets; en if nothing is said. The report stays in English", word("a language", languages()...), func(s *S) *string { return &s.Language }),
	}, func(_ *reader, e *entry[S]) {
		if e.v.Natural == 0 {
			e.v.Natural = 0.5
		}
		e.v.Decimal = map[string]string{"point": ".", "comma": ","}[e.v.Decimal]
		for _, f := range []struct{ set, usual *string }{
			{&e.v.Paper, &usualShow.Paper}, {&e.v.Unit, &usualShow.Unit},
			{&e.v.Projection, &usualShow.Projection}, {&e.v.Language, &usualShow.Language},
		} {
			if *f.set == "" {
				*f.set = *f.usual
			}
		}
		if e.v.Decimal == "" {
			e.v.Decimal = words.Of(e.v.Language).Decimal
		}
	}))
}

func personForm() form[model.Person] {
	type P = model.Person
	measures := []string{"stature", "thigh", "knee", "seat", "elbow", "hips", "upper_leg", "eye", "standing_elbow"}
	var oneOfThem []schema
	for _, m := range measures {
		oneOfThem = append(oneOfThem, schema{"required": []string{m}})
	}
	return inner(record("a person", []field[P]{
		may("name", "who it is", text(), func(p *P) *string { return &p.Name }),
		may("stature", "height of the body without shoes", length(1000, 2500), func(p *P) *unit.Length { return &p.Stature }),
		may("sex", "for the tables of body measures", word("a sex of the tables", "female", "male"), func(p *P) *string { return &p.Sex }),
		may("mass", "mass of the body with clothes", mass(20, 300), func(p *P) *unit.Mass { return &p.Mass }),
		may("shoe", "thickness of the soles", length(0, 150), func(p *P) *unit.Length { return &p.Shoe }),
		may("thigh", "own measure: top of the thigh above the seat, sitting", length(80, 300), func(p *P) *unit.Length { return &p.Thigh }),
		may("knee", "own measure: top of the knee above the floor, sitting, without shoes", length(300, 800), func(p *P) *unit.Length { return &p.Knee }),
		may("seat", "own measure: underside of the knee above the floor, sitting, without shoes", length(250, 650), func(p *P) *unit.Length { return &p.Seat }),
		may("elbow", "own measure: underside of the elbow above the seat", length(100, 400), func(p *P) *unit.Length { return &p.Elbow }),
		may("hips", "own measure: greatest breadth of the hips, sitting", length(200, 800), func(p *P) *unit.Length { return &p.Hips }),
		may("upper_leg", "own measure: from the back to the front of the knee, sitting", length(350, 900), func(p *P) *unit.Length { return &p.Upper }),
		may("eye", "own measure: eye above the floor, sitting, without shoes", length(800, 1600), func(p *P) *unit.Length { return &p.Eye }),
		may("standing_elbow", "own measure: underside of the bent elbow above the floor, standing, without shoes", length(600, 1600), func(p *P) *unit.Length { return &p.Stand }),
	}, func(r *reader, e *entry[P]) {
		e.v.Pos = r.pos(e.at[""])
		if !e.gave(measures...) {
			r.wrong(e.at[""], "a person without a measure", "stature, or own measures such as thigh, knee, seat, elbow", "")
		}
	}, schema{"anyOf": oneOfThem}))
}

func screenForm() form[model.Screen] {
	type S = model.Screen
	return inner(record("a screen", []field[S]{
		may("name", "what it is", text(), func(s *S) *string { return &s.Name }),
		need("on", "name of the worktop that it stands on or hangs over", text(), func(s *S) *string { return &s.On }),
		need("along", "middle of the picture, from the left end of the worktop's back edge", length(0, 20000), func(s *S) *unit.Length { return &s.Along }),
		need("back", "the picture, from the worktop's back edge", length(0, 5000), func(s *S) *unit.Length { return &s.Back }),
		need("bottom", "lower edge of the picture above the surface", length(0, 2000), func(s *S) *unit.Length { return &s.Bottom }),
		need("height", "height of the picture", length(50, 2000), func(s *S) *unit.Length { return &s.Height }),
	}, func(r *reader, e *entry[S]) { e.v.Pos = r.pos(e.at[""]) }))
}
