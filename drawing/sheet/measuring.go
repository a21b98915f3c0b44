package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/words"
	"slabwright/model/geom"
	"slabwright/model/job"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// boxHigh is the height of a box to write in: a figure written on a ladder is
// about this high. Common practice, no source.
const boxHigh unit.Length = 9.5

// Measuring draws the sheets to carry into the room: a sketch of it, and a box
// for everything that the job file of this preset asks for, in the order of
// walking, in a language (nil: English). The sheets are upright A4 and have no
// scale.
func Measuring(p job.Measures, lang *words.Language) []drawing.Sheet {
	f := &blanks{lang: lang, title: lang.Sayf("Measuring sheet: %s", p.Preset)}
	f.turn()
	f.head(p)
	f.sketch(p)
	f.readings(p)
	f.advice()
	f.faces(p)
	f.floor(p)
	f.obstacles()
	f.way()
	for i := range f.done {
		f.done[i].Number, f.done[i].Of = i+1, len(f.done)
		space := f.done[i].Size.Space()
		f.done[i].Add(drawing.Group{ID: "page", Items: []drawing.Item{
			drawing.Write(geom.V(space.Max.X, space.Max.Y-titleDown), fmt.Sprintf("%d / %d", i+1, len(f.done)), drawing.Standard, drawing.Right),
		}})
	}
	return f.done
}

// blanks sets blocks of boxes one below the other on as many pages as they need.
type blanks struct {
	lang   *words.Language
	title  string
	done   []drawing.Sheet
	y      unit.Length // where the next block starts
	groups int
}

func (f *blanks) page() *drawing.Sheet { return &f.done[len(f.done)-1] }

func (f *blanks) space() drawing.Rect { return drawing.A4.Space() }

// turn starts a new page.
func (f *blanks) turn() {
	s := drawing.Sheet{Name: fmt.Sprintf("measuring-%d", len(f.done)+1), Title: f.title, Size: drawing.A4}
	at := geom.V(f.space().Min.X, f.space().Max.Y-titleDown)
	s.Add(drawing.Group{ID: "title", Items: []drawing.Item{drawing.Write(at, f.title, drawing.Large, drawing.Left).Strong()}})
	f.done = append(f.done, s)
	f.y = at.Y - 4
}

// need turns the page unless so much height is left on it.
func (f *blanks) need(height unit.Length) {
	if f.y-height < f.space().Min.Y {
		f.turn()
	}
}

// put adds a group to the page.
func (f *blanks) put(items ...drawing.Item) {
	f.groups++
	f.page().Add(drawing.Group{ID: fmt.Sprintf("block-%d", f.groups), Items: items})
}

// heading starts a block that wants at least so much height below its heading.
func (f *blanks) heading(text string, below unit.Length) {
	f.need(9 + below)
	f.put(drawing.Write(geom.V(f.space().Min.X, f.y-7), text, drawing.Standard, drawing.Left).Strong())
	f.y -= 9
}

// note writes lines of small text over the whole width.
func (f *blanks) note(text string) {
	for _, line := range drawing.Wrap(text, drawing.Small, f.space().Width()) {
		f.need(5)
		f.put(drawing.Write(geom.V(f.space().Min.X, f.y-3.4), line, drawing.Small, drawing.Left))
		f.y -= 4
	}
}

// blank is a box to write in, with what belongs into it in small letters above.
type blank struct {
	label string
	width unit.Length
}

const (
	labelRoom unit.Length = 4.2 // above a box
	rowGap    unit.Length = 1.5
	titleDown unit.Length = drawing.Large + 1
)

// row sets boxes side by side; a name, if there is one, stands before them.
func (f *blanks) row(name string, nameRoom unit.Length, list ...blank) {
	above := unit.Length(0)
	if slices.ContainsFunc(list, func(b blank) bool { return b.label != "" }) {
		above = labelRoom
	}
	f.need(above + boxHigh + rowGap)
	top := f.y - above
	x := f.space().Min.X
	var items []drawing.Item
	if name != "" {
		lines := drawing.Wrap(name, drawing.Small, nameRoom-2)
		for i, l := range lines[:min(3, len(lines))] {
			items = append(items, drawing.Write(geom.V(x, top-4-4*unit.Length(i)), l, drawing.Small, drawing.Left))
		}
		x += nameRoom
	}
	for _, b := range list {
		items = append(items, drawing.Write(geom.V(x+0.5, top+1.2), drawing.Fit(b.label, drawing.Small, b.width-1), drawing.Small, drawing.Left),
			box(x, top-boxHigh, b.width))
		x += b.width + 2
	}
	f.put(items...)
	f.y = top - boxHigh - rowGap
}

