package report

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/unit"
)

// fitDoc is one way across a slab in report.json. Probabilities and the order
// are left out where readings forbid them.
type fitDoc struct {
	Part        string      `json:"part"`
	Way         string      `json:"way"`
	From        string      `json:"from"`
	To          string      `json:"to"`
	Size        float64     `json:"size_mm"`       // as drawn: a length along the back, a depth at the left
	Other       float64     `json:"other_size_mm"` // along the front, at the right
	Play        float64     `json:"play_mm"`       // at the tightest place, beyond the least gaps
	PlaySD      float64     `json:"play_sd_mm"`
	Unchecked   []string    `json:"unchecked"`
	Disputed    []string    `json:"disputed"`
	Wanted      float64     `json:"wanted_probability"`
	Fits        *float64    `json:"probability,omitempty"`
	Low         *float64    `json:"probability_low,omitempty"` // bounds in closed form
	High        *float64    `json:"probability_high,omitempty"`
	Longer      *float64    `json:"longer_mm,omitempty"`            // how much longer fits with the probability wanted
	AsDrawn     *float64    `json:"as_drawn_probability,omitempty"` // that every gap is neither too small nor too wide when the slab is not slid
	DrawnPlay   *float64    `json:"drawn_play_mm,omitempty"`        // over the drawn rooms
	DrawnPlaySD *float64    `json:"drawn_play_sd_mm,omitempty"`
	Order       *orderDoc   `json:"order,omitempty"`
	Gaps        []gapDoc    `json:"gaps"`
	Shape       *shapeDoc   `json:"shape,omitempty"`
	Scribe      []scribeDoc `json:"scribe"`
}

type orderDoc struct {
	Size  float64      `json:"size_mm"`
	Other float64      `json:"other_size_mm"`
	Plus  float64      `json:"plus_mm"`
	Minus float64      `json:"minus_mm"`
	Good  bool         `json:"good"`
	From  float64      `json:"good_from_mm"`
	To    float64      `json:"good_to_mm"`
	Jams  float64      `json:"jams"`
	Wide  float64      `json:"shows_too_wide"`
	Curve [][3]float64 `json:"curve"` // size in mm, jams, shows too wide
}

type gapDoc struct {
	Edge   string     `json:"edge"`
	To     string     `json:"to"`
	At     [3]float64 `json:"at_mm"`
	Gap    float64    `json:"gap_mm"`
	SD     float64    `json:"sd_mm"`
	Limits []float64  `json:"limits_5_95_mm"` // empty where no probability is given
}

type shapeDoc struct {
	Form    string  `json:"form"`
	Clear   float64 `json:"clear_mm"`
	Narrow  float64 `json:"least_width_mm"`
	Wide    float64 `json:"greatest_width_mm"`
	Open    float64 `json:"open_joints_mm"`
	Limit   float64 `json:"may_show_mm"`
	Uneven  float64 `json:"uneven_mm"`
	Explain string  `json:"text"`
}

type scribeDoc struct {
	Edge     string  `json:"edge"`
	Bow      float64 `json:"bow_mm"`
	OverWood float64 `json:"over_wood_mm"`
}

// ways gives every way across every slab that is bound at both of its ends.
func ways(d *model.Design, each func(p *model.Part, w model.FitWay)) {
	for _, p := range d.Parts {
		if p.Slab == nil {
			continue
		}
		f, err := d.FitOf(p.ID)
		if err != nil {
			continue // the findings say why
		}
		for _, w := range f.Ways {
			each(p, w)
		}
	}
}

