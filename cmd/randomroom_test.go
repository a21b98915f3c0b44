package cmd

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// dice draws what a random job is made of. Tame jobs are such as a person would
// write: most of them pass their checks.
type dice struct {
	*rand.Rand
	tame bool
}

func newDice(seed uint64) dice {
	d := dice{Rand: rand.New(rand.NewPCG(seed, 2026))}
	d.tame = d.chance(0.35)
	return d
}

// about is near a usual value in tame jobs, anywhere between two others in wild
// ones.
func (d dice) about(usual, low, high float64) float64 {
	if d.tame {
		return usual * d.between(0.97, 1.03)
	}
	return d.between(low, high)
}

func (d dice) between(low, high float64) float64 { return low + (high-low)*d.Float64() }

// chance is true in p of 1 throws.
func (d dice) chance(p float64) bool { return d.Float64() < p }

func oneOf[T any](d dice, list ...T) T { return list[d.IntN(len(list))] }

// leg is one wall on the way round the room: its name and its heading, 0 along
// the back wall to the right, 90 towards the back.
type leg struct {
	name    string
	heading float64
	length  float64
}

// drawnRoom is a room as it really stands.
type drawnRoom struct {
	legs   []leg
	names  []string // of the corners
	at     []geom.Vec
	closed bool
}

// room draws the walls that a preset needs, crooked by up to 6 degrees, with a
// recess or a breast in some of them.
func (d dice) room(preset string) drawnRoom {
	var r drawnRoom
	big := 1.0
	if !d.tame && d.chance(0.2) {
		big = 2
	}
	wall := func(usual, low, high float64) float64 { return big * d.about(usual, low, high) }
	switch preset {
	case "studio":
		in, deep := 90.0, d.about(242, 60, 700)
		if !d.tame && d.chance(0.12) {
			in = -90 // a breast where the recess should be
		}
		r.legs = []leg{
			{"left", 90, wall(1400, 700, 1800)}, {"back left", 0, wall(912, 300, 1400)}, {"niche left", in, deep},
			{"niche back", 0, wall(784, 300, 1300)}, {"niche right", -in, deep * d.about(1, 0.8, 1.2)},
			{"back right", 0, wall(675, 300, 1400)}, {"right", -90, wall(1391, 700, 1800)},
		}
	case "alcove":
		side := wall(700, 450, 1200)
		r.legs = []leg{{"left", 90, side}, {"back", 0, wall(1461, 700, 2200)}, {"right", -90, side}}
	case "corner":
		side := wall(2500, 1300, 3000)
		r.legs = []leg{{"left", 90, side}, {"back", 0, wall(2812, 1500, 3500)}, {"right", -90, side}, {"front", 180, 0}}
		r.closed = true
	}
	crooked := 0.6
	if !d.tame {
		crooked = oneOf(d, 0.0, 1, 3, 6, 6)
		if d.chance(0.35) {
			r.legs = d.stepped(r.legs)
		}
	}
	for i := range r.legs {
		r.legs[i].heading += d.between(-crooked, crooked)
	}
	r.at = []geom.Vec{{}}
	for _, l := range r.legs {
		last := r.at[len(r.at)-1]
		r.at = append(r.at, last.Add(geom.V(unit.Length(l.length), 0).Turn(unit.Angle(l.heading)*unit.Degree)))
	}
	if r.closed {
		r.at = r.at[:len(r.at)-1] // the last wall goes back to the first corner
	}
	r.names = d.cornerNames(len(r.at))
	return r
}

// stepped puts a recess or a breast into one of the long walls.
func (d dice) stepped(legs []leg) []leg {
	var able []int
	for i, l := range legs {
		if l.length > 600 && !strings.Contains(l.name, "niche") {
			able = append(able, i)
		}
	}
	if len(able) == 0 {
		return legs
	}
	i := able[d.IntN(len(able))]
	w := legs[i]
	way := oneOf(d, 90.0, -90)
	deep, wide := d.between(40, 350), d.between(0.2, 0.5)*w.length
	before := d.between(0.2, 0.8) * (w.length - wide)
	head, tail := w.name, d.word()
	if w.name == "left" {
		head, tail = tail, head // what meets the back wall keeps the name
	}
	return slices.Concat(legs[:i], []leg{
		{head, w.heading, before}, {w.name + " step 1", w.heading + way, deep}, {w.name + " step 2", w.heading, wide},
		{w.name + " step 3", w.heading - way, deep}, {tail, w.heading, w.length - wide - before},
	}, legs[i+1:])
}

