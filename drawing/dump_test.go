package drawing_test

import (
	"flag"
	"os"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

var update = flag.Bool("update", false, "write the golden files anew")

// everything is a sheet with each kind of item once.
func everything() drawing.Sheet {
	g := drawing.Normal
	box := drawing.Box(40, 100, 60, 20)
	return drawing.Sheet{
		Name: "02-slab", Title: "Slab \"A\"", Size: drawing.A4, Scale: "1:10", Number: 2, Of: 5,
		Items: []drawing.Item{
			drawing.Group{ID: "slab", Title: "Slab", Items: []drawing.Item{
				drawing.Outline(box.Corners(), g.Outline()),
				drawing.Hatch{Loops: [][]geom.Vec{box.Corners()}, Pattern: drawing.Pattern{Material: drawing.EndGrain, Turn: 90 * unit.Degree}},
				drawing.Area{Loops: [][]geom.Vec{drawing.Box(50, 105, 5, 5).Corners()}, Ink: drawing.Red},
				drawing.Circle{Centre: geom.V(70, 110), Radius: 2.5, Pen: g.Outline()},
				drawing.Arc{Centre: geom.V(70, 110), Radius: 4, From: 0, Sweep: 90 * unit.Degree, Pen: g.Adjacent()},
			}},
			drawing.Line(geom.V(40, 88), geom.V(100, 88), g.Fine()),
			drawing.Mark{Kind: drawing.Arrow, At: geom.V(40, 88), Dir: geom.V(-3, 0)},
			drawing.Write(geom.V(70, 89), "600 ±0.5", drawing.Standard, drawing.Centre),
			drawing.Write(geom.V(30.0004, -0.0001), "turned", drawing.Large, drawing.TopRight).Along(90 * unit.Degree).Strong(),
		},
	}
}

func TestDump(t *testing.T) {
	const path = "testdata/everything.txt"
	got := drawing.Dump(everything())
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestBoundsAndMove(t *testing.T) {
	arc := drawing.Arc{Centre: geom.V(10, 10), Radius: 5, From: 45 * unit.Degree, Sweep: 90 * unit.Degree, Pen: drawing.Pen{Width: 0.5}}
	b := drawing.Bounds([]drawing.Item{arc})
	if top := b.Max.Y; top != 15.25 {
		t.Errorf("the arc reaches up to %v, want 15.25", top)
	}
	if h := b.Height(); h < 1.9 || h > 2.1 { // 5 - 5 cos 45 degrees, and the width of the line
		t.Errorf("the arc is %v high", h)
	}
	if !drawing.Bounds(nil).Empty() {
		t.Error("nothing has bounds")
	}
	items := everything().Items
	by := geom.V(3, 4)
	was, is := drawing.Bounds(items), drawing.Bounds(drawing.Move(items, by))
	if is.Min.Sub(was.Min).Sub(by).Len() > 1e-9 || is.Max.Sub(was.Max).Sub(by).Len() > 1e-9 {
		t.Errorf("moved from %v to %v", was, is)
	}
}
