package report_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/find"
	"slabwright/model/job"
	"slabwright/model/report"
	"slabwright/presets"
)

// built builds a preset from its own job file, with some words of it replaced.
func built(t testing.TB, name string, replace ...string) report.Build {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "presets", name, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i < len(replace); i += 2 {
		if !strings.Contains(text, replace[i]) {
			t.Fatalf("%s has no %q", name, replace[i])
		}
		text = strings.Replace(text, replace[i], replace[i+1], 1)
	}
	j, mistakes := job.Read("job.yaml", []byte(text), presets.All())
	if len(mistakes) > 0 {
		t.Fatal(job.Text(mistakes))
	}
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(presets.All(), func(p model.Preset) bool { return p.Name == name })
	p := presets.All()[i]
	d := p.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
	d.Finish()
	return report.Build{Job: j, Room: r, Design: d, Findings: check.Run(check.Site{Job: j, Room: r, Design: d, Params: p.Params})}
}

// contract lists the keys of report.json that never change, with an example of
// their type. A key that ends in [] is a list, none of whose entries may lack a
// key below it; one that ends in ? may be left out.
var contract = []struct {
	path    string
	example any
}{
	{"tool.name", ""}, {"tool.version", ""},
	{"job.title", ""}, {"job.revision", ""}, {"job.surveyed", ""},
	{"room.corners[].name", ""}, {"room.corners[].x_mm", 0.}, {"room.corners[].y_mm", 0.}, {"room.corners[].sd_x_mm", 0.}, {"room.corners[].sd_y_mm", 0.},
	{"room.walls[].name", ""}, {"room.walls[].from", ""}, {"room.walls[].to", ""}, {"room.walls[].length_mm", 0.}, {"room.walls[].sd_mm", 0.}, {"room.walls[].bow_mm", 0.},
	{"room.statistics.readings", 0.}, {"room.statistics.redundancy", 0.},
	{"parts[].id", ""}, {"parts[].name", ""}, {"parts[].kind", ""}, {"parts[].material", ""}, {"parts[].mass_kg", 0.}, {"parts[].volume_mm3", 0.},
	{"parts[].centroid_mm", [3]float64{}}, {"parts[].bounds_mm", [2][3]float64{}}, {"parts[].outline_mm", [][2]float64{}},
	{"movement.slabs[].part", ""}, {"movement.slabs[].moisture_at_fitting", 0.}, {"movement.slabs[].moisture_dry", 0.}, {"movement.slabs[].moisture_damp", 0.},
	{"movement.slabs[].held_by", ""}, {"movement.slabs[].held_screws", []string{}}, {"movement.slabs[].edges[].edge", ""}, {"movement.slabs[].edges[].swells_mm", 0.}, {"movement.slabs[].edges[].least_gap_mm?", 0.},
	{"movement.slabs[].screws[].angle", ""}, {"movement.slabs[].screws[].slot_mm", 0.},
	{"handling.order[].part", ""}, {"handling.order[].moves", []string{}}, {"handling.order[].near", ""},
	{"handling.order[].poses[].at_mm", [3]float64{}}, {"handling.order[].poses[].roll_deg", 0.}, {"handling.lifts[].part", ""}, {"handling.lifts[].people", 0.}, {"handling.lifts[].share_kg", 0.},
	{"handling.lifts[].grips[].share_kg", 0.}, {"handling.lifts[].trestles_mm", [][2]float64{}}, {"handling.order[].props[].high_mm", 0.},
	{"people[].person", ""}, {"people[].seat", ""}, {"people[].part", ""}, {"people[].described", true}, {"people[].shoe_mm", 0.},
	{"people[].measures[].name", ""}, {"people[].measures[].size_mm", 0.}, {"people[].measures[].low_mm", 0.}, {"people[].measures[].high_mm", 0.}, {"people[].measures[].basis", ""}, {"people[].measures[].extrapolated", true}, {"people[].measures[].source", ""},
	{"people[].zones[].name", ""}, {"people[].zones[].near_mm", 0.}, {"people[].zones[].far_mm", 0.}, {"people[].zones[].width_mm", 0.}, {"people[].zones[].low_mm", 0.}, {"people[].zones[].high_mm", 0.},
	{"people[].near[].name", ""}, {"people[].near[].zone", ""}, {"people[].near[].distance_mm", 0.}, {"people[].near[].at_mm", [3]float64{}},
	{"people[].left.free_mm", 0.}, {"people[].right.ends_at", ""},
	{"people[].surface.height_mm", 0.}, {"people[].surface.sitting_mm", [2]float64{}}, {"people[].surface.standing_mm", [2]float64{}}, {"people[].surface.thighs_ask_mm", 0.}, {"people[].surface.too_high_for_elbows_mm", 0.},
	{"people[].surface.slab_mm", 0.}, {"people[].surface.steel_front_mm", 0.}, {"people[].surface.steel_behind_mm", 0.}, {"people[].surface.elbow_above_thigh_mm", 0.}, {"people[].surface.left_of_it_mm", 0.},
	{"wiring.cables[].name", ""}, {"wiring.cables[].class", ""}, {"wiring.cables[].length_mm", 0.},
	{"wiring.channels[].name", ""}, {"wiring.channels[].cables", []string{}}, {"wiring.channels[].fill_percent", 0.},
	{"wiring.lights[].run_mm", 0.}, {"wiring.lights[].drop_v", 0.}, {"wiring.supplies[].rated_w", 0.},
	{"findings[].rule", ""}, {"findings[].status", ""}, {"findings[].title", ""}, {"findings[].why", ""}, {"findings[].basis", ""},
	{"findings[].parts", []string{}}, {"findings[].walls", []string{}}, {"findings[].at_mm?", [3]float64{}},
	{"findings[].measured?.value", 0.}, {"findings[].measured?.unit", ""}, {"findings[].measured?.sd?", 0.},
	{"findings[].required?.value", 0.}, {"findings[].required?.relation", ""}, {"findings[].required?.unit", ""},
	{"findings[].margin?.value", 0.}, {"findings[].margin?.unit", ""},
	{"findings[].assumed[].what", ""}, {"findings[].assumed[].source", ""},
	{"statics.loads.person_kg", 0.}, {"statics.loads.grade", ""}, {"statics.assumed[].what", ""},
	{"statics.slabs[].part", ""}, {"statics.slabs[].after_years_mm", 0.}, {"statics.slabs[].frequency_hz", 0.}, {"statics.slabs[].mesh_moved_percent", 0.},
	{"statics.slabs[].cases[].case", ""}, {"statics.slabs[].cases[].sinks_mm", 0.}, {"statics.slabs[].cases[].lifts_mm", 0.},
	{"statics.slabs[].cases[].along_grain.n_mm2", 0.}, {"statics.slabs[].cases[].across_grain.design_strength_n_mm2", 0.}, {"statics.slabs[].cases[].bearing.n_mm2", 0.},
	{"statics.slabs[].cases[].carriers[].part", ""}, {"statics.slabs[].cases[].carriers[].force_n", 0.}, {"statics.slabs[].cases[].carriers[].peak_n_mm", 0.}, {"statics.slabs[].cases[].carriers[].from_heel_mm", 0.},
	{"findings[].fix[].text", ""}, {"findings[].fix[].parameter?", ""}, {"findings[].fix[].value?", 0.},
}

