package cut

import (
	"encoding/json"
	"fmt"
	"strings"

	"slabwright/model/calc/saw"
	"slabwright/model/unit"
)

// Solution is the answer to an instance.
type Solution struct {
	Sheets *saw.Plan
	Bars   *saw.BarPlan
}

// Solve answers an instance.
func (i Instance) Solve(e saw.Effort) Solution {
	if i.Bars != nil {
		p := saw.PlanBars(*i.Bars, e)
		return Solution{Bars: &p}
	}
	p := saw.PlanSheets(*i.Sheets, e)
	return Solution{Sheets: &p}
}

// Found says whether there is a plan.
func (s Solution) Found() bool {
	if s.Bars != nil {
		return s.Bars.Found
	}
	return s.Sheets.Found
}

// answer is the JSON form of a solution.
type answer struct {
	Found     bool         `json:"found"`
	Objective float64      `json:"objective"`
	Bound     float64      `json:"bound"`
	Optimal   bool         `json:"optimal"`
	Steps     int          `json:"steps"`
	Sheets    []sheetDoc   `json:"sheets,omitempty"`
	Bars      []barDoc     `json:"bars,omitempty"`
	Missing   []missingDoc `json:"missing,omitempty"`
}

type missingDoc struct {
	Item    string `json:"item,omitempty"`
	Why     string `json:"why"`
	Nearest string `json:"nearest,omitempty"`
}

type sheetDoc struct {
	Sheet      string      `json:"sheet"`
	Placements []placedDoc `json:"placements"`
	Cuts       []cutDoc    `json:"cuts"`
	Offcuts    []rectDoc   `json:"offcuts,omitempty"`
}

type rectDoc struct {
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Length float64 `json:"length"`
	Width  float64 `json:"width"`
}

type placedDoc struct {
	Item    string  `json:"item"`
	X       float64 `json:"x"`
	Y       float64 `json:"y"`
	Rotated bool    `json:"rotated"`
	Turned  bool    `json:"turned,omitempty"`
	Edge    string  `json:"edge,omitempty"`
}

type cutDoc struct {
	Number  int      `json:"number"`
	Rip     bool     `json:"rip"`
	Piece   rectDoc  `json:"piece"`
	At      float64  `json:"at"`
	EndAt   float64  `json:"end_at"`
	Above   bool     `json:"kerf_above"`
	Setting float64  `json:"setting"`
	From    string   `json:"from"`
	Track   bool     `json:"track,omitempty"`
	Frees   []string `json:"frees,omitempty"`
}

type barDoc struct {
	Bar   string     `json:"bar"`
	Items []string   `json:"items"`
	Row   []pieceDoc `json:"row"`
	Rest  float64    `json:"rest"`
}

type pieceDoc struct {
	Item   string  `json:"item"`
	At     float64 `json:"at"`
	Turned bool    `json:"turned,omitempty"`
}

// JSON writes the solution for machines.
func (s Solution) JSON() []byte {
	var a answer
	var missing []saw.Missing
	if p := s.Sheets; p != nil {
		a = answer{Found: p.Found, Objective: p.Objective, Bound: p.Bound, Optimal: p.Optimal, Steps: p.Steps}
		for _, l := range p.Layouts {
			a.Sheets = append(a.Sheets, sheetDocOf(l))
		}
		missing = p.Missing
	}
	if p := s.Bars; p != nil {
		a = answer{Found: p.Found, Objective: p.Objective, Bound: p.Bound, Optimal: p.Optimal, Steps: p.Steps}
		for _, l := range p.Bars {
			a.Bars = append(a.Bars, barDocOf(l))
		}
		missing = p.Missing
	}
	a.Missing = missingDocs(missing)
	data, err := json.MarshalIndent(a, "", " ")
	if err != nil {
		panic(err)
	}
	return append(data, '\n')
}

func rectDocOf(r saw.Rect) rectDoc {
	return rectDoc{float64(r.X), float64(r.Y), float64(r.Length), float64(r.Width)}
}

func sheetDocOf(l saw.Layout) sheetDoc {
	d := sheetDoc{Sheet: l.Sheet, Placements: []placedDoc{}, Cuts: []cutDoc{}}
	for _, p := range l.Placed {
		d.Placements = append(d.Placements, placedDoc{p.Item, float64(p.X), float64(p.Y), p.Across, p.Turned, string(p.Edge)})
	}
	for n, c := range l.Cuts {
		d.Cuts = append(d.Cuts, cutDoc{n + 1, c.Rip, rectDocOf(c.Piece), float64(c.At), float64(c.EndAt), c.Above, float64(c.Setting), string(c.From), c.Track, c.Frees})
	}
	for _, o := range l.Offcuts {
		d.Offcuts = append(d.Offcuts, rectDocOf(o))
	}
	return d
}

// Text writes the solution for a person.
func (s Solution) Text() string {
	var b strings.Builder
	if p := s.Sheets; p != nil {
		verdict(&b, p.Found, p.Optimal, p.Objective, p.Bound, p.Missing)
		for _, l := range p.Layouts {
			fmt.Fprintf(&b, "\n%s\n", l.Sheet)
			for n, c := range l.Cuts {
				fmt.Fprintf(&b, "  %2d  %s\n", n+1, CutText(c))
			}
			for _, o := range l.Offcuts {
				fmt.Fprintf(&b, "      left over: %s x %s mm\n", mm(o.Length), mm(o.Width))
			}
		}
	}
	if p := s.Bars; p != nil {
		verdict(&b, p.Found, p.Optimal, p.Objective, p.Bound, p.Missing)
		for _, l := range p.Bars {
			var row []string
			for _, x := range l.Pieces {
				row = append(row, x.ID)
			}
			fmt.Fprintf(&b, "  %s: %s; %s mm left\n", l.Bar, strings.Join(row, ", "), mm(l.Rest))
		}
	}
	return b.String()
}

func verdict(b *strings.Builder, found, optimal bool, objective, bound float64, missing []saw.Missing) {
	for _, m := range missing {
		fmt.Fprintf(b, "Cannot be made: %s.\n", m.Why)
	}
	switch {
	case !found:
	case optimal:
		fmt.Fprintf(b, "%s, and no plan is better: that is proved.\n", number(objective))
	default:
		gap := 0.0
		if objective != 0 {
			gap = 100 * max(objective-bound, bound-objective) / objective
		}
		fmt.Fprintf(b, "%s; nobody can do better than %s, a gap of %.2f %%.\n", number(objective), number(bound), gap)
	}
}

// CutText says how one cut is made.
func CutText(c saw.Cut) string {
	kind := "cross cut"
	if c.Rip {
		kind = "rip"
	}
	set := fmt.Sprintf("fence at %s mm from the %s edge", mm(c.Setting), c.From)
	switch {
	case c.Slanted():
		set = fmt.Sprintf("track on marks %s mm at the left and %s mm at the right, from the low edge", mm(c.At-c.Piece.Y), mm(c.EndAt-c.Piece.Y))
	case c.Track:
		set = fmt.Sprintf("track on marks at %s mm from the slab's base line", mm(c.At))
	}
	frees := ""
	if len(c.Frees) > 0 {
		frees = "; frees " + strings.Join(c.Frees, " and ")
	}
	return fmt.Sprintf("%s of %s x %s mm: %s%s", kind, mm(c.Piece.Length), mm(c.Piece.Width), set, frees)
}

func mm(l unit.Length) string { return unit.Style{}.Length(l) }

func number(v float64) string { return unit.Style{}.Number(v, 3) }
