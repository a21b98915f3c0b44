package check_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/find"
	"slabwright/model/job"
	"slabwright/model/stock"
	"slabwright/model/unit"
	"slabwright/presets"
)

// mending is a job in which a hint is being tried out: settings are changed, and
// pieces added before the design is finished.
type mending struct {
	job model.Job
	add func(*model.Design)
}

// cure is how a hint of some words is applied: whole, and one step less, which is
// nil where there is nothing less.
type cure struct {
	words *regexp.Regexp
	apply func(t *testing.T, j model.Job, f find.Fix, m []string) (whole, less *mending)
}

func with(j model.Job, name string, s model.Setting) *mending {
	j.Settings = maps.Clone(j.Settings)
	j.Settings[name] = s
	return &mending{job: j}
}

func length(t *testing.T, s string) unit.Length {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return unit.Length(v)
}

// rerouted is a job whose only groove goes somewhere else, or is of another depth.
func rerouted(j model.Job, right, away, depth unit.Length) *mending {
	j.Wiring.Channels = slices.Clone(j.Wiring.Channels)
	g := &j.Wiring.Channels[0]
	g.Path = slices.Clone(g.Path)
	for i := range g.Path {
		g.Path[i].X, g.Path[i].Back = g.Path[i].X+right, g.Path[i].Back+away
	}
	g.Depth += depth
	return &mending{job: j}
}

var towards = map[string][2]unit.Length{"to the right": {1, 0}, "to the left": {-1, 0}, "towards the back edge": {0, -1}, "away from the back edge": {0, 1}}

