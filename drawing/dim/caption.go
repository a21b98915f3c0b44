package dim

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// caption gives the places of a text inside a region: a raster of points,
// those near its middle first.
func (p *Plate) caption(i int, q Caption) *label {
	if len(q.Loop) < 3 {
		return nil
	}
	loop := make([]geom.Vec, len(q.Loop))
	for k, v := range q.Loop {
		loop[k] = p.at(v)
	}
	height := q.Height
	if height <= 0 {
		height = p.Style.Height
	}
	text := block{lines: q.Lines, height: height, bold: q.Bold, middle: true}
	text.measure()
	region := area{loops: [][]geom.Vec{loop}, rect: around(loop)}
	middle := middleOf(loop)
	var places []place
	for _, dir := range []geom.Vec{right, geom.V(0, 1)} {
		turned := 20.0 * float64(dir.Y)
		const n = 24
		for r := range n + 1 {
			for c := range n + 1 {
				fx, fy := unit.Length(c)/n, unit.Length(r)/n
				mid := region.rect.Min.Add(geom.V(fx*region.rect.Width(), fy*region.rect.Height()))
				if r == n/2 && c == n/2 {
					mid = middle
				}
				low := dir.Left().Mul(float64((text.rise() + text.low) / 2))
				at := mid.Sub(dir.Mul(float64(text.width / 2))).Sub(low)
				places = append(places, text.stand(turned+float64(mid.Sub(middle).Len()), at, dir))
			}
		}
	}
	for k := range places {
		if c := &places[k]; !region.takes(&c.box) {
			c.cost += hard
		}
	}
	return &label{request: i, text: text, places: places}
}

// takes tells whether a box lies wholly in the area.
func (a *area) takes(b *box) bool {
	if !a.rect.Holds(b.rect()) || !a.holds(b.mid) {
		return false
	}
	for _, l := range a.loops {
		for i, s := range l {
			side := newLine(s, l[(i+1)%len(l)], 0, edge)
			if b.cut(&side, textClear) {
				return false
			}
		}
	}
	return true
}

// middleOf is the centroid of a polygon; the middle of its bounds when it has
// no area.
func middleOf(loop []geom.Vec) geom.Vec {
	var sum geom.Vec
	twice := 0.0
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		c := a.Sub(loop[0]).Cross(b.Sub(loop[0]))
		sum = sum.Add(a.Add(b).Add(loop[0]).Mul(c / 3))
		twice += c
	}
	if math.Abs(twice) < 1e-6 {
		return around(loop).Centre()
	}
	return sum.Mul(1 / twice)
}
