package drawing_test

import (
	"math"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// unsound are sheets that cannot be drawn, by the word their fault must hold.
func unsound() map[string][]drawing.Item {
	nan, inf := unit.Length(math.NaN()), unit.Length(math.Inf(1))
	pen := drawing.Normal.Fine()
	group := drawing.Group{ID: "part", Items: nil}
	return map[string][]drawing.Item{
		"NaN":        {drawing.Line(geom.V(nan, 0), geom.V(1, 1), pen)},
		"+Inf":       {drawing.Circle{Centre: geom.V(0, 0), Radius: inf, Pen: pen}},
		"1e+09":      {drawing.Area{Loops: [][]geom.Vec{{{X: 1e9}}}}},
		"width 0":    {drawing.Line(geom.V(0, 0), geom.V(1, 1), drawing.Pen{})},
		"width NaN":  {drawing.Arc{Radius: 3, Sweep: 1, Pen: drawing.Pen{Width: nan}}},
		"height 0":   {drawing.Text{String: "x"}},
		"lacks":      {drawing.Write(geom.V(0, 0), "木", 3.5, drawing.Left)},
		"used twice": {group, drawing.Group{ID: "view", Items: []drawing.Item{group}}},
		"empty":      {drawing.Group{}},
	}
}

func TestSound(t *testing.T) {
	for want, items := range unsound() {
		err := drawing.Sound(drawing.Sheet{Name: "01-x", Size: drawing.A4, Items: items})
		if err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "01-x") {
			t.Errorf("fault %v, want one about %q", err, want)
		}
	}
	if err := drawing.Sound(drawing.Sheet{Name: "01-x"}); err == nil {
		t.Error("a sheet without size is taken for sound")
	}
	if err := drawing.Sound(framed(drawing.A4)); err != nil {
		t.Errorf("a framed sheet: %v", err)
	}
}

func TestReadable(t *testing.T) {
	s := drawing.Sheet{Name: "01-x", Title: "Bench 木", Size: drawing.A4, Items: []drawing.Item{
		drawing.Group{ID: "a", Items: []drawing.Item{drawing.Write(geom.V(50, 50), "slab 木板", 3.5, drawing.Left)}},
	}}
	before := drawing.Dump(s)
	mended, found := drawing.Readable(s)
	if len(found) != 2 || !strings.Contains(found[1].Why, "木板") {
		t.Errorf("findings %v", found)
	}
	if err := drawing.Sound(mended); err != nil {
		t.Error(err)
	}
	if text := drawing.Dump(mended); !strings.Contains(text, `"slab \ufffd\ufffd"`) && !strings.Contains(text, "slab \uFFFD\uFFFD") {
		t.Errorf("mended to %s", text)
	}
	if drawing.Dump(s) != before {
		t.Error("the sheet given was changed")
	}
}

// Nothing that a user can bring about makes Plot, Bounds or Overlaps panic.
func TestDegenerateItems(t *testing.T) {
	nan := unit.Length(math.NaN())
	pen, dash := drawing.Normal.Fine(), drawing.Normal.Hidden()
	var items []drawing.Item
	for _, pts := range [][]geom.Vec{nil, {{X: 1, Y: 1}}, {{X: 1, Y: 1}, {X: 1, Y: 1}}, {{X: nan}, {Y: nan}, {X: 1e300}}} {
		for _, p := range []drawing.Pen{pen, dash, drawing.Normal.Break(), drawing.Normal.Wavy(), {}} {
			items = append(items, drawing.Polyline{Points: pts, Pen: p}, drawing.Outline(pts, p))
		}
		for _, m := range everyMaterial {
			items = append(items, drawing.Hatch{Loops: [][]geom.Vec{pts, nil}, Pattern: drawing.Pattern{Material: m}})
		}
		items = append(items, drawing.Area{Loops: [][]geom.Vec{pts}})
	}
	for _, x := range []unit.Length{0, -1, nan, 1e300} {
		items = append(items,
			drawing.Circle{Radius: x, Pen: dash}, drawing.Arc{Radius: x, Sweep: unit.Angle(x), Pen: dash},
			drawing.Text{At: geom.V(x, 0), String: "x", Height: x, Turn: unit.Angle(x)}, drawing.Text{At: geom.V(50, 50), String: " ", Height: 3},
			drawing.Hatch{Loops: [][]geom.Vec{drawing.Box(40, 40, 50, 50).Corners()}, Pattern: drawing.Pattern{Pitch: x, Width: x}})
		for k := drawing.Arrow; k <= drawing.Flag; k++ {
			items = append(items, drawing.Mark{Kind: k, Size: x, Pen: pen})
		}
	}
	drawing.Bounds(items)
	drawing.Overlaps(drawing.Sheet{Size: drawing.A3, Items: items})
	drawing.Dump(drawing.Sheet{Items: items})
}
