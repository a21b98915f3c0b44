package geom

import (
	"bufio"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"

	"slabwright/model/unit"
)

// bar60 is L60x60x6 with the radii of EN 10056-1, a metre long.
func bar60() AngleBar {
	return AngleBar{SeatWidth: 60, WallWidth: 60, Thickness: 6, Root: 8, Toe: 4, Length: 1000}
}

// Area and mass of the rolled sections; source in the table.
func TestAngleSections(t *testing.T) {
	file, err := os.Open("testdata/angles.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	const steel unit.Density = 7850 // kg/m3, EN 1993-1-1
	rows := 0
	for lines := bufio.NewScanner(file); lines.Scan(); {
		if strings.HasPrefix(lines.Text(), "#") || strings.HasPrefix(lines.Text(), "name") {
			continue
		}
		cells := strings.Split(lines.Text(), ",")
		var n [6]float64
		for i := range n {
			if n[i], err = strconv.ParseFloat(cells[i+1], 64); err != nil {
				t.Fatal(err)
			}
		}
		b, th, r1, r2 := n[0], n[1], n[2], n[3]
		bar := AngleBar{SeatWidth: unit.Length(b), WallWidth: unit.Length(b), Thickness: unit.Length(th),
			Root: unit.Length(r1), Toe: unit.Length(r2), Length: 1000, Chord: 0.01}
		solid := bar.Solid()
		closed(t, solid)
		exact := th*(2*b-th) + (1-math.Pi/4)*(r1*r1-2*r2*r2)
		near(t, cells[0]+" area by formula", float64(bar.SectionArea()), exact, 1e-3*exact)
		near(t, cells[0]+" area of the table", float64(bar.SectionArea())/100, n[5], 0.005*n[5])
		near(t, cells[0]+" mass of the table", float64(steel.Mass(solid.Volume())), n[4], 0.005*n[4])
		rows++
	}
	if rows < 8 {
		t.Errorf("only %d sections read", rows)
	}
}

func TestAngleByHand(t *testing.T) {
	sharp := AngleBar{SeatWidth: 60, WallWidth: 40, Thickness: 6, Length: 1000}
	area := 60.*6 + 34*6
	for _, c := range []struct {
		name   string
		change func(b *AngleBar)
		volume float64
		box    Box
	}{
		{"leg down", func(b *AngleBar) {}, area * 1000, Box{Vec3{0, -60, -40}, Vec3{1000, 0, 0}}},
		{"leg up", func(b *AngleBar) { b.LegUp = true }, area * 1000, Box{Vec3{0, -60, -6}, Vec3{1000, 0, 34}}},
		{"room left", func(b *AngleBar) { b.RoomLeft = true }, area * 1000, Box{Vec3{0, 0, -40}, Vec3{1000, 60, 0}}},
		// A 45 degree mitre takes a wedge of half the leg's width off the seat leg
		// and half the thickness off the wall leg.
		{"mitre", func(b *AngleBar) { b.End.Plan = -45 * unit.Degree }, area*1000 - 60*6*30 - 34*6*3,
			Box{Vec3{0, -60, -40}, Vec3{1000, 0, 0}}},
		{"longer toe", func(b *AngleBar) { b.Start.Plan = 45 * unit.Degree }, area*1000 + 60*6*30 + 34*6*3,
			Box{Vec3{-60, -60, -40}, Vec3{1000, 0, 0}}},
		{"upright mitre", func(b *AngleBar) { b.Start.Slope = -45 * unit.Degree }, area*1000 - 60*6*3 - 34*6*23,
			Box{Vec3{0, -60, -40}, Vec3{1000, 0, 0}}},
		{"slot", func(b *AngleBar) {
			b.Holes = []BarHole{{Name: "a", X: 500, FromHeel: 30, Dia: 10, Slot: 20, Along: true}}
		}, area*1000 - (200+25*math.Pi)*6, Box{Vec3{0, -60, -40}, Vec3{1000, 0, 0}}},
		{"countersink", func(b *AngleBar) {
			b.Holes = []BarHole{{Name: "a", Leg: WallLeg, X: 500, FromHeel: 20, Dia: 8, SinkDia: 16}}
		}, area*1000 - math.Pi*16*2 - math.Pi*4/3*(16+32+64), Box{Vec3{0, -60, -40}, Vec3{1000, 0, 0}}},
	} {
		b := sharp
		b.Chord = 0.001
		c.change(&b)
		solid := b.Solid()
		closed(t, solid)
		near(t, c.name+" volume", float64(solid.Volume()), c.volume, 2)
		box := solid.Bounds()
		if d := box.Min.Sub(c.box.Min).Len() + box.Max.Sub(c.box.Max).Len(); d > 1e-9 {
			t.Errorf("%s: bounds %v, want %v", c.name, box, c.box)
		}
	}
}

func TestAngleFaults(t *testing.T) {
	for _, c := range []struct {
		change func(b *AngleBar)
		want   string
	}{
		{func(b *AngleBar) { b.Length = 0 }, "a length of 0 mm"},
		{func(b *AngleBar) { b.SeatWidth = unit.Length(math.NaN()) }, "must be numbers"},
		{func(b *AngleBar) { b.Thickness = 50 }, "leave no flat"},
		{func(b *AngleBar) { b.Chord = -1 }, "chord"},
		{func(b *AngleBar) { b.End.Plan = 89 * unit.Degree }, "off square"},
		{func(b *AngleBar) { b.Length, b.End.Plan = 50, -45*unit.Degree }, "the end cuts meet"},
		// Rim at 12 mm from the heel, the flat starts at 6 + 8 = 14.
		{func(b *AngleBar) { b.Holes[0].FromHeel = 17 }, "in the seat leg: its rim comes 2.00 mm into the root fillet; move it by more than that, further from the heel"},
		// Rim at 57.5 mm, the flat ends at 60 - 4 = 56.
		{func(b *AngleBar) { b.Holes[0].FromHeel = 52.5 }, "1.50 mm into the toe"},
		{func(b *AngleBar) { b.Holes[0].X = 3 }, "2.00 mm past the start"},
		{func(b *AngleBar) { b.Holes[0].X = 1000 }, "5.00 mm past the end"},
		{func(b *AngleBar) { b.Holes[0].SinkDia = 40 }, "cannot be made in 6 mm"},
		{func(b *AngleBar) { b.Holes[0].Dia = 0 }, "not a positive length"},
		{func(b *AngleBar) { b.Holes = append(b.Holes, BarHole{Name: "b", X: 505, FromHeel: 30, Dia: 4}) }, `runs into hole "a"`},
	} {
		b := bar60()
		b.Chord = 0.001
		b.Holes = []BarHole{{Name: "a", X: 500, FromHeel: 30, Dia: 10}}
		c.change(&b)
		if err := b.Solid().Err(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("fault %v, want one with %q", err, c.want)
		}
	}
}

func randomBar(r *rand.Rand) AngleBar {
	b := AngleBar{SeatWidth: pick(r, 30, 120), WallWidth: pick(r, 30, 120), Thickness: pick(r, 3, 8),
		Length: pick(r, 300, 3000), LegUp: r.IntN(2) == 0, RoomLeft: r.IntN(2) == 0, Chord: pick(r, 0.01, 0.5)}
	if r.IntN(4) > 0 {
		b.Root, b.Toe = pick(r, 1, 10), pick(r, 0, float64(b.Thickness))
	}
	for _, e := range []*BarEnd{&b.Start, &b.End} {
		if r.IntN(2) == 0 {
			e.Plan = unit.Angle(pick(r, -1, 1))
		}
		if r.IntN(3) == 0 {
			e.Slope = unit.Angle(pick(r, -0.8, 0.8))
		}
	}
	for i := range r.IntN(10) {
		h := BarHole{Name: fmt.Sprint("hole ", i), Leg: BarLeg(r.IntN(2)), X: pick(r, 0, 1) * b.Length,
			FromHeel: pick(r, 15, 60), Dia: pick(r, 3, 14), Along: r.IntN(2) == 0, SinkOuter: r.IntN(2) == 0}
		if r.IntN(3) == 0 {
			h.Slot = pick(r, 1, 30)
		}
		if r.IntN(3) == 0 {
			h.SinkDia = h.Dia + pick(r, 1, 8)
		}
		one := b
		if one.Holes = append(b.Holes[:len(b.Holes):len(b.Holes)], h); one.Solid().Err() == nil {
			b = one
		}
	}
	return b
}

func TestRandomAnglesAreClosed(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 0))
	built, holes := 0, 0
	for i := range 300 {
		b := randomBar(r)
		solid := b.Solid()
		if solid.Err() != nil {
			continue
		}
		built++
		holes += len(b.Holes)
		if !t.Run(fmt.Sprint("bar ", i), func(t *testing.T) { closed(t, solid) }) {
			t.Fatalf("%+v", b)
		}
	}
	if built < 250 || holes < 300 {
		t.Errorf("only %d bars with %d holes could be built", built, holes)
	}
}
