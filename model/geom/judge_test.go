package geom

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/tdewolff/canvas"
)

// canvasPath and canvasArea hand regions to the path booleans of
// github.com/tdewolff/canvas, a separate implementation (after F. Martínez et
// al., 2013), and take the area back.
func canvasPath(r Region) *canvas.Path {
	p := &canvas.Path{}
	for _, l := range r.Loops() {
		for i, v := range l {
			if i == 0 {
				p.MoveTo(float64(v.X), float64(v.Y))
			} else {
				p.LineTo(float64(v.X), float64(v.Y))
			}
		}
		p.Close()
	}
	return p
}

func canvasArea(p *canvas.Path) float64 {
	sum := 0.0
	for _, s := range p.Split() {
		c := s.Coords()
		for i, a := range c {
			b := c[(i+1)%len(c)]
			sum += (a.X*b.Y - a.Y*b.X) / 2
		}
	}
	return sum
}

// TestJudge compares areas with the outside judge. It works on floats, so it is
// asked about shapes well above its own grid only.
func TestJudge(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 42))
	for i := range 600 {
		f := families[i%len(families)]
		if f.name == "micro" || f.name == "huge" || f.name == "needle" {
			continue
		}
		a, b := f.make(r), f.make(r)
		t.Run(fmt.Sprint(i, f.name), func(t *testing.T) {
			p, q := canvasPath(a), canvasPath(b)
			tol := rounding(a, b)
			near(t, "or", float64(a.Union(b).Area()), canvasArea(p.Or(q)), tol)
			near(t, "and", float64(a.Intersect(b).Area()), canvasArea(p.And(q)), tol)
			near(t, "not", float64(a.Minus(b).Area()), canvasArea(p.Not(q)), tol)
			near(t, "xor", float64(a.Xor(b).Area()), canvasArea(p.Xor(q)), tol)
		})
	}
}
