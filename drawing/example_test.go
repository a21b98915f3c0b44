package drawing_test

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/model/geom"
)

// A builder draws into the free field, puts what belongs together into groups
// and finishes the sheet when the whole set is known.
func Example() {
	size := drawing.A3
	room := drawing.Free(size)[0]
	scale := drawing.FitScale(2300, 650, room)
	board := drawing.Box(room.Min.X+40, room.Min.Y+60, scale.Of(2300), scale.Of(650))

	s := drawing.Sheet{Name: "02-front-board", Title: "Front board", Size: size, Scale: scale.String()}
	s.Add(drawing.Group{ID: "front board", Title: "Front board, ash", Items: []drawing.Item{
		drawing.Outline(board.Corners(), drawing.Normal.Outline()),
		drawing.Write(board.Centre(), "fibre", drawing.Standard, drawing.Middle),
	}})
	s.Add(drawing.Line(geom.V(60, 140), geom.V(60, 200), drawing.Normal.Centre()))

	s.Number, s.Of = 2, 8
	s = drawing.Finish(s, drawing.Block{Number: "PB-02", Revision: "A", Issued: "2026-11-03"})
	fmt.Println(scale, len(s.Items), drawing.Sound(s), drawing.Overlaps(s))
	fmt.Println(drawing.DumpItems(s.Items[:1]))
	// Output:
	// 1:10 5 <nil> []
	// group front board "Front board, ash"
	//   loop 0.5 solid 70,134 300,134 300,199 70,199
	//   text "fibre" 185,166.5 h 3.5 middle turn 0
}
