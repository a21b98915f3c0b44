package report

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// Markdown is report.md: the verdict, the five smallest margins, what to do
// next, then the rest.
func Markdown(b Build) []byte {
	var w strings.Builder
	fmt.Fprintf(&w, "# %s: verdict\n\n**%s**\n\n", b.Job.Title, Sentence(b.Findings))
	fmt.Fprintf(&w, "Revision %s, surveyed %s. Sheets: drawings.pdf. Numbers are millimetres unless said.\n\n", b.Job.Revision, b.Job.Surveyed)
	smallest(&w, b.Findings)
	next(&w, b)
	cautions(&w, b)
	partList(&w, b.Design)
	roomTable(&w, b.Room)
	all(&w, b.Findings)
	notChecked(&w)
	return []byte(w.String())
}

// Brief is what the terminal shows: the verdict, the margins and what to do.
func Brief(b Build) string {
	var w strings.Builder
	fmt.Fprintf(&w, "%s\n\n", Sentence(b.Findings))
	for _, f := range Smallest(b.Findings, 5) {
		fmt.Fprintf(&w, "  %8s  %-8s %s (%s)\n", margin(f), f.Status, f.Title, where(f))
	}
	for i, s := range Steps(b) {
		if i == 0 {
			fmt.Fprintf(&w, "\nNext:\n")
		}
		fmt.Fprintf(&w, "  %d. %s\n", i+1, s)
	}
	return w.String()
}

func smallest(w *strings.Builder, list []find.Finding) {
	fmt.Fprintf(w, "## The five smallest margins\n\n| margin | what | where | measured | required |\n|--:|---|---|--:|--:|\n")
	for _, f := range Smallest(list, 5) {
		fmt.Fprintf(w, "| %s | %s | %s | %s | %s |\n", margin(f), f.Title, where(f), quantity(f.Measured), limit(f.Required))
	}
	w.WriteString("\n")
}

// Steps gives what to measure or do next: the hints of failing, unknown and
// warned findings, worst first, then the standing order of work.
func Steps(b Build) []string {
	var out []string
	for _, f := range b.Findings {
		if f.Status.Severity() < find.Warn.Severity() {
			continue
		}
		for _, x := range f.Fix {
			s := x.Text
			if x.Value != nil {
				s += fmt.Sprintf(" (set %s to %.4g)", x.Parameter, *x.Value)
			}
			out = append(out, fmt.Sprintf("%s [%s: %s]", s, f.Rule, where(f)))
		}
	}
	if len(out) == 0 {
		out = append(out,
			"measure the width once more at the back, in the middle and at the front before anything is cut",
			"hand the slab sheets to the joiner and the angle sheets to the steel yard",
			"search every wall for services before drilling")
	}
	return out
}

func next(w *strings.Builder, b Build) {
	fmt.Fprintf(w, "## Next\n\n")
	for i, s := range Steps(b) {
		fmt.Fprintf(w, "%d. %s\n", i+1, s)
	}
	w.WriteString("\n")
}

func partList(w *strings.Builder, d *model.Design) {
	fmt.Fprintf(w, "## Parts\n\n| no. | part | material | size | kg |\n|--:|---|---|---|--:|\n")
	var total unit.Mass
	for _, p := range d.Parts {
		fmt.Fprintf(w, "| %d | %s | %s | %s | %.1f |\n", p.Mark, p.ID, p.Material, p.Size(), float64(p.Mass()))
		total += p.Mass()
	}
	fmt.Fprintf(w, "| | all together | | | %.1f |\n\n", float64(total))
}

func roomTable(w *strings.Builder, r *model.Room) {
	fmt.Fprintf(w, "## Room as adjusted\n\n| corner | x | y | sd x | sd y | angle inside |\n|---|--:|--:|--:|--:|--:|\n")
	for _, c := range r.Corners {
		angle := "open end"
		if c.Angle != 0 {
			angle = fmt.Sprintf("%.2f°", c.Angle.Degrees())
		}
		fmt.Fprintf(w, "| %s | %.1f | %.1f | %.1f | %.1f | %s |\n", c.Name, float64(c.At.X), float64(c.At.Y), float64(c.SDX), float64(c.SDY), angle)
	}
	s := r.Survey
	fmt.Fprintf(w, "\n%d readings, %d more than needed.", len(s.Readings), s.Redundancy)
	if s.Redundancy == 0 {
		w.WriteString(" Nothing checks them: a slip of any size stays unseen.")
	}
	fmt.Fprintf(w, "\n\n| reading | read | adjusted | difference |\n|---|--:|--:|--:|\n")
	for _, x := range s.Readings {
		fmt.Fprintf(w, "| %s | %.1f %s | %.1f | %+.1f |\n", x.Name, x.Read, x.Unit, x.Adjusted, x.Adjusted-x.Read)
	}
	w.WriteString("\n")
}

func all(w *strings.Builder, list []find.Finding) {
	fmt.Fprintf(w, "## All findings\n\n")
	for _, f := range list {
		fmt.Fprintf(w, "### %s: %s (%s)\n\n%s\n\n", f.Status, f.Title, where(f), f.Why)
		if f.Measured != nil && f.Required != nil {
			fmt.Fprintf(w, "- measured %s, required %s, margin %s\n", quantity(f.Measured), limit(f.Required), quantity(f.Margin))
		}
		for _, a := range f.Assumed {
			fmt.Fprintf(w, "- assumed: %s (%s)\n", a.What, a.Source)
		}
		for _, x := range f.Fix {
			fmt.Fprintf(w, "- to mend: %s\n", x.Text)
		}
		fmt.Fprintf(w, "- rule `%s`; basis: %s\n", f.Rule, f.Basis)
		if f.Line != "" {
			fmt.Fprintf(w, "- described at %s\n", f.Line)
		}
		w.WriteString("\n")
	}
}

func where(f find.Finding) string {
	s := strings.Join(append(append([]string(nil), f.Parts...), walls(f)...), ", ")
	if s == "" {
		return "whole desk"
	}
	return s
}

func walls(f find.Finding) []string {
	var out []string
	for _, w := range f.Walls {
		out = append(out, "wall "+w)
	}
	return out
}

func quantity(q *find.Quantity) string {
	if q == nil {
		return "-"
	}
	return fmt.Sprintf("%.1f %s", q.Value, q.Unit)
}

func limit(l *find.Limit) string {
	switch {
	case l == nil:
		return "-"
	case l.Relation == find.Between:
		return fmt.Sprintf("%.1f to %.1f %s", l.Value, l.High, l.Unit)
	case l.Relation == find.AtMost:
		return fmt.Sprintf("at most %.1f %s", l.Value, l.Unit)
	}
	return fmt.Sprintf("at least %.1f %s", l.Value, l.Unit)
}

// RoomText is the adjusted room for the terminal.
func RoomText(r *model.Room) string {
	var w strings.Builder
	roomTable(&w, r)
	for _, x := range r.Walls {
		fmt.Fprintf(&w, "wall %-12s %s-%s  %7.1f mm  sd %.1f  %s\n", x.Name, x.From.Name, x.To.Name, float64(x.Length()), float64(x.SD), x.Make)
	}
	return w.String()
}
