package hold

import (
	"math"

	"slabwright/model"
	"slabwright/model/atonce"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Remedy is one change with which a slab holds, the least of its kind, found by
// computing it on the meshes on which the slab itself was worked out. What is not
// changed is zero.
type Remedy struct {
	Thick   unit.Length     // of the slab
	Joint   model.JointKind // of all its joints
	Section string          // of all its angles
	Wall    string          // along which Bracket carries it too
	Bracket *model.Part
	Prop    *geom.Vec // one more leg, from the left end and the back edge
	Post    string    // that goes by Way, to To
	Cuts    []string  // cut into it, that go by Way together
	Way     geom.Vec  // in the slab's axes
	To      geom.Vec  // from the left end and the back edge
	Shallow string    // groove or pocket of which Depth is deep enough
	Depth   unit.Length
	Rods    int  // in all
	With    Slab // the slab with that change
}

// way is one kind of change: what it is called where none of them helps, and how
// the least change of that kind is looked for. It says whether there is anything
// of the kind to change.
type way struct {
	what string
	kind Ways
	look func(seeker) (r Remedy, there, found bool)
}

// ways are the kinds of changes, in the order in which they are told.
var ways = []way{
	{"more wood", AnyWay, seeker.thicker},
	{"another depth of its grooves and pockets", CutWays, seeker.shallower},
	{"another place for what is cut into it", CutWays, seeker.cutElsewhere},
	{"a tighter joint", AnyWay, seeker.tighter},
	{"larger angles", AnyWay, seeker.largerAngles},
	{"a bracket along one more wall", SpanWays, seeker.oneMoreWall},
	{"up to three more rods", SpanWays, seeker.moreRods},
	{"another place for a table leg", SpanWays, seeker.postElsewhere},
	{"one more table leg", SpanWays, seeker.oneMorePost},
}

// Wanted is what is asked of a slab: the share of something that it uses, which
// must come down to 1, and what of its statics that share is taken from. It may be
// made so much thicker, or changed in some ways only.
type Wanted struct {
	Used    func(Slab) float64
	Of      Wants
	Thicker unit.Length
	Only    Ways
}

// Ways are kinds of changes.
type Ways int

// Kinds of changes: all of them; what is cut into the slab; a shorter span.
const (
	AnyWay Ways = iota
	CutWays
	SpanWays
)

// seeker looks for changes with which a slab is what is wanted.
type seeker struct {
	design *model.Design
	job    model.Job
	part   *model.Part
	drawn  Slab
	wanted Wanted
	like   *pair // slabs much like those that are tried; nil while none stands

	sinksAt geom.Vec // where it sinks most, or goes down when it tips
}

// pair is one slab on both meshes.
type pair struct{ fine, coarse Slab }

// Remedies looks for the least changes with which a slab is what is wanted, one of
// each kind. Missed names the kinds of which none does it.
func Remedies(d *model.Design, j model.Job, part string, w Wanted) (found []Remedy, missed []string) {
	drawn, known := Of(d, j).Of(part)
	if !known || drawn.Trouble != "" && !drawn.Falls {
		return nil, nil
	}
	s := seeker{design: d, job: j, part: d.Part(part), drawn: drawn, wanted: w, sinksAt: drawn.lowestOwn}
	switch {
	case drawn.Falls:
		s.sinksAt = centre(s.part)
	case drawn.Tips:
		s.sinksAt = s.part.Slab.Pose.Unplan(drawn.TipsAt)
	default:
		s.like = &pair{w.Of.of(drawn), s.rough(change{})}
	}
	type answer struct {
		r            Remedy
		there, found bool
	}
	answers := make([]answer, len(ways))
	atonce.Each(len(ways), func(i int) {
		if w.Only != AnyWay && w.Only != ways[i].kind {
			return
		}
		a := &answers[i]
		a.r, a.there, a.found = ways[i].look(s)
	})
	for i, a := range answers {
		switch {
		case a.found:
			found = append(found, a.r)
		case a.there:
			missed = append(missed, ways[i].what)
		}
	}
	return found, missed
}

func (s seeker) rough(c change) Slab { return tried(s.design, s.job, s.part.ID, c, s.wanted.Of, true) }

// used is the share that a slab uses.
func (s seeker) used(w Slab) float64 {
	if w.Trouble != "" {
		return math.Inf(1)
	}
	return s.wanted.Used(w)
}

// guess is about what share would be used with a change.
func (s seeker) guess(c change) float64 {
	w := s.rough(c)
	if w.Trouble != "" || s.like == nil {
		return s.used(w)
	}
	return s.used(w.scaled(s.like.fine, s.like.coarse))
}

// does tells whether a change does it, and gives the slab with it.
func (s seeker) does(c change) (Slab, bool) {
	w := tried(s.design, s.job, s.part.ID, c, s.wanted.Of, false)
	return w, s.used(w) <= 1
}

// near is how far above 1 a guess may be and still be worth a look: places where a
// person stands worst move with supports.
const near = 1.02

// least finds the least number of steps, up to most, with which the change of that
// many steps does it. Rough answers tell about where, and are told anew how rough
// they are each time a fine one has decided.
func (s seeker) least(most int, of func(int) change) (int, Slab, bool) {
	if most < 1 || s.guess(of(most)) > near {
		return 0, Slab{}, false
	}
	bad, good := 0, most+1
	var best Slab
	for good-bad > 1 {
		n := s.between(bad, good, of)
		switch {
		case n > most:
			return 0, Slab{}, false
		case n == good:
			n--
		}
		w, ok := s.does(of(n))
		if ok {
			good, best = n, w
		} else {
			bad = n
		}
		if w.Trouble == "" && s.like != nil {
			s.like = &pair{w, s.rough(of(n))}
		}
	}
	return good, best, good <= most
}

// between is the least number of steps between a bad and a good one that seems to do
// it; the good one where none does.
func (s seeker) between(bad, good int, of func(int) change) int {
	low, high := bad, good
	for high-low > 1 {
		if mid := (low + high) / 2; s.guess(of(mid)) <= 1 {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// leastSurely does the same by fine answers alone, where rough ones tell too little:
// stresses at a cut.
func (s seeker) leastSurely(most int, of func(int) change) (int, Slab, bool) {
	if most < 1 || s.guess(of(most)) > near {
		return 0, Slab{}, false
	}
	best, ok := s.does(of(most))
	if !ok {
		return 0, Slab{}, false
	}
	bad, good := 0, most
	for good-bad > 1 {
		mid := (bad + good) / 2
		if w, ok := s.does(of(mid)); ok {
			good, best = mid, w
		} else {
			bad = mid
		}
	}
	return good, best, true
}
