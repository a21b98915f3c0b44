// Package report turns a checked design into report.json for machines and
// report.md for people. The verdict comes first.
package report

import (
	"bytes"
	"encoding/json"
	"math"

	"slabwright/model"
	"slabwright/model/cut"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Version is the version of the tool as printed in reports and sheets.
const Version = "0.1"

// Build is everything that a report speaks of.
type Build struct {
	Job      model.Job
	Room     *model.Room
	Design   *model.Design
	Findings []find.Finding
	Shopping *cut.Shopping // nil: nothing is planned

	// Turn builds the same job with its wall legs the other way; nil: the design
	// has no parameter for that.
	Turn func() Turned
}

// document is report.json; its keys are stable.
type document struct {
	Tool struct {
		Name    string `json:"name"`
		Version string `json:"version"`
	} `json:"tool"`
	Job struct {
		Title    string `json:"title"`
		Revision string `json:"revision"`
		Surveyed string `json:"surveyed"`
	} `json:"job"`
	Verdict  verdict           `json:"verdict"`
	Room     roomDoc           `json:"room"`
	Parts    []partDoc         `json:"parts"`
	Fit      []fitDoc          `json:"fit"`
	Movement movementDoc       `json:"movement"`
	Wiring   wiringDoc         `json:"wiring"`
	Handling handlingDoc       `json:"handling"`
	People   []personDoc       `json:"people"`
	Findings []find.Finding    `json:"findings"`
	Statics  staticsDoc        `json:"statics"`
	Legs     *legsDoc          `json:"wall_legs,omitempty"`
	Cutting  *cut.Document     `json:"cutting,omitempty"`
	Cost     *cut.CostDocument `json:"cost,omitempty"`
}

type verdict struct {
	Status   find.Status `json:"status"`
	Sentence string      `json:"sentence"`
}

type roomDoc struct {
	Corners    []cornerDoc `json:"corners"`
	Walls      []wallDoc   `json:"walls"`
	Statistics statsDoc    `json:"statistics"`
}

type cornerDoc struct {
	Name string  `json:"name"`
	X    float64 `json:"x_mm"`
	Y    float64 `json:"y_mm"`
	SDX  float64 `json:"sd_x_mm"`
	SDY  float64 `json:"sd_y_mm"`
}

type wallDoc struct {
	Name   string  `json:"name"`
	From   string  `json:"from"`
	To     string  `json:"to"`
	Length float64 `json:"length_mm"`
	SD     float64 `json:"sd_mm"`
	Bow    float64 `json:"bow_mm"`
	Make   string  `json:"make"`
}

type partDoc struct {
	ID       string        `json:"id"`
	Name     string        `json:"name"`
	Kind     string        `json:"kind"`
	Mark     int           `json:"mark"`
	Material string        `json:"material"`
	Mass     float64       `json:"mass_kg"`
	Volume   float64       `json:"volume_mm3"`
	Centroid [3]float64    `json:"centroid_mm"`
	Bounds   [2][3]float64 `json:"bounds_mm"`
	Outline  [][2]float64  `json:"outline_mm"`
	Cut      string        `json:"already_cut,omitempty"` // the day, ISO 8601
}

// JSON is report.json.
func JSON(b Build) ([]byte, error) {
	var d document
	d.Tool.Name, d.Tool.Version = "slabwright", Version
	d.Job.Title, d.Job.Revision, d.Job.Surveyed = b.Job.Title, b.Job.Revision, b.Job.Surveyed
	d.Verdict = verdict{Worst(b.Findings), Sentence(b.Findings)}
	d.Room = room(b.Room)
	d.Parts = parts(b.Design)
	d.Fit = fits(b.Design)
	d.Movement = movements(b.Design)
	d.Wiring = wiringOf(b)
	d.Handling, d.People = handling(b.Design), people(b)
	d.Findings = b.Findings
	if d.Findings == nil {
		d.Findings = []find.Finding{}
	}
	d.Statics, d.Legs = staticsOf(b), legsOf(b)
	if b.Shopping != nil {
		plans, cost := b.Shopping.Document(), b.Shopping.CostDocument()
		d.Cutting, d.Cost = &plans, &cost
	}
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	if err := enc.Encode(d); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

func room(r *model.Room) roomDoc {
	d := roomDoc{Corners: []cornerDoc{}, Walls: []wallDoc{}}
	for _, c := range r.Corners {
		d.Corners = append(d.Corners, cornerDoc{c.Name, mm(c.At.X), mm(c.At.Y), mm(c.SDX), mm(c.SDY)})
	}
	for _, w := range r.Walls {
		d.Walls = append(d.Walls, wallDoc{w.Name, w.From.Name, w.To.Name, mm(w.Length()), mm(w.SD), mm(w.Bow), string(w.Make)})
	}
	d.Statistics = statistics(r.Survey)
	return d
}

func parts(d *model.Design) []partDoc {
	out := []partDoc{}
	for _, p := range d.Parts {
		c, box := p.Centroid(), p.Bounds()
		doc := partDoc{ID: p.ID, Name: p.Name(), Kind: string(p.Kind), Mark: p.Mark, Material: p.Material,
			Mass: digits(float64(p.Mass())), Volume: digits(float64(p.Volume())),
			Centroid: triple(c), Bounds: [2][3]float64{triple(box.Min), triple(box.Max)}, Outline: [][2]float64{}}
		if p.Cut != nil {
			doc.Cut = p.Cut.On
		}
		for _, loop := range p.Footprint().Loops() {
			for _, v := range loop {
				doc.Outline = append(doc.Outline, [2]float64{mm(v.X), mm(v.Y)})
			}
			break
		}
		out = append(out, doc)
	}
	return out
}

func triple(v geom.Vec3) [3]float64 { return [3]float64{mm(v.X), mm(v.Y), mm(v.Z)} }

// mm rounds to a micrometre and never prints a negative zero.
func mm(l unit.Length) float64 { return digits(float64(l)) }

func digits(x float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	return math.Round(x*1000)/1000 + 0
}

// RoomJSON is the room part of report.json by itself.
func RoomJSON(r *model.Room) ([]byte, error) { return json.MarshalIndent(room(r), "", "  ") }
