package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// reading is one tape reading.
func reading(from, to survey.Point, l unit.Length) survey.Reading {
	return survey.Reading{ID: string(from + "-" + to), Points: []survey.Point{from, to}, Length: l}
}

// measured is an alcove 1600 wide and 1200 deep, measured with a tape. Its back
// wall bulges by 2 mm.
func measured() *model.Room {
	r, err := model.NewRoom(model.RoomPlan{
		At:      750,
		Corners: []model.CornerPlan{{Name: "A"}, {Name: "B", Bend: "in"}, {Name: "C", Bend: "in"}, {Name: "D"}},
		Walls: []model.WallPlan{
			{Name: "left", From: "A", To: "B", Make: model.Brick},
			{Name: "back", From: "B", To: "C", Make: model.Brick, Bow: 2},
			{Name: "right", From: "C", To: "D", Make: model.Brick},
		},
		Readings: []survey.Reading{
			reading("A", "B", 1200), reading("B", "C", 1600), reading("C", "D", 1200),
			reading("A", "D", 1600), reading("A", "C", 2000), reading("B", "D", 2000),
		},
		Floor: []model.FloorMark{{Corner: "A", Height: 0}, {Corner: "D", Height: -8}},
	})
	if err != nil {
		panic(err)
	}
	return r
}

// niched is a room with a niche 800 wide and 250 deep in its back wall.
func niched() *model.Room {
	r, err := model.NewRoom(model.RoomPlan{
		At: 750,
		Corners: []model.CornerPlan{{Name: "A"}, {Name: "B", Bend: "in"}, {Name: "C", Bend: "out"}, {Name: "D", Bend: "in"},
			{Name: "E", Bend: "in"}, {Name: "F", Bend: "out"}, {Name: "G", Bend: "in"}, {Name: "H"}},
		Walls: []model.WallPlan{{Name: "left", From: "A", To: "B"}, {Name: "cheek left", From: "C", To: "D"},
			{Name: "niche", From: "D", To: "E"}, {Name: "cheek right", From: "E", To: "F"}, {Name: "right", From: "G", To: "H"}},
		Readings: []survey.Reading{
			reading("A", "B", 1200), reading("B", "C", 800), reading("C", "D", 250), reading("D", "E", 800), reading("E", "F", 250),
			reading("F", "G", 800), reading("G", "H", 1200), reading("A", "C", 1442.2), reading("B", "D", 838.2), reading("C", "E", 838.2),
			reading("D", "F", 838.2), reading("E", "G", 838.2), reading("F", "H", 1442.2), reading("A", "H", 2400),
			reading("B", "G", 2400), reading("A", "G", 2683.3), reading("B", "H", 2683.3), reading("C", "F", 800), reading("A", "F", 2000),
		},
	})
	if err != nil {
		panic(err)
	}
	return r
}

// listParts lists the parts of a design as a workshop would read them.
func listParts(d *model.Design) {
	d.Finish()
	for _, f := range d.Faults() {
		fmt.Println("!", f.Why)
	}
	for _, p := range d.Parts {
		fmt.Printf("%s: %s\n", p.ID, p.Size())
	}
}

// A desk in a dozen lines: a worktop between three walls on two angles.
func Example() {
	room := measured()
	d := model.NewDesign("desk", room)
	d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 4).Depth(600).SurfaceAt(750).Eased(2))
	d.Add("angle left", model.Angle(stock.L50x50x6).Along(room.Wall("left")).Under("worktop"))
	d.Add("angle right", model.Angle(stock.L50x50x6).Along(room.Wall("right")).Under("worktop"))
	d.Finish()
	for _, p := range d.Parts {
		fmt.Printf("%s: %s, %s, %.1f kg\n", p.ID, p.Material, p.Size(), float64(p.Mass()))
	}
	// Output:
	// worktop: European ash, 1594.0 x 600.0 x 45, 30.1 kg
	// angle left: steel S235, L50x50x6 x 562.0, 2.5 kg
	// angle right: steel S235, L50x50x6 x 562.0, 2.5 kg
}

