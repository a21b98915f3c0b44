package job

import (
	"fmt"
	"sort"
	"strings"
	"unicode"

	"slabwright/model"
)

// Mistake is something in a job file that cannot be meant.
type Mistake struct {
	Pos      model.Pos
	Read     string // what stands there
	Expected string // what could stand there
	Hint     string // how to mend it: the nearest word, a value; "" if unknown
	Source   string // the line of the file, without its end
}

// Error is the mistake in one line: file:line:column: message.
func (m Mistake) Error() string {
	return fmt.Sprintf("%s:%d:%d: %s", m.Pos.File, m.Pos.Line, m.Pos.Column, m.Message())
}

// Message tells the mistake without its place.
func (m Mistake) Message() string {
	s := m.Read
	if m.Expected != "" {
		s += ": expected " + m.Expected
	}
	if m.Hint != "" {
		s += "; " + m.Hint
	}
	return s
}

// String is Error and below it the line of the file with a caret.
func (m Mistake) String() string {
	if m.Source == "" {
		return m.Error()
	}
	line, before := excerpt(m.Source, m.Pos.Column)
	return m.Error() + "\n    " + line + "\n    " + strings.Repeat(" ", before) + "^"
}

// Text puts mistakes below each other, as a terminal shows them.
func Text(list []Mistake) string {
	var b strings.Builder
	for _, m := range list {
		b.WriteString(m.String())
		b.WriteByte('\n')
	}
	return b.String()
}

// excerpt cuts a long line round a column (from 1) and gives the number of
// characters before it. What would disturb a terminal becomes a dot or space.
func excerpt(line string, column int) (string, int) {
	const ahead, most = 80, 120
	r := []rune(line)
	for i, c := range r {
		switch {
		case c == '\t':
			r[i] = ' '
		case !unicode.IsPrint(c):
			r[i] = '·'
		}
	}
	at := min(max(column-1, 0), len(r))
	if len(r) <= most {
		return string(r), at
	}
	from := max(0, at-ahead)
	to := min(len(r), from+most)
	return string(r[from:to]), at - from
}

// maxMistakes bounds the list: a file that is no job file at all has thousands.
const maxMistakes = 100

// inOrder sorts mistakes by their place in the file and drops those that say
// the same of the same place.
func inOrder(list []Mistake) []Mistake {
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i].Pos, list[j].Pos
		if a.Line != b.Line {
			return a.Line < b.Line
		}
		return a.Column < b.Column
	})
	out := list[:0]
	for i, m := range list {
		if i == 0 || m != out[len(out)-1] {
			out = append(out, m)
		}
	}
	if len(out) > maxMistakes {
		rest := len(out) - maxMistakes
		out = append(out[:maxMistakes:maxMistakes], Mistake{Pos: out[maxMistakes].Pos, Read: fmt.Sprintf("%d more mistakes follow", rest), Hint: "mend the first ones and try again"})
	}
	return out
}
