package step

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slabwright/mesh"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/presets"
	"slabwright/testdata/judge"
	"slabwright/testdata/sample"
)

// one is a solid with what must come out of it.
type one struct {
	name              string
	solid             geom.Solid
	cylinders, cones  int // whole ones and parts
	circles, ellipses int
	volume            float64 // by a closed form; 0 if there is none
}

// shapes have volumes by school formulas, and by EN 10056-1 the section of an
// angle: t(2b-t) + (1-pi/4)(r1^2 - 2 r2^2).
func shapes() []one {
	section := func(b, t, root, toe float64) float64 {
		return t*(2*b-t) + (1-math.Pi/4)*(root*root-2*toe*toe)
	}
	plate := geom.Slab{Top: 40, Outline: geom.EdgesOf(geom.Rect(geom.V(0, 0), geom.V(600, 300))), Cuts: []geom.SlabCut{
		{Name: "cable", Region: geom.Circle(geom.V(150, 150), 30, 0.05), From: geom.CutThrough},
		{Name: "pilot", Region: geom.Circle(geom.V(400, 150), 2.25, 0.05), From: geom.CutFromUnder, Depth: 25},
	}}.Solid()
	slotted := geom.Slab{Top: 40, Outline: geom.EdgesOf(geom.Rect(geom.V(0, 0), geom.V(600, 300))), Cuts: []geom.SlabCut{
		{Name: "slot", Region: geom.Slot(geom.V(100, 100), geom.V(300, 180), 50, 0.05), From: geom.CutThrough},
	}}.Solid()
	grooved := geom.Slab{Top: 40, Outline: geom.EdgesOf(geom.Rect(geom.V(0, 0), geom.V(600, 300))), Cuts: []geom.SlabCut{
		{Name: "cable", Region: geom.Circle(geom.V(150, 150), 30, 0.05), From: geom.CutThrough},
		{Name: "run", Region: geom.Rect(geom.V(150, 140), geom.V(450, 160)), From: geom.CutFromUnder, Depth: 18},
	}}.Solid()
	mouth := 10*math.Sqrt(30*30-10*10) + 30*30*math.Asin(10.0/30) // of the groove within the hole
	bar := geom.AngleBar{SeatWidth: 60, WallWidth: 60, Thickness: 6, Root: 8, Toe: 4, Length: 1000, Holes: []geom.BarHole{
		{Name: "S1", Leg: geom.SeatLeg, X: 200, FromHeel: 35, Dia: 6},
		{Name: "S2", Leg: geom.SeatLeg, X: 500, FromHeel: 35, Dia: 6, Slot: 10},
		{Name: "W1", Leg: geom.WallLeg, X: 300, FromHeel: 35, Dia: 9, SinkDia: 15},
	}}
	mitred := geom.AngleBar{SeatWidth: 60, WallWidth: 60, Thickness: 6, Root: 8, Toe: 4, Length: 1000,
		Start: geom.BarEnd{Plan: -45 * unit.Degree}, End: geom.BarEnd{Plan: 3 * unit.Degree, Slope: -2 * unit.Degree}}
	a, b := geom.Vec3{X: 10, Y: 20, Z: 900}, geom.Vec3{X: 40, Y: -220, Z: 905}
	return []one{
		{"plate", plate, 2, 0, 4, 0, 600*300*40 - math.Pi*30*30*40 - math.Pi*2.25*2.25*25},
		{"slotted", slotted, 2, 0, 4, 0, 600*300*40 - (50*math.Hypot(200, 80)+math.Pi*25*25)*40},
		{"grooved", grooved, 2, 0, 4, 0, 600*300*40 - math.Pi*30*30*40 - (300*20-mouth)*18},
		{"bar", bar.Solid(), 3 + 1 + 2 + 1, 1, 6 + 2 + 4 + 3, 0, section(60, 6, 8, 4)*1000 - math.Pi*9*6 - (math.Pi*9+60)*6 -
			math.Pi*4.5*4.5*3 - math.Pi/3*3*(4.5*4.5+4.5*7.5+7.5*7.5)},
		{"mitred", mitred.Solid(), 3, 0, 0, 6, 0},
		{"rod", geom.Rod(a, b, 8, 0.02), 1, 0, 2, 0, math.Pi * 64 * float64(b.Sub(a).Len())},
		{"natural", sample.Slab(120, 7, 1800), 7, 0, 14, 0, 0},
	}
}

// TestExactSolids: holes, rods and the rounds of rolled angles are cylinders and
// cones, and volumes are those of the closed forms; Open CASCADE reads each as
// one valid solid of the same volume.
func TestExactSolids(t *testing.T) {
	for _, c := range shapes() {
		t.Run(c.name, func(t *testing.T) {
			text, volume := write(t, c.name, c.solid)
			for keyword, want := range map[string]int{"CYLINDRICAL_SURFACE": c.cylinders, "CONICAL_SURFACE": c.cones, "CIRCLE": c.circles, "ELLIPSE": c.ellipses} {
				if got := strings.Count(text, "="+keyword+"("); got != want {
					t.Errorf("%d %s, want %d", got, keyword, want)
				}
			}
			// The corners of slots lie on the kernel's grid of a micrometre.
			if off := math.Abs(volume/c.volume - 1); c.volume > 0 && off > 1e-7 {
				t.Errorf("volume %.3f mm3, by the closed form %.3f", volume, c.volume)
			}
			if off := math.Abs(volume/float64(c.solid.Volume()) - 1); off > 2e-4 { // chords of 0.05 mm
				t.Errorf("volume %.3f mm3, with facets %.3f", volume, float64(c.solid.Volume()))
			}
		})
	}
	t.Run("read back", func(t *testing.T) {
		b := batch{t: t, dir: t.TempDir()}
		for _, c := range shapes() {
			b.add(c.name, c.solid)
		}
		b.compare()
	})
}

