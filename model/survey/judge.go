package survey

import (
	"math"

	"slabwright/model/unit"
)

// matters is how much of a reading's error a deciding measure may take over
// before it hangs on that reading.
const matters = 0.05

// Options say what a verdict is wanted for.
type Options struct {
	Deciding []Deciding // nil: those of Result.Deciding
	Next     int        // how many further readings to propose at most; 0: 5, below 0: none
}

// Verdict is what the readings of an adjusted network say about each other.
type Verdict struct {
	Test      GlobalTest
	Readings  []Judged // in the order of the network
	Deciding  []Decided
	Suspects  []Suspect  // the readings that do not agree, at most two slips
	More      bool       // leaving these out does not end the contradiction; or none can be left out
	Without   *Result    // adjusted without one reading for each slip; nil without suspects
	AfterTest GlobalTest // of Without
	Unchecked []int      // readings that no other reading checks
	Next      []Candidate
}

// Judged is a reading with what could hide in it. The least error that is
// noticed is the smallest one that its residual betrays with 80 % (internal
// reliability); 0 for a reading that nothing checks, where no error is.
// Sway and Damage tell of the deciding measure that is hit most: how far one
// standard deviation of the reading moves it, and how far an error just too
// small to be noticed does (external reliability).
type Judged struct {
	Outcome
	Least      unit.Length // of every kind but angles
	LeastAngle unit.Angle
	Sway       unit.Length
	Damage     unit.Length // 0 for a reading that nothing checks
	Damages    string      // name of that deciding measure, "" if there is none
	Matters    bool        // some deciding measure takes over more than a twentieth of its error
	Repeated   bool        // only repeats of the same reading check it: a wrong corner stays unseen
	Suspected  bool        // it is among the suspects
}

// Decided is a deciding measure as adjusted. Unchecked says that it hangs on a
// reading that nothing checks: then no chance of fitting may be told.
type Decided struct {
	Name      string
	Value     Foretold
	SD        unit.Length // an angle's at the end of its arm
	Unchecked bool
	Damage    unit.Length // largest of an unnoticed error in a checked reading
	By        int         // that reading, -1 if there is none
}

// Judge holds the readings against each other: the global test, slips and how
// well each reading is checked, and which reading to take next.
func (r *Result) Judge(o Options) Verdict {
	v := Verdict{Test: r.Test()}
	deciding := o.Deciding
	if deciding == nil {
		deciding = r.Deciding()
	}
	s := r.stake(deciding)
	v.Deciding = r.decided(s)
	for i := range r.Readings {
		j := r.judged(i, s)
		if !j.Checked {
			v.Unchecked = append(v.Unchecked, i)
		}
		v.Readings = append(v.Readings, j)
	}
	base := r.whole()
	found := r.suspects()
	v.Suspects, v.More = found.list, found.more
	if len(found.list) > 0 {
		base, v.Without, v.AfterTest = found.rest, found.rest.Result, found.rest.Test()
		for _, x := range v.Suspects {
			for _, a := range x.Readings {
				v.Readings[a.Index].Suspected = true
			}
		}
	}
	if o.Next >= 0 {
		most := o.Next
		if most == 0 {
			most = 5
		}
		v.Next = base.next(r, deciding, most)
		for i := range v.Next {
			base.renumber(v.Next[i].Checks)
			base.renumber(v.Next[i].Left)
		}
	}
	return v
}

// stake is what is at stake in an adjusted network: its readings and the
// deciding measures as linear functions.
type stake struct {
	levers
	names []string
	rows  []row
	f     [][]term    // deciding measures, mm
	qf    [][]float64 // columns of the covariance
	pull  [][]float64 // mm of measure f by mm or rad of reading i
}

// stake leaves out deciding measures that the shape does not have.
func (r *Result) stake(deciding []Deciding) stake {
	s := stake{levers: r.levers()}
	for _, d := range deciding {
		w, err := r.compiled(d.Reading)
		if err != nil {
			continue
		}
		_, f := r.system.slope(&w, r.x)
		if w.kind == Angle {
			for k := range f {
				f[k].by *= float64(d.Arm)
			}
		}
		qf := r.spread(f)
		pull := make([]float64, len(s.a))
		for i, a := range s.a {
			pull[i] = along(a, qf) / (s.sd[i] * s.sd[i])
		}
		s.names, s.rows = append(s.names, d.Name), append(s.rows, w)
		s.f, s.qf, s.pull = append(s.f, f), append(s.qf, qf), append(s.pull, pull)
	}
	return s
}

