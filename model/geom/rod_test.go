package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/unit"
)

func TestRods(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 0))
	for i := range 200 {
		a := Vec3{pick(r, -900, 900), pick(r, -900, 900), pick(r, -900, 900)}
		axis := Vec3{pick(r, -300, 300), pick(r, -300, 300), pick(r, -300, 300)}
		switch i % 4 {
		case 0:
			axis = Vec3{0, 0, axis.Z}
		case 1:
			axis.Z = 0
		}
		radius := pick(r, 2, 40)
		t.Run(fmt.Sprint("rod ", i), func(t *testing.T) {
			s := Rod(a, a.Add(axis), radius, 0.05)
			closed(t, s)
			near(t, "volume", float64(s.Volume()), math.Pi*float64(radius*radius*axis.Len()), 1e-6*float64(s.Volume()))
			closed(t, s.Place(Pose{At: Vec3{1, 2, 3}, Turn: 0.3}).Place(Pose{Turn: 1}))
		})
	}
	nan := unit.Length(math.NaN())
	for _, s := range []Solid{Rod(Vec3{}, Vec3{}, 5, 0.1), Rod(Vec3{}, Vec3{1, 0, 0}, -5, 0.1), Rod(Vec3{nan, 0, 0}, Vec3{}, 5, 0.1),
		Cylinder(V(0, 0), 0, 0, 1, 0.1, "c"), Cylinder(V(0, 0), 5, 1, 0, 0.1, "c"), Prism(Region{}, 0, 1, "p"), {}} {
		if s.Err() == nil || s.Faces() != nil || s.Bounds() != (Box{}) || s.Centroid() != (Vec3{}) || s.Layers() != nil {
			t.Errorf("a solid that cannot be made: %v", s.Err())
		}
	}
}
