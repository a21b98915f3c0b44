package job

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// example is a made-up room for a template: corner points in mm, the walls
// between them by name.
type example struct {
	corners []string
	at      [][2]float64
	walls   []string
	closed  bool
}

// Sizes of the example room, mm.
const (
	exampleWidth = 2400
	exampleNiche = 240
	openDepth    = 1400
	closedDepth  = 3000
)

// exampleRoom makes a rectangular room that has the walls a preset asks for: a
// left wall, a right wall, and between them a back that steps back and forth by
// the depth of a niche. A wall named front closes the room.
func exampleRoom(needs []model.Need) example {
	var names []string
	for _, n := range needs {
		names = append(names, n.Wall)
	}
	e := example{closed: slices.Contains(names, "front")}
	for _, usual := range []string{"left", "back", "right"} {
		if (len(names) < 2 || e.closed && len(names) < 4) && !slices.Contains(names, usual) {
			names = append(names, usual)
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return fromLeft(a) - fromLeft(b) })
	e.walls = names
	about := map[string]float64{}
	for _, n := range needs {
		about[n.Wall] = float64(n.About)
	}
	depth := float64(openDepth)
	if e.closed {
		names, depth = names[:len(names)-1], closedDepth
	}
	if l := about["left"]; l > 0 {
		depth = l
	}
	at := [2]float64{0, -depth}
	e.at = [][2]float64{at}
	for _, to := range steps(names, about, depth) {
		at = [2]float64{at[0] + to[0], at[1] + to[1]}
		e.at = append(e.at, at)
	}
	for i := range e.at {
		e.corners = append(e.corners, cornerLetter(i))
	}
	return e
}

// steps goes along walls from the front of the left one to the front of the right
// one; two walls are a corner. The last wall comes to the front. Walls are about as
// long as told; both cheeks of a niche as deep as the first.
func steps(walls []string, about map[string]float64, depth float64) [][2]float64 {
	out := [][2]float64{{0, depth}}
	long := func(i int, usual float64) float64 {
		if l := about[walls[i]]; l > 0 {
			return l
		}
		return usual
	}
	if len(walls) == 2 {
		return append(out, [2]float64{long(1, exampleWidth), 0})
	}
	middle := len(walls) - 2
	niche, y := 0.0, 0.0
	for i := range middle {
		switch {
		case i%2 == 0 || i == middle-1:
			out = append(out, [2]float64{long(i+1, math.Round(exampleWidth/float64((middle+2)/2))), 0})
		case y == 0:
			niche = long(i+1, exampleNiche)
			out, y = append(out, [2]float64{0, niche}), niche
		default:
			out, y = append(out, [2]float64{0, -niche}), 0
		}
	}
	return append(out, [2]float64{0, -depth - y})
}

// fromLeft sorts the left wall first, the right one after all others, and the
// front one last.
func fromLeft(name string) int {
	switch name {
	case "left":
		return 0
	case "right":
		return 2
	case "front":
		return 3
	}
	return 1
}

// cornerLetter names corners A, B ... Z, A1, B1 ...
func cornerLetter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return fmt.Sprintf("%c%d", 'A'+i%26, i/26)
}

// write writes corners, walls and readings as the room section goes on.
func (m Measures) write(b *strings.Builder) {
	n := len(m.Corners)
	fmt.Fprintf(b, "  corners: [%s]\n", strings.Join(m.Corners, ", "))
	fmt.Fprintf(b, "  bends: {%s}   # in: a corner of the room; out: one that sticks out into it\n", strings.Join(m.bends(), ", "))
	if m.Closed {
		b.WriteString("  closed: yes                     # a wall joins the last corner to the first\n")
	}
	fmt.Fprintf(b, "  base: %s-%s                       # these two lie level on the drawing\n", m.Base[0], m.Base[1])
	fmt.Fprintf(b, "  # Makes of wall: %s.\n  walls:\n", strings.Join(makeWords(), ", "))
	for i, name := range m.Walls {
		fmt.Fprintf(b, "    - name: %s\n      from: %s\n      to: %s\n      make: %s\n", name, m.Corners[i], m.Corners[(i+1)%n], model.Brick)
		m.writeFace(b, i)
		if i == 0 {
			b.WriteString(wallComments)
		}
	}
	b.WriteString(readingComments)
	for i, r := range m.Readings {
		fmt.Fprintf(b, "    - %-62s # %d\n", Line(r.Reading, number(float64(r.Shown()))), i+1)
	}
}

