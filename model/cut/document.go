package cut

import "slabwright/model/calc/saw"

// Document is a shopping plan for machines.
type Document struct {
	Sheets []LotDocument `json:"sheets"`
	Bars   []LotDocument `json:"bars"`
	Packs  []packDoc     `json:"packs"`
}

// packDoc is one kind of fixing.
type packDoc struct {
	What   string     `json:"what"`
	Size   string     `json:"size_mm"`
	Need   int        `json:"need"`
	Found  bool       `json:"found"`
	Buys   []string   `json:"buys,omitempty"`
	Pieces int        `json:"pieces"`
	Cost   float64    `json:"cost"`
	Second *choiceDoc `json:"second,omitempty"`
}

// LotDocument is one species and thickness, or one section.
type LotDocument struct {
	Material  string       `json:"material"`
	Thickness float64      `json:"thickness_mm,omitempty"`
	Kerf      float64      `json:"kerf_mm"`
	Found     bool         `json:"found"`
	Cost      float64      `json:"cost"`
	Bound     float64      `json:"bound"`
	Optimal   bool         `json:"optimal"`
	Sheets    []sheetDoc   `json:"layouts,omitempty"`
	Bars      []barDoc     `json:"rows,omitempty"`
	Missing   []missingDoc `json:"missing,omitempty"`
	Second    *choiceDoc   `json:"second,omitempty"`
	Halved    []choiceDoc  `json:"of_two_pieces,omitempty"`
}

type choiceDoc struct {
	What  string   `json:"what,omitempty"`
	Buys  []string `json:"buys,omitempty"`
	Cost  float64  `json:"cost"`
	More  float64  `json:"more"`
	Found bool     `json:"found"`
	Why   string   `json:"why,omitempty"`
}

// CostDocument is what the stock costs, for machines.
type CostDocument struct {
	Currency  string   `json:"currency"`
	Wood      float64  `json:"wood"`
	Steel     float64  `json:"steel"`
	Fixings   float64  `json:"fixings"`
	Stock     float64  `json:"stock"`    // all three
	Complete  bool     `json:"complete"` // every part has a plan
	Open      []string `json:"open"`
	NotPriced []string `json:"not_priced"`
	Assumed   []string `json:"assumed"`
	OilArea   float64  `json:"oil_area_m2"`
	OilLitres float64  `json:"oil_litres"`
}

// notPriced is what the job file has no prices for.
func (s *Shopping) notPriced() []string {
	fixings := "anchors, screws and washers"
	if len(s.Packs) > 0 {
		fixings = "washers"
	}
	return []string{fixings, "oil", "saw work, drilling and delivery"}
}

// Document gives the plans.
func (s *Shopping) Document() Document {
	d := Document{Sheets: []LotDocument{}, Bars: []LotDocument{}, Packs: []packDoc{}}
	for _, l := range s.Wood {
		p := l.Plan
		x := LotDocument{Material: l.Species, Thickness: float64(l.Thickness), Kerf: float64(l.Problem.Kerf), Found: p.Found, Cost: p.Objective, Bound: p.Bound, Optimal: p.Optimal, Missing: missingDocs(p.Missing)}
		for _, lay := range p.Layouts {
			x.Sheets = append(x.Sheets, sheetDocOf(lay))
		}
		if l.Second != nil {
			second := choiceDoc(*l.Second)
			x.Second = &second
		}
		for _, h := range l.Halved {
			x.Halved = append(x.Halved, choiceDoc(h))
		}
		d.Sheets = append(d.Sheets, x)
	}
	for _, l := range s.Steel {
		p := l.Plan
		x := LotDocument{Material: l.Section, Kerf: float64(l.Problem.Kerf), Found: p.Found, Cost: p.Objective, Bound: p.Bound, Optimal: p.Optimal, Missing: missingDocs(p.Missing)}
		for _, row := range p.Bars {
			x.Bars = append(x.Bars, barDocOf(row))
		}
		if l.Second != nil {
			second := choiceDoc(*l.Second)
			x.Second = &second
		}
		d.Bars = append(d.Bars, x)
	}
	for _, l := range s.Packs {
		x := packDoc{What: l.Need.What, Size: l.Need.Size, Need: l.Count, Found: l.Found, Buys: l.Buys(), Pieces: l.Pieces(), Cost: l.Cost}
		if l.Second != nil {
			second := choiceDoc(*l.Second)
			x.Second = &second
		}
		d.Packs = append(d.Packs, x)
	}
	return d
}

func missingDocs(list []saw.Missing) []missingDoc {
	var out []missingDoc
	for _, m := range list {
		out = append(out, missingDoc(m))
	}
	return out
}

func barDocOf(l saw.BarLayout) barDoc {
	d := barDoc{Bar: l.Bar, Rest: float64(l.Rest)}
	for _, x := range l.Pieces {
		d.Items = append(d.Items, x.ID)
		d.Row = append(d.Row, pieceDoc{x.ID, float64(x.At), x.Turned})
	}
	return d
}

// CostDocument gives the costs.
func (s *Shopping) CostDocument() CostDocument {
	d := CostDocument{Currency: s.Currency, Stock: s.Cost, Complete: len(s.Open()) == 0, Open: append([]string{}, s.Open()...), NotPriced: s.notPriced(), Assumed: append([]string{}, s.Assumed()...),
		OilArea: float64(s.Finish.Area) / 1e6, OilLitres: s.Finish.Litres}
	for _, l := range s.Wood {
		d.Wood += l.Plan.Objective
	}
	for _, l := range s.Steel {
		d.Steel += l.Plan.Objective
	}
	for _, l := range s.Packs {
		d.Fixings += l.Cost
	}
	return d
}
