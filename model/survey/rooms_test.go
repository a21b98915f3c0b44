package survey_test

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"slabwright/model/survey"
	"slabwright/model/unit"
)

// observation is a reading in a table of testdata, with what is expected of it.
type observation struct {
	ID           string
	Kind         string
	Pts          []survey.Point
	A, B, D      unit.Length
	Value, Sigma float64
	V, R         float64
	W            *float64
}

// reading translates an observation. Tables count angles counter-clockwise and
// so does the tool; mirrored tables list them in walking order.
func (o observation) reading(mirrored bool) survey.Reading {
	r := survey.Reading{ID: o.ID, Points: o.Pts, A: o.A, B: o.B, Length: unit.Length(o.Value), SD: unit.Length(o.Sigma)}
	switch o.Kind {
	case "dist":
		r.Kind = survey.Distance
	case "hyp":
		r.Kind = survey.SquareOff
	case "widthpar":
		r.Kind, r.A = survey.Width, o.D
	case "angle":
		r.Kind, r.Length, r.SD = survey.Angle, 0, 0
		r.Angle, r.AngleSD = unit.Angle(o.Value)*unit.Degree, unit.Angle(o.Sigma)*unit.Degree
		if mirrored {
			r.Points = []survey.Point{o.Pts[2], o.Pts[1], o.Pts[0]}
		}
	}
	return r
}

type room struct {
	ID, Title   string
	Open        bool
	Unknowns    []string
	Adjusted    map[survey.Point][2]float64
	SD          []float64
	Qxx         [][]float64
	VTPV        float64
	DOF         int
	S0          *float64
	Readings    []observation
	Functionals []struct {
		observation
		SD float64
	}
}

func load(t testing.TB, file string, into any) {
	t.Helper()
	b, err := os.ReadFile("testdata/" + file)
	if err == nil {
		err = json.Unmarshal(b, into)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// rooms reads the synthetic rooms; the file names their source.
func rooms(t testing.TB) []room {
	var f struct{ Rooms []room }
	load(t, "rooms.json", &f)
	return f.Rooms
}

// network mirrors a room of the table (y into the room, counter-clockwise) into
// the tool's frame by listing the corners clockwise.
func (r room) network() survey.Network {
	n := survey.Network{Chain: []survey.Point{"A", "B", "C", "D"}, Closed: !r.Open, Base: [2]survey.Point{"B", "C"}}
	for _, o := range r.Readings {
		n.Readings = append(n.Readings, o.reading(true))
	}
	return n
}

func adjust(t testing.TB, n survey.Network) *survey.Result {
	t.Helper()
	r, err := survey.Adjust(n)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.10g, want %.10g within %g", what, got, want, tol)
	}
}

// coordinate finds "C.x" in a result: its index in the covariance and value.
func coordinate(r *survey.Result, name string) (int, float64) {
	for i, p := range r.Points {
		switch name {
		case string(p.Name) + ".x":
			return 2 * i, float64(p.At.X)
		case string(p.Name) + ".y":
			return 2*i + 1, float64(p.At.Y)
		}
	}
	return -1, math.NaN()
}

func TestSyntheticRooms(t *testing.T) {
	for _, room := range rooms(t) {
		t.Run(room.ID, func(t *testing.T) {
			r := adjust(t, room.network())
			for p, at := range room.Adjusted {
				got, _ := r.At(p)
				near(t, string(p)+".x", float64(got.X), at[0], 6e-5)
				near(t, string(p)+".y", float64(got.Y), -at[1], 6e-5)
			}
			mirror := func(name string) float64 {
				if name[2] == 'y' {
					return -1
				}
				return 1
			}
			for i, a := range room.Unknowns {
				ia, _ := coordinate(r, a)
				near(t, "sd of "+a, math.Sqrt(r.Covariance[ia][ia]), room.SD[i], 6e-6)
				for j, b := range room.Unknowns {
					ib, _ := coordinate(r, b)
					near(t, "covariance "+a+" "+b, r.Covariance[ia][ib]*mirror(a)*mirror(b), room.Qxx[i][j], 2e-6*max(1, math.Abs(room.Qxx[i][j])))
				}
			}
			if r.DOF != room.DOF || r.Unchecked != (room.DOF == 0) {
				t.Errorf("degrees of freedom %d, unchecked %v, want %d", r.DOF, r.Unchecked, room.DOF)
			}
			near(t, "vTPv", r.VTPV, room.VTPV, 1e-6*max(1, room.VTPV))
			if room.S0 != nil {
				near(t, "s0", r.S0, *room.S0, 6e-6)
			}
			sum := 0.0
			for i, o := range room.Readings {
				got := r.Readings[i]
				v := float64(got.Residual) + got.AngleResidual.Degrees()
				near(t, o.ID+" residual", v, o.V, 6e-5)
				near(t, o.ID+" redundancy", got.Redundancy, o.R, 6e-6)
				if got.Checked != (o.W != nil) {
					t.Errorf("%s: checked %v", o.ID, got.Checked)
				}
				if o.W != nil {
					near(t, o.ID+" w", got.W, *o.W, 6e-5)
				}
				sum += got.Redundancy
			}
			near(t, "sum of redundancies", sum, float64(room.DOF), 1e-9)
			for _, f := range room.Functionals {
				got, err := r.Foretell(f.reading(true))
				if err != nil {
					t.Fatal(err)
				}
				value, sd := float64(got.Length.Value), float64(got.Length.SD)
				if f.Kind == "angle" {
					value, sd = got.Angle.Degrees(), got.AngleSD.Degrees()
				}
				near(t, f.ID, value, f.Value, 6e-5)
				near(t, f.ID+" sd", sd, f.SD, 6e-5)
			}
		})
	}
}

// BenchmarkRoom is a closed room with 16 readings.
func BenchmarkRoom(b *testing.B) {
	n := rooms(b)[0].network()
	n.Readings = append(n.Readings, n.Readings...)
	for i := range n.Readings {
		n.Readings[i].ID = ""
	}
	for b.Loop() {
		if _, err := survey.Adjust(n); err != nil {
			b.Fatal(err)
		}
	}
}
