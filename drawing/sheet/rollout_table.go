package sheet

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/unit"
)

// boardTable is the cut list: finished sizes, the length along the grain, equal
// boards together.
func (m *maker) boardTable(p *model.Part, boards []model.Board) table {
	t := table{heads: m.heads("no.", "qty", "board", "length (grain)", "width", "thick", "mass each"), right: []bool{false, true, false, true, true, true, true}}
	count := map[int]int{}
	for _, b := range boards {
		if count[b.Row]++; count[b.Row] > 1 {
			t.rows[b.Row-1][1] = fmt.Sprint(count[b.Row])
			t.rows[b.Row-1][2] += ", " + m.pass(b.Name)
			continue
		}
		t.rows = append(t.rows, []string{fmt.Sprintf("%d.%d", p.Mark, b.Row), "1", m.pass(b.Name), m.length(b.Length), m.length(b.Width), m.length(b.Thickness), m.kg(b.Mass)})
	}
	return t
}

func (m *maker) rollOutNotes(p *model.Part, boards []model.Board) []string {
	r := p.RollOut
	var wood unit.Mass
	for _, b := range boards {
		wood += b.Mass
	}
	return []string{
		m.sayf("Overall %s x %s x %s with its castors. Wood %s, all of it %s.", m.length(r.Width), m.length(r.Depth), m.length(r.Height), m.kg(wood), m.kg(p.Mass())),
		m.say("Grain along the length of every board; it stands upright in the sides, so that top and sides move together."),
		m.say("The top lies on the sides and the rail; rail and shelf stand between the sides. Joints to the joiner's choice, not drawn here."),
		m.sayf("Rough sizes: %s longer, %s wider, thickness as given. All arrises eased.", m.length(12), m.length(5)),
		m.sayf("4 swivel castors, overall height %s, two with brakes. Measure the castors bought before cutting the sides: their height counts.", m.length(r.Castor)),
		m.sayf("It rolls out by %s. Castors must not run over cables; check the floor for humps.", m.length(r.Travel)),
	}
}
