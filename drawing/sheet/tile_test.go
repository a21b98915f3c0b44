package sheet

import (
	"fmt"
	"math"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// shapes are papers of templates, wanted in so many tiles.
var shapes = []struct {
	name  string
	shape geom.Region
	tiles int
}{
	{"strip on one sheet", geom.Rect(geom.V(-5, -20), geom.V(260, 14)), 1},
	{"long strip", geom.Rect(geom.V(100, -27), geom.V(1913, 14)), 7},
	{"high strip", geom.Rect(geom.V(0, 0), geom.V(30, 700)), 5},
	{"corner", geom.Polygon(geom.V(-10, 10), geom.V(255, 10), geom.V(255, -3), geom.V(3, -255), geom.V(-10, -255)), 2},
	{"sink", geom.Rect(geom.V(0, 0), geom.V(530, 330)), 4},
	{"a little over", geom.Rect(geom.V(0, 0), geom.V(280, 180)), 4},
}

// The tiles cover the paper, none is larger than its sheet, neighbours share a
// strip as wide as is said, and both have crosses in it at the same places.
func TestTilesCoverTheirTemplate(t *testing.T) {
	room := templateRoom()
	for _, c := range shapes {
		list := tiles(c.shape, geom.V(room.Width(), room.Height()))
		if len(list) != c.tiles {
			t.Errorf("%s: %d tiles, want %d", c.name, len(list), c.tiles)
		}
		left := c.shape
		by := map[string]tile{}
		for _, tl := range list {
			w := tl.window
			if w.Width() > room.Width()+0.001 || w.Height() > room.Height()+0.001 {
				t.Errorf("%s, %s: %v x %v do not go on a sheet", c.name, tl.name, w.Width(), w.Height())
			}
			left = left.Minus(geom.Rect(w.Min, w.Max))
			by[tl.name] = tl
		}
		if left.Area() > 0 {
			t.Errorf("%s: %v mm2 are on no tile", c.name, left.Area())
		}
		joints := 0
		for _, tl := range list {
			for _, j := range tl.joints {
				joints++
				meets(t, c.name, c.shape, tl, by[j.to], j)
			}
		}
		if joints < 2*(len(list)-1) {
			t.Errorf("%s: %d tiles hold together by %d half joints", c.name, len(list), joints)
		}
	}
}

var opposite = map[string]string{"right": "left", "left": "right", "down": "up", "up": "down"}

// meets proves one side of a joint against the other.
func meets(t *testing.T, name string, shape geom.Region, a, b tile, j joint) {
	t.Helper()
	wide := min(a.window.Max.X, b.window.Max.X) - max(a.window.Min.X, b.window.Min.X)
	if j.side == "up" || j.side == "down" {
		wide = min(a.window.Max.Y, b.window.Max.Y) - max(a.window.Min.Y, b.window.Min.Y)
	}
	if math.Abs(float64(wide-12)) > 0.002 { // stated: 10 to 15
		t.Errorf("%s: %s and %s overlap by %v", name, a.name, b.name, wide)
	}
	for _, o := range b.joints {
		if o.to != a.name || o.side != opposite[j.side] {
			continue
		}
		if len(j.crosses) != 2 || fmt.Sprint(j.crosses) != fmt.Sprint(o.crosses) || j.under == o.under {
			t.Errorf("%s: crosses of %s-%s at %v, of %s-%s at %v", name, a.name, j.side, j.crosses, b.name, o.side, o.crosses)
		}
		for _, c := range j.crosses {
			at := drawing.Rect{Min: c, Max: c}.Grow(crossSize / 2)
			if !a.window.Holds(at) || !b.window.Holds(at) || !shape.Contains(c) {
				t.Errorf("%s: the cross %v of %s and %s is not on both", name, c, a.name, b.name)
			}
		}
		if apart := j.crosses[0].Sub(j.crosses[1]).Len(); apart < crossSize {
			t.Errorf("%s: crosses of %s only %v apart do not give a direction", name, a.name, apart)
		}
		return
	}
	t.Errorf("%s: %s-%s has no other side on %s", name, a.name, j.side, b.name)
}

// Columns are counted as in a table.
func TestColumnNames(t *testing.T) {
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA"} {
		if got := columnName(i); got != want {
			t.Errorf("column %d is %s, want %s", i, got, want)
		}
	}
}

