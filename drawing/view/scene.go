package view

import "slabwright/model/geom"

// Role is what an item is to the drawing.
type Role uint8

// The roles, in the order in which lines of the same kind win where they fall
// together. Zones and ghosts are drawn over everything else: they hide nothing
// and nothing hides them.
const (
	Made     Role = iota // a part to be made
	Wall                 // the building
	Obstacle             // what is there already: pipes, sockets, furniture
	Zone                 // room to keep free
	Ghost                // end positions, people, neighbours shown as a hint
)

var roleNames = [...]string{"made", "wall", "obstacle", "zone", "ghost"}

// String names the role.
func (r Role) String() string {
	if int(r) < len(roleNames) {
		return roleNames[r]
	}
	return "unknown role"
}

// over tells whether the role is drawn over everything else.
func (r Role) over() bool { return r >= Zone }

// Item is one thing in a scene. Its faces are the closed skin of one or more
// solids; open skins are drawn with their borders, and faces seen from behind
// hide nothing.
type Item struct {
	ID, Title  string
	Mark       int // number in the parts list; 0: none
	Role       Role
	Faces      []geom.Face
	DropHidden bool // leave out its hidden lines
	SeeThrough bool // it hides nothing, itself included
}

// Scene is what a view shows. The items keep their order: all results name
// them by their index.
type Scene struct{ Items []Item }

// DropHidden gives the scene with the hidden lines of all items of these roles
// left out.
func (s Scene) DropHidden(roles ...Role) Scene {
	return s.change(roles, func(it *Item) { it.DropHidden = true })
}

// SeeThrough gives the scene in which items of these roles hide nothing.
func (s Scene) SeeThrough(roles ...Role) Scene {
	return s.change(roles, func(it *Item) { it.SeeThrough = true })
}

func (s Scene) change(roles []Role, do func(*Item)) Scene {
	items := make([]Item, len(s.Items))
	copy(items, s.Items)
	for i := range items {
		for _, r := range roles {
			if items[i].Role == r {
				do(&items[i])
			}
		}
	}
	return Scene{items}
}
