package cmd

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/cut"
	"slabwright/model/report"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// wideDice draws what came to random jobs later. They are dice of their own:
// without them every seed still gives the job that it always gave.
func wideDice(seed uint64) dice {
	d := newDice(seed)
	d.Rand = rand.New(rand.NewPCG(seed, 2027))
	return d
}

// widens tells whether a seed gives a job with more in it: every other one does,
// but none of those that broke without.
func widens(seed uint64) bool {
	return replayed[seed] == "" && wideDice(seed).chance(0.5)
}

// later are parameters that presets got after the first dice were cast.
var later = []string{"shelves_on", "cleat_wide", "cleat_high", "leg_ends"}

// widerJob is a random job with what wide dice add to it.
func widerJob(seed uint64) string {
	w := wideDice(seed)
	return jobText(newDice(seed), &w)
}

// moreShown is what else is told of the sheets.
func (d dice) moreShown() string {
	var out string
	for _, s := range []string{"language: de", "ink: black", oneOf(d, "cover: apart", "cover: together"), oneOf(d, "stand: upright", "stand: lying")} {
		if d.chance(0.35) {
			out += ", " + s
		}
	}
	return out
}

// moreSet sets parameters besides those that are set.
func (d dice) moreSet(p model.Preset, set []string) []string {
	for _, q := range p.Params {
		name := q.Name + ": "
		odds := map[string]float64{"wall_leg": 0.4, "joint": 0.7, "shelves_on": 0.3, "cleat_wide": 0.3, "cleat_high": 0.3, "leg_ends": 0.3}[q.Name]
		if !d.chance(odds) || slices.ContainsFunc(set, func(s string) bool { return strings.HasPrefix(s, name) }) {
			continue
		}
		if q.Kind == model.ChoiceParam {
			set = append(set, name+oneOf(d, q.Choices...))
		} else {
			set = append(set, fmt.Sprintf("%s%.0f", name, d.between(q.Min, q.Max)))
		}
	}
	return set
}

// slabsOf are slabs of each preset, and the grooves that it cuts into some.
var slabsOf, groovesOf = map[string][]string{
	"studio": {"worktop", "infill", "long shelf", "short shelf"},
	"alcove": {"worktop", "shelf 1", "shelf 2"},
	"corner": {"back worktop", "side worktop"},
}, map[string][]string{"studio": {"cable run", "light run"}}

// more writes loads, screens and wiring.
func (d dice) more(say func(string, ...any), preset, revision string) {
	tops := slabsOf[preset]
	if d.chance(0.3) {
		say("revisions:")
		for i := range d.IntN(4) {
			say("  - {mark: %d, on: 2026-10-%02d, what: %s}", i+1, i+1, d.word())
		}
		say("  - {mark: %s, what: %s}", revision, d.word())
	}
	if d.chance(0.4) {
		say("loads:")
		say("  shelf: %.0f", d.between(20, 200))
		say("  things:")
		for range 1 + d.IntN(3) {
			say("    - {name: %s, on: %s, along: %.0f, back: %.0f, mass: %.1f, reach: %.0f}", d.word(), oneOf(d, tops...),
				d.between(50, 1400), d.between(30, 400), d.between(1, 60), d.between(0, 500))
		}
	}
	if d.chance(0.3) {
		say("screens:")
		say("  - {name: %s, on: %s, along: %.0f, back: %.0f, bottom: %.0f, height: %.0f}", d.word(), tops[0],
			d.between(200, 1300), d.between(50, 300), d.between(50, 250), d.between(200, 500))
	}
	if d.chance(0.7) {
		d.wiring(say, tops, groovesOf[preset])
	}
}

// wiring writes devices, cables between them, slots, and grooves with lids and
// light strips.
func (d dice) wiring(say func(string, ...any), tops, grooves []string) {
	name := func(i int) string { // none is said twice, none is longer than a job takes
		word := []rune(strings.Trim(d.word(), `"`))
		return fmt.Sprintf("%q", fmt.Sprintf("%s no %d", string(word[:min(len(word), 190)]), i))
	}
	place := func() string { return fmt.Sprintf("{x: %.0f, back: %.0f}", d.between(80, 1300), d.between(40, 380)) }
	say("wiring:")
	devices := []string{name(1), name(2), name(3)}
	say("  devices:")
	say("    - {name: %s, wall: left, along: %.0f, height: %.0f}", devices[0], d.between(50, 600), d.between(200, 1200))
	for _, v := range devices[1:] {
		say("    - {name: %s, %s: %s, x: %.0f, back: %.0f}", v, oneOf(d, "on", "under"), oneOf(d, tops...), d.between(80, 1300), d.between(40, 380))
	}
	say("  cables:")
	for i, v := range devices[1:] {
		say("    - {name: %s, from: %s, to: %s, class: %s, diameter: %.1f}", name(10+i), devices[0], v, oneOf(d, model.CableClasses...), d.between(3, 11))
	}
	if n := d.IntN(4); n > 0 {
		say("  slots:")
		for i := range n {
			say("    - {name: %s, in: %s, x: %.0f, width: %.0f, depth: %.0f}", name(20+i), oneOf(d, tops...), d.between(60, 1300), d.between(20, 120), d.between(10, 50))
		}
	}
	own := name(40)
	say("  grooves:")
	for i, g := range []string{own, name(41)}[:1+d.IntN(2)] {
		path := []string{place(), place()}
		if d.chance(0.4) {
			path = append(path, place())
		}
		wide, deep, lid := d.between(8, 30), d.between(6, 22), ""
		if i == 0 || d.chance(0.5) {
			lid = fmt.Sprintf(", lid: {width: %.0f, thickness: %.0f}", wide+d.between(6, 25), max(2, deep*d.between(0.2, 0.5)))
		}
		say("    - {name: %s, in: %s, width: %.0f, depth: %.0f, path: [%s]%s}", g, oneOf(d, tops...), wide, deep, strings.Join(path, ", "), lid)
	}
	if len(grooves) > 0 && d.chance(0.5) {
		say("  lids:")
		say("    - {groove: %s, width: %.0f, thickness: %.0f}", grooves[0], d.between(26, 45), d.between(3, 8))
	}
	if d.chance(0.5) {
		say("  lights:")
		say("    - {name: %s, in: %s, supply: %s, voltage: 24, power: %.1f, pitch: 50}", name(50), append(grooves, own)[0], devices[1], d.between(4, 20))
	}
}

