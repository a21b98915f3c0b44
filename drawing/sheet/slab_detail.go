package sheet

import (
	"fmt"
	"math"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// detailScales are tried in turn for the sections of edges and grooves.
var detailScales = []drawing.Scale{{Paper: 1, Real: 1}, {Paper: 1, Real: 2}}

// boreScales are those for the sections of long bores.
var boreScales = []drawing.Scale{{Paper: 1, Real: 1}, {Paper: 1, Real: 2}, {Paper: 1, Real: 5}}

// findDetails names what is shown at a large scale: the natural edge, the eased
// edge, each kind of groove and of edge bore. A and B are the datum edges, so
// the letters begin with C.
func (w *workpiece) findDetails() {
	add := func(key string, face model.Face, make func() picture) {
		if w.letter(key) != "" {
			return
		}
		d := detail{letter: string(rune('C' + len(w.details))), key: key, face: face}
		w.details = append(w.details, d)
		pic := make()
		pic.id, pic.title = "detail-"+stem(d.letter), w.sayf("Detail %s: %s", d.letter, pic.title)
		w.details[len(w.details)-1].pic = pic
	}
	for i, e := range w.slab.Edges {
		switch {
		case e.Waney && len(e.Natural) > 0:
			add("natural", model.TopFace, func() picture { return w.naturalDetail(i) })
		case e.Ease > 0:
			add(easeKey(e), model.TopFace, func() picture { return w.easedDetail(i) })
		}
	}
	for _, f := range w.slab.Features {
		switch {
		case f.Kind == model.Groove && len(f.Path) > 1:
			add(grooveKey(f), f.Face, func() picture { return w.grooveDetail(f) })
		case f.Kind == model.Bore:
			add(boreKey(f), boredEdge, func() picture { return w.boreDetail(f) })
		}
	}
}

// boredEdge stands for the edges among the faces of a slab.
const boredEdge model.Face = "edge"

func easeKey(e model.Edge) string { return fmt.Sprint("ease ", e.Ease) }
func grooveKey(f model.Feature) string {
	return fmt.Sprint("groove ", f.Face, f.Dia, f.Depth, f.Lid)
}
func boreKey(f model.Feature) string { return fmt.Sprint("bore ", f.Dia, f.Depth, f.Height) }

// letter is that of a detail, empty when there is none.
func (w *workpiece) letter(key string) string {
	for _, d := range w.details {
		if d.key == key {
			return d.letter
		}
	}
	return ""
}

// see refers to a detail, in words for the end of a note.
func (w *workpiece) see(key string) string {
	if l := w.letter(key); l != "" {
		return w.sayf(", detail %s", l)
	}
	return ""
}

// detailBlocks gives the details that belong beside a face.
func (w *workpiece) detailBlocks(face model.Face) []block {
	var out []block
	for _, d := range w.details {
		if d.face == face {
			scales := detailScales
			if face == boredEdge {
				scales = boreScales
			}
			out = append(out, w.pictured(d.pic, topRight, scales...))
		}
	}
	return out
}

// section cuts the slab along a line and shows it from u0 to u1, broken off at
// the given places. Along the line is x, the underside is at 0.
func (w *workpiece) section(title string, l geom.Line, u0, u1 unit.Length, breaks ...unit.Length) picture {
	t := w.slab.Thickness
	cut := w.solid.Cut(l).Intersect(geom.Rect(geom.V(u0, -1), geom.V(u1, t+1)))
	v := view.View{Cuts: []view.CutArea{{Item: 0, Loops: cut.Loops()}}}
	broken := func(a, b geom.Vec) bool {
		for _, u := range breaks {
			if abs(a.X-u) < 0.01 && abs(b.X-u) < 0.01 {
				return true
			}
		}
		return false
	}
	for _, loop := range v.Cuts[0].Loops {
		for i, a := range loop {
			if b := loop[(i+1)%len(loop)]; !broken(a, b) {
				v.Segments = append(v.Segments, view.Segment{A: a, B: b, Stroke: view.Stroke{Kind: view.Cut}})
			}
		}
	}
	lo, hi := cut.Bounds()
	v.Bounds = drawing.Rect{Min: lo, Max: hi}
	look := w.usual(w.stage)
	pattern := drawing.Pattern{Material: drawing.EndGrain}
	if math.Abs(float64(l.D.Unit().X)) > math.Sqrt2/2 { // the fibre runs along x
		pattern.Material = drawing.LongGrain
	}
	look.hatch = func(int) drawing.Pattern { return pattern }
	return picture{title: title, view: v, paint: look, style: w.wood(), extra: func(pl dim.Plate) []drawing.Item {
		var out []drawing.Item
		for _, u := range breaks {
			a, b := geom.V(pl.Scale.Of(u), pl.Scale.Of(0)), geom.V(pl.Scale.Of(u), pl.Scale.Of(t))
			out = append(out, drawing.Line(pl.Origin.Add(a), pl.Origin.Add(b), w.lines.Wavy()))
		}
		return out
	}}
}

// inwards is the line square to an edge through one of its points, running into
// the slab from the point.
func (w *workpiece) inwards(i int, at geom.Vec) geom.Line {
	e := w.slab.Edges[i]
	return geom.Line{P: at, D: e.End.Sub(e.Start).Unit().Left().Mul(-1)}
}

// shown is how much of the slab a detail of an edge shows.
func (w *workpiece) shown() unit.Length { return max(25, w.slab.Thickness) }

// free tells whether a stretch of a section meets no other work than the one
// that it is to show.
func (w *workpiece) free(l geom.Line, from, to unit.Length, but string) bool {
	d := l.D.Unit()
	a, b := l.P.Add(d.Mul(float64(from))), l.P.Add(d.Mul(float64(to)))
	for _, f := range w.slab.Features {
		if f.Name != but && f.Kind != model.Bore && len(f.Mouth().Inside(a, b)) > 0 {
			return false
		}
		if f.Name != but && f.Kind == model.Bore && abs(l.Side(f.At)) < f.Dia {
			return false
		}
	}
	return true
}

// shares are the places along an edge or a groove where a section is tried.
var shares = [...]float64{0.45, 0.5, 0.55, 0.4, 0.6, 0.35, 0.65, 0.3, 0.7, 0.25, 0.75, 0.2, 0.8, 0.15, 0.85, 0.1, 0.9}

// naturalDetail cuts the natural edge where it is narrowest, as near to there as
// no hole is cut.
func (w *workpiece) naturalDetail(i int) picture {
	top, under := w.slab.Course(i)
	k := -1
	for j := 1; j < len(top)-1; j++ {
		if (k < 0 || -top[j].Y < -top[k].Y) && w.free(w.inwards(i, top[j]), 0, w.shown(), "") {
			k = j
		}
	}
	k = max(k, 1)
	t := w.slab.Thickness
	l := w.inwards(i, top[k])
	out := max(0, -l.Along(under[k])) // how far the underside stands out
	end := w.shown()
	p := w.section(w.say("natural edge"), l, -out-10, end, end)
	p.ask = []dim.Request{
		dim.Linear{A: geom.V(-out, 0), B: geom.V(0, t), Dir: dim.Vertical, Side: dim.LeftOf},
		dim.Linear{A: geom.V(-out, 0), B: geom.V(0, t), Dir: dim.Horizontal, Side: dim.Below},
	}
	return p
}

// easedDetail cuts a sawn edge near its middle.
func (w *workpiece) easedDetail(i int) picture {
	e, t, end := w.slab.Edges[i], w.slab.Thickness, w.shown()
	a, b := w.corners[i], w.corners[(i+1)%len(w.corners)]
	l := w.inwards(i, a.Lerp(b, shares[0]))
	for _, s := range shares {
		if at := w.inwards(i, a.Lerp(b, s)); w.free(at, 0, end, "") {
			l = at
			break
		}
	}
	p := w.section(w.say("sawn edge"), l, -1, end, end)
	p.ask = []dim.Request{
		dim.Linear{A: geom.V(e.Ease, 0), B: geom.V(e.Ease, t), Dir: dim.Vertical, Side: dim.LeftOf},
		dim.Note{At: geom.V(e.Ease/2, t-e.Ease/2), Lines: []string{w.sayf("%s × 45°, both arrises", w.length(e.Ease))}, OnEdge: true},
	}
	return p
}

// grooveDetail cuts a groove near the middle of its first stretch.
func (w *workpiece) grooveDetail(f model.Feature) picture {
	t := w.slab.Thickness
	across := f.Path[1].Sub(f.Path[0]).Unit().Left()
	half := f.Dia / 2
	mouth := max(half, f.Lid.Width/2)
	beside := mouth + max(12, t/3)
	l := geom.Line{P: f.Path[0].Lerp(f.Path[1], shares[0]), D: across}
	for _, s := range shares {
		if at := (geom.Line{P: f.Path[0].Lerp(f.Path[1], s), D: across}); w.free(at, -beside, beside, f.Name) {
			l = at
			break
		}
	}
	p := w.section(w.say("groove"), l, -beside, beside, -beside, beside)
	low, high := unit.Length(0), f.Depth
	side := dim.Below
	if f.Face == model.TopFace {
		low, high, side = t, t-f.Depth, dim.Above
	}
	inner := low + f.Lid.Thick // floor of the rebate
	if f.Face == model.TopFace {
		inner = low - f.Lid.Thick
	}
	p.ask = []dim.Request{
		dim.Linear{A: geom.V(-half, inner), B: geom.V(half, inner), Dir: dim.Horizontal, Side: side},
		dim.Linear{A: geom.V(half, low), B: geom.V(half, high), Dir: dim.Vertical, Side: dim.RightOf},
		dim.Linear{A: geom.V(-beside, 0), B: geom.V(-beside, t), Dir: dim.Vertical, Side: dim.LeftOf},
	}
	if f.Lid != (model.Lid{}) {
		p.ask = append(p.ask,
			dim.Linear{A: geom.V(-mouth, low), B: geom.V(mouth, low), Dir: dim.Horizontal, Side: side},
			dim.Linear{A: geom.V(mouth, low), B: geom.V(mouth, inner), Dir: dim.Vertical, Side: dim.RightOf})
	}
	return p
}

// boreDetail cuts along the axis of an edge bore.
func (w *workpiece) boreDetail(f model.Feature) picture {
	t := w.slab.Thickness
	end := f.Depth + max(12, f.Dia)
	p := w.section(w.say("bore in the edge"), w.inwards(f.Edge, f.At), -1, end, end)
	half := f.Dia / 2
	p.ask = []dim.Request{
		dim.Linear{A: geom.V(0, 0), B: geom.V(0, f.Height), Dir: dim.Vertical, Side: dim.LeftOf},
		dim.Linear{A: geom.V(0, f.Height), B: geom.V(f.Depth, f.Height), Dir: dim.Horizontal, Side: dim.Above},
		dim.Linear{A: geom.V(f.Depth, f.Height-half), B: geom.V(f.Depth, f.Height+half), Dir: dim.Vertical, Side: dim.RightOf, Label: dim.Label{Prefix: "Ø"}},
		dim.Linear{A: geom.V(0, 0), B: geom.V(0, t), Dir: dim.Vertical, Side: dim.LeftOf},
	}
	axis := p.extra
	p.extra = func(pl dim.Plate) []drawing.Item {
		a, b := geom.V(pl.Scale.Of(0)-3, pl.Scale.Of(f.Height)), geom.V(pl.Scale.Of(f.Depth)+3, pl.Scale.Of(f.Height))
		return append(axis(pl), drawing.Line(pl.Origin.Add(a), pl.Origin.Add(b), w.lines.Centre()))
	}
	return p
}
