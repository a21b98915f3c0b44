package cmd

import (
	"bytes"
	"fmt"
	"io"
	"maps"

	"slabwright/drawing/render"
	"slabwright/drawing/sheet"
	"slabwright/mesh"
	"slabwright/mesh/gltf"
	"slabwright/mesh/sdf"
	"slabwright/mesh/stl"
	"slabwright/mesh/threemf"
	"slabwright/model"
	"slabwright/model/atonce"
	"slabwright/model/lists"
	"slabwright/model/report"
	"slabwright/model/unit"
)

// files makes everything that a build writes, in memory.
func (t *tool) files(b report.Build, quiet bool) (fileSet, error) {
	tell := t.progress(quiet)
	steps := []struct {
		what string
		run  func(report.Build, fileSet) error
	}{
		{"drawing the sheets", t.addSheets}, {"writing the report", addReport}, {"meshing the parts", addModels}, {"writing the solids", addSolids}, {"writing the lists", addLists},
	}
	sets, faults := make([]fileSet, len(steps)), make([]error, len(steps))
	atonce.Each(len(steps), func(i int) {
		tell(steps[i].what)
		sets[i] = fileSet{}
		faults[i] = steps[i].run(b, sets[i])
	})
	out := fileSet{}
	for i, set := range sets {
		if faults[i] != nil {
			return nil, fmt.Errorf("%s: %w", steps[i].what, faults[i])
		}
		maps.Copy(out, set)
	}
	return out, nil
}

func (t *tool) addSheets(b report.Build, out fileSet) error {
	sheets, err := sheet.Set(b)
	if t.since != nil {
		sheets, err = sheet.SetSince(b, *t.since)
	}
	if err != nil {
		return err
	}
	var pdf []byte
	svgs, faults := make([][]byte, len(sheets)), make([]error, len(sheets))
	atonce.Each(1+len(sheets), func(i int) {
		if i == 0 { // takes longest
			pdf, err = render.PDF(sheets, render.Meta{Title: b.Job.Title, Author: b.Job.Author, Subject: "shop drawings, revision " + b.Job.Revision})
			return
		}
		svgs[i-1], faults[i-1] = render.SVG(sheets[i-1])
	})
	if err != nil {
		return err
	}
	out["drawings.pdf"] = pdf
	for i, s := range sheets {
		if faults[i] != nil {
			return fmt.Errorf("sheet %s: %w", s.Name, faults[i])
		}
		out["sheets/"+s.Name+".svg"] = svgs[i]
	}
	return nil
}

// addModels writes every part by itself and all together. A part that cannot
// be meshed is left out of the models: its finding says why.
func addModels(b report.Build, out fileSet) error {
	scene := mesh.Scene{Title: b.Job.Title}
	for _, p := range b.Design.Parts {
		o := mesh.Object{Name: p.ID, ID: fileStem(p.ID), Roughness: 0.7}
		for _, body := range p.Bodies {
			if body.Solid.Err() != nil {
				continue
			}
			m, err := meshOf(p, body, b.Job.Show.Natural)
			if err != nil {
				return fmt.Errorf("part %s: %w", p.ID, err)
			}
			if len(o.Meshes) == 0 { // the first body gives the part its colour
				o.Color = mesh.Color{R: body.Colour.R, G: body.Colour.G, B: body.Colour.B}
			}
			o.Meshes = append(o.Meshes, m)
			if p.Angle != nil || p.Rod != nil {
				o.Metal, o.Roughness = true, 0.55
			}
		}
		if len(o.Meshes) > 0 {
			scene.Objects = append(scene.Objects, o)
		}
	}
	if len(scene.Objects) == 0 {
		return nil
	}
	for _, o := range scene.Objects {
		one, _ := scene.Only(o.ID)
		if err := add(out, "models/"+o.ID+".stl", one, stl.Write); err != nil {
			return err
		}
	}
	for name, write := range map[string]func(io.Writer, mesh.Scene) error{
		"models/assembly.stl": stl.Write, "models/assembly.3mf": threemf.Write, "models/assembly.glb": gltf.Write,
	} {
		if err := add(out, name, scene, write); err != nil {
			return err
		}
	}
	return nil
}

// barkBulge is how far the bark side of a natural edge is taken to swell beyond
// the flat face between its arrises: a matter of taste, nobody measures it.
const barkBulge unit.Length = 3

// meshOf meshes a body exactly; the natural edges of a slab then get their
// living shape. Where that shape does not work out, the flat faces stay.
func meshOf(p *model.Part, body model.Body, tolerance unit.Length) (mesh.Mesh, error) {
	if p.Slab == nil {
		return mesh.FromFaces(body.Solid.Faces())
	}
	m, err := mesh.FromFaces(p.Slab.Own.Faces())
	if err != nil {
		return m, err
	}
	for _, e := range p.Slab.Edges {
		if len(e.Natural) == 0 || !(tolerance > 0) {
			continue
		}
		shaped, err := sdf.Shape(m, sdf.Edge{Surface: e.Surface(), Bulge: barkBulge, Tolerance: tolerance})
		if err != nil {
			return m, err
		}
		m = shaped
	}
	return m.Placed(p.Slab.Pose), nil
}

func add(out fileSet, name string, s mesh.Scene, write func(io.Writer, mesh.Scene) error) error {
	var b bytes.Buffer
	if err := write(&b, s); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	out[name] = b.Bytes()
	return nil
}

func addLists(b report.Build, out fileSet) error {
	for _, l := range []struct {
		name string
		make func() ([]byte, error)
	}{
		{"parts", func() ([]byte, error) { return lists.Parts(b.Design) }},
		{"holes", func() ([]byte, error) { return lists.Holes(b.Design) }},
		{"buy", func() ([]byte, error) { return lists.Buy(b.Design, b.Shopping, lists.Wired(b.Design, b.Job.Wiring)...) }},
		{"cuts", func() ([]byte, error) { return lists.Cuts(b.Shopping) }},
	} {
		data, err := l.make()
		if err != nil {
			return err
		}
		out["lists/"+l.name+".csv"] = data
	}
	return nil
}

func addReport(b report.Build, out fileSet) error {
	data, err := report.JSON(b)
	if err != nil {
		return err
	}
	out["report.json"] = data
	out["report.md"] = report.Markdown(b)
	return nil
}
