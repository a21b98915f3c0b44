package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Boxes of the map of tiles.
const (
	mapBoxWidth  unit.Length = 11
	mapBoxHeight unit.Length = 7.4
	mapColumns               = 7 // a longer strip goes on below
	entryGap     unit.Length = 1.6
)

// guideSteps are what to do with all templates.
func (m *maker) guideSteps() []string {
	return []string{
		m.say("1  Print the sheets T on A4, lying, at 100 %, not fitted to the page. All is 10 mm clear of the edge."),
		m.sayf("2  Measure both bars of 100 mm on every sheet. Off by more than %s mm: print again or on another printer.", m.style.Number(0.3, 1)),
		m.say("3  Cut the tiles out along their borders. Lay each on its neighbour: its border on the dashed line, A1-right below B1-left, cross on cross. Tape."),
		m.say("4  Check what you taped with a tape measure. Paper moves with damp: use it the same day."),
		m.say("5  Figures win over paper. Where the wall disagrees with a template, measure the room again."),
	}
}

// guide lists the templates with a map that tells which tile is on which sheet.
func (m *maker) guide(set *templateSet, count int) []page {
	room := drawing.Free(drawing.A4)[0]
	var out []page
	var y unit.Length
	start := func() {
		pg := m.new("templates", m.sayf("Templates at full size, sheets T1 to T%d", count))
		if len(out) > 0 {
			pg = m.new(fmt.Sprintf("templates-%d", len(out)+1), m.say("Templates at full size, continued"))
		}
		pg.sheet.Size, pg.sheet.Scale = drawing.A4, "-"
		pg.block.DocumentType = m.say("guide to templates")
		out, y = append(out, pg), room.Max.Y
	}
	put := func(id string, items []drawing.Item, height unit.Length) {
		if len(out) == 0 || y-height < room.Min.Y {
			start()
		}
		out[len(out)-1].sheet.Add(drawing.Group{ID: id, Items: drawing.Move(items, geom.V(room.Min.X, y))})
		y -= height + entryGap
	}
	text, h := notes(geom.Vec{}, m.say("How to use them"), m.guideSteps(), room.Width())
	put("guide", text, h)
	for _, t := range set.list {
		items, h := t.entry(room.Width())
		put(fmt.Sprintf("template-%d", t.number), items, h)
	}
	if len(set.without) > 0 {
		text, h := notes(geom.Vec{}, m.say("No template"), set.without, room.Width())
		put("without", text, h)
	}
	return out
}

// entry is the line of a template in the guide: name and use, and the map of
// its tiles. Its upper left corner is the origin.
func (t *template) entry(room unit.Length) ([]drawing.Item, unit.Length) {
	mapRoom := unit.Length(mapColumns) * mapBoxWidth
	items := []drawing.Item{drawing.Line(geom.V(0, 0), geom.V(room, 0), drawing.Dense.Fine())}
	text, h := notes(geom.V(0, -1.6), fmt.Sprintf("%d  %s", t.number, t.name), []string{t.use}, room-mapRoom-5)
	items = append(items, text...)
	var low unit.Length
	for _, tl := range t.tiles {
		column, row := tl.column, tl.row
		if column >= mapColumns {
			column, row = column%mapColumns, row+column/mapColumns
		}
		box := drawing.Box(room-mapRoom+unit.Length(column)*mapBoxWidth, -1.6-unit.Length(row+1)*mapBoxHeight, mapBoxWidth, mapBoxHeight)
		c := box.Centre()
		items = append(items, drawing.Outline(box.Corners(), drawing.Dense.Outline()),
			drawing.Write(geom.V(c.X, c.Y+0.4), tl.name, drawing.Small, drawing.Centre).Strong(),
			drawing.Write(geom.V(c.X, c.Y-3), fmt.Sprintf("T%d", tl.sheet), drawing.Small, drawing.Centre))
		low = max(low, -box.Min.Y)
	}
	return items, max(h-1, low)
}
