package lists_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/job"
	"slabwright/model/lists"
	"slabwright/model/stock"
	"slabwright/model/unit"
	"slabwright/presets"
)

// designs are those of all presets, and one whose angle has its leg up.
func designs(t *testing.T) []*model.Design {
	t.Helper()
	var out []*model.Design
	for _, p := range presets.All() {
		file := filepath.Join("..", "..", "presets", p.Name, "job.yaml")
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		j, mistakes := job.Read(file, data, presets.All())
		if len(mistakes) > 0 {
			t.Fatal(mistakes)
		}
		r, err := model.NewRoom(j.Room)
		if err != nil {
			t.Fatal(err)
		}
		d := p.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
		d.Finish()
		out = append(out, d)
		if p.Name == "alcove" {
			out = append(out, legUp(r))
		}
	}
	return out
}

func legUp(r *model.Room) *model.Design {
	d := model.NewDesign("leg up", r)
	d.Add("top", model.Slab(stock.Oak, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(3, 20).Depth(500).SurfaceAt(750))
	d.Add("angle", model.Angle(stock.L60x60x6).LegUp().Along(r.Wall("back")).Under("top").
		Anchored(model.Anchors{Hole: 11, Pitch: 300, End: 40}).ScrewedUp(model.Screws{Hole: 7, Slot: 6, Pitch: 250, End: 70, Pilot: 4, Into: 25}))
	d.Finish()
	return d
}

// read reads a list back as RFC 4180 defines it.
func read(t *testing.T, data []byte, err error) []map[string]string {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(bytes.NewReader(data))
	rows, err := r.ReadAll() // all rows have the same number of fields
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, head := range rows[0] {
			m[head] = row[i]
		}
		out = append(out, m)
	}
	return out
}

func TestListsAreRFC4180(t *testing.T) {
	// RFC 4180, section 2: lines end in CRLF; fields with commas, quotes or line
	// breaks are quoted, quotes in them doubled.
	awkward := []string{`the "long" one`, "left, back", "two\nlines", " blanks ", "Ø16 ≥ 3"}
	d := &model.Design{Room: &model.Room{}}
	for _, name := range awkward {
		d.Parts = append(d.Parts, &model.Part{ID: name, Kind: "odd", Material: name, Bears: []string{name}})
	}
	d.Finish()
	data, err := lists.Parts(d)
	rows := read(t, data, err)
	if len(rows) != len(awkward) {
		t.Fatalf("%d rows, want %d", len(rows), len(awkward))
	}
	for i, row := range rows {
		if row["part"] != awkward[i] || row["material"] != awkward[i] || row["bears_on"] != awkward[i] {
			t.Errorf("row %d reads back as %q", i+1, row)
		}
	}
	for _, d := range designs(t) {
		for name, make := range map[string]func(*model.Design) ([]byte, error){"parts": lists.Parts, "holes": lists.Holes, "buy": func(d *model.Design) ([]byte, error) { return lists.Buy(d, nil) }} {
			data, err := make(d)
			read(t, data, err)
			if n, crlf := bytes.Count(data, []byte("\n")), bytes.Count(data, []byte("\r\n")); n != crlf || !bytes.HasSuffix(data, []byte("\r\n")) {
				t.Errorf("%s: %s has %d line ends, %d of them CRLF", d.Title, name, n, crlf)
			}
		}
	}
}

func TestPartsListCountsEveryPartOnce(t *testing.T) {
	for _, d := range designs(t) {
		data, err := lists.Parts(d)
		rows := read(t, data, err)
		total, mass, names := 0, 0.0, map[string]int{}
		for _, row := range rows {
			n, err := strconv.Atoi(row["count"])
			if err != nil {
				t.Fatal(err)
			}
			total += n
			mass += number(t, row["mass_all_kg"])
			for _, name := range strings.Split(row["part"], "; ") {
				names[name]++
			}
		}
		want := 0.0
		for _, p := range d.Parts {
			want += float64(p.Mass())
			if names[p.ID] != 1 {
				t.Errorf("%s: part %q is listed %d times", d.Title, p.ID, names[p.ID])
			}
		}
		if total != len(d.Parts) {
			t.Errorf("%s: the counts sum to %d, there are %d parts", d.Title, total, len(d.Parts))
		}
		if math.Abs(mass-want) > 0.01*float64(len(rows)) {
			t.Errorf("%s: the masses sum to %.2f kg, want %.2f", d.Title, mass, want)
		}
	}
}

