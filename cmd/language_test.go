package cmd

import (
	"regexp"
	"strings"
	"testing"

	"slabwright/drawing/sheet"
	"slabwright/drawing/words"
	"slabwright/model"
	"slabwright/model/report"
	"slabwright/presets"
)

// germanBuild is a preset's job with German sheets, as the job file would ask.
func germanBuild(t *testing.T, p model.Preset, paper string) report.Build {
	_, b := presetBuild(t, p, paper)
	b.Job.Show.Language, b.Job.Show.Decimal = "de", ","
	return b
}

// Every German sheet can be read: long words find room as well.
func TestEveryGermanSheet(t *testing.T) {
	for _, p := range presets.All() {
		for _, paper := range []string{"A3", "A4"} {
			t.Run(p.Name+" "+paper, func(t *testing.T) {
				t.Parallel()
				sheets, err := sheet.Set(germanBuild(t, p, paper))
				if err != nil {
					t.Fatal(err)
				}
				for _, s := range sheets {
					canBeRead(t, s)
					namesItsScale(t, s)
					staysOnPaper(t, s)
				}
			})
		}
	}
}

// otherLetters writes every sentence of the tables in Greek letters, so that a
// word which gets past them stands out.
func otherLetters() *words.Language {
	greek := func(s string) string {
		return regexp.MustCompile(`%(\[\d+\])?(\.\d+)?[sdfg%]|[A-Za-z]+`).ReplaceAllStringFunc(s, func(m string) string {
			if m[0] == '%' {
				return m
			}
			return strings.Repeat("λ", len(m))
		})
	}
	all := func(table map[string]string) map[string]string {
		out := map[string]string{}
		for k := range table {
			s, _, _ := strings.Cut(k, " // ")
			out[k] = greek(s)
		}
		return out
	}
	return &words.Language{Code: "test", Decimal: ".", Table: all(words.Of("de").Table), Below: all(words.Of("de").Below)}
}

// On sheets in another language no English word is left but names, marks of
// materials and standards, and what a finding says.
func TestNoEnglishIsLeft(t *testing.T) {
	words.All = append(words.All, otherLetters())
	t.Cleanup(func() { words.All = words.All[:len(words.All)-1] })
	latin := regexp.MustCompile(`[A-Za-z]{2,}`)
	for _, p := range presets.All() {
		_, b := presetBuild(t, p, "A3")
		b.Job.Show.Language = "test"
		known := namesOf(b)
		sheets, err := sheet.Set(b)
		if err != nil {
			t.Fatal(err)
		}
		said := map[string]bool{}
		for _, s := range sheets {
			if s.Number == 1 {
				continue // the verdict and what to do next
			}
			for _, x := range texts(s.Items) {
				if strings.Contains(s.Name, "-order-wood") && !strings.Contains(x.String, "λ") {
					continue // why a slab is too large for what is on offer: a finding
				}
				for _, w := range latin.FindAllString(x.String, -1) {
					if !known[w] && !said[w] {
						said[w] = true
						t.Errorf("%s, sheet %s: %q in %q", p.Name, s.Name, w, x.String)
					}
				}
			}
		}
	}
}

// namesOf are the words of the job's own names, and the signs that are the same
// in every language.
func namesOf(b report.Build) map[string]bool {
	known := map[string]bool{}
	add := func(names ...string) {
		for _, n := range names {
			for _, w := range regexp.MustCompile(`[A-Za-z]+`).FindAllString(n, -1) {
				known[w], known[strings.ToUpper(w[:1])+w[1:]] = true, true
			}
		}
	}
	j := b.Job
	add(j.Title, "mm cm kg EN DIN ISO JR min max", "slabwright", report.Version, "PS CO RA")
	own := func(name string) { // what the tables know is a word of ours, not a name
		if words.Of("de").Pass(name) == name {
			add(name)
		}
	}
	for _, w := range b.Room.Walls {
		own(w.Name)
		for _, o := range w.Obstacles {
			add(o.Name)
		}
	}
	for _, x := range j.People {
		add(x.Name)
	}
	for _, x := range j.House.Way {
		add(x.Name)
	}
	for _, o := range j.Offers.Slabs {
		add(o.Name, o.Place)
	}
	for _, o := range j.Offers.Bars {
		add(o.Place)
	}
	for _, o := range j.Offers.Packs {
		add(o.Name, o.Place)
	}
	for _, s := range b.Design.Seats {
		add(s.Name)
	}
	for _, x := range j.Wiring.Devices {
		add(x.Name)
	}
	for _, x := range j.Wiring.Cables {
		add(x.Name)
	}
	for _, x := range j.Wiring.Lights {
		add(x.Name)
	}
	for _, q := range b.Design.Parts {
		own(q.ID)
		if q.Slab != nil {
			for _, f := range q.Slab.Features {
				own(f.Name)
				own(f.For)
			}
		}
	}
	return known
}
