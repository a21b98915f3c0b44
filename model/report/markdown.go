package report

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// Markdown is report.md: the verdict, the five smallest margins, what to do
// next, what to look out for on the way, then the rest.
func Markdown(b Build) []byte {
	var w strings.Builder
	fmt.Fprintf(&w, "# %s: verdict\n\n**%s**\n\n", b.Job.Title, Sentence(b.Findings))
	style := b.Job.Show.Style()
	fmt.Fprintf(&w, "Revision %s, surveyed %s. Sheets: drawings.pdf. %s; ± is one standard deviation.\n\n", b.Job.Revision, b.Job.Surveyed, unitSentence(style))
	smallest(&w, b.Findings)
	next(&w, b)
	troubles(&w, b.Findings)
	cautions(&w, b)
	partList(&w, b.Design, style)
	peopleText(&w, b)
	mounting(&w, b.Design)
	orderSizes(&w, b.Design, style)
	movementText(&w, b.Design)
	shopping(&w, b.Shopping)
	staticsText(&w, b)
	legsText(&w, b)
	passed(&w, b.Findings)
	var sources strings.Builder // as they are
	bases(&sources, b.Findings)
	var rest strings.Builder
	roomTable(&rest, b.Room, style)
	notChecked(&rest)
	return []byte(style.InText(w.String()) + sources.String() + style.InText(rest.String()))
}

// unitSentence names the unit of the numbers.
func unitSentence(s unit.Style) string {
	switch s.Unit {
	case "cm":
		return "Numbers are centimetres unless said"
	case "in":
		return "Lengths are inches, small ones millimetres"
	}
	return "Numbers are millimetres unless said"
}

// sized writes sizes given in millimetres: as they are, or in the unit of the
// style with its sign.
func sized(s unit.Style, mm string) string {
	if s.Unit == "" || s.Unit == "mm" {
		return mm
	}
	return s.InText(mm + " mm")
}

func smallest(w *strings.Builder, list []find.Finding) {
	rows := Smallest(list, 5)
	if len(rows) == 0 {
		return
	}
	fmt.Fprintf(w, "## The five smallest margins\n\n| margin | what | where | measured | required |\n|--:|---|---|--:|--:|\n")
	for _, f := range rows {
		fmt.Fprintf(w, "| %s | %s | %s | %s | %s |\n", quantity(f.Margin), cell(f.Title), cell(briefly(f)), quantity(f.Measured), limit(f.Required))
	}
	w.WriteString("\n")
}

// troubles gives every finding that is not a pass or a note in full.
func troubles(w *strings.Builder, list []find.Finding) {
	bad := only(list, func(f find.Finding) bool { return f.Status.Severity() >= find.Warn.Severity() })
	if len(bad) == 0 {
		return
	}
	fmt.Fprintf(w, "## What fails, is not known, or needs a look\n\n")
	for _, f := range bad {
		fmt.Fprintf(w, "### %s: %s (%s)\n\n%s\n\n", f.Status, f.Title, where(f), f.Why)
		if s := numbers(f); s != "" {
			fmt.Fprintf(w, "- %s\n", s)
		}
		for _, a := range f.Assumed {
			fmt.Fprintf(w, "- assumed: %s (%s)\n", a.What, a.Source)
		}
		for _, x := range f.Fix {
			fmt.Fprintf(w, "- to mend: %s\n", fixText(x))
		}
		fmt.Fprintf(w, "- rule `%s`; basis: %s\n", f.Rule, f.Basis)
		if f.Line != "" {
			fmt.Fprintf(w, "- described at %s\n", f.Line)
		}
		w.WriteString("\n")
	}
}

// passed gives the rest, one line each, in the order of the rules.
func passed(w *strings.Builder, list []find.Finding) {
	fmt.Fprintf(w, "## What was looked at and is in order\n\n")
	for _, r := range check.All {
		good := only(list, func(f find.Finding) bool { return f.Rule == r.ID && f.Status.Severity() < find.Warn.Severity() })
		if len(good) == 0 {
			continue
		}
		fmt.Fprintf(w, "### %s\n\n", r.Title)
		for _, f := range good {
			fmt.Fprintf(w, "- %s", f.Why)
			if f.Margin != nil && f.Status == find.Pass {
				fmt.Fprintf(w, " (margin %s)", quantity(f.Margin))
			}
			w.WriteString("\n")
		}
		w.WriteString("\n")
	}
}