func box(x, y, width unit.Length) drawing.Item {
	return drawing.Outline(drawing.Box(x, y, width, boxHigh).Corners(), drawing.Normal.Outline())
}

// head is for what concerns the whole sheet.
func (f *blanks) head(p job.Measures) {
	f.row("", 0, blank{f.lang.Say("room, house"), 74}, blank{f.lang.Say("day"), 36}, blank{f.lang.Say("measured by"), 66})
	f.row("", 0, blank{f.lang.Say("instrument: tape class I, II or III, laser; its number"), 88}, blank{f.lang.Say("readings at this height"), 44}, blank{f.lang.Say("ceiling at"), 44})
}

// reading is a reading of the list with its number, name and box.
func (f *blanks) reading(at geom.Vec, width unit.Length, p job.Measures, i int) []drawing.Item {
	r := p.Readings[i]
	const number, wide = 8, 28
	low := at.Y - boxHigh
	room := width - number - wide - 2
	return []drawing.Item{
		drawing.Write(geom.V(at.X, low+3), fmt.Sprint(i+1), drawing.Standard, drawing.Left).Strong(),
		drawing.Write(geom.V(at.X+number, low+5.4), drawing.Fit(readingName(r, f.lang), drawing.Small, room), drawing.Small, drawing.Left),
		drawing.Write(geom.V(at.X+number, low+1.2), drawing.Fit(checkedBy(r, f.lang), drawing.Small, room), drawing.Small, drawing.Left),
		box(at.X+width-wide, low, wide),
	}
}

// readings lists all readings in two columns, numbered as on the sketch.
func (f *blanks) readings(p job.Measures) {
	const pitch = boxHigh + 1.5
	f.heading(f.lang.Say("Readings in mm, in the order of walking"), 3*pitch)
	f.note(f.lang.Say("In brackets: how far the others check a reading, and which of them do most of it. Where they check nothing a slip stays unseen."))
	f.y -= 1.5
	n := len(p.Readings)
	for done := 0; done < n; {
		fit := max(1, int((f.y-f.space().Min.Y)/pitch))
		rows := min(fit, (n-done+1)/2)
		wide := f.space().Width()/2 - 3
		var items []drawing.Item
		for k := range min(2*rows, n-done) {
			x := f.space().Min.X
			if k >= rows {
				x = f.space().Max.X - wide
			}
			items = append(items, f.reading(geom.V(x, f.y-pitch*unit.Length(k%rows)), wide, p, done+k)...)
		}
		f.put(items...)
		f.y -= pitch * unit.Length(rows)
		if done += min(2*rows, n-done); done < n {
			f.turn()
		}
	}
}

// readingName says in a few words what is read.
func readingName(r job.Measure, lang *words.Language) string {
	p := r.Points
	switch r.Kind {
	case survey.Width:
		return lang.Sayf("%s-%s to %s-%s, %.0f before %s-%s", p[2], p[3], p[4], p[5], float64(r.A), p[0], p[1])
	case survey.Offset:
		return lang.Sayf("%s square off string %s-%s", p[0], p[1], p[2])
	case survey.SquareOff:
		return lang.Sayf("at %s: %.0f to %s, %.0f to %s", p[1], float64(r.A), p[0], float64(r.B), p[2])
	}
	return lang.Sayf("%s to %s // corners", p[0], p[1])
}

// checkedBy tells how far the other readings check this one, and which do.
func checkedBy(r job.Measure, lang *words.Language) string {
	if r.Redundancy < 1e-6 {
		return lang.Say("(nothing checks it: read it twice)")
	}
	if r.Jointly {
		return lang.Sayf("(%.0f %% by the others together)", 100*r.Redundancy)
	}
	var by []string
	for _, i := range r.CheckedBy {
		by = append(by, fmt.Sprint(i+1))
	}
	return lang.Sayf("(%.0f %% by %s)", 100*r.Redundancy, strings.Join(by, ", "))
}

// faces has a row for each wall that a straightedge fits on: how far it stands
// off straight, and off a plumb line.
func (f *blanks) faces(p job.Measures) {
	if len(p.Faces) == 0 {
		return
	}
	f.heading(f.lang.Say("Bow and plumb of the walls, in mm"), 40)
	f.note(f.lang.Say("Bow: hold a straightedge or string from corner to corner, both ends held off by equal blocks; at each place write the block less the gap: plus where the wall bulges, minus where it is hollow. Plumb: hang a line before the wall and write the distance from line to wall at each height."))
	for _, w := range p.Faces {
		from, to := p.Corners[w.Wall], p.Corners[(w.Wall+1)%len(p.Corners)]
		var list []blank
		for _, a := range w.Along {
			list = append(list, blank{f.lang.Sayf("bow %.0f off %s", float64(a), from), 25})
		}
		for _, z := range w.Up {
			list = append(list, blank{f.lang.Sayf("plumb %.0f", float64(z)), 24})
		}
		f.row(fmt.Sprintf("%s %s-%s", p.Walls[w.Wall], from, to), 21, list...)
	}
}

