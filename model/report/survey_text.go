package report

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"slabwright/model"
	"slabwright/model/survey"
)

// RoomText is the adjusted room for the terminal: corners and walls, every
// reading with what could hide in it, what the fit hangs on, which readings to
// take again and which to take next.
func RoomText(r *model.Room) string {
	var w strings.Builder
	s := r.Survey
	fmt.Fprintf(&w, "Room as adjusted, in mm\n\n")
	columns(&w, "corner\tx\ty\tsd x\tsd y\tangle inside\t", func(row func(string, ...any)) {
		for _, c := range r.Corners {
			angle := "open end"
			if c.Angle != 0 {
				angle = fmt.Sprintf("%.2f°", c.Angle.Degrees())
			}
			row("%s\t%.1f\t%.1f\t%.1f\t%.1f\t%s\t", c.Name, mm(c.At.X), mm(c.At.Y), float64(c.SDX), float64(c.SDY), angle)
		}
	})
	columns(&w, "wall\tcorners\tlength\tsd\tmade of\t", func(row func(string, ...any)) {
		for _, x := range r.Walls {
			row("%s\t%s-%s\t%.1f\t%.1f\t%s\t", x.Name, x.From.Name, x.To.Name, float64(x.Length()), float64(x.SD), x.Make)
		}
	})
	facesText(&w, s)
	readingsText(&w, s)
	suspectsText(&w, s)
	refusedText(&w, s)
	decidingText(&w, s)
	nextText(&w, s)
	return w.String()
}

// columns writes an aligned table, its first column to the left.
func columns(w *strings.Builder, head string, fill func(row func(string, ...any))) {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintf(t, "%s\n", head)
	fill(func(format string, args ...any) { fmt.Fprintf(t, format+"\n", args...) })
	t.Flush() // into memory: no error
	w.WriteString("\n")
}

func facesText(w *strings.Builder, s model.SurveyReport) {
	for _, f := range s.Faces {
		var parts []string
		if f.Bow != nil {
			way := "into the room"
			if f.Bow.Value < 0 {
				way = "hollow"
			}
			parts = append(parts, fmt.Sprintf("bow %.1f mm %s (sd %.1f)", max(float64(f.Bow.Value), -float64(f.Bow.Value)), way, float64(f.Bow.SD)))
		}
		if f.Lean != nil {
			parts = append(parts, fmt.Sprintf("leans %+.1f mm per m (sd %.1f), + is back from the room", float64(f.Lean.Value), float64(f.Lean.SD)))
		}
		fmt.Fprintf(w, "wall %s: %s; %s\n", f.Wall, strings.Join(parts, ", "), facesChecked(f))
	}
	for _, l := range s.Levels {
		fmt.Fprintf(w, "floor at %s: %+.1f mm (sd %.1f)\n", l.Name, float64(l.Height.Value), float64(l.Height.SD))
	}
	if len(s.Faces)+len(s.Levels) > 0 {
		w.WriteString("\n")
	}
}

// facesChecked says how far bow and lean of a wall can be trusted.
func facesChecked(f model.FaceReport) string {
	var out []string
	switch {
	case f.Uneven != "":
		out = append(out, f.Uneven+": measure there again, or scribe")
	case f.Stations > 1:
		out = append(out, fmt.Sprintf("%d readings of the bow agree", f.Stations))
	}
	switch {
	case f.NotPlane != "":
		out = append(out, f.NotPlane)
	case f.Plumbs > 2:
		out = append(out, fmt.Sprintf("%d plumb readings agree", f.Plumbs))
	}
	if f.Proved {
		out = append(out, "widths or 3-4-5 marks check the bow")
	}
	if out == nil {
		return "read once, nothing checks it"
	}
	return strings.Join(out, "; ")
}