// cures read every hint of the rules on strength and stiffness.
var cures = []cure{
	{regexp.MustCompile(`^make (.+) (\d+) mm thick`), func(t *testing.T, j model.Job, f find.Fix, m []string) (whole, less *mending) {
		if f.Parameter == "" {
			t.Errorf("%q names no parameter", f.Text)
			return nil, nil
		}
		v := unit.Length(*f.Value)
		return with(j, f.Parameter, model.Setting{Length: v}), with(j, f.Parameter, model.Setting{Length: v - 1})
	}},
	{regexp.MustCompile(`^stand one more table leg under (.+), (\d+) mm from the left end and (\d+) mm from the back edge`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		return &mending{j, func(d *model.Design) {
			d.Add("one more leg", model.Post(60).Under(m[1], model.At{X: length(t, m[2]), Back: length(t, m[3])}))
		}}, nil
	}},
	{regexp.MustCompile(`^move leg by (\d+) mm (.+), to (\d+) mm from the left end and (\d+) mm from the back edge of`), func(t *testing.T, j model.Job, f find.Fix, m []string) (whole, less *mending) {
		to := [2]unit.Length{length(t, m[3]), length(t, m[4])}
		name, way, at := "leg_at", towards[m[2]][0], to[0]
		if way == 0 {
			name, way, at = "leg_back", towards[m[2]][1], to[1]
		}
		return with(j, name, model.Setting{Length: at}), with(j, name, model.Setting{Length: at - 10*way})
	}},
	{regexp.MustCompile(`^move run of (.+) by (\d+) mm (.+):`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		far, way := length(t, m[2]), towards[m[3]]
		return rerouted(j, far*way[0], far*way[1], 0), rerouted(j, (far-10)*way[0], (far-10)*way[1], 0)
	}},
	{regexp.MustCompile(`^cut run of (.+) (\d+) mm deep`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		by := length(t, m[2]) - j.Wiring.Channels[0].Depth
		return rerouted(j, 0, 0, by), rerouted(j, 0, 0, by+1)
	}},
	{regexp.MustCompile(`^take (L\S+) for the angles of`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		now := j.Settings["section"].Text
		list := stock.Angles()
		at := slices.IndexFunc(list, func(s stock.AngleSection) bool { return s.Name == m[1] })
		whole = with(j, "section", model.Setting{Text: m[1]})
		for i := at - 1; i >= 0 && list[i].Name != now; i-- {
			if s, _ := stock.Angle(now); list[i].Leg >= s.Leg && list[i].Thickness >= s.Thickness {
				return whole, with(j, "section", model.Setting{Text: list[i].Name})
			}
		}
		return whole, nil
	}},
	{regexp.MustCompile(`^stand table legs beside the joint: (.+)`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		legs := regexp.MustCompile(`under ([^,]+), (\d+) mm from the left end and (\d+) mm from the back edge`).FindAllStringSubmatch(m[1], -1)
		standing := func(n int) *mending {
			return &mending{j, func(d *model.Design) {
				for i, l := range legs[:n] {
					d.Add(fmt.Sprintf("one more leg %d", i+1), model.Post(60).Under(l[1], model.At{X: length(t, l[2]), Back: length(t, l[3])}))
				}
			}}
		}
		return standing(len(legs)), standing(len(legs) - 1)
	}},
	{regexp.MustCompile(`^take (L\S+): `), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		if !slices.Contains(trialSections, m[1]) {
			return nil, nil // none that the bench has
		}
		return with(j, "section", model.Setting{Text: m[1]}), nil
	}},
	{regexp.MustCompile(`^or set (\d+) anchors instead of \d+, (\d+) mm apart`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		n, pitch := length(t, m[1]), length(t, m[2])
		return with(j, "pitch", model.Setting{Length: pitch}), with(j, "pitch", model.Setting{Length: pitch*(n-1)/(n-2) + 1})
	}},
	{regexp.MustCompile(`^take screws that go (\d+) mm into the wood`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		return with(j, "into", model.Setting{Length: length(t, m[1])}), nil
	}},
	{regexp.MustCompile(`^take a rod of (\d+) mm`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		v := length(t, m[1])
		return with(j, "rod_dia", model.Setting{Length: v}), with(j, "rod_dia", model.Setting{Length: v - 1})
	}},
	{regexp.MustCompile(`^set the rods (\d+) mm deep`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		v := length(t, m[1])
		return with(j, "rod_in_wall", model.Setting{Length: v}), with(j, "rod_in_wall", model.Setting{Length: v - 5})
	}},
	{regexp.MustCompile(`^join them( )by .* \(set joint to (\w+)\)`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		return with(j, "joint", model.Setting{Text: m[2]}), nil
	}},
	{regexp.MustCompile(`^join (.+) with its neighbour by .* \(set joint to (\w+)\)`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		kind := slices.Index(model.JointKinds, model.JointKind(m[2]))
		return with(j, "joint", model.Setting{Text: m[2]}), with(j, "joint", model.Setting{Text: string(model.JointKinds[kind-1])})
	}},
	{regexp.MustCompile(`^carry (.+) on an angle \S+ along the wall (.+) too:`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		return &mending{j, func(d *model.Design) {
			s, err := stock.Angle(j.Settings["section"].Text)
			if err != nil {
				s = stock.L50x50x6
			}
			d.Add("one more angle", model.Angle(s).Along(d.Room.Wall(m[2])).Under(m[1]).Anchored(model.Anchors{Hole: 11, Pitch: 300, End: 40}))
		}}, nil
	}},
	{regexp.MustCompile(`^hang (.+) on (\d+) rods`), func(t *testing.T, j model.Job, _ find.Fix, m []string) (whole, less *mending) {
		pitch := func(n unit.Length) model.Setting { return model.Setting{Length: 1372/(n-1) + 1} }
		n := length(t, m[2])
		return with(j, "rod_pitch", pitch(n)), with(j, "rod_pitch", pitch(n-1))
	}},
}

// trialSections are the angles of the trial bench.
var trialSections = []string{"L40x40x5", "L50x50x6", "L60x60x6", "L80x80x8"}

// notComputed are what a hint may say beside: a choice of wood, or that nothing
// does it.
var notComputed = regexp.MustCompile(`^(or )?take a piece without crack|^tried in vain`)

// build makes the design of a job that is being mended.
func (m mending) build(t *testing.T) check.Site {
	t.Helper()
	r, err := model.NewRoom(m.job.Room)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range append(presets.All(), trial) {
		if p.Name == m.job.Preset {
			d := p.Build(model.Site{Room: r, People: m.job.People, Offers: m.job.Offers, House: m.job.House, Cut: m.job.Cut, Wiring: m.job.Wiring}, m.job.Settings)
			if m.add != nil {
				m.add(d)
			}
			d.Finish()
			for _, f := range d.Faults() {
				t.Fatal(f.Why)
			}
			return check.Site{Job: m.job, Room: r, Design: d, Params: p.Params}
		}
	}
	t.Fatalf("no preset %q", m.job.Preset)
	return check.Site{}
}

// verdict is the worst that a rule says of a slab.
func (m mending) verdict(t *testing.T, rule, slab, title string) (find.Status, []find.Finding) {
	t.Helper()
	return worstOf(check.RunOnly(check.Bare(m.build(t)), []string{rule}), slab, title)
}

