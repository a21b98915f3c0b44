// Package stl writes scenes as binary STL: bare triangles in millimetres, for
// looking at and for printing. STL keeps no names, colours or units.
package stl

import (
	"bufio"
	"fmt"
	"io"

	"github.com/hschendel/stl"

	"slabwright/mesh"
	"slabwright/model/geom"
)

// opening starts the 80 byte header. Readers take a file that starts with
// "solid" for the text form of STL, whatever follows.
const opening = "binary STL, millimetres: "

// Write puts all parts of the scene, one after the other, into one binary STL
// file. Coordinates are those of the scene rounded to float32, so the error
// grows with the distance from the origin: 1.2e-4 mm at 4 m, 5e-4 mm at 12 m.
// The same scene gives the same bytes.
func Write(w io.Writer, s mesh.Scene) error {
	if err := s.Validate(); err != nil {
		return err
	}
	out := stl.Solid{BinaryHeader: []byte(opening + s.Title)}
	for _, o := range s.Objects {
		for _, m := range o.Meshes {
			r := m.Single(geom.Vec3{})
			for i, t := range r.Triangles {
				out.Triangles = append(out.Triangles, stl.Triangle{
					Normal:   r.Normal(i),
					Vertices: [3]stl.Vec3{r.Vertices[t[0]], r.Vertices[t[1]], r.Vertices[t[2]]},
				})
			}
		}
	}
	buf := bufio.NewWriterSize(w, 1<<16)
	if err := out.WriteAll(buf); err != nil {
		return fmt.Errorf("writing STL: %w", err)
	}
	if err := buf.Flush(); err != nil {
		return fmt.Errorf("writing STL: %w", err)
	}
	return nil
}