// floor has a box for the height of the floor at every corner.
func (f *blanks) floor(p job.Measures) {
	f.heading(f.lang.Say("Height of the floor at the corners, in mm"), 30)
	f.note(f.lang.Sayf("Set a level line round the room once, by water level or laser; write how far the floor lies above (+) or below (-) that at corner %s.", p.Floor[0]))
	const most = 8
	for i := 0; i < len(p.Floor); i += most {
		var list []blank
		for _, c := range p.Floor[i:min(i+most, len(p.Floor))] {
			list = append(list, blank{f.lang.Sayf("at %s", c), 20})
		}
		f.row("", 0, list...)
	}
}

// obstacles is a table for what is on the walls.
func (f *blanks) obstacles() {
	f.heading(f.lang.Say("On and in the walls, in mm: socket, pipe, sill, radiator, door, stud ..."), 40)
	for i := range 6 {
		var label [8]string
		if i == 0 {
			label = [8]string{f.lang.Say("what it is"), f.lang.Say("wall"), f.lang.Say("from // a corner"), f.lang.Say("start"), f.lang.Say("end"), f.lang.Say("bottom"), f.lang.Say("top"), f.lang.Say("depth // of what stands out from a wall")}
		}
		f.row("", 0, blank{label[0], 39}, blank{label[1], 18}, blank{label[2], 17}, blank{label[3], 18}, blank{label[4], 18}, blank{label[5], 18}, blank{label[6], 18}, blank{label[7], 18})
	}
	f.note(f.lang.Say("from: the corner from which start and end count along the wall. bottom, top: above the floor. depth: how far it stands out, 0 for what is hidden in the wall; a detector finds it, but do not trust the detector alone."))
}

// way has boxes for the way from the street into the room.
func (f *blanks) way() {
	f.heading(f.lang.Say("The way in, clear measures in mm, in the order in which a slab passes"), 95)
	const name = 34
	f.row(f.lang.Say("car or van"), name, blank{f.lang.Say("inside length"), 28}, blank{f.lang.Say("longest slant"), 28}, blank{f.lang.Say("width"), 28}, blank{f.lang.Say("height"), 28})
	f.row(f.lang.Say("front door"), name, blank{f.lang.Say("width"), 28}, blank{f.lang.Say("height"), 28})
	f.row(f.lang.Say("hall or corridor, where it turns"), name, blank{f.lang.Say("width before"), 28}, blank{f.lang.Say("width after"), 28}, blank{f.lang.Say("height"), 28})
	f.row(f.lang.Say("stair"), name, blank{f.lang.Say("width"), 28}, blank{f.lang.Say("one step: rise"), 28}, blank{f.lang.Say("one step: tread"), 28}, blank{f.lang.Say("headroom"), 28})
	f.row(f.lang.Say("lift"), name, blank{f.lang.Say("width"), 28}, blank{f.lang.Say("inside length"), 28}, blank{f.lang.Say("height"), 28}, blank{f.lang.Say("longest slant"), 28})
	f.row(f.lang.Say("door of the room"), name, blank{f.lang.Say("width"), 28}, blank{f.lang.Say("height"), 28})
}

// advice tells how to hold the tape. Common practice, no source.
func (f *blanks) advice() {
	list := []string{
		f.lang.Say("Mark one height round the room first and hold the tape at it for every reading, level and taut."),
		f.lang.Say("Never bend the tape into a corner: measure from both corners to a mark between them and add, or use a laser with its back on the wall."),
		f.lang.Say("Stay 10 to 20 mm off the very corner if plaster rounds it, and do so each time."),
		f.lang.Say("Read twice, the second time with the tape turned round. Write both if they differ: the job file takes them under again."),
		f.lang.Say("Say the figure aloud, write it at once, read it back from the paper. A figure that you struck out stays readable."),
		f.lang.Say("3-4-5: mark 600 on one wall and 800 on the other, both from the corner, and read the straight line from mark to mark."),
	}
	high := unit.Length(0)
	for _, s := range list {
		high += 4 * unit.Length(len(drawing.Wrap("- "+s, drawing.Small, f.space().Width())))
	}
	f.heading(f.lang.Say("How to measure"), high+1)
	for _, s := range list {
		f.note("- " + s)
	}
}