// leansOn says whether a measure hangs on a reading: takes over a twentieth of
// its error, or of an angle's standard deviation 0.05 mm. None hangs on a bow,
// which stands for itself: the straightedge on the wall shows what it reads.
func leansOn(pull, sd float64, kind Kind) bool {
	if kind == Bow {
		return false
	}
	if kind.angular() {
		pull *= sd
	}
	return math.Abs(pull) > matters
}

// judged tells what could hide in reading i.
func (r *Result) judged(i int, s stake) Judged {
	j := Judged{Outcome: r.Readings[i]}
	sd, kind := s.sd[i], j.Reading.Kind
	sway := 0.0
	for k, pull := range s.pull {
		if m := math.Abs(pull[i]) * sd; m > sway {
			sway, j.Damages = m, s.names[k]
		}
		j.Matters = j.Matters || leansOn(pull[i], sd, kind)
	}
	j.Sway = unit.Length(sway)
	if !j.Checked {
		return j
	}
	deviations := noticed / math.Sqrt(j.Redundancy)
	if kind.angular() {
		j.LeastAngle = unit.Angle(deviations * sd)
	} else {
		j.Least = unit.Length(deviations * sd)
	}
	j.Damage = unit.Length(deviations * sway)
	j.Repeated = s.onlyRepeats(i, r.system.rows)
	return j
}

// onlyRepeats says whether a reading would be unchecked if all readings of the
// same thing were one.
func (s stake) onlyRepeats(i int, list []row) bool {
	weight, repeats := 0.0, false
	for j := range list {
		if list[i].repeats(&list[j]) {
			weight += 1 / (s.sd[j] * s.sd[j])
			repeats = repeats || i != j
		}
	}
	return repeats && 1-s.shared(i, i)*weight < sound
}

func (r *Result) decided(s stake) []Decided {
	var out []Decided
	for k, name := range s.names {
		value, own := r.system.slope(&s.rows[k], r.x)
		d := Decided{
			Name: name, By: -1,
			Value: foretold(&s.rows[k], value, along(own, r.spread(own))),
			SD:    unit.Length(math.Sqrt(max(0, along(s.f[k], s.qf[k])))),
		}
		for i, o := range r.Readings {
			if !o.Checked {
				d.Unchecked = d.Unchecked || leansOn(s.pull[k][i], s.sd[i], o.Reading.Kind)
				continue
			}
			if m := unit.Length(math.Abs(s.pull[k][i]) * noticed * s.sd[i] / math.Sqrt(o.Redundancy)); m > d.Damage {
				d.Damage, d.By = m, i
			}
		}
		out = append(out, d)
	}
	return out
}

// Inseparable lists groups of checked readings of which nothing tells which one
// is wrong, when one is: their residuals go together (correlation 0.95 or
// more).
func (r *Result) Inseparable() [][]int {
	l := r.levers()
	group := make([]int, len(l.a)) // number of the first reading of its group
	for i := range group {
		group[i] = i
		for j := range i {
			if !r.Readings[i].Checked || !r.Readings[j].Checked || group[i] == group[j] {
				continue
			}
			q := l.sd[i] * l.sd[j] * math.Sqrt(r.Readings[i].Redundancy*r.Readings[j].Redundancy)
			if math.Abs(l.shared(i, j)) < inseparable*q {
				continue
			}
			from, to := max(group[i], group[j]), min(group[i], group[j])
			for k := range i + 1 {
				if group[k] == from {
					group[k] = to
				}
			}
		}
	}
	var out [][]int
	for i := range group {
		var g []int
		for j := range group {
			if group[j] == i {
				g = append(g, j)
			}
		}
		if len(g) > 1 {
			out = append(out, g)
		}
	}
	return out
}
