package sheet

import "slabwright/drawing"

// steelPages lays a workpiece out at the largest scale at which everything
// stands on one sheet, as long as that does not make it smaller than 1:5;
// otherwise at the largest scale that its length allows, on as few sheets as
// possible. A sheet that may be turned is, where that makes the views larger.
// at gives the workpiece at a scale.
func (m *maker) steelPages(name, title string, turn bool, at func(drawing.Scale) chapter) []page {
	makers := []*maker{m}
	if turn && !m.stands {
		turned := *m
		turned.size = m.size.Turned()
		makers = append(makers, &turned)
	}
	var best []page
	for i, s := range drawing.Scales {
		if s.Paper > s.Real {
			continue
		}
		var here []page
		c := at(s)
		for _, k := range makers {
			l, ok := k.arrange([]chapter{c}, s)
			if !ok && i < len(drawing.Scales)-1 {
				continue
			}
			if set := m.sequel(k, l, name, title); len(here) == 0 || len(set) < len(here) {
				here = set
			}
		}
		if len(here) == 1 {
			return here
		}
		if best == nil {
			best = here
		}
		if best != nil && small(s) {
			break
		}
	}
	return best
}

// sequel is a page laid out by a maker and the pages for what found no room on
// it.
func (m *maker) sequel(k *maker, l laid, name, title string) []page {
	pg := k.new(name, title)
	pg.sheet.Add(l.items...)
	pg.sheet.Scale = l.scale.String()
	out := []page{pg}
	for over := l.over; len(over) > 0; {
		next := m.details(over)
		pg := m.new(name+"-details", title+m.say(": details"))
		pg.sheet.Add(next.items...)
		pg.sheet.Scale = "-"
		if next.scale.Real > 0 {
			pg.sheet.Scale = next.scale.String()
		}
		out, over = append(out, pg), next.over
	}
	return out
}

// small tells whether holes are no longer read well at a scale, so that the end
// of a bar gets a detail.
func small(s drawing.Scale) bool { return larger(s, largeEnough) != s }
