package dim

import (
	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// block is lettering to be placed: lines below each other, read left to right.
type block struct {
	lines     []string
	height    unit.Length // of capitals
	bold      bool
	width     unit.Length // of the widest line
	low, high unit.Length // lowest ink of the last line, highest of the first, above its base line
	middle    bool        // lines are centred below each other
}

func newBlock(height unit.Length, lines ...string) block {
	b := block{lines: lines, height: height}
	b.measure()
	return b
}

func (b *block) measure() {
	for i, s := range b.lines {
		q := drawing.Text{String: s, Height: b.height, Bold: b.bold}.Quad()
		b.width = max(b.width, q[1].X)
		if i == 0 {
			b.high = max(q[2].Y, b.height)
		}
		if i == len(b.lines)-1 {
			b.low = min(q[0].Y, 0)
		}
	}
}

// empty tells whether there is nothing to be read.
func (b *block) empty() bool { return b.width <= 0 }

// rise is the height from the base line of the last line to the top.
func (b *block) rise() unit.Length { return b.down(0) + b.high }

// down is how far line i stands above the last line.
func (b *block) down(i int) unit.Length {
	return unit.Length(len(b.lines)-1-i) * b.height * drawing.LinePitch
}

// over is the distance of the base line from a line below it, such that no
// bracket or comma comes too near.
func (b *block) over(gap unit.Length) unit.Length { return max(gap, lineClear+0.2-b.low) }

// box is the room of the block when the base line of its last line starts at
// at and runs along dir.
func (b *block) box(at, dir geom.Vec) box {
	up := dir.Left()
	h := b.rise() - b.low
	mid := at.Add(dir.Mul(float64(b.width / 2))).Add(up.Mul(float64(b.low + h/2)))
	return newBox(mid, dir, b.width, h)
}

// items letters the block.
func (b *block) items(at, dir geom.Vec) []drawing.Item {
	out := make([]drawing.Item, len(b.lines))
	for i, s := range b.lines {
		p := at.Add(dir.Left().Mul(float64(b.down(i))))
		t := drawing.Text{At: p, String: s, Height: b.height, Turn: dir.Angle(), Bold: b.bold}
		if b.middle {
			t.At, t.Align = p.Add(dir.Mul(float64(b.width/2))), drawing.Centre
		}
		out[i] = t
	}
	return out
}

// readable turns a direction so that lettering along it is read from below or
// from the right of the sheet (ISO 129-1). Lines up to 10 degrees left of the
// vertical count as vertical.
func readable(dir geom.Vec) geom.Vec {
	d := dir.Unit()
	const lean = 0.1736 // sine of 10 degrees
	if float64(d.X) < -lean || float64(d.X) <= lean && d.Y < 0 {
		return d.Mul(-1)
	}
	return d
}
