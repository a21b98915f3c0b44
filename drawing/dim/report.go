package dim

import (
	"fmt"
	"strings"

	"slabwright/model/find"
)

// Report tells what did not go well. An empty report means that every request
// stands on the paper and can be read.
type Report struct{ Troubles []Trouble }

// Trouble is one request that could not be placed as it should be.
type Trouble struct {
	Request int    // index of the request
	Text    string // what was to be written, or the kind of request
	Why     string
}

// Why of a Trouble.
const (
	NoSense = "it measures nothing: points coincide, are missing or are no numbers"
	NoRoom  = "there is no place where nothing lies over it"
	OffPage = "it leaves the frame"
)

// Clean tells whether there is no trouble.
func (r Report) Clean() bool { return len(r.Troubles) == 0 }

// Findings puts the troubles of a sheet into findings, each a warning.
func (r Report) Findings(sheet string) []find.Finding {
	var out []find.Finding
	for _, t := range r.Troubles {
		f := find.Finding{
			Rule: "drawing.crowded", Status: find.Warn,
			Title: fmt.Sprintf("sheet %s: %q is hard to read", sheet, t.Text), Why: t.Why,
			Fix:   []find.Fix{{Text: "draw the view at a larger scale, on a larger sheet, or give the sizes in a table"}},
			Basis: "ISO 129-1: no figure is touched or crossed by a line",
		}
		if t.Why == NoSense {
			f.Title = fmt.Sprintf("sheet %s: request %d (%s) says nothing", sheet, t.Request+1, t.Text)
			f.Fix = []find.Fix{{Text: "give two different points, or a text"}}
			f.Basis = "a size of zero cannot be made"
		}
		out = append(out, f)
	}
	return out
}

// kindOf names a request that has nothing to write.
func kindOf(q Request) string {
	if q == nil {
		return "none"
	}
	return strings.ToLower(strings.TrimPrefix(fmt.Sprintf("%T", q), "dim."))
}
