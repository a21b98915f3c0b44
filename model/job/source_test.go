package job

import (
	"fmt"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// What is no text, or no job file by its size, is refused before it is parsed.
func TestSourceLimits(t *testing.T) {
	var keys strings.Builder
	for i := range maxKeys + 1 {
		fmt.Fprintf(&keys, "k%d: 1\n", i)
	}
	for _, c := range []struct{ data, want string }{
		{strings.Repeat("# far too long\n", 80000), "job.yaml:1:1: a file of 1.2 MB: expected a job file of at most 1 MB; is this the right file?"},
		{keys.String(), "job.yaml:10001:7: more than 10000 keys: expected a job file; is this the right file?"},
		{"title: Print bench\nauthor: M\xfcller\n", "job.yaml:2:10: the byte 0xFC: expected text in UTF-8; save the file as UTF-8 in your editor"},
		{"title: \x00", "job.yaml:1:8: the control character 0x00: expected plain text; is this the right file?"},
	} {
		_, mistakes := Read("job.yaml", []byte(c.data), testPresets)
		if len(mistakes) != 1 || mistakes[0].Error() != c.want {
			t.Errorf("got\n%swant\n%s", Text(mistakes), c.want)
		}
	}
}

// A list of mistakes ends somewhere.
func TestManyMistakes(t *testing.T) {
	_, mistakes := Read("job.yaml", []byte(strings.Repeat("a: 1\n", 5000)), testPresets)
	if n := len(mistakes); n != maxMistakes+1 {
		t.Fatalf("%d mistakes", n)
	}
	if got := mistakes[maxMistakes].Read; got != "4903 more mistakes follow" {
		t.Error(got)
	}
}

// A tool without presets still has a schema.
func TestSchemaWithoutPresets(t *testing.T) {
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(string(Schema(nil))))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("job.json", doc); err != nil {
		t.Fatal(err)
	}
	if _, err := c.Compile("job.json"); err != nil {
		t.Error(err)
	}
}

func ExampleRead() {
	_, mistakes := Read("job.yaml", []byte(`
title: Print bench
room:
  readings_at: 74,5 cm
  corners: [A, B]
  walls: [{from: A, to: B, maek: solid brick}]
  readings: [{between: A-C, is: 1400}]
design: {preset: bench}
`), testPresets)
	fmt.Print(Text(mistakes))
	// Output:
	// job.yaml:4:16: "74,5 cm" has a decimal comma: expected a length such as 745, 74.5 cm, 2.39 m or 29 1/2 in; write 74.5 cm
	//       readings_at: 74,5 cm
	//                    ^
	// job.yaml:6:28: unknown key "maek": expected a key of a wall: name, from, to, make, bow, bow_at, lean, plumb, studs, count_from, anchor, obstacles; nearest is "make"
	//       walls: [{from: A, to: B, maek: solid brick}]
	//                                ^
	// job.yaml:7:24: no corner "C", named in "A-C": expected a corner of the room: A, B
	//       readings: [{between: A-C, is: 1400}]
	//                            ^
}
