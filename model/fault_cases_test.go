package model_test

import (
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// mistake is one wrong call, on the line after the one that its function starts.
type mistake struct {
	make func(*model.Design, *model.Room)
	says string
}

// The design of every mistake has a slab "desk" before it.
var mistakes = []mistake{
	// names
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(r.Wall("bakc")))
	}, `there is no wall "bakc" (nearest: "back")`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Between(r.Wall("lift").Mark(100), r.Wall("right")))
	}, `there is no wall "lift" (nearest: "left")`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).Along(r.Wall("q")))
	}, `there is no wall "q"`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(r.Across("B", "X")))
	}, `there is no corner "X"`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(r.Straight("C", "B")))
	}, `corner "C" lies to the right of "B": name the left one first`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(r.Across("B", "B")))
	}, `from corner "B" to itself`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).Under("dsek"))
	}, `there is no slab "dsek" before this line (nearest: "desk")`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).Under("bar"))
	}, `"bar" is no slab, its kind is angle`},
	{func(d *model.Design, r *model.Room) {
		d.Add("desk", good(r))
	}, `there are two parts "desk"`},
	{func(d *model.Design, r *model.Room) {
		d.Add("", good(r))
	}, `a part needs a name`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(d.EdgeOf("desk", "frnt")))
	}, `slab "desk" has no edge "frnt" (nearest: "front")`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(d.EdgeOf("disk", "front")))
	}, `there is no slab "disk" before this line (nearest: "desk")`},
	{func(d *model.Design, r *model.Room) {
		d.SitAt("seat", "shelf", 500, nil)
	}, `there is no slab "shelf" before this line`},

	// nothing where something is needed
	{func(d *model.Design, r *model.Room) {
		d.Add("x", nil)
	}, `there is nothing to add as "x"`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Between(nil, r.Wall("right")))
	}, `needs Between(left, right) and Against(back)`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Between((*model.Wall)(nil), r.Wall("right")))
	}, `a wall is missing`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(nil))
	}, `a wall is missing`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against())
	}, `needs Between(left, right) and Against(back)`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(model.Bound{}))
	}, `a bound without a line`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.Slab(stock.Ash, 45))
	}, `needs a height: SurfaceAt or UndersideAt`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.Slab(stock.Ash, 45))
	}, `needs a Depth, or a slab that its front is Meeting`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.Slab(stock.Species{}, 45))
	}, `a wood without name or density`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.Angle(stock.L50x50x6).Under("desk"))
	}, `needs a wall: Along(room.Wall(...))`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).Along(nil))
	}, `a wall is missing`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.Angle(stock.L50x50x6).Along(r.Wall("back")))
	}, `needs a slab to carry: Under(...)`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.Angle(stock.AngleSection{}).Along(r.Wall("back")))
	}, `an angle section without legs`},
	{func(d *model.Design, r *model.Room) {
		d.AddShelf("x", hung(r))
	}, `hangs on nothing: OnRods(...)`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.RollOut(stock.Ash, 600, 400, 500))
	}, `needs a slab to stand under: Parked(...)`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Serving("light"))
	}, `Serving("light") comes before any work`},
	{func(d *model.Design, r *model.Room) {
		d.KeepFree(model.Zone{Name: "door", Height: 100})
	}, `the space to keep free "door" has no plan`},

	// numbers that are none, and too much of a good thing
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.Slab(stock.Ash, nan))
	}, `the thickness of the slab is no number: 10 to 200 mm can be described`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Depth(-600))
	}, `the depth of the slab is -600 mm: 50 to 3000 mm can be described`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Depth(0))
	}, `the depth of the slab is 0 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Depth(huge))
	}, `the depth of the slab is more than a kilometre`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Gaps(nan, 4))
	}, `the gap at the sides is no number: 0 to 100 mm can be described`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Gaps(3, -inf))
	}, `the gap at the back is less than minus a kilometre`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(r.Wall("back").Gap(nan)))
	}, `the gap to back is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(r.Straight("B", "C").Gap(-1)))
	}, `the gap to B-C is -1 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).SurfaceAt(inf))
	}, `the height of the surface is more than a kilometre`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).UndersideAt(nan))
	}, `the height of the surface is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Eased(30))
	}, `the chamfer is 30 mm: 0 to 20 mm can be described`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Between(r.Wall("back").Mark(nan), r.Wall("right")))
	}, `the square cut on back is no number: 0 to 1600 mm can be described`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Between(r.Wall("back").MarkFromRight(1700), r.Wall("right")))
	}, `the square cut on back is 1700 mm: 0 to 1600 mm can be described`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Front(model.NaturalEdge(model.NaturalStation{Along: nan})))
	}, `the station of the natural edge is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Front(model.NaturalEdge(model.NaturalStation{Top: -5})))
	}, `at the top face, is -5 mm: 0 to 500 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Front(model.NaturalEdge(model.NaturalStation{Along: 300}, model.NaturalStation{Along: 300})))
	}, `two stations at 300 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Front(model.NaturalOf(model.SlabOffer{Widths: []unit.Length{600, nan}, Every: 400}, 5)))
	}, `natural edge beyond its narrowest place, at the top face, is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).ShorterBy(nan))
	}, `the length by which the angle is shorter is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).SetBack(-3, 3))
	}, `the set-back of the left end is -3 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).FreeEnd(inf))
	}, `the set-back of a free end is more than a kilometre`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).ClearOf(nan))
	}, `the gap between angles in a corner is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).Anchored(model.Anchors{Hole: 11, Pitch: 0, End: 40}))
	}, `the pitch of the wall anchors is 0 mm: 50 to 5000 mm can be described`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).Anchored(model.Anchors{Hole: nan, Pitch: 300, End: 40}))
	}, `the hole of the wall anchors is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).ScrewedUp(model.Screws{Hole: 6, Slot: 8, Pitch: inf, End: 60, Pilot: 4, Into: 25}))
	}, `the pitch of the screws is more than a kilometre`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).ScrewedUp(model.Screws{Hole: 6, Slot: 8, Pitch: 300, End: 60}))
	}, `the pilot hole of the screws is 0 mm`},
	{func(d *model.Design, r *model.Room) {
		d.AddShelf("x", hung(r).OnRods(model.Rods{Dia: 16, InWall: 100, InShelf: 100}))
	}, `the pitch of the rods is 0 mm: 100 to 5000 mm can be described`},
	{func(d *model.Design, r *model.Room) {
		d.AddShelf("x", hung(r).OnRods(model.Rods{Dia: 16, InWall: nan, InShelf: 100, Pitch: 400}))
	}, `the depth of the rods in the wall is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.RollOut(stock.Ash, nan, 400, 500))
	}, `the width of the roll-out table is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.RollOut(stock.Ash, 600, 400, 500).Parked("desk", nan, 40))
	}, `the place of the table, from the left end of desk, is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.RollOut(stock.Ash, 600, 400, 500).Boards(nan))
	}, `the thickness of the boards is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.RollOut(stock.Ash, 600, 400, 500).Castors(900))
	}, `the height of the castors is 900 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.RollOut(stock.Ash, 600, 400, 500).Travels(inf))
	}, `the way that the table rolls out is more than a kilometre`},
	{func(d *model.Design, r *model.Room) {
		d.SitAt("seat", "desk", nan, nil)
	}, `seat "seat": its middle is no number from the left end of "desk", whose front is 1594 mm long`},
	{func(d *model.Design, r *model.Room) {
		d.SitAt("seat", "desk", 500, []model.Person{{Name: "Kim", Stature: nan}})
	}, `Kim: stature of NaN mm is not that of an adult`},
	{func(d *model.Design, r *model.Room) {
		d.KeepFree(model.Zone{Name: "door", Plan: geom.Rect(geom.V(0, 0), geom.V(1, 1)), Height: nan})
	}, `the height of the space to keep free is no number`},

	// what does not go together
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Between(r.Wall("back"), r.Wall("right")))
	}, `its edges left and back follow the same wall "back"`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Against(r.Wall("left")))
	}, `its edges left and back follow the same wall "left"`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Between(r.Wall("right"), r.Wall("back")).Against(r.Wall("left")))
	}, `its left bound runs parallel to its back at "left", so they do not meet`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Between(r.Straight("B", "C"), r.Wall("right")))
	}, `edges front and left run parallel and do not meet`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Between(r.Wall("left").Gap(90), r.Wall("back").Mark(80)))
	}, `nothing is left of its back edge between its neighbours; the gaps or the depth are larger than the space`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Meeting("desk", 1))
	}, `has a Depth and a slab that its front is Meeting`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).ShorterBy(100).SetBack(3, 3))
	}, `has a ShorterBy and a SetBack`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).ShorterBy(1590))
	}, `angle "x" would be 10 mm long: too short to be fixed`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", model.RollOut(stock.Ash, 600, 400, 150).Castors(100).Parked("desk", 0, 0))
	}, `castors of 100 mm and boards of 27 mm leave no room`},
	{func(d *model.Design, r *model.Room) {
		d.AddShelf("x", hung(r).OnRods(model.Rods{Dia: 32, InWall: 100, InShelf: 100, Pitch: 400}))
	}, `rods of 32 mm in a shelf of 45 mm: 6 mm at least, and 8 mm of wood above and below`},
	{func(d *model.Design, r *model.Room) {
		d.AddShelf("x", hung(r).OnRods(model.Rods{Dia: 16, InWall: 100, InShelf: 240, Pitch: 400}))
	}, `rods 240 mm deep in a shelf of 250 mm: 20 mm of wood must be left before its front`},
	{func(d *model.Design, r *model.Room) {
		d.AddShelf("x", hung(r).Gaps(3, 40).OnRods(model.Rods{Dia: 16, InWall: 100, InShelf: 100, Pitch: 400}))
	}, `no rod finds a place: no wall runs within 30 mm behind "x"`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).Anchored(model.Anchors{Hole: 36, Pitch: 300, End: 40}))
	}, `a hole for wall anchors 36 mm wide, 30 mm from the heel of L50x50x6, leaves the flat of the leg, which is from 13 to 46.5 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).ScrewedUp(model.Screws{Hole: 6, Slot: 20, Pitch: 300, End: 60, Pilot: 4, Into: 25}))
	}, `a hole for screws 26 mm wide, 37 mm from the heel of L50x50x6, leaves the flat of the leg`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", steel(r).ScrewedUp(model.Screws{Hole: 6, Slot: 8, Pitch: 300, End: 60, Pilot: 4, Into: 45}))
	}, `screws 45 mm into the wood come out at the top of "desk", which is 45 mm thick`},

	// work in the slab
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Eased(3).Pocket("box", model.TopFace, model.At{X: 300, Back: 2}, 80, 60, 20))
	}, `pocket "box" ends in the chamfer of an edge: keep it away from the edge or let it run out`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Hole("cable", model.At{X: 2000, Back: 100}, 60))
	}, `hole "cable" lies outside the slab: the slab is 1594 mm long and 600 mm deep`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Hole("cable", model.At{X: 20, Back: 100}, 60))
	}, `hole "cable" runs out of the slab's edge`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Hole("cable", model.At{X: nan, Back: 100}, 60))
	}, `hole "cable" lies nowhere: its place or its size is no number`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Hole("cable", model.At{X: 300, Back: 100}, -60))
	}, `hole "cable" is -60 mm wide`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Hole("cable", model.At{X: 300, Back: 100}, nan))
	}, `hole "cable" is no number wide`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Groove("run", model.UnderFace, 20, 18, model.At{X: 300, Back: 100}))
	}, `groove "run" runs through two places at least`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Groove("run", model.UnderFace, 20, 18, model.At{X: 300, Back: 100}, model.At{X: 300, Back: 100}))
	}, `groove "run" stays at one place`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Groove("run", model.UnderFace, 20, 50, model.At{X: 300, Back: 100}, model.At{X: 900, Back: 100}))
	}, `groove "run" is 50 mm deep: above 0 and less than the slab's 45 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Groove("run", model.UnderFace, 20, 18, model.At{X: 300, Back: 100}, model.At{X: 900, Back: 100}).Lidded(20, 4))
	}, `groove "run" is 20 mm wide, its lid 20 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Groove("run", model.UnderFace, 20, 18, model.At{X: 300, Back: 100}, model.At{X: 900, Back: 100}).Lidded(30, 18))
	}, `groove "run" is 18 mm deep, its lid 18 mm thick`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Groove("run", model.UnderFace, 20, 18, model.At{X: 300, Back: 100}, model.At{X: 900, Back: 100}).Lidded(0, nan))
	}, `groove "run" is 20 mm wide, its lid 0 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Hole("cable", model.At{X: 300, Back: 100}, 60).Lidded(30, 4))
	}, `Lidded(30, 4) does not follow a groove`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Groove("run", "side", 20, 18, model.At{X: 300, Back: 100}, model.At{X: 900, Back: 100}))
	}, `groove "run" is cut from the face "side"`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Front(model.NaturalEdge(model.NaturalStation{Top: 9, Under: 18})).Groove("run", model.UnderFace, 20, 18, model.At{X: 300, Back: 100}, model.At{X: 300, Back: 700}))
	}, `groove "run" runs across the natural edge: work must end before it`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Pocket("box", model.UnderFace, model.At{X: 300, Back: 100}, 80, 60, 46))
	}, `pocket "box" is 46 mm deep: above 0 and less than the slab's 45 mm`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).Pocket("box", model.UnderFace, model.At{X: 300, Back: 100}, 80, 0, 20))
	}, `pocket "box" measures 80 x 0 mm: both must be above 0`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).CutOut("notch", model.At{X: -300, Back: 100}, 80, 60))
	}, `cut-out "notch" lies outside the slab`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).CutOut("notch", model.At{X: 300, Back: 100}, inf, 60))
	}, `cut-out "notch" lies nowhere`},
	{func(d *model.Design, r *model.Room) {
		d.Add("x", good(r).CutOut("notch", model.At{X: -10, Back: -10}, 3000, 3000))
	}, `nothing is left of it`},
}
