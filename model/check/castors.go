package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/calc/castor"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// What is put on and done to a roll-out table.
const (
	leans      = 500.0 // N, somebody leans on its edge; choice, about half the weight of a person
	onTable    = 50.0  // kg that lie on it; choice
	easyPush   = 60.0  // N, a push that a table on stuck castors must bear; choice
	gravity    = 9.81  // m/s2
	castorsOff = 10    // mm from the castor to the side of the table, as drawn
)

var castorRule = Rule{
	ID: "table-tips", Title: "The roll-out table stands and rolls",
	Basis: "statics of a stiff table on four castors, three of which carry; 500 N on the edge, 50 kg on it, 60 N of push: choice, no source",
	Why:   "Somebody leans on the edge of a table that has been rolled out, or pushes it while a castor sticks at a cable: it tips over the line of its castors. Castors too weak flatten and stick.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.RollOut != nil && len(p.Bodies) > 0 {
				out = append(out, tableStands(p)...)
			}
		}
		if out == nil {
			out = append(out, find.Finding{Status: find.Pass, Why: "Nothing stands on castors."})
		}
		return out
	},
}

// tableStands judges a table empty, which is when it tips.
func tableStands(p *model.Part) []find.Finding {
	r := p.RollOut
	weight := gravity * float64(p.Mass())
	setIn := unit.Length(0.4)*r.Castor + castorsOff // the middle of a swivel castor, as drawn
	base := castor.Base{SetIn: setIn, ToCentre: min(r.Width, r.Depth)/2 - setIn}
	edge, _ := base.Edge(weight)
	push := base.Push(weight, r.Height)
	newtons := func(v float64) *find.Quantity { return &find.Quantity{Value: math.Round(v), Unit: "N"} }
	atLeast := func(v float64) *find.Limit {
		return &find.Limit{Value: v, Relation: find.AtLeast, Unit: "N"}
	}
	lean := find.Finding{Title: "The table bears a lean on its edge", Parts: []string{p.ID}, At: at(p.Centroid()), Measured: newtons(edge), Required: atLeast(leans),
		Why: fmt.Sprintf("Empty, %s begins to tip when somebody leans on its edge with %.0f N: its castors stand %.0f mm inside it.", p.ID, edge, float64(setIn))}.Judge()
	if lean.Status == find.Fail {
		lean.Fix = []find.Fix{hint("set the castors %.0f mm from the edge at most, or load its bottom shelf with %.0f kg", float64(down(base.ToCentre*unit.Length(weight/leans))), math.Ceil((leans/edge-1)*weight/gravity))}
	}
	tip := find.Finding{Title: "The table bears a push", Parts: []string{p.ID}, At: at(p.Centroid()), Measured: newtons(push), Required: atLeast(easyPush),
		Why: fmt.Sprintf("Empty and with its castors stuck, %s tips when it is pushed at its top with %.0f N.", p.ID, push)}.Judge()
	if tip.Status == find.Fail {
		tip.Fix = []find.Fix{hint("load its bottom shelf with %.0f kg, or make it deeper", math.Ceil((easyPush/push-1)*weight/gravity))}
	}
	one := castor.OnOne(float64(p.Mass()) + onTable)
	rolls := find.Finding{Status: find.Note, Title: "What its castors carry", Parts: []string{p.ID}, Measured: &find.Quantity{Value: round3(one), Unit: "kg"},
		Why: fmt.Sprintf("With %.0f kg on it, %s wants castors made for %.0f kg each; soft wheels on wood and stone floors, and two with brakes.", onTable, p.ID, math.Ceil(one/5)*5)}
	return []find.Finding{lean, tip, rolls}
}