// TestContract holds report.json against the keys that other programs rely on,
// on a design that fits and on one that does not.
func TestContract(t *testing.T) {
	for _, b := range []report.Build{built(t, "studio"), built(t, "studio", "surface: 755", "surface: 745")} {
		data, err := report.JSON(b)
		if err != nil {
			t.Fatal(err)
		}
		var doc any
		if err := json.Unmarshal(data, &doc); err != nil {
			t.Fatal(err)
		}
		for _, k := range contract {
			if err := follow(doc, strings.Split(k.path, "."), k.example); err != nil {
				t.Errorf("%s: %v", k.path, err)
			}
		}
		top := doc.(map[string]any)
		for _, later := range []string{"cutting", "cost"} {
			if _, ok := top[later]; ok {
				t.Errorf("%q is there, and nothing fills it", later)
			}
		}
		for _, f := range top["findings"].([]any) {
			f := f.(map[string]any)
			if s := find.Status(f["status"].(string)); s.Severity() == 0 && s != find.Pass {
				t.Errorf("status %q", s)
			}
			if r, ok := f["required"].(map[string]any); ok && !slices.Contains([]string{find.AtLeast, find.AtMost, find.Between}, r["relation"].(string)) {
				t.Errorf("relation %q", r["relation"])
			}
			if f["why"] == "" || f["basis"] == "" || f["title"] == "" {
				t.Errorf("a finding without words: %v", f)
			}
		}
	}
}