func TestSizesAreThoseOfTheSolids(t *testing.T) {
	for _, d := range designs(t) {
		data, err := lists.Parts(d)
		for _, row := range read(t, data, err) {
			p := d.Part(strings.Split(row["part"], "; ")[0])
			l, w, h := number(t, row["length_mm"]), number(t, row["width_mm"]), number(t, row["thickness_mm"])
			switch {
			case p.Slab != nil:
				b := p.Slab.Own.Bounds()
				near(t, d, p.ID+" length", l, float64(b.Max.X-b.Min.X), 0.06)
				near(t, d, p.ID+" width", w, float64(b.Max.Y-b.Min.Y), 0.06)
				near(t, d, p.ID+" thickness", h, float64(b.Max.Z-b.Min.Z), 0.06)
			case p.Angle != nil:
				var lo, hi float64
				for i, v := range vertices(p.Bodies[0].Solid.Faces(), func(string) bool { return true }) {
					x := float64(p.Angle.Pose().Unplan(v.Flat()).X)
					if i == 0 {
						lo, hi = x, x
					}
					lo, hi = math.Min(lo, x), math.Max(hi, x)
				}
				near(t, d, p.ID+" length", l, hi-lo, 0.01)
			case p.Cleat != nil:
				box := own(p)
				near(t, d, p.ID+" length", l, float64(box.Max.X-box.Min.X), 0.01)
				near(t, d, p.ID+" width", w, float64(box.Max.Y-box.Min.Y), 0.01)
				near(t, d, p.ID+" height", h, float64(box.Max.Z-box.Min.Z), 0.01)
			case p.Rod != nil:
				near(t, d, p.ID+" length", l, float64(p.Rod.InWall+p.Rod.Gap+p.Rod.InShelf), 0.51)
			}
		}
	}
}

func TestEveryHoleIsListedOnceWhereItIs(t *testing.T) {
	for _, d := range designs(t) {
		want := map[string]bool{}
		for _, p := range d.Parts {
			if p.Slab != nil {
				for _, f := range p.Slab.Features {
					want[p.ID+"|"+f.Name] = true
				}
			}
			if b := p.Bracket(); b != nil {
				for _, h := range b.On().Holes {
					want[p.ID+"|"+h.Name] = true
				}
			}
		}
		data, err := lists.Holes(d)
		rows := read(t, data, err)
		if len(rows) != len(want) || len(rows) == 0 {
			t.Errorf("%s: %d rows for %d holes", d.Title, len(rows), len(want))
		}
		for _, row := range rows {
			key := row["part"] + "|" + row["hole"]
			if !want[key] {
				t.Errorf("%s: %s is listed twice or does not exist", d.Title, key)
			}
			delete(want, key)
			checkHole(t, d, row)
		}
	}
}

// checkHole holds a row against the skin of the solid: the surfaces of the
// hole have their middle where the list says, and its size.
func checkHole(t *testing.T, d *model.Design, row map[string]string) {
	t.Helper()
	p := d.Part(row["part"])
	name := p.ID + " " + row["hole"]
	x, y, dia := number(t, row["x_mm"]), number(t, row["y_mm"]), number(t, row["dia_mm"])
	if b := p.Bracket(); b != nil {
		pose := b.Pose()
		var own []geom.Vec3
		for _, v := range vertices(p.Bodies[0].Solid.Faces(), func(s string) bool {
			return s == row["hole"] || s == "anchor "+row["hole"] || strings.HasPrefix(s+" ", "screw "+row["hole"]+" ")
		}) {
			own = append(own, pose.Unplan(v.Flat()).Up(v.Z-pose.At.Z))
		}
		lo, hi := box(own)
		along, slot := dia, number(t, row["slot_mm"])
		across := dia
		if strings.HasPrefix(row["slot_along"], "along") {
			along += slot
		} else {
			across += slot
		}
		near(t, d, name+" x", float64(lo.X+hi.X)/2, x, 0.06)
		near(t, d, name+" along", float64(hi.X-lo.X), along, 0.25)
		if row["face_or_leg"] == string(model.SeatLeg) {
			near(t, d, name+" from heel", -float64(lo.Y+hi.Y)/2, y, 0.06)
			near(t, d, name+" across", float64(hi.Y-lo.Y), across, 0.25)
			return
		}
		heel := 0.0
		if p.Angle != nil && p.Angle.LegUp {
			heel = -float64(p.Angle.Section.Thickness)
		}
		near(t, d, name+" from heel", math.Abs(float64(lo.Z+hi.Z)/2-heel), y, 0.06)
		near(t, d, name+" across", float64(hi.Z-lo.Z), across, 0.25)
		return
	}
	if k := row["kind"]; k != string(model.Through) && k != string(model.Pilot) && k != string(model.Bore) {
		return // grooves and pockets have an outline of their own
	}
	lo, hi := box(vertices(p.Slab.Own.Faces(), func(s string) bool { return s == row["kind"]+" "+row["hole"] }))
	near(t, d, name+" x", float64(lo.X+hi.X)/2, x, 0.06)
	near(t, d, name+" diameter", float64(hi.X-lo.X), dia, 0.25)
	if row["kind"] == string(model.Bore) {
		near(t, d, name+" depth", float64(hi.Y-lo.Y), number(t, row["depth_mm"]), 0.6)
		return
	}
	near(t, d, name+" y", -float64(lo.Y+hi.Y)/2, y, 0.06)
	near(t, d, name+" depth", float64(hi.Z-lo.Z), number(t, row["depth_mm"]), 0.01)
}

