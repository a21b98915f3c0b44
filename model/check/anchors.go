package check

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// Places of wall fixings.
const (
	leastFixings              = 2
	studReach     unit.Length = 15  // from a stud's middle line
	arrisDistance unit.Length = 100 // twice an embedment of 50 mm
	widestPitch   unit.Length = 400
)

var anchorRule = Rule{
	ID: "wall-anchors", Title: "Every wall fixing has a place",
	Basis: "keep-outs and studs as surveyed; on masonry about three fixings per metre and twice the embedment (taken as 50 mm) from an outside corner: " + practice,
	Why:   "A hole in a pipe, a cable or thin air is found when it is too late. What a fixing carries is not checked here: that needs the approval of the anchor that was bought.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			b := p.Bracket()
			if b == nil {
				continue
			}
			f := fixings{what: p.ID, parts: []string{p.ID}, wall: b.On().Wall, places: bracketFixings(b)}
			out = append(out, moved(p)...)
			out = append(out, f.judge()...)
			if g, ok := spacing(p); ok {
				out = append(out, g)
			}
		}
		out = append(out, rodFixings(s.Design)...)
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Fail, Why: "Nothing is fixed to any wall.", Fix: []find.Fix{hint("carry the slab on angles, cleats or rods")}})
		}
		return out
	},
}

func bracketFixings(b model.Bracket) []fixing {
	var out []fixing
	for _, h := range b.On().In(model.WallLeg) {
		out = append(out, fixing{name: h.Name, s: b.On().Start + h.X, z: b.HeightOf(h)})
	}
	return out
}

// moved tells which holes had to give way, and which found no place.
func moved(p *model.Part) []find.Finding {
	a := p.Bracket().On()
	base := find.Finding{Parts: []string{p.ID}, Walls: []string{a.Wall.Name}}
	var out []find.Finding
	if len(a.Moved) > 0 {
		f := base
		f.Status, f.Title = find.Note, "A wall fixing gave way"
		f.Why = fmt.Sprintf("On %s: %s.", p.ID, strings.Join(a.Moved, "; "))
		out = append(out, f)
	}
	if len(a.Unmatched) > 0 {
		f := base
		f.Status, f.Title = find.Warn, "A wall fixing was given up"
		f.Why = fmt.Sprintf("On %s: %s.", p.ID, strings.Join(a.Unmatched, "; "))
		f.Fix = []find.Fix{hint("find out exactly where the hidden thing runs, or bridge it with fixings on both sides")}
		out = append(out, f)
	}
	return out
}

// spacing warns where a bracket on masonry goes far without a fixing.
func spacing(p *model.Part) (find.Finding, bool) {
	a := p.Bracket().On()
	places := bracketFixings(p.Bracket())
	if len(places) < leastFixings || a.Wall.Make == model.Stud || a.Wall.Make == model.Plasterboard {
		return find.Finding{}, false
	}
	widest, from := unit.Length(0), unit.Length(0)
	for i := 1; i < len(places); i++ {
		if d := places[i].s - places[i-1].s; d > widest {
			widest, from = d, places[i-1].s
		}
	}
	if widest <= widestPitch {
		return find.Finding{}, false
	}
	f := find.Finding{
		Title: "Fixings follow each other closely", Parts: []string{p.ID}, Walls: []string{a.Wall.Name},
		Measured: mm(widest), Required: limit(find.AtMost, widestPitch),
		Why: fmt.Sprintf("%s has no wall fixing between %.0f and %.0f mm from its left end.", capital(p.ID), float64(from-a.Start), float64(from-a.Start+widest)),
		Fix: []find.Fix{hint("add a fixing in between, or choose a smaller pitch")},
	}.Judge()
	f.Status = find.Warn
	return f, true
}

// rodFixings judges the rods of every shelf, wall by wall.
func rodFixings(d *model.Design) []find.Finding {
	var order []string
	sets := map[string]*fixings{}
	for _, p := range d.Parts {
		if p.Rod == nil {
			continue
		}
		key := p.Rod.Shelf + "\x00" + p.Rod.Wall.Name
		x := sets[key]
		if x == nil {
			x = &fixings{what: p.Rod.Shelf, wall: p.Rod.Wall}
			sets[key] = x
			order = append(order, key)
		}
		x.parts = append(x.parts, p.ID)
		x.places = append(x.places, fixing{name: p.ID, s: p.Rod.At, z: p.Rod.Height})
	}
	var out []find.Finding
	for _, key := range order {
		out = append(out, sets[key].judge()...)
	}
	return out
}
