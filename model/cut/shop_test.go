package cut_test

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/calc/saw"
	"slabwright/model/cut"
	"slabwright/model/job"
	"slabwright/presets"
	"slabwright/testdata/sawyer"
)

// shopped plans what the job of a preset takes, after some changes of its text.
func shopped(t *testing.T, name string, changes ...string) (model.Job, *model.Design, *cut.Shopping) {
	t.Helper()
	data, err := os.ReadFile("../../presets/" + name + "/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i+1 < len(changes); i += 2 {
		if !strings.Contains(text, changes[i]) {
			t.Fatalf("%s has no %q", name, changes[i])
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	j, mistakes := job.Read(name, []byte(text), presets.All())
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range presets.All() {
		if p.Name == j.Preset {
			d := p.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House, Cut: j.Cut}, j.Settings)
			d.Finish()
			return j, d, cut.Shop(j, d)
		}
	}
	t.Fatalf("no preset %q", j.Preset)
	return j, nil, nil
}

// sawn has the sawyer saw every layout of a lot.
func sawn(t *testing.T, l cut.WoodLot) float64 {
	t.Helper()
	var sheets, items []doc
	for _, s := range l.Problem.Sheets {
		points := func(list []saw.Station) [][2]float64 {
			out := [][2]float64{}
			for _, p := range list {
				out = append(out, [2]float64{float64(p.At), float64(p.Y)})
			}
			return out
		}
		natural := []string{}
		for _, n := range s.Natural {
			natural = append(natural, string(n))
		}
		keep := []doc{}
		for _, k := range s.KeepOut {
			keep = append(keep, doc{"x": k.X, "y": k.Y, "length": k.Length, "width": k.Width})
		}
		sheets = append(sheets, doc{"id": s.ID, "length": s.Length, "width": s.Width, "count": s.Count, "price": s.Price, "natural": natural, "low": points(s.Low), "high": points(s.High), "keep_out": keep})
	}
	for _, i := range l.Problem.Items {
		items = append(items, doc{"id": i.ID, "length": i.Length, "width": i.Width, "count": i.Count, "edge": string(i.Edge)})
	}
	ins := encode(t, doc{"kind": "sheets", "objective": "cost", "kerf": l.Problem.Kerf, "sheets": sheets, "items": items})
	v := sawyer.Check(ins, cut.Solution{Sheets: &l.Plan}.JSON())
	for _, w := range v.Wrong {
		t.Errorf("%s %v: %s", l.Species, l.Thickness, w)
	}
	return v.Worth
}

// TestShoppingForThePresets has every plan of the presets sawn by the sawyer, and
// adds the prices of the job file up.
func TestShoppingForThePresets(t *testing.T) {
	for _, name := range []string{"studio", "alcove", "corner"} {
		_, _, s := shopped(t, name)
		sum := 0.0
		for _, l := range s.Wood {
			if l.Plan.Found {
				sum += sawn(t, l)
			}
		}
		for _, l := range s.Steel {
			for _, row := range l.Plan.Bars {
				for _, b := range l.Problem.Bars {
					if b.ID == row.Bar {
						sum += b.Price
					}
				}
			}
		}
		for _, l := range s.Packs {
			for i, n := range l.Buy {
				sum += float64(n) * l.Offers[i].Price
			}
		}
		if math.Abs(sum-s.Cost) > 1e-9 {
			t.Errorf("%s: costs %g, its slabs, bars and packs cost %g", name, s.Cost, sum)
		}
	}
}

