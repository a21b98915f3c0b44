package job

import (
	"fmt"

	"github.com/goccy/go-yaml/ast"
)

// list is a list of equal things.
func list[T any](what string, of form[T], least, most int) form[[]T] {
	s := schema{"type": "array", "items": of.schema, "minItems": least, "maxItems": most}
	f := form[[]T]{what: "a list of " + what, schema: s}
	span := fmt.Sprintf("%d to %d", least, most)
	if least == most {
		span = fmt.Sprint(least)
		f.what = "a list of " + span + " " + what
	}
	f.read = func(r *reader, n ast.Node) ([]T, bool) {
		seq, ok := n.(*ast.SequenceNode)
		if !ok {
			hint := ""
			if t, isScalar := scalar(n); isScalar && least <= 1 {
				hint = "write [" + t + "]"
			}
			wants(r, n, f, hint)
			return nil, false
		}
		if len(seq.Values) < least || len(seq.Values) > most {
			r.wrong(nodePlace(n), fmt.Sprintf("a list of %d", len(seq.Values)), span+" "+what, "")
			return nil, false
		}
		out, good := make([]T, 0, len(seq.Values)), true
		for _, v := range seq.Values {
			t, ok := of.read(r, v)
			good = good && ok
			if ok || of.partly {
				out = append(out, t)
			}
		}
		return out, good
	}
	return f
}

// named is a value under a name that the user chose.
type named[T any] struct {
	name string
	at   place // of the name
	v    T
}

// mapping is values under names of corners, as in  {C: out, D: in}, in the
// order of the file.
func mapping[T any](what string, of form[T]) form[[]named[T]] {
	s := schema{"type": "object", "additionalProperties": of.schema, "propertyNames": schema{"pattern": namePattern}}
	f := form[[]named[T]]{what: what, schema: s}
	f.read = func(r *reader, n ast.Node) ([]named[T], bool) {
		pairs, ok := pairsOf(n)
		if !ok {
			wants(r, n, f, "")
			return nil, false
		}
		before := len(r.mistakes)
		var out []named[T]
		for _, p := range r.distinct(pairs) {
			if !isName(p.key) {
				r.wrong(p.at, quoted(p.key), f.what, "")
			} else if v, ok := of.read(r, p.value); ok {
				out = append(out, named[T]{p.key, p.at, v})
			}
		}
		return out, len(r.mistakes) == before
	}
	return f
}
