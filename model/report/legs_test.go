package report_test

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"slabwright/model/report"
)

// legsOf reads the key wall_legs of a report.
func legsOf(t *testing.T, b report.Build) map[string]any {
	t.Helper()
	data, err := report.JSON(b)
	if err != nil {
		t.Fatal(err)
	}
	var doc map[string]any
	if err := json.Unmarshal(data, &doc); err != nil {
		t.Fatal(err)
	}
	legs, _ := doc["wall_legs"].(map[string]any)
	return legs
}

func turned(b report.Build) func() report.Turned {
	return func() report.Turned { return report.Turned{Job: b.Job, Design: b.Design, Findings: b.Findings} }
}

// TestBothWaysSideBySide: the comparison is the same from either side, and its
// figures are those of the two jobs built alone. By hand for L50x50x6: anchors
// on the back mark 30 mm from the heel turn about it with 0.9 x 30 = 27 mm; near
// the heel, at 6 + 7 + 17/2 rounded up to 22 mm, about the toe with 0.9 x 28 =
// 25.2 mm (EN 1993 statics of a rigid leg, package anchor). The wall leg takes
// its thickness of the gap, and leaves it below the slab.
func TestBothWaysSideBySide(t *testing.T) {
	down, up := built(t, "studio"), built(t, "studio", "    section: L50x50x6", "    section: L50x50x6\n    wall_leg: up")
	down.Turn, up.Turn = turned(up), turned(down)
	one, two := legsOf(t, down), legsOf(t, up)
	if one["drawn"] != "down" || two["drawn"] != "up" {
		t.Fatalf("drawn %v and %v", one["drawn"], two["drawn"])
	}
	for _, way := range []string{"down", "up"} {
		if !reflect.DeepEqual(one[way], two[way]) {
			t.Errorf("%s differs:\n%v\n%v", way, one[way], two[way])
		}
	}
	d, u := one["down"].(map[string]any), one["up"].(map[string]any)
	for _, c := range []struct {
		key      string
		down, up any
	}{
		{"anchor_lever_least_mm", 25.2, 27.}, {"wall_pressed_at", "toe", "heel"}, {"steel_below_slab_mm", 50., 6.},
		{"anchors", 21., 21.}, {"anchors_reachable_under_slab", 21., 0.},
	} {
		if d[c.key] != c.down || u[c.key] != c.up {
			t.Errorf("%s: %v and %v, want %v and %v", c.key, d[c.key], u[c.key], c.down, c.up)
		}
	}
	if more := u["gap_needed_at_wall_mm"].(float64) - d["gap_needed_at_wall_mm"].(float64); more < 5.8 || more > 6.2 { // the screws that hold the slab stand a little elsewhere
		t.Errorf("a leg of 6 mm asks for %v mm more gap", more)
	}
	for _, x := range []struct {
		way  map[string]any
		from report.Build
	}{{d, down}, {u, up}} {
		most := 0.0
		for _, f := range x.from.Findings {
			if f.Rule == "anchor-strength" {
				most = max(most, f.Measured.Value)
			}
		}
		if x.way["anchor_used_percent"] != most {
			t.Errorf("anchor %v, want %v", x.way["anchor_used_percent"], most)
		}
	}
	if text := string(report.Markdown(down)); !strings.Contains(text, "| wall screws that stay in reach | 21 of 21 | 0 of 21 |") || !strings.Contains(text, "The wall screws are covered by the slab (7)") {
		t.Error("report.md does not say what is lost")
	}
}

// TestNotComparedIsSaid: a design that cannot turn its legs says so.
func TestNotComparedIsSaid(t *testing.T) {
	b := built(t, "alcove")
	if l := legsOf(t, b); l["drawn"] != "down" || !strings.Contains(l["not_compared"].(string), "wall_leg") {
		t.Errorf("%v", l)
	}
	if !strings.Contains(string(report.Markdown(b)), "Not compared: the design has no parameter wall_leg") {
		t.Error("report.md does not say it")
	}
}
