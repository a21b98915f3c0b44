package drawing

import (
	"fmt"
	"strings"

	"slabwright/drawing/words"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Block is what the title block of a sheet says beside the sheet's own title,
// scale and number. The fields are those of ISO 7200:2004 and the ones a shop
// asks for. Dates are texts: nothing here knows what day it is.
type Block struct {
	Owner        string // legal owner
	DocumentType string // "part drawing", "hole table", ...
	Number       string // drawing number
	Revision     string
	Issued       string // date of issue, ISO 8601
	Surveyed     string // date of the survey that the sizes rest on
	Creator      string
	Approved     string // empty leaves room for a signature
	Material     string
	Mass         string // with unit; empty on sheets of more than one part
	Tolerance    string // general tolerance
	Status       string // "no finding failed" and the like; a stamp takes its place
	Projection   Projection
	History      []Revision
	Unit         string          // of the dimensions on the sheet; empty for mm
	Language     *words.Language // nil for English
}

// Revision is one row of the table of revisions on the title block.
type Revision struct{ Mark, On, What string }

// MostRevisions is how many revisions a sheet lists, the latest ones.
const MostRevisions = 3

// BlockWidth is the width of the title block (ISO 7200). It stands in the lower
// right corner of the drawing space.
const BlockWidth unit.Length = 180

// Rows of the title block from below, and their sum.
const (
	rowPeople   unit.Length = 11
	rowTitle    unit.Length = 14
	rowDocument unit.Length = 11
	rowRules    unit.Length = 12
	rowGauge    unit.Length = 10
	rowRevision unit.Length = 6
	leastBlock              = rowPeople + rowTitle + rowDocument + rowRules + rowGauge
)

// labelHeight is the lettering of the field names, the smallest height of
// ISO 3098-1; the entries are Small or larger.
const labelHeight unit.Length = 1.8

// BlockBox is the place of the title block on a sheet.
func (s Size) BlockBox() Rect {
	c := s.Space()
	return Box(c.Max.X-BlockWidth, c.Min.Y, BlockWidth, s.blockHeight())
}

func (s Size) blockHeight() unit.Length { return leastBlock + unit.Length(s.Revisions)*rowRevision }

// Finish gives the sheet its frame, title block and print gauges, in the groups
// "sheet-frame", "sheet-block" and "sheet-gauge". Call it once, when the
// number of sheets and the stamp are known.
func Finish(s Sheet, b Block) Sheet {
	space := s.Size.Space()
	up := geom.V(space.Min.X+6, min(s.Size.Height/2+8, space.Max.Y-106)) // 100 mm, above the centring mark where there is room
	bars := gauge(up, true)
	bars = append(bars, Write(up.Add(geom.V(-2, 50)), gaugeLength, Small, Centre).Along(quarterTurn))
	s.Items = append(append([]Item{}, s.Items...),
		frame(s.Size),
		Group{ID: "sheet-block", Items: titleBlock(s, b)},
		Group{ID: "sheet-gauge", Items: bars})
	return s
}

const quarterTurn = fullTurn / 4

// gaugeLength is written beside the bars for checking a print.
const gaugeLength = "100 mm"

// units names the unit of the dimensions.
func (b Block) units() string {
	if b.Unit == "" {
		return b.Language.Sayf("Dimensions in %s", "mm")
	}
	return b.Language.Sayf("Dimensions in %s", b.Unit)
}

// cell is one field of the title block.
type cell struct {
	width  unit.Length
	label  string
	value  string
	height unit.Length // largest lettering of the value
	bold   bool
}

func titleBlock(s Sheet, b Block) []Item {
	box, say := s.Size.BlockBox(), b.Language.Say
	items := []Item{Outline(box.Corners(), Pen{Width: FrameLine})}
	y := box.Min.Y
	row := func(height unit.Length, cells ...cell) {
		items = append(items, tableRow(geom.V(box.Min.X, y), height, cells)...)
		y += height
		if y < box.Max.Y {
			items = append(items, Line(geom.V(box.Min.X, y), geom.V(box.Max.X, y), Normal.Outline()))
		}
	}
	number := fmt.Sprintf("%d / %d", s.Number, s.Of)
	row(rowPeople,
		cell{44, say("owner"), b.Owner, Standard, false}, cell{34, say("drawn by"), b.Creator, Standard, false},
		cell{34, say("approved by"), b.Approved, Standard, false}, cell{29, say("date of issue"), b.Issued, Standard, false},
		cell{14, say("revision"), b.Revision, Standard, true}, cell{15, say("sheet"), number, Standard, false},
		cell{10, say("paper"), s.Size.Name, Standard, false})
	row(rowTitle,
		cell{112, say("title"), s.Title, Large, true}, cell{68, say("drawing number"), b.Number, Huge, false})
	row(rowDocument,
		cell{56, say("kind of document"), b.DocumentType, Standard, false}, cell{74, say("material and finish"), b.Material, Standard, false},
		cell{25, say("mass"), b.Mass, Standard, false}, cell{25, say("scale"), s.Scale, Large, false})
	rules := y
	row(rowRules,
		cell{56, say("general tolerance"), b.Tolerance, Standard, false}, cell{36, say("sizes rest on survey of"), b.Surveyed, Standard, false},
		cell{63, "", "", 0, false}, cell{25, say("projection"), "", 0, false})
	items = append(items, b.Projection.Symbol(geom.V(box.Max.X-12.5, rules+4.6), 2.8)...)
	items = append(items,
		Write(geom.V(box.Min.X+94, rules+7), b.units(), Standard, Left).Strong(),
		Write(geom.V(box.Min.X+94, rules+2.2), say("Do not scale. Work to figured sizes."), Small, Left))
	items = append(items, lastRow(s, b, geom.V(box.Min.X, y))...)
	y += rowGauge
	if s.Size.Revisions > 0 {
		items = append(items, Line(geom.V(box.Min.X, y), geom.V(box.Max.X, y), Normal.Outline()))
	}
	for _, r := range b.History[max(0, len(b.History)-s.Size.Revisions):] {
		row(rowRevision, cell{20, "", "△" + r.Mark, Small, true}, cell{30, "", r.On, Small, false}, cell{130, "", r.What, Small, false})
	}
	return items
}

// lastRow is the top row: the level print gauge and the status or stamp.
func lastRow(s Sheet, b Block, at geom.Vec) []Item {
	const barRoom = 110
	items := gauge(at.Add(geom.V(5, 1.6)), false)
	items = append(items,
		Write(at.Add(geom.V(5, 6)), gaugeLength, Small, Left).Strong(),
		Write(at.Add(geom.V(105, 6)), b.Language.Say("measure both bars of the print before use"), Small, Right),
		Line(at.Add(geom.V(barRoom, 0)), at.Add(geom.V(barRoom, rowGauge)), Normal.Fine()))
	field := Box(at.X+barRoom, at.Y, BlockWidth-barRoom, rowGauge)
	if s.Stamp == "" {
		return append(items, cellText(field, cell{field.Width(), b.Language.Say("status"), b.Status, Standard, false})...)
	}
	h := Large
	if room := field.Width() - 4; width(s.Stamp, h, true) > room {
		h = max(Small, h*room/width(s.Stamp, h, true))
	}
	stamp := Write(field.Centre(), fit(s.Stamp, h, field.Width()-4, true), h, Middle).Strong()
	stamp.Ink = White
	return append(items, Area{Loops: [][]geom.Vec{field.Grow(-1).Corners()}, Ink: Red}, stamp)
}

// tableRow draws the cells of a row from left to right.
func tableRow(at geom.Vec, height unit.Length, cells []cell) []Item {
	var items []Item
	for i, c := range cells {
		if i > 0 {
			items = append(items, Line(at, at.Add(geom.V(0, height)), Normal.Fine()))
		}
		items = append(items, cellText(Rect{at, at.Add(geom.V(c.width, height))}, c)...)
		at.X += c.width
	}
	return items
}

// cellText sets the name of a field and its entry: as large as it fits in one
// line, or in two where the field is high enough, and shortened at last.
func cellText(r Rect, c cell) []Item {
	const inset, foot, pitch = 1.5, 1.2, 1.4
	var items []Item
	ceiling := r.Height() - 1
	if c.label != "" {
		items = append(items, Write(geom.V(r.Min.X+inset, r.Max.Y-1), c.label, labelHeight, TopLeft))
		ceiling -= labelHeight + 1
	}
	if c.value == "" {
		return items
	}
	room := r.Width() - 2*inset
	for _, h := range []unit.Length{Huge, Large, Standard, Small} {
		l := wrap(c.value, h, room, c.bold)
		base := baseLine(l, h, foot, c.bold)
		_, high := inkHeights(l[0], c.bold)
		top := base + h*(unit.Length(high)+pitch*unit.Length(len(l)-1))
		capitals := foot + h*(1+pitch*unit.Length(len(l)-1))
		if h > c.height || h > Small && (capitals > ceiling || top > ceiling+accentRoom || !fits(l, h, room, c.bold)) {
			continue
		}
		if h == Small { // the last resort: shortened
			last := 0
			if capitals = foot + h*(1+pitch); capitals <= ceiling && top <= ceiling+accentRoom {
				last = 1
			}
			if len(l) > last {
				l = append(l[:last:last], strings.Join(l[last:], " "))
			}
			for i := range l {
				l[i] = fit(l[i], h, room, c.bold)
			}
			base = baseLine(l, h, foot, c.bold)
		}
		for i, s := range l {
			t := Write(geom.V(r.Min.X+inset, r.Min.Y+base+h*pitch*unit.Length(len(l)-1-i)), s, h, Left)
			t.Bold = c.bold
			items = append(items, t)
		}
		break
	}
	return items
}

// accentRoom is how far accents may reach beyond what capitals keep from the
// name of a field.
const accentRoom unit.Length = 0.5

// baseLine is the height of the last of some lines over the lower border of
// their field: their descenders stay clear of it.
func baseLine(lines []string, h, foot unit.Length, bold bool) unit.Length {
	if len(lines) == 1 {
		foot += 0.7
	}
	low, _ := inkHeights(lines[len(lines)-1], bold)
	return max(foot, 0.4-h*unit.Length(low))
}

func fits(lines []string, h, room unit.Length, bold bool) bool {
	for _, l := range lines {
		if width(l, h, bold) > room {
			return false
		}
	}
	return true
}
