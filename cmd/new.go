package cmd

import (
	"fmt"
	"os"
	"path/filepath"

	"slabwright/drawing/render"
	"slabwright/drawing/sheet"
	"slabwright/drawing/words"
	"slabwright/model"
	"slabwright/model/job"
)

var newVerb = verb{"new", "DIR [--preset NAME] [--language CODE]", "starts a job: a folder with a commented job.yaml and a sheet to measure with", func(t *tool, args []string) int {
	o := t.flags("new")
	name := o.set.String("preset", t.presets[0].Name, "the design to start from")
	language := o.set.String("language", words.English.Code, "language of the measuring sheet")
	if code, ok := t.parse(o, args, 1, "one new folder"); !ok {
		return code
	}
	p, ok := t.preset(*name)
	if !ok {
		return exitUnread
	}
	dir := o.rest[0]
	file := filepath.Join(dir, "job.yaml")
	if _, err := os.Stat(file); err == nil {
		fmt.Fprintf(t.err, "%s is already there; it has not been touched. Choose another folder.\n", file)
		return exitUnread
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		fmt.Fprintf(t.err, "cannot make the folder %s: %v\n", dir, err)
		return exitUnread
	}
	if err := writeBeside(file, job.Template(p)); err != nil {
		fmt.Fprintf(t.err, "%v\n", err)
		return exitUnread
	}
	paper := filepath.Join(dir, "measuring-sheet.pdf")
	pdf, err := render.PDF(sheet.Measuring(job.MeasuresFor(p), words.Of(*language)), render.Meta{Title: "Measuring sheet", Subject: "preset " + p.Name})
	if err == nil {
		err = writeBeside(paper, pdf)
	}
	if err != nil {
		fmt.Fprintf(t.err, "%s: %v\n", paper, err)
		return exitUnread
	}
	fmt.Fprintf(t.out, "%s is ready. Print %s and measure by it, write the readings into the first, then: slabwright build %s\n", file, paper, dir)
	return exitFine
}}

func (t *tool) preset(name string) (model.Preset, bool) {
	var names []string
	for _, p := range t.presets {
		if p.Name == name {
			return p, true
		}
		names = append(names, p.Name)
	}
	fmt.Fprintf(t.err, "There is no preset %q", name)
	if n := model.Nearest(name, names); n != "" {
		fmt.Fprintf(t.err, "; the nearest is %q", n)
	}
	fmt.Fprintf(t.err, ". `slabwright presets` lists them.\n")
	return model.Preset{}, false
}
