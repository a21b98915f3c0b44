package sheet

import (
	"fmt"
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Flags can be read wherever their places are: beyond the view, below a text
// and so near to each other that the words of one would cover the next.
func TestFlagsFindRoom(t *testing.T) {
	m := newMaker(roomBuild(t, "alcove", "A3", nil))
	body := drawing.Box(60, 60, 240, 120)
	pl := dim.Plate{Scale: drawing.Scale{Paper: 1, Real: 1}, Body: body}
	drawn := []drawing.Item{drawing.Write(body.Centre(), "a text that stands where something is wrong", drawing.Standard, drawing.Middle)}
	list := []flag{{"1", "under the text", body.Centre()}, {"2", "out of the view", geom.V(150, -900)}}
	for i := range 16 {
		list = append(list, flag{fmt.Sprint(i + 3), "one of many beside each other, in many words", geom.V(80+unit.Length(i%4)*8, 80+unit.Length(i/4)*8)})
	}
	items, lost := m.flags(pl, drawn, body.Grow(40), list)
	if lost > 0 || len(items) != len(list) {
		t.Errorf("%d flags for %d places, %d of them lost", len(items), len(list), lost)
	}
	s := drawing.Sheet{Size: drawing.A3, Items: append(drawn, items...)}
	for _, c := range drawing.Overlaps(s) {
		t.Error(c)
	}
	if b := drawing.Bounds(s.Items); !body.Grow(40).Holds(b) {
		t.Errorf("flags leave their frame: %v", b)
	}
}
