package job

import (
	"fmt"

	"github.com/goccy/go-yaml/ast"

	"slabwright/model"
	"slabwright/model/calc/moisture"
)

// climateDraft is a climate section before its keys are held against each
// other.
type climateDraft struct {
	model.Climate
	humidity    []float64
	temperature float64
}

// usualTemperature is that of a room where nothing is said, degrees Celsius.
const usualTemperature = 20

func climateForm() form[model.Climate] {
	type C = climateDraft
	f := record("a climate section", []field[C]{
		may("moisture", "moisture of the wood at delivery, per cent, read with a meter in the core", asContent(percent(0, 60)), func(c *C) *moisture.Content { return &c.Moisture }),
		may("stored", "the air in which the wood lay for weeks before it was cut", airForm("a section of stored air"), func(c *C) **moisture.Air { return &c.Stored }),
		may("humidity", "lowest and highest humidity of the room's air over the year, per cent", list("humidities, the lowest and the highest", percent(0, 100), 2, 2), func(c *C) *[]float64 { return &c.humidity }),
		may("temperature", "of the room, degrees Celsius; 20 if nothing is said", plain("a temperature", -30, 60), func(c *C) *float64 { return &c.temperature }),
		may("winter", "the room's air in the heating season, instead of humidity and temperature", airForm("a section of winter air"), func(c *C) **moisture.Air { return &c.Winter }),
		may("summer", "the room's air in summer, instead of humidity and temperature", airForm("a section of summer air"), func(c *C) **moisture.Air { return &c.Summer }),
		may("sawn", "how the rings lie in the slabs, seen at their ends: flat to the faces, upright (quarter) or aslant (mixed)", word("a way to saw", moisture.Ways...), func(c *C) *moisture.Sawn { return &c.Sawn }),
		may("finished", "which faces of the slabs get oil or varnish", word("finished faces", model.BothFaces, model.OneFace), func(c *C) *model.Finish { return &c.Finished }),
	}, checkClimate, oneWay)
	return form[model.Climate]{what: f.what, schema: f.schema, partly: true, read: func(r *reader, n ast.Node) (model.Climate, bool) {
		e, ok := f.read(r, n)
		return e.v.Climate, ok
	}}
}

// asContent types a number of per cent.
func asContent(f form[float64]) form[moisture.Content] {
	return form[moisture.Content]{what: f.what, schema: f.schema, read: func(r *reader, n ast.Node) (moisture.Content, bool) {
		v, ok := f.read(r, n)
		return moisture.Content(v), ok
	}}
}

// airForm describes the air of a season.
func airForm(what string) form[*moisture.Air] {
	type air struct{ humidity, temperature float64 }
	f := record(what, []field[air]{
		need("humidity", "relative humidity, per cent", percent(0, 100), func(a *air) *float64 { return &a.humidity }),
		may("temperature", "degrees Celsius; 20 if nothing is said", plain("a temperature", -30, 60), func(a *air) *float64 { return &a.temperature }),
	}, nil)
	return form[*moisture.Air]{what: f.what, schema: f.schema, partly: true, read: func(r *reader, n ast.Node) (*moisture.Air, bool) {
		e, ok := f.read(r, n)
		if !e.gave("temperature") {
			e.v.temperature = usualTemperature
		}
		return airOf(e.v.humidity, e.v.temperature), ok
	}}
}

func airOf(percent, celsius float64) *moisture.Air {
	return &moisture.Air{Humidity: moisture.Humidity(percent), Temperature: moisture.Celsius(celsius)}
}

// The two ways to tell the room's air, and that only one of them is used.
var (
	wholeYear = []string{"humidity", "temperature"}
	bySeason  = []string{"winter", "summer"}
	oneWay    = schema{"not": schema{"anyOf": []schema{
		{"required": []string{"humidity", "winter"}}, {"required": []string{"humidity", "summer"}},
		{"required": []string{"temperature", "winter"}}, {"required": []string{"temperature", "summer"}},
	}}}
)

// checkClimate makes seasons of humidity and temperature, and wants only one of
// both ways to tell them.
func checkClimate(r *reader, e *entry[climateDraft]) {
	c := &e.v
	if !e.gave("temperature") {
		c.temperature = usualTemperature
	}
	for _, key := range wholeYear {
		if e.gave(key) && e.gave(bySeason...) {
			at, ok := e.at[key]
			if !ok {
				at = e.at[""]
			}
			r.wrong(at, "the "+key+" of the room beside winter or summer", "one of both ways to tell the room's air", "take "+key+" out, or winter and summer")
			return
		}
	}
	if !e.at.has("humidity") {
		return
	}
	if c.humidity[0] >= c.humidity[1] {
		r.wrong(e.at["humidity"], fmt.Sprintf("humidity from %s to %s %%", number(c.humidity[0]), number(c.humidity[1])), "the lowest first and the highest second", "")
		return
	}
	c.Winter, c.Summer = airOf(c.humidity[0], c.temperature), airOf(c.humidity[1], c.temperature)
}