// Shown is the value as a job file has it: an offset has no sign.
func (m Measure) Shown() unit.Length {
	if m.Kind == survey.Offset {
		return unit.Length(math.Abs(float64(m.Length)))
	}
	return m.Length
}

// bends tells of every corner between two walls how it bends.
func (m Measures) bends() []string {
	var out []string
	for i, c := range m.Corners {
		if !m.Closed && (i == 0 || i == len(m.Corners)-1) {
			continue
		}
		out = append(out, c+": "+map[bool]string{true: "in", false: "out"}[m.Inside[i]])
	}
	return out
}

// writeFace writes the readings of a wall's bow and lean.
func (m Measures) writeFace(b *strings.Builder, wall int) {
	for _, f := range m.Faces {
		if f.Wall != wall {
			continue
		}
		var bow, plumb []string
		for _, a := range f.Along {
			bow = append(bow, fmt.Sprintf("{along: %s, is: 0}", number(float64(a))))
		}
		for _, z := range f.Up {
			plumb = append(plumb, fmt.Sprintf("{up: %s, is: 30}", number(float64(z))))
		}
		fmt.Fprintf(b, "      bow_at: [%s]\n      plumb: [%s]\n", strings.Join(bow, ", "), strings.Join(plumb, ", "))
	}
}

// Line is the line of a job file for a reading, with its value as text. The sign
// of an offset tells on which side of the line the corner lies.
func Line(r survey.Reading, is string) string {
	p := r.Points
	switch r.Kind {
	case survey.Distance:
		return fmt.Sprintf("{between: %s-%s, is: %s}", p[0], p[1], is)
	case survey.SquareOff:
		return fmt.Sprintf("{square: %s-%s-%s, marks: [%.0f, %.0f], is: %s}", p[0], p[1], p[2], float64(r.A), float64(r.B), is)
	case survey.Offset:
		side := "before"
		if r.Length < 0 {
			side = "behind"
		}
		return fmt.Sprintf("{offset: %s, from: %s-%s, side: %s, is: %s}", p[0], p[1], p[2], side, is)
	case survey.Width:
		return fmt.Sprintf("{width: %s-%s to %s-%s, along: %s-%s, depth: %.0f, is: %s}", p[2], p[3], p[4], p[5], p[0], p[1], float64(r.A), is)
	}
	return ""
}

func makeWords() []string {
	var out []string
	for _, m := range model.WallMakes {
		out = append(out, string(m))
	}
	return out
}

const wallComments = `      # studs: [210, 610, 1010]   # timber stud: middles of the studs ...
      # count_from: B             # ... from this corner
      # bow_at is how far the face stands off a straightedge from corner to corner: plus bulges
      # into the room, minus is hollow; bow: -3 is one reading at the middle.
      # plumb is the distance from a plumb line to the wall at heights above the floor;
      # lean: {by: 4, over: 700} goes back by 4 over 700 of height.
      # anchor: {pull: 0.9, shear: 1.4, edge: 100, spacing: 200, paper: number of its approval}   # kN each, in this wall
      # obstacles:
      #   - {name: double socket, kind: socket, from: A, start: 300, end: 450, bottom: 200, top: 290, depth: 12, free: 30}
`

const readingComments = `  # In the order and with the numbers of measuring-sheet.pdf. There are more
  # than needed: only then a slip shows.
  readings:
`