// Tape readings become a room: corners with their uncertainty, walls between
// them, and what nobody could see, such as the angles.
func ExampleNewRoom() {
	room := measured()
	c, _ := room.Corner("C")
	fmt.Printf("C is at %.0f, %.0f; the angle there is %.1f degrees\n", float64(c.At.X), float64(c.At.Y), c.Angle.Degrees())
	back := room.Wall("back")
	fmt.Printf("the back wall is %.0f long, give or take %.1f\n", float64(back.Length()), float64(2*back.SD))
	middle := back.Face(750)[len(back.Face(750))/2]
	fmt.Printf("it bulges to %.0f in its middle; left of it is %s, right of it %s\n", float64(middle.Y), back.Previous().Name, back.Next().Name)
	fmt.Printf("the floor under the middle of the front is %.0f lower than at A\n", float64(-room.FloorAt(geom.V(800, -1200))))
	// Output:
	// C is at 1600, 0; the angle there is 90.0 degrees
	// the back wall is 1600 long, give or take 2.2
	// it bulges to -2 in its middle; left of it is left, right of it right
	// the floor under the middle of the front is 4 lower than at A
}

// A reading that is missing is named.
func ExampleNewRoom_missing() {
	_, err := model.NewRoom(model.RoomPlan{
		Corners:  []model.CornerPlan{{Name: "A"}, {Name: "B"}, {Name: "C"}, {Name: "D"}},
		Readings: []survey.Reading{reading("A", "B", 1200), reading("B", "C", 1600), reading("C", "D", 1200), reading("A", "D", 1600)},
	})
	fmt.Println(err)
	// Output:
	// A hangs free (and with it D): the readings do not hold it; measure A to C or B to D
}

// Straight runs in front of everything between two corners; Across goes from
// corner to corner, such as over the mouth of a niche.
func ExampleRoom_Straight() {
	room := niched()
	d := model.NewDesign("shelves", room)
	d.Add("over the niche", model.Shelf(stock.Oak, 30).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Straight("B", "G")).
		Gaps(3, 3).Depth(200).UndersideAt(1300))
	d.Add("across its mouth", model.Shelf(stock.Oak, 30).
		Between(room.Wall("cheek left"), room.Wall("cheek right")).Against(room.Across("C", "F")).
		Gaps(3, 3).Depth(60).UndersideAt(1000))
	listParts(d)
	// Output:
	// over the niche: 2394.0 x 200.0 x 30
	// across its mouth: 794.0 x 60.0 x 30
}

// A square cut ends a shelf anywhere on a wall.
func ExampleWall_Mark() {
	room := measured()
	back := room.Wall("back")
	d := model.NewDesign("shelf", room)
	d.Add("shelf", model.Shelf(stock.Oak, 30).
		Between(back.Mark(300), back.MarkFromRight(100)).Against(back.Gap(2)).
		Depth(200).UndersideAt(1300))
	d.Add("at the right", model.Shelf(stock.Oak, 30).
		Between(room.Straight("B", "C").MarkFromRight(500), room.Wall("right").Gap(1)).Against(room.Across("B", "C").Gap(5)).
		Depth(200).UndersideAt(1600))
	d.Add("at the left", model.Shelf(stock.Oak, 30).
		Between(room.Wall("left").Gap(1), room.Straight("B", "C").Mark(500)).Against(back.Gap(2)).
		Depth(200).UndersideAt(1600))
	listParts(d)
	// Output:
	// shelf: 1200.0 x 200.0 x 30
	// at the right: 499.0 x 200.0 x 30
	// at the left: 499.0 x 200.0 x 30
}

// A wall is a line at every height, and a face that bows. Its hull is what
// nothing of it passes into the room.
func ExampleWall_Hull() {
	room := measured()
	back := room.Wall("back")
	fmt.Printf("the line at 1400 is at %.0f, the hull from 700 to 750 at %.0f\n", float64(back.LineAt(1400).P.Y), float64(back.Hull(700, 750).P.Y))
	fmt.Printf("the chord runs %.0f to the right\n", float64(back.Chord().D.X))
	fmt.Printf("the middle of the walls is in the room: %v\n", room.Plan(750).Contains(room.Centre()))
	fmt.Printf("corner B, at least %.1f degrees\n", model.CornerAngle(room.Wall("left"), back).Degrees())
	// Output:
	// the line at 1400 is at 0, the hull from 700 to 750 at -2
	// the chord runs 1600 to the right
	// the middle of the walls is in the room: true
	// corner B, at least 89.9 degrees
}

// A word that is nearly right finds its fellow.
func ExampleNearest() {
	fmt.Println(model.Nearest("lfet", []string{"left", "back", "right"}))
	// Output:
	// left
}
