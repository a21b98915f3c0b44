package cmd

import (
	"regexp"
	"testing"

	"slabwright/drawing/sheet"
	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/geom"
	"slabwright/model/report"
	"slabwright/model/stock"
	"slabwright/model/unit"
	"slabwright/presets"
	"slabwright/testdata/judge"
)

// A row of the table of grooves and pockets: what and name, face, number, x from B, y
// from A, width where it has one, depth.
var printedWork = regexp.MustCompile(`(?m)\b(groove|rebate of|pocket) (\S+(?: \S+)*?) +(top|underside) +(\d+) +(-?[\d.]+) +(-?[\d.]+)(?: +([\d.]+))? +([\d.]+)\b`)

// rebuilt is a groove, a rebate or a pocket as its rows say it.
type rebuilt struct {
	name       string
	kind       string
	path       []geom.Vec
	wide, deep unit.Length
	region     geom.Region
}

// printedWorks reads the works of one face.
func printedWorks(t *testing.T, text string, face model.Face) []rebuilt {
	var out []rebuilt
	for _, r := range printedWork.FindAllStringSubmatch(text, -1) {
		if r[3] != string(face) {
			continue
		}
		if r[4] == "1" {
			out = append(out, rebuilt{kind: r[1], name: r[2]})
		}
		if len(out) == 0 || out[len(out)-1].name != r[2] || out[len(out)-1].kind != r[1] {
			t.Fatalf("row %q follows no first row", r[0])
		}
		b := &out[len(out)-1]
		b.path = append(b.path, geom.V(mm(t, r[5]), -mm(t, r[6])))
		if b.deep = mm(t, r[8]); r[7] != "" {
			b.wide = mm(t, r[7])
		}
	}
	for i := range out {
		b := &out[i]
		if b.kind == "pocket" {
			b.region = geom.Rect(geom.V(b.path[0].X, b.path[1].Y), geom.V(b.path[1].X, b.path[0].Y))
		} else {
			b.region = geom.Strip(b.path, b.wide, 0.01)
		}
	}
	return out
}

// rebuildWorks makes the grooves, rebates and pockets of both faces from the
// tables and lays them over sections of the solid just above and below the
// bottom of each; it gives how many there are.
func rebuildWorks(t *testing.T, p *model.Part, text string) int {
	t.Helper()
	n, made := 0, 0
	for _, face := range []model.Face{model.TopFace, model.UnderFace} {
		works := printedWorks(t, text, face)
		n += len(works)
		for _, w := range works {
			for _, off := range []unit.Length{-0.1, 0.1} {
				compareWork(t, p, face, works, w, w.deep+off)
			}
		}
	}
	for _, f := range p.Slab.Features {
		switch {
		case f.Kind == model.Groove && f.Lid != (model.Lid{}):
			made += 2
		case f.Kind == model.Groove, f.Kind == model.Pocket:
			made++
		}
	}
	if n != made {
		t.Errorf("%s: %d grooves, rebates and pockets printed, %d made", p.ID, n, made)
	}
	return n
}

// compareWork compares what is gone near a work at a depth below its face with all
// that the tables take away there.
func compareWork(t *testing.T, p *model.Part, face model.Face, works []rebuilt, w rebuilt, depth unit.Length) {
	t.Helper()
	var told geom.Region
	for _, o := range works {
		if o.deep >= depth {
			told = told.Union(o.region)
		}
	}
	near := w.region.Grow(1.5, 0.01)
	for _, f := range p.Slab.Features { // other work is told elsewhere
		if f.Kind == model.Through || f.Kind == model.CutOut || f.Kind == model.Pilot || f.Kind == model.Bore || f.Face != face {
			near = near.Minus(f.Outline.Grow(0.2, 0.01))
		}
	}
	level := depth
	if face == model.TopFace {
		level = p.Slab.Thickness - depth
	}
	gone, told := near.Minus(p.Slab.Own.At(level)), told.Intersect(near)
	const slack = 2 * rounding
	inner := w.region.Grow(1, 0.01) // what the cut at the border of near makes does not count
	more, less := gone.Minus(told.Grow(slack, 0.01)).Intersect(inner), told.Minus(gone.Grow(slack, 0.01)).Intersect(inner)
	if off := float64(more.Area() + less.Area()); off > 0.5 {
		t.Errorf("%s: %s %s of the %s face, %.1f below it: %.1f mm² differ between print and solid by more than rounding", p.ID, w.kind, w.name, face, float64(depth), off)
	}
}