// follow walks down a path and holds what is there against an example.
func follow(v any, path []string, example any) error {
	if len(path) == 0 {
		data, err := json.Marshal(v)
		if err != nil {
			return err
		}
		into := json.NewDecoder(bytes.NewReader(data))
		switch example.(type) {
		case string:
			var x string
			return into.Decode(&x)
		case float64:
			var x float64
			return into.Decode(&x)
		case bool:
			var x bool
			return into.Decode(&x)
		case []string:
			var x []string
			return notNull(into.Decode(&x), x == nil)
		case [3]float64:
			var x []float64
			return sized(into.Decode(&x), len(x), 3)
		case [2]float64:
			var x []float64
			return sized(into.Decode(&x), len(x), 2)
		case [2][3]float64:
			var x [][3]float64
			return sized(into.Decode(&x), len(x), 2)
		case [][2]float64:
			var x [][2]float64
			return notNull(into.Decode(&x), x == nil)
		}
		return fmt.Errorf("no example of type %T", example)
	}
	key, isList := strings.CutSuffix(path[0], "[]")
	key, mayLack := strings.CutSuffix(key, "?")
	m, ok := v.(map[string]any)
	if !ok {
		return fmt.Errorf("above %q is no object", key)
	}
	next, ok := m[key]
	if !ok && mayLack {
		return nil
	}
	if !ok {
		return fmt.Errorf("there is no %q", key)
	}
	if !isList {
		return follow(next, path[1:], example)
	}
	list, ok := next.([]any)
	if !ok {
		return fmt.Errorf("%q is no list", key)
	}
	for _, x := range list {
		if err := follow(x, path[1:], example); err != nil {
			return err
		}
	}
	return nil
}

func notNull(err error, null bool) error {
	if err == nil && null {
		return fmt.Errorf("is null, not an empty list")
	}
	return err
}

func sized(err error, got, want int) error {
	if err == nil && got != want {
		return fmt.Errorf("has %d entries, want %d", got, want)
	}
	return err
}

// TestSameTwice: the same job prints the same bytes.
func TestSameTwice(t *testing.T) {
	var first [][]byte
	for range 2 {
		b := built(t, "alcove")
		data, err := report.JSON(b)
		if err != nil {
			t.Fatal(err)
		}
		out := [][]byte{data, report.Markdown(b), []byte(report.Brief(b)), []byte(report.Text(b.Findings))}
		for i := range first {
			if !bytes.Equal(first[i], out[i]) {
				t.Errorf("text %d differs the second time", i)
			}
		}
		first = out
	}
}

// TestNoFalsePromise: whatever is printed never says that something is safe.
// Nobody who has not seen the wall can.
func TestNoFalsePromise(t *testing.T) {
	texts := map[string]string{"not checked": strings.Join(report.NotChecked, "\n")}
	for _, r := range check.All {
		texts["rule "+r.ID] = r.Title + r.Basis + r.Why
	}
	for _, p := range presets.All() {
		b := built(t, p.Name)
		data, err := report.JSON(b)
		if err != nil {
			t.Fatal(err)
		}
		texts[p.Name] = string(report.Markdown(b)) + report.Brief(b) + report.Text(b.Findings) + string(data) + report.RoomText(b.Room)
	}
	low := built(t, "studio", "surface: 755", "surface: 745")
	texts["too low"] = string(report.Markdown(low)) + report.Brief(low)
	for what, s := range texts {
		if i := strings.Index(strings.ToLower(s), "safe"); i >= 0 {
			t.Errorf("%s says %q", what, s[max(0, i-60):min(len(s), i+40)])
		}
	}
}