func (d dice) cornerNames(n int) []string {
	names := make([]string, n)
	form := oneOf(d, "%c", "%c", "P%c", "Zimmerecke_%c", "é%c'")
	for i := range names {
		names[i] = fmt.Sprintf(form, 'A'+rune(i))
	}
	return names
}

// sees tells whether a tape can be held from one corner to another.
func (r *drawnRoom) sees(i, j int) bool {
	a, b := r.at[i], r.at[j]
	if !r.opens(i, b) || !r.opens(j, a) {
		return false
	}
	n := len(r.at)
	for k := range r.at {
		m := (k + 1) % n
		if k == i || k == j || m == i || m == j || m == 0 && !r.closed {
			continue
		}
		p, q := r.at[k], r.at[m]
		line, wall := geom.Through(a, b), geom.Through(p, q)
		if line.Side(p)*line.Side(q) <= 0 && wall.Side(a)*wall.Side(b) <= 0 {
			return false
		}
	}
	return true
}

// opens tells whether a place lies inside the angle of a corner, well off its
// walls. The room lies to the right of its walls.
func (r *drawnRoom) opens(i int, to geom.Vec) bool {
	n := len(r.at)
	way := to.Sub(r.at[i]).Unit()
	right := func(p, q geom.Vec) bool { return q.Sub(p).Unit().Cross(way) < -0.01 }
	before, after := (i+n-1)%n, (i+1)%n
	switch {
	case i == 0 && !r.closed:
		return right(r.at[0], r.at[1])
	case i == n-1 && !r.closed:
		return right(r.at[n-2], r.at[n-1])
	}
	p, q := right(r.at[before], r.at[i]), right(r.at[i], r.at[after])
	if r.bend(i) == "in" {
		return p && q
	}
	return p || q
}

func (r *drawnRoom) bend(i int) string {
	n := len(r.at)
	a, b, c := r.at[(i+n-1)%n], r.at[i], r.at[(i+1)%n]
	if b.Sub(a).Cross(c.Sub(b)) > 0 {
		return "out"
	}
	return "in"
}

// written is the room section of a job file: readings as a tape gives them, and
// what is on and in the walls.
func (d dice) written(r drawnRoom) string {
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	n := len(r.at)
	say("room:")
	say("  readings_at: %d", 600+d.IntN(400))
	say("  ceiling: %d", 2300+d.IntN(600))
	say("  corners: [%s]", strings.Join(r.names, ", "))
	say("  closed: %s", map[bool]string{true: "yes", false: "no"}[r.closed])
	say("  bends:")
	for i := range r.at {
		if r.closed || i > 0 && i < n-1 {
			say("    %s: %s", r.names[i], r.bend(i))
		}
	}
	say("  walls:")
	for i, l := range r.legs {
		d.wall(say, l.name, r.names[i], r.names[(i+1)%n], float64(r.at[(i+1)%n].Sub(r.at[i]).Len()))
	}
	say("  readings:")
	slip := -1
	if !d.tame && d.chance(0.15) {
		slip = d.IntN(2 * n)
	}
	count := 0
	for i := range r.at {
		for j := range r.at[:i] {
			side := i == j+1 || r.closed && i == n-1 && j == 0
			if !side && (!r.sees(i, j) || !d.tame && d.chance(0.1)) {
				continue
			}
			is := math.Round(float64(r.at[i].Sub(r.at[j]).Len()) + d.about(0, 0.7, 0.7)*d.NormFloat64())
			if count++; count == slip {
				is += d.between(8, 30)
			}
			say("    - {between: %s-%s, is: %.0f}", r.names[j], r.names[i], is)
		}
	}
	for i := range r.at {
		if (r.closed || i > 0 && i < n-1) && (r.bend(i) == "out" || d.chance(0.2)) {
			d.square(say, r, i)
		}
	}
	for i, l := range r.legs { // a string over each step
		if j := i + 3; strings.HasSuffix(l.name, " step 1") || l.name == "niche left" {
			for _, k := range []int{i + 1, i + 2} {
				off := geom.Through(r.at[i], r.at[j%n]).Side(r.at[k])
				say("    - {offset: %s, from: %s-%s, side: %s, is: %.0f}", r.names[k], r.names[i], r.names[j%n],
					map[bool]string{true: "behind", false: "before"}[off > 0], math.Abs(float64(off)))
			}
		}
	}
	if d.tame {
		d.widths(say, r)
	}
	if d.chance(0.5) {
		say("  floor: {%s: 0, %s: %.0f}", r.names[0], r.names[n-1], d.between(-25, 25))
	}
	return b.String()
}

