// Package lift judges lifting by hand: the revised lifting equation for one
// person's share, and how much a team may lift.
//
// Basis: Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH)
// 94-110, rev. 9/2021 (public domain), metric form; team shares: HSE guidance to
// the Manual Handling Operations Regulations, as quoted in public pages. The
// equation is not made for lifting seated, kneeling or in a narrow place, nor for
// carrying up stairs: no index is given there.
package lift

import (
	"math"

	"slabwright/model/unit"
)

// Source names where the equation comes from.
const Source = "revised NIOSH lifting equation (DHHS 94-110, rev. 2021); team shares: HSE guidance to the Manual Handling Operations Regulations"

// Task is one lift of one person, up to once in five minutes for an hour at most:
// where the hands are, measured from between the ankles and above the floor.
type Task struct {
	Out   unit.Length // hands in front of the ankles
	From  unit.Length // hands above the floor at the start
	To    unit.Length // and at the end
	Twist unit.Angle
	Grip  Grip
}

// Grip is how well the load can be held.
type Grip int

// Grips: handles, an edge that the fingers go round, a smooth or heavy corner.
const (
	Good Grip = iota
	Fair
	Poor
)

// Recommended is the load that nearly all healthy people may lift in this task,
// the lower one of start and end, since the load is set down with care. 0: the
// hands are too far out, too high, or the way is too long.
func (t Task) Recommended() unit.Mass {
	const constant = 23 // kg
	out := max(250, t.Out)
	way := max(250, unit.Length(math.Abs(float64(t.To-t.From))))
	if out > 630 || way > 1750 || t.Twist > 135*unit.Degree {
		return 0
	}
	common := constant * 250 / float64(out) * (0.82 + 45/float64(way)) * (1 - 0.0032*t.Twist.Degrees())
	at := func(v unit.Length) float64 {
		if v < 0 || v > 1750 {
			return 0
		}
		return common * (1 - 0.0003*math.Abs(float64(v-750))) * t.Grip.factor(v)
	}
	return unit.Mass(min(at(t.From), at(t.To)))
}

func (g Grip) factor(v unit.Length) float64 {
	switch {
	case g == Poor:
		return 0.90
	case g == Fair && v < 750:
		return 0.95
	}
	return 1
}

// Index is the load by the recommended one: up to 1 is the aim, from 1 to 3 the
// risk rises for some, above 3 for many. It is infinite for a lift that is out of
// reach.
func Index(load, recommended unit.Mass) float64 {
	if recommended <= 0 {
		return math.Inf(1)
	}
	return float64(load / recommended)
}

// Alone is what one man lifts close to the body at elbow height.
const Alone unit.Mass = 25

// Team is what people lift together who could lift so much each: two thirds of
// the sum for two, half of it for three and more. Teams of more than four are
// unlikely to work.
func Team(each ...unit.Mass) unit.Mass {
	var sum unit.Mass
	for _, m := range each {
		sum += m
	}
	switch len(each) {
	case 0, 1:
		return sum
	case 2:
		return sum * 2 / 3
	}
	return sum / 2
}

// MostHands is the largest team.
const MostHands = 4

// Hands is the smallest team that lifts a mass, each Alone; false if four do not.
func Hands(m unit.Mass) (int, bool) {
	var each []unit.Mass
	for n := 1; n <= MostHands; n++ {
		if each = append(each, Alone); m <= Team(each...) {
			return n, true
		}
	}
	return MostHands, false
}
