package sheet

import (
	"strings"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/model/wire"
)

// lights adds how the lights are fed at low voltage, with their data.
func (m *maker) lights(f *listing, plan wire.Plan) {
	if len(plan.Lights) == 0 {
		return
	}
	for _, l := range plan.Lights {
		items, high := m.circuit(l, plan, f.columns[0].Width())
		if !f.fresh() && high > f.left() {
			f.next()
			items, high = m.circuit(l, plan, f.columns[0].Width())
		}
		f.add(l.Light.Name, items, high)
	}
	f.table(m.say("Lights"), m.lightTable(plan), asIs)
	f.table(m.say("Supplies, a fifth of their power left free"), m.supplyTable(plan), asIs)
	f.notes(m.say("Lights"), []string{
		m.say("Supplies stay within reach and have air on all sides. Strips of more than 10 W per metre lie in a metal profile. Check polarity with a meter before joining; solder or clamp, no bare ends."),
		m.say("The side of the supply with mains is for a licensed electrician."),
	})
}

// circuit draws one light from its upper left corner at 0: supply, fuse, feed,
// strip, with what a person reads off.
func (m *maker) circuit(l wire.LightRun, plan wire.Plan, width unit.Length) ([]drawing.Item, unit.Length) {
	const high, box unit.Length = 27, 9
	mid := unit.Length(-12)
	width = min(width, 250)
	pen, fine := m.lines.Outline(), m.lines.Fine()
	supply := drawing.Box(0, mid-box/2, 32, box)
	fuse := drawing.Box(supply.Max.X+14, mid-1.5, 8, 3)
	strip := drawing.Box(width*0.56, mid-2.5, width*0.44-12, 5)
	from := fuse.Max.X // where the feed begins
	var dimmer drawing.Rect
	if l.Dimmer != nil {
		dimmer = drawing.Box(fuse.Max.X+8, mid-box/2, 17, box)
		from = dimmer.Max.X
		strip = drawing.Box(width*0.65, mid-2.5, width*0.35-12, 5)
	}
	items := []drawing.Item{
		drawing.Outline(supply.Corners(), pen), drawing.Outline(fuse.Corners(), pen), drawing.Outline(strip.Corners(), pen),
		drawing.Line(geom.V(supply.Max.X, mid), geom.V(fuse.Min.X, mid), pen), // the line passes through the fuse (IEC 60617)
		drawing.Line(geom.V(fuse.Min.X, mid), geom.V(fuse.Max.X, mid), fine),
		drawing.Line(geom.V(from, mid), geom.V(strip.Min.X, mid), pen),
	}
	if l.Dimmer != nil {
		items = append(items, drawing.Line(geom.V(fuse.Max.X, mid), geom.V(dimmer.Min.X, mid), pen), drawing.Outline(dimmer.Corners(), pen))
	}
	for k := range 13 { // cut marks
		x := strip.Min.X + strip.Width()*unit.Length(k)/12
		items = append(items, drawing.Line(geom.V(x, strip.Min.Y), geom.V(x, strip.Min.Y+1.2), fine))
	}
	if l.BothEnds {
		y := mid - 8
		items = append(items, drawing.Polyline{Points: []geom.Vec{{X: from + 6, Y: mid}, {X: from + 6, Y: y}, {X: strip.Max.X + 6, Y: y}, {X: strip.Max.X + 6, Y: mid}, {X: strip.Max.X, Y: mid}}, Pen: pen})
	}
	write := func(x, y unit.Length, s string, a drawing.Align, room unit.Length) {
		items = append(items, drawing.Write(geom.V(x, y), drawing.Fit(s, drawing.Small, room), drawing.Small, a))
	}
	rated := m.say("divide it")
	for _, s := range plan.Supplies {
		if s.Device == l.Light.Supply && s.OK {
			rated = m.sayf("%s V  %s W", m.style.Number(float64(s.Voltage), 0), m.style.Number(float64(s.Rated), 0))
		}
	}
	write(supply.Min.X, supply.Max.Y+2.5, l.Light.Supply, drawing.Left, 62)
	write(supply.Centre().X, mid-drawing.Small/2, rated, drawing.Centre, 30)
	if l.Found {
		write(fuse.Centre().X, fuse.Max.Y+1.5, m.sayf("%s A", m.style.Number(float64(l.Fuse), 1)), drawing.Centre, 20)
		length, size := m.length(roundUp(l.Feeds[0])), m.style.Number(l.Wire.SquareMM, 2)
		if x, room := (from+strip.Min.X)/2+3, strip.Min.X-from-6; l.Dimmer == nil {
			write(x, mid+1.5, m.sayf("%s, 2 x %s mm²", length, size), drawing.Centre, room)
		} else { // less room
			write(x, mid+1.5, length, drawing.Centre, room)
			write(x, mid-drawing.Small-1.2, m.sayf("2 x %s mm²", size), drawing.Centre, room)
		}
	}
	if d := l.Dimmer; d != nil {
		write(dimmer.Centre().X, dimmer.Min.Y-drawing.Small-1.5, d.Device, drawing.Centre, 44)
		text := m.say("divide it")
		if d.OK {
			text = m.amount(float64(d.Rated), 0, "A")
		}
		write(dimmer.Centre().X, mid-drawing.Small/2, text, drawing.Centre, 16)
	}
	write(strip.Min.X, strip.Max.Y+1.5, m.sayf("%s: %s, %d pitches of %s", l.Light.Name, m.length(l.Run), l.Pieces, m.fine(l.Light.Strip.Pitch)), drawing.Left, strip.Width()+10)
	return items, high
}

func (m *maker) lightTable(plan wire.Plan) table {
	t := table{heads: m.heads("light", "in // a part", "strip", "power", "current", "feed", "drop", "of the voltage"), right: []bool{false, false, true, true, true, true, true, true}}
	for _, l := range plan.Lights {
		feed, drop, part := "-", m.say("not known"), "-"
		if l.Found {
			feed = m.say("one end")
			if l.BothEnds {
				feed = m.say("both ends")
			}
			if l.Told {
				drop, part = m.amount(float64(l.Drop), 2, "V"), m.amount(100*float64(l.Drop)/float64(l.Light.Strip.Supply), 1, "%")
			}
		}
		t.rows = append(t.rows, []string{l.Light.Name, m.pass(l.Slab) + ", " + m.pass(l.Light.In), m.length(l.Run), m.amount(float64(l.Power), 1, "W"), m.amount(float64(l.Current), 2, "A"), feed, drop, part})
	}
	return t
}

func (m *maker) supplyTable(plan wire.Plan) table {
	t := table{heads: m.heads("supply", "feeds", "load", "take one of"), right: []bool{false, false, true, true}}
	for _, x := range plan.Supplies {
		rated := m.say("divide it")
		if x.OK {
			rated = m.amount(float64(x.Rated), 0, "W")
		}
		t.rows = append(t.rows, []string{x.Device, strings.Join(x.Lights, ", "), m.amount(float64(x.Load), 1, "W"), rated})
	}
	return t
}

// amount writes a number with the sign of its unit.
func (m *maker) amount(x float64, places int, sign string) string {
	return m.style.Number(x, places) + " " + sign
}