// widened builds a design as the line of a build does, with a high shelf of two
// boards in it that are cut out, pocketed and joined,
// and with parts that are cut already. No remedies are looked for: that takes longer
// than all sheets, and jobs without wide dice do it.
func (t *tool) widened(seed uint64, j model.Job, r *model.Room) (b report.Build, ok bool) {
	i := slices.IndexFunc(t.presets, func(p model.Preset) bool { return p.Name == j.Preset })
	build := func(j model.Job) *model.Design {
		d := wideDice(seed + 1<<32) // the same for both builds
		out := t.presets[i].Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House, Cut: j.Cut, Wiring: j.Wiring}, j.Settings)
		if d.chance(0.6) {
			d.boards(out, j.Preset)
		}
		out.Finish()
		return out
	}
	design := build(j)
	if d := wideDice(seed + 2<<32); d.chance(0.3) && len(design.Parts) > 0 {
		if c, ok := oneOf(d, design.Parts...).CutAsDrawn("2026-11-02"); ok {
			j.Cut = append(slices.Clone(j.Cut), c)
			design = build(j)
		}
	}
	found := check.Verdicts(check.Site{Job: j, Room: r, Design: design, Params: t.presets[i].Params})
	return report.Build{Job: j, Room: r, Design: design, Findings: found, Shopping: cut.Shop(j, design)}, true
}

// boards hangs a shelf of two boards high on the walls.
func (d dice) boards(out *model.Design, preset string) {
	r := out.Room
	left, right := r.Wall("left"), r.Wall("right")
	var back model.Bounder
	hung := r.Wall("back")
	if preset == "studio" {
		hung = r.Wall("back left")
		back = r.Straight(hung.From.Name, r.Wall("back right").To.Name)
	} else {
		back = hung
	}
	wood := oneOf(d, stock.Ash, stock.Oak, stock.Walnut)
	thick, deep, up := unit.Length(d.between(22, 50)), unit.Length(d.between(150, 420)), unit.Length(d.between(1950, 2150))
	half := hung.Length() * unit.Length(d.between(0.4, 0.9))
	board := func(p model.SlabPiece) model.SlabPiece {
		at := func() model.At {
			return model.At{X: half * unit.Length(d.between(0.1, 0.8)), Back: deep * unit.Length(d.between(0.1, 0.8))}
		}
		size := func() unit.Length { return unit.Length(d.between(15, 130)) }
		face := func() model.Face { return oneOf(d, model.TopFace, model.UnderFace) }
		for k := range d.IntN(4) {
			p = p.CutOut(fmt.Sprintf("cut-out %d", k+1), at(), size(), size())
		}
		for k := range d.IntN(4) {
			p = p.Pocket(fmt.Sprintf("pocket %d", k+1), face(), at(), size(), size(), thick*unit.Length(d.between(0.2, 0.7)))
		}
		for k := range d.IntN(3) {
			wide, low := unit.Length(d.between(6, 30)), thick*unit.Length(d.between(0.2, 0.5))
			p = p.Groove(fmt.Sprintf("groove %d", k+1), face(), wide, low, at(), at())
			if d.chance(0.5) {
				p = p.Lidded(wide+unit.Length(d.between(6, 20)), low/2)
			}
		}
		return p.Gaps(4, 5).Depth(deep).UndersideAt(up)
	}
	if out.Add("left board", board(model.Shelf(wood, thick).Between(left, hung.Mark(half)).Against(back))) == nil {
		return
	}
	section := oneOf(d, stock.Angles()...)
	steel := func(w *model.Wall, slab string) model.AnglePiece {
		a := model.Angle(section).Along(w).Under(slab).ClearOf(3).
			Anchored(model.Anchors{Hole: 9, Pitch: unit.Length(d.between(120, 500)), End: 40}).
			ScrewedUp(model.Screws{Hole: 6, Moving: true, Pitch: 250, End: 60, Pilot: 4, Into: thick - 10})
		if d.chance(0.3) {
			return a.LegUp()
		}
		return a
	}
	out.Add("high angle left", steel(left, "left board"))
	out.Add("high angle back", steel(hung, "left board"))
	if d.chance(0.7) {
		gap := unit.Length(oneOf(d, 0.0, 1, 2))
		if out.Add("right board", board(model.Shelf(wood, thick).Between(out.EdgeOf("left board", "right").Gap(gap), right).Against(back))) != nil {
			out.Join("right board", "left board", oneOf(d, model.JointKinds...))
			out.Add("high angle right", steel(right, "right board"))
		}
	}
}
