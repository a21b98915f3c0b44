package survey

import (
	"math"
	"slices"

	"slabwright/model/unit"
)

// Candidate is a reading that could be taken next, and what it would bring.
type Candidate struct {
	Reading    Reading       // without a value; its standard deviation is filled in
	Expected   Foretold      // what it will read if all is well
	SDs        []unit.Length // of the deciding measures, with it
	Worst      unit.Length   // the largest of them
	Checks     []int         // readings, unchecked so far, that it checks
	Left       []int         // readings that it leaves unchecked
	LeftMatter int           // how many of these a deciding measure hangs on
	Damage     unit.Length   // the most that an unnoticed error in a checked reading moves a deciding measure
	Unseen     unit.Length   // largest error of a checked length that may still go unnoticed
	Redundancy float64       // its own: how well the others check it
	Weakest    float64       // the smallest redundancy of any reading
}

// Weigh computes what one more reading would bring, from the adjustment as it
// is: a second row changes the covariance by rank one, whatever it reads. The
// numbers in Checks and Left are those of the readings of this result. It gives
// an error for a reading that the shape does not have. Deciding may be nil as
// in Options.
func (r *Result) Weigh(rd Reading, deciding []Deciding) (Candidate, error) {
	if deciding == nil {
		deciding = r.Deciding()
	}
	return r.weigh(rd, r.stake(deciding))
}

func (r *Result) weigh(rd Reading, s stake) (Candidate, error) {
	w, err := r.compiled(rd)
	if err != nil {
		return Candidate{}, err
	}
	value, a := r.system.slope(&w, r.x)
	u := r.spread(a)
	own := along(a, u)
	c := Candidate{Reading: rd, Expected: foretold(&w, value, own)}
	c.Reading.Length, c.Reading.Angle = c.Expected.Length.Value, c.Expected.Angle
	sd := r.network.Accuracy.of(c.Reading)
	c.Reading.Length, c.Reading.Angle = 0, 0
	if rd.Kind.angular() {
		c.Reading.AngleSD = unit.Angle(sd)
	} else {
		c.Reading.SD = unit.Length(sd)
	}
	d := sd*sd + own
	c.Redundancy, c.Weakest = sd*sd/d, sd*sd/d

	shift := make([]float64, len(s.f)) // covariance of each deciding measure with the candidate
	for k, f := range s.f {
		shift[k] = along(f, u)
		v := unit.Length(math.Sqrt(max(0, along(f, s.qf[k])-shift[k]*shift[k]/d)))
		c.SDs, c.Worst = append(c.SDs, v), max(c.Worst, v)
	}
	for i, o := range r.Readings {
		moved := along(s.a[i], u)
		si := s.sd[i]
		redundancy := moved * moved / (si * si * d)
		if o.Checked {
			redundancy += o.Redundancy
		}
		c.Weakest = min(c.Weakest, redundancy)
		sway, needed := 0.0, false
		for k := range s.f {
			pull := s.pull[k][i] - shift[k]*moved/(d*si*si)
			sway = max(sway, math.Abs(pull)*si)
			needed = needed || leansOn(pull, si, o.Reading.Kind)
		}
		switch {
		case redundancy < sound:
			c.Left = append(c.Left, i)
			if needed {
				c.LeftMatter++
			}
			continue
		case !o.Checked:
			c.Checks = append(c.Checks, i)
		}
		c.hides(o.Reading.Kind, si, redundancy, sway)
	}
	sway := 0.0
	for k := range s.f {
		sway = max(sway, math.Abs(shift[k])/d*sd)
	}
	c.hides(rd.Kind, sd, c.Redundancy, sway)
	return c, nil
}

// hides counts in what may go unnoticed in one checked reading.
func (c *Candidate) hides(kind Kind, sd, redundancy, sway float64) {
	deviations := noticed / math.Sqrt(redundancy)
	c.Damage = max(c.Damage, unit.Length(deviations*sway))
	if !kind.angular() {
		c.Unseen = max(c.Unseen, unit.Length(deviations*sd))
	}
}

// better orders candidates: first by how many readings stay unchecked that a
// deciding measure hangs on, then by what an unnoticed error can do, then by
// how well the worst deciding measure is known. Differences below a hundredth
// of a millimetre are none; then fewer unchecked readings and a smaller unseen
// error win, and last the one listed first.
func better(a, b Candidate) int {
	if a.LeftMatter != b.LeftMatter {
		return a.LeftMatter - b.LeftMatter
	}
	for _, v := range [][2]unit.Length{{a.Damage, b.Damage}, {a.Worst, b.Worst}} {
		x, y := math.Round(100*float64(v[0])), math.Round(100*float64(v[1]))
		if x != y {
			return int(math.Copysign(1, x-y))
		}
	}
	if len(a.Left) != len(b.Left) {
		return len(a.Left) - len(b.Left)
	}
	return int(math.Round(10*float64(a.Unseen)) - math.Round(10*float64(b.Unseen)))
}

// known is the redundancy from which on a reading tells nothing new.
const known = 0.99

// next lists the readings that would help most, none of which is among those
// of the whole network already.
func (r *Result) next(whole *Result, deciding []Deciding, most int) []Candidate {
	s := r.stake(deciding)
	view := r.sight()
	var out []Candidate
	for _, rd := range r.possible() {
		w, err := r.compiled(rd)
		if err != nil || whole.taken(rd) || !view.free(r.system.drawn(&w, r.x)) {
			continue
		}
		if c, err := r.weigh(rd, s); err == nil && (c.Redundancy < known || len(c.Checks) > 0) {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, better)
	return out[:min(most, len(out))]
}

// taken says whether that very thing was measured already.
func (r *Result) taken(rd Reading) bool {
	w, err := r.compiled(rd)
	return err == nil && slices.ContainsFunc(r.system.rows, func(o row) bool { return o.repeats(&w) })
}
