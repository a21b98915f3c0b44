package job

import (
	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

func loadsForm() form[model.Loads] {
	type L = model.Loads
	var classes []string
	for _, c := range stock.Classes() {
		classes = append(classes, c.Name)
	}
	return inner(record("a loads section", []field[L]{
		may("person", "the heaviest who may stand or sit anywhere on a worktop; the heaviest of the people, at least 100 kg, if nothing is said", mass(20, 300), func(l *L) *unit.Mass { return &l.Person }),
		may("step", "how many times its weight a person presses when climbing up; 1.25 if nothing is said", plain("a factor", 1, 4), func(l *L) *float64 { return &l.Step }),
		may("worktop", "what lies on worktops for years, kg per square metre; 50 if nothing is said", plain("kg per square metre", 1, 1000), func(l *L) *float64 { return &l.Worktop }),
		may("shelf", "what lies on shelves for years, kg per square metre; 100 if nothing is said", plain("kg per square metre", 1, 1000), func(l *L) *float64 { return &l.Shelf }),
		may("things", "what stands or is clamped at one place: monitors, clamp arms", list("things", thingForm(), 0, 50), func(l *L) *[]model.Thing { return &l.Things }),
		may("service_class", "service class of EN 1995-1-1: 1 heated room, 2 unheated, 3 outside; 1 if nothing is said", count(1, 3), func(l *L) *int { return &l.Service }),
		may("grade", "strength class of the timber if somebody graded it; "+stock.Ungraded+" if nothing is said", word("a strength class", classes...), func(l *L) *string { return &l.Grade }),
	}, func(r *reader, e *entry[L]) { e.v.Pos = r.pos(e.at[""]) }))
}

func thingForm() form[model.Thing] {
	type T = model.Thing
	return inner(record("a thing", []field[T]{
		may("name", "what it is", text(), func(t *T) *string { return &t.Name }),
		need("on", "name of the slab that it stands on", text(), func(t *T) *string { return &t.On }),
		need("along", "middle of its foot, from the left end of the slab's back edge", length(0, 20000), func(t *T) *unit.Length { return &t.Along }),
		need("back", "middle of its foot, from the slab's back edge", length(0, 5000), func(t *T) *unit.Length { return &t.Back }),
		need("mass", "what it weighs", mass(0.1, 500), func(t *T) *unit.Mass { return &t.Mass }),
		may("reach", "how far its weight hangs in front of its foot", length(0, 1500), func(t *T) *unit.Length { return &t.Reach }),
	}, func(r *reader, e *entry[T]) { e.v.Pos = r.pos(e.at[""]) }))
}
