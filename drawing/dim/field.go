package dim

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// field holds what is fixed on the paper and finds it by place: a grid of
// cells, each with the lines and boxes that touch it.
type field struct {
	frame drawing.Rect // nothing may leave it
	lines []line
	boxes []box
	areas []area

	origin     geom.Vec
	cols, rows int
	cells      []cell
	seenLine   []int // number of the last look-up that met the line
	seenBox    []int
	look       int
	nearLines  []int
	nearBoxes  []int
}

type cell struct{ lines, boxes []int32 }

// area is a hatched or filled region: lettering may stand there, better not.
type area struct {
	loops [][]geom.Vec
	rect  drawing.Rect
	dark  bool // black lettering cannot be read on it
}

const cellSize unit.Length = 8

// newField lays a grid over a region. Things beyond it are kept in its border
// cells.
func newField(region, frame drawing.Rect) *field {
	f := &field{frame: frame, origin: region.Min}
	f.cols = int(math.Ceil(float64(region.Width()/cellSize))) + 1
	f.rows = int(math.Ceil(float64(region.Height()/cellSize))) + 1
	f.cells = make([]cell, f.cols*f.rows)
	return f
}

func (f *field) col(x unit.Length) int { return inside((x-f.origin.X)/cellSize, f.cols) }
func (f *field) row(y unit.Length) int { return inside((y-f.origin.Y)/cellSize, f.rows) }

func inside(v unit.Length, n int) int {
	if !(v > 0) { // also what is no number
		return 0
	}
	if v >= unit.Length(n-1) {
		return n - 1
	}
	return int(v)
}

func (f *field) addLine(l line) {
	id := int32(len(f.lines))
	f.lines = append(f.lines, l)
	f.seenLine = append(f.seenLine, 0)
	run := l.b.X - l.a.X
	for c, last := f.col(l.min.X), f.col(l.max.X); c <= last; c++ {
		lo, hi := l.min.Y, l.max.Y
		if run != 0 { // the part of the line within this column
			at := func(x unit.Length) unit.Length {
				t := min(max((x-l.a.X)/run, 0), 1)
				return l.a.Y + (l.b.Y-l.a.Y)*t
			}
			x := f.origin.X + unit.Length(c)*cellSize
			y0, y1 := at(x), at(x+cellSize)
			if c == 0 {
				y0 = at(l.min.X)
			}
			if c == f.cols-1 {
				y1 = at(l.max.X)
			}
			lo, hi = min(y0, y1), max(y0, y1)
		}
		for r, top := f.row(lo), f.row(hi); r <= top; r++ {
			k := &f.cells[r*f.cols+c]
			k.lines = append(k.lines, id)
		}
	}
}

func (f *field) addBox(b box) {
	id := int32(len(f.boxes))
	f.boxes = append(f.boxes, b)
	f.seenBox = append(f.seenBox, 0)
	for r, top := f.row(b.min.Y), f.row(b.max.Y); r <= top; r++ {
		for c, last := f.col(b.min.X), f.col(b.max.X); c <= last; c++ {
			k := &f.cells[r*f.cols+c]
			k.boxes = append(k.boxes, id)
		}
	}
}

// near gathers the lines and boxes of the cells that a rectangle touches. The
// slices are good until the next call.
func (f *field) near(lo, hi geom.Vec) (lines, boxes []int) {
	f.look++
	f.nearLines, f.nearBoxes = f.nearLines[:0], f.nearBoxes[:0]
	for r, top := f.row(lo.Y), f.row(hi.Y); r <= top; r++ {
		for c, last := f.col(lo.X), f.col(hi.X); c <= last; c++ {
			f.gather(&f.cells[r*f.cols+c])
		}
	}
	return f.nearLines, f.nearBoxes
}

func (f *field) gather(k *cell) {
	for _, i := range k.lines {
		if f.seenLine[i] != f.look {
			f.seenLine[i] = f.look
			f.nearLines = append(f.nearLines, int(i))
		}
	}
	for _, i := range k.boxes {
		if f.seenBox[i] != f.look {
			f.seenBox[i] = f.look
			f.nearBoxes = append(f.nearBoxes, int(i))
		}
	}
}

// alongLine gathers the lines and boxes near a line, cell by cell as it runs.
func (f *field) alongLine(l *line) (lines, boxes []int) {
	f.look++
	f.nearLines, f.nearBoxes = f.nearLines[:0], f.nearBoxes[:0]
	const reach = leadBeside + 0.3
	run := l.b.X - l.a.X
	for c, last := f.col(l.min.X-reach), f.col(l.max.X+reach); c <= last; c++ {
		lo, hi := l.min.Y, l.max.Y
		if abs(run) > cellSize && c > 0 && c < f.cols-1 {
			at := func(x unit.Length) unit.Length {
				t := min(max((x-l.a.X)/run, 0), 1)
				return l.a.Y + (l.b.Y-l.a.Y)*t
			}
			x := f.origin.X + unit.Length(c)*cellSize
			y0, y1 := at(x-reach), at(x+cellSize+reach)
			lo, hi = min(y0, y1), max(y0, y1)
		}
		for r, top := f.row(lo-reach), f.row(hi+reach); r <= top; r++ {
			f.gather(&f.cells[r*f.cols+c])
		}
	}
	return f.nearLines, f.nearBoxes
}

// holds tells whether a point lies in the area (even-odd).
func (a *area) holds(p geom.Vec) bool {
	in := false
	for _, l := range a.loops {
		for i, s := range l {
			e := l[(i+1)%len(l)]
			if (s.Y > p.Y) != (e.Y > p.Y) && p.X < s.X+(e.X-s.X)*(p.Y-s.Y)/(e.Y-s.Y) {
				in = !in
			}
		}
	}
	return in
}

// under tells whether a box touches the area.
func (a *area) under(b *box) bool {
	if !a.rect.Meets(b.rect()) {
		return false
	}
	for _, l := range a.loops {
		for i, s := range l {
			side := newLine(s, l[(i+1)%len(l)], 0, edge)
			if b.cut(&side, 0) {
				return true
			}
		}
	}
	return a.holds(b.mid)
}
