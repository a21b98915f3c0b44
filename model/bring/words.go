package bring

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Moves tells how a part goes in, one sentence for each pose, the first for how
// it is held in front of its place.
func (w Way) Moves() []string {
	var out []string
	last := 0
	for i, p := range w.Poses {
		if i == 0 {
			out = append(out, "hold it in front of its place"+w.held(p))
			continue
		}
		if i+1 < len(w.Poses) && levels(w.Poses[last], p) && levels(p, w.Poses[i+1]) {
			continue // one end goes on up or down
		}
		if s := w.move(w.Poses[last], p); s != "" {
			out = append(out, s)
		}
		last = i
	}
	return out
}

// levels tells whether a move raises or lowers one end and nothing else.
func levels(a, b motion.Pose) bool {
	return a.Roll != b.Roll && a.Tilt == b.Tilt && a.Turn == b.Turn && a.At.X == b.At.X && a.At.Y == b.At.Y
}

// held is how the part stands at the start, compared with its place.
func (w Way) held(p motion.Pose) string {
	var how []string
	if p.Roll == 0 && p.Tilt == 0 && w.Part.Slab != nil {
		how = append(how, "level")
	}
	if z := round(p.At.Z); z != 0 {
		how = append(how, fmt.Sprintf(pick(z > 0, "%.0f mm higher", "%.0f mm lower"), math.Abs(z)))
	}
	if x := round(p.At.X); x != 0 {
		how = append(how, fmt.Sprintf(pick(x > 0, "%.0f mm to the right", "%.0f mm to the left"), math.Abs(x)))
	}
	how = append(how, w.stands(p)...)
	if how == nil {
		return ""
	}
	return ", " + strings.Join(how, ", ")
}

func (w Way) move(a, b motion.Pose) string {
	d := b.At.Sub(a.At)
	var do []string
	if y := round(d.Y); y != 0 {
		do = append(do, fmt.Sprintf(pick(y > 0, "push it back %.0f mm", "draw it forward %.0f mm"), math.Abs(y)))
	}
	if x := round(d.X); x != 0 {
		do = append(do, fmt.Sprintf(pick(x > 0, "shift it %.0f mm to the right", "shift it %.0f mm to the left"), math.Abs(x)))
	}
	if z := round(d.Z); z != 0 && a.Roll == b.Roll && a.Tilt == b.Tilt {
		do = append(do, fmt.Sprintf(pick(z < 0, "lower it %.0f mm", "raise it %.0f mm"), math.Abs(z)))
	}
	long, deep := w.box.Max.X-w.box.Min.X, w.box.Max.Y-w.box.Min.Y
	if a.Roll != b.Roll {
		by := ends(b.Roll, long) - ends(a.Roll, long)
		do = append(do, upOrDown("raise its left end %.0f mm", "lower its left end %.0f mm", d.Z+by)...)
		do = append(do, upOrDown("raise its right end %.0f mm", "lower its right end %.0f mm", d.Z-by)...)
	}
	if a.Tilt != b.Tilt {
		by := ends(b.Tilt, deep) - ends(a.Tilt, deep)
		do = append(do, upOrDown("raise its back edge %.0f mm", "lower its back edge %.0f mm", d.Z+by)...)
		do = append(do, upOrDown("raise its front edge %.0f mm", "lower its front edge %.0f mm", d.Z-by)...)
	}
	return strings.Join(append(do, turned(b.Turn-a.Turn, long)...), ", ")
}

// ends is how far the end of a length is above its middle when it is tilted.
func ends(by unit.Angle, length unit.Length) unit.Length {
	return length / 2 * unit.Length(math.Sin(float64(by)))
}

// upOrDown says what hands do at an end; movements under 3 mm follow by
// themselves.
func upOrDown(raise, lower string, by unit.Length) []string {
	if math.Abs(float64(by)) < 3 {
		return nil
	}
	return []string{fmt.Sprintf(pick(by > 0, raise, lower), math.Abs(float64(by)))}
}

// turned says how far a turn in plan brings the right end back or forward; large
// turns in degrees.
func turned(by unit.Angle, long unit.Length) []string {
	mm := round(2 * ends(by, long))
	switch {
	case math.Abs(by.Degrees()) > 20:
		return []string{fmt.Sprintf(pick(by > 0, "turn it by %.0f degrees with its right end back", "turn it by %.0f degrees with its right end forward"), math.Abs(by.Degrees()))}
	case mm != 0:
		return []string{fmt.Sprintf(pick(mm > 0, "its right end %.0f mm further back than its left", "its right end %.0f mm further forward than its left"), math.Abs(mm))}
	}
	return nil
}

// stands says how the part is tilted and turned against its place.
func (w Way) stands(p motion.Pose) []string {
	long, deep := w.box.Max.X-w.box.Min.X, w.box.Max.Y-w.box.Min.Y
	var out []string
	if mm := round(2 * ends(p.Roll, long)); mm != 0 {
		out = append(out, fmt.Sprintf(pick(mm > 0, "its left end %.0f mm higher than the other", "its right end %.0f mm higher than the other"), math.Abs(mm)))
	}
	if mm := round(2 * ends(p.Tilt, deep)); mm != 0 {
		out = append(out, fmt.Sprintf(pick(mm > 0, "its back edge %.0f mm higher than the other", "its front edge %.0f mm higher than the other"), math.Abs(mm)))
	}
	return append(out, turned(p.Turn, long)...)
}

// Straight tells whether the part goes in without being turned.
func (w Way) Straight() bool {
	for _, p := range w.Poses {
		if p.Turn != 0 || p.Roll != 0 || p.Tilt != 0 {
			return false
		}
	}
	return true
}

// Last is how far the part is lowered in its last move; 0 if it slides in.
func (w Way) Last() unit.Length {
	if n := len(w.Poses); n > 1 {
		return max(0, w.Poses[n-2].At.Z-w.Poses[n-1].At.Z)
	}
	return 0
}

func round(l unit.Length) float64 { return math.Round(float64(l)) + 0 }

func pick(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}

// Middle is where the middle of the part is in the room, in a pose of its way.
func (w Way) Middle(p motion.Pose) geom.Vec3 { return w.frame.pose.Space(p.At) }
