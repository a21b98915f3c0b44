package body

// Sitter is what a desk must know of somebody who sits at it, barefoot.
type Sitter struct {
	Seat            Estimate // height at which the feet stand flat
	ThighTop        Estimate // above the floor
	Knee            Estimate // above the floor
	Elbow           Estimate // above the floor
	ElbowAboveThigh Estimate
	Eye             Estimate // above the floor, sitting straight
	Head            Estimate // above the floor, sitting straight
	BellyToKnee     Estimate // depth that the knees need
	BellyToToe      Estimate // depth that the toes need, shanks upright
	HipBreadth      Estimate
}

// Sitting estimates all that a desk must know of a sitting person. The error
// is that of Estimate.
func (p Person) Sitting() (Sitter, error) {
	var s Sitter
	for _, f := range []struct {
		to  *Estimate
		dim Dimension
	}{
		{&s.Seat, Popliteal}, {&s.ThighTop, ThighTop}, {&s.Knee, Knee}, {&s.Elbow, Elbow},
		{&s.ElbowAboveThigh, ElbowAboveThigh}, {&s.Eye, Eye}, {&s.Head, Head},
		{&s.BellyToKnee, BellyToKnee}, {&s.BellyToToe, BellyToToe}, {&s.HipBreadth, HipBreadth},
	} {
		var err error
		if *f.to, err = p.Estimate(f.dim); err != nil {
			return Sitter{}, err
		}
	}
	return s, nil
}
