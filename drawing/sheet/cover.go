package sheet

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"slabwright/drawing"
	"slabwright/drawing/words"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/lists"
	"slabwright/model/report"
	"slabwright/model/unit"
)

// coverSheets shows the verdict, the desk in the room, its parts, the smallest
// margins, what to do next, what was not checked, and the list of sheets. What
// finds no room goes on to further pages.
func coverSheets(m *maker) []page {
	shots := m.coverShots()
	for _, with := range []coverWith{{list: true, parts: true}, {list: true}} {
		if pg, ok := m.coverPage(shots, with); ok {
			return []page{pg}
		}
	}
	if pg, ok := m.coverPage(shots, coverWith{}); ok {
		return append([]page{pg}, m.listPages(1)...)
	}
	pictures := m.coverPictures(shots)
	pages := m.coverPages(2, pictures)
	if n := len(pages); n > 2 {
		pages = m.coverPages(n, pictures)
	}
	return pages
}

// coverWith tells what a cover on one sheet shows besides the verdict.
type coverWith struct{ list, parts bool }

// coverPage is the cover on one sheet that is wide enough: pictures, parts and
// margins on the left, the list of sheets on the right if it is to be there,
// what to do beside the title block.
func (m *maker) coverPage(shots []shot, with coverWith) (page, bool) {
	free := drawing.Free(m.size)
	pg := m.cover("cover")
	if len(free) == 1 {
		return pg, false
	}
	top := m.down(free[0])
	m.verdict(top)
	split := free[0].Max.X
	list := m.down(top.room)
	if with.list {
		split -= coverWide
		list = m.coverList(drawing.Rect{Min: geom.V(split+4, free[0].Min.Y), Max: top.room.Max})
	}
	low := m.down(drawing.Rect{Min: free[1].Min, Max: geom.V(free[1].Max.X-2, free[1].Max.Y-4)})
	covers := 1
	if !with.list {
		covers += len(m.listPages(1))
	}
	over := []func(*flow){m.margins} // what stands below the pictures
	if since := func(f *flow) { m.sinceText(f, covers) }; !low.try(since) {
		over = append(over, since)
	}
	if !low.try(m.steps) && !low.try(m.fewSteps(2)) && !low.try(m.fewSteps(1)) {
		over = append(over, m.steps)
	}
	if !low.try(m.notChecked) {
		over = append(over, m.notChecked)
	}
	room := drawing.Rect{Min: free[0].Min, Max: geom.V(split, top.room.Max.Y)}
	columns := [][]func(*flow){over}
	if with.parts {
		columns = m.balanced(over[1:], [][]func(*flow){{m.coverParts}, over[:1:1]}, room)
	}
	below, foot := m.coverColumns(columns, room)
	pictures := drawing.Rect{Min: geom.V(free[0].Min.X, foot+2), Max: geom.V(split, top.room.Max.Y)}
	if pictures.Height() < leastPicture {
		return pg, false
	}
	all := append([]*flow{top, list, low}, below...)
	if slices.ContainsFunc(all, func(f *flow) bool { return f.full || f.tooWide() }) {
		return pg, false
	}
	pg.sheet.Add(m.hangAt(anyScale, []drawing.Rect{pictures}, shots).items...)
	for _, f := range all {
		pg.sheet.Add(f.items...)
	}
	return pg, true
}

// balanced adds blocks, each to that column where the tallest then stays lowest.
func (m *maker) balanced(blocks []func(*flow), columns [][]func(*flow), room drawing.Rect) [][]func(*flow) {
	for _, add := range blocks {
		var best [][]func(*flow)
		var least unit.Length
		for i := range columns {
			tried := slices.Clone(columns)
			tried[i] = append(slices.Clone(columns[i]), add)
			if _, high := m.coverColumns(tried, room); best == nil || high < least {
				best, least = tried, high
			}
		}
		columns = best
	}
	return columns
}

