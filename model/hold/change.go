package hold

import (
	"slices"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// change is one way to change a slab or what carries it.
type change struct {
	joint   model.JointKind
	thicker unit.Length
	section string
	propped bool
	prop    geom.Vec
	post    string   // that stands elsewhere, by way
	cut     int      // its number among the features and one more; 0: none
	way     geom.Vec // of the post, or of the cut with what it meets
	less    unit.Length
	closed  bool   // without the cut and what it meets
	wall    string // with one more bracket along it
	rods    int    // more of them
}

// tried is what one wants of a slab with a change, worked out once: as the slab
// itself, or roughly, on the coarse mesh and with a person where it was worst before, unless it tipped.
func tried(d *model.Design, j model.Job, part string, c change, w Wants, roughly bool) Slab {
	loads, _ := Filled(j)
	type key struct {
		loads memoKey
		part  string
		change
		Wants
		roughly bool
	}
	return d.Once(key{keyOf(j, loads), part, c, w, roughly}, func() any {
		b := newBench(d, d.Part(part), loads, creep(j, loads))
		b.quick, b.wants = roughly, w
		b.variant.take(d, b.part, c)
		if drawn, ok := Of(d, j).Of(part); roughly && ok && drawn.Trouble == "" && !drawn.Tips {
			b.known = &drawn.found
		}
		return b.slab()
	}).(Slab)
}

// take puts a change into a variant.
func (v *variant) take(d *model.Design, p *model.Part, c change) {
	v.thicker, v.joint, v.moreRods, v.post, v.way = c.thicker, c.joint, c.rods, c.post, c.way
	if s, err := stock.Angle(c.section); err == nil {
		v.section = &s
	}
	if c.propped {
		v.prop = &c.prop
	}
	if c.cut > 0 {
		v.work = reworked(p.Slab, c)
	}
	if c.wall != "" {
		v.extra = []*model.Part{oneMore(d, p.ID, c.wall)}
	}
}

// reworked are the features of a slab with a cut and what it meets moved, less
// deep or not made.
func reworked(s *model.SlabPart, c change) []model.Feature {
	group := met(s, c.cut-1)
	var out []model.Feature
	for i, f := range s.Features {
		switch {
		case !group[i]:
		case c.closed:
			continue
		case c.less > 0:
			f.Depth -= c.less
		default:
			f = shifted(f, c.way)
		}
		out = append(out, f)
	}
	return out
}

// shifted is a feature somewhere else.
func shifted(f model.Feature, way geom.Vec) model.Feature {
	f.At, f.Outline = f.At.Add(way), f.Outline.Place(geom.Pose{At: way.Up(0)})
	path := make([]geom.Vec, len(f.Path))
	for i, p := range f.Path {
		path[i] = p.Add(way)
	}
	f.Path = path
	return f
}

// isCut says whether a feature is wood that is missing in the plate.
func isCut(f model.Feature) bool {
	return f.Kind == model.Through || f.Kind == model.CutOut || f.Kind == model.Groove || f.Kind == model.Pocket
}

// met are the features that go with one, each meeting another of them: a groove
// and the holes at its ends.
func met(s *model.SlabPart, first int) []bool {
	out := make([]bool, len(s.Features))
	out[first] = true
	for again := true; again; {
		again = false
		for i, f := range s.Features {
			if out[i] || !isCut(f) {
				continue
			}
			for k, g := range s.Features {
				if out[k] && !f.Outline.Intersect(g.Outline).Empty() {
					out[i], again = true, true
					break
				}
			}
		}
	}
	return out
}

// oneMore is a bracket along a wall that carries nothing of a slab yet, as Trial
// would place it, like the others of the slab, without screws; nil where none goes.
func oneMore(d *model.Design, slab, wall string) *model.Part {
	i := slices.IndexFunc(d.Room.Walls, func(w *model.Wall) bool { return w.Name == wall })
	if i < 0 {
		return nil
	}
	along, id := d.Room.Walls[i], "one more along "+wall
	like := d.BracketsUnder(slab)
	if len(like) > 0 && like[0].Cleat != nil {
		c := like[0].Cleat
		return d.Trial(id, model.Cleat(c.Species, c.Wide, c.High).Along(along).Under(slab).Anchored(model.Anchors{Hole: 9, Pitch: 250, End: 60}))
	}
	section := stock.L50x50x6
	if len(like) > 0 {
		section = like[0].Angle.Section
	}
	return d.Trial(id, model.Angle(section).Along(along).Under(slab).Anchored(model.Anchors{Hole: 11, Pitch: 300, End: 40}))
}
