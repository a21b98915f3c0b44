package revision

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model/unit"
)

// Text is the comparison for a person.
func (c Comparison) Text() string {
	w := &strings.Builder{}
	fmt.Fprintf(w, "Revision %s against revision %s.\n", orDash(c.New), orDash(c.Old))
	c.Room.text(w)
	c.partsText(w)
	if len(c.Params) > 0 {
		fmt.Fprintf(w, "\nParameters\n")
		for _, p := range c.Params {
			fmt.Fprintf(w, "  %-14s %s -> %s\n", p.Name, p.Old, p.New)
		}
	}
	c.findingsText(w)
	c.sheetsText(w)
	c.entries(w)
	return w.String()
}

func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

func (r RoomChange) text(w *strings.Builder) {
	fmt.Fprintf(w, "\nWalls, at a level of %.0f %%: a room that did not change is said to have once in %.0f times\n", 100*Level, 1/Level)
	if r.NotKnown != "" {
		fmt.Fprintf(w, "  not known: %s\n", r.NotKnown)
	}
	for _, x := range r.Walls {
		if r.NotKnown == "" {
			fmt.Fprintf(w, "  %-8s %-14s %s\n", map[bool]string{true: "moved", false: "same"}[x.Moved], x.Name, x.words())
		}
		for i, what := range []string{"bow", "lean"} {
			v := [2][2]float64{x.Bow, x.Lean}[i]
			if v[0] != v[1] {
				fmt.Fprintf(w, "           %-14s %s told as %s, before as %s %s\n", "", what, num(v[1]), num(v[0]), [2]string{"mm", "mm per m"}[i])
			}
		}
	}
	if len(r.Instead) > 0 {
		fmt.Fprintf(w, "  These readings do not tell which wall moved: it could be %s instead.\n", list(r.Instead, "or"))
	}
	for _, x := range []struct {
		names []string
		what  string
	}{{r.Gone, "only the old survey has"}, {r.New, "only the new survey has"}} {
		if len(x.names) > 0 {
			fmt.Fprintf(w, "  not matched: %s %s. Walls are matched by name.\n", x.what, list(x.names, "and"))
		}
	}
	for i, which := range []string{"old", "new"} {
		switch {
		case r.Unchecked[i]:
			fmt.Fprintf(w, "  mind: nothing checks the %s survey; a slip of the tape looks like a wall that moved.\n", which)
		case r.Unsettled[i]:
			fmt.Fprintf(w, "  mind: the %s survey is not settled, see `slabwright survey`; a slip of the tape looks like a wall that moved.\n", which)
		}
	}
}

// words says how a wall lies against those that stay.
func (x WallChange) words() string {
	if !x.Moved {
		return fmt.Sprintf("within the tape: %s and %s mm at its ends, sd %s and %s", signed(x.Start.Value), signed(x.End.Value), one(x.Start.SD), one(x.End.SD))
	}
	return fmt.Sprintf("%s at its left end, %s at its right end, sd %s and %s: %.1f deviations", inOut(x.Start.Value), inOut(x.End.Value), one(x.Start.SD), one(x.End.SD), x.Deviations())
}

func inOut(l unit.Length) string {
	if l < 0 {
		return one(-l) + " mm back"
	}
	return one(l) + " mm into the room"
}

func one(l unit.Length) string { return fmt.Sprintf("%.1f", float64(l)+0) }

func signed(l unit.Length) string {
	if math.Abs(float64(l)) < 0.05 {
		return "0.0"
	}
	return fmt.Sprintf("%+.1f", float64(l))
}

func num(x float64) string { return unit.Style{}.Number(x, 1) }

func list(names []string, last string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " " + last + " " + names[len(names)-1]
}

// mostSizes is how many sizes of a part are printed; JSON has all.
const mostSizes = 8

func (c Comparison) partsText(w *strings.Builder) {
	fmt.Fprintf(w, "\nParts\n")
	var same []string
	for _, p := range c.Parts {
		if p.Fate == Same {
			same = append(same, p.ID)
			continue
		}
		fmt.Fprintf(w, "  %s: %s", p.ID, p.Fate)
		if p.Sure != nil {
			fmt.Fprintf(w, " (goes in with %s)", percent(*p.Sure))
		}
		fmt.Fprintf(w, "\n")
		if p.Fate != Added && p.Fate != Dropped {
			fmt.Fprintf(w, "      %s\n", strings.TrimSpace(p.Why))
		}
		for _, g := range p.Gaps {
			fmt.Fprintf(w, "      gap at the %s edge to %s: %s, asked for %s\n", g.Edge, g.To, span(g.Least, g.Widest), one(g.Asked))
		}
		for _, m := range p.Mend {
			fmt.Fprintf(w, "      %s: %s\n", map[bool]string{true: "if wanted", false: "to mend"}[p.Fate == Stays], m)
		}
		for i, s := range p.Sizes {
			if i == mostSizes {
				fmt.Fprintf(w, "      and %d more sizes\n", len(p.Sizes)-mostSizes)
				break
			}
			fmt.Fprintf(w, "      %s\n", s.words())
		}
	}
	if len(same) > 0 {
		fmt.Fprintf(w, "  same: %s\n", list(same, "and"))
	}
}