// TestStudioShopping knows the offers of the demo: the worktop of 2373 x 780 with
// its natural front only comes out of the slab for 690, as the other with a
// natural edge is 604 wide at its narrowest. The rest is 240 + 4 + 240 wide and
// fits the square-edged slab for 480 (2000 x 800), while the slab for 520 would do
// too: 40 more. The boards of the roll-out table: 900 + 846 + 2 x 473 + 3 x 4 =
// 2704 of 480 in a row, the rail of 120 above them, 480 + 4 + 120 = 604 wide, so
// the panel of 2800 x 620 for 210 holds all; two of 1400 cost 236 and one holds
// 900 + 4 + 473 only. The bars: 4144 mm of angles come out of one bar of 6 m for 58; two
// of 3 m cost 68.
func TestStudioShopping(t *testing.T) {
	_, _, s := shopped(t, "studio")
	if len(s.Wood) != 2 || len(s.Steel) != 1 || s.Cost != 690+480+210+58+38+4.5+7+12+26 {
		t.Fatalf("costs %g in %d and %d lots", s.Cost, len(s.Wood), len(s.Steel))
	}
	w, b := s.Wood[0], s.Steel[0]
	if !w.Plan.Optimal || !b.Plan.Optimal {
		t.Error("not proved")
	}
	if panel := s.Wood[1]; !panel.Plan.Optimal || panel.Second == nil || panel.Second.More != 26 {
		t.Errorf("panels: %+v", panel.Second)
	}
	if w.Second == nil || w.Second.More != 40 || b.Second == nil || b.Second.More != 10 {
		t.Errorf("second best: %+v, %+v", w.Second, b.Second)
	}
	for _, h := range w.Halved {
		if h.Found && h.More < 0 {
			t.Errorf("%s saves %g: nothing in two pieces does without the second slab", h.What, -h.More)
		}
	}
	data, err := json.Marshal(s.Document())
	if err != nil || !strings.Contains(string(data), `"sheets":[{"material":"European ash"`) || !strings.Contains(string(data), `"bars":[{"material":"L50x50x6"`) {
		t.Errorf("%v: %.200s", err, data)
	}
}

// TestAlcoveShelvesInTwoPieces: three shelves of 280 take a slab of 537 each, two
// side by side would be 564 wide. With one shelf of two strips of 143, two slabs
// hold 280 + 4 + 143 = 427 and 280 + 4 + 143: one slab less.
func TestAlcoveShelvesInTwoPieces(t *testing.T) {
	_, _, s := shopped(t, "alcove")
	for _, l := range s.Wood {
		if l.Thickness != 30 {
			continue
		}
		if l.Plan.Objective != 3*260 {
			t.Errorf("three shelves cost %g", l.Plan.Objective)
		}
		for _, h := range l.Halved {
			if want := map[bool]float64{true: -260, false: 0}[strings.HasSuffix(h.What, "side by side")]; h.More != want {
				t.Errorf("%s: %g more, not %g", h.What, h.More, want)
			}
		}
	}
}

// TestNothingFits names the part, what it takes and the nearest slab.
func TestNothingFits(t *testing.T) {
	_, _, s := shopped(t, "corner")
	if open := strings.Join(s.Open(), "\n"); !strings.Contains(open, "back worktop takes 2809.9 x 700 mm; the nearest sheet oak with one natural edge lacks 209.9 mm in length") {
		t.Errorf("says %q", open)
	}
}

// TestCurrencyIsFree takes any name for money, and none.
func TestCurrencyIsFree(t *testing.T) {
	_, _, s := shopped(t, "studio", "currency: none", "currency: shells")
	if got := cut.Money(s.Currency, s.Cost); got != "shells 1525.50" {
		t.Errorf("writes %q", got)
	}
	if got := cut.Money("", 12.345); got != "12.35" {
		t.Errorf("writes %q", got)
	}
}

// TestAlreadyCutIsNotBought leaves out what is cut already.
func TestAlreadyCutIsNotBought(t *testing.T) {
	j, d, _ := shopped(t, "studio")
	d.Part("worktop").Cut = &model.AsCut{}
	if s := cut.Shop(j, d); s.Wood[0].Plan.Objective != 480 {
		t.Errorf("without the worktop the wood costs %g", s.Wood[0].Plan.Objective)
	}
}

// TestFlawsAreLeftOut puts a knot into the middle of the square-edged slab of the
// demo: parts and cuts go round it. Across the whole slab at 1000 it leaves no room
// for the long shelf of 1901, and the slab for 520 is taken: 40 more.
func TestFlawsAreLeftOut(t *testing.T) {
	offer := "thickness: 45, natural: 0, price: 480"
	_, _, s := shopped(t, "studio", offer, "thickness: 45, natural: 0, price: 480, flaws: [{from: 1000, up: 380, length: 60, width: 40}]")
	sawn(t, s.Wood[0])
	if s.Wood[0].Plan.Objective != 1170 {
		t.Errorf("with a knot the wood costs %g", s.Wood[0].Plan.Objective)
	}
	_, _, s = shopped(t, "studio", offer, "thickness: 45, natural: 0, price: 480, flaws: [{from: 1000, up: 0, length: 20, width: 800}]")
	if sawn(t, s.Wood[0]); s.Wood[0].Plan.Objective != 1210 {
		t.Errorf("with a split across the wood costs %g", s.Wood[0].Plan.Objective)
	}
}
