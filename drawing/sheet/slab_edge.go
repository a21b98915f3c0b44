package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// edgeChapter shows every edge that is bored, as the driller sees it: squarely
// from outside, the underside down.
func (w *workpiece) edgeChapter() (chapter, bool) {
	c := chapter{name: "edges", title: w.say("bored edges")}
	for i := range w.slab.Edges {
		if list := w.bores(i); len(list) > 0 {
			c.pictures = append(c.pictures, w.edgePicture(i, list))
		}
	}
	c.beside = w.detailBlocks(boredEdge)
	return c, len(c.pictures) > 0
}

func (w *workpiece) bores(edge int) []model.Feature {
	var out []model.Feature
	for _, f := range w.slab.Features {
		if f.Kind == model.Bore && f.Edge == edge {
			out = append(out, f)
		}
	}
	return out
}

// edgePicture looks at an edge from outside: its start is on the right. Bores
// count from the start along the edge, which for the reference edge is datum B.
func (w *workpiece) edgePicture(i int, list []model.Feature) picture {
	e := w.slab.Edges[i]
	line := geom.Through(e.End, e.Start)
	from := w.sayf("corner %s", w.slab.Corners[i])
	if e.Reference {
		from = "B"
	}
	name := capital(w.pass(e.Name))
	p := picture{
		id: "edge-" + stem(e.Name), title: w.sayf("%s edge, seen from outside, %s on the right", name, from),
		paint: w.usual(w.stage), style: w.wood(),
	}
	long := line.D.Len()
	face := geom.Rect(geom.V(0, 0), geom.V(long, w.slab.Thickness))
	p.view = w.withoutArrises(view.Of(w.stage.scene, view.Facing(line)), func(v geom.Vec) unit.Length { return -face.DistanceTo(v) })
	var pts []geom.Vec
	var kinds []string
	like := map[string][]model.Feature{}
	for _, f := range list {
		pts = append(pts, geom.V(line.Along(f.At), f.Height))
		key := boreKey(f)
		if len(like[key]) == 0 {
			kinds = append(kinds, key)
		}
		like[key] = append(like[key], f)
	}
	for _, key := range kinds {
		f := like[key][len(like[key])/2] // in the middle, where there is most room for lettering
		p.ask = append(p.ask, dim.Diameter{Centre: geom.V(line.Along(f.At), f.Height), Dia: f.Dia, Count: len(like[key]), Label: dim.Label{Suffix: " × " + w.sayf("%s deep", w.length(f.Depth)) + w.see(key)}})
	}
	p.ask = append(p.ask, running(dim.Running{Datum: geom.V(long, 0), From: from, Dir: dim.Horizontal, Side: dim.Below}, -1, pts)...)
	p.extra = func(pl dim.Plate) []drawing.Item {
		var out []drawing.Item
		for _, v := range pts {
			c, r := geom.V(pl.Scale.Of(v.X), pl.Scale.Of(v.Y)).Add(pl.Origin), pl.Scale.Of(list[0].Dia/2)+1.5
			out = append(out, drawing.Line(c.Sub(geom.V(r, 0)), c.Add(geom.V(r, 0)), w.lines.Fine()), drawing.Line(c.Sub(geom.V(0, r)), c.Add(geom.V(0, r)), w.lines.Fine()))
		}
		return out
	}
	return p
}