// worstOf is the worst of a slab; of some title, if one is given.
func worstOf(all []find.Finding, slab, title string) (find.Status, []find.Finding) {
	var out []find.Finding
	for _, f := range all {
		if slices.Contains(f.Parts, slab) && (title == "" || f.Title == title) {
			out = append(out, f)
		}
	}
	return find.Worst(out), out
}

// trialRoom is the room of the archives of rules.
func trialRoom(t *testing.T, rule string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "rules", rule+".txt"))
	if err != nil {
		t.Fatal(err)
	}
	_, sections := parseArchive(string(data))
	return sections[0].text
}

// quick are the cases that are tried in a usual run.
var quick = map[string]bool{
	"trial/on its sides": true, "trial/a shelf of paper": true, "trial/on one angle": true, "trial/far too much on a shelf": true, "alcove/thin": true,
}

// TestHintsMend applies every hint that a rule on strength or stiffness prints, which
// fails or warns, to the job itself: it does not any more, and with one step less it
// still does.
func TestHintsMend(t *testing.T) {
	for _, c := range []struct {
		name, preset, rule, slab, beside string
		set                              map[string]model.Setting
		kinds                            []string    // hints that must be among them
		loads                            model.Loads // instead of those of a preset
	}{
		{"thin", "trial", "deflection", "bench", "", map[string]model.Setting{"thickness": {Length: 26}, "into": {Length: 12}, "depth": {Length: 420}}, []string{"make bench", "stand one more"}, model.Loads{}},
		{"on its sides", "trial", "deflection", "bench", "loads: {person: 60 kg}\n", map[string]model.Setting{"thickness": {Length: 31}, "into": {Length: 15}, "on": {Text: "sides"}, "depth": {Length: 300}}, []string{"make bench", "carry bench"}, model.Loads{}},
		{"a leg at the wrong place", "trial", "deflection", "bench", "loads: {person: 60 kg}\n", map[string]model.Setting{"thickness": {Length: 23}, "into": {Length: 10}, "leg_at": {Length: 300}, "leg_back": {Length: 360}, "depth": {Length: 420}}, []string{"make bench", "move leg"}, model.Loads{}},
		{"a groove across", "trial", "bending-strength", "bench", "loads: {person: 70 kg}\nwiring:\n  grooves:\n    - {name: run, in: bench, width: 20, depth: 20, path: [{x: 800, back: 200}, {x: 800, back: 360}]}\n", map[string]model.Setting{"thickness": {Length: 45}, "depth": {Length: 420}}, []string{"cut run"}, model.Loads{}},
		{"a groove along", "trial", "bending-strength", "bench", "loads: {person: 50 kg}\nwiring:\n  grooves:\n    - {name: run, in: bench, width: 20, depth: 12, path: [{x: 400, back: 280}, {x: 1200, back: 280}]}\n", map[string]model.Setting{"thickness": {Length: 45}, "depth": {Length: 420}}, []string{"move run", "cut run"}, model.Loads{}},
		{"a shelf of paper", "trial", "deflection", "shelf", "loads: {shelf: 650}\n", map[string]model.Setting{"shelf_under": {Length: 1300}, "rod_pitch": {Length: 1372}, "depth": {Length: 300}}, []string{"hang shelf"}, model.Loads{}},
		{"far too much on a shelf", "trial", "rod-strength", "shelf", "loads: {shelf: 800}\n", map[string]model.Setting{"shelf_under": {Length: 1300}}, []string{"take a rod", "set the rods", "hang shelf"}, model.Loads{}},
		{"short screws", "trial", "screw-strength", "angle back", "loads: {person: 260 kg}\n", map[string]model.Setting{"into": {Length: 6}}, []string{"take screws"}, model.Loads{}},
		{"in two pieces", "trial", "joint-bearing", "bench", "loads: {person: 30 kg, worktop: 10}\n", map[string]model.Setting{"split_at": {Length: 800}, "thickness": {Length: 60}, "depth": {Length: 800}}, []string{"stand table legs", "join them"}, model.Loads{}},
		{"on one angle", "trial", "lift", "bench", "", map[string]model.Setting{"on": {Text: "left"}, "screws": {Flag: false}, "depth": {Length: 300}}, []string{"carry bench"}, model.Loads{}},
		{"anchored far apart", "trial", "angle-strength", "angle back", "loads: {person: 300 kg, step: 1.5}\n", map[string]model.Setting{"pitch": {Length: 900}, "screws": {Flag: false}, "thickness": {Length: 60}}, []string{"or set"}, model.Loads{}},
		{"thin shelves", "alcove", "deflection", "shelf 2", "", map[string]model.Setting{"shelf_depth": {Length: 500}}, []string{"make shelf 2"}, model.Loads{Shelf: 250}},
		{"thin", "alcove", "deflection", "worktop", "", map[string]model.Setting{"thickness": {Length: 28}, "shelves": {Number: 0}}, []string{"make worktop"}, model.Loads{}},
		{"thin", "corner", "deflection", "back worktop", "", map[string]model.Setting{"thickness": {Length: 34}}, []string{"make back worktop"}, model.Loads{}},
		{"a leg at the wrong place", "corner", "deflection", "side worktop", "", map[string]model.Setting{"leg_at": {Length: 1200}}, []string{"make side worktop", "move leg"}, model.Loads{}},
		{"thin", "studio", "bending-strength", "worktop", "", map[string]model.Setting{"thickness": {Length: 40}}, []string{"make worktop"}, model.Loads{}},
	} {
		if !quick[c.preset+"/"+c.name] && os.Getenv("SLABWRIGHT_HINTS") != "all" {
			continue // .ci/run asks for all
		}
		t.Run(c.preset+"/"+c.name, func(t *testing.T) {
			t.Parallel()
			j := mendJob(t, c.preset, c.rule, c.beside)
			for k, v := range c.set {
				j.Settings[k] = v
			}
			if c.loads.Shelf > 0 {
				j.Loads = c.loads
			}
			worst, found := worstOf(check.RunOnly(mending{job: j}.build(t), []string{c.rule}), c.slab, "")
			if worst != find.Fail && worst != find.Warn {
				t.Fatalf("comes out as %s: %v", worst, found)
			}
			var said []string
			done := map[string]bool{}
			for _, f := range found {
				for _, fix := range f.Fix {
					said = append(said, fix.Text)
					if f.Status == worst && !notComputed.MatchString(fix.Text) && !done[f.Title+strings.Split(fix.Text, ":")[0]] {
						done[f.Title+strings.Split(fix.Text, ":")[0]] = true
						title := ""
						if c.rule == "rod-strength" { // its findings are mended one by one
							title = f.Title
						}
						mends(t, j, c.rule, c.slab, title, worst, fix)
					}
				}
			}
			for _, k := range c.kinds {
				if !slices.ContainsFunc(said, func(s string) bool { return strings.HasPrefix(s, k) }) {
					t.Errorf("no hint begins with %q: %q", k, said)
				}
			}
		})
	}
}