// coverColumns sets columns side by side at the foot of a room and tells how
// high the tallest of them reaches.
func (m *maker) coverColumns(columns [][]func(*flow), room drawing.Rect) (set []*flow, top unit.Length) {
	const gap = 6
	wide := (room.Width() - gap*unit.Length(len(columns)-1)) / unit.Length(len(columns))
	column := func(i int, top unit.Length) *flow {
		x := room.Min.X + unit.Length(i)*(wide+gap)
		f := m.down(drawing.Rect{Min: geom.V(x, room.Min.Y), Max: geom.V(x+wide, top)})
		for _, add := range columns[i] {
			add(f)
		}
		return f
	}
	top = room.Min.Y
	for i := range columns {
		top = max(top, room.Min.Y+room.Max.Y-column(i, room.Max.Y).room.Max.Y)
	}
	for i := range columns {
		set = append(set, column(i, top))
	}
	return set, top
}

// coverParts names what the numbers in the picture stand for.
func (m *maker) coverParts(f *flow) {
	t := grid{heads: m.heads("item", "qty", "part", "size", "sheet"), right: []bool{true, true, false, false, true}, pitch: partPitch, short: true}
	for _, i := range lists.Items(m.b.Design) {
		t.rows = append(t.rows, []string{fmt.Sprint(i.Mark), fmt.Sprint(i.Count()), m.itemName(i), lists.SizeText(i.First(), m.length), m.sheetOf(i, 1)})
	}
	f.grid("cover-parts", m.say("Parts"), t)
}

// coverList sets the list of sheets on the cover; where it is too long, sheets
// of a kind stand in one row.
func (m *maker) coverList(room drawing.Rect) *flow {
	f := m.down(room)
	rows := m.sheetRows(0, len(m.others), 1)
	pitch := func() unit.Length { return (room.Height() - 8) / unit.Length(len(rows.rows)+1) }
	for k := templates; k <= angles && pitch() < leastPitch; k++ {
		rows.rows = m.gathered(k, 1)
	}
	rows.pitch = min(rowHeight, max(leastPitch, pitch()))
	f.grid("sheet-list", m.say("Sheets"), rows)
	return f
}

const (
	coverWide    unit.Length = 122 // width of the list of sheets
	leastPicture unit.Length = 72
	leastPitch   unit.Length = 4.25 // of the rows of a long list
	partPitch    unit.Length = 4.7  // of the parts: heads with descenders
)

// coverPicture is the room for a picture at the top of a column.
func coverPicture(column drawing.Rect, high unit.Length) drawing.Rect {
	return drawing.Rect{Min: geom.V(column.Min.X, column.Max.Y-high), Max: column.Max}
}

// coverPictures hangs the pictures of a cover that takes several sheets: one
// below the verdict, one on the second sheet.
func (m *maker) coverPictures(shots []shot) [][]drawing.Item {
	f := m.down(drawing.Free(m.size)[0])
	room := f.room
	m.verdict(f)
	rooms := []drawing.Rect{coverPicture(f.room, leastPicture), coverPicture(room, leastPicture+6)}
	var out [][]drawing.Item
	for i := range shots {
		out = append(out, m.hangAt(anyScale, rooms[i:i+1], shots[i:i+1]).items)
	}
	return out
}

// coverPages spreads the cover over sheets that are smaller; the other sheets
// follow on as many as are given.
func (m *maker) coverPages(covers int, pictures [][]drawing.Item) []page {
	room := drawing.Free(m.size)[0]
	one := m.cover("cover")
	f := m.down(room)
	m.verdict(f)
	if len(pictures) > 0 {
		one.sheet.Add(pictures[0]...)
		f.room.Max.Y = coverPicture(f.room, leastPicture).Min.Y - 4
	}
	marginsFirst := f.try(m.margins)
	news := func(f *flow) { m.sinceText(f, covers) }
	newsFirst := f.try(news)
	onFirst := f.try(m.steps)
	one.sheet.Add(f.items...)
	g := m.down(room).onto(room)
	if len(pictures) > 1 {
		g.items = append(g.items, pictures[1]...)
		g.room.Max.Y = coverPicture(room, leastPicture+6).Min.Y - 4
		g.top = g.room.Max.Y
	}
	if !marginsFirst {
		m.margins(g)
	}
	if !newsFirst {
		news(g)
	}
	if !onFirst {
		m.steps(g)
	}
	m.notChecked(g)
	listed := g.try(func(g *flow) { g.full = m.sheetColumns(g, 0, len(m.others), 2) < len(m.others) })
	pages := []page{one}
	for i, items := range g.pages() {
		pg := m.cover(fmt.Sprintf("cover-%d", i+2))
		pg.sheet.Add(items...)
		pages = append(pages, pg)
	}
	if listed {
		return pages
	}
	return append(pages, m.listPages(len(pages))...)
}

