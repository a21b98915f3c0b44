// Package threemf writes scenes as 3MF packages: millimetres, one named object
// per part with its mark as part number, base colours, one build item each.
//
// The package is put together here and not by a library because its bytes must
// be the same for the same scene: zip times are fixed, numbers have a fixed
// form, nothing depends on the clock. Standard: 3MF Core Specification 1.3,
// 3MF Consortium; Open Packaging Conventions, ECMA-376 part 2.
package threemf

import (
	"archive/zip"
	"bufio"
	"encoding/xml"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"slabwright/mesh"
)

// The three files of the package.
const (
	typesName = "[Content_Types].xml"
	relsName  = "_rels/.rels"
	modelName = "3D/3dmodel.model"

	types = xml.Header + `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
		`<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
		`<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>` + "\n"
	rels = xml.Header + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
		`<Relationship Id="rel0" Target="/` + modelName + `" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>` + "\n"
)

// noTime stands in every zip entry: the first instant a zip file can name.
var noTime = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

// Write puts the scene into one 3MF package. Each part counts its vertices from
// a point in its middle, in whole millimetres, to which its build item moves
// it: readers that keep float32 are then right to 1e-4 mm for parts up to four
// metres, wherever in the room they are. The same scene gives the same bytes.
func Write(w io.Writer, s mesh.Scene) error {
	if err := s.Validate(); err != nil {
		return err
	}
	z := zip.NewWriter(w)
	for _, f := range []struct {
		name  string
		write func(*page)
	}{
		{typesName, func(p *page) { p.put(types) }},
		{relsName, func(p *page) { p.put(rels) }},
		{modelName, func(p *page) { model(p, s) }},
	} {
		entry, err := z.CreateHeader(&zip.FileHeader{Name: f.name, Method: zip.Deflate, Modified: noTime})
		if err != nil {
			return fmt.Errorf("writing 3MF: %w", err)
		}
		p := &page{w: bufio.NewWriterSize(entry, 1<<16)}
		f.write(p)
		if err := p.w.Flush(); err != nil {
			return fmt.Errorf("writing 3MF: %w", err)
		}
	}
	if err := z.Close(); err != nil {
		return fmt.Errorf("writing 3MF: %w", err)
	}
	return nil
}

// colours is the resource number of the group of base materials; objects count
// from the next number on.
const colours = 1

// model writes the model part.
func model(p *page, s mesh.Scene) {
	p.put(xml.Header, `<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">`, "\n")
	if s.Title != "" {
		p.put(`<metadata name="Title">`, escape(s.Title), "</metadata>\n")
	}
	p.put("<resources>\n<basematerials id=\"", strconv.Itoa(colours), "\">\n")
	for _, o := range s.Objects {
		p.put(`<base name="`, escape(o.Name), `" displaycolor="`, fmt.Sprintf("#%02X%02X%02X", o.Color.R, o.Color.G, o.Color.B), "\"/>\n")
	}
	p.put("</basematerials>\n")
	places := make([]string, len(s.Objects))
	for i, o := range s.Objects {
		m := o.Mesh()
		mid := m.Middle()
		places[i] = fmt.Sprintf("1 0 0 0 1 0 0 0 1 %.0f %.0f %.0f", float64(mid.X), float64(mid.Y), float64(mid.Z))
		p.put(`<object id="`, strconv.Itoa(colours+1+i), `" type="model" name="`, escape(o.Name), `" partnumber="`, escape(o.ID),
			`" pid="`, strconv.Itoa(colours), `" pindex="`, strconv.Itoa(i), "\">\n")
		shape(p, m.Single(mid))
		p.put("</object>\n")
	}
	p.put("</resources>\n<build>\n")
	for i, o := range s.Objects {
		p.put(`<item objectid="`, strconv.Itoa(colours+1+i), `" transform="`, places[i], `" partnumber="`, escape(o.ID), "\"/>\n")
	}
	p.put("</build>\n</model>\n")
}

// shape writes one mesh. Numbers are the shortest that read back to the same
// float32.
func shape(p *page, m mesh.Single) {
	p.put("<mesh>\n<vertices>\n")
	for _, v := range m.Vertices {
		p.put(`<vertex x="`)
		p.number(v[0])
		p.put(`" y="`)
		p.number(v[1])
		p.put(`" z="`)
		p.number(v[2])
		p.put("\"/>\n")
	}
	p.put("</vertices>\n<triangles>\n")
	for _, t := range m.Triangles {
		p.put(`<triangle v1="`)
		p.index(t[0])
		p.put(`" v2="`)
		p.index(t[1])
		p.put(`" v3="`)
		p.index(t[2])
		p.put("\"/>\n")
	}
	p.put("</triangles>\n</mesh>\n")
}

// page writes text; its bufio.Writer keeps the first error until Flush.
type page struct {
	w   *bufio.Writer
	buf [32]byte
}

func (p *page) put(text ...string) {
	for _, t := range text {
		p.w.WriteString(t)
	}
}

func (p *page) number(x float32) {
	if x == 0 {
		x = 0 // no minus sign before a zero
	}
	p.w.Write(strconv.AppendFloat(p.buf[:0], float64(x), 'f', -1, 32))
}

func (p *page) index(i int32) { p.w.Write(strconv.AppendInt(p.buf[:0], int64(i), 10)) }

// escape makes a text fit for an attribute; characters that XML forbids become
// the replacement character.
func escape(s string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(s)) // a strings.Builder never fails
	return b.String()
}
