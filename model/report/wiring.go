package report

import (
	"slices"

	"slabwright/model/wire"
)

type wiringDoc struct {
	Cables   []cableDoc   `json:"cables"`
	Channels []channelDoc `json:"channels"`
	Lights   []lightDoc   `json:"lights"`
	Supplies []supplyDoc  `json:"supplies"`
}

type cableDoc struct {
	Name    string       `json:"name"`
	From    string       `json:"from"`
	To      string       `json:"to"`
	Class   string       `json:"class"`
	Dia     float64      `json:"diameter_mm"`
	Found   bool         `json:"found"`
	Way     float64      `json:"way_mm"`
	Length  float64      `json:"length_mm"` // with slack
	Loop    float64      `json:"loop_mm"`
	Through []string     `json:"through"`
	Points  [][3]float64 `json:"points_mm"`
}

type channelDoc struct {
	Part   string   `json:"part"`
	Name   string   `json:"name"`
	Width  float64  `json:"width_mm"`
	Depth  float64  `json:"depth_mm"`
	Cables []string `json:"cables"`
	Fill   float64  `json:"fill_percent"`
	Most   float64  `json:"most_percent"`
}

type lightDoc struct {
	Name     string     `json:"name"`
	Part     string     `json:"part"`
	Groove   string     `json:"groove"`
	Run      float64    `json:"run_mm"`
	Pieces   int        `json:"pitches"`
	Power    float64    `json:"power_w"`
	Current  float64    `json:"current_a"`
	BothEnds bool       `json:"both_ends"`
	Feeds    []float64  `json:"feeds_mm"`
	Wire     float64    `json:"wire_mm2"`
	Fuse     float64    `json:"fuse_a"`
	Drop     *float64   `json:"drop_v"` // null: the strip's resistance is not told
	Dimmer   *dimmerDoc `json:"dimmer"` // null: none, or no way leads to it
}

type dimmerDoc struct {
	Device string  `json:"device"`
	Lead   float64 `json:"lead_mm"`
	Rated  float64 `json:"rated_a"` // 0: no usual one is large enough
}

type supplyDoc struct {
	Device string   `json:"device"`
	Lights []string `json:"lights"`
	Load   float64  `json:"load_w"`
	Rated  float64  `json:"rated_w"` // 0: no usual one is large enough
	Volts  float64  `json:"voltage_v"`
}

// wiringOf is the wiring part of report.json.
func wiringOf(b Build) wiringDoc {
	p := wire.Of(b.Design, b.Job.Wiring)
	out := wiringDoc{[]cableDoc{}, []channelDoc{}, []lightDoc{}, []supplyDoc{}}
	for _, r := range p.Runs {
		c := cableDoc{r.Cable.Name, r.Cable.From, r.Cable.To, string(r.Cable.Class), mm(r.Cable.Dia), r.Found, mm(r.Length), mm(r.Needed), mm(r.Loop), []string{}, [][3]float64{}}
		for _, q := range r.Pieces {
			if name := q.Slab + ": " + q.Feature; q.Feature != "" && !slices.Contains(c.Through, name) {
				c.Through = append(c.Through, name)
			}
		}
		for _, v := range r.Points {
			c.Points = append(c.Points, triple(v))
		}
		out.Cables = append(out.Cables, c)
	}
	for _, c := range p.Channels {
		out.Channels = append(out.Channels, channelDoc{c.Slab, c.Feature, mm(c.Width), mm(c.Depth), c.Cables, digits(100 * c.Fill), digits(100 * c.Most)})
	}
	for _, l := range p.Lights {
		d := lightDoc{l.Light.Name, l.Slab, l.Light.In, mm(l.Run), l.Pieces, digits(float64(l.Power)), digits(float64(l.Current)), l.BothEnds, []float64{}, digits(l.Wire.SquareMM), digits(float64(l.Fuse)), nil, nil}
		if m := l.Dimmer; m != nil {
			d.Dimmer = &dimmerDoc{m.Device, mm(m.Lead), digits(float64(m.Rated))}
		}
		for _, f := range l.Feeds {
			d.Feeds = append(d.Feeds, mm(f))
		}
		if l.Told && l.Found {
			v := digits(float64(l.Drop))
			d.Drop = &v
		}
		out.Lights = append(out.Lights, d)
	}
	for _, s := range p.Supplies {
		out.Supplies = append(out.Supplies, supplyDoc{s.Device, s.Lights, digits(float64(s.Load)), digits(float64(s.Rated)), digits(float64(s.Voltage))})
	}
	return out
}
