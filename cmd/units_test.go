package cmd

import (
	"regexp"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/sheet"
	"slabwright/model"
	"slabwright/presets"
)

// unitShows are the ways to write lengths beside plain millimetres.
var unitShows = map[string]model.Show{
	"cm":       {Unit: "cm", Decimal: "."},
	"inch 16":  {Unit: "in", Decimal: ".", Fraction: 16},
	"inch 32":  {Unit: "in", Decimal: ".", Fraction: 32},
	"mm comma": {Unit: "mm", Decimal: ","},
}

// Every length on every sheet is in the unit and with the decimal sign of the
// job: none that the sheets in millimetres show stands on those in another unit.
func TestSheetsKeepTheUnit(t *testing.T) {
	for _, p := range presets.All() {
		_, plain := presetBuild(t, p, "A3")
		inMM, err := sheet.Set(plain)
		if err != nil {
			t.Fatal(err)
		}
		lengths := lengthsOn(inMM)
		if len(lengths) < 50 {
			t.Fatalf("%s: only %d lengths are dimensioned", p.Name, len(lengths))
		}
		for name, show := range unitShows {
			t.Run(p.Name+" "+name, func(t *testing.T) {
				t.Parallel()
				_, b := presetBuild(t, p, "A3")
				b.Job.Show.Unit, b.Job.Show.Decimal, b.Job.Show.Fraction = show.Unit, show.Decimal, show.Fraction
				sheets, err := sheet.Set(b)
				if err != nil {
					t.Fatal(err)
				}
				for _, s := range sheets {
					canBeRead(t, s)
					if strings.Contains(s.Name, "-order-wood") || strings.Contains(s.Name, "-order-steel") || strings.Contains(s.Name, "-saw-") {
						continue // for the shop's counter: sizes in mm, as is said on them, and prices
					}
					for _, x := range texts(s.Items) {
						keepsTheUnit(t, s.Name, x.String, show, lengths)
					}
				}
			})
		}
	}
}

var (
	figures    = regexp.MustCompile(`\d+(?:[.,]\d+)?`)
	millimetre = regexp.MustCompile(`(\d+(?:[.,]\d+)?) mm\b`)
	pointed    = regexp.MustCompile(`\d\.\d`)
)

// forces are in newtons in every job.
var forces = regexp.MustCompile(`\d+ N\b`)

// gauges are measured on paper, in millimetres in every job; screws are sold so.
var gauges = regexp.MustCompile(`100 mm|10 mm clear|0[.,]3 mm|60 mm in the stud|washer|overall height|^[Ø\d., x]+ mm$|per m\b|/m\b|Ø\d+ mm|pitches of|mm²|Mains keeps`)

// keepsTheUnit holds one text against the unit of its job.
func keepsTheUnit(t *testing.T, sheet, text string, show model.Show, lengths map[string]bool) {
	t.Helper()
	if show.Decimal == "," {
		if pointed.MatchString(text) && !strings.Contains(text, "slabwright") && !strings.Contains(text, "cable") && !regexp.MustCompile(`^\d+\.\d$`).MatchString(text) {
			t.Errorf("sheet %s: %q has a decimal point", sheet, text)
		}
		return
	}
	for _, n := range figures.FindAllString(forces.ReplaceAllString(text, ""), -1) {
		if lengths[n] && (show.Unit == "in" || len(n) > 4) { // 105 mm is also a place in cm
			t.Errorf("sheet %s: %q stands in %q", sheet, n, text)
		}
	}
	for _, m := range millimetre.FindAllStringSubmatch(text, -1) {
		if len(m[1]) > 0 && (show.Unit == "cm" || m[1][0] >= '3' || len(m[1]) > 3) && !gauges.MatchString(text) {
			t.Errorf("sheet %s: %q is in millimetres", sheet, text)
		}
	}
}

// lengthsOn are the lengths of three figures and more that sheets in millimetres
// dimension.
func lengthsOn(sheets []drawing.Sheet) map[string]bool {
	out := map[string]bool{}
	var walk func(items []drawing.Item, dims bool)
	walk = func(items []drawing.Item, dims bool) {
		for _, it := range items {
			switch x := it.(type) {
			case drawing.Group:
				walk(x.Items, dims || strings.HasSuffix(x.ID, "-dimensions"))
			case drawing.Text:
				for _, n := range figures.FindAllString(x.String, -1) {
					if whole, _, _ := strings.Cut(n, "."); dims && len(whole) >= 3 && !strings.Contains(x.String, "°") {
						out[n] = true
					}
				}
			}
		}
	}
	for _, s := range sheets {
		walk(s.Items, false)
	}
	return out
}