func percent(p float64) string {
	switch {
	case p > 0.9995:
		return "more than 99.9 %"
	case p < 0.0005:
		return "less than 0.1 %"
	}
	return fmt.Sprintf("%.1f %%", 100*p)
}

func span(a, b unit.Length) string {
	if one(a) == one(b) {
		return one(a) + " mm"
	}
	return one(a) + " to " + one(b) + " mm"
}

func (s SizeChange) words() string {
	switch {
	case s.Old == 0:
		return fmt.Sprintf("%s: new, %s", s.What, one(s.New))
	case s.New == 0:
		return fmt.Sprintf("%s: dropped, was %s", s.What, one(s.Old))
	}
	return fmt.Sprintf("%s: %s -> %s (%s)", s.What, one(s.Old), one(s.New), signed(s.Difference()))
}

func (c Comparison) findingsText(w *strings.Builder) {
	if len(c.Findings) == 0 {
		return
	}
	fmt.Fprintf(w, "\nChecks with another verdict\n")
	for _, f := range c.Findings {
		about := append(append([]string(nil), f.Parts...), f.Walls...)
		fmt.Fprintf(w, "  %s -> %s  %s (%s)\n", orDash(string(f.Old)), orDash(string(f.New)), f.Title, strings.Join(about, ", "))
	}
}

// mostFigures is how many figures of a sheet are printed; JSON has all.
const mostFigures = 4

func (c Comparison) sheetsText(w *strings.Builder) {
	if len(c.Sheets) == 0 {
		return
	}
	fmt.Fprintf(w, "\nSheets to print again\n")
	for _, s := range c.Sheets {
		if s.Fate != Changed {
			fmt.Fprintf(w, "  %3d  %s: %s\n", s.Number, s.Title, s.Fate)
			continue
		}
		fmt.Fprintf(w, "  %3d  %s: %s\n", s.Number, s.Title, s.Summary(mostFigures))
	}
}

// Summary names what changed on a sheet, so many figures at most.
func (s SheetChange) Summary(most int) string {
	if s.Lines {
		return "lines only"
	}
	var out []string
	for i, f := range s.Figures {
		if i == most {
			out = append(out, fmt.Sprintf("and %d more", len(s.Figures)-most))
			break
		}
		out = append(out, f.words())
	}
	return strings.Join(out, "; ")
}

// Short gives both texts, cut where they are long, so that the difference is
// seen.
func (f Figure) Short() (old, now string) {
	if f.Old == "" || f.New == "" {
		return short(f.Old), short(f.New)
	}
	return window(f.Old, f.New), window(f.New, f.Old)
}

func (f Figure) words() string {
	old, now := f.Short()
	switch {
	case old == "":
		return "new " + now
	case now == "":
		return "gone " + old
	}
	return old + " -> " + now
}

// mostLetters is how long a text is printed.
const mostLetters = 36

// short cuts long texts, such as notes.
func short(s string) string {
	if r := []rune(s); len(r) > mostLetters {
		return string(r[:mostLetters-3]) + "..."
	}
	return s
}

// window cuts a long text round the place where it differs from another.
func window(s, other string) string {
	a, b := []rune(s), []rune(other)
	from := 0
	for from < len(a) && from < len(b) && a[from] == b[from] {
		from++
	}
	if len(a) <= mostLetters || from < mostLetters/2 {
		return short(s)
	}
	for from > 0 && a[from-1] != ' ' {
		from--
	}
	return "..." + short(string(a[from:]))
}

// entries shows how parts that are already cut are kept.
func (c Comparison) entries(w *strings.Builder) {
	first := true
	for _, p := range c.Parts {
		if p.Entry == "" || p.Fate == Same {
			continue
		}
		if first {
			fmt.Fprintf(w, "\nWhat is already cut can stay: put it into the new job with the day on which it was\ncut and the sizes that the tape gives on the piece. As drawn in revision %s:\n\ncut:\n", orDash(c.Old))
		}
		first = false
		for _, line := range strings.Split(strings.TrimSuffix(p.Entry, "\n"), "\n") {
			fmt.Fprintf(w, "  %s\n", line)
		}
	}
}

// round3 rounds to a thousandth and never gives a negative zero.
func round3(x float64) float64 { return math.Round(x*1000)/1000 + 0 }
