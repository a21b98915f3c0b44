package stock

import (
	"fmt"
	"strings"
)

// UnknownName is the error for a name that is in no table.
type UnknownName struct {
	What    string // "species", "steel angle", ...
	Name    string // as asked for
	Nearest string // the most alike name in the table
	Known   []string
}

// Error says what is unknown and what was probably meant.
func (e *UnknownName) Error() string {
	return fmt.Sprintf("unknown %s %q; nearest is %q (known: %s)", e.What, e.Name, e.Nearest, strings.Join(e.Known, ", "))
}

// plain brings a name to lower case with single spaces.
func plain(s string) string { return strings.Join(strings.Fields(strings.ToLower(s)), " ") }

func unknown(what, name string, known []string) error {
	best, least := "", 1<<30
	for _, k := range known {
		if d := unlike(plain(name), plain(k)); d < least {
			best, least = k, d
		}
	}
	return &UnknownName{what, name, best, known}
}

// unlike tells how far apart two words are by the letters to change. A
// wrong letter counts ten, a letter missing from a word that is part of the
// other only three, so that "maple" is nearer to "hard maple" than to "ash".
func unlike(a, b string) int {
	if a != "" && (strings.Contains(b, a) || strings.Contains(a, b)) {
		return 3 * max(len(a)-len(b), len(b)-len(a))
	}
	x, y := []rune(a), []rune(b)
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := range x {
		diagonal := row[0]
		row[0] = i + 1
		for j := range y {
			replace := diagonal
			if x[i] != y[j] {
				replace++
			}
			diagonal = row[j+1]
			row[j+1] = min(replace, row[j]+1, row[j+1]+1)
		}
	}
	return 10 * row[len(y)]
}