// Tiles stand inside the room of their sheets and nowhere on each other, and
// strips fill a sheet before the next is begun.
func TestTilesArePacked(t *testing.T) {
	var list []*template
	for _, c := range shapes {
		room := templateRoom()
		list = append(list, &template{shape: c.shape, tiles: tiles(c.shape, geom.V(room.Width(), room.Height()))})
	}
	count := packTiles(list)
	by := map[int][]tile{}
	for _, tm := range list {
		for _, tl := range tm.tiles {
			by[tl.sheet] = append(by[tl.sheet], tl)
			if !templateRoom().Grow(0.01).Holds(tl.place) {
				t.Errorf("%s on sheet %d leaves its room: %v", tl.name, tl.sheet, tl.place)
			}
		}
	}
	for n, here := range by {
		if n < 1 || n > count {
			t.Errorf("sheet %d of %d", n, count)
		}
		for i, a := range here {
			for _, b := range here[:i] {
				if a.place.Meets(b.place) {
					t.Errorf("sheet %d: %s lies on %s", n, a.name, b.name)
				}
			}
		}
	}
	if len(by) != count {
		t.Errorf("%d sheets used of %d", len(by), count)
	}
	if n := packTiles(list[1:2]); n != 2 { // seven strips of 41, four of which go on 174
		t.Errorf("seven strips take %d sheets, want 2", n)
	}
	if count != packTiles(list) {
		t.Error("packed again, the tiles take another number of sheets")
	}
}

// What is clipped lies in the window and is as long as before where it lay
// inside already; lengths are worked out by hand.
func TestClipping(t *testing.T) {
	window := drawing.Box(0, 0, 100, 50)
	pen := drawing.Pen{Width: 0.2}
	cases := []struct {
		name   string
		item   drawing.Item
		pieces int
		length float64
	}{
		{"inside", drawing.Line(geom.V(10, 10), geom.V(40, 50), pen), 1, 50},
		{"on the border", drawing.Line(geom.V(0, 0), geom.V(100, 0), pen), 1, 100},
		{"across", drawing.Line(geom.V(-30, 25), geom.V(130, 25), pen), 1, 100},
		{"outside", drawing.Line(geom.V(-30, 60), geom.V(130, 60), pen), 0, 0},
		{"out and in", drawing.Polyline{Points: []geom.Vec{geom.V(10, 40), geom.V(10, 60), geom.V(20, 60), geom.V(20, 40)}, Pen: pen}, 2, 20},
		{"loop inside", drawing.Outline(drawing.Box(10, 10, 20, 20).Corners(), pen), 1, 60}, // its closing side is not a point
		{"loop cut", drawing.Outline(drawing.Box(90, 10, 20, 20).Corners(), pen), 2, 20 + 20},
		{"half a circle", drawing.Circle{Centre: geom.V(50, 0), Radius: 20, Pen: pen}, 1, 20 * math.Pi},
		{"quarter of an arc", drawing.Arc{Centre: geom.V(0, 0), Radius: 20, From: 0, Sweep: unit.Angle(math.Pi), Pen: pen}, 1, 10 * math.Pi},
	}
	for _, c := range cases {
		out := clipped([]drawing.Item{c.item}, window)
		var sum float64
		for _, it := range out {
			pts := it.(drawing.Polyline).Points
			for i := 1; i < len(pts); i++ {
				sum += float64(pts[i].Sub(pts[i-1]).Len())
			}
		}
		if len(out) != c.pieces || math.Abs(sum-c.length) > 0.05 {
			t.Errorf("%s: %d pieces of together %.3f, want %d of %.3f", c.name, len(out), sum, c.pieces, c.length)
		}
		if len(out) > 0 && !window.Grow(pen.Width).Holds(drawing.Bounds(out)) {
			t.Errorf("%s: leaves the window: %v", c.name, drawing.Bounds(out))
		}
	}
	whole := drawing.Circle{Centre: geom.V(50, 25), Radius: 20, Pen: pen}
	if out := clipped([]drawing.Item{whole}, window); len(out) != 1 || out[0] != drawing.Item(whole) {
		t.Errorf("a circle inside became %v", out)
	}
}
