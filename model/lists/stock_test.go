package lists_test

import (
	"fmt"
	"testing"

	"slabwright/model"
	"slabwright/model/calc/saw"
	"slabwright/model/cut"
	"slabwright/model/lists"
)

// bought is a small plan: two boards of one slab on offer, one bar with two
// angles, the second end of the first mitred.
func bought() *cut.Shopping {
	sheets := saw.Problem{Kerf: 4, Aim: saw.LeastCost, Sheets: []saw.Sheet{{ID: "plank", Length: 2000, Width: 300, Price: 120}},
		Items: []saw.Item{{ID: "left", Length: 900, Width: 280, Count: 1}, {ID: "right", Length: 900, Width: 280, Count: 1}}}
	bars := saw.BarProblem{Kerf: 2, Depth: 50, Aim: saw.LeastCost, Bars: []saw.Bar{{ID: "L50x50x5, 3000 mm", Length: 3000, Price: 30}},
		Pieces: []saw.Piece{{ID: "one", Length: 800, Right: 50, Count: 1}, {ID: "two", Length: 700, Left: 50, Count: 1}}}
	return &cut.Shopping{Currency: "shells", Finish: cut.Finish{Area: 2e6, Litres: 0.2, Coats: 2},
		Wood: []cut.WoodLot{{Species: "European oak", Thickness: 30, Problem: sheets, Plan: saw.PlanSheets(sheets, saw.Effort{}),
			Offers: []model.SlabOffer{{Name: "plank", Species: "European oak", Length: 2000, Width: 300, Thickness: 32, Price: 120}}}},
		Steel: []cut.SteelLot{{Section: "L50x50x5", Problem: bars, Plan: saw.PlanBars(bars, saw.Effort{})}}}
}

// TestBuyNamesStockAndPrices: the plank weighs 2 x 0.3 x 0.032 m3 at 690 kg/m3,
// 13.25 kg; three metres of L50x50x5 at 3.77 kg/m, 11.31 kg.
func TestBuyNamesStockAndPrices(t *testing.T) {
	data, err := lists.Buy(&model.Design{}, bought())
	rows := read(t, data, err)
	want := []map[string]string{
		{"what": "slab on offer: plank", "size_mm": "2000 x 300 x 32", "count": "1", "mass_kg": "13.25", "for": "left; right", "price_each": "120", "price_all": "120", "currency": "shells"},
		{"what": "steel angle, bar", "size_mm": "L50x50x5, 3000 mm", "count": "1", "mass_kg": "11.31", "for": "one; two", "price_all": "30"},
		{"what": "oil, 2 coats", "size_mm": "for 2.00 m2", "mind": "about 0.20 litres by common practice: see the tin"},
	}
	if len(rows) != len(want) {
		t.Fatalf("%d rows, not %d", len(rows), len(want))
	}
	for i, w := range want {
		for k, v := range w {
			if rows[i][k] != v {
				t.Errorf("row %d: %s is %q, not %q", i+1, k, rows[i][k], v)
			}
		}
	}
}

// TestCutsStandInSawOrder: the plank is sawn at 900, then each board is ripped to
// 280. Both mitres share one cut at 800 + 2 sqrt 2 = 802.83.
func TestCutsStandInSawOrder(t *testing.T) {
	data, err := lists.Cuts(bought())
	var got []string
	for _, r := range read(t, data, err) {
		got = append(got, fmt.Sprintf("%s %s %s %s %s frees %s", r["stock"], r["cut"], r["kind"], r["at_mm"], r["end_at_mm"], r["frees"]))
	}
	want := []string{
		"plank 1 rip 280 280 frees ", "plank 2 cross cut 900 900 frees left", "plank 3 cross cut 1804 1804 frees right",
		"L50x50x5, 3000 mm 1 mitre 800 850 frees one", "L50x50x5, 3000 mm 2 cross cut 1502.8 1502.8 frees two",
	}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("cuts are\n%q, not\n%q", got, want)
	}
	if data, err = lists.Cuts(nil); err != nil || len(read(t, data, err)) != 0 {
		t.Errorf("without a plan: %q, %v", data, err)
	}
}
