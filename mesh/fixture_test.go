package mesh

import (
	"fmt"
	"math"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// prism is an upright prism over an outline (counter-clockwise) with holes
// (clockwise), made by hand so that the mesh is judged without the solids.
func prism(low, high unit.Length, loops ...[]geom.Vec) []geom.Face {
	top := geom.Face{Normal: geom.Vec3{Z: 1}, Surface: "top"}
	under := geom.Face{Normal: geom.Vec3{Z: -1}, Surface: "underside"}
	var faces []geom.Face
	for i, loop := range loops {
		var up, down []geom.Vec3
		for k, a := range loop {
			b := loop[(k+1)%len(loop)]
			up = append(up, a.Up(high))
			down = append([]geom.Vec3{a.Up(low)}, down...)
			n := b.Sub(a).Unit().Left().Mul(-1)
			surface := fmt.Sprintf("edge %d", k+1)
			if i > 0 {
				surface = fmt.Sprintf("hole %d", i)
			}
			faces = append(faces, geom.Face{
				Loops:   [][]geom.Vec3{{a.Up(low), b.Up(low), b.Up(high), a.Up(high)}},
				Normal:  n.Up(0),
				Surface: surface,
				Curved:  i > 0,
			})
		}
		top.Loops = append(top.Loops, up)
		under.Loops = append(under.Loops, down)
	}
	return append(faces, top, under)
}

func rectangle(x, y, w, d unit.Length) []geom.Vec {
	return []geom.Vec{geom.V(x, y), geom.V(x+w, y), geom.V(x+w, y+d), geom.V(x, y+d)}
}

// circle is a regular polygon of n corners, clockwise.
func circle(c geom.Vec, r unit.Length, n int) []geom.Vec {
	var out []geom.Vec
	for i := range n {
		t := unit.Angle(-2 * math.Pi * float64(i) / float64(n))
		out = append(out, c.Add(geom.V(r, 0).Turn(t)))
	}
	return out
}

// area is the signed area of a loop in mm2.
func area(loop []geom.Vec) float64 {
	sum := 0.0
	for i, a := range loop {
		sum += a.Sub(loop[0]).Cross(loop[(i+1)%len(loop)].Sub(loop[0]))
	}
	return sum / 2
}

// slab is a worktop with a natural front edge of n corners and k round holes.
func slab(n, k int) [][]geom.Vec {
	loops := [][]geom.Vec{{geom.V(4000, 900), geom.V(0, 900)}}
	for i := range n {
		x := 4000 * float64(i) / float64(n-1)
		y := 30 + 20*math.Sin(x/237) + 5*math.Sin(x/31)
		loops[0] = append(loops[0], geom.V(unit.Length(x), unit.Length(math.Round(y*1000)/1000)))
	}
	for i := range k {
		c := geom.V(unit.Length(100+95*i), unit.Length(300+150*(i%4)))
		loops = append(loops, circle(c, 20, 48))
	}
	return loops
}

// tilted turns faces about all three axes, moves them far out and so fills all
// bits of every coordinate.
func tilted(faces []geom.Face) []geom.Face {
	turn := func(v geom.Vec3) geom.Vec3 {
		p := geom.V(v.X, v.Y).Turn(0.7)
		q := geom.V(p.Y, v.Z).Turn(1.1)
		r := geom.V(q.Y, p.X).Turn(-0.4)
		return geom.Vec3{X: r.Y, Y: q.X, Z: r.X}
	}
	out := make([]geom.Face, len(faces))
	for i, f := range faces {
		out[i] = f
		out[i].Normal = turn(f.Normal)
		out[i].Loops = nil
		for _, loop := range f.Loops {
			var l []geom.Vec3
			for _, v := range loop {
				l = append(l, turn(v).Add(geom.Vec3{X: 5123.4567, Y: -2345.678, Z: 712.345}))
			}
			out[i].Loops = append(out[i].Loops, l)
		}
	}
	return out
}

func build(t testing.TB, faces []geom.Face) Mesh {
	t.Helper()
	m, err := FromFaces(faces)
	if err != nil {
		t.Fatal(err)
	}
	return m
}
