package job

import (
	"fmt"
	"slices"

	"github.com/goccy/go-yaml/ast"

	"slabwright/model"
	"slabwright/model/unit"
)

// wiringDraft is the wiring section before its names are looked up.
type wiringDraft struct {
	devices []entry[model.Device]
	cables  []entry[model.Cable]
	lights  []entry[model.Light]
	grooves []entry[model.Channel]
	slots   []entry[model.Slot]
	lids    []entry[model.LidOn]
}

func wiringForm() form[model.Wiring] {
	type W = wiringDraft
	f := record("a wiring section", []field[W]{
		may("devices", "where cables end", list("devices", deviceForm(), 0, 100), func(w *W) *[]entry[model.Device] { return &w.devices }),
		may("cables", "cables from one device to another", list("cables", cableForm(), 0, 100), func(w *W) *[]entry[model.Cable] { return &w.cables }),
		may("lights", "light strips in grooves", list("lights", lightForm(), 0, 50), func(w *W) *[]entry[model.Light] { return &w.lights }),
		may("grooves", "grooves that are cut into the undersides, besides those of the preset", list("grooves", channelForm(), 0, 50), func(w *W) *[]entry[model.Channel] { return &w.grooves }),
		may("slots", "slots at the reference edges of slabs, where cables come up behind", list("slots", slotForm(), 0, 50), func(w *W) *[]entry[model.Slot] { return &w.slots }),
		may("lids", "lids on grooves of the preset, let in flush", list("lids", lidOnForm(), 0, 50), func(w *W) *[]entry[model.LidOn] { return &w.lids }),
	}, nil)
	return form[model.Wiring]{what: f.what, schema: f.schema, partly: f.partly, read: func(r *reader, n ast.Node) (model.Wiring, bool) {
		before := len(r.mistakes)
		e, _ := f.read(r, n)
		w := wire(r, e.v)
		w.Pos = r.pos(e.at[""])
		return w, len(r.mistakes) == before
	}}
}

func deviceForm() form[entry[model.Device]] {
	type D = model.Device
	places := []string{"socket", "wall", "on", "under", "inside"}
	var one []schema
	for _, p := range places {
		one = append(one, schema{"required": []string{p}})
	}
	return record("a device", []field[D]{
		need("name", "what it is called", text(), func(d *D) *string { return &d.Name }),
		may("socket", "it is this socket or switch of a wall", text(), func(d *D) *string { return &d.Socket }),
		may("wall", "cables come out of this wall", text(), func(d *D) *string { return &d.Wall }),
		may("along", "where they come out, from the wall's left corner", length(0, 20000), func(d *D) *unit.Length { return &d.Along }),
		may("height", "where they come out, above the floor", length(0, 5000), func(d *D) *unit.Length { return &d.Height }),
		may("on", "it stands on this slab or shelf", text(), func(d *D) *string { return &d.On }),
		may("under", "it is fixed under this slab or shelf", text(), func(d *D) *string { return &d.Under }),
		may("inside", "it stands in this roll-out table", text(), func(d *D) *string { return &d.Inside }),
		may("x", "from the left end of the slab's reference edge", length(0, 20000), func(d *D) *unit.Length { return &d.X }),
		may("back", "from the reference edge into the room", length(0, 5000), func(d *D) *unit.Length { return &d.Back }),
	}, func(r *reader, e *entry[D]) {
		e.v.Pos = r.pos(e.at[""])
		n := 0
		for _, p := range places {
			if e.gave(p) {
				n++
			}
		}
		if n != 1 {
			r.wrong(e.at[""], fmt.Sprintf("a device at %d places", n), "one of socket, wall, on, under, inside", "")
		}
		if onSlab := e.gave("on", "under"); onSlab != (e.gave("x") && e.gave("back")) || !onSlab && e.gave("x", "back") {
			r.wrong(e.at[""], "a device whose place on its slab is not clear", "x and back for a device on or under a slab, and neither for others", "")
		}
		if onWall := e.gave("wall"); onWall != (e.gave("along") && e.gave("height")) || !onWall && e.gave("along", "height") {
			r.wrong(e.at[""], "a device whose place on its wall is not clear", "along and height for one where cables come out of a wall, and neither for others", "")
		}
	}, schema{"oneOf": one, "dependentRequired": schema{"wall": []string{"along", "height"}, "along": []string{"wall", "height"}, "height": []string{"wall", "along"}, "on": []string{"x", "back"}, "under": []string{"x", "back"}, "x": []string{"back"}, "back": []string{"x"}}})
}

