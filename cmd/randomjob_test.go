package cmd

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/presets"
)

// randomJob is the text of a job file that nobody has thought of. The same seed
// gives the same text.
func randomJob(seed uint64) string { return jobText(newDice(seed), nil) }

// jobText writes a job that dice draw, with more in it if wide dice are given.
func jobText(d dice, wide *dice) string {
	shown := ""
	if wide != nil {
		shown = wide.moreShown()
	}
	p := oneOf(d, presets.All()...)
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	say("title: %s", d.word())
	revision := oneOf(d, "A", "B", "17", "after the plasterer")
	say("revision: %s", revision)
	say("surveyed: 2026-%02d-%02d", 1+d.IntN(12), 1+d.IntN(28))
	say("show: {paper: %s, unit: %s, decimal: %s, projection: %s%s}", oneOf(d, "A4", "A3", "A2", "A1"),
		oneOf(d, "mm", "cm", "in"), oneOf(d, "point", "comma"), oneOf(d, "first", "third"), shown)
	room := d.room(p.Name)
	b.WriteString(d.written(room))
	d.people(say)
	d.offers(say)
	d.house(say)
	say("design:")
	say("  preset: %s", p.Name)
	set := d.parameters(p)
	if wide != nil {
		set = wide.moreSet(p, set)
	}
	if len(set) > 0 {
		say("  parameters:\n    %s", strings.Join(set, "\n    "))
	}
	if wide != nil {
		wide.more(say, p.Name, revision)
	}
	return b.String()
}

// word is a name as people give them: short, long, in one piece, in signs that
// the lettering lacks.
func (d dice) word() string {
	name := oneOf(d, "rack", "bookcase wall", "Nachtspeicherheizkörper", "central heating manifold behind the panelling",
		"Donaudampfschifffahrtsgesellschaftskapitänskajüte", "WWWWWWWWWWWWWWWWWWWW", "prise de courant à gauche du radiateur",
		"棚", "it's 3/4 inch, or less", "Überspannungsschutz-Verteiler Nord-Nordwest")
	if d.chance(0.01) {
		name = strings.Repeat(name, 200)
		name = string([]rune(name)[:200])
	}
	return fmt.Sprintf("%q", fmt.Sprintf("%s %d", strings.TrimSpace(string([]rune(name)[:min(len([]rune(name)), 196)])), d.IntN(1000)))
}

// parameters draws values within the range of each parameter: near the usual
// one, anywhere, or on the bounds. Wild jobs change many of them.
func (d dice) parameters(p model.Preset) []string {
	var set []string
	wild := oneOf(d, 0.0, 0.15, 0.4, 0.9)
	if d.tame {
		return tameParameters[p.Name]
	}
	for _, q := range p.Params {
		if slices.Contains(later, q.Name) || !d.chance(wild) {
			continue
		}
		switch q.Kind {
		case model.ChoiceParam:
			set = append(set, fmt.Sprintf("%s: %s", q.Name, oneOf(d, q.Choices...)))
		case model.FlagParam:
			set = append(set, fmt.Sprintf("%s: %s", q.Name, oneOf(d, "yes", "no")))
		case model.CountParam:
			set = append(set, fmt.Sprintf("%s: %d", q.Name, int(q.Min)+d.IntN(int(q.Max-q.Min)+1)))
		case model.LengthParam:
			set = append(set, fmt.Sprintf("%s: %.1f", q.Name, d.value(q)))
		}
	}
	return set
}

// tameParameters are about what the example of each preset says of its own, so
// that the design holds and serves.
var tameParameters = map[string][]string{
	"studio": {"side_gap: 4.8", "back_gap: 5", "surface: 755", "depth: 780", "thickness: 45", "section: L50x50x6"},
	"alcove": {"side_gap: 4.8", "back_gap: 5"},
	"corner": {"side_gap: 4.8", "back_gap: 7", "pitch: 160"},
}

