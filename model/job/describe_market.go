package job

import (
	"fmt"
	"slices"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// maxPrice bounds prices in any currency.
const maxPrice = 1e9

func offersForm() form[model.Offers] {
	type O = model.Offers
	return inner(record("an offers section", []field[O]{
		may("currency", "in which all prices are", text(), func(o *O) *string { return &o.Currency }),
		mayPut("kerf", "width that a saw cut takes away", kerfForm(), func(o *O, k [2]unit.Length) { o.KerfWood, o.KerfSteel = k[0], k[1] }),
		may("slabs", "slabs on offer", list("slabs", slabForm(), 0, 200), func(o *O) *[]model.SlabOffer { return &o.Slabs }),
		may("bars", "steel bars on offer", list("bars", barForm(), 0, 200), func(o *O) *[]model.BarOffer { return &o.Bars }),
		may("packs", "packs of anchors, screws and castors on offer", list("packs", packForm(), 0, 200), func(o *O) *[]model.PackOffer { return &o.Packs }),
	}, func(r *reader, e *entry[O]) { e.v.Pos = r.pos(e.at[""]) }))
}

// packForm describes a pack; each kind of fixing has its own measures.
func packForm() form[model.PackOffer] {
	type P = model.PackOffer
	diameter := need("diameter", "of the screw", length(2, 30), func(p *P) *unit.Length { return &p.Diameter })
	long := need("length", "of the screw", length(10, 400), func(p *P) *unit.Length { return &p.Length })
	high := need("height", "overall, from the floor to its plate", length(20, 150), func(p *P) *unit.Length { return &p.Length })
	known := slices.DeleteFunc(slices.Clone(model.WallMakes), func(m model.WallMake) bool { return m == model.UnknownWall })
	wall := need("wall", "what the anchor is approved for", word("a make of wall", known...), func(p *P) *model.WallMake { return &p.Wall })
	measures := []struct {
		kind   model.FixingKind
		fields []field[P]
	}{{model.WallAnchor, []field[P]{wall, diameter}}, {model.WoodScrew, []field[P]{diameter, long}}, {model.CoachScrew, []field[P]{diameter, long}}, {model.Castor, []field[P]{high}}}
	var kinds []kind[P]
	for _, m := range measures {
		fields := append([]field[P]{
			may("name", "what the seller calls it", text(), func(p *P) *string { return &p.Name }),
			need("kind", "kind of fixing", word("this kind", m.kind), func(p *P) *model.FixingKind { return &p.Kind }),
		}, m.fields...)
		fields = append(fields,
			need("pieces", "how many are in the pack", count(1, 10000), func(p *P) *int { return &p.Pieces }),
			need("price", "price of the pack, in your currency", plain("a price", 0, maxPrice), func(p *P) *float64 { return &p.Price }),
			may("place", "where it is sold", text(), func(p *P) *string { return &p.Place }))
		kinds = append(kinds, kind[P]{string(m.kind), inner(record("a pack of "+string(m.kind)+"s", fields, func(r *reader, e *entry[P]) { e.v.Pos = r.pos(e.at[""]) }))})
	}
	return byWord("a pack", "kind", "a kind of fixing", kinds)
}

func kerfForm() form[[2]unit.Length] {
	type K = [2]unit.Length
	return inner(record("a kerf section", []field[K]{
		may("wood", "kerf in wood", length(0, 20), func(k *K) *unit.Length { return &k[0] }),
		may("steel", "kerf in steel", length(0, 20), func(k *K) *unit.Length { return &k[1] }),
	}, nil))
}

func slabForm() form[model.SlabOffer] {
	type S = model.SlabOffer
	var species []string
	for _, s := range stock.AllSpecies() {
		species = append(species, s.Name)
	}
	return inner(record("a slab", []field[S]{
		may("name", "what the seller calls it", text(), func(s *S) *string { return &s.Name }),
		need("species", "species of the wood", word("a species", species...), func(s *S) *string { return &s.Species }),
		need("length", "along the grain", length(100, 10000), func(s *S) *unit.Length { return &s.Length }),
		need("width", "across the grain; of natural edges the narrowest", length(50, 2000), func(s *S) *unit.Length { return &s.Width }),
		need("thickness", "as sold", length(10, 200), func(s *S) *unit.Length { return &s.Thickness }),
		may("natural", "number of natural edges", count(0, 2), func(s *S) *int { return &s.Natural }),
		may("widths", "usable widths of a slab with natural edges, from one end to the other", list("widths", length(50, 2000), 2, 100), func(s *S) *[]unit.Length { return &s.Widths }),
		may("every", "distance along the slab from one of the widths to the next", length(10, 2000), func(s *S) *unit.Length { return &s.Every }),
		may("flaws", "knots, splits and nails that no part and no saw cut may meet", list("flaws", flawForm(), 0, 100), func(s *S) *[]model.Flaw { return &s.Flaws }),
		may("moisture", "moisture of the wood, per cent", percent(0, 60), func(s *S) *float64 { return &s.Moisture }),
		need("price", "price of one, in your currency", plain("a price", 0, maxPrice), func(s *S) *float64 { return &s.Price }),
		may("count", "how many there are; as many as wanted if nothing is said", count(1, 1000), func(s *S) *int { return &s.Count }),
		may("place", "where it is sold", text(), func(s *S) *string { return &s.Place }),
	}, checkSlab, schema{"dependentRequired": schema{"widths": []string{"every"}, "every": []string{"widths"}}}))
}

func flawForm() form[model.Flaw] {
	type F = model.Flaw
	return inner(record("a flaw", []field[F]{
		need("from", "from the left end of the slab", length(0, 10000), func(f *F) *unit.Length { return &f.From }),
		need("up", "from its base line, the straight or lower edge", length(0, 2000), func(f *F) *unit.Length { return &f.Up }),
		need("length", "along the grain", length(1, 10000), func(f *F) *unit.Length { return &f.Length }),
		need("width", "across the grain", length(1, 2000), func(f *F) *unit.Length { return &f.Width }),
	}, nil))
}

func checkSlab(r *reader, e *entry[model.SlabOffer]) {
	s := &e.v
	s.Pos = r.pos(e.at[""])
	switch {
	case e.at.has("widths") && !e.gave("every"):
		r.wrong(e.at["widths"], "widths without a distance between them", "the key every with that distance", "")
	case e.gave("every") && !e.gave("widths"):
		r.wrong(e.at["every"], "a distance between widths, but no widths", "the key widths with a list of them", "")
	case e.at.has("widths", "every", "length"):
		if span := unit.Length(len(s.Widths)-1) * s.Every; span > s.Length {
			r.wrong(e.at["widths"], fmt.Sprintf("%d widths, %s mm apart, reach over %s mm", len(s.Widths), mm(s.Every), mm(span)),
				fmt.Sprintf("at most the length of the slab, %s mm", mm(s.Length)), "")
		}
	}
}

func barForm() form[model.BarOffer] {
	type B = model.BarOffer
	var sections []string
	for _, a := range stock.Angles() {
		sections = append(sections, a.Name)
	}
	return inner(record("a bar", []field[B]{
		need("section", "section of the bar: an equal steel angle, legs and thickness in mm", word("a steel angle", sections...), func(b *B) *string { return &b.Section }),
		need("length", "length of one bar", length(100, 20000), func(b *B) *unit.Length { return &b.Length }),
		need("price", "price of one bar, in your currency", plain("a price", 0, maxPrice), func(b *B) *float64 { return &b.Price }),
		may("count", "how many there are; as many as wanted if nothing is said", count(1, 1000), func(b *B) *int { return &b.Count }),
		may("place", "where it is sold", text(), func(b *B) *string { return &b.Place }),
	}, func(r *reader, e *entry[B]) { e.v.Pos = r.pos(e.at[""]) }))
}

func houseForm() form[model.House] {
	type H = model.House
	return inner(record("a house section", []field[H]{
		may("way", "what a slab passes from the street to the room, in this order", list("passages", passageForm(), 0, 50), func(h *H) *[]model.Passage { return &h.Way }),
		may("climate", "the wood as it comes, and the air of the room over the year", climateForm(), func(h *H) *model.Climate { return &h.Climate }),
	}, func(r *reader, e *entry[H]) { e.v.Pos = r.pos(e.at[""]) }))
}

// passageForm describes a step of the way in; each kind has its own measures.
func passageForm() form[model.Passage] {
	type P = model.Passage
	clear := length(100, 10000)
	width := need("width", "clear width", clear, func(p *P) *unit.Length { return &p.Width })
	height := need("height", "clear height", clear, func(p *P) *unit.Length { return &p.Height })
	room := may("height", "clear height", clear, func(p *P) *unit.Length { return &p.Height })
	depth := need("length", "inner length", clear, func(p *P) *unit.Length { return &p.Length })
	diagonal := may("diagonal", "longest thing that goes in at a slant", clear, func(p *P) *unit.Length { return &p.Diagonal })
	turn := need("turn", "width of the way after the turn", clear, func(p *P) *unit.Length { return &p.Turn })
	pitch := need("pitch", "slope of the stair", angle(5, 80), func(p *P) *unit.Angle { return &p.Pitch })
	measures := map[string][]field[P]{
		"door": {width, height}, "corridor turn": {width, turn, room}, "stair": {width, pitch, height},
		"lift": {width, depth, height, diagonal}, "car": {width, depth, height, diagonal},
	}
	var kinds []kind[P]
	for _, k := range model.PassageKinds {
		fields := append([]field[P]{
			may("name", "what it is called", text(), func(p *P) *string { return &p.Name }),
			need("kind", "kind of passage", word("this kind", k), func(p *P) *string { return &p.Kind }),
		}, measures[k]...)
		kinds = append(kinds, kind[P]{k, inner(record("a "+k, fields, func(r *reader, e *entry[P]) { e.v.Pos = r.pos(e.at[""]) }))})
	}
	return byWord("a passage", "kind", "a kind of passage", kinds)
}

func mm(l unit.Length) string { return unit.Style{}.Length(l) }
