package job

import (
	"fmt"

	"github.com/goccy/go-yaml/ast"

	"slabwright/model"
	"slabwright/model/unit"
)

// designDraft is the design section before its walls are looked up.
type designDraft struct {
	preset   model.Preset
	settings map[string]model.Setting
}

// designForm describes the design section: each preset has its own parameters.
func designForm(presets []model.Preset) form[entry[designDraft]] {
	type D = designDraft
	var kinds []kind[entry[D]]
	for _, p := range presets {
		kinds = append(kinds, kind[entry[D]]{p.Name, record("a design", []field[D]{
			need("preset", p.Help, word("the preset", p.Name), func(d *D) *string { return &d.preset.Name }),
			may("parameters", "what differs from the preset's own values", inner(settingsForm(p)), func(d *D) *map[string]model.Setting { return &d.settings }),
		}, func(_ *reader, e *entry[D]) { e.v.preset = p })})
	}
	return byWord("a design", "preset", "the name of a preset", kinds)
}

// settingsForm describes the parameters of a preset.
func settingsForm(p model.Preset) form[entry[map[string]model.Setting]] {
	var fields []field[map[string]model.Setting]
	for _, q := range p.Params {
		fields = append(fields, settingField(q))
	}
	return record("the parameters of "+p.Name, fields, nil)
}

func settingField(p model.Param) field[map[string]model.Setting] {
	switch p.Kind {
	case model.LengthParam:
		return setting(p, length(unit.Length(p.Min), unit.Length(p.Max)), func(s *model.Setting, v unit.Length) { s.Length = v })
	case model.CountParam:
		return setting(p, count(int(p.Min), int(p.Max)), func(s *model.Setting, v int) { s.Number = float64(v) })
	case model.FlagParam:
		return setting(p, yesNo(), func(s *model.Setting, v bool) { s.Flag = v })
	case model.ChoiceParam:
		return setting(p, word("one of these", p.Choices...), func(s *model.Setting, v string) { s.Text = v })
	}
	panic(fmt.Sprintf("parameter %s: unknown kind %q", p.Name, p.Kind))
}

// setting is a key for one parameter; put takes the value into its own field.
func setting[V any](p model.Param, f form[V], put func(*model.Setting, V)) field[map[string]model.Setting] {
	return field[map[string]model.Setting]{
		key:    p.Name,
		help:   fmt.Sprintf("%s; %s if nothing is said", p.Help, p.Default),
		schema: f.schema,
		read: func(r *reader, n ast.Node, into *map[string]model.Setting) bool {
			v, ok := f.read(r, n)
			if !ok {
				return false
			}
			if *into == nil {
				*into = map[string]model.Setting{}
			}
			s := model.Setting{Pos: r.pos(nodePlace(n))}
			s.Text, _ = scalar(n)
			put(&s, v)
			(*into)[p.Name] = s
			return true
		},
	}
}
