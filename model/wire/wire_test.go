package wire

import (
	"math"
	"os"
	"slices"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/job"
	"slabwright/model/unit"
	"slabwright/presets"
)

// studio is the demo with its own wiring.
func studio(t *testing.T) (*model.Design, model.Wiring) {
	t.Helper()
	file := "../../presets/studio/job.yaml"
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	j, mistakes := job.Read(file, data, presets.All())
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	room, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range presets.All() {
		if p.Name == "studio" {
			d := p.Build(model.Site{Room: room, People: j.People, Offers: j.Offers, House: j.House, Wiring: j.Wiring}, j.Settings)
			d.Finish()
			return d, j.Wiring
		}
	}
	t.Fatal("no studio")
	return nil, model.Wiring{}
}

// TestDemoRuns: every cable of the demo has a way that keeps every rule, begins
// and ends at its devices, and is as long as its straight pieces less what the
// rounds of its bends save, with a loop that reaches the table rolled out.
func TestDemoRuns(t *testing.T) {
	d, w := studio(t)
	p := Of(d, w)
	if len(p.Lost) > 0 || len(p.Runs) != len(w.Cables)+len(w.Lights) {
		t.Fatalf("lost %v, %d runs", p.Lost, len(p.Runs))
	}
	for _, r := range p.Runs {
		if !r.Found || len(r.Breaks) > 0 || r.Radius < r.Wanted {
			t.Errorf("%s: found %v, breaks %v, bends %v of %v", r.Cable.Name, r.Found, r.Breaks, r.Radius, r.Wanted)
			continue
		}
		var straight, saved unit.Length
		for i := range r.Pieces {
			straight += r.Points[i+1].Sub(r.Points[i]).Len()
			if i > 0 {
				u, v := r.Points[i].Sub(r.Points[i-1]).Unit(), r.Points[i+1].Sub(r.Points[i]).Unit()
				a := math.Atan2(float64(u.Cross(v).Len()), u.Dot(v))
				saved += r.Radius * unit.Length(2*math.Tan(a/2)-a)
			}
			if r.Pieces[i].Kind == MovingLoop {
				straight += r.Loop - r.Points[i+1].Sub(r.Points[i]).Len()
			}
		}
		// Where a short piece in the open is shorter than its bends, the cable
		// bulges and is a little longer.
		if off := r.Length - (straight - saved); off < -1e-6 || off > 120 {
			t.Errorf("%s: %.2f mm, by its pieces %.2f", r.Cable.Name, float64(r.Length), float64(straight-saved))
		}
		if r.Needed < r.Length+300-1e-9 || r.Needed < r.Length*1.1-1e-6 {
			t.Errorf("%s: %v for a way of %v", r.Cable.Name, r.Needed, r.Length)
		}
	}
	fan := p.Runs[slices.IndexFunc(p.Runs, func(r Run) bool { return r.Cable.Name == "lead of the fan" })]
	table := d.Part("roll-out table")
	out := tableInlet(table, table.RollOut.Travel)
	if reach := out.Sub(fan.Points[len(fan.Points)-2]).Len(); fan.Loop < reach {
		t.Errorf("the loop of %v does not reach the table, %v away when it is rolled out", fan.Loop, reach)
	}
}

// TestDemoLight by hand: the groove runs from 40 mm from one end of the shelf
// to 40 mm from the other; 10 mm are lost at each end; 9.6 W/m at 24 V.
func TestDemoLight(t *testing.T) {
	d, w := studio(t)
	p := Of(d, w)
	l := p.Lights[0]
	groove := l.Groove.Path[1].X - l.Groove.Path[0].X
	if math.Abs(float64(l.Room-groove+20)) > 1e-9 || l.Pieces != int(math.Floor(float64(groove-20)/50)) || l.Run != unit.Length(50*l.Pieces) {
		t.Errorf("%+v in a groove of %v", l, groove)
	}
	if want := 9.6 * float64(l.Run) / 1000; math.Abs(float64(l.Power)-want) > 1e-9 || math.Abs(float64(l.Current)-want/24) > 1e-9 {
		t.Errorf("%v W, %v A", l.Power, l.Current)
	}
	// Feed there and back at 40 degrees C, and half of the current over the strip.
	want := 2*float64(l.Feeds[0])/1000*0.039*1.0786*float64(l.Current) + 0.09*float64(l.Run)/1000*float64(l.Current)/2
	if l.Wire.SquareMM != 0.5 || math.Abs(float64(l.Drop)-want) > 1e-9 {
		t.Errorf("drop %v V over %g mm2, want %.5f", l.Drop, l.Wire.SquareMM, want)
	}
	if p.Supplies[0].Rated != 30 { // 17.3 W / 0.8 = 21.6 W
		t.Errorf("supply %+v", p.Supplies[0])
	}
}

