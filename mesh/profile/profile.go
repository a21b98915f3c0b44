// Package profile writes the faces of slabs at full size for routers and laser
// cutters: SVG in millimetres, nothing but what a cutter follows. Every cut is a
// group of its own; its title says what it is and how deep.
package profile

import (
	"fmt"
	"html"
	"strconv"
	"strings"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// edging is the empty room around the slab.
const edging unit.Length = 10

// SVG draws one face of a slab as it lies on the machine, that face up: the
// underside is seen from below, so that left and right are exchanged. The
// outline is that of the face; holes are circles. Cuts into the other face and
// bores into edges are left out.
func SVG(p *model.Part, face model.Face) []byte {
	s := p.Slab
	outline := s.TopOutline()
	if face == model.UnderFace {
		outline = s.UnderOutline()
	}
	w := page{under: face == model.UnderFace}
	lo, hi := outline.Bounds()
	size := hi.Sub(lo).Add(geom.V(2*edging, 2*edging))
	w.origin = geom.V(lo.X-edging, hi.Y+edging)
	if w.under {
		w.origin.X = hi.X + edging
	}
	w.put(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	w.putf(`<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %[1]s %[2]s">`+"\n", mm(size.X), mm(size.Y))
	w.putf("<title>%s, %s, 1:1</title>\n", html.EscapeString(p.ID), face)
	w.put(`<g fill="none" stroke="#000" stroke-width="0.1">` + "\n")
	w.group("outline", fmt.Sprintf("outline, through %s mm", mm(s.Thickness)), func() { w.loops(outline) })
	for _, f := range s.Features {
		if through := f.Kind == model.Through || f.Kind == model.CutOut; through || f.Kind != model.Bore && f.Face == face {
			w.feature(f, through, s.Thickness)
		}
	}
	w.put("</g>\n</svg>\n")
	return []byte(w.String())
}

// page is an SVG under way; its y runs down.
type page struct {
	strings.Builder
	under  bool
	origin geom.Vec
}

func (w *page) put(s string) { w.WriteString(s) }

func (w *page) putf(format string, a ...any) { fmt.Fprintf(w, format, a...) }

func (w *page) at(p geom.Vec) geom.Vec {
	if w.under {
		return geom.V(w.origin.X-p.X, w.origin.Y-p.Y)
	}
	return geom.V(p.X-w.origin.X, w.origin.Y-p.Y)
}

func (w *page) group(id, title string, draw func()) {
	w.putf(`<g id="%s"><title>%s</title>`+"\n", html.EscapeString(strings.ReplaceAll(id, " ", "-")), html.EscapeString(title))
	draw()
	w.put("</g>\n")
}

func (w *page) feature(f model.Feature, through bool, thickness unit.Length) {
	depth := f.Depth
	if through {
		depth = thickness
	}
	w.group(string(f.Kind)+" "+f.Name, fmt.Sprintf("%s %s, %s mm deep", f.Kind, f.Name, mm(depth)), func() {
		if f.Dia > 0 && len(f.Path) == 0 {
			c := w.at(f.At)
			w.putf(`<circle cx="%s" cy="%s" r="%s"/>`+"\n", mm(c.X), mm(c.Y), mm(f.Dia/2))
			return
		}
		w.loops(f.Outline)
	})
	if f.Lid != (model.Lid{}) {
		w.group("lid "+f.Name, fmt.Sprintf("rebate for the lid of %s, %s mm deep", f.Name, mm(f.Lid.Thick)), func() { w.loops(f.Rebate()) })
	}
	if len(f.Path) > 0 {
		w.group("centre "+f.Name, fmt.Sprintf("centre line of %s for a cutter of %s mm, %s mm deep", f.Name, mm(f.Dia), mm(depth)), func() { w.path(f.Path, false) })
	}
}

func (w *page) loops(r geom.Region) {
	for _, l := range r.Loops() {
		w.path(l, true)
	}
}

func (w *page) path(pts []geom.Vec, closed bool) {
	w.put(`<path d="`)
	verb := "M"
	for _, p := range pts {
		q := w.at(p)
		w.putf("%s%s %s", verb, mm(q.X), mm(q.Y))
		verb = "L"
	}
	if closed {
		w.put("Z")
	}
	w.put(`"/>` + "\n")
}

// mm prints a length to the micrometre.
func mm(l unit.Length) string {
	s := strconv.FormatFloat(float64(l), 'f', 3, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
