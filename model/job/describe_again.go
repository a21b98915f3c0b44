package job

import (
	"github.com/goccy/go-yaml/ast"

	"slabwright/model/unit"
)

// again is one more value of a reading.
type again struct {
	is    unit.Length
	angle unit.Angle
	tool  string
	sd    unit.Length
	at    place
}

// againField is the key for more values of the same thing.
func againField(values form[again]) field[reading] {
	return may("again", "more values of the same thing, each taken afresh: a value, or {is, sd} and its tool", list("values", values, 1, 20), func(d *reading) *[]again { return &d.again })
}

// againLength describes a length that was measured again: the length alone, or
// with how well it is known.
func againLength(tooled bool) form[again] {
	type A = again
	straight := length(0, 100000)
	fields := []field[A]{
		need("is", "the value", straight, func(a *A) *unit.Length { return &a.is }),
		may("sd", "standard deviation of the value; by the tool if nothing is said", length(0.01, 100), func(a *A) *unit.Length { return &a.sd }),
	}
	if tooled {
		fields = append(fields, may("tool", "what it was measured with; as for the room if nothing is said", toolForm(), func(a *A) *string { return &a.tool }))
	}
	return placedValue(straight, inner(record("a value", fields, nil)), func(l unit.Length) again { return again{is: l} })
}

// againAngle describes an angle that was measured again.
func againAngle() form[again] {
	alone := angle(1, 359)
	full := inner(record("a value", []field[again]{need("is", "the value", alone, func(a *again) *unit.Angle { return &a.angle })}, nil))
	return placedValue(alone, full, func(v unit.Angle) again { return again{angle: v} })
}

// placedValue is a value alone or in a section, with its place.
func placedValue[V any](alone form[V], full form[again], wrap func(V) again) form[again] {
	f := form[again]{what: alone.what + ", or " + full.what, schema: schema{"anyOf": []schema{alone.schema, full.schema}}}
	f.read = func(r *reader, n ast.Node) (again, bool) {
		if _, isSection := pairsOf(n); isSection {
			a, ok := full.read(r, n)
			a.at = nodePlace(n)
			return a, ok
		}
		v, ok := alone.read(r, n)
		a := wrap(v)
		a.at = nodePlace(n)
		return a, ok
	}
	return f
}
