package cut

import (
	"fmt"
	"slices"

	"slabwright/model/calc/saw"
	"slabwright/model/unit"
)

func (r *reader) sheets(f *form) *saw.Problem {
	p := &saw.Problem{Aim: saw.LeastCost}
	switch f.word("objective", true, "value", "cost", "sheets") {
	case "value":
		p.Aim = saw.MostValue
	case "sheets":
		p.Aim = saw.Fewest
	}
	p.Kerf = f.length("kerf", false, 0, 100)
	p.Trim = f.length("trim", false, 0, 1000)
	p.Stages = int(f.number("stages", false, 0, 9))
	if n := f.take("guillotine"); n != nil && (n.kind != 'b' || !n.flag) {
		r.wrong(n.at, "guillotine "+n.text, "true: a saw cuts right across what lies on it", "leave the key out")
	}
	var keep []unit.Length
	f.list("keep", false, 2, func(n *node) { keep = append(keep, r.plainLength(n)) })
	if len(keep) == 2 {
		p.Keep.Length, p.Keep.Width = keep[0], keep[1]
	}
	once := r.ids("sheets")
	f.list("sheets", true, mostKinds, func(n *node) {
		s := r.sheet(n, p)
		once(n, s.ID)
		p.Sheets = append(p.Sheets, s)
	})
	once = r.ids("items")
	f.list("items", true, mostKinds, func(n *node) {
		i := r.item(n, p)
		once(n, i.ID)
		p.Items = append(p.Items, i)
	})
	if p.Aim != saw.MostValue {
		r.wanted(f, !slices.ContainsFunc(p.Items, func(x saw.Item) bool { return x.Count > 0 }))
	}
	return p
}

func (r *reader) plainLength(n *node) unit.Length {
	if n.kind != 'n' || n.number < -mostLength || n.number > mostLength {
		r.wrong(n.at, n.called(), "a length in millimetres", "")
		return 0
	}
	return unit.Length(n.number)
}

func (r *reader) sheet(n *node, p *saw.Problem) saw.Sheet {
	f := r.form(n, "a sheet")
	s := saw.Sheet{ID: f.text("id", true), Length: f.length("length", true, 0.001, mostLength), Width: f.length("width", true, 0.001, mostLength),
		Count: f.count("count"), Price: f.number("price", false, 0, mostPrice)}
	s.Low, s.High = r.edge(f, "low", s), r.edge(f, "high", s)
	f.list("natural", false, 2, func(n *node) {
		switch side := saw.Side(n.text); {
		case n.kind == 's' && (side == saw.Low || side == saw.High):
			s.Natural = append(s.Natural, side)
		default:
			r.wrong(n.at, n.called(), `"low" or "high"`, "")
		}
	})
	f.list("keep_out", false, 200, func(n *node) {
		k := r.form(n, "a place to keep off")
		s.KeepOut = append(s.KeepOut, saw.Rect{X: k.length("x", true, 0, mostLength), Y: k.length("y", true, 0, mostLength),
			Length: k.length("length", true, 0.001, mostLength), Width: k.length("width", true, 0.001, mostLength)})
		k.end()
	})
	f.end()
	if min(s.Length, s.Width) > 0 && 2*p.Trim >= min(s.Length, s.Width) {
		r.wrong(n.at, fmt.Sprintf("sheet %s is gone when both edges are trimmed", s.ID), "a sheet wider than twice the trim", "")
	}
	if p.Aim == saw.MostValue && (len(s.Low)+len(s.High)+len(s.KeepOut) > 0) {
		r.wrong(n.at, fmt.Sprintf("sheet %s is no plain rectangle", s.ID), "the objective cost or sheets for it", "")
	}
	return s
}

// edge reads the points of an edge.
func (r *reader) edge(f *form, key string, s saw.Sheet) []saw.Station {
	var out []saw.Station
	f.list(key, false, 2000, func(n *node) {
		if n.kind != '[' || len(n.list) != 2 {
			r.wrong(n.at, n.called(), "a point as [at, y]", "")
			return
		}
		at := saw.Station{At: r.plainLength(n.list[0]), Y: r.plainLength(n.list[1])}
		switch {
		case at.At < 0 || at.At > s.Length:
			r.wrong(n.list[0].at, n.list[0].called(), fmt.Sprintf("a place on the sheet, from 0 to %g", float64(s.Length)), "")
		case at.Y < 0 || at.Y > s.Width:
			r.wrong(n.list[1].at, n.list[1].called(), fmt.Sprintf("a height on the sheet, from 0 to %g", float64(s.Width)), "")
		case len(out) > 0 && at.At <= out[len(out)-1].At:
			r.wrong(n.list[0].at, n.list[0].called(), "points from left to right", "")
		default:
			out = append(out, at)
		}
	})
	return out
}

func (r *reader) item(n *node, p *saw.Problem) saw.Item {
	f := r.form(n, "an item")
	i := saw.Item{ID: f.text("id", true), Length: f.length("length", true, 0.001, mostLength), Width: f.length("width", true, 0.001, mostLength),
		Count: f.count("count"), Value: f.number("value", false, 0, 1e12), Turn: f.flag("rotate"),
		Edge: saw.Side(f.word("edge", false, "low", "high")), EndWidth: f.length("end_width", false, 0.001, mostLength)}
	f.end()
	if p.Aim == saw.MostValue && (i.Edge != saw.NoSide || i.EndWidth != 0) {
		r.wrong(n.at, fmt.Sprintf("item %s is no plain rectangle", i.ID), "the objective cost or sheets for it", "")
	}
	if p.Aim == saw.MostValue && f.n.fields["value"] == nil {
		r.wrong(n.at, fmt.Sprintf("item %s has no value", i.ID), "the key value", "")
	}
	return i
}
