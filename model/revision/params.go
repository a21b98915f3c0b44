package revision

import (
	"slabwright/model"
	"slabwright/model/find"
)

// ParamChange is a parameter of the design, as written in both job files or as
// the preset has it where nothing is said.
type ParamChange struct{ Name, Old, New string }

func params(old, now State) []ParamChange {
	var out []ParamChange
	for _, p := range now.Preset.Params {
		if a, b := value(p, old.Job), value(p, now.Job); a != b {
			out = append(out, ParamChange{p.Name, a, b})
		}
	}
	return out
}

func value(p model.Param, j model.Job) string {
	if s, ok := j.Settings[p.Name]; ok {
		return s.Text
	}
	return p.Default
}

// FindingChange is a check whose verdict is another one now. Old or New is ""
// where the check has no such place.
type FindingChange struct {
	Rule, Title string
	Parts       []string
	Walls       []string
	Old, New    find.Status
	Why         string
}

// key tells findings of a list apart: the rule and what it is about.
func key(f find.Finding) string {
	s := f.Rule + "\x00"
	for _, p := range f.Parts {
		s += p + "\x00"
	}
	s += "\x01"
	for _, w := range f.Walls {
		s += w + "\x00"
	}
	return s
}

// findings pairs findings by rule, parts and walls; of several the worst counts.
func findings(old, now []find.Finding) []FindingChange {
	a, _ := worst(old)
	b, order := worst(now)
	var out []FindingChange
	add := func(f find.Finding, from, to find.Status) {
		out = append(out, FindingChange{Rule: f.Rule, Title: f.Title, Parts: f.Parts, Walls: f.Walls, Old: from, New: to, Why: f.Why})
	}
	for _, k := range order {
		f, was := b[k], a[k]
		if was.Status != f.Status && max(was.Status.Severity(), f.Status.Severity()) > find.Note.Severity() {
			add(f, was.Status, f.Status)
		}
	}
	_, order = worst(old)
	for _, k := range order {
		if f := a[k]; b[k].Status == "" && f.Status.Severity() > find.Note.Severity() {
			add(f, f.Status, "")
		}
	}
	return out
}

func worst(list []find.Finding) (by map[string]find.Finding, order []string) {
	by = map[string]find.Finding{}
	for _, f := range list {
		k := key(f)
		g, ok := by[k]
		if !ok {
			order = append(order, k)
		}
		if !ok || f.Status.Severity() > g.Status.Severity() {
			by[k] = f
		}
	}
	return by, order
}
