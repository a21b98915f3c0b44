package cut

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/calc/saw"
	"slabwright/model/unit"
)

// Shopping is what to buy for a design of what is on offer, and where to cut it.
type Shopping struct {
	Currency string
	Wood     []WoodLot
	Steel    []SteelLot
	Packs    []PackLot
	Finish   Finish
	Cost     float64 // of all slabs, bars and packs that are planned, at the job's prices

	WoodNotes, SteelNotes, PackNotes Notes
}

// Notes are words for one trade.
type Notes struct {
	Open    []string // what has no plan
	Assumed []string // what was taken for granted
}

// WoodLot is the wood of one species and thickness.
type WoodLot struct {
	Species   string
	Thickness unit.Length
	Blanks    []Blank
	Offers    []model.SlabOffer // that could serve
	Problem   saw.Problem
	Plan      saw.Plan
	Second    *Choice  // the second best set, nil if there is none
	Halved    []Choice // what changes when one part is made of two pieces
}

// SteelLot is the bars of one section.
type SteelLot struct {
	Section string
	Offers  []model.BarOffer // in the order of the problem's bars
	Problem saw.BarProblem
	Plan    saw.BarPlan
	Second  *Choice
}

// Choice is another set of stock.
type Choice struct {
	What  string   // what is different, in words
	Buys  []string // what is bought then, in words
	Cost  float64
	More  float64 // than the best set; below 0: it costs less
	Found bool
	Why   string // where it is not found
}

// Usual kerfs where the job says none: a hand-held circular saw and a steel saw.
// Common practice, no source.
const (
	usualWoodKerf  unit.Length = 4
	usualSteelKerf unit.Length = 2.5
)

// steps bounds the search for one set of stock.
const steps = 60_000

// Shop plans what a design takes of what is on offer. Parts that are cut already
// are not bought.
func Shop(j model.Job, d *model.Design) *Shopping {
	s := &Shopping{Currency: j.Offers.Currency}
	if s.Currency == "none" {
		s.Currency = ""
	}
	left := slices.Clone(j.Offers.Slabs)
	for _, lot := range woodLots(d) {
		s.wood(lot, left, j.Offers)
	}
	for _, lot := range steelLots(d) {
		s.steel(lot, j.Offers)
	}
	s.packs(d, j.Offers.Packs)
	s.Finish = finishOf(d)
	return s
}

// assume notes what was taken for granted, once.
func (n *Notes) assume(what string) {
	if !slices.Contains(n.Assumed, what) {
		n.Assumed = append(n.Assumed, what)
	}
}

// Open is what has no plan.
func (s *Shopping) Open() []string {
	return slices.Concat(s.WoodNotes.Open, s.SteelNotes.Open, s.PackNotes.Open)
}

// Assumed is what was taken for granted, of both trades.
func (s *Shopping) Assumed() []string {
	return slices.Concat(s.WoodNotes.Assumed, s.SteelNotes.Assumed)
}

// Money writes a price in a currency of any name.
func Money(currency string, v float64) string {
	t := fmt.Sprintf("%.2f", v)
	t = strings.TrimSuffix(t, ".00")
	if currency == "" {
		return t
	}
	return currency + " " + t
}
