package check_test

import (
	"strings"
)

// section is one part of an archive: a heading between "-- " and " --" on a line
// of its own, and the lines below it.
type section struct{ name, text string }

// parseArchive reads an archive; what stands before the first heading is a
// comment.
func parseArchive(data string) (comment string, out []section) {
	for _, line := range strings.SplitAfter(data, "\n") {
		name, isHeading := strings.CutPrefix(strings.TrimRight(line, "\n"), "-- ")
		if isHeading && strings.HasSuffix(name, " --") {
			out = append(out, section{name: strings.TrimSuffix(name, " --")})
			continue
		}
		if len(out) == 0 {
			comment += line
			continue
		}
		out[len(out)-1].text += line
	}
	return comment, out
}

func formatArchive(comment string, list []section) string {
	for _, s := range list {
		comment += "-- " + s.name + " --\n" + s.text
	}
	return comment
}