// bases gives for every rule where it comes from and what it took for granted.
func bases(w *strings.Builder, list []find.Finding) {
	fmt.Fprintf(w, "## What the checks rest on\n\n")
	for _, r := range check.All {
		var basis, assumed []string
		for _, f := range list {
			if f.Rule != r.ID {
				continue
			}
			basis = union(basis, []string{f.Basis})
			for _, a := range f.Assumed {
				assumed = union(assumed, []string{fmt.Sprintf("%s (%s)", a.What, a.Source)})
			}
		}
		if basis == nil {
			continue
		}
		fmt.Fprintf(w, "- `%s`: %s\n", r.ID, strings.Join(basis, "; "))
		slices.Sort(assumed)
		for _, a := range assumed {
			fmt.Fprintf(w, "  - assumed: %s\n", a)
		}
	}
	w.WriteString("\n")
}

func partList(w *strings.Builder, d *model.Design, style unit.Style) {
	fmt.Fprintf(w, "## Parts\n\n| no. | part | material | size | kg |\n|--:|---|---|---|--:|\n")
	var total unit.Mass
	for _, p := range d.Parts {
		fmt.Fprintf(w, "| %d | %s | %s | %s | %.1f |\n", p.Mark, cell(p.ID), p.Material, sized(style, p.Size()), float64(p.Mass()))
		total += p.Mass()
	}
	fmt.Fprintf(w, "| | all together | | | %.1f |\n\n", float64(total))
}

func roomTable(w *strings.Builder, r *model.Room, style unit.Style) {
	fmt.Fprintf(w, "## Room as adjusted\n\n| corner | x | y | sd x | sd y | angle inside |\n|---|--:|--:|--:|--:|--:|\n")
	for _, c := range r.Corners {
		angle := "open end"
		if c.Angle != 0 {
			angle = fmt.Sprintf("%.2f°", c.Angle.Degrees())
		}
		fmt.Fprintf(w, "| %s | %s | %s | %s | %s | %s |\n", cell(c.Name), sized(style, number(float64(c.At.X), "mm")), sized(style, number(float64(c.At.Y), "mm")),
			sized(style, fmt.Sprintf("%.1f", float64(c.SDX))), sized(style, fmt.Sprintf("%.1f", float64(c.SDY))), angle)
	}
	s := r.Survey
	fmt.Fprintf(w, "\n%d readings, %d more than needed.", len(s.Readings), s.Redundancy)
	if s.Redundancy == 0 {
		w.WriteString(" Nothing checks them: a slip of any size stays unseen.")
	}
	fmt.Fprintf(w, "\n\n| reading | read | adjusted | difference | verdict |\n|---|--:|--:|--:|---|\n")
	for i, x := range s.Readings {
		fmt.Fprintf(w, "| %s | %.1f %s | %s | %s | %s |\n", cell(x.Name), x.Read, x.Unit, inUnit(style, x.Unit, fmt.Sprintf("%.1f", x.Adjusted)), inUnit(style, x.Unit, plain(fmt.Sprintf("%+.1f", x.Adjusted-x.Read))), s.State(i))
	}
	w.WriteString("\n")
}

// inUnit writes a reading: a length in the unit of the style, an angle as it is.
func inUnit(s unit.Style, of, v string) string {
	if of == "mm" {
		return sized(s, v)
	}
	return v
}

// cell keeps a name from breaking its table.
func cell(s string) string {
	return strings.NewReplacer("|", "/", "\n", " ", "\r", " ").Replace(s)
}

func where(f find.Finding) string {
	out := slices.Clone(f.Parts)
	for _, w := range f.Walls {
		out = append(out, "wall "+w)
	}
	if len(out) == 0 {
		return "whole desk"
	}
	return strings.Join(out, ", ")
}

// mostNames is how many names a table shows.
const mostNames = 4

// briefly is where in a table: the first few names.
func briefly(f find.Finding) string {
	n := len(f.Parts) + len(f.Walls)
	if n <= mostNames {
		return where(f)
	}
	names := append(slices.Clone(f.Parts), f.Walls...)
	return fmt.Sprintf("%s and %d more", strings.Join(names[:mostNames-1], ", "), n-mostNames+1)
}
