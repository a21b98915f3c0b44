package job

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/unit"
)

// slack is by how much what is on a wall may reach beyond the reading of the
// wall's length: both come from a tape. (Common practice, no source.)
const slack = 5 * unit.MM

// plan holds the parts of a room against each other: every name against the
// corners, every wall against its neighbours, what is on a wall against its
// length. It gives the room as far as it makes sense.
type plan struct {
	r       *reader
	d       *roomDraft
	at      places
	names   []string
	index   map[string]int
	lengths map[int]unit.Length // longest reading of each wall, by its left corner
	taken   map[string]int      // how often each thing was measured
}

// assemble checks a room and gives its plan.
func assemble(r *reader, e entry[roomDraft]) model.RoomPlan {
	p := &plan{r: r, d: &e.v, at: e.at, index: map[string]int{}, lengths: map[int]unit.Length{}, taken: map[string]int{}}
	out := e.v.plan
	out.Corners = p.corners()
	if !e.at.has("corners") {
		return out // every name would be unknown
	}
	for _, b := range e.v.bends {
		if p.known(b.at, b.name, "") {
			c := &out.Corners[p.index[b.name]]
			c.Bend, c.Pos = b.v, r.pos(b.at)
		}
	}
	for _, f := range e.v.floor {
		if p.known(f.at, f.name, "") {
			out.Floor = append(out.Floor, model.FloorMark{Corner: f.name, Height: f.v, Pos: r.pos(f.at)})
		}
	}
	out.Base = p.base()
	out.Readings = p.readings()
	out.Walls = p.walls()
	out.Floor = append(out.Floor, p.floorAt(out.Walls)...)
	return out
}

func (p *plan) corners() []model.CornerPlan {
	var out []model.CornerPlan
	for _, c := range p.d.corners {
		if first, twice := p.index[c.name]; twice {
			p.r.wrong(c.at, "corner "+quoted(c.name)+" a second time", fmt.Sprintf("a name of its own for each corner; %s is corner %d", c.name, first+1), "")
			continue
		}
		p.index[c.name] = len(out)
		p.names = append(p.names, c.name)
		out = append(out, model.CornerPlan{Name: c.name, Pos: p.r.pos(c.at)})
	}
	if p.d.plan.Closed && p.at.has("corners") && len(out) < 3 {
		p.r.wrong(p.at["corners"], fmt.Sprintf("a closed room of %d corners", len(out)), "at least 3 corners", "or closed: no")
	}
	return out
}

// known reports whether a corner exists, and notes a mistake if not. whole is
// the text that names it, if it names more.
func (p *plan) known(at place, name, whole string) bool {
	if _, ok := p.index[name]; ok {
		return true
	}
	read := "no corner " + quoted(name)
	if whole != "" && whole != name {
		read = "no corner " + quoted(name) + ", named in " + quoted(whole)
	}
	p.r.wrong(at, read, "a corner of the room: "+strings.Join(p.names, ", "), nearest(name, p.names))
	return false
}

func (p *plan) allKnown(at place, names []string, whole string) bool {
	ok := true
	for _, n := range names {
		ok = p.known(at, n, whole) && ok
	}
	return ok
}

// wallOf gives the number of the wall between two corners, left to right.
func (p *plan) wallOf(from, to string) (int, bool) {
	i, j := p.index[from], p.index[to]
	n := len(p.names)
	return i, j == i+1 || p.d.plan.Closed && n > 2 && i == n-1 && j == 0
}

// neighbours names the walls that a corner belongs to.
func (p *plan) neighbours(name string) string {
	var list []string
	for i, from := range p.names {
		to := p.names[(i+1)%len(p.names)]
		if _, ok := p.wallOf(from, to); ok && (from == name || to == name) {
			list = append(list, from+"-"+to)
		}
	}
	return strings.Join(list, " and ")
}

func (p *plan) base() (none [2]string) {
	at, b := p.at["base"], p.d.base
	if !p.at.has("base") || !p.allKnown(at, b, strings.Join(b, "-")) {
		return none
	}
	if !p.leftToRight(at, b) {
		return none
	}
	return [2]string{b[0], b[1]}
}

// walls checks the walls and puts them in the order of the corners. A wall that
// nobody described is there all the same, of unknown make.
func (p *plan) walls() []model.WallPlan {
	found := map[int]model.WallPlan{}
	names := map[string]place{}
	for _, e := range p.d.walls {
		i, ok := p.wall(e)
		if !ok {
			continue
		}
		w := p.furnish(e, i)
		if first, twice := found[i]; twice {
			p.r.wrong(e.at[""], fmt.Sprintf("the wall %s-%s a second time", w.From, w.To), fmt.Sprintf("each wall once; the first is in line %d", first.Pos.Line), "")
			continue
		}
		if first, twice := names[w.Name]; twice {
			at, own := e.at["name"]
			if !own {
				at = e.at[""]
			}
			p.r.wrong(at, "a second wall named "+quoted(w.Name), fmt.Sprintf("a name of its own for each wall; the first is in line %d", first.line), "")
		}
		names[w.Name] = e.at[""]
		found[i] = w
	}
	var out []model.WallPlan
	for i, from := range p.names {
		to := p.names[(i+1)%len(p.names)]
		if _, ok := p.wallOf(from, to); !ok {
			continue
		}
		w, ok := found[i]
		if !ok {
			w = model.WallPlan{Name: from + "-" + to, From: from, To: to, Make: model.UnknownWall, StudsFrom: from, Pos: p.r.pos(p.at["walls"])}
		}
		out = append(out, w)
	}
	return out
}