// TestClassesKeepApart: data gives way to mains in a groove, and what cannot
// give way says so.
func TestClassesKeepApart(t *testing.T) {
	d, w := studio(t)
	w.Devices = append(w.Devices, model.Device{Name: "left hub", Under: "worktop", X: 480, Back: 110}, model.Device{Name: "right hub", Under: "worktop", X: 2200, Back: 110})
	w.Cables = append(w.Cables, model.Cable{Name: "line", From: "left hub", To: "right hub", Class: model.Data, Dia: 6})
	p := Of(d, w)
	line := p.Runs[len(w.Cables)-1]
	for _, q := range line.Pieces {
		if q.Kind == InGroove {
			t.Error("the data line lies in the groove of the mains cable")
		}
	}
	if !line.Found || len(line.Breaks) > 0 {
		t.Fatalf("%+v", line)
	}
	alone := w
	alone.Cables = w.Cables[len(w.Cables)-1:]
	short := Of(d, alone).Runs[0]
	if !slices.ContainsFunc(short.Pieces, func(q Piece) bool { return q.Kind == InGroove }) || short.Length >= line.Length {
		t.Errorf("alone the line takes %v, beside mains %v: want the shorter way through the groove", short.Length, line.Length)
	}
}

// TestNothingCrossesAWall: all points of all ways lie in the room, on walls or
// within 100 mm of a slab's outline.
func TestNothingCrossesAWall(t *testing.T) {
	d, w := studio(t)
	room := d.Room.Plan(755).Grow(1, 0.1)
	for _, r := range Of(d, w).Runs {
		for i := range r.Pieces {
			for k := range 11 {
				q := r.Points[i].Add(r.Points[i+1].Sub(r.Points[i]).Mul(float64(k) / 10))
				if !room.Contains(geom.Vec{X: q.X, Y: q.Y}) {
					t.Errorf("%s leaves the room at %v", r.Cable.Name, q)
				}
			}
		}
	}
}

// TestDimmedLight by hand: the lead to the dimmer takes all of the current and
// comes before the feed.
func TestDimmedLight(t *testing.T) {
	d, w := studio(t)
	w.Devices = append(w.Devices, model.Device{Name: "knob", On: "worktop", X: 900, Back: 200})
	w.Lights[0].Dimmer = "knob"
	p := Of(d, w)
	l := p.Lights[0]
	if l.Dimmer == nil || !l.Found || l.Dimmer.Rated != 2 {
		t.Fatalf("%+v", l)
	}
	lead := p.Runs[len(w.Cables)]
	if !lead.ToDimmer || lead.Cable.From != "light supply" || lead.Cable.To != "knob" || l.Dimmer.Lead != lead.Needed || lead.Needed <= 0 {
		t.Errorf("lead %+v for %+v", lead, *l.Dimmer)
	}
	if feed := p.Runs[len(w.Cables)+1]; feed.Cable.From != "knob" || feed.Needed != l.Feeds[0] {
		t.Errorf("feed %+v", feed)
	}
	metres := float64(l.Dimmer.Lead+l.Feeds[0]) / 1000
	want := 2*metres*0.039*1.0786*float64(l.Current) + 0.09*float64(l.Run)/1000*float64(l.Current)/2
	if l.Wire.SquareMM != 0.5 || math.Abs(float64(l.Drop)-want) > 1e-9 {
		t.Errorf("drop %v V over %g mm2, want %.5f", l.Drop, l.Wire.SquareMM, want)
	}
}

// TestOpening by hand: a slot of 80 x 100 at the back of a bench 4 mm before its
// wall, over a leg of 50, leaves 100 - 46 behind the leg.
func TestOpening(t *testing.T) {
	d, _ := studio(t)
	p := d.Part("worktop")
	f := model.Feature{Kind: model.CutOut, For: model.CableWork, Outline: geom.Rect(geom.V(300, -100), geom.V(380, 0))}
	o := OpeningOf(d, p, f)
	// The wall behind is askew: the leg runs 3 mm out of line over 900.
	if math.Abs(float64(o.Long-80)) > 1e-6 || math.Abs(float64(o.Deep-54)) > 3 || math.Abs(float64(o.At.X-340)) > 1e-6 {
		t.Errorf("%+v", o)
	}
	f.Outline = geom.Rect(geom.V(300, -30), geom.V(380, 0))
	if o := OpeningOf(d, p, f); o.Deep > 8 {
		t.Errorf("over the leg %+v is open", o)
	}
}
