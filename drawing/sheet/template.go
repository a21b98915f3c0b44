package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// template is a pattern at full size, for holding to the wall or gluing to the
// work, in its own axes.
type template struct {
	number int
	name   string      // what it shows: "worktop, corner B"
	use    string      // what to do with it
	shape  geom.Region // the paper that it needs
	lines  []drawing.Item
	labels []label
	tiles  []tile
}

// label is a text that belongs to a place of a template. It stands on every
// tile that shows the place, as near as it finds room.
type label struct {
	lines   []string
	at      geom.Vec
	toward  geom.Vec // where it is wanted from there; zero: upon it
	upright bool     // reads from the right
	strong  bool
	reach   unit.Length // how far off it may stand
}

// note makes a label of one line that stands beside its place.
func note(at, toward geom.Vec, line string) label {
	return label{lines: []string{line}, at: at, toward: toward, reach: 12}
}

// templateSet gathers the templates of a job, and why others are not made.
type templateSet struct {
	list    []*template
	without []string
}

func (s *templateSet) add(t *template) {
	t.number = len(s.list) + 1
	s.list = append(s.list, t)
}

// leave notes once why something has no template.
func (s *templateSet) leave(why string) {
	if !slices.Contains(s.without, why) {
		s.without = append(s.without, why)
	}
}

// templateKinds are the kinds of templates in the order of their numbers: only
// what a person needs at full size.
var templateKinds = []func(*maker, *templateSet){cornerTemplates, rodTemplates, scribeTemplates, cutOutTemplates, angleTemplates, cleatTemplates}

// templateSheets gives the templates, cut into tiles for a home printer, after
// a guide that says how to use them and which tile is where.
func templateSheets(m *maker) []page {
	set, count := m.templates()
	if len(set.list) == 0 {
		return nil
	}
	pages := m.guide(set, count)
	for n := range count {
		pages = append(pages, m.tileSheet(set, n+1, count))
	}
	return pages
}

// templates makes all templates and places their tiles on so many sheets.
func (m *maker) templates() (*templateSet, int) {
	set := &templateSet{}
	for _, kind := range templateKinds {
		kind(m, set)
	}
	room := templateRoom()
	for _, t := range set.list {
		t.tiles = tiles(t.shape, geom.V(room.Width(), room.Height()))
	}
	return set, packTiles(set.list)
}

// tileSheet draws the tiles of one sheet.
func (m *maker) tileSheet(set *templateSet, n, count int) page {
	pg := page{}
	pg.sheet.Name, pg.sheet.Size, pg.sheet.Scale = fmt.Sprintf("template-t%d", n), templatePaper, "1:1"
	var names, numbers, parts []string
	for _, t := range set.list {
		var here []string
		for i := range t.tiles {
			if t.tiles[i].sheet == n {
				here = append(here, t.tiles[i].name)
				pg.sheet.Add(t.draw(m, &t.tiles[i]))
			}
		}
		if len(here) > 0 {
			names, numbers = append(names, t.name), append(numbers, fmt.Sprint(t.number))
			parts = append(parts, m.sayf("%d: %s of %d", t.number, strings.Join(here, ", "), len(t.tiles)))
		}
	}
	what := strings.Join(names, "; ")
	if len(names) > 2 {
		what = m.sayf("tiles of templates %s", strings.Join(numbers, ", "))
	}
	pg.sheet.Title = m.sayf("Template sheet T%d of %d: %s", n, count, what)
	pg.block.DocumentType = m.say("templates, full size")
	pg.finish = m.templateStrip(m.sayf("T%d of %d", n, count), what, strings.Join(parts, "; "))
	return pg
}
