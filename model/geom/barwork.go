package geom

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"slabwright/model/unit"
)

// barWork is an angle bar under construction, in axes of its own: x along the
// heel, y across the seat leg and z across the wall leg, both from the heel.
type barWork struct {
	AngleBar
	section []sectionCorner
	bored   []bore
}

// ends makes sure that something of every side is left between the end cuts.
func (w *barWork) ends() error {
	for _, c := range w.section {
		if l := w.to(c.at) - w.from(c.at); !(l > 1.0/perMM) {
			return fmt.Errorf("the end cuts meet: %.1f mm along the heel, %.1f mm from the heel nothing is left",
				float64(w.Length), float64(max(c.at.X, c.at.Y)))
		}
	}
	return nil
}

// from and to are where the bar starts and ends at a place of the section.
func (w *barWork) from(at Vec) unit.Length {
	return -at.X*tan(w.Start.Plan) - at.Y*tan(w.Start.Slope)
}

func (w *barWork) to(at Vec) unit.Length {
	return w.Length + at.X*tan(w.End.Plan) + at.Y*tan(w.End.Slope)
}

func tan(a unit.Angle) unit.Length { return unit.Length(math.Tan(float64(a))) }

// bore is a hole with its outlines in the plane of the leg: x along the heel,
// y across the leg; depth counts from the outer face.
type bore struct {
	BarHole
	depths []unit.Length
	loops  [][]Vec // counter-clockwise, one for every depth, corner by corner
}

// point takes a place in a leg to the axes of the work.
func (h *bore) point(v Vec, depth unit.Length) Vec3 {
	if h.Leg == WallLeg {
		return Vec3{v.X, depth, v.Y}
	}
	return Vec3{v.X, v.Y, depth}
}

// bore makes the outlines of a hole and makes sure that it lies in the flat.
func (w *barWork) bore(h BarHole) (bore, error) {
	out := bore{BarHole: h}
	half := V(0, h.Slot/2)
	if h.Along {
		half = V(h.Slot/2, 0)
	}
	if !finite(h.X, h.FromHeel, h.Dia, h.Slot, h.SinkDia, h.SinkDepth) || h.Slot < 0 || h.SinkDia < 0 || h.SinkDepth < 0 {
		return out, errors.New("its sizes must be numbers, none below 0")
	}
	mid := V(h.X, h.FromHeel)
	r := Slot(mid.Sub(half), mid.Add(half), h.Dia, w.Chord)
	if err := r.Err(); err != nil {
		return out, err
	}
	loops := r.Loops()
	if len(loops) != 1 {
		return out, fmt.Errorf("a diameter of %.4g mm is too small", float64(h.Dia))
	}
	loop := loops[0]
	out.depths, out.loops = []unit.Length{0, w.Thickness}, [][]Vec{loop, loop}
	if h.SinkDia > 0 {
		if err := out.sink(loop, w.Thickness); err != nil {
			return out, err
		}
	}
	for i, d := range out.depths {
		if err := w.inFlat(&out, out.loops[i], d); err != nil {
			return out, err
		}
	}
	return out, nil
}

// sink widens a hole towards one face.
func (h *bore) sink(loop []Vec, thickness unit.Length) error {
	wider := (h.SinkDia - h.Dia) / 2
	depth := h.SinkDepth
	if depth == 0 {
		depth = wider
	}
	if wider < 1.0/perMM || depth > thickness {
		return fmt.Errorf("a countersink from %.4g to %.4g mm, %.4g mm deep, cannot be made in %.4g mm of steel",
			float64(h.Dia), float64(h.SinkDia), float64(depth), float64(thickness))
	}
	wide := make([]Vec, len(loop))
	for i, v := range loop {
		a, b := loop[(i+len(loop)-1)%len(loop)], loop[(i+1)%len(loop)]
		m, n := v.Sub(a).Unit().Left().Mul(-1), b.Sub(v).Unit().Left().Mul(-1)
		d, _ := mitre(m, float64(wider), n, float64(wider)) // the corners of a round hole are blunt
		wide[i] = v.Add(d)
	}
	h.depths, h.loops = []unit.Length{0, thickness - depth, thickness}, [][]Vec{loop, loop, wide}
	if h.SinkOuter {
		h.depths, h.loops = []unit.Length{0, depth, thickness}, [][]Vec{wide, loop, loop}
	}
	if depth == thickness {
		h.depths = []unit.Length{0, thickness}
		h.loops = [][]Vec{h.loops[0], h.loops[2]}
	}
	return nil
}

