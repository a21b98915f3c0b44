package cmd

import (
	"regexp"
	"strings"
	"testing"

	"slabwright/drawing/sheet"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/presets"
	"slabwright/testdata/judge"
)

var printedBatten = regexp.MustCompile(`section +([\d.]+) out from the wall, ([\d.]+) high`)

// TestCleatsRebuiltFromPrint: top and face of every cleat, built again from what
// poppler reads on its sheet, lie over those of its solid.
func TestCleatsRebuiltFromPrint(t *testing.T) {
	judge.Need(t, "pdftotext")
	_, b := presetBuild(t, presets.Alcove, "A3")
	sheets, err := sheet.Set(b)
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, p := range b.Design.Parts {
		if p.Cleat != nil && b.Design.Alike(p)[0] == p {
			seen++
			rebuildCleat(t, p, printed(t, sheets, "cleat-"+fileStem(p.ID)))
		}
	}
	if seen < 3 {
		t.Errorf("only %d cleats rebuilt", seen)
	}
}

func rebuildCleat(t *testing.T, p *model.Part, text string) {
	section, length := printedBatten.FindStringSubmatch(text), printedLength.FindStringSubmatch(text)
	if section == nil || length == nil || !strings.Contains(text, "both sawn square") {
		t.Fatalf("%s: section, length or ends not printed", p.ID)
	}
	long := mm(t, length[1])
	sides := map[string]geom.Region{"W": geom.Rect(geom.V(0, -mm(t, section[2])), geom.V(long, 0)), "S": geom.Rect(geom.V(0, -mm(t, section[1])), geom.V(long, 0))}
	seen := map[string]bool{}
	for _, h := range printedHole.FindAllStringSubmatch(text, -1) {
		if seen[h[1]] {
			continue
		}
		seen[h[1]] = true
		sides[h[1][:1]] = sides[h[1][:1]].Minus(printedShape(t, h))
	}
	if len(seen) != len(p.Cleat.Holes) {
		t.Errorf("%s: %d holes printed, %d drilled", p.ID, len(seen), len(p.Cleat.Holes))
	}
	top, face := ownSides(p)
	overlaid(t, p.ID+", top", sides["S"], top)
	overlaid(t, p.ID+", face", sides["W"], face)
}

// ownSides are the top and the face to the room of a bracket's solid, in its own axes:
// y from the wall, and from the top.
func ownSides(p *model.Part) (top, face geom.Region) {
	pose := p.Bracket().Pose()
	for _, f := range p.Bodies[0].Solid.Faces() {
		n := f.Normal.Flat().Turn(-pose.Turn).Up(f.Normal.Z)
		flat := func(v geom.Vec3) geom.Vec { return pose.Unplan(v.Flat()) }
		to := &top
		switch {
		case n.Z > 0.99:
		case n.Y < -0.99 && !f.Curved:
			to = &face
			flat = func(v geom.Vec3) geom.Vec { return geom.V(pose.Unplan(v.Flat()).X, v.Z-pose.At.Z) }
		default:
			continue
		}
		var region geom.Region
		for i, loop := range f.Loops {
			var pts []geom.Vec
			for _, v := range loop {
				pts = append(pts, flat(v))
			}
			if i == 0 {
				region = geom.Polygon(pts...)
			} else {
				region = region.Minus(geom.Polygon(pts...))
			}
		}
		*to = to.Union(region)
	}
	return top, face
}
