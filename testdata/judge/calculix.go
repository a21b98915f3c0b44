package judge

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// Block is a solid of bricks with 20 nodes on an even grid, for CalculiX:
// sizes and numbers of bricks along x, y, z. Empty leaves bricks out.
type Block struct {
	Size     [3]float64 // mm
	Bricks   [3]int
	Empty    func(i, j, k int) bool
	Elastic  [9]float64              // N/mm2: E1 E2 E3 nu12 nu13 nu23 G12 G13 G23, 1 along x
	Held     func(x, y float64) bool // nodes of the underside that cannot move down or up
	Pressure func(i, j int) float64  // N/mm2 on the upper face
	Split    int                     // bricks along y before a joint along x that passes nothing but Springs; 0: none
	Springs  []float64               // places along the joint, at half the height
	Spring   float64                 // N/mm, up and down
	nodes    map[node]int
}

// node is a place on the grid in half steps; behind tells the two sides of a joint
// apart.
type node struct {
	at     [3]int
	behind bool
}

// Sink solves the block with CalculiX and gives how far the upper face goes
// down near (x, y), mm.
func (b *Block) Sink(t testing.TB, at ...[2]float64) []float64 {
	t.Helper()
	Need(t, "ccx")
	dir := t.TempDir()
	deck, watched := b.deck(at)
	if err := os.WriteFile(filepath.Join(dir, "block.inp"), []byte(deck), 0o644); err != nil {
		t.Fatal(err)
	}
	out := RunIn(t, dir, "ccx", "block")
	dat, err := os.ReadFile(filepath.Join(dir, "block.dat"))
	if err != nil {
		t.Fatalf("ccx wrote no answer: %v\n%s", err, out)
	}
	var sink []float64
	for _, n := range watched {
		sink = append(sink, -upOf(t, string(dat), n))
	}
	return sink
}

func upOf(t testing.TB, dat string, node int) float64 {
	for _, line := range strings.Split(dat, "\n") {
		f := strings.Fields(line)
		if len(f) == 4 && f[0] == strconv.Itoa(node) {
			v, err := strconv.ParseFloat(f[3], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
	}
	t.Fatalf("ccx says nothing of node %d", node)
	return 0
}

// Corners of a brick first, then the middles of its edges, in half steps.
var brick = [20][3]int{
	{0, 0, 0}, {2, 0, 0}, {2, 2, 0}, {0, 2, 0}, {0, 0, 2}, {2, 0, 2}, {2, 2, 2}, {0, 2, 2},
	{1, 0, 0}, {2, 1, 0}, {1, 2, 0}, {0, 1, 0}, {1, 0, 2}, {2, 1, 2}, {1, 2, 2}, {0, 1, 2},
	{0, 0, 1}, {2, 0, 1}, {2, 2, 1}, {0, 2, 1},
}

func (b *Block) deck(at [][2]float64) (string, []int) {
	b.nodes = map[node]int{}
	var nodes, elements, held, loads strings.Builder
	n := 0
	for i := range b.Bricks[0] {
		for j := range b.Bricks[1] {
			for k := range b.Bricks[2] {
				if b.Empty != nil && b.Empty(i, j, k) {
					continue
				}
				n++
				fmt.Fprintf(&elements, "%d", n)
				for c, d := range brick {
					if c == 10 {
						elements.WriteString(",\n")
					} else {
						elements.WriteString(",")
					}
					fmt.Fprintf(&elements, "%d", b.number(&nodes, &held, node{[3]int{2*i + d[0], 2*j + d[1], 2*k + d[2]}, b.Split > 0 && j >= b.Split}))
				}
				elements.WriteString("\n")
				if p := b.Pressure(i, j); k == b.Bricks[2]-1 && p != 0 {
					fmt.Fprintf(&loads, "%d,P2,%g\n", n, p)
				}
			}
		}
	}
	var watched []int
	for _, p := range at {
		watched = append(watched, b.nearest(p))
	}
	var list []string
	for _, w := range watched {
		list = append(list, strconv.Itoa(w))
	}
	e := b.Elastic
	return fmt.Sprintf("*NODE\n%s*ELEMENT,TYPE=C3D20R,ELSET=ALL\n%s*MATERIAL,NAME=WOOD\n*ELASTIC,TYPE=ENGINEERING CONSTANTS\n%g,%g,%g,%g,%g,%g,%g,%g\n%g\n"+
		"*SOLID SECTION,ELSET=ALL,MATERIAL=WOOD\n%s*BOUNDARY\n%s*NSET,NSET=WATCH\n%s\n*STEP\n*STATIC\n*DLOAD\n%s*NODE PRINT,NSET=WATCH\nU\n*END STEP\n",
		nodes.String(), elements.String(), e[0], e[1], e[2], e[3], e[4], e[5], e[6], e[7], e[8], b.springs(n), held.String()+b.still(), strings.Join(list, "\n"), loads.String()), watched
}

func (b *Block) place(g [3]int) (p [3]float64) {
	for a := range p {
		p[a] = b.Size[a] * float64(g[a]) / float64(2*b.Bricks[a])
	}
	return p
}

func (b *Block) number(nodes, held *strings.Builder, g node) int {
	n, ok := b.nodes[g]
	if !ok {
		n = len(b.nodes) + 1
		b.nodes[g] = n
		p := b.place(g.at)
		fmt.Fprintf(nodes, "%d,%g,%g,%g\n", n, p[0], p[1], p[2])
		if g.at[2] == 0 && b.Held(p[0], p[1]) {
			fmt.Fprintf(held, "%d,3,3\n", n)
		}
	}
	return n
}

// still keeps the block from sliding, and what is behind its joint: one corner along
// x and y, the next along y.
func (b *Block) still() string {
	out := fmt.Sprintf("%d,1,2\n%d,2,2\n", b.nodes[node{}], b.nodes[node{at: [3]int{2 * b.Bricks[0], 0, 0}}])
	if b.Split > 0 {
		y := 2 * b.Split
		out += fmt.Sprintf("%d,1,2\n%d,2,2\n", b.nodes[node{[3]int{0, y, 0}, true}], b.nodes[node{[3]int{2 * b.Bricks[0], y, 0}, true}])
	}
	return out
}

// springs tie both sides of the joint; their numbers follow those of the bricks.
func (b *Block) springs(bricks int) string {
	if b.Split == 0 {
		return ""
	}
	out := "*ELEMENT,TYPE=SPRING2,ELSET=JOINT\n"
	for i, x := range b.Springs {
		at := [3]int{int(math.Round(x / b.Size[0] * float64(2*b.Bricks[0]))), 2 * b.Split, b.Bricks[2]}
		out += fmt.Sprintf("%d,%d,%d\n", bricks+i+1, b.nodes[node{at, false}], b.nodes[node{at, true}])
	}
	return out + fmt.Sprintf("*SPRING,ELSET=JOINT\n3,3\n%.1f\n", b.Spring)
}

// nearest is the node of the upper face nearest to a place.
func (b *Block) nearest(at [2]float64) int {
	best, least := 0, 1e300
	for g, n := range b.nodes {
		p := b.place(g.at)
		d := (p[0]-at[0])*(p[0]-at[0]) + (p[1]-at[1])*(p[1]-at[1])
		if g.at[2] == 2*b.Bricks[2] && (d < least || d == least && n < best) {
			best, least = n, d
		}
	}
	return best
}
