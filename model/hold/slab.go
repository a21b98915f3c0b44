package hold

import (
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/calc/plate"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// rollingShare is the rolling shear modulus as a share of the shear modulus:
// a tenth, EN 14080 and common practice.
const rollingShare = 0.1

// poisson is the contraction across the grain for strain along it, hardwoods:
// order of the USDA Wood Handbook, Table 5-1, from memory.
const poisson = 0.43

// steelModulus is that of EN 1993-1-1, N/mm2.
const steelModulus = 210000

// plateOf makes the plate of a slab in its own axes: what both faces have in
// common, less what goes through; thinner at grooves and pockets. Pilot holes
// and bores into edges are too small to count.
func plateOf(p *model.Part, v variant) plate.Plate {
	s, c := p.Slab, v.class
	out := s.TopOutline().Intersect(s.UnderOutline())
	var gone []geom.Region
	var cuts []plate.Cut
	for _, f := range v.featuresOf(p) {
		switch f.Kind {
		case model.Through, model.CutOut:
			gone = append(gone, f.Outline)
		case model.Groove, model.Pocket:
			cuts = append(cuts, plate.Cut{Region: f.Outline, Depth: f.Depth})
			if f.Lid != (model.Lid{}) { // a lid that is let in carries nothing
				cuts = append(cuts, plate.Cut{Region: f.Rebate(), Depth: f.Lid.Thick})
			}
		}
	}
	thick := s.Thickness + v.thicker
	return plate.Plate{
		Outline: largest(out.Minus(gone...)), Thick: thick, Thinner: plate.Carved(thick, cuts),
		Wood: plate.Wood{
			Along: c.ModulusAlong, Over: c.ModulusOver, Poisson: poisson, Shear: c.ShearModulus,
			ShearAlong: c.ShearModulus, ShearRolling: rollingShare * c.ShearModulus, Density: s.Species.Density,
		},
	}
}

// largest drops what cuts have parted from a plate.
func largest(r geom.Region) geom.Region {
	var best geom.Region
	for _, p := range r.Pieces() {
		if p.Area() > best.Area() {
			best = p
		}
	}
	return best
}

// support is one carrier of a slab: a steel angle, a cleat, a rod, or a post tried
// out as a remedy.
type support struct {
	part     *model.Part
	stations []station
	screws   []screw
	beside   bool // carries a slab that is joined to the one looked at
}

// station is a strip of a leg across its width, or of a rod along it: the links
// at its points, and where they stand.
type station struct {
	along  unit.Length // along the carrier
	width  unit.Length // share of the carrier's length
	points []bearing
}

// bearing is one point of contact.
type bearing struct {
	link     int
	fromHeel unit.Length
	area     unit.Area // of wood pressed
	at       geom.Vec  // in the slab's axes
}

type screw struct {
	hole model.BracketHole
	link int
	at   geom.Vec
}

// stationStep is the distance of the stations along a carrier.
const stationStep unit.Length = 40

// build puts a slab on its carriers, and the slabs that are joined to it on
// theirs.
func build(d *model.Design, p *model.Part, v variant) (plate.Assembly, []support, []seam) {
	a := plate.Assembly{Plates: []plate.Plate{plateOf(p, v)}}
	out := carry(&a, d, 0, p, v)
	if v.prop != nil {
		out = append(out, onProp(&a, 0, *v.prop, 60))
	}
	beside, seams := neighbours(&a, d, p, v)
	return a, append(out, beside...), seams
}

// carry puts the n-th plate of an assembly, that of a slab, on its carriers.
func carry(a *plate.Assembly, d *model.Design, n int, p *model.Part, v variant) []support {
	var out []support
	for _, c := range append(slices.Clone(d.Parts), v.extra...) {
		switch {
		case c.Angle != nil && c.Angle.Under == p.ID:
			out = append(out, onAngle(a, n, p, c, v))
		case c.Cleat != nil && c.Cleat.Under == p.ID:
			out = append(out, onCleat(a, n, p, c))
		case c.Post != nil && c.Post.Under == p.ID:
			at := p.Slab.Pose.Unplan(c.Post.Middle)
			if c.ID == v.post {
				at = at.Add(v.way)
			}
			s := onProp(a, n, at, c.Post.Dia)
			s.part = c
			out = append(out, s)
		case c.Rod != nil && c.Rod.Shelf == p.ID && v.moreRods == 0:
			out = append(out, onRod(a, n, p, c, boreOf(p, c.ID)))
		}
	}
	if v.moreRods > 0 {
		out = append(out, evenRods(a, d, n, p, len(rodsOf(d, p))+v.moreRods)...)
	}
	return out
}

// yielding is how much a square millimetre of wood yields under a bearing: half
// the thickness is pressed together, across the grain, N/mm per mm2.
func yielding(p plate.Plate) float64 { return p.Wood.Over / (float64(p.Thick) / 2) }

// onAngle puts the slab on the seat leg of an angle: at every station a strip of
// the leg that bends as a cantilever from the face of the wall leg, touched at
// its toe and at two and one third of the way to it. Screws as drawn pull.
func onAngle(a *plate.Assembly, n int, slab, c *model.Part, v variant) support {
	an, wood := c.Angle, a.Plates[n]
	s := support{part: c}
	section := v.sectionOf(an)
	root, toe := section.Thickness, section.Leg
	if an.LegUp {
		toe -= section.Toe
	}
	beyond := spread(slab, an, (toe-root)/3)
	steps := max(2, int(math.Ceil(float64(an.Length/stationStep))))
	for i := range steps + 1 {
		st := station{along: an.Length * unit.Length(i) / unit.Length(steps), width: an.Length / unit.Length(steps)}
		if i == 0 || i == steps {
			st.width /= 2
		}
		var arms []float64
		for k := 1.0; k <= 3; k++ {
			arm := (toe - root) * unit.Length(k/3)
			at := slab.Slab.Pose.Unplan(an.Pose().Plan(geom.V(st.along, -root-arm)))
			cut := st.along < an.Left.Short(root+arm) || st.along > an.Length-an.Right.Short(root+arm)
			if cut || !wood.Outline.Contains(at) {
				continue
			}
			area := unit.Area(float64(st.width) * float64(toe-root) / 3)
			st.points = append(st.points, bearing{link: len(a.Links), fromHeel: root + arm, area: area + unit.Area(st.width*beyond), at: at})
			arms = append(arms, float64(arm))
			a.Links = append(a.Links, plate.Link{
				On: plate.Spot{Plate: n, At: at}, Ground: plate.Ground{Body: len(a.Bodies) + 1, Point: len(arms) - 1},
				Stiffness: yielding(wood) * float64(area), Starts: k == 3,
			})
		}
		if len(arms) == 0 {
			continue
		}
		inertia := float64(st.width) * math.Pow(float64(section.Thickness), 3) / 12
		a.Bodies = append(a.Bodies, plate.Body{Stiffness: cantilever(arms, steelModulus*inertia)})
		s.stations = append(s.stations, st)
	}
	for _, h := range an.Holes {
		if h.Leg == model.SeatLeg {
			s.screws = append(s.screws, onScrew(a, n, slab, an, section, h))
		}
	}
	return s
}

// spread is how much longer than a strip of contact the wood helps to bear, where
// the grain runs across the leg: up to 30 mm and the strip's own length, inwards
// only (EN 1995-1-1 6.1.5, from memory).
func spread(slab *model.Part, on model.Bracket, strip unit.Length) unit.Length {
	turn := on.On().Wall.Chord().D.Angle() - slab.Slab.Pose.Turn
	if math.Abs(math.Sin(float64(turn))) < math.Sqrt2/2 {
		return 0
	}
	return min(30, strip)
}

// screwPerMM2 is the axial stiffness of a wood screw per millimetre of thread
// diameter and of length in the wood: 25 d l, N/mm, as in technical approvals
// of screws, from memory.
const screwPerMM2 = 25

// onScrew lets a screw hold the slab down on the leg. The leg bends with it over
// a width of twice the lever.
func onScrew(a *plate.Assembly, n int, slab *model.Part, an *model.AnglePart, section stock.AngleSection, h model.BracketHole) screw {
	arm := float64(h.FromHeel - section.Thickness)
	leg := steelModulus * 2 * arm * math.Pow(float64(section.Thickness), 3) / 12 * 3 / (arm * arm * arm)
	at, thread := threadIn(slab, an, h)
	return pulling(a, n, h, at, 1/(1/leg+1/thread))
}

// pulling adds the link of a screw.
func pulling(a *plate.Assembly, n int, h model.BracketHole, at geom.Vec, stiffness float64) screw {
	out := screw{hole: h, link: len(a.Links), at: at}
	a.Links = append(a.Links, plate.Link{On: plate.Spot{Plate: n, At: at}, Stiffness: stiffness, Acts: plate.Pull})
	return out
}

// threadIn is where a screw stands in a slab, in its axes, and how stiffly its
// thread holds there, N/mm.
func threadIn(slab *model.Part, b model.Bracket, h model.BracketHole) (at geom.Vec, stiffness float64) {
	at = slab.Slab.Pose.Unplan(b.Pose().Plan(geom.V(h.X, -h.FromHeel)))
	into := unit.Length(20)
	dia := h.Dia
	near := h.Slot/2 + 1 // in a slot the screw stands off the middle
	for _, f := range slab.Slab.Features {
		if d := f.At.Sub(at).Len(); f.Kind == model.Pilot && d < near {
			near, into, dia = d, f.Depth, f.Dia/0.7 // hardwood is drilled at about 0.7 of the thread
		}
	}
	return at, screwPerMM2 * float64(dia) * float64(into)
}

// cantilever is the stiffness matrix between points of a beam at the given
// lever arms from where it is held, with bending stiffness ei in N mm2: the
// inverse of the flexibilities x2 (3 y - x) / (6 E I), x <= y, any handbook.
func cantilever(arms []float64, ei float64) [][]float64 {
	n := len(arms)
	f := make([][]float64, n)
	for i := range f {
		f[i] = make([]float64, n)
		for j := range f[i] {
			x, y := min(arms[i], arms[j]), max(arms[i], arms[j])
			f[i][j] = x * x * (3*y - x) / (6 * ei)
		}
	}
	return inverse(f)
}

// inverse of a small positive definite matrix (Gauss-Jordan).
func inverse(a [][]float64) [][]float64 {
	n := len(a)
	out := make([][]float64, n)
	for i := range out {
		out[i] = make([]float64, n)
		out[i][i] = 1
	}
	for k := range n {
		p := a[k][k]
		for c := range n {
			a[k][c] /= p
			out[k][c] /= p
		}
		for r := range n {
			if r == k {
				continue
			}
			f := a[r][k]
			for c := range n {
				a[r][c] -= f * a[k][c]
				out[r][c] -= f * out[k][c]
			}
		}
	}
	return out
}

// onRod hangs the shelf on a rod that is held in the wall from its diameter
// behind the wall's face on (choice: the mouth of the hole crumbles). The bore
// holds the rod either way at its mouth, its middle and its end.
func onRod(a *plate.Assembly, n int, shelf, c *model.Part, bore model.Feature) support {
	r, wood := c.Rod, a.Plates[n]
	e := shelf.Slab.Edges[bore.Edge]
	in := e.End.Sub(e.Start).Unit().Left().Mul(-1)
	st := station{width: r.Dia}
	var arms []float64
	for k := range 3 {
		deep := max(1, r.InShelf*unit.Length(k)/2-1)
		at := bore.At.Add(in.Mul(float64(deep)))
		if !wood.Outline.Contains(at) {
			continue
		}
		share := float64(r.InShelf) / 2
		if k != 1 {
			share /= 2
		}
		arms = append(arms, float64(r.Dia+r.Gap+deep))
		st.points = append(st.points, bearing{link: len(a.Links), fromHeel: r.Gap + deep, area: unit.Area(share * float64(r.Dia)), at: at})
		a.Links = append(a.Links, plate.Link{
			On: plate.Spot{Plate: n, At: at}, Ground: plate.Ground{Body: len(a.Bodies) + 1, Point: len(arms) - 1},
			Stiffness: yielding(wood) * share * float64(r.Dia), Acts: plate.Both,
		})
	}
	if len(arms) > 0 {
		a.Bodies = append(a.Bodies, plate.Body{Stiffness: cantilever(arms, steelModulus*math.Pi*math.Pow(float64(r.Dia), 4)/64)})
	}
	return support{part: c, stations: []station{st}}
}

// boreOf is the bore of a shelf for one of its rods.
func boreOf(shelf *model.Part, rod string) model.Feature {
	var bore model.Feature
	for _, f := range shelf.Slab.Features {
		if f.Kind == model.Bore && f.For == rod {
			bore = f
		}
	}
	return bore
}

// onProp stands the slab on the firm top of a prop, a square as wide as it.
func onProp(a *plate.Assembly, n int, at geom.Vec, wide unit.Length) support {
	st := station{width: wide}
	area := unit.Area(wide * wide / 4)
	for _, x := range []unit.Length{-wide / 4, wide / 4} {
		for _, y := range []unit.Length{-wide / 4, wide / 4} {
			spot := at.Add(geom.V(x, y))
			st.points = append(st.points, bearing{link: len(a.Links), area: area, at: spot})
			a.Links = append(a.Links, plate.Link{On: plate.Spot{Plate: n, At: spot}, Stiffness: yielding(a.Plates[n]) * float64(area), Starts: true})
		}
	}
	return support{stations: []station{st}}
}