func readingsText(w *strings.Builder, s model.SurveyReport) {
	t := s.Verdict.Test
	fmt.Fprintf(w, "%d readings, %d more than needed", len(s.Readings), s.Redundancy)
	switch t.Answer {
	case survey.NothingChecks:
		w.WriteString(": UNCHECKED. A slip of any size stays unseen; no chance of fitting can be told.\n\n")
	case survey.Agree:
		fmt.Fprintf(w, ": they agree (sum of squares %.1f, limit %.1f).\n\n", t.Sum, t.Limit)
	default:
		fmt.Fprintf(w, ": they DISAGREE (sum of squares %.1f, limit %.1f).\n\n", t.Sum, t.Limit)
	}
	columns(w, "reading\tread\tadjusted\tdiffers\tw\tredundancy\tleast slip seen\tharm till then\tverdict\t", func(row func(string, ...any)) {
		for i, x := range s.Readings {
			weight, least, harm := "-", "none", "-"
			if l, ok := s.Least(i); ok {
				j := s.Verdict.Readings[i]
				weight, least, harm = plain(fmt.Sprintf("%+.2f", j.W)), fmt.Sprintf("%.1f %s", l, x.Unit), fmt.Sprintf("%.1f mm", float64(j.Damage))
			}
			row("%s\t%.1f %s\t%.1f\t%s\t%s\t%.2f\t%s\t%s\t%s\t", x.Name, x.Read, x.Unit, x.Adjusted, plain(fmt.Sprintf("%+.1f", x.Adjusted-x.Read)), weight, x.Checked, least, harm, s.State(i))
		}
	})
	if s.Loose != "" {
		fmt.Fprintf(w, "Held loosely: %s.\n\n", s.Loose)
	}
}

func suspectsText(w *strings.Builder, s model.SurveyReport) {
	for _, x := range s.Verdict.Suspects {
		if n := len(x.Readings); n > 1 {
			fmt.Fprintf(w, "%d of these %d readings %s wrong, and nothing tells which. Measure them all again:\n", x.Slips, n, plural(x.Slips, "is", "are"))
		} else {
			w.WriteString("This reading contradicts the others. Measure it again:\n")
		}
		for _, a := range x.Readings {
			r := s.Readings[a.Index]
			where := ""
			if a.Reading.Where != "" {
				where = " (" + a.Reading.Where + ")"
			}
			pen := a.Pen()
			if pen != "" {
				pen = " (" + pen + "?)"
			}
			fmt.Fprintf(w, "  %s%s reads %.1f %s; expected %s within %.1f%s\n", r.Name, where, r.Read, r.Unit, a.ShouldRead.Of(a.Reading), a.ShouldRead.Within(a.Reading), pen)
		}
		w.WriteString("\n")
	}
	switch v := s.Verdict; {
	case v.More:
		w.WriteString("Even without these the others contradict each other: there is more than this wrong.\n\n")
	case v.Without != nil && v.AfterTest.Answer == survey.NothingChecks:
		w.WriteString("Without these nothing checks the others.\n\n")
	}
}

func refusedText(w *strings.Builder, s model.SurveyReport) {
	for _, x := range s.Refused {
		where, what := "", "left out"
		if x.Where != "" {
			where = " (" + x.Where + ")"
		}
		if x.Needed {
			what = "cannot be, but the room hangs on it"
			if x.Instead != nil {
				what += "; measure " + strings.Join(x.Instead, " or ") + " instead"
			}
		}
		fmt.Fprintf(w, "%s%s: %s: %s.\n\n", x.Name, where, what, x.Why)
	}
}

func decidingText(w *strings.Builder, s model.SurveyReport) {
	if len(s.Verdict.Deciding) == 0 {
		return
	}
	columns(w, "what decides the fit\tvalue\tsd\tan unseen slip moves it by\tof\t", func(row func(string, ...any)) {
		for _, d := range s.Verdict.Deciding {
			doc := decidedOf(s, d)
			harm, by := fmt.Sprintf("%.1f mm", doc.Damage), doc.By
			if d.Unchecked {
				harm, by = "UNCHECKED", "any size"
			}
			row("%s\t%.1f %s\t%.1f mm\t%s\t%s\t", d.Name, doc.Value, doc.Unit, doc.SD, harm, by)
		}
	})
}

func nextText(w *strings.Builder, s model.SurveyReport) {
	if len(s.Verdict.Next) == 0 {
		return
	}
	w.WriteString("Next best reading, one of these; the first helps most:\n")
	for i, c := range s.Verdict.Next {
		fmt.Fprintf(w, "  %d. %s\n     expected %s within %.1f; then the worst of what decides is known to %.1f mm (sd) and an unseen slip moves it by %.1f mm at most",
			i+1, c.Reading.How(), c.Expected.Of(c.Reading), c.Expected.Within(c.Reading), float64(c.Worst), float64(c.Damage))
		if len(c.Checks) > 0 {
			fmt.Fprintf(w, "; checks %s", strings.Join(named(s, c.Checks), ", "))
		}
		if len(c.Left) > 0 {
			fmt.Fprintf(w, "; leaves %s unchecked", strings.Join(named(s, c.Left), ", "))
		}
		fmt.Fprintf(w, "\n     - %s\n", JobLine(c.Reading, c.Expected))
	}
}
