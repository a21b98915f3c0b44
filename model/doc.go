// Package model is the vocabulary of slabwright and the language in which a
// desk is described: the room and its walls, slabs, steel angles, shelves, a
// roll-out table, the people who sit and stand there. A design is a Go function
// of a room and of parameters; it reads as a joiner would tell it:
//
//	top := model.Slab(stock.Ash, 45).
//		Between(room.Wall("left"), room.Wall("right")).
//		Against(room.Wall("back")).
//		Gaps(4, 6).Depth(780).Front(model.NaturalEdge())
//	d.Add("top", top.SurfaceAt(750))
//	d.Add("back angle", model.Angle(stock.L50x50x6).Along(room.Wall("back")).Under("top"))
//
// Mistakes do not panic: they travel inside the values and come out of
// Design.Faults as findings that name the line of the call. The rest of the
// design is built; parts that need one which was left out are unknown.
package model
