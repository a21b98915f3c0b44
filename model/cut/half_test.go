package cut

import (
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/calc/saw"
	"slabwright/model/unit"
)

// TestHalvesOfWhatTapers: a shelf of 900 that tapers from 300 to 240 is parted as the
// rectangle of 900 x 300 around it: two strips of 150 and 3 mm for the joint each
// take 153 + 4 + 153 = 310, so a board 310 wide holds them and one 309 wide does not.
func TestHalvesOfWhatTapers(t *testing.T) {
	l := WoodLot{Blanks: []Blank{{ID: "shelf", Part: &model.Part{ID: "shelf"}, Length: 900, Width: 300, EndWidth: 240}}}
	for width, want := range map[unit.Length]bool{310: true, 309: false} {
		l.Problem = saw.Problem{Kerf: 4, Aim: saw.LeastCost, Items: []saw.Item{l.Blanks[0].item()},
			Sheets: []saw.Sheet{{ID: "board", Length: 900, Width: width, Count: 1, Price: 1}}}
		for _, c := range (&Shopping{}).halves(l) {
			if strings.HasSuffix(c.What, "side by side") && c.Found != want {
				t.Errorf("a board %v wide: %v", width, c.Found)
			}
		}
	}
}
