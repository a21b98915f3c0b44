// Package step writes parts as exact solids: ISO 10303-21 files by the
// application protocol AP214 (automotive_design), in millimetres, with planes
// for flat faces and true cylinders and cones for round ones. Shops with
// machines read them where triangles would not do.
package step

import (
	"errors"
	"fmt"
	"io"

	"slabwright/mesh"
	"slabwright/model/geom"
)

// Body is one solid of a part, with its name and colour.
type Body struct {
	Name  string
	Color mesh.Color
	Solid geom.Solid
}

// Part is what one file holds: a part of one or more bodies, each of which
// becomes a solid of its own.
type Part struct {
	Name   string
	Bodies []Body
}

const (
	header = "ISO-10303-21;\nHEADER;\n" +
		"FILE_DESCRIPTION((''),'2;1');\n" +
		"FILE_NAME(%s,'2000-01-01T00:00:00',(''),(''),'','slabwright','');\n" + // no clock: the same part gives the same bytes
		"FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\n" +
		"ENDSEC;\nDATA;\n"
	footer = "ENDSEC;\nEND-ISO-10303-21;\n"
)

// Write writes a part. It fails for a part without bodies and for a body that
// carries a fault or whose skin is not closed.
func Write(w io.Writer, p Part) error {
	if len(p.Bodies) == 0 {
		return errors.New("step: part without bodies")
	}
	f := &file{}
	c := f.context()
	var solids, styles []ref
	for _, b := range p.Bodies {
		if err := b.Solid.Err(); err != nil {
			return fmt.Errorf("step: body %s: %w", b.Name, err)
		}
		h, err := hullOf(b.Solid)
		if err != nil {
			return fmt.Errorf("step: body %s: %w", b.Name, err)
		}
		s := f.solid(h, b.Name)
		solids = append(solids, s)
		styles = append(styles, f.style(s, b.Color))
	}
	f.product(c, p.Name, solids)
	f.put("MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION", "", styles, c.space)
	if _, err := fmt.Fprintf(w, header, quoted(p.Name)); err != nil {
		return fmt.Errorf("step: %w", err)
	}
	f.data.WriteString(footer)
	if _, err := f.data.WriteTo(w); err != nil {
		return fmt.Errorf("step: %w", err)
	}
	return nil
}