func fits(d *model.Design) []fitDoc {
	out := []fitDoc{}
	ways(d, func(p *model.Part, w model.FitWay) {
		doc := fitDoc{Part: p.ID, Way: w.Name, From: w.From, To: w.To, Size: mm(w.Size), Other: mm(w.Other), Play: mm(w.Play.Value), PlaySD: mm(w.Play.SD),
			Unchecked: append([]string{}, w.Unchecked...), Disputed: append([]string{}, w.Disputed...), Wanted: w.Wish.Sure, Gaps: []gapDoc{}, Scribe: []scribeDoc{}}
		if c := w.Chance; c != nil {
			low, high := c.Bounds(0)
			doc.Fits, doc.Low, doc.High = chance(c.Fits(0)), chance(low), chance(high)
			play := c.Play()
			doc.Longer, doc.AsDrawn = chance(float64(c.Longest(w.Wish.Sure).Drawn)), chance(c.AsDrawn)
			doc.DrawnPlay, doc.DrawnPlaySD = chance(float64(play.Value)), chance(float64(play.SD))
		}
		if o := w.Order; o != nil {
			doc.Order = &orderDoc{Size: mm(o.Size), Other: mm(w.OrderOther()), Plus: mm(w.Wish.Shop.Plus), Minus: mm(w.Wish.Shop.Minus), Good: o.Good,
				From: mm(o.From), To: mm(o.To), Jams: *chance(o.Jams), Wide: *chance(o.Wide)}
			for _, q := range o.Curve {
				doc.Order.Curve = append(doc.Order.Curve, [3]float64{mm(q.Size), *chance(q.Jams), *chance(q.Wide)})
			}
		}
		for _, g := range w.Gaps {
			x := gapDoc{Edge: g.Edge, To: g.To, At: triple(g.At.Up(g.Height)), Gap: mm(g.Gap.Value), SD: mm(g.Gap.SD), Limits: []float64{}}
			if w.Chance != nil {
				x.Limits = []float64{mm(g.Low), mm(g.High)}
			}
			doc.Gaps = append(doc.Gaps, x)
		}
		if s := w.Shape; s != nil {
			doc.Shape = &shapeDoc{string(s.Form), mm(s.Clear), mm(s.Narrow), mm(s.Wide), mm(s.Open), mm(s.Limit), mm(s.Uneven), w.ShapeText()}
		}
		for _, s := range w.Scribe {
			doc.Scribe = append(doc.Scribe, scribeDoc{s.Edge, mm(s.Bow), mm(s.OverWood)})
		}
		out = append(out, doc)
	})
	return out
}

// chance rounds to what drawn rooms can tell, millimetres likewise.
func chance(p float64) *float64 {
	p = math.Round(p*1e4)/1e4 + 0
	return &p
}

// orderSizes is the table of what to order, and how the ends are best cut.
func orderSizes(w *strings.Builder, d *model.Design, style unit.Style) {
	var rows, words []string
	ways(d, func(p *model.Part, way model.FitWay) {
		between := cell(way.From + " – " + way.To)
		if way.Order == nil {
			rows = append(rows, fmt.Sprintf("| %s | %s | %s | %s | no order yet | | | %s |", cell(p.ID), way.Name, between, pairOf(style, way.Size, way.Other), cell(way.Why())))
		} else {
			o := way.Order
			good := "none"
			if o.Good {
				good = sized(style, fmt.Sprintf("%.0f to %.0f", float64(o.From), float64(o.To)))
			}
			rows = append(rows, fmt.Sprintf("| %s | %s | %s | %s | **%s %s** (%s) | %s | %s | %s |", cell(p.ID), way.Name, between, pairOf(style, way.Size, way.Other),
				sized(style, fmt.Sprintf("%.0f", float64(o.Size))), tolerance(style, way), sized(style, fmt.Sprintf("%.1f", float64(way.OrderOther()))), good, percent(way.Chance.Fits(0)), percent(o.Jams)+", "+percent(o.Wide)))
		}
		if s := way.ShapeText(); s != "" {
			words = append(words, fmt.Sprintf("- %s: %s.", p.ID, s))
		}
		for _, s := range way.Scribe {
			words = append(words, fmt.Sprintf("- %s, edge %s: the wall is %.1f mm off straight there; leave %.1f mm more wood and scribe it on the spot.", p.ID, s.Edge, float64(s.Bow), float64(s.OverWood)))
		}
	})
	if rows == nil {
		return
	}
	fmt.Fprintf(w, "## Order sizes\n\nSizes are along the back (along the front), depths at the left (at the right). Change both ends alike. At least %.0f mm is left to a wall.\n\n", float64(model.UsualFit.Least))
	fmt.Fprintf(w, "| part | way | between | drawn | order | would do | fits as drawn | ordered so it jams, shows too wide |\n|---|---|---|--:|--:|--:|--:|--:|\n")
	fmt.Fprintf(w, "%s\n\n", strings.Join(rows, "\n"))
	if words != nil {
		fmt.Fprintf(w, "%s\n\n", strings.Join(words, "\n"))
	}
}

func pairOf(s unit.Style, a, b unit.Length) string {
	return fmt.Sprintf("%s (%s)", sized(s, fmt.Sprintf("%.1f", float64(a))), sized(s, fmt.Sprintf("%.1f", float64(b))))
}

// percent writes a chance; drawn rooms cannot tell the nearly certain from the
// certain.
func percent(p float64) string {
	switch {
	case p > 0.9995:
		return "over 99.9 %"
	case p < 0.0005:
		return "under 0.1 %"
	}
	return fmt.Sprintf("%.1f %%", 100*p)
}

// tolerance is that of the shop, with its unit where the sizes have another.
func tolerance(s unit.Style, w model.FitWay) string {
	if s.Unit == "" || s.Unit == "mm" {
		return w.Tolerance()
	}
	return w.Tolerance() + " mm"
}