func cableForm() form[entry[model.Cable]] {
	type C = model.Cable
	dia := length(1, 60)
	return record("a cable", []field[C]{
		need("name", "what it is called", text(), func(c *C) *string { return &c.Name }),
		need("from", "device where it starts", text(), func(c *C) *string { return &c.From }),
		need("to", "device where it ends", text(), func(c *C) *string { return &c.To }),
		need("class", "what it carries; mains is kept apart from the others", word("a class of cables", model.CableClasses...), func(c *C) *model.CableClass { return &c.Class }),
		need("diameter", "outer diameter", dia, func(c *C) *unit.Length { return &c.Dia }),
		may("bend", "least radius of its bends, by its maker; four diameters if nothing is said", length(1, 500), func(c *C) *unit.Length { return &c.Bend }),
		may("plug", "largest width of the plug that must pass through holes; none if it is fitted afterwards", length(1, 150), func(c *C) *unit.Length { return &c.Plug }),
		may("stock", "length that it has; it is cut to length if nothing is said", length(100, 100000), func(c *C) *unit.Length { return &c.Stock }),
	}, func(r *reader, e *entry[C]) {
		c := &e.v
		c.Pos = r.pos(e.at[""])
		if e.at.has("from", "to") && c.From == c.To {
			r.wrong(e.at["to"], "a cable from "+c.From+" to "+c.To, "two devices", "")
		}
		if e.at.has("plug", "diameter") && c.Plug < c.Dia {
			r.wrong(e.at["plug"], fmt.Sprintf("a plug of %s mm on a cable of %s mm", mm(c.Plug), mm(c.Dia)), "a plug no thinner than its cable", "")
		}
	})
}

func lightForm() form[entry[model.Light]] {
	type L = model.Light
	return record("a light", []field[L]{
		need("name", "what it is called", text(), func(l *L) *string { return &l.Name }),
		need("in", "groove in which the strip lies", text(), func(l *L) *string { return &l.In }),
		need("supply", "device that feeds it: the supply, where it can be reached", text(), func(l *L) *string { return &l.Supply }),
		may("dimmer", "device with the dimmer or switch", text(), func(l *L) *string { return &l.Dimmer }),
		need("voltage", "volts of the strip", plain("a voltage", 5, 48), func(l *L) *float64 { return (*float64)(&l.Strip.Supply) }),
		need("power", "watts per metre of the strip", plain("a power per metre", 0.1, 60), func(l *L) *float64 { return (*float64)(&l.Strip.Power) }),
		need("pitch", "distance between the places where the strip may be cut", length(5, 1000), func(l *L) *unit.Length { return &l.Strip.Pitch }),
		may("resistance", "ohms per metre of the strip, both conductors together, by its maker or measured; the drop along it is not checked if nothing is said", plain("a resistance per metre", 0.0001, 20), func(l *L) *float64 { return (*float64)(&l.Strip.Resistance) }),
		may("longest", "longest run fed at one end, by its maker", length(100, 50000), func(l *L) *unit.Length { return &l.Strip.Longest }),
	}, func(r *reader, e *entry[L]) { e.v.Pos = r.pos(e.at[""]) })
}

// wire holds names against each other: every device, cable and light has one of
// its own, and cables and lights know the devices at their ends.
func wire(r *reader, d wiringDraft) model.Wiring {
	var out model.Wiring
	var devices []string
	for _, e := range d.devices {
		own(r, e.at, "device", e.v.Name, devices)
		devices = append(devices, e.v.Name)
		out.Devices = append(out.Devices, e.v)
	}
	known := func(at places, key, name string) {
		if at.has(key) && !slices.Contains(devices, name) {
			r.wrong(at[key], "no device "+quoted(name), "one of the devices of this section", nearest(name, devices))
		}
	}
	var grooves, slots []string
	for _, e := range d.grooves {
		own(r, e.at, "groove", e.v.Name, grooves)
		grooves = append(grooves, e.v.Name)
		out.Channels = append(out.Channels, e.v)
	}
	for _, e := range d.slots {
		own(r, e.at, "slot", e.v.Name, slots)
		slots = append(slots, e.v.Name)
		out.Slots = append(out.Slots, e.v)
	}
	for _, e := range d.lids {
		out.Lids = append(out.Lids, e.v)
	}
	var cables, lights []string
	for _, e := range d.cables {
		own(r, e.at, "cable", e.v.Name, cables)
		cables = append(cables, e.v.Name)
		known(e.at, "from", e.v.From)
		known(e.at, "to", e.v.To)
		out.Cables = append(out.Cables, e.v)
	}
	for _, e := range d.lights {
		own(r, e.at, "light", e.v.Name, lights)
		lights = append(lights, e.v.Name)
		known(e.at, "supply", e.v.Supply)
		known(e.at, "dimmer", e.v.Dimmer)
		out.Lights = append(out.Lights, e.v)
	}
	return out
}

// own notes a mistake if something has the name of one before it.
func own(r *reader, at places, what, name string, before []string) {
	if at.has("name") && slices.Contains(before, name) {
		r.wrong(at["name"], what+" "+quoted(name)+" a second time", "a name of its own for each "+what, "")
	}
}
