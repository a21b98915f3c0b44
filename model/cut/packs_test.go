package cut_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/cut"
)

// TestPacksOfTheStudio: 15 anchors in brick come out of two packs of ten for 38,
// the pack of fifty costs 64; eleven and ten screws of one size share a pack of 25.
func TestPacksOfTheStudio(t *testing.T) {
	_, _, s := shopped(t, "studio")
	want := map[string]string{
		"wall anchor, solid brick": "15: 2 x anchors for brick by ten, 38, 26 more",
		"wood screw, wide head":    "21: 1 x screws 5 x 35 by twenty-five, 4.5, 6.5 more",
		"coach screw into studs":   "2: 1 x coach screws of 80 by ten, 7",
	}
	for _, l := range s.Packs {
		got := fmt.Sprintf("%d: %s, %g", l.Count, strings.Join(l.Buys(), ", "), l.Cost)
		if l.Second != nil {
			got += fmt.Sprintf(", %g more", l.Second.More)
		}
		if w := want[l.Need.What]; w != "" && got != w {
			t.Errorf("%s: %s, not %s", l.Need.What, got, w)
		}
		delete(want, l.Need.What)
	}
	if len(want) > 0 {
		t.Errorf("no packs for %v", want)
	}
}

// TestPacksThatDoNotServe: a screw that is longer than the pilot hole is deep
// would come near the top, anchors for another wall are not approved for this one.
func TestPacksThatDoNotServe(t *testing.T) {
	for _, c := range [][3]string{
		{"diameter: 5, length: 35, pieces: 25", "diameter: 5, length: 40, pieces: 25", "screws 5 x 35 by twenty-five"},
		{"diameter: 5, length: 35, pieces: 25", "diameter: 6, length: 35, pieces: 25", "screws 5 x 35 by twenty-five"},
		{"wall: solid brick, diameter: 8, pieces: 10", "wall: hollow block, diameter: 8, pieces: 10", "anchors for brick by ten"},
		{"length: 80, pieces: 10", "length: 60, pieces: 10", "coach screws of 80 by ten"},
		{"height: 60, pieces: 4", "height: 55, pieces: 4", "castors of 60 by four"},
	} {
		_, _, s := shopped(t, "studio", c[0], c[1])
		for _, l := range s.Packs {
			if bought := strings.Join(l.Buys(), ", "); strings.Contains(bought, c[2]) {
				t.Errorf("with %q the plan buys %s", c[1], bought)
			}
		}
	}
	_, _, s := shopped(t, "studio", "height: 60, pieces: 4", "height: 55, pieces: 4")
	if open := strings.Join(s.Open(), "; "); !strings.Contains(open, "no pack of swivel castor (overall height 60) is on offer, 4 are wanted") {
		t.Errorf("open: %q", open)
	}
}

// TestPacksAgainstAllChoices tries every number of up to three kinds of packs of
// castors for 4 pieces, 300 times.
func TestPacksAgainstAllChoices(t *testing.T) {
	j, d, _ := shopped(t, "studio")
	r := rand.New(rand.NewPCG(7, 7))
	for n := range 300 {
		j.Offers.Packs = nil
		for range 1 + r.IntN(3) {
			j.Offers.Packs = append(j.Offers.Packs, model.PackOffer{Kind: model.Castor, Length: 60, Pieces: 1 + r.IntN(5), Price: float64(1 + r.IntN(20))})
		}
		best := math.Inf(1)
		var try func(i, pieces int, cost float64)
		try = func(i, pieces int, cost float64) {
			if pieces >= 4 {
				best = min(best, cost)
				return
			}
			for k := i; k < len(j.Offers.Packs); k++ {
				try(k, pieces+j.Offers.Packs[k].Pieces, cost+j.Offers.Packs[k].Price)
			}
		}
		try(0, 0, 0)
		for _, l := range cut.PackLots(d, j.Offers.Packs) {
			if l.Need.Kind == model.Castor && (!l.Found || math.Abs(l.Cost-best) > 1e-9 || l.Pieces() < 4) {
				t.Fatalf("case %d: %+v costs %g for %d pieces, the best %g", n, j.Offers.Packs, l.Cost, l.Pieces(), best)
			}
		}
	}
}
