package cut_test

import (
	"strings"
	"testing"

	"slabwright/model/calc/saw"
)

// TestLayoutsProvedByHand holds problems whose answer follows from a few sums,
// written beside each.
func TestLayoutsProvedByHand(t *testing.T) {
	tapering := `"high": [[0, 600], [2000, 400]]`
	for _, c := range []struct {
		name, ins string
		cost      float64 // 0: cannot be made
		missing   string
	}{
		// 498 + 4 + 498 = 1000: both come out of one sheet, with one cut.
		{"kerf just fits", `{"kind": "sheets", "objective": "cost", "kerf": 4, "sheets": [{"id": "s", "length": 1000, "width": 300, "price": 10}],
			"items": [{"id": "a", "length": 498, "width": 300, "count": 2}]}`, 10, ""},
		// 498.1 + 4 + 498 = 1000.1: a tenth too long, so it takes two.
		{"kerf just does not", `{"kind": "sheets", "objective": "cost", "kerf": 4, "sheets": [{"id": "s", "length": 1000, "width": 300, "price": 10}],
			"items": [{"id": "a", "length": 498, "width": 300, "count": 1}, {"id": "b", "length": 498.1, "width": 300, "count": 1}]}`, 20, ""},
		// Both parts want a natural edge and are as long as the slab, so one takes
		// the low edge and one the high: 300 + 4 + 300 = 604 at the narrowest.
		{"two natural edges", `{"kind": "sheets", "objective": "cost", "kerf": 4,
			"sheets": [{"id": "s", "length": 2000, "width": 640, "price": 7, "natural": ["low", "high"], "low": [[0, 10], [900, 0], [2000, 12]], "high": [[0, 614], [900, 620], [2000, 616]]}],
			"items": [{"id": "a", "length": 2000, "width": 300, "count": 2, "edge": "low"}]}`, 14, ""},
		// The same with the low edge at 0 and the high at 604: exactly enough.
		{"two natural edges, exactly", `{"kind": "sheets", "objective": "cost", "kerf": 4,
			"sheets": [{"id": "s", "length": 2000, "width": 640, "price": 7, "natural": ["low", "high"], "high": [[0, 604], [900, 640], [2000, 604]]}],
			"items": [{"id": "a", "length": 2000, "width": 300, "count": 2, "edge": "low"}]}`, 7, ""},
		// One natural edge: the parts stand side by side along it, 1000 + 4 + 1000 =
		// 2004. A slab of 2004 for 9 does it, two of 2003 cost 10.
		{"one natural edge", `{"kind": "sheets", "objective": "cost", "kerf": 4, "sheets": [
			{"id": "short", "length": 2003, "width": 400, "price": 5, "natural": ["high"]}, {"id": "long", "length": 2004, "width": 400, "price": 9, "natural": ["high"]}],
			"items": [{"id": "a", "length": 1000, "width": 300, "count": 2, "edge": "low"}]}`, 9, ""},
		// The slab tapers by 1 in 10: at 800 it is 520 wide, so a part of 800 x 520
		// fits, only at the wide end.
		{"taper", `{"kind": "sheets", "objective": "cost", "sheets": [{"id": "s", "length": 2000, "width": 600, "price": 3, ` + tapering + `}],
			"items": [{"id": "a", "length": 800, "width": 520, "count": 1}]}`, 3, ""},
		{"taper, a tenth too wide", `{"kind": "sheets", "objective": "cost", "sheets": [{"id": "s", "length": 2000, "width": 600, "price": 3, ` + tapering + `}],
			"items": [{"id": "a", "length": 800, "width": 520.1, "count": 1}]}`, 0, "a takes 800 x 520.1 mm; the nearest sheet s lacks 0.1 mm in width"},
		// Beside it, behind a kerf of 4, 1196 are left; at 2000 the slab is 400 wide:
		// a second part of 1196 x 400 comes out of the same slab.
		{"taper, two parts", `{"kind": "sheets", "objective": "cost", "kerf": 4, "sheets": [{"id": "s", "length": 2000, "width": 600, "price": 3, ` + tapering + `}],
			"items": [{"id": "a", "length": 800, "width": 520, "count": 1}, {"id": "b", "length": 1196, "width": 400, "count": 1}]}`, 3, ""},
		// A knot from 990 to 1010: 980 left of it and 1010 + 980 = 1990 right of it.
		{"knot between", `{"kind": "sheets", "objective": "cost", "kerf": 4, "sheets": [{"id": "s", "length": 2000, "width": 500, "price": 8, "keep_out": [{"x": 990, "y": 200, "length": 20, "width": 100}]}],
			"items": [{"id": "a", "length": 980, "width": 500, "count": 2}]}`, 8, ""},
		// 990.5 reaches into the knot on either side: one part of 991 needs x <= -1 or
		// x >= 1010 and ends at 2001.
		{"knot in the way", `{"kind": "sheets", "objective": "cost", "kerf": 4, "sheets": [{"id": "s", "length": 2000, "width": 500, "price": 8, "keep_out": [{"x": 990, "y": 200, "length": 20, "width": 100}]}],
			"items": [{"id": "a", "length": 991, "width": 500, "count": 1}]}`, 0, "places to keep off lie in the way"},
		// Two parts that taper from 300 to 200 over 1000 lie head to tail: 300 + 200 +
		// 4 * sqrt(1 + 0.1^2) = 504.02 wide, where 300 + 4 + 300 would take 604.
		{"tapers nest", `{"kind": "sheets", "objective": "cost", "kerf": 4, "sheets": [{"id": "s", "length": 1000, "width": 504.1, "price": 6}],
			"items": [{"id": "a", "length": 1000, "width": 300, "end_width": 200, "count": 2}]}`, 6, ""},
		{"tapers just do not nest", `{"kind": "sheets", "objective": "cost", "kerf": 4, "sheets": [{"id": "s", "length": 1000, "width": 504, "price": 6}],
			"items": [{"id": "a", "length": 1000, "width": 300, "end_width": 200, "count": 2}]}`, 12, ""},
		// 90 + 90 + 90 = 270 of 300 in area, but no cut frees three strips of 100 x 90
		// from 300 x 100 that must keep their grain across: 90 fits 300 three times.
		{"grain", `{"kind": "sheets", "objective": "cost", "sheets": [{"id": "s", "length": 300, "width": 100, "price": 2}],
			"items": [{"id": "a", "length": 100, "width": 90, "count": 3}]}`, 2, ""},
		// Lengthwise strips of 200 x 100: grain fixed, one per sheet of 300 x 100.
		{"grain against turning", `{"kind": "sheets", "objective": "cost", "sheets": [{"id": "s", "length": 300, "width": 200, "price": 2}],
			"items": [{"id": "a", "length": 200, "width": 100, "count": 3}]}`, 4, ""},
		// Turned, the third stands upright beside the two: 200 + 100 = 300.
		{"free to turn", `{"kind": "sheets", "objective": "cost", "sheets": [{"id": "s", "length": 300, "width": 200, "price": 2}],
			"items": [{"id": "a", "length": 200, "width": 100, "count": 3, "rotate": true}]}`, 2, ""},
		// Two mitres of the same slant share one cut: (500 + 550) / 2 = 525 mid length
		// each; near edges 500 and 550, the kerf across a slant of 50 on a depth of 50
		// is 2 * sqrt(2) = 2.83. a (far edge longer by 50) + b (far edge shorter by 50):
		// near edge 500 + 2.83 + 550 = 1052.83.
		{"mitres nest", `{"kind": "bars", "objective": "cost", "kerf": 2, "depth": 50, "bars": [{"id": "short", "length": 1052.83, "price": 4}, {"id": "long", "length": 1103, "price": 5}],
			"items": [{"id": "a", "length": 500, "right": 50, "count": 1}, {"id": "b", "length": 550, "left": 50, "count": 1}]}`, 4, ""},
		// With one of them the other way round the far edges meet: 550 + 2.83 + 550.
		{"mitres against each other", `{"kind": "bars", "objective": "cost", "kerf": 2, "depth": 50, "bars": [{"id": "short", "length": 1052.83, "price": 4}, {"id": "long", "length": 1103, "price": 5}],
			"items": [{"id": "a", "length": 500, "right": 50, "count": 1}, {"id": "b", "length": 500, "left": -50, "count": 1}]}`, 5, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, v := solve(t, c.name, []byte(c.ins), saw.Effort{})
			if s.Found() != (c.cost > 0) {
				t.Fatalf("found %v: %s", s.Found(), s.Text())
			}
			if c.missing != "" && !strings.Contains(s.Text(), c.missing) {
				t.Errorf("says %q, not %q", s.Text(), c.missing)
			}
			if c.cost > 0 && (v.Worth != c.cost || !strings.Contains(s.Text(), "that is proved")) {
				t.Errorf("costs %g, by hand %g\n%s", v.Worth, c.cost, s.Text())
			}
		})
	}
}
