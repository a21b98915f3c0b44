package job

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"slabwright/model/unit"
)

// places says where the values of a section stand, by key; only what was read
// without a mistake is in it. The section itself is under "".
type places map[string]place

// has reports whether all keys were given and read.
func (p places) has(keys ...string) bool {
	for _, k := range keys {
		if _, ok := p[k]; !ok {
			return false
		}
	}
	return true
}

// entry is a section that was read, with the places of its values.
type entry[T any] struct {
	v     T
	at    places
	given map[string]bool // keys that stand there, well read or not
}

// gave reports whether any of the keys stands there, well read or not.
func (e *entry[T]) gave(keys ...string) bool {
	return slices.ContainsFunc(keys, func(k string) bool { return e.given[k] })
}

// field is one key of a section.
type field[T any] struct {
	key, help string
	need      bool
	schema    schema
	read      func(r *reader, n ast.Node, into *T) bool
}

// need is a key that must be there.
func need[T, V any](key, help string, f form[V], at func(*T) *V) field[T] {
	l := may(key, help, f, at)
	l.need = true
	return l
}

// may is a key that can be left out.
func may[T, V any](key, help string, f form[V], at func(*T) *V) field[T] {
	return mayPut(key, help, f, func(t *T, v V) { *at(t) = v })
}

// mayPut is a key that can be left out, whose value does not go into one place.
func mayPut[T, V any](key, help string, f form[V], put func(*T, V)) field[T] {
	return field[T]{key: key, help: help, schema: f.schema, read: func(r *reader, n ast.Node, into *T) bool {
		v, ok := f.read(r, n)
		put(into, v) // half-read sections too: their good keys are held against the rest
		return ok
	}}
}

// record is a section with fields. check, if any, looks at what was read; more
// are rules that the schema shares with check.
func record[T any](what string, fields []field[T], check func(r *reader, e *entry[T]), more ...schema) form[entry[T]] {
	keys := make([]string, len(fields))
	for i, f := range fields {
		keys[i] = f.key
	}
	f := form[entry[T]]{what: what + " with " + strings.Join(keys, ", "), schema: recordSchema(fields), partly: true}
	for _, s := range more {
		maps.Copy(f.schema, s)
	}
	f.read = func(r *reader, n ast.Node) (entry[T], bool) {
		pairs, ok := pairsOf(n)
		if !ok {
			wants(r, n, f, spaceHint(n))
			return entry[T]{}, false
		}
		e := entry[T]{at: places{"": nodePlace(n)}, given: map[string]bool{}}
		before := len(r.mistakes)
		seen := r.distinct(pairs)
		for _, p := range seen {
			e.given[p.key] = true
			i := slices.Index(keys, p.key)
			switch {
			case i < 0:
				r.unknownKey(p, what, keys)
			case isMissing(p.value):
				r.wrong(p.at, fmt.Sprintf("nothing after %q", p.key+":"), "a value: "+fields[i].help, "write a value or take the line out")
			case fields[i].read(r, p.value, &e.v):
				e.at[p.key] = nodePlace(p.value)
			}
		}
		for _, fl := range fields {
			if fl.need && !e.given[fl.key] {
				r.wrong(e.at[""], fmt.Sprintf("%s without %q", what, fl.key), "the key "+fl.key+": "+fl.help, "")
			}
		}
		if check != nil {
			check(r, &e)
		}
		return e, len(r.mistakes) == before
	}
	return f
}

func recordSchema[T any](fields []field[T]) schema {
	props, needed := schema{}, []string{}
	for _, f := range fields {
		s := schema{"description": f.help}
		maps.Copy(s, f.schema)
		props[f.key] = s
		if f.need {
			needed = append(needed, f.key)
		}
	}
	s := schema{"type": "object", "additionalProperties": false, "properties": props}
	if len(needed) > 0 {
		s["required"] = needed
	}
	return s
}

// spaceHint is for a line such as  title:Print bench, which YAML takes for text.
func spaceHint(n ast.Node) string {
	if t, ok := scalar(n); ok && strings.Contains(t, ":") {
		return "put a space after the colon"
	}
	return ""
}

// pair is a key and its value.
type pair struct {
	key   string
	at    place // of the key
	value ast.Node
	last  string // the text of the value before it, if it stands on the same line
}

// pairsOf takes a section apart.
func pairsOf(n ast.Node) ([]pair, bool) {
	var values []*ast.MappingValueNode
	switch m := n.(type) {
	case *ast.MappingNode:
		values = m.Values
	case *ast.MappingValueNode:
		values = []*ast.MappingValueNode{m}
	default:
		return nil, false
	}
	var out []pair
	last := ""
	for _, v := range values {
		k := v.Key.GetToken()
		out = append(out, pair{k.Value, tokenPlace(k), v.Value, last})
		last, _ = scalar(v.Value)
	}
	return out, true
}

// distinct drops the second one of two equal keys and tells of it.
func (r *reader) distinct(pairs []pair) []pair {
	first := map[string]place{}
	var out []pair
	for _, p := range pairs {
		if at, twice := first[p.key]; twice {
			r.wrong(p.at, fmt.Sprintf("%s a second time", quoted(p.key)), fmt.Sprintf("one; the first is in line %d", at.line), "")
			continue
		}
		first[p.key] = p.at
		out = append(out, p)
	}
	return out
}

// afterComma is what follows the comma of a decimal number between braces.
var afterComma = regexp.MustCompile(`^[0-9]+( *[a-z"']+)?$`)

func (r *reader) unknownKey(p pair, what string, keys []string) {
	if isMissing(p.value) && afterComma.MatchString(p.key) && p.last != "" {
		if _, err := unit.ParseNumber(p.last); err == nil {
			r.wrong(p.at, fmt.Sprintf("%q has a decimal comma", p.last+","+p.key), "a decimal point", "write "+p.last+"."+p.key)
			return
		}
	}
	expected := "a key of " + what + ": " + strings.Join(keys, ", ")
	if len(keys) == 0 {
		expected = "no key: there are none in " + what
	}
	r.wrong(p.at, "unknown key "+quoted(p.key), expected, nearest(p.key, keys))
}
