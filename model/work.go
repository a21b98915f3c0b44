package model

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// work is a piece of wood work as described; it is placed when the slab's
// outline is known.
type work struct {
	Feature
	x, back unit.Length
	size    geom.Vec // pockets and cut-outs: along the back edge, away from it
	path    []geom.Vec
	line    string
	lidded  bool // a lid was asked for
}

// At is a place on a slab: x from the left end along the back edge, and the
// distance from the back edge.
type At struct{ X, Back unit.Length }

// Hole bores a round hole through the slab, such as one for cables.
func (p SlabPiece) Hole(name string, at At, dia unit.Length) SlabPiece {
	return p.with(work{Feature: Feature{Name: name, Kind: Through, Dia: dia}, x: at.X, back: at.Back})
}

// Groove cuts a groove along a path of places, from one face.
func (p SlabPiece) Groove(name string, face Face, width, depth unit.Length, path ...At) SlabPiece {
	w := work{Feature: Feature{Name: name, Kind: Groove, Face: face, Dia: width, Depth: depth}}
	for _, a := range path {
		w.path = append(w.path, geom.V(a.X, -a.Back))
	}
	return p.with(w)
}

// Pocket cuts a rectangular pocket of a depth from one face; at is its left
// corner nearest the back edge, size is along the back edge and away from it.
func (p SlabPiece) Pocket(name string, face Face, at At, sizeX, sizeBack, depth unit.Length) SlabPiece {
	return p.with(rectangle(Feature{Name: name, Kind: Pocket, Face: face, Depth: depth}, at, sizeX, sizeBack))
}

// CutOut takes a rectangle out of the slab, through its whole thickness: a
// notch round a pipe, an opening for a socket.
func (p SlabPiece) CutOut(name string, at At, sizeX, sizeBack unit.Length) SlabPiece {
	return p.with(rectangle(Feature{Name: name, Kind: CutOut}, at, sizeX, sizeBack))
}

func rectangle(f Feature, at At, sizeX, sizeBack unit.Length) work {
	f.Outline = geom.Rect(geom.V(at.X, -at.Back-sizeBack), geom.V(at.X+sizeX, -at.Back))
	return work{Feature: f, x: at.X, back: at.Back, size: geom.V(sizeX, sizeBack)}
}

// Serving says what the last described work serves, for lists and sheets.
func (p SlabPiece) Serving(what string) SlabPiece {
	n := len(p.work)
	if n == 0 {
		p.faults = p.faults.and(faultf("Serving(%q) comes before any work that could serve it", what))
		return p
	}
	p.work = slices.Clone(p.work)
	p.work[n-1].For = what
	return p
}

func (p SlabPiece) with(w work) SlabPiece {
	w.line = callLine()
	p.work = append(p.work[:len(p.work):len(p.work)], w)
	return p
}

// placeWork turns described work into features in the slab's own axes, whose
// origin is the start of the reference edge. Work that cannot be done is left
// out: the slab is still made.
func (p SlabPiece) placeWork(sp *SlabPart) faults {
	if len(p.work) == 0 {
		return nil
	}
	var bad faults
	inside := sp.TopOutline().Intersect(sp.UnderOutline())
	clear := sp.freeOf(0.1)
	for _, w := range p.work {
		f := w.Feature
		f.At, f.Path, f.Line = geom.V(w.x, -w.back), w.path, w.line
		wrong := w.sizes(p.thickness)
		if wrong == "" {
			switch f.Kind {
			case Through:
				f.Outline = geom.Circle(f.At, f.Dia/2, chord)
			case Groove:
				f.Outline = geom.Strip(w.path, f.Dia, chord)
			}
			wrong = f.fits(sp, inside, clear)
			if wrong == "" && f.Lid != (Lid{}) {
				if wrong = f.lidded().fits(sp, inside, clear); wrong != "" {
					wrong = "has a lid that " + wrong
				}
			}
		}
		if wrong != "" {
			bad = bad.and(fault{what: fmt.Sprintf("%s %q %s", f.Kind, f.Name, wrong), line: w.line})
			continue
		}
		sp.Features = append(sp.Features, f)
	}
	return bad
}

// sizes says what is wrong with the sizes of a piece of work, "" if nothing.
func (w work) sizes(thickness unit.Length) string {
	for _, v := range append([]geom.Vec{geom.V(w.x, w.back), w.size}, w.path...) {
		if !(math.Abs(float64(v.X)) < 1e5 && math.Abs(float64(v.Y)) < 1e5) {
			return "lies nowhere: its place or its size is no number, or far too large"
		}
	}
	switch {
	case w.Kind == Groove && len(w.path) < 2:
		return "runs through two places at least"
	case w.Kind == Groove && w.still():
		return "stays at one place: a groove needs a length"
	case (w.Kind == Through || w.Kind == Groove) && !(w.Dia > 0 && w.Dia <= 1000):
		return fmt.Sprintf("is %s wide: above 0 and up to 1000 mm can be described", inWords(w.Dia))
	case (w.Kind == Pocket || w.Kind == CutOut) && !(w.size.X > 0 && w.size.Y > 0):
		return fmt.Sprintf("measures %s x %s mm: both must be above 0", plain(w.size.X), plain(w.size.Y))
	case (w.Kind == Groove || w.Kind == Pocket) && !(w.Depth > 0 && w.Depth < thickness):
		return fmt.Sprintf("is %s deep: above 0 and less than the slab's %s", inWords(w.Depth), inWords(thickness))
	case (w.Kind == Groove || w.Kind == Pocket) && w.Face != TopFace && w.Face != UnderFace:
		return fmt.Sprintf("is cut from the face %q: there are %q and %q", w.Face, TopFace, UnderFace)
	}
	return w.lidWrong()
}

// still tells whether a path goes nowhere.
func (w work) still() bool {
	for _, p := range w.path {
		if p.Sub(w.path[0]).Len() > 0.01 {
			return false
		}
	}
	return true
}

// freeOf is the plan that both faces have in common without the chamfers of
// the edges, and a margin.
func (s *SlabPart) freeOf(margin unit.Length) geom.Region {
	var ease unit.Length
	for _, e := range s.Edges {
		ease = max(ease, e.Ease)
	}
	return s.TopOutline().Intersect(s.UnderOutline()).Grow(-ease-margin, chord)
}

// fits says why a piece of work cannot be where it is, "" if it can: holes lie
// inside the slab; other work may run out through straight edges.
func (f Feature) fits(sp *SlabPart, inside, clear geom.Region) string {
	if f.Outline.Err() != nil || f.Outline.Empty() {
		return "has no outline that can be cut"
	}
	length, depth := sp.Blank()
	size := fmt.Sprintf("the slab is %.0f mm long and %.0f mm deep", float64(length), float64(depth))
	beyond := f.Outline.Minus(inside)
	switch {
	case f.Outline.Intersect(inside).Empty():
		return "lies outside the slab: " + size
	case f.Outline.Minus(clear).Empty():
		return ""
	case f.Kind == Through:
		return "runs out of the slab's edge: " + size
	case f.Outline.Minus(inside.Grow(-0.01, chord)).Empty():
		return "ends in the chamfer of an edge: keep it away from the edge or let it run out; " + size
	}
	if front := sp.Front(); front.Waney && !beyond.ClipHalfPlane(geom.Through(front.Start, front.End)).Empty() {
		return "runs across the natural edge: work must end before it"
	}
	return ""
}
