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
	if e.at.has("design") && e.at.has("room") {
		needs(r, e.v.design, j.Room)
	}
	return j, inOrder(r.mistakes)
}

// needs checks that the room has the walls that the preset asks for.
func needs(r *reader, d entry[designDraft], room model.RoomPlan) {
	var names []string
	for _, w := range room.Walls {
		names = append(names, w.Name)
	}
	for _, n := range d.v.preset.Needs {
		if !slices.Contains(names, n.Wall) {
			hint := nearest(n.Wall, names)
			if hint == "" {
				hint = "give one of the walls this name: " + strings.Join(names, ", ")
			}
			r.wrong(d.at["preset"], fmt.Sprintf("preset %s without a wall named %q", d.v.preset.Name, n.Wall), n.Help, hint)
		}
	}
}
