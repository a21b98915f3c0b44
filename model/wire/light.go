package wire

import (
	"slices"

	"slabwright/model"
	"slabwright/model/calc/wiring"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// LightRun is a light strip, cut to its groove, with its feed.
type LightRun struct {
	Light    model.Light
	Slab     string
	Groove   model.Feature
	Found    bool
	Room     unit.Length // in the groove, without the end caps
	Run      unit.Length // of the strip
	Pieces   int         // pitches
	Power    wiring.Watt
	Current  wiring.Ampere
	BothEnds bool
	Feeds    []unit.Length // length of each feed, from the dimmer if there is one
	Dimmer   *Dimmer       // nil: none, or no way leads to it
	Wire     wiring.Conductor
	WireOK   bool
	Fuse     wiring.Ampere
	Drop     wiring.Volt // to the darkest place: feed and strip; strip only if its resistance is told
	Told     bool        // the strip's resistance is told
}

// Dimmer sits between the fuse and the feeds of a light, at low voltage.
type Dimmer struct {
	Device  string
	Lead    unit.Length   // of the cable from the supply to it
	Carries wiring.Ampere // of all lights that it dims
	Rated   wiring.Ampere // smallest usual one with reserve
	OK      bool          // there is one
	First   bool          // this light is the first of those that it dims
}

// SupplyPlan is a supply with all that it feeds.
type SupplyPlan struct {
	Device  string
	Lights  []string
	Load    wiring.Watt
	Rated   wiring.Watt // smallest usual one with reserve
	OK      bool
	Voltage wiring.Volt
	Mixed   bool // its lights want different voltages
}

// MostDrop is how much of the voltage may be lost from the supply to the
// darkest place (common practice, no source).
const MostDrop = 0.05

const (
	endCap   unit.Length = 10 // at each end of a groove
	feedDia  unit.Length = 6  // of a two-core feed
	feedPart             = 0.4
)

// light sizes a light run and leads its feed.
func (l *layer) light(light model.Light, at map[string]int) (LightRun, []Run) {
	r := LightRun{Light: light, Told: light.Strip.Resistance > 0}
	p, groove, ok := l.groove(light.In)
	if !ok {
		return r, nil
	}
	r.Slab, r.Groove = p.ID, groove
	for i := 1; i < len(groove.Path); i++ {
		r.Room += groove.Path[i].Sub(groove.Path[i-1]).Len()
	}
	r.Room -= 2 * endCap
	r.Run, r.Pieces = light.Strip.Cut(r.Room)
	r.Power, r.Current = light.Strip.Draw(r.Run)
	allowed := wiring.Volt(MostDrop * float64(light.Strip.Supply))
	r.BothEnds = light.Strip.Longest > 0 && r.Run > light.Strip.Longest || light.Strip.Drop(r.Run, false) > allowed*(1-feedPart)
	supply, known := at[light.Supply]
	if !known || r.Pieces == 0 {
		return r, nil
	}
	from, lead := supply, []Run(nil)
	if light.Dimmer != "" {
		if from, known = at[light.Dimmer]; !known {
			return r, nil
		}
		if from != supply {
			if lead = l.toDimmer(light, supply, from); lead == nil {
				return r, nil
			}
		}
		r.Dimmer = &Dimmer{Device: light.Dimmer}
		for _, q := range lead {
			r.Dimmer.Lead += q.Needed
		}
	}
	runs := l.feeds(light, p, groove, from)
	if len(runs) == 0 {
		return r, nil
	}
	if !r.BothEnds {
		runs = runs[:1]
	} else if len(runs) < 2 {
		r.BothEnds = false
	}
	r.Found = true
	far := unit.Length(0)
	for _, f := range runs {
		r.Feeds = append(r.Feeds, f.Needed)
		far = max(far, f.Needed)
	}
	current, over := r.Current/wiring.Ampere(len(runs)), far
	if r.Dimmer != nil { // one fuse and one lead before it take all of the current
		over = r.Dimmer.Lead + far*unit.Length(current/r.Current)
		current = r.Current
	}
	strip := light.Strip.Drop(r.Run, r.BothEnds)
	r.Wire, r.WireOK = wiring.Feed(current, over, max(allowed-strip, allowed*feedPart/2))
	if !r.WireOK { // the thickest there is
		r.Wire = wiring.Conductors[len(wiring.Conductors)-1]
	}
	r.Fuse, _ = wiring.Fuse(current, r.Wire.Bundled())
	r.Drop = strip + wiring.FeedDrop(r.Wire.Resistance.At(40), over, current)
	return r, append(lead, runs...)
}

// toDimmer leads the cable from the supply to the dimmer, nil if no way leads
// there.
func (l *layer) toDimmer(light model.Light, supply, dimmer int) []Run {
	c := model.Cable{Name: "lead to the dimmer of " + light.Name, From: light.Supply, To: light.Dimmer, Class: model.LowVoltage, Dia: feedDia, Pos: light.Pos}
	r := l.run(c, supply, dimmer, false)
	r.Feeds, r.ToDimmer = light.Name, true
	if !r.Found {
		return nil
	}
	return []Run{r}
}

// feeds leads a feed to each end of a groove that can be reached, the shorter
// one first. A channel that only the second feed would take is not marked as
// used before it is wanted.
func (l *layer) feeds(light model.Light, p *model.Part, groove model.Feature, from int) []Run {
	start := light.Supply
	if light.Dimmer != "" {
		start = light.Dimmer
	}
	var out []Run
	for i, end := range [2]geom.Vec{groove.Path[0], groove.Path[len(groove.Path)-1]} {
		c := model.Cable{Name: "feed of " + light.Name, From: start, To: light.Name, Class: model.LowVoltage, Dia: feedDia, Pos: light.Pos}
		if i == 1 {
			c.Name = "second " + c.Name
		}
		r := l.run(c, from, l.n.place(space(p, end, 0)), false)
		r.Feeds = light.Name
		if r.Found {
			out = append(out, r)
		}
	}
	slices.SortStableFunc(out, func(a, b Run) int { return int(a.Length - b.Length) })
	for i := range out {
		out[i].Cable.Name = [2]string{"", "second "}[i] + "feed of " + light.Name
	}
	return out
}

// groove finds a groove by its name.
func (l *layer) groove(name string) (*model.Part, model.Feature, bool) {
	for _, p := range l.d.Parts {
		if p.Slab == nil {
			continue
		}
		for _, f := range p.Slab.Features {
			if f.Kind == model.Groove && f.Face == model.UnderFace && f.Name == name {
				return p, f, true
			}
		}
	}
	return nil, model.Feature{}, false
}

// supplies adds up what each supply feeds.
func supplies(lights []LightRun) []SupplyPlan {
	var out []SupplyPlan
	for _, r := range lights {
		i := slices.IndexFunc(out, func(s SupplyPlan) bool { return s.Device == r.Light.Supply })
		if i < 0 {
			i = len(out)
			out = append(out, SupplyPlan{Device: r.Light.Supply, Voltage: r.Light.Strip.Supply})
		}
		s := &out[i]
		s.Lights, s.Load = append(s.Lights, r.Light.Name), s.Load+r.Power
		s.Mixed = s.Mixed || s.Voltage != r.Light.Strip.Supply
	}
	for i := range out {
		out[i].Rated, out[i].OK = wiring.Supply(out[i].Load)
	}
	return out
}

// sizeDimmers adds up what each dimmer carries.
func sizeDimmers(lights []LightRun) {
	total := map[string]wiring.Ampere{}
	for _, r := range lights {
		if r.Dimmer != nil {
			r.Dimmer.First = total[r.Dimmer.Device] == 0
			total[r.Dimmer.Device] += r.Current
		}
	}
	for _, r := range lights {
		if d := r.Dimmer; d != nil {
			d.Carries = total[d.Device]
			d.Rated, d.OK = wiring.Dimmer(d.Carries)
		}
	}
}
