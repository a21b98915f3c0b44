package job

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// judge compiles the schema with an independent validator.
func judge(t testing.TB) func(doc any) error {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema(testPresets)))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("job.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("job.json")
	if err != nil {
		t.Fatal(err)
	}
	return func(v any) error {
		text, err := json.Marshal(v)
		if err != nil {
			return err
		}
		plain, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		if err != nil {
			return err
		}
		return s.Validate(plain)
	}
}

// What an editor reads from a job file, with YAML's own types.
func tree(t testing.TB, data []byte) any {
	var v any
	if err := yaml.Unmarshal(data, &v); err != nil {
		t.Fatal(err)
	}
	return v
}

func TestSchemaTakesGoodJobs(t *testing.T) {
	valid := judge(t)
	data, _ := readStudio(t)
	if err := valid(tree(t, data)); err != nil {
		t.Errorf("studio: %v", err)
	}
	for _, p := range testPresets {
		if err := valid(tree(t, Template(p))); err != nil {
			t.Errorf("template of %s: %v", p.Name, err)
		}
	}
}

// wordless is what a JSON Schema has no words for: how things in one place fit
// those in another, and the size of a value with a unit.
var wordless = regexp.MustCompile(strings.Join([]string{
	`no corner`, `no neighbours`, `right to left`, `a second time`, `a second wall`, `at most the wall's length`, `not on the wall`,
	`an obstacle from`, `without a top`, `in rising order`, `reach over`, `humidity from`, `needs a wall named`, `a closed room`,
	`the last of the revisions`, `between marks`, `readings at two heights`, `at the corners only`, `heights of the floor without`, `no wall "`, `twice in`, `through two other corners`, `a wall, its left corner first`, `"[0-9][^"]*[^0-9"]" is out of range`,
}, "|"))

// TestSchemaAndReaderAgree breaks a good job in every place in many ways. What
// the schema refuses, the reader must refuse; what the reader refuses, the
// schema must refuse, unless it has no words for it.
func TestSchemaAndReaderAgree(t *testing.T) {
	valid := judge(t)
	data, _ := readStudio(t)
	root := tree(t, data)
	thin(root)
	if err := valid(root); err != nil {
		t.Fatal(err)
	}
	counts := map[string]int{}
	try := func(what string) {
		text, err := json.Marshal(root) // JSON is YAML too
		if err != nil {
			t.Fatal(err)
		}
		_, mistakes := Read("job.json", text, testPresets)
		err = valid(root)
		onlyWordless := !slices.ContainsFunc(mistakes, func(m Mistake) bool { return !wordless.MatchString(m.Message()) })
		switch {
		case err != nil && len(mistakes) == 0:
			t.Errorf("%s: only the schema refuses it: %v", what, err)
		case err == nil && len(mistakes) > 0 && !onlyWordless:
			t.Errorf("%s: only the reader refuses it:\n%s", what, Text(mistakes))
		case err != nil:
			counts["refused"]++
		case len(mistakes) > 0:
			counts["wordless"]++
		default:
			counts["taken"]++
		}
	}
	values := []any{[]any{}, map[string]any{}, true, -12345678, 0, 2.5, "", "zzz zzz", "2310,5", "29 1/2 in", "010", "a\nb", []any{1, 2}}
	var walk func(path string, v any, set func(any))
	walk = func(path string, v any, set func(any)) {
		for _, w := range values {
			set(w)
			try(fmt.Sprintf("%s = %#v", path, w))
		}
		set(v)
		switch c := v.(type) {
		case map[string]any:
			c["odd key"] = 1
			try(path + " with an odd key")
			delete(c, "odd key")
			for _, k := range sortedKeys(c) {
				old := c[k]
				delete(c, k)
				try(path + " without " + k)
				walk(path+"/"+k, old, func(x any) { c[k] = x })
				c[k] = old
			}
		case []any:
			for i, old := range c {
				if _, isText := old.(string); isText && i > 0 {
					break
				}
				walk(fmt.Sprintf("%s/%d", path, i), old, func(x any) { c[i] = x })
				c[i] = old
			}
		}
	}
	top := root.(map[string]any)
	for _, k := range sortedKeys(top) {
		old := top[k]
		delete(top, k)
		try("without " + k)
		walk(k, old, func(x any) { top[k] = x })
		top[k] = old
	}
	if counts["refused"] < 1000 || counts["wordless"] < 20 || counts["taken"] < 100 {
		t.Errorf("the trials were too few of a kind: %v", counts)
	}
}

// thin leaves in every list one thing of each kind, to make the trials fewer.
func thin(v any) {
	switch c := v.(type) {
	case map[string]any:
		for k, w := range c {
			thin(w)
			if list, ok := w.([]any); ok && k != "walls" {
				seen := map[string]bool{}
				c[k] = slices.DeleteFunc(list, func(x any) bool {
					m, isSection := x.(map[string]any)
					kind := fmt.Sprint(sortedKeys(m))
					twice := isSection && seen[kind]
					seen[kind] = true
					return twice
				})
			}
		}
	case []any:
		for _, w := range c {
			thin(w)
		}
	}
}

func sortedKeys(m map[string]any) []string {
	var out []string
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// The names that a file may use are in the schema.
func TestSchemaText(t *testing.T) {
	s := string(Schema(testPresets))
	for _, want := range []string{
		`"$schema": "https://json-schema.org/draft/2020-12/schema"`, `"hidden rods of the shelf; 4 if nothing is said"`,
		`"solid brick"`, `"European ash"`, `"L50x50x6"`, `"corridor turn"`, `"tape III"`,
	} {
		if !strings.Contains(s, want) {
			t.Errorf("schema without %s", want)
		}
	}
	if other := string(Schema(testPresets)); other != s {
		t.Error("two schemas differ")
	}
}
