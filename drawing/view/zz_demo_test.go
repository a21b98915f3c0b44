package view

import (
	"fmt"
	"os"
	"testing"

	"slabwright/model/geom"
)

func TestDemo(t *testing.T) {
	s := desk()
	for i, l := range []Look{Plan(), Below(), Front(), FromLeft(), Isometric(), Section(geom.Through(geom.V(1000, -700), geom.V(1000, 900))), PlanAt(720)} {
		v := Of(s, l)
		f, _ := os.Create(fmt.Sprintf("/tmp/view_demo_%d.svg", i))
		b := v.Bounds
		fmt.Fprintf(f, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="%g %g %g %g" width="1600">`, b.Min.X-20, -b.Max.Y-20, b.Width()+40, b.Height()+40)
		fmt.Fprint(f, `<rect x="-9999" y="-9999" width="19999" height="19999" fill="white"/>`)
		for _, c := range v.Cuts {
			fmt.Fprint(f, `<path fill="#fc8" fill-rule="evenodd" d="`)
			for _, l := range c.Loops {
				for k, p := range l {
					fmt.Fprintf(f, "%c%g %g", "ML"[min(k, 1)], p.X, -p.Y)
				}
				fmt.Fprint(f, "Z")
			}
			fmt.Fprint(f, `"/>`)
		}
		n := 0
		for _, l := range v.Lines() {
			n++
			col := [...]string{"red", "black", "blue"}[l.Kind]
			dash := [...]string{"", "", "12 6"}[l.Kind]
			if s.Items[l.Item].Role.over() {
				col = "green"
			}
			fmt.Fprintf(f, `<path fill="none" stroke="%s" stroke-dasharray="%s" d="`, col, dash)
			for k, p := range l.Points {
				fmt.Fprintf(f, "%c%g %g", "ML"[min(k, 1)], p.X, -p.Y)
			}
			if l.Closed {
				fmt.Fprint(f, "Z")
			}
			fmt.Fprint(f, `"/>`)
		}
		fmt.Fprint(f, `</svg>`)
		f.Close()
		fmt.Println(l, len(v.Segments), n, len(v.Cuts))
	}
}