// worksBuild is the alcove with a shelf in it that is grooved and pocketed from both
// faces and with bars whose ends are mitred.
func worksBuild(t *testing.T) report.Build {
	t.Helper()
	_, b := presetBuild(t, presets.Alcove, "A3")
	d := presets.Alcove.Build(model.Site{Room: b.Room, People: b.Job.People, Offers: b.Job.Offers, House: b.Job.House, Wiring: b.Job.Wiring}, b.Job.Settings)
	r := d.Room
	d.Add("tool shelf", model.Shelf(stock.Oak, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(4, 5).Depth(300).UndersideAt(2000).
		Pocket("tray", model.TopFace, model.At{X: 120, Back: 60}, 180.5, 90, 15).
		Pocket("bit box", model.UnderFace, model.At{X: 700, Back: 150}, 77.3, 60, 12.5).
		Groove("pencil run", model.TopFace, 12, 8, model.At{X: 500, Back: 80}, model.At{X: 900, Back: 120.4}, model.At{X: 1200, Back: 90}).
		Groove("light run", model.UnderFace, 18, 14, model.At{X: 60, Back: 240}, model.At{X: 1350, Back: 240}).Lidded(30, 4))
	d.Add("tool angle", model.Angle(stock.Angles()[0]).Along(r.Wall("back")).Under("tool shelf").ClearOf(3).
		Anchored(model.Anchors{Hole: 9, Pitch: 300, End: 60}).ScrewedUp(model.Screws{Hole: 6, Pitch: 250, End: 60, Pilot: 4, Into: 25}))
	if a := d.Part("tool angle"); a == nil || a.Angle == nil {
		t.Fatal("no angle below the tool shelf")
	}
	d.Finish()
	mitred(d.Part("tool angle"))
	found := check.Run(check.Site{Job: b.Job, Room: r, Design: d})
	return report.Build{Job: b.Job, Room: r, Design: d, Findings: found, Shopping: b.Shopping}
}

// mitred cuts the ends of a bar off square: no piece of the vocabulary asks for it
// yet, the sheets and the solid know it.
func mitred(p *model.Part) {
	a, s := p.Angle, p.Angle.Section
	a.Left.Mitre, a.Right.Mitre = 12*unit.Degree, -17.3*unit.Degree
	bar := geom.AngleBar{SeatWidth: s.Leg, WallWidth: s.Leg, Thickness: s.Thickness, Root: s.Root, Toe: s.Toe, Length: a.Length, Chord: 0.01,
		Start: geom.BarEnd{Plan: a.Left.Mitre}, End: geom.BarEnd{Plan: a.Right.Mitre}}
	for _, h := range a.Holes {
		leg := geom.SeatLeg
		if h.Leg == model.WallLeg {
			leg = geom.WallLeg
		}
		bar.Holes = append(bar.Holes, geom.BarHole{Name: h.Name, Leg: leg, X: h.X, FromHeel: h.FromHeel, Dia: h.Dia, Slot: h.Slot, Along: h.Along, SinkDia: h.Sink})
	}
	p.Bodies[0].Solid = bar.Solid().Place(a.Pose())
}

// TestWorkRebuiltFromPrint: grooves with turns, rebates for lids and pockets, from both
// faces, and bars with mitred ends, made again from what poppler reads alone.
func TestWorkRebuiltFromPrint(t *testing.T) {
	judge.Need(t, "pdftotext")
	b := worksBuild(t)
	sheets, err := sheet.Set(b)
	if err != nil {
		t.Fatal(err)
	}
	shelf, bar := b.Design.Part("tool shelf"), b.Design.Part("tool angle")
	if n := rebuildWorks(t, shelf, printed(t, sheets, "slab-"+fileStem(shelf.ID))); n != 5 {
		t.Errorf("%d works rebuilt", n)
	}
	rebuildAngle(t, bar, printed(t, sheets, "angle-"+fileStem(bar.ID)))
}