// own is the box of a bracket in its own axes.
func own(p *model.Part) geom.Box {
	pose := p.Bracket().Pose()
	var list []geom.Vec3
	for _, v := range vertices(p.Bodies[0].Solid.Faces(), func(string) bool { return true }) {
		list = append(list, pose.Unplan(v.Flat()).Up(v.Z-pose.At.Z))
	}
	lo, hi := box(list)
	return geom.Box{Min: lo, Max: hi}
}

func vertices(faces []geom.Face, of func(surface string) bool) []geom.Vec3 {
	var out []geom.Vec3
	for _, f := range faces {
		if of(f.Surface) {
			for _, l := range f.Loops {
				out = append(out, l...)
			}
		}
	}
	return out
}

func box(pts []geom.Vec3) (lo, hi geom.Vec3) {
	if len(pts) == 0 {
		return lo, hi
	}
	lo, hi = pts[0], pts[0]
	for _, v := range pts {
		lo = geom.Vec3{X: min(lo.X, v.X), Y: min(lo.Y, v.Y), Z: min(lo.Z, v.Z)}
		hi = geom.Vec3{X: max(hi.X, v.X), Y: max(hi.Y, v.Y), Z: max(hi.Z, v.Z)}
	}
	return lo, hi
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("%q is no number", s)
	}
	return v
}

func near(t *testing.T, d *model.Design, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s: %s is %.3f, want %.3f", d.Title, what, got, want)
	}
}

func TestBuyingListCoversTheDesign(t *testing.T) {
	for _, d := range designs(t) {
		anchors, screws, bars, battens, rods, castors := 0, 0, 0, 0, 0, 0
		for _, p := range d.Parts {
			if p.Rod != nil {
				rods++
			}
			if p.RollOut != nil {
				castors += 4
			}
			if p.Cleat != nil {
				battens++
			}
			if p.Angle != nil {
				bars++
			}
			if b := p.Bracket(); b != nil {
				for _, h := range b.On().Holes {
					if h.Leg == model.WallLeg {
						anchors++
					} else {
						screws++
					}
				}
			}
		}
		got := map[string]int{}
		for _, p := range lists.Purchases(d) {
			switch {
			case strings.HasPrefix(p.What, "wall anchor"), strings.HasPrefix(p.What, "coach screw"):
				got["anchor"] += p.Count
			case strings.HasPrefix(p.What, "wood screw"):
				got["screw"] += p.Count
			case strings.HasPrefix(p.What, "steel angle"):
				got["bar"] += p.Count
			case strings.Contains(p.What, "batten"):
				got["batten"] += p.Count
			case strings.HasPrefix(p.What, "round bar"):
				got["rod"] += p.Count
			case p.What == "swivel castor":
				got["castor"] += p.Count
			}
		}
		want := map[string]int{"anchor": anchors, "screw": screws, "bar": bars, "batten": battens, "rod": rods, "castor": castors}
		for what, n := range want {
			if got[what] != n {
				t.Errorf("%s: %d %ss are bought, the design has %d", d.Title, got[what], what, n)
			}
		}
	}
}

// TestScrewsDoNotComeThrough holds the length of the screws bought against the
// steel and the wood: with the steel they are shorter than leg and slab.
func TestScrewsDoNotComeThrough(t *testing.T) {
	for _, d := range designs(t) {
		n := 0
		for _, p := range lists.Purchases(d) {
			if !strings.HasPrefix(p.What, "wood screw,") {
				continue
			}
			var dia, length float64
			if _, err := fmt.Sscanf(p.Size, "%g x %g", &dia, &length); err != nil {
				t.Fatalf("%s: size %q: %v", d.Title, p.Size, err)
			}
			for _, slab := range p.For {
				n++
				for _, a := range d.Parts {
					if a.Angle != nil && a.Angle.Under == slab && length > float64(a.Angle.Section.Thickness+d.Part(slab).Slab.Thickness)-5 {
						t.Errorf("%s: a screw of %g in %s, with %s", d.Title, length, slab, a.ID)
					}
				}
			}
		}
		if n == 0 {
			t.Errorf("%s has no screws", d.Title)
		}
	}
}

func TestFixingsPassTheirHoles(t *testing.T) {
	for _, hole := range []float64{4, 5.5, 6, 7, 9, 11, 14} {
		if a, ok := stock.AnchorThrough(unit.Length(hole)); ok && float64(a.Hole) > hole {
			t.Errorf("anchor %s does not pass a hole of %g", a.Name, hole)
		}
		if s, ok := stock.ScrewThrough(unit.Length(hole)); ok && float64(s.Diameter) >= hole {
			t.Errorf("screw %s does not pass a hole of %g", s.Name, hole)
		}
	}
	if _, ok := stock.AnchorThrough(4); ok {
		t.Error("an anchor passes a hole of 4")
	}
	if _, ok := stock.ScrewThrough(3); ok {
		t.Error("a screw passes a hole of 3")
	}
}
