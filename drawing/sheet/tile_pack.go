package sheet

import (
	"slices"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// templatePaper is a sheet that every home printer takes, lying. Nothing is
// printed within 10 mm of its edge, where such printers are blind.
var (
	templatePaper = drawing.A4.Turned()
	printable     = templatePaper.Paper().Grow(-drawing.Margin - 0.3) // for the middles of lines
)

const (
	stripHeight   unit.Length = 15.5 // title, notes and level gauge along the lower edge
	uprightGauge  unit.Length = 5    // along the left edge
	betweenPieces unit.Length = 2
	sameHeight    unit.Length = 0.5
)

// templateRoom is where tiles stand on a sheet.
func templateRoom() drawing.Rect {
	return drawing.Rect{Min: printable.Min.Add(geom.V(uprightGauge, stripHeight)), Max: printable.Max}
}

// shelfRow is a row of tiles beside each other on a sheet.
type shelfRow struct {
	sheet       int
	top, height unit.Length
	used        unit.Length
}

// packTiles places the tiles of all templates on as few sheets as two orders
// can do with, and gives the number of sheets: tall tiles first, then either
// the lower the later or the lower the sooner.
func packTiles(list []*template) int {
	var all []*tile
	for _, t := range list {
		for i := range t.tiles {
			all = append(all, &t.tiles[i])
		}
	}
	taller := func(a, b *tile) int {
		switch ha, hb := a.window.Height(), b.window.Height(); {
		case ha > hb+sameHeight:
			return -1
		case hb > ha+sameHeight:
			return 1
		}
		return 0
	}
	slices.SortStableFunc(all, taller)
	count := packInOrder(all)
	tall := slices.IndexFunc(all, func(t *tile) bool { return t.window.Height() < templateRoom().Height()/3 })
	if tall < 0 {
		return count
	}
	mixed := slices.Clone(all)
	slices.SortStableFunc(mixed[tall:], func(a, b *tile) int { return taller(b, a) })
	if n := packInOrder(mixed); n < count {
		return n
	}
	return packInOrder(all)
}

// packInOrder puts each tile on the first row with room for it.
func packInOrder(all []*tile) int {
	room := templateRoom()
	var rows []*shelfRow
	var bottoms []unit.Length // of the lowest row, by sheet
	for _, t := range all {
		w, h := t.window.Width(), t.window.Height()
		row := firstRow(rows, w, h, room.Width())
		if row == nil {
			row = newRow(&bottoms, h, room)
			rows = append(rows, row)
		}
		t.sheet, t.place = row.sheet, drawing.Box(room.Min.X+row.used, row.top-h, w, h)
		row.used += w + betweenPieces
	}
	return len(bottoms)
}

func firstRow(rows []*shelfRow, w, h, room unit.Length) *shelfRow {
	for _, r := range rows {
		if r.used+w <= room+tolerance && h <= r.height+tolerance {
			return r
		}
	}
	return nil
}

// tolerance allows for rounding to the grid of the kernel.
const tolerance unit.Length = 0.01

// newRow begins a row on the first sheet with room below its last one.
func newRow(bottoms *[]unit.Length, h unit.Length, room drawing.Rect) *shelfRow {
	for i, b := range *bottoms {
		if top := b - betweenPieces; top-h >= room.Min.Y-tolerance {
			(*bottoms)[i] = top - h
			return &shelfRow{sheet: i + 1, top: top, height: h}
		}
	}
	*bottoms = append(*bottoms, room.Max.Y-h)
	return &shelfRow{sheet: len(*bottoms), top: room.Max.Y, height: h}
}
