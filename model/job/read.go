package job

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/model"
)

// Read reads a job file; name is the file's name for messages, presets are the
// designs that the file may ask for. With mistakes the job is what could be
// read and good for nothing but looking at. Values that were left out are filled
// in where a default is documented. Read never panics, whatever data holds.
func Read(name string, data []byte, presets []model.Preset) (model.Job, []Mistake) {
	r := newReader(name)
	root := r.parse(data)
	if root == nil {
		return model.Job{}, inOrder(r.mistakes)
	}
	e, _ := jobForm(presets).read(r, root)
	j := e.v.job
	j.Pos = r.pos(place{1, 1})
	if !e.gave("show") {
		j.Show = usualShow
	}
	if e.v.room.at != nil {
		j.Room = assemble(r, e.v.room)
	}
	j.Preset, j.Settings = e.v.design.v.preset.Name, e.v.design.v.settings
	if e.v.design.at.has("preset") && e.v.room.gave("walls") {
		needs(r, e.v.design, e.v.room.v.walls)
	}
	return j, inOrder(r.mistakes)
}

// needs checks that the room has the walls that the preset asks for. Names count
// as they are written, even where something else about the wall is wrong.
func needs(r *reader, d entry[designDraft], walls []entry[wallDraft]) {
	var names []string
	for _, w := range walls {
		if w.gave("name") {
			names = append(names, w.v.plan.Name)
		} else {
			names = append(names, w.v.plan.From+"-"+w.v.plan.To)
		}
	}
	for _, n := range d.v.preset.Needs {
		if !slices.Contains(names, n.Wall) {
			hint := nearest(n.Wall, names)
			if hint == "" && len(names) > 0 {
				hint = "give this name to one of the walls: " + strings.Join(names, ", ")
			}
			r.wrong(d.at["preset"], fmt.Sprintf("preset %s needs a wall named %q", d.v.preset.Name, n.Wall), n.Help, hint)
		}
	}
}