// wall finds the number of a wall by its corners.
func (p *plan) wall(e entry[wallDraft]) (int, bool) {
	from, to := e.v.plan.From, e.v.plan.To
	ok := !e.at.has("from") || p.known(e.at["from"], from, "")
	ok = (!e.at.has("to") || p.known(e.at["to"], to, "")) && ok
	if !ok || !e.at.has("from", "to") {
		return 0, false
	}
	i, ok := p.wallOf(from, to)
	if ok {
		return i, true
	}
	if _, turned := p.wallOf(to, from); turned {
		p.r.wrong(e.at["from"], fmt.Sprintf("a wall from right to left: %s to %s", from, to), "corners as somebody in the room sees them", fmt.Sprintf("write from: %s, to: %s", to, from))
		return 0, false
	}
	p.r.wrong(e.at["to"], fmt.Sprintf("a wall from %s to %s, which are no neighbours", from, to), fmt.Sprintf("one of %s's walls: %s", from, p.neighbours(from)), "")
	return 0, false
}

// furnish checks what is in and on a wall and fills in what was left out.
func (p *plan) furnish(e entry[wallDraft], i int) model.WallPlan {
	w := e.v.plan
	if w.Name == "" {
		w.Name = w.From + "-" + w.To
	}
	if w.Make == "" {
		w.Make = model.UnknownWall
	}
	if !e.at.has("count_from") || !p.onWall(e.at["count_from"], w.StudsFrom, w) {
		w.StudsFrom = w.From
	}
	length, measured := p.lengths[i]
	bowAt := e.at.has("bow_at") && measured
	for _, s := range w.Stations {
		if bowAt && s.Along > length+slack {
			p.r.wrong(e.at["bow_at"], fmt.Sprintf("a bow read at %s mm", mm(s.Along)), fmt.Sprintf("at most the wall's length of %s mm", mm(length)), "")
		}
	}
	if bowAt && !slices.ContainsFunc(w.Stations, func(s model.Station) bool { return s.Along > slack && s.Along < length-slack }) {
		p.r.wrong(e.at["bow_at"], "a bow read at the corners only", "a place between them: at a corner the straightedge touches", fmt.Sprintf("measure one near the middle, at %s mm", mm(unit.Length(math.Round(float64(length)/2)))))
	}
	for _, s := range w.Studs {
		if measured && s > length+slack {
			p.r.wrong(e.at["studs"], fmt.Sprintf("a stud at %s mm", mm(s)), fmt.Sprintf("at most the wall's length of %s mm", mm(length)), "")
		}
	}
	for _, o := range e.v.obstacles {
		v := o.v
		if !o.at.has("from") || !p.onWall(o.at["from"], v.From, w) {
			v.From = w.StudsFrom
		}
		if o.at.has("end") && measured && v.End > length+slack {
			p.r.wrong(o.at["end"], fmt.Sprintf("%s ends at %s mm", v.Name, mm(v.End)), fmt.Sprintf("at most the wall's length of %s mm", mm(length)), "")
		}
		if !o.gave("top") {
			v.Top = p.d.plan.Ceiling
			p.openTop(o)
		}
		w.Obstacles = append(w.Obstacles, v)
	}
	return w
}

// floorAt looks up the walls before which the floor was measured.
func (p *plan) floorAt(walls []model.WallPlan) []model.FloorMark {
	var out []model.FloorMark
	for _, e := range p.d.floorAt {
		f := e.v
		f.Pos = p.r.pos(e.at[""])
		if !e.at.has("wall", "along", "is") {
			continue
		}
		var names []string
		i := slices.IndexFunc(walls, func(w model.WallPlan) bool { names = append(names, w.Name); return w.Name == f.Wall })
		if i < 0 {
			p.r.wrong(e.at["wall"], "no wall "+quoted(f.Wall), "a wall of the room: "+strings.Join(names, ", "), nearest(f.Wall, names))
			continue
		}
		if length, measured := p.lengths[p.index[walls[i].From]]; measured && f.Along > length+slack {
			p.r.wrong(e.at["along"], fmt.Sprintf("a place at %s mm", mm(f.Along)), fmt.Sprintf("at most the wall's length of %s mm", mm(length)), "")
		}
		out = append(out, f)
	}
	if p.at.has("floor_at") && len(out) > 0 && !slices.ContainsFunc(p.d.floor, func(f named[unit.Length]) bool { return f.v == 0 }) {
		p.r.wrong(p.at["floor_at"], "heights of the floor without a corner that they count from", "the key floor with a corner at 0, such as floor: {A: 0}", "")
	}
	return out
}

// openTop checks an obstacle that goes up to the ceiling.
func (p *plan) openTop(o entry[model.ObstaclePlan]) {
	switch {
	case !p.at.has("ceiling"):
		p.r.wrong(o.at[""], "an obstacle without a top in a room without a ceiling", "its upper edge above the floor", "give top here, or ceiling for the room")
	case o.v.Bottom >= p.d.plan.Ceiling:
		p.r.wrong(o.at["bottom"], fmt.Sprintf("an obstacle from %s mm up to the ceiling at %s mm", mm(o.v.Bottom), mm(p.d.plan.Ceiling)), "a bottom below the ceiling", "")
	}
}

// onWall reports whether a corner is an end of a wall, and notes it if not.
func (p *plan) onWall(at place, name string, w model.WallPlan) bool {
	if !p.known(at, name, "") {
		return false
	}
	if name == w.From || name == w.To {
		return true
	}
	p.r.wrong(at, fmt.Sprintf("corner %s, which is not on the wall %s-%s", quoted(name), w.From, w.To), fmt.Sprintf("%s or %s", w.From, w.To), "")
	return false
}
