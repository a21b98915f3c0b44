package cmd

import (
	"testing"

	"slabwright/drawing/sheet"
	"slabwright/model"
)

// TestSheetsOfJoinedSlabs: the bores of dowels and the screws of plates stand on the
// sheets of both slabs, which can still be read.
func TestSheetsOfJoinedSlabs(t *testing.T) {
	for _, c := range []struct{ preset, joint, unit string }{{"studio", "dowels", "mm"}, {"corner", "plates", "in"}} {
		line, b := presetBuild(t, presetNamed(t, c.preset), "A3")
		b.Job.Settings["joint"] = model.Setting{Text: c.joint}
		b.Job.Show.Unit = c.unit
		joined, ok := line.design(b.Job, b.Room)
		if !ok || len(joined.Design.Joints[0].Places) < 2 {
			t.Fatalf("%s: %d joints", c.preset, len(joined.Design.Joints))
		}
		sheets, err := sheet.Set(joined)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range sheets {
			canBeRead(t, s)
		}
	}
}