// listPages gives the list of sheets pages of their own, after those of the
// cover. How many there are decides the numbers on them.
func (m *maker) listPages(after int) []page {
	room := drawing.Free(m.size)[0]
	for n := 1; ; n++ {
		var out []page
		at := 0
		for i := 0; i < n; i++ {
			pg := m.cover(fmt.Sprintf("sheets-%d", i+1))
			f := m.down(room)
			at = m.sheetColumns(f, at, len(m.others), after+n)
			pg.sheet.Add(f.items...)
			out = append(out, pg)
		}
		if at == len(m.others) || n > len(m.others) {
			return out
		}
	}
}

// sheetColumns lists sheets in two columns as far as there is room, and tells
// how far it came.
func (m *maker) sheetColumns(f *flow, from, to, covers int) int {
	const gap = 4
	f.head(m.say("Sheets"))
	wide := (f.room.Width() - gap) / 2
	for c := range 2 {
		n := 0
		for from+n < to && m.sheetRows(from, from+n+1, covers).tall(wide) <= f.room.Height() {
			n++
		}
		if rest := to - from; c == 0 && n < rest {
			n = min(n, (rest+1)/2)
		} else if c == 0 {
			n = (rest + 1) / 2
		}
		if n == 0 {
			break
		}
		items, _ := m.sheetRows(from, from+n, covers).set(geom.V(f.room.Min.X+unit.Length(c)*(wide+gap), f.room.Max.Y), wide, m.lines)
		f.items = append(f.items, drawing.Group{ID: fmt.Sprintf("sheet-list-%d", c+1), Title: m.say("list of sheets"), Items: items})
		from += n
	}
	return from
}

func (m *maker) cover(name string) page {
	pg := m.new(name, m.b.Job.Title)
	pg.block.DocumentType = m.say("cover")
	return pg
}

// anyScale holds the ratios for pictures that are not to be measured.
var anyScale = func() []drawing.Scale {
	var out []drawing.Scale
	for n := 8; n <= 120; n++ {
		out = append(out, drawing.Scale{Paper: 1, Real: n})
	}
	return out
}()

// verdictText says the verdict sentence by sentence. What was found is said in
// English; a note tells so in other languages.
func (m *maker) verdictText() []string {
	var out []string
	for _, s := range report.Sentences(m.b.Findings) {
		out = append(out, m.pass(s))
	}
	if m.lang != words.English {
		out = append(out, m.say("(What was found is written in English.)"))
	}
	return out
}

// verdict sets the verdict, its first sentence in large letters, red when
// something fails.
func (m *maker) verdict(f *flow) {
	before := len(f.items)
	all := m.verdictText()
	f.large(drawing.Large, all[0])
	if rest := strings.Join(all[1:], " "); rest != "" {
		f.room.Max.Y += 2
		f.large(drawing.Standard, rest)
	}
	if s := find.Worst(m.b.Findings); s == find.Fail || s == find.Broken {
		copy(f.items[before:], inRed(f.items[before:]))
	}
}

// margins lists the five smallest margins.
func (m *maker) margins(f *flow) {
	t := grid{heads: m.heads("margin", "what", "where"), right: []bool{true}}
	for _, x := range report.Smallest(m.b.Findings, 5) {
		t.rows = append(t.rows, []string{m.found(fmt.Sprintf("%.1f mm", x.Margin.Value)), m.pass(x.Title), m.whereOf(x)})
		t.bold = append(t.bold, x.Status == find.Fail)
	}
	if len(t.rows) > 0 {
		f.grid("margins", m.say("The five smallest margins"), t)
	}
}

