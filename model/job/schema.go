package job

import (
	"bytes"
	"encoding/json"

	"slabwright/model"
)

// Schema is the JSON Schema (2020-12) of job files with these presets, for
// editors. It comes from the same description as Read. It says less than Read
// where JSON Schema has no words: ranges of values with a unit, names that must
// exist elsewhere in the file, and how a number was written.
func Schema(presets []model.Preset) []byte {
	s := jobForm(presets).schema
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	s["title"] = "slabwright job"
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(s); err != nil {
		panic(err) // strings, numbers, lists and maps only
	}
	return b.Bytes()
}
