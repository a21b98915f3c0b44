package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/wire"
)

// channelSheets shows the underside of every slab that is grooved, pocketed or
// slotted, with that work alone by running dimensions, and the bits and passes
// that cut it.
func channelSheets(m *maker) []page {
	var out []page
	for _, p := range m.distinct(func(p *model.Part) bool { return p.Slab != nil && channelled(p) }) {
		w := m.of(p.ID).workpiece(p)
		pages := m.pages("channels-"+stem(p.ID), fmt.Sprintf("%d  %s: %s", p.Mark, m.pass(p.ID), m.say("channels")), []chapter{w.channelChapter()})
		for i := range pages {
			b := &pages[i].block
			b.DocumentType = m.say("channel plan, wood")
			b.Material = m.sayf("%s, t = %s", m.pass(p.Material), m.length(p.Slab.Thickness))
		}
		m.alreadyCut(pages, p)
		out = append(out, pages...)
	}
	return out
}

// channelled tells whether a router or a saw works on the underside of a slab.
func channelled(p *model.Part) bool {
	for _, f := range p.Slab.Features {
		if (f.Kind == model.Groove || f.Kind == model.Pocket) && f.Face == model.UnderFace || wire.IsSlot(f) {
			return true
		}
	}
	return false
}

// channelWork lists what the channel plan of a slab shows.
func (w *workpiece) channelWork() []model.Feature {
	var out []model.Feature
	for _, f := range w.slab.Features {
		switch f.Kind {
		case model.Through, model.CutOut:
			out = append(out, f)
		case model.Groove, model.Pocket:
			if f.Face == model.UnderFace {
				out = append(out, f)
			}
		}
	}
	return out
}

func (m *maker) workNumber(i int) string { return m.sayf("W%d", i+1) }

func (w *workpiece) channelChapter() chapter {
	const flip = -1
	pic := picture{id: "channels", title: w.say("Channels in the underside, turned over its long edge"), view: w.look(view.Below(), flip), paint: w.usual(w.stage), style: w.wood()}
	left, right, ref := w.reference()
	at := func(v geom.Vec) geom.Vec { return geom.V(v.X, v.Y*flip) }
	pic.ask = []dim.Request{dim.Datum{A: at(left), B: at(right), Letter: "A"}}
	if ref > 0 {
		pic.ask = append(pic.ask, dim.Datum{A: at(left), B: at(w.corners[ref-1]), Letter: "B"})
	}
	var xs, ys []geom.Vec
	for i, f := range w.channelWork() {
		var places []geom.Vec
		switch {
		case f.Kind == model.Groove:
			places = f.Path
		case f.Kind == model.Through:
			places = []geom.Vec{f.At}
		default:
			low, high := f.Outline.Bounds()
			places = []geom.Vec{low, high}
		}
		for _, v := range places {
			xs, ys = append(xs, at(v)), append(ys, at(v))
		}
		spot := f.Outline.Centroid()
		if f.Kind == model.Groove {
			spot = f.Path[0].Lerp(f.Path[1], 0.35)
		}
		pic.ask = append(pic.ask, dim.Note{At: at(spot), Lines: w.workName(w.workNumber(i) + "  " + w.pass(f.Name))})
	}
	pic.ask = append(pic.ask, fromB(geom.V(0, 0), dim.Below, xs...)...)
	pic.ask = append(pic.ask, fromA(geom.V(right.X, 0), dim.RightOf, flip, ys...)...)
	pic.extra = func(pl dim.Plate) []drawing.Item { return w.crosses(pl, model.UnderFace, flip) }
	pic.after = func(pl dim.Plate, t *taken) []drawing.Item { return w.grain(pl, t, flip) }
	c := chapter{name: "channels", title: w.say("channels"), pictures: []picture{pic}}
	c.beside = append(c.beside, w.toolTable().blocks("tools", w.say("Router and drill"), w.lines)...)
	c.beside = append(c.beside, notesBlock("act", w.say("Before you act"), []string{
		w.say("Cut rebates before their grooves, every pass from left to right along the guide. Try depth and width on an offcut."),
		w.say("Bore holes from both faces, on a backing board. Saw slots after holes in their inner corners."),
		w.say("Mains lies in a channel of its own, without joints; fixed wiring is for a licensed electrician."),
		w.say("Dust of hardwood: mask and extraction."),
	}))
	return c
}

// toolTable gives the bit, the passes and the guide of every cut of the plan.
func (w *workpiece) toolTable() table {
	t := table{heads: w.heads("no.", "work", "width", "deep", "bit", "passes", "led by"), right: []bool{false, false, true, true, true, false, false}}
	work := w.channelWork()
	number := func(name string) string {
		for i, f := range work {
			if f.Name == name {
				return w.workNumber(i)
			}
		}
		return ""
	}
	listed := map[string]bool{}
	for _, c := range wire.Cuttings(w.part) {
		n := number(c.Work.Name)
		if n == "" {
			continue
		}
		listed[n] = true
		t.rows = append(t.rows, w.toolRow(n, c))
	}
	for i, f := range work {
		if n := w.workNumber(i); !listed[n] {
			low, high := f.Outline.Bounds()
			t.rows = append(t.rows, []string{n, w.pass(string(f.Kind)) + " " + w.pass(f.Name), w.length(high.X - low.X), w.length(high.Y - low.Y), "-", w.say("through"), w.say("saw")})
		}
	}
	return t
}

func (w *workpiece) toolRow(number string, c wire.Cutting) []string {
	f := c.Work
	name, width, deep := w.pass(string(f.Kind))+" "+w.pass(f.Name), f.Dia, f.Depth
	switch {
	case c.Rebate:
		name, width, deep = w.sayf("rebate of %s", w.pass(f.Name)), f.Lid.Width, f.Lid.Thick
	case f.Kind == model.Through:
		deep = w.slab.Thickness
	case f.Kind == model.Pocket:
		low, high := f.Outline.Bounds()
		width = min(high.X-low.X, high.Y-low.Y)
	}
	passes, bit := "-", "-"
	switch {
	case f.Kind == model.Through:
		passes, bit = w.say("from both faces"), "Ø"+w.fine(c.Bit)
	case c.Bit > 0:
		bit = w.sayf("Ø%s, %s long", w.fine(c.Bit), w.length(c.Long))
		passes = w.sayf("%d x %s deep", c.Passes, w.length(c.Each))
		if c.Tracks > 1 {
			passes = w.sayf("%d side by side, %s", c.Tracks, passes)
		}
	}
	return []string{number, name, w.length(width), w.length(deep), bit, passes, w.guide(c)}
}

func (w *workpiece) guide(c wire.Cutting) string {
	switch c.Guide {
	case wire.ByFence:
		return w.sayf("fence, %s from the edge", w.length(c.From))
	case wire.ByTemplate:
		return w.say("template")
	case wire.ByStand:
		return w.sayf("drill stand, %s inside the edge", w.length(c.From))
	}
	return w.say("batten beside it")
}