// mendJob is the job of a preset, or one of the trial in the room of an archive.
func mendJob(t *testing.T, preset, rule, beside string) model.Job {
	t.Helper()
	var j model.Job
	if preset == "trial" {
		j = readJob(t, rule, trialRoom(t, rule)+beside+"design: {preset: trial}\n")
	} else {
		file := filepath.Join("..", "..", "presets", preset, "job.yaml")
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var bad []job.Mistake
		if j, bad = job.Read(file, data, presets.All()); len(bad) > 0 {
			t.Fatal(job.Text(bad))
		}
	}
	j.Settings = maps.Clone(j.Settings)
	if j.Settings == nil {
		j.Settings = map[string]model.Setting{}
	}
	return j
}

// mends holds one hint to what it says.
func mends(t *testing.T, j model.Job, rule, slab, title string, was find.Status, fix find.Fix) {
	t.Helper()
	for _, c := range cures {
		m := c.words.FindStringSubmatch(fix.Text)
		if m == nil {
			continue
		}
		whole, less := c.apply(t, j, fix, m)
		if whole != nil {
			if v, found := whole.verdict(t, rule, slab, title); v.Severity() >= was.Severity() || v == find.Unknown {
				t.Errorf("%q leaves it at %s: %s", fix.Text, v, measured(found))
			}
		}
		if less != nil {
			if v, found := less.verdict(t, rule, slab, title); v != was {
				t.Errorf("%q: one step less does it too: %s, %s", fix.Text, v, measured(found))
			}
		}
		return
	}
	t.Errorf("nobody knows how to apply %q", fix.Text)
}

func measured(found []find.Finding) string {
	var out []string
	for _, f := range found {
		if f.Measured != nil && f.Required != nil {
			out = append(out, fmt.Sprintf("%s %v of %v", f.Title, f.Measured.Value, f.Required.Value))
		}
	}
	return strings.Join(out, "; ")
}
