package job

import (
	"slabwright/model"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// faceSD is how well a reading at a face is known, for those who know it better
// than common practice does.
const faceSD = "standard deviation of this reading; 0.7 if nothing is said"

// stationForm describes a reading against a straightedge.
func stationForm() form[model.Station] {
	type S = model.Station
	return inner(record("a place", []field[S]{
		need("along", "where along the wall, from the corner from which the wall counts", length(0, 60000), func(s *S) *unit.Length { return &s.Along }),
		need("is", "how far the face stands off the straight line: into the room, minus for hollow", length(-200, 200), func(s *S) *unit.Length { return &s.Off }),
		may("sd", faceSD, length(0.01, 100), func(s *S) *unit.Length { return &s.SD }),
	}, nil))
}

// plumbForm describes a reading against a plumb line.
func plumbForm() form[survey.Plumb] {
	type P = survey.Plumb
	return inner(record("a height", []field[P]{
		need("up", "height above the floor", length(0, 10000), func(p *P) *unit.Length { return &p.Height }),
		need("is", "distance from the plumb line to the wall there", length(0, 2000), func(p *P) *unit.Length { return &p.Back }),
		may("sd", faceSD, length(0.01, 100), func(p *P) *unit.Length { return &p.SD }),
	}, nil))
}

// floorForm describes the height of the floor at a place before a wall.
func floorForm() form[entry[model.FloorMark]] {
	type F = model.FloorMark
	return record("a place", []field[F]{
		need("wall", "name of the wall before which it lies", text(), func(f *F) *string { return &f.Wall }),
		need("along", "where along the wall, from the corner from which the wall counts", length(0, 60000), func(f *F) *unit.Length { return &f.Along }),
		may("before", "how far before the wall; 0 if nothing is said", length(0, 20000), func(f *F) *unit.Length { return &f.Before }),
		need("is", "height of the floor there; minus: lower than at the corner with 0", length(-300, 300), func(f *F) *unit.Length { return &f.Height }),
		may("sd", "standard deviation of the height; by the distance over which it was carried if nothing is said", length(0.01, 100), func(f *F) *unit.Length { return &f.SD }),
	}, nil)
}
