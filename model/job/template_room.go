package job

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model"
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
	depth := float64(openDepth)
	if e.closed {
		names, depth = names[:len(names)-1], closedDepth
	}
	at := [2]float64{0, -depth}
	e.at = [][2]float64{at}
	for _, to := range steps(len(names), depth) {
		at = [2]float64{at[0] + to[0], at[1] + to[1]}
		e.at = append(e.at, at)
	}
	for i := range e.at {
		e.corners = append(e.corners, cornerLetter(i))
	}
	return e
}

// steps goes along n walls from the front of the left one to the front of the
// right one; two walls are a corner. The last wall comes to the front.
func steps(n int, depth float64) [][2]float64 {
	out := [][2]float64{{0, depth}}
	if n == 2 {
		return append(out, [2]float64{exampleWidth, 0})
	}
	middle := n - 2
	y := 0.0
	for i := range middle {
		switch {
		case i%2 == 0 || i == middle-1:
			out = append(out, [2]float64{math.Round(exampleWidth / float64((middle+2)/2)), 0})
		case y == 0:
			out, y = append(out, [2]float64{0, exampleNiche}), exampleNiche
		default:
			out, y = append(out, [2]float64{0, -exampleNiche}), 0
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
func (e example) write(b *strings.Builder) {
	n := len(e.corners)
	fmt.Fprintf(b, "  corners: [%s]\n", strings.Join(e.corners, ", "))
	if e.closed {
		b.WriteString("  closed: yes                     # a wall joins the last corner to the first\n")
	}
	fmt.Fprintf(b, "  base: %s-%s                       # these two lie level on the drawing\n", e.corners[1], e.corners[2])
	fmt.Fprintf(b, "  # Makes of wall: %s.\n  walls:\n", strings.Join(makeWords(), ", "))
	for i, name := range e.walls {
		fmt.Fprintf(b, "    - name: %s\n      from: %s\n      to: %s\n      make: %s\n", name, e.corners[i], e.corners[(i+1)%n], model.Brick)
		if i == 0 {
			b.WriteString(wallComments)
		}
	}
	b.WriteString(readingComments)
	for i := range e.at {
		for j := i + 1; j < n; j++ {
			if j == i+1 || i == 0 || j == n-1 {
				d := math.Hypot(e.at[j][0]-e.at[i][0], e.at[j][1]-e.at[i][1])
				fmt.Fprintf(b, "    - {between: %s-%s, is: %s}\n", e.corners[i], e.corners[j], number(math.Round(d*10)/10))
			}
		}
	}
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
      # bow: -3                   # at the middle; plus bulges into the room, minus is hollow
      # lean: {by: 4, over: 700}  # goes back by 4 over 700 of height
      # obstacles:
      #   - {name: double socket, kind: socket, from: A, start: 300, end: 450, bottom: 200, top: 290, depth: 12, free: 30}
`

const readingComments = `  # Straight distances between corners, walls and diagonals alike. Take more
  # than needed: only then a slip shows.
  readings:
`
