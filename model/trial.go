package model

// Trial places a piece in a finished design as Add would have done, without adding
// it, so that it can be tried out; nil where it finds no place. The piece must not
// work the part that it is for: an angle without screws.
func (d *Design) Trial(id string, p Piece) *Part {
	part, _ := p.place(d, id)
	if part != nil {
		part.ID = id
	}
	return part
}
