package model_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// ledgeParams has a parameter of every kind.
type ledgeParams struct {
	SeatAt  unit.Length `is:"500" min:"300" max:"900" help:"middle of the seat"`
	Shelves int         `is:"2" min:"0" max:"4" help:"how many"`
	Lit     bool        `is:"yes" help:"whether there is light"`
	Wood    string      `is:"ash" of:"ash oak" help:"which wood"`
	own     int
}

// TestSettings fills a parameter struct; what cannot be taken gives way to the
// nearest that can, with a finding at its place in the job file.
func TestSettings(t *testing.T) {
	var got ledgeParams
	p := model.NewPreset("ledge", "a ledge", func(s model.Site, p ledgeParams) *model.Design {
		got = p
		return model.NewDesign("ledge", s.Room)
	})
	if n := len(p.Params); n != 4 || p.Params[0].Name != "seat_at" || p.Params[3].Choices[1] != "oak" {
		t.Fatalf("%d parameters: %+v", n, p.Params)
	}
	nan := math.NaN()
	at := model.Pos{File: "job.yaml", Line: 7, Column: 3}
	for _, c := range []struct {
		name, key string
		set       model.Setting
		want      ledgeParams
		says      string
	}{
		{"nothing told", "", model.Setting{}, ledgeParams{500, 2, true, "ash", 0}, ""},
		{"a length", "seat_at", model.Setting{Length: 612.5}, ledgeParams{612.5, 2, true, "ash", 0}, ""},
		{"too long", "seat_at", model.Setting{Length: 1e300}, ledgeParams{900, 2, true, "ash", 0}, "parameter seat_at is more than a kilometre, allowed are 300 to 900 mm"},
		{"too short", "seat_at", model.Setting{Length: -1}, ledgeParams{300, 2, true, "ash", 0}, "parameter seat_at is -1 mm, allowed are 300 to 900 mm"},
		{"no length", "seat_at", model.Setting{Length: unit.Length(nan)}, ledgeParams{500, 2, true, "ash", 0}, "parameter seat_at is no number"},
		{"a count", "shelves", model.Setting{Number: 4}, ledgeParams{500, 4, true, "ash", 0}, ""},
		{"half a shelf", "shelves", model.Setting{Number: 2.6}, ledgeParams{500, 3, true, "ash", 0}, "parameter shelves is 2.6, allowed are whole numbers from 0 to 4"},
		{"endless shelves", "shelves", model.Setting{Number: math.Inf(1)}, ledgeParams{500, 4, true, "ash", 0}, "parameter shelves is +Inf"},
		{"no count", "shelves", model.Setting{Number: nan}, ledgeParams{500, 2, true, "ash", 0}, "parameter shelves is no number, allowed are whole numbers"},
		{"a flag", "lit", model.Setting{}, ledgeParams{500, 2, false, "ash", 0}, ""},
		{"a choice", "wood", model.Setting{Text: "oak"}, ledgeParams{500, 2, true, "oak", 0}, ""},
		{"no choice", "wood", model.Setting{Text: "elm"}, ledgeParams{500, 2, true, "ash", 0}, `parameter wood is "elm", allowed are ash, oak`},
		{"unknown", "seat", model.Setting{}, ledgeParams{500, 2, true, "ash", 0}, `there is no parameter "seat"`},
		{"nearly", "shelfs", model.Setting{}, ledgeParams{500, 2, true, "ash", 0}, `there is no parameter "shelfs" (nearest: "shelves")`},
	} {
		set := map[string]model.Setting{}
		if c.key != "" {
			c.set.Pos = at
			set[c.key] = c.set
		}
		bad := p.Build(model.Site{}, set).Faults()
		if got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
		switch {
		case c.says == "" && len(bad) > 0:
			t.Errorf("%s: %s", c.name, bad[0].Why)
		case c.says != "" && (len(bad) != 1 || !strings.Contains(bad[0].Why, c.says) || bad[0].Status != find.Fail || bad[0].Line != "job.yaml:7:3"):
			t.Errorf("%s: want %q at job.yaml:7:3, got %+v", c.name, c.says, bad)
		}
	}
}

// TestPresetsFailAtStartUp: a wrong tag is a fault in a program; its author
// sees it before anybody else.
func TestPresetsFailAtStartUp(t *testing.T) {
	for says, start := range map[string]func(){
		"a parameter is a unit.Length, an int": func() { preset[struct{ A []int }]() },
		"tag min is no number": func() {
			preset[struct {
				A unit.Length `is:"1" max:"2" help:"a"`
			}]()
		},
		"default 9 outside 1 to 2": func() {
			preset[struct {
				A int `is:"9" min:"1" max:"2" help:"a"`
			}]()
		},
		"parameter A has no help text": func() {
			preset[struct {
				A bool `is:"yes"`
			}]()
		},
		`default "elm" is none of its choices`: func() {
			preset[struct {
				A string `is:"elm" of:"ash oak" help:"a"`
			}]()
		},
	} {
		func() {
			defer func() {
				if got := fmt.Sprint(recover()); !strings.Contains(got, says) {
					t.Errorf("want a panic with %q, got %q", says, got)
				}
			}()
			start()
		}()
	}
}

func preset[P any]() model.Preset {
	return model.NewPreset("p", "p", func(model.Site, P) *model.Design { return nil })
}

// TestNearestWord: a slip of a few letters finds its word, another word does not.
func TestNearestWord(t *testing.T) {
	words := []string{"left", "back left", "niche back", "right"}
	for word, want := range map[string]string{"lfet": "left", "Right": "right", "back lef": "back left", "niche bakc": "niche back", "window": "", "": "", "rihgt": "right"} {
		if got := model.Nearest(word, words); got != want {
			t.Errorf("%q: %q, want %q", word, got, want)
		}
	}
}

// TestOfferOf takes the first slab of the species with edges enough.
func TestOfferOf(t *testing.T) {
	o := model.Offers{Slabs: []model.SlabOffer{{Name: "oak", Species: stock.Oak.Name, Natural: 2}, {Name: "plain ash", Species: stock.Ash.Name}, {Name: "ash", Species: stock.Ash.Name, Natural: 1}}}
	for natural, want := range []string{"plain ash", "ash", ""} {
		if got := o.OfferOf(stock.Ash.Name, natural).Name; got != want {
			t.Errorf("ash with %d natural edges: %q, want %q", natural, got, want)
		}
	}
}
