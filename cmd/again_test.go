package cmd

import (
	"bytes"
	"encoding/csv"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/sheet"
	"slabwright/model/report"
	"slabwright/presets"
)

// measuredAgain is the studio after its right wall was plastered; the infill
// and two angles were cut before.
func measuredAgain(t *testing.T) (*tool, report.Build) {
	t.Helper()
	var out, complaints bytes.Buffer
	line := &tool{out: &out, err: &complaints, presets: presets.All()}
	b, ok := line.whole(filepath.Join("..", "testdata", "again"))
	if !ok {
		t.Fatal(complaints.String())
	}
	return line, b
}

// What is cut is on no list of what is to be bought, and its sheets say so.
func TestCutPartsAreNotMadeAgain(t *testing.T) {
	line, b := measuredAgain(t)
	files, err := line.files(b, true)
	if err != nil {
		t.Fatal(err)
	}
	rows := func(name string) [][]string {
		list, err := csv.NewReader(bytes.NewReader(files[name])).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		return list
	}
	made := map[string]string{} // what each line of the buying list is for
	for _, r := range rows("lists/buy.csv")[1:] {
		if strings.Contains(r[0], "slab") || strings.Contains(r[0], "angle") {
			made[r[4]] = r[0]
		}
	}
	for _, id := range []string{"infill", "angle back left", "angle right"} {
		if made[id] != "" {
			t.Errorf("%s is cut and still bought as %s", id, made[id])
		}
	}
	for _, id := range []string{"worktop", "angle left", "angle back right"} {
		if made[id] == "" {
			t.Errorf("%s is not bought: %v", id, made)
		}
	}
	parts := rows("lists/parts.csv")
	on := slices.Index(parts[0], "already_cut")
	for _, r := range parts[1:] {
		if want := map[string]string{"infill": "2026-10-02", "angle back left": "2026-10-02", "angle right": "2026-10-02"}[r[2]]; r[on] != want {
			t.Errorf("%s: already cut %q, want %q", r[2], r[on], want)
		}
	}
}

func TestSheetsOfCutPartsSaySo(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		_, b := measuredAgain(t)
		b.Job.Show.Paper = paper
		sheets, err := sheet.Set(b)
		if err != nil {
			t.Fatal(err)
		}
		said := map[string]bool{}
		for _, s := range sheets {
			canBeRead(t, s)
			staysOnPaper(t, s)
			part := ""
			for _, id := range []string{"slab-infill", "angle-angle-back-left", "angle-angle-right"} {
				if strings.Contains(s.Name, id) {
					part = id
				}
			}
			if got := s.Stamp == "CUT ON 2026-10-02: DO NOT CUT"; got != (part != "") {
				t.Errorf("%s: stamp %q", s.Name, s.Stamp)
			}
			text := strings.Join(strings.Fields(drawing.Dump(s)), " ")
			said[part] = said[part] || strings.Contains(text, "Already cut on 2026-10-02")
			if part != "" && strings.Contains(text, "Order size") {
				t.Errorf("%s asks for an order", s.Name)
			}
		}
		if len(said) != 4 || said[""] || !said["slab-infill"] || !said["angle-angle-back-left"] || !said["angle-angle-right"] {
			t.Errorf("%s: sheets that say it is cut: %v", paper, said)
		}
	}
}