// widths writes what is measured for a slab from wall to wall: the distance of
// the two side walls at three depths off the line between them.
func (d dice) widths(say func(string, ...any), r drawnRoom) {
	at := map[string]int{}
	for i, l := range r.legs {
		at[l.name] = i
	}
	n := len(r.at)
	i, j := at["left"], at["right"]
	left, right := geom.Through(r.at[i], r.at[i+1]), geom.Through(r.at[j], r.at[(j+1)%n])
	base := geom.Through(r.at[i+1], r.at[j])
	for _, depth := range []float64{60, 300, 560} {
		line := base.Shift(unit.Length(-depth))
		p, _ := left.Meet(line)
		q, _ := right.Meet(line)
		say("    - {width: %s-%s to %s-%s, along: %s-%s, depth: %.0f, is: %.0f}", r.names[i], r.names[i+1], r.names[j], r.names[(j+1)%n],
			r.names[i+1], r.names[j], depth, float64(q.Sub(p).Len()))
	}
}

// square writes a reading of the angle at a corner, by protractor or by marks.
func (d dice) square(say func(string, ...any), r drawnRoom, i int) {
	n := len(r.at)
	p, q := (i+n-1)%n, (i+1)%n
	to, from := r.at[p].Sub(r.at[i]), r.at[q].Sub(r.at[i])
	three := r.names[p] + "-" + r.names[i] + "-" + r.names[q]
	if r.bend(i) == "in" && d.chance(0.5) {
		a, b := 0.5*float64(to.Len()), 0.6*float64(from.Len())
		gap := to.Unit().Mul(a).Sub(from.Unit().Mul(b)).Len()
		say("    - {square: %s, marks: [%.1f, %.1f], is: %.1f}", three, a, b, float64(gap))
		return
	}
	inside := math.Mod(math.Atan2(from.Cross(to), from.Dot(to))*-180/math.Pi+360, 360)
	say("    - {angle: %s, is: %.1f deg}", three, inside)
}

// wall writes a wall and what is in it and on it.
func (d dice) wall(say func(string, ...any), name, from, to string, length float64) {
	say("    - name: %s", name)
	say("      from: %s", from)
	say("      to: %s", to)
	if d.tame {
		say("      make: %s", oneOf(d, model.Brick, model.Concrete))
		say("      bow: %.1f", d.between(-3, 3))
		say("      lean: {by: %.1f, over: 1200}", d.between(-1, 1))
		return
	}
	make := oneOf(d, model.WallMakes...)
	say("      make: %s", make)
	if d.chance(0.4) {
		say("      bow: %.1f", d.between(-12, 12))
	}
	if d.chance(0.4) {
		say("      lean: {by: %.1f, over: %.0f}", d.between(-15, 15), d.between(600, 2000))
	}
	if d.chance(0.3) {
		say("      count_from: %s", oneOf(d, from, to))
	}
	if make == model.Stud && length > 200 {
		var studs []string
		for x := d.between(60, 400); x < length; x += oneOf(d, 400.0, 600, 625) + d.between(-20, 20) {
			studs = append(studs, fmt.Sprintf("%.0f", x))
		}
		if len(studs) > 0 {
			say("      studs: [%s]", strings.Join(studs, ", "))
		}
	}
	things := max(0, d.IntN(6)-3)
	if things == 0 || length < 120 {
		return
	}
	say("      obstacles:")
	for range things {
		wide := d.between(10, min(900, 0.8*length))
		start := d.between(0, length-wide)
		bottom := oneOf(d, 0, d.between(100, 1500))
		say("        - {name: %s, kind: %s, from: %s, start: %.0f, end: %.0f, bottom: %.0f, top: %.0f, depth: %.0f, free: %.0f}",
			d.word(), oneOf(d, model.ObstacleKinds...), oneOf(d, from, to), math.Floor(start), math.Ceil(start+wide),
			bottom, bottom+d.between(50, 1000), oneOf(d, 0, 12, d.between(5, 250)), oneOf(d, 0, 30, d.between(0, 80)))
	}
}
