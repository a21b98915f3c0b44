package cmd

import (
	"bytes"
	"encoding/csv"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/sheet"
	"slabwright/model"
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
	if n := strings.Count(string(files["report.json"]), `"already_cut": "2026-10-02"`); n != 3 {
		t.Errorf("report.json tells %d parts as cut, want 3", n)
	}
	for _, f := range b.Findings {
		if f.Rule == "on-offer" && slices.Contains(f.Parts, "infill") {
			t.Errorf("a slab to buy is looked for: %s", f.Why)
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
			if part != "" && strings.Contains(text, "wood to begin with") {
				t.Errorf("%s asks for an order", s.Name)
			}
		}
		if len(said) != 4 || said[""] || !said["slab-infill"] || !said["angle-angle-back-left"] || !said["angle-angle-right"] {
			t.Errorf("%s: sheets that say it is cut: %v", paper, said)
		}
	}
}

// sincePlaster draws the studio measured again against its first state.
func sincePlaster(t *testing.T, paper, language string) (old, now []drawing.Sheet) {
	t.Helper()
	line, b := measuredAgain(t)
	before, ok := line.whole(filepath.Join("..", "presets", "studio"))
	if !ok {
		t.Fatal("no studio")
	}
	for _, j := range []*model.Job{&b.Job, &before.Job} {
		j.Show.Paper, j.Show.Language = paper, language
	}
	c, code := line.compared(before, b)
	if code != exitFine {
		t.Fatal(code)
	}
	old, err := sheet.Set(before)
	if err != nil {
		t.Fatal(err)
	}
	now, err = sheet.SetSince(b, sheet.Since{Build: before, Changes: c})
	if err != nil {
		t.Fatal(err)
	}
	return old, now
}

func lettered(list []drawing.Sheet, name string) map[string]bool {
	out := map[string]bool{}
	for _, s := range list {
		if strings.HasSuffix(s.Name, name) {
			for _, text := range drawing.Texts(s.Items) {
				out[text] = true
			}
		}
	}
	return out
}

// A dimension has the sign of the revision when it is another one than before,
// and only then; the cover names the sheets, the last one lists what changed.
func TestChangedDimensionsAreMarked(t *testing.T) {
	old, now := sincePlaster(t, "A3", "en")
	const sign = " △B"
	marked := 0
	for _, s := range now {
		canBeRead(t, s)
		staysOnPaper(t, s)
		_, name, _ := strings.Cut(s.Name, "-")
		had := lettered(old, "-"+name)
		for text := range lettered([]drawing.Sheet{s}, "") {
			bare, isMarked := strings.CutSuffix(text, sign)
			if !isMarked {
				continue
			}
			marked++
			if strings.HasPrefix(name, "slab-worktop-top") && had[bare] {
				t.Errorf("%s: %q has not changed", s.Name, bare)
			}
		}
	}
	if marked < 30 {
		t.Errorf("%d marked dimensions", marked)
	}
	top := lettered(now, "slab-worktop-top")
	for _, text := range []string{"2357.3 +0/-1" + sign, "2493.8" + sign, "2495.8" + sign, "794", "560", "2130"} {
		if !top[text] {
			t.Errorf("the worktop has no dimension %q", text)
		}
	}
	cover := strings.Join(slices.Collect(maps.Keys(lettered(now, "01-cover"))), "\n")
	if !strings.Contains(cover, "Revision B, against A") || !strings.Contains(cover, "Wall right moved") || !regexp.MustCompile(`Sheets that changed: \d+-\d`).MatchString(cover) {
		t.Errorf("the cover does not tell what changed:\n%s", cover)
	}
	last := strings.Join(drawing.Texts(now[len(now)-1].Items), "\n") + strings.Join(drawing.Texts(now[len(now)-2].Items), "\n")
	for _, want := range []string{"Sheets to print again", "worktop, as it was made before: must be recut smaller.", "△B"} {
		if !strings.Contains(last, want) {
			t.Errorf("the last sheets do not say %q", want)
		}
	}
	for _, s := range now { // numbers on the list are those of the sheets
		if strings.HasSuffix(s.Name, "slab-worktop-top") && !strings.Contains(last, "\n"+strconv.Itoa(s.Number)+"\n"+s.Title) {
			t.Errorf("the list of changes has not %d  %s", s.Number, s.Title)
		}
	}
}

// The table of revisions stands on every sheet, in German and on small paper too.
func TestSmallGermanChanges(t *testing.T) {
	_, now := sincePlaster(t, "A4", "de")
	for _, s := range now {
		canBeRead(t, s)
		staysOnPaper(t, s)
		if text := strings.Join(drawing.Texts(s.Items), "\n"); s.Size.Revisions == 2 && (!strings.Contains(text, "△A\n2026-09-13\nfirst issue") || !strings.Contains(text, "△B\n2026-10-09\nright wall plastered and measured again")) {
			t.Errorf("%s has no table of revisions", s.Name)
		}
	}
}

// An infill that was cut 6 mm too deep is pushed to the worktop and stands in the
// wall behind; either it is trimmed or the worktop, not cut yet, gives way.
func TestAnUncutNeighbourCanGiveWay(t *testing.T) {
	line, b := measuredAgain(t)
	j := b.Job
	j.Cut = slices.Clone(j.Cut)
	for i, c := range j.Cut {
		if c.Part != "infill" {
			continue
		}
		s := slices.Clone(c.Sizes)
		s[0].Length, s[2].Length = s[0].Length+6, s[2].Length+6
		s[4].Length, s[5].Length = s[4].Length+6*241.5/813, s[5].Length+6*241.5/813
		j.Cut[i].Sizes = s
	}
	deep, ok := line.design(j, b.Room)
	if !ok {
		t.Fatal("not built")
	}
	for _, f := range deep.Findings {
		if f.Rule != "as-cut" || !slices.Contains(f.Parts, "infill") {
			continue
		}
		var mend []string
		for _, x := range f.Fix {
			mend = append(mend, x.Text)
		}
		text := strings.Join(mend, "\n")
		if f.Status != "fail" || !strings.Contains(text, "off its back edge") || !strings.Contains(text, "or make worktop, which is not cut yet, 6.") {
			t.Errorf("%s: %s\n%s", f.Status, f.Why, text)
		}
		return
	}
	t.Error("no finding about the infill")
}