// TestPresetSolids: Open CASCADE reads every part of every preset as valid
// solids, one for each body, with the volume to 1e-8.
func TestPresetSolids(t *testing.T) {
	b := batch{t: t, dir: t.TempDir()}
	for _, p := range presets.All() {
		for _, part := range sample.Parts(t, "../..", p) {
			var solids []geom.Solid
			for _, body := range part.Bodies {
				solids = append(solids, body.Solid)
				for _, left := range facets(t, body.Solid) {
					t.Errorf("%s, %s: %s is left as facets", p.Name, part.ID, left)
				}
			}
			b.add(p.Name+"-"+strings.ReplaceAll(part.ID, " ", "-"), solids...)
		}
	}
	b.compare()
}

// facets names the rounds of which facets are left: narrow ones, for the
// straight sides of slots are flat. Natural edges are no rounds.
func facets(t *testing.T, s geom.Solid) []string {
	t.Helper()
	h, err := hullOf(s)
	if err != nil {
		t.Fatal(err)
	}
	var left []string
	for i, f := range s.Faces() {
		if !f.Curved || strings.HasPrefix(f.Surface, "edge ") || h.flats[i].gone {
			continue
		}
		sides := h.flats[i].loops[0].sides()
		for _, k := range [2]int{0, 1} {
			if h.nodes[sides[k][0]].Sub(h.nodes[sides[k][1]]).Len() < 3.9 { // the shortest straight side of a slot is 4 long
				left = append(left, f.Surface)
			}
		}
	}
	return left
}

// batch is files that Open CASCADE reads in one run.
type batch struct {
	t       *testing.T
	dir     string
	paths   []string
	volumes []float64
	count   []int
}

func (b *batch) add(name string, solids ...geom.Solid) {
	text, volume := write(b.t, name, solids...)
	path := filepath.Join(b.dir, name+".step")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		b.t.Fatal(err)
	}
	b.paths, b.volumes, b.count = append(b.paths, path), append(b.volumes, volume), append(b.count, len(solids))
}

func (b *batch) compare() {
	for i, s := range judge.ReadSTEP(b.t, b.paths...) {
		if off := math.Abs(s.Volume/b.volumes[i] - 1); !(off < 1e-8) || s.Count != b.count[i] || !s.Valid {
			b.t.Errorf("%s: Open CASCADE finds %+v, want %d solids of %.6f mm3 (off by %.1e)", filepath.Base(b.paths[i]), s, b.count[i], b.volumes[i], off)
		}
	}
}

// write gives the file and the exact volume of what stands in it.
func write(t *testing.T, name string, solids ...geom.Solid) (string, float64) {
	t.Helper()
	p := Part{Name: name}
	var volume float64
	for i, s := range solids {
		if s.Err() != nil {
			t.Fatal(s.Err())
		}
		h, err := hullOf(s)
		if err != nil {
			t.Fatal(err)
		}
		volume += h.volume()
		p.Bodies = append(p.Bodies, Body{Name: fmt.Sprintf("%s %d", name, i+1), Color: mesh.Color{R: 90, G: 100, B: 110}, Solid: s})
	}
	var first, second bytes.Buffer
	if err := Write(&first, p); err != nil {
		t.Fatal(err)
	}
	if err := Write(&second, p); err != nil || !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Errorf("%s: not the same bytes twice (%v)", name, err)
	}
	return first.String(), volume
}

// TestWords: names keep their letters, by the rules of ISO 10303-21 for texts.
func TestWords(t *testing.T) {
	for in, want := range map[string]string{
		"Ablage":     "'Ablage'",
		"it's":       "'it''s'",
		`a\b`:        `'a\\b'`,
		"Größe Ø5":   `'Gr\X2\00F6\X0\\X2\00DF\X0\e \X2\00D8\X0\5'`,
		"\U0001F600": `'\X4\0001F600\X0\'`,
	} {
		if got := quoted(in); got != want {
			t.Errorf("%q is written %s, want %s", in, got, want)
		}
	}
	for in, want := range map[float64]string{0: "0.", 1: "1.", -2.5: "-2.5", 1e-7: "1.E-07", 1234567.125: "1234567.125"} {
		if got := real(in); got != want {
			t.Errorf("%g is written %s, want %s", in, got, want)
		}
	}
}

// TestFaultsAreTold: nothing is written of what is no solid.
func TestFaultsAreTold(t *testing.T) {
	var b bytes.Buffer
	for _, p := range []Part{{Name: "empty"}, {Name: "faulty", Bodies: []Body{{Name: "x", Solid: geom.AngleBar{}.Solid()}}}} {
		if err := Write(&b, p); err == nil || b.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes", p.Name, err, b.Len())
		}
	}
}
