package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/report"
)

// listSheets gives the parts list and what to mind.
func listSheets(m *maker) []page {
	pg := m.new("parts", "Parts list")
	t := table{heads: []string{"no.", "qty", "part", "material", "size", "kg each"}, right: []bool{true, true, false, false, false, true}}
	count := map[int]int{}
	for _, p := range m.b.Design.Parts {
		count[p.Mark]++
	}
	seen := map[int]bool{}
	for _, p := range m.b.Design.Parts {
		if seen[p.Mark] {
			continue
		}
		seen[p.Mark] = true
		t.rows = append(t.rows, []string{fmt.Sprint(p.Mark), fmt.Sprint(count[p.Mark]), p.ID, p.Material, p.Size(), m.style.Number(float64(p.Mass()), 1)})
	}
	free := drawing.Free(m.size)
	items, box := t.draw(geom.V(free[0].Min.X, free[0].Max.Y), free[0].Width(), m.lines)
	pg.sheet.Add(drawing.Group{ID: "parts-list", Title: "parts list", Items: items})
	var lines []string
	for _, c := range report.Cautions(m.b.Design) {
		lines = append(lines, c.Act+": "+c.Text)
	}
	text, _ := notes(geom.V(free[0].Min.X, box.Min.Y-8), "Before you act", lines, free[0].Width())
	pg.sheet.Add(drawing.Group{ID: "cautions", Title: "cautions", Items: text})
	pg.block.DocumentType = "parts list"
	_ = model.KindSlab
	return []page{pg}
}
