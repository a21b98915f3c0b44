package job

import (
	"slices"
	"strings"
	"unicode"

	"github.com/goccy/go-yaml/ast"

	"slabwright/model"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// roomDraft is a room before its parts are held against each other.
type roomDraft struct {
	plan     model.RoomPlan
	corners  []mention
	bends    []named[string]
	base     []string
	walls    []entry[wallDraft]
	readings []entry[reading]
	floor    []named[unit.Length]
	floorAt  []entry[model.FloorMark]
}

// mention is a name and where it stands.
type mention struct {
	name string
	at   place
}

type wallDraft struct {
	plan      model.WallPlan
	obstacles []entry[model.ObstaclePlan]
}

// Names of corners have no blanks and no dashes, since A-B joins two of them.
const (
	namePart    = `[\p{L}\p{N}_']{1,12}`
	namePattern = `^` + namePart + `$`
)

// isName says the same as namePattern.
func isName(s string) bool {
	n := 0
	for _, c := range s {
		if !unicode.IsLetter(c) && !unicode.IsNumber(c) && c != '_' && c != '\'' {
			return false
		}
		n++
	}
	return n >= 1 && n <= 12
}

const nameRule = "a name of 1 to 12 letters and digits, without blanks or dashes, such as A or B2"

// cornerName is the name of a corner.
func cornerName() form[mention] {
	f := form[mention]{what: nameRule, schema: schema{"type": []string{"string", "integer"}, "pattern": namePattern, "minimum": 0, "maximum": 999999999999}}
	f.read = func(r *reader, n ast.Node) (mention, bool) {
		t, ok := scalar(n)
		if _, isFlag := n.(*ast.BoolNode); isFlag || !ok || !isName(t) {
			hint := ""
			if isFlag {
				hint = "put it in quotes if it is a name"
			}
			wants(r, n, f, hint)
			return mention{}, false
		}
		return mention{t, nodePlace(n)}, true
	}
	return f
}

// corner is the name of a corner where its place is known from the section.
func corner() form[string] {
	f := cornerName()
	return form[string]{what: f.what, schema: f.schema, read: func(r *reader, n ast.Node) (string, bool) {
		m, ok := f.read(r, n)
		return m.name, ok
	}}
}

// chain is so many corners joined by dashes, as in A-B-C.
func chain(n int) form[[]string] {
	if n == 1 {
		one := corner()
		return form[[]string]{what: one.what, schema: one.schema, read: func(r *reader, node ast.Node) ([]string, bool) {
			name, ok := one.read(r, node)
			return []string{name}, ok
		}}
	}
	f := form[[]string]{
		what:   "corners joined by dashes, such as " + "A-B-C"[:2*n-1],
		schema: schema{"type": "string", "pattern": "^" + namePart + strings.Repeat("-"+namePart, n-1) + "$"},
	}
	f.read = func(r *reader, node ast.Node) ([]string, bool) {
		t, _ := scalar(node)
		names := strings.Split(t, "-")
		if len(names) != n || slices.ContainsFunc(names, func(s string) bool { return !isName(s) }) {
			wants(r, node, f, "")
			return nil, false
		}
		for i, name := range names {
			if slices.Contains(names[:i], name) {
				r.wrong(nodePlace(node), "corner "+quoted(name)+" twice in "+quoted(t), "different corners", "")
				return nil, false
			}
		}
		return names, true
	}
	return f
}

func roomForm() form[entry[roomDraft]] {
	type R = roomDraft
	return record("a room", []field[R]{
		need("readings_at", "height above the floor at which the room was measured", length(0, 3000), func(d *R) *unit.Length { return &d.plan.At }),
		may("ceiling", "height of the ceiling above the floor", length(1500, 10000), func(d *R) *unit.Length { return &d.plan.Ceiling }),
		need("corners", "names of the corners, left to right as somebody in the room sees the walls", list("corners", cornerName(), 2, 60), func(d *R) *[]mention { return &d.corners }),
		may("bends", "how corners bend where the readings alone do not tell: in for a corner of the room, out for one that sticks out into it", mapping("corners and their bends, such as {C: out, D: in}", word("a bend", "in", "out")), func(d *R) *[]named[string] { return &d.bends }),
		may("closed", "whether a wall joins the last corner to the first; no if nothing is said", yesNo(), func(d *R) *bool { return &d.plan.Closed }),
		may("base", "the two corners that lie level on the drawing, the left one first; usually the ends of the back wall", chain(2), func(d *R) *[]string { return &d.base }),
		mayPut("tool", "what lengths were measured with; a class II tape if nothing is said", toolForm(), func(d *R, t string) { d.plan.Accuracy.Tool = tools[t] }),
		need("walls", "the walls; one that is left out is of unknown make", list("walls", wallForm(), 1, 60), func(d *R) *[]entry[wallDraft] { return &d.walls }),
		need("readings", "what was measured, each line one reading; a reading taken twice is written twice", list("readings", readingForm(), 1, 500), func(d *R) *[]entry[reading] { return &d.readings }),
		may("floor_at", "height of the floor at places before walls, against the corner with 0", list("places", floorForm(), 0, 60), func(d *R) *[]entry[model.FloorMark] { return &d.floorAt }),
		may("floor", "height of the floor at corners; the corner with 0 counts as the floor", mapping("corners and heights, such as {A: 0, H: -6}", length(-300, 300)), func(d *R) *[]named[unit.Length] { return &d.floor }),
	}, func(r *reader, e *entry[R]) { e.v.plan.Pos = r.pos(e.at[""]) })
}

func wallForm() form[entry[wallDraft]] {
	type W = wallDraft
	type lean struct{ by, over unit.Length }
	leanForm := inner(record("a lean", []field[lean]{
		need("by", "how far the wall goes back from the room; minus: it comes into the room", length(-300, 300), func(l *lean) *unit.Length { return &l.by }),
		need("over", "the height over which it goes back so far", length(50, 5000), func(l *lean) *unit.Length { return &l.over }),
	}, nil))
	return record("a wall", []field[W]{
		may("name", "what the design calls it; the two corners if nothing is said, such as A-B", text(), func(w *W) *string { return &w.plan.Name }),
		need("from", "corner at the left end", corner(), func(w *W) *string { return &w.plan.From }),
		need("to", "corner at the right end", corner(), func(w *W) *string { return &w.plan.To }),
		may("make", "what it is made of; unknown never passes a check that depends on the wall", word("a make of wall", model.WallMakes...), func(w *W) *model.WallMake { return &w.plan.Make }),
		may("bow", "at the middle, off the straight line: bulging into the room, minus for hollow", length(-200, 200), func(w *W) *unit.Length { return &w.plan.Bow }),
		may("bow_at", "bow read at several places: how far the face stands off a straightedge or string from corner to corner", list("places", stationForm(), 1, 60), func(w *W) *[]model.Station { return &w.plan.Stations }),
		mayPut("lean", "how the wall leans", leanForm, func(w *W, l lean) { w.plan.Lean, w.plan.LeanOver = l.by, l.over }),
		may("plumb", "distance of the wall from a plumb line that hangs before it, at several heights", list("heights", plumbForm(), 1, 60), func(w *W) *[]survey.Plumb { return &w.plan.Plumbs }),
		may("studs", "middles of the studs along the wall, in rising order", list("studs", length(0, 60000), 1, 100), func(w *W) *[]unit.Length { return &w.plan.Studs }),
		may("count_from", "corner from which studs and obstacles of this wall count; the left one if nothing is said", corner(), func(w *W) *string { return &w.plan.StudsFrom }),
		may("anchor", "what the anchor that was bought carries in this wall, by its approval", anchorForm(), func(w *W) **model.Approval { return &w.plan.Anchor }),
		may("obstacles", "what is on or in the wall", list("obstacles", obstacleForm(), 0, 100), func(w *W) *[]entry[model.ObstaclePlan] { return &w.obstacles }),
	}, checkWall, schema{"not": schema{"anyOf": []schema{{"required": []string{"bow", "bow_at"}}, {"required": []string{"lean", "plumb"}}}}})
}

// anchorForm describes the figures of an anchor's approval.
func anchorForm() form[*model.Approval] {
	type A = model.Approval
	kilo := plain("a force in kN", 0.01, 100)
	f := inner(record("an anchor", []field[A]{
		needKilo("pull", "permissible pull of one anchor, in kN", kilo, func(a *A) *float64 { return &a.Pull }),
		needKilo("shear", "permissible shear of one anchor, in kN", kilo, func(a *A) *float64 { return &a.Shear }),
		need("edge", "distance from an edge of the wall from which on that holds", length(10, 1000), func(a *A) *unit.Length { return &a.Edge }),
		need("spacing", "distance from the next anchor from which on that holds", length(10, 2000), func(a *A) *unit.Length { return &a.Spacing }),
		need("paper", "number of the approval or name of the maker's paper", text(), func(a *A) *string { return &a.Paper }),
	}, nil))
	return form[*model.Approval]{what: f.what, schema: f.schema, partly: f.partly, read: func(r *reader, n ast.Node) (*model.Approval, bool) {
		a, ok := f.read(r, n)
		return &a, ok
	}}
}

// needKilo is a key with kilonewtons that must be there.
func needKilo[T any](key, help string, f form[float64], at func(*T) *float64) field[T] {
	l := mayPut(key, help, f, func(t *T, v float64) { *at(t) = 1000 * v })
	l.need = true
	return l
}

func obstacleForm() form[entry[model.ObstaclePlan]] {
	type O = model.ObstaclePlan
	along, up := length(0, 60000), length(0, 10000)
	return record("an obstacle", []field[O]{
		may("name", "what it is called; its kind if nothing is said", text(), func(o *O) *string { return &o.Name }),
		need("kind", "kind of obstacle", word("a kind of obstacle", model.ObstacleKinds...), func(o *O) *string { return &o.Kind }),
		may("from", "corner from which start and end count; as for the wall if nothing is said", corner(), func(o *O) *string { return &o.From }),
		need("start", "where it starts along the wall", along, func(o *O) *unit.Length { return &o.Start }),
		need("end", "where it ends along the wall", along, func(o *O) *unit.Length { return &o.End }),
		may("bottom", "its lower edge above the floor; 0 if nothing is said", up, func(o *O) *unit.Length { return &o.Bottom }),
		may("top", "its upper edge above the floor; the ceiling if nothing is said", up, func(o *O) *unit.Length { return &o.Top }),
		may("depth", "how far it stands into the room; 0, hidden in the wall, if nothing is said", length(0, 3000), func(o *O) *unit.Length { return &o.Depth }),
		may("free", "kept clear round it on the wall; 0 if nothing is said", length(0, 1000), func(o *O) *unit.Length { return &o.Free }),
	}, checkObstacle)
}
