package model

// Covariance is how the corners of a surveyed room spread together, in mm2 and
// a priori: rows and columns are x and y of each corner in the order of Corners.
// ok is false for a room that no survey stands behind.
func (r *Room) Covariance() (cov [][]float64, ok bool) {
	if r.known == nil {
		return nil, false
	}
	res := r.known.res
	var at []int // entries of the survey
	for _, c := range r.Corners {
		for i, p := range res.Points {
			if string(p.Name) == c.Name {
				at = append(at, 2*i, 2*i+1)
			}
		}
	}
	cov = make([][]float64, len(at))
	for i, a := range at {
		cov[i] = make([]float64, len(at))
		for j, b := range at {
			cov[i][j] = res.Covariance[a][b]
		}
	}
	return cov, true
}