// whereOf names the parts and walls that a finding is about.
func (m *maker) whereOf(f find.Finding) string {
	names := m.passEach(f.Parts)
	for _, w := range f.Walls {
		names = append(names, m.sayf("wall %s", m.pass(w)))
	}
	if len(names) == 0 {
		return m.say("whole desk")
	}
	if n := len(names) - mostNames; n > 1 {
		return m.sayf("%s and %d more", strings.Join(names[:mostNames], ", "), n)
	}
	return strings.Join(names, ", ")
}

// mostNames is how many names stand in one cell.
const mostNames = 3

// steps lists what to do next, no more than fits a cover.
func (m *maker) steps(f *flow) { m.fewSteps(3)(f) }

// fewSteps lists as many steps at most: of each rule the worst case.
func (m *maker) fewSteps(most int) func(*flow) {
	return func(f *flow) { m.stepsUpTo(f, most) }
}

func (m *maker) stepsUpTo(f *flow, most int) {
	var lines []string
	steps := report.Steps(m.b.Findings)
	said := map[string]bool{}
	for _, s := range steps {
		if len(lines) == most || s.Rule != "" && said[s.Rule] {
			continue
		}
		said[s.Rule] = true
		lines = append(lines, fmt.Sprintf("%d. %s %s", len(lines)+1, m.found(s.Why), m.found(capital(strings.Join(s.Ways, "; ")))))
	}
	if n := len(steps) - len(lines); n > 0 {
		lines = append(lines, m.sayf("... and %d more: see report.md", n))
	}
	f.text("next", m.say("Next"), lines...)
}

// capital begins a sentence.
func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

func (m *maker) notChecked(f *flow) {
	var lines []string
	for _, s := range report.NotChecked {
		lines = append(lines, "- "+m.pass(s))
	}
	f.text("not-checked", m.say("Not checked"), lines...)
}

// sheetKind are sheets that may share a row of the list.
type sheetKind uint8

const (
	single sheetKind = iota
	templates
	drillings
	angles
)

// kind tells the kind of a sheet by its name.
func kind(name string) sheetKind {
	switch {
	case strings.HasPrefix(name, "template-"):
		return templates
	case strings.HasPrefix(name, "drilling-"):
		return drillings
	case strings.HasPrefix(name, "angle-"):
		return angles
	}
	return single
}

// kindRow names the sheets of a kind up to the last one.
func (m *maker) kindRow(k sheetKind, last int) string {
	switch k {
	case templates:
		return m.sayf("Template sheets, up to %d", last)
	case drillings:
		return m.sayf("Drilling the walls, up to %d", last)
	}
	return m.sayf("Angles, up to %d", last)
}

// gathered lists the other sheets, the kinds up to one of them in one row each.
func (m *maker) gathered(most sheetKind, covers int) [][]string {
	all := m.sheetRows(0, len(m.others), covers).rows
	var rows [][]string
	for i := 0; i < len(all); {
		k, n := kind(m.others[i].sheet.Name), 1
		for k != single && k <= most && i+n < len(all) && kind(m.others[i+n].sheet.Name) == k {
			n++
		}
		row := all[i]
		if n > 1 {
			row = []string{row[0], m.kindRow(k, i+n+covers), row[2]}
			if slices.ContainsFunc(all[i:i+n], func(r []string) bool { return r[2] != row[2] }) {
				row[2] = ""
			}
		}
		rows = append(rows, row)
		i += n
	}
	return rows
}

// sheetRows lists some of the other sheets of the set, numbered after the pages
// of the cover.
func (m *maker) sheetRows(from, to, covers int) grid {
	t := grid{heads: m.heads("no.", "sheet", "scale"), right: []bool{true}, short: true}
	if covers > 1 {
		t.pitch = leastPitch
	}
	for i := from; i < to; i++ {
		p := m.others[i]
		t.rows = append(t.rows, []string{fmt.Sprint(i + 1 + covers), p.sheet.Title, p.sheet.Scale})
	}
	return t
}
