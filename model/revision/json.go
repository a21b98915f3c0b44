package revision

import (
	"encoding/json"

	"slabwright/model/unit"
)

// document is the comparison for machines; its keys are stable.
type document struct {
	Old      string       `json:"old_revision"`
	New      string       `json:"new_revision"`
	Level    float64      `json:"level"`
	Chance   float64      `json:"chance_if_nothing_moved"`
	Unknown  string       `json:"walls_not_known,omitempty"`
	Walls    []wallDoc    `json:"walls"`
	Instead  []string     `json:"moved_instead"`
	Gone     []string     `json:"walls_gone"`
	NewWalls []string     `json:"walls_new"`
	Parts    []partDoc    `json:"parts"`
	Params   []paramDoc   `json:"parameters"`
	Findings []findingDoc `json:"findings"`
	Sheets   []sheetDoc   `json:"sheets"`
}

type wallDoc struct {
	Name       string     `json:"name"`
	Verdict    string     `json:"verdict"`
	Ends       [2]float64 `json:"ends_mm"`
	SD         [2]float64 `json:"sd_mm"`
	Deviations float64    `json:"deviations"`
	Chance     float64    `json:"chance_if_it_stayed"`
	Length     [2]float64 `json:"length_mm"`
	LengthSD   [2]float64 `json:"length_sd_mm"`
	Bow        [2]float64 `json:"bow_mm"`
	Lean       [2]float64 `json:"lean_mm_per_m"`
}

type partDoc struct {
	ID      string    `json:"id"`
	Verdict Fate      `json:"verdict"`
	Why     string    `json:"why"`
	Mend    []string  `json:"mend"`
	Sure    *float64  `json:"chance_goes_in,omitempty"`
	Gaps    []gapDoc  `json:"gaps"`
	Sizes   []sizeDoc `json:"sizes"`
	Entry   string    `json:"cut_entry,omitempty"`
}

type gapDoc struct {
	Edge   string  `json:"edge"`
	To     string  `json:"to"`
	Asked  float64 `json:"asked_mm"`
	Least  float64 `json:"least_mm"`
	Widest float64 `json:"widest_mm"`
}

type sizeDoc struct {
	What string  `json:"what"`
	Old  float64 `json:"old_mm"`
	New  float64 `json:"new_mm"`
	Grew float64 `json:"grew_mm"`
}

type paramDoc struct {
	Name string `json:"name"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

type findingDoc struct {
	Rule  string   `json:"rule"`
	Title string   `json:"title"`
	Parts []string `json:"parts"`
	Walls []string `json:"walls"`
	Old   string   `json:"old"`
	New   string   `json:"new"`
	Why   string   `json:"why"`
}

type sheetDoc struct {
	Number  int         `json:"number"`
	Name    string      `json:"name"`
	Title   string      `json:"title"`
	Verdict Fate        `json:"verdict"`
	Lines   bool        `json:"lines_only"`
	Figures []figureDoc `json:"figures"`
}

type figureDoc struct {
	Where string `json:"where"`
	Old   string `json:"old"`
	New   string `json:"new"`
}

// JSON is the comparison for machines.
func (c Comparison) JSON() ([]byte, error) {
	d := document{Old: c.Old, New: c.New, Level: Level, Chance: round3(c.Room.Chance), Unknown: c.Room.NotKnown,
		Walls: []wallDoc{}, Instead: filled(c.Room.Instead), Gone: filled(c.Room.Gone), NewWalls: filled(c.Room.New),
		Parts: []partDoc{}, Params: []paramDoc{}, Findings: []findingDoc{}, Sheets: []sheetDoc{}}
	for _, w := range c.Room.Walls {
		verdict := "same"
		if w.Moved {
			verdict = "moved"
		}
		if c.Room.NotKnown != "" {
			verdict = "unknown"
		}
		d.Walls = append(d.Walls, wallDoc{w.Name, verdict, [2]float64{mm(w.Start.Value), mm(w.End.Value)}, [2]float64{mm(w.Start.SD), mm(w.End.SD)},
			round3(w.Deviations()), round3(w.Chance), [2]float64{mm(w.Length[0].Value), mm(w.Length[1].Value)},
			[2]float64{mm(w.Length[0].SD), mm(w.Length[1].SD)}, w.Bow, w.Lean})
	}
	for _, p := range c.Parts {
		x := partDoc{ID: p.ID, Verdict: p.Fate, Why: p.Why, Mend: filled(p.Mend), Gaps: []gapDoc{}, Sizes: []sizeDoc{}, Entry: p.Entry}
		if p.Sure != nil {
			v := round3(*p.Sure)
			x.Sure = &v
		}
		for _, g := range p.Gaps {
			x.Gaps = append(x.Gaps, gapDoc{g.Edge, g.To, mm(g.Asked), mm(g.Least), mm(g.Widest)})
		}
		for _, s := range p.Sizes {
			x.Sizes = append(x.Sizes, sizeDoc{s.What, mm(s.Old), mm(s.New), mm(s.Difference())})
		}
		d.Parts = append(d.Parts, x)
	}
	for _, p := range c.Params {
		d.Params = append(d.Params, paramDoc(p))
	}
	for _, f := range c.Findings {
		d.Findings = append(d.Findings, findingDoc{f.Rule, f.Title, filled(f.Parts), filled(f.Walls), string(f.Old), string(f.New), f.Why})
	}
	for _, s := range c.Sheets {
		x := sheetDoc{s.Number, s.Name, s.Title, s.Fate, s.Lines, []figureDoc{}}
		for _, f := range s.Figures {
			x.Figures = append(x.Figures, figureDoc(f))
		}
		d.Sheets = append(d.Sheets, x)
	}
	return json.MarshalIndent(d, "", "  ")
}

func mm(l unit.Length) float64 { return round3(float64(l)) }

func filled(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}