// inFlat makes sure that an outline of a hole lies in the flat of its leg,
// clear of fillet, toe and ends.
func (w *barWork) inFlat(h *bore, loop []Vec, depth unit.Length) error {
	width := w.SeatWidth
	if h.Leg == WallLeg {
		width = w.WallWidth
	}
	lo, hi := w.Thickness+w.Root, width-w.Toe
	if h.SinkOuter && depth == 0 {
		lo, hi = 0, width
	}
	for _, side := range []struct {
		over func(v Vec) unit.Length // how far a corner is out of bounds
		what string
		hint string
	}{
		{func(v Vec) unit.Length { return lo - v.Y }, "into the root fillet", "further from the heel"},
		{func(v Vec) unit.Length { return v.Y - hi }, "into the toe", "nearer to the heel"},
		{func(v Vec) unit.Length { return w.from(h.acrossSection(v, depth)) - v.X }, "past the start of the bar", "further along"},
		{func(v Vec) unit.Length { return v.X - w.to(h.acrossSection(v, depth)) }, "past the end of the bar", "back"},
	} {
		worst := unit.Length(math.Inf(-1))
		for _, v := range loop {
			worst = max(worst, side.over(v))
		}
		if worst > -1.0/perMM {
			return fmt.Errorf("its rim comes %.2f mm %s; move it by more than that, %s", max(float64(worst), 0), side.what, side.hint)
		}
	}
	return nil
}

// acrossSection is a place in a leg as a place of the section.
func (h *bore) acrossSection(v Vec, depth unit.Length) Vec {
	p := h.point(v, depth)
	return V(p.Y, p.Z)
}

// apart makes sure that no two holes of a leg meet.
func (w *barWork) apart() error {
	var rims []Region
	for i := range w.bored {
		h := &w.bored[i]
		rim := UnionAll(Polygon(h.loops[0]...), Polygon(h.loops[len(h.loops)-1]...))
		for j := range rims {
			if w.bored[j].Leg == h.Leg && rims[j].Gap(rim).Distance <= 0 {
				return fmt.Errorf("hole %q: it runs into hole %q", h.Name, w.bored[j].Name)
			}
		}
		rims = append(rims, rim)
	}
	return nil
}

// space takes a place from the axes of the work to those of the bar.
func (w *barWork) space(p Vec3) Vec3 {
	out := Vec3{p.X, -p.Y, -p.Z}
	if w.RoomLeft {
		out.Y = p.Y
	}
	if w.LegUp {
		out.Z = p.Z - w.Thickness
	}
	return out
}

// faces makes the skin; without crossBored the wall leg is left whole.
func (w *barWork) faces(crossBored bool) []Face {
	n := len(w.section)
	start, end := make([]Vec3, n), make([]Vec3, n)
	for i, c := range w.section {
		start[i], end[i] = Vec3{w.from(c.at), c.at.X, c.at.Y}, Vec3{w.to(c.at), c.at.X, c.at.Y}
	}
	var faces []Face
	add := func(surface string, curved bool, loops ...[]Vec3) {
		for i := range loops {
			for j := range loops[i] {
				loops[i][j] = w.space(loops[i][j])
			}
			if w.RoomLeft == w.LegUp { // the axes of the bar are not mirrored
				continue
			}
			slices.Reverse(loops[i])
		}
		faces = append(faces, newFace(surface, curved, loops...))
	}
	holes := map[string][][]Vec3{}
	for i := range w.bored {
		h := &w.bored[i]
		if h.Leg == WallLeg && !crossBored {
			continue
		}
		outer, inner := seatOuter, seatInner
		if h.Leg == WallLeg {
			outer, inner = wallOuter, wallInner
		}
		last := len(h.loops) - 1
		holes[outer] = append(holes[outer], h.rim(0, false))
		holes[inner] = append(holes[inner], h.rim(last, true))
		h.walls(add)
	}
	for i, c := range w.section {
		j := (i + 1) % n
		strip := []Vec3{start[i], start[j], end[j], end[i]}
		add(c.surface, c.curved, append([][]Vec3{strip}, holes[c.surface]...)...)
	}
	add("end 2", false, slices.Clone(end))
	slices.Reverse(start)
	add("end 1", false, start)
	return faces
}

// rim is an outline in space: as it is, clockwise seen from outside the outer
// face, or turned for the inner face.
func (h *bore) rim(i int, inner bool) []Vec3 {
	var out []Vec3
	for _, v := range h.loops[i] {
		out = append(out, h.point(v, h.depths[i]))
	}
	// Seen across the wall leg the axes are mirrored.
	if inner != (h.Leg == WallLeg) {
		slices.Reverse(out)
	}
	return out
}

// walls makes the faces inside a hole.
func (h *bore) walls(add func(surface string, curved bool, loops ...[]Vec3)) {
	for d := 0; d+1 < len(h.depths); d++ {
		surface := h.Name
		if !slices.Equal(h.loops[d], h.loops[d+1]) {
			surface += " countersink"
		}
		n := len(h.loops[d])
		for i := range n {
			j := (i + 1) % n
			quad := []Vec3{h.point(h.loops[d][i], h.depths[d]), h.point(h.loops[d+1][i], h.depths[d+1]),
				h.point(h.loops[d+1][j], h.depths[d+1]), h.point(h.loops[d][j], h.depths[d])}
			if h.Leg == WallLeg {
				slices.Reverse(quad)
			}
			add(surface, true, quad)
		}
	}
}
