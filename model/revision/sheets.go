package revision

import (
	"strings"
	"unicode"
)

// Sheet is what can be read on a sheet, picture by picture and table by table.
// Name is without the number, which changes when a sheet comes before it.
type Sheet struct {
	Name, Title string
	Number      int
	Groups      []Group
}

// Group is a picture, a table or a list on a sheet: what is written there in the
// order of the drawing, and its lines in any stable form.
type Group struct {
	ID    string
	Texts []string
	Drawn string
}

// SheetChange is a sheet that is not as it was.
type SheetChange struct {
	Name, Title string
	Number      int // in the new set; in the old one for a sheet that was dropped
	Fate        Fate
	Figures     []Figure
	Lines       bool // what is drawn changed, though no figure did
}

// Figure is a text with a number in it, old and new; "" where it is new or gone.
type Figure struct{ Where, Old, New string }

// Changed is the fate of a sheet that both sets have.
const Changed Fate = "changed"

// Sheets compares two sets by the names of their sheets.
func Sheets(old, now []Sheet) []SheetChange {
	var out []SheetChange
	for _, s := range now {
		was := sheetOf(old, s.Name)
		if was == nil {
			out = append(out, SheetChange{Name: s.Name, Title: s.Title, Number: s.Number, Fate: Added})
			continue
		}
		if c := against(*was, s); c.Lines || len(c.Figures) > 0 {
			out = append(out, c)
		}
	}
	for _, s := range old {
		if sheetOf(now, s.Name) == nil {
			out = append(out, SheetChange{Name: s.Name, Title: s.Title, Number: s.Number, Fate: Dropped})
		}
	}
	return out
}

func sheetOf(list []Sheet, name string) *Sheet {
	for i := range list {
		if list[i].Name == name {
			return &list[i]
		}
	}
	return nil
}

func against(was, is Sheet) SheetChange {
	c := SheetChange{Name: is.Name, Title: is.Title, Number: is.Number, Fate: Changed}
	drawn := false
	for _, g := range is.Groups {
		old := Group{}
		for _, h := range was.Groups {
			if h.ID == g.ID {
				old = h
			}
		}
		drawn = drawn || old.Drawn != g.Drawn
		for _, f := range Figures(old.Texts, g.Texts) {
			f.Where = g.ID
			c.Figures = append(c.Figures, f)
		}
	}
	c.Lines = drawn && len(c.Figures) == 0
	return c
}

// Figures lists the texts with numbers in which two lists differ: what stands
// between the same neighbours is paired.
func Figures(old, now []string) []Figure {
	old, now = numbered(old), numbered(now)
	var out []Figure
	i, j := 0, 0
	for _, m := range append(common(old, now), [2]int{len(old), len(now)}) {
		for i < m[0] || j < m[1] {
			var f Figure
			if i < m[0] {
				f.Old = old[i]
				i++
			}
			if j < m[1] {
				f.New = now[j]
				j++
			}
			out = append(out, f)
		}
		i, j = m[0]+1, m[1]+1
	}
	return out
}

func numbered(list []string) []string {
	var out []string
	for _, s := range list {
		if strings.ContainsFunc(s, unicode.IsDigit) {
			out = append(out, s)
		}
	}
	return out
}

// common is a longest common subsequence, as pairs of places.
func common(a, b []string) [][2]int {
	long := make([][]int, len(a)+1)
	for i := range long {
		long[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if a[i] == b[j] {
				long[i][j] = long[i+1][j+1] + 1
			} else {
				long[i][j] = max(long[i+1][j], long[i][j+1])
			}
		}
	}
	var out [][2]int
	for i, j := 0, 0; i < len(a) && j < len(b); {
		switch {
		case a[i] == b[j]:
			out = append(out, [2]int{i, j})
			i, j = i+1, j+1
		case long[i+1][j] >= long[i][j+1]:
			i++
		default:
			j++
		}
	}
	return out
}
