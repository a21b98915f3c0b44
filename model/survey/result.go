package survey

import (
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// sound is the least redundancy at which a reading counts as checked by others.
const sound = 1e-6

// Placed is an adjusted point with the standard deviations of its coordinates.
type Placed struct {
	Name     Point
	At       geom.Vec
	SDX, SDY unit.Length
}

// WallBow is the adjusted bow of a wall, positive into the room.
type WallBow struct {
	From, To Point
	Bow      unit.Measured
}

// Outcome is what became of one reading. Residual is adjusted less observed;
// angular kinds have AngleResidual instead. Redundancy, from 0 to 1, is the
// share of an error of the reading that would show in its residual; the sum
// over all readings is the number of degrees of freedom. W is the residual over
// its own standard deviation, 0 for a reading that nothing checks.
type Outcome struct {
	Reading       Reading // SD or AngleSD filled in
	Residual      unit.Length
	AngleResidual unit.Angle
	Redundancy    float64
	W             float64
	Checked       bool
}

// Result is an adjusted network.
//
// Covariance is in mm2, a priori; rows and columns are x and y of each point
// in the order of Points, then the bows.
type Result struct {
	Points     []Placed // the chain first, in its order
	Bows       []WallBow
	Readings   []Outcome // in the order of the network
	Covariance [][]float64
	DOF        int     // degrees of freedom: readings that were not needed
	VTPV       float64 // weighted sum of squared residuals
	S0         float64 // sqrt(VTPV/DOF), 0 when DOF is 0
	Rounds     int
	Unchecked  bool    // DOF is 0: no reading checks another
	Assumed    []Point // corners taken as inside ones because nothing told

	// Loose is set when some points are held only by lengths that lie in line,
	// like a taut string. Then the corners in Squared were taken as the nearest
	// multiple of 45 degrees within 1.5 degrees (1 sd, judgement), which enters
	// coordinates, covariance and redundancy but not DOF and VTPV. Loose says what to
	// measure instead.
	Loose   *Problem
	Squared []Point

	system  *system
	network Network
	x       []float64
}

// At gives the adjusted place of a point, and whether it is in the network.
func (r *Result) At(p Point) (geom.Vec, bool) {
	i, ok := r.system.number[p]
	if !ok {
		return geom.Vec{}, false
	}
	return r.Points[i].At, true
}

// Network is what was adjusted.
func (r *Result) Network() Network { return r.network }

// Length is the adjusted distance of two points with its standard deviation.
// It gives an error for a point that is not in the network.
func (r *Result) Length(p, q Point) (unit.Measured, error) {
	f, err := r.Foretell(Reading{Kind: Distance, Points: []Point{p, q}})
	return f.Length, err
}

// Foretold is the value that a reading should have, from all the others.
type Foretold struct {
	Length  unit.Measured // of every kind but angles
	Angle   unit.Angle    // from 0 to 2 pi
	AngleSD unit.Angle
}

// Foretell computes what a reading of that kind between those points would
// give, with the standard deviation that follows from the adjustment. The
// reading's own value is not used. It gives an error for unknown points.
func (r *Result) Foretell(rd Reading) (Foretold, error) {
	w, err := r.compiled(rd)
	if err != nil {
		return Foretold{}, err
	}
	v, a := r.system.slope(&w, r.x)
	return foretold(&w, v, along(a, r.spread(a))), nil
}

// foretold gives a value and its variance their types.
func foretold(w *row, v, variance float64) Foretold {
	sd := math.Sqrt(max(0, variance))
	if w.kind == Angle {
		return Foretold{Angle: unit.Angle(math.Mod(v+2*math.Pi, 2*math.Pi)), AngleSD: unit.Angle(sd)}
	}
	return Foretold{Length: unit.Measured{Value: unit.Length(v), SD: unit.Length(sd)}}
}

// compiled makes ready a reading that is not one of the network, and refuses
// one that has no value in the adjusted shape.
func (r *Result) compiled(rd Reading) (row, error) {
	if want, ok := pointsOf[rd.Kind]; !ok || len(rd.Points) != want && !(rd.Kind == Width && len(rd.Points) == 6) || repeated(rd) {
		return row{}, bad(rd, "not a reading that can be foretold")
	}
	for _, p := range rd.Points {
		if _, ok := r.system.number[p]; !ok {
			return row{}, bad(rd, "there is no point %q", p)
		}
	}
	w, err := r.system.compile(rd)
	if err != nil {
		return row{}, err
	}
	if w.kind == Bow && w.bows[0] < 0 {
		return row{}, bad(rd, "no bow was measured on this wall")
	}
	if v := w.value(r.x, len(r.system.names)).v; math.IsNaN(v) || math.IsInf(v, 0) {
		return row{}, bad(rd, "the lines it needs do not meet")
	}
	return w, nil
}

// summarise derives what follows from the sum of squares and the degrees of
// freedom.
func (r *Result) summarise() {
	r.Unchecked, r.S0 = r.DOF == 0, 0
	if !r.Unchecked {
		r.S0 = math.Sqrt(r.VTPV / float64(r.DOF))
	}
}

// report fills a Result from the solution of a system.
func (s *system) report(n *Network, best candidate) *Result {
	x, sol, c := best.x, best.sol, best.prec
	r := &Result{
		DOF: s.spare(), VTPV: best.cost, Rounds: sol.rounds,
		Covariance: make([][]float64, len(x)), system: s, network: *n, x: x,
		Loose: best.loose, Squared: s.named(best.squared),
	}
	r.network.Readings = slices.Clone(n.Readings)
	r.summarise()
	for i := range x {
		r.Covariance[i] = make([]float64, len(x))
		for j := range x {
			if a, b := s.column[i], s.column[j]; a >= 0 && b >= 0 {
				r.Covariance[i][j] = c.q.At(a, b)
			}
		}
	}
	sd := func(i int) unit.Length { return unit.Length(math.Sqrt(max(0, r.Covariance[i][i]))) }
	for i, p := range s.names {
		at := geom.V(unit.Length(x[2*i]), unit.Length(x[2*i+1]))
		r.Points = append(r.Points, Placed{p, at, sd(2 * i), sd(2*i + 1)})
	}
	for i, b := range s.bowed {
		e := 2*len(s.names) + i
		r.Bows = append(r.Bows, WallBow{s.names[b.from], s.names[b.to], unit.Measured{Value: unit.Length(x[e]), SD: sd(e)}})
	}
	for i, rd := range n.Readings {
		w := s.rows[i]
		o := Outcome{Reading: rd, Redundancy: c.redundancy[i], Checked: !r.Unchecked && c.redundancy[i] >= sound}
		v := -sol.miss[i] * w.sd
		if rd.Kind.angular() {
			o.Reading.AngleSD, o.AngleResidual = unit.Angle(w.sd), unit.Angle(v)
		} else {
			o.Reading.SD, o.Residual = unit.Length(w.sd), unit.Length(v)
		}
		if o.Checked {
			o.W = v / (w.sd * math.Sqrt(o.Redundancy))
		}
		r.Readings = append(r.Readings, o)
	}
	return r
}
