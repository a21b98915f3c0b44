package cmd

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/cut"
	"slabwright/model/job"
	"slabwright/model/report"
	"slabwright/model/survey"
)

// The line of a build: bytes -> job -> room -> design -> findings. Every verb is
// this line, stopped earlier or carried further.

// load reads a job file; mistakes are printed, all of them.
func (t *tool) load(path string) (model.Job, bool) {
	file := path
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		file = filepath.Join(path, "job.yaml")
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.unreadable(file, err)
		return model.Job{}, false
	}
	j, mistakes := job.Read(filepath.ToSlash(file), data, t.presets)
	if n := len(mistakes); n > 0 {
		fmt.Fprint(t.err, job.Text(mistakes))
		fmt.Fprintf(t.err, "\n%d %s in %s; nothing was written.\n", n, map[bool]string{true: "mistake", false: "mistakes"}[n == 1], file)
		return model.Job{}, false
	}
	return j, true
}

func (t *tool) unreadable(file string, err error) {
	if errors.Is(err, fs.ErrNotExist) {
		fmt.Fprintf(t.err, "%s: there is no such file. `slabwright new DIR` starts a job.\n", file)
		return
	}
	fmt.Fprintf(t.err, "%s: cannot be read: %v\n", file, err)
}

// room adjusts the readings; a room that they do not determine is a mistake in
// the job.
func (t *tool) room(j model.Job) (*model.Room, bool) {
	r, err := model.NewRoom(j.Room)
	if err != nil {
		at := troublePlace(j.Room, err)
		fmt.Fprintf(t.err, "%s:%d: the room cannot be found from its readings: %v\n", at.File, at.Line, err)
		return nil, false
	}
	return r, true
}

// troublePlace is where to mend a room that cannot be found: the bend of a
// corner that was told wrongly, else the room.
func troublePlace(p model.RoomPlan, err error) model.Pos {
	var trouble *survey.Problem
	if !errors.As(err, &trouble) || trouble.Trouble != survey.WrongTurn {
		return p.Pos
	}
	for _, c := range p.Corners {
		if slices.Contains(trouble.Points, survey.Point(c.Name)) {
			return c.Pos
		}
	}
	return p.Pos
}

// design runs the preset and every check.
func (t *tool) design(j model.Job, r *model.Room) (report.Build, bool) {
	for _, p := range t.presets {
		if p.Name != j.Preset {
			continue
		}
		d := p.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House, Cut: j.Cut, Wiring: j.Wiring}, j.Settings)
		d.Finish()
		found := check.Run(check.Site{Job: j, Room: r, Design: d, Params: p.Params})
		return report.Build{Job: j, Room: r, Design: d, Findings: found, Shopping: cut.Shop(j, d), Turn: turn(p, j, r)}, true
	}
	fmt.Fprintf(t.err, "there is no preset %q\n", j.Preset)
	return report.Build{}, false
}

// wallLegs is the parameter by which a design turns its wall legs.
const wallLegs = "wall_leg"

// turn builds the job once more with its wall legs the other way, when somebody
// asks; nil where the preset cannot turn them.
func turn(p model.Preset, j model.Job, r *model.Room) func() report.Turned {
	i := slices.IndexFunc(p.Params, func(q model.Param) bool { return q.Name == wallLegs && q.Kind == model.ChoiceParam })
	if i < 0 {
		return nil
	}
	now := p.Params[i].Default
	if set, ok := j.Settings[wallLegs]; ok {
		now = set.Text
	}
	other := map[string]string{"down": "up", "up": "down"}[now]
	if other == "" {
		return nil
	}
	return sync.OnceValue(func() report.Turned {
		j.Settings = maps.Clone(j.Settings)
		if j.Settings == nil {
			j.Settings = map[string]model.Setting{}
		}
		j.Settings[wallLegs] = model.Setting{Text: other}
		d := p.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House, Cut: j.Cut}, j.Settings)
		d.Finish()
		return report.Turned{Job: j, Design: d, Findings: check.Verdicts(check.Site{Job: j, Room: r, Design: d, Params: p.Params})}
	})
}

// whole is the line from a path to checked findings.
func (t *tool) whole(path string) (report.Build, bool) {
	j, ok := t.load(path)
	if !ok {
		return report.Build{}, false
	}
	r, ok := t.room(j)
	if !ok {
		return report.Build{}, false
	}
	return t.design(j, r)
}
