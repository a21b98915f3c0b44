package job

import (
	"fmt"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"
)

// kind is one of the sections that may stand in a place.
type kind[T any] struct {
	word string
	form form[T]
}

// byWord is a section whose kind is told by the word under a key, as in
// kind: door.
func byWord[T any](what, key, help string, kinds []kind[T]) form[T] {
	var words []string
	var schemas []schema
	for _, k := range kinds {
		words, schemas = append(words, k.word), append(schemas, k.form.schema)
	}
	if len(kinds) == 0 {
		schemas = []schema{{"not": schema{}}} // nothing is right; an empty list of schemas is none
	}
	f := form[T]{what: what + " with " + key, schema: schema{"oneOf": schemas}, partly: true}
	f.read = func(r *reader, n ast.Node) (none T, ok bool) {
		pairs, ok := pairsOf(n)
		if !ok {
			wants(r, n, f, "")
			return none, false
		}
		i := slices.IndexFunc(pairs, func(p pair) bool { return p.key == key })
		if i < 0 {
			hint := ""
			for _, p := range pairs {
				if nearest(p.key, []string{key}) != "" {
					hint = fmt.Sprintf("%s in place of %s", quoted(key), quoted(p.key))
				}
			}
			r.wrong(nodePlace(n), fmt.Sprintf("%s without %q", what, key), help+": "+strings.Join(words, ", "), hint)
			return none, false
		}
		w, _ := scalar(pairs[i].value)
		at := slices.Index(words, w)
		if at < 0 {
			r.wrong(nodePlace(pairs[i].value), key+" "+describe(pairs[i].value), "one of "+strings.Join(words, ", "), nearest(w, words))
			return none, false
		}
		return kinds[at].form.read(r, n)
	}
	return f
}

// byKey is a section whose kind is told by which key is there, as in
// between: A-B  or  angle: A-B-C.
func byKey[T any](what string, kinds []kind[T]) form[T] {
	var words []string
	var schemas []schema
	for _, k := range kinds {
		words, schemas = append(words, k.word), append(schemas, k.form.schema)
	}
	f := form[T]{what: what + " with one of " + strings.Join(words, ", "), schema: schema{"oneOf": schemas}, partly: true}
	f.read = func(r *reader, n ast.Node) (none T, ok bool) {
		pairs, ok := pairsOf(n)
		if !ok {
			wants(r, n, f, "")
			return none, false
		}
		var found []int
		hint := ""
		for _, p := range pairs {
			if i := slices.Index(words, p.key); i >= 0 {
				found = append(found, i)
			} else if hint == "" {
				hint = nearest(p.key, words)
			}
		}
		switch {
		case len(found) == 0:
			r.wrong(nodePlace(n), what+" without a kind", "one of the keys "+strings.Join(words, ", "), hint)
			return none, false
		case len(found) > 1 && found[0] != found[1]:
			r.wrong(nodePlace(n), fmt.Sprintf("%s with %q and %q", what, words[found[0]], words[found[1]]), "one kind in one line", "make two lines of it")
			return none, false
		}
		return kinds[found[0]].form.read(r, n)
	}
	return f
}