func (d dice) value(q model.Param) float64 {
	var usual float64
	fmt.Sscan(q.Default, &usual)
	switch d.IntN(10) {
	case 0:
		return oneOf(d, q.Min, q.Max)
	case 1, 2, 3:
		return d.between(q.Min, q.Max)
	}
	return math.Min(math.Max(usual*d.between(0.75, 1.25), q.Min), q.Max)
}

func (d dice) people(say func(string, ...any)) {
	if d.tame {
		say("people: [{name: %s, stature: 1760, sex: male, mass: 75 kg}]", d.word())
		return
	}
	n := d.IntN(4)
	if n == 0 {
		return
	}
	say("people:")
	for range n {
		say("  - {name: %s, stature: %.0f, sex: %s, mass: %.0f kg, shoe: %.0f}", d.word(), d.between(1350, 2050),
			oneOf(d, "female", "male"), d.between(45, 130), d.between(0, 45))
	}
}

func (d dice) offers(say func(string, ...any)) {
	say("offers:")
	say("  currency: %s", oneOf(d, "none", "guilders"))
	if d.tame {
		say("  slabs:")
		for _, s := range []stock.Species{stock.Ash, stock.Oak} {
			say("    - {name: %s, species: %s, length: 3000, width: 900, thickness: 45, natural: 1, widths: [906, 918, 911, 897, 892, 903, 924, 910], every: 400, price: 690}", d.word(), s.Name)
		}
		return
	}
	n := d.IntN(4)
	if n > 0 {
		say("  slabs:")
	}
	for range n {
		long, wide := d.between(1200, 4500), d.between(250, 1000)
		stations := ""
		natural := d.IntN(3)
		if natural > 0 && d.chance(0.8) {
			every := oneOf(d, 150.0, 250, 400)
			var w []string
			for x := 0.0; x <= long-1; x += every {
				w = append(w, fmt.Sprintf("%.0f", wide+d.between(0, 60)))
			}
			stations = fmt.Sprintf(", widths: [%s], every: %.0f", strings.Join(w, ", "), every)
		}
		say("    - {name: %s, species: %s, length: %.0f, width: %.0f, thickness: %.0f, natural: %d%s, price: %.0f}", d.word(),
			oneOf(d, stock.Ash, stock.Oak, stock.Walnut).Name, long, wide, d.between(20, 80), natural, stations, d.between(50, 900))
	}
	if n = d.IntN(3); n > 0 {
		say("  bars:")
	}
	for range n {
		say("    - {section: %s, length: %.0f, price: %.0f}", oneOf(d, stock.Angles()...).Name, d.between(1000, 6000), d.between(20, 90))
	}
}

func (d dice) house(say func(string, ...any)) {
	if d.tame {
		say("house:")
		say("  climate: {moisture: 9, humidity: [35, 60], temperature: 20, finished: both faces}")
		return
	}
	if d.chance(0.3) {
		return
	}
	say("house:")
	if n := d.IntN(6); n > 0 {
		say("  way:")
		for range n {
			w, h := d.between(600, 1200), d.between(1800, 2400)
			say("    - {name: %s, %s}", d.word(), oneOf(d,
				fmt.Sprintf("kind: door, width: %.0f, height: %.0f", w, h),
				fmt.Sprintf("kind: corridor turn, width: %.0f, turn: %.0f", w, d.between(700, 1300)),
				fmt.Sprintf("kind: stair, width: %.0f, pitch: %.0f deg, height: %.0f", w, d.between(25, 45), h),
				fmt.Sprintf("kind: car, length: %.0f, diagonal: %.0f, width: %.0f, height: %.0f", d.between(1500, 2600), d.between(2600, 3000), w, d.between(500, 900))))
		}
	}
	say("  climate: {moisture: %.0f, humidity: [%.0f, %.0f], temperature: 20}", d.between(6, 16), d.between(20, 45), d.between(50, 80))
}
