package revision

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/find"
)

// State is a job at one time, built and checked. Sheets may be left out.
type State struct {
	Job      model.Job
	Preset   model.Preset
	Room     *model.Room
	Design   *model.Design
	Findings []find.Finding
	Sheets   []Sheet
}

// Comparison is all that changed from one state to another.
type Comparison struct {
	Old, New string // revisions
	Room     RoomChange
	Parts    []PartChange
	Params   []ParamChange
	Findings []FindingChange
	Sheets   []SheetChange
}

// Compare tells what changed. It gives an error when the two are designs of
// different kinds, whose parts have nothing to do with each other.
func Compare(old, now State) (Comparison, error) {
	if old.Job.Preset != now.Job.Preset {
		return Comparison{}, fmt.Errorf("the old job is a design of the preset %q, the new one of %q: their parts cannot be compared", old.Job.Preset, now.Job.Preset)
	}
	return Comparison{
		Old: old.Job.Revision, New: now.Job.Revision,
		Room:     Rooms(old.Room, now.Room),
		Parts:    parts(old, now),
		Params:   params(old, now),
		Findings: findings(old.Findings, now.Findings),
		Sheets:   Sheets(old.Sheets, now.Sheets),
	}, nil
}

// with is the new design as it would be with some parts cut already, checked.
func (s State) with(cut ...model.CutPart) (*model.Design, []find.Finding) {
	job := s.Job
	job.Cut = cut
	for _, c := range s.Job.Cut {
		if !has(cut, c.Part) {
			job.Cut = append(job.Cut, c)
		}
	}
	d := s.Preset.Build(model.Site{Room: s.Room, People: job.People, Offers: job.Offers, House: job.House, Cut: job.Cut, Wiring: job.Wiring}, job.Settings)
	d.Finish()
	return d, check.Run(check.Site{Job: job, Room: s.Room, Design: d, Params: s.Preset.Params})
}

func has(cut []model.CutPart, part string) bool {
	for _, c := range cut {
		if c.Part == part {
			return true
		}
	}
	return false
}
