package geom

import (
	"math"
	"slices"

	"slabwright/model/unit"
)

// Layer is a region between two heights.
type Layer struct {
	Region Region
	Z0, Z1 unit.Length
}

// SliceTolerance is how far layers may stand outside the true skin where it
// slopes or is round in a lying direction. Slopes higher than 16 mm may take
// more than the 64 layers there are between two heights of a body at most, and
// are bounded more coarsely, to the 64th part of the slope's height.
const SliceTolerance unit.Length = 0.25

// mostSlices bounds the number of layers between two neighbouring heights of
// a body: slopes that would take more are bounded more coarsely.
const mostSlices = 64

// slicesOf cuts a skin into layers. Between two heights without a slope the
// layer is the section; else it is what the slice covers seen from above: the
// section at its top and all that looks up within it.
func slicesOf(faces []Face) []Layer {
	var zs []unit.Length
	lo, hi := make([]unit.Length, len(faces)), make([]unit.Length, len(faces))
	for i, f := range faces {
		lo[i], hi[i] = f.Loops[0][0].Z, f.Loops[0][0].Z
		for _, v := range f.Loops[0] {
			zs = append(zs, v.Z)
			lo[i], hi[i] = min(lo[i], v.Z), max(hi[i], v.Z)
		}
	}
	slices.Sort(zs)
	zs = slices.CompactFunc(zs, func(a, b unit.Length) bool { return math.Abs(float64(a-b)) < float64(onPlane) })
	var out []Layer
	for i := 0; i+1 < len(zs); i++ {
		var here []Face
		for j, f := range faces {
			if lo[j] < zs[i+1]-onPlane && hi[j] > zs[i]+onPlane {
				here = append(here, f)
			}
		}
		out = append(out, sliceBetween(here, zs[i], zs[i+1])...)
	}
	return out
}

// sliceBetween makes the layers between two heights from the faces that pass
// between them; no face begins or ends there.
func sliceBetween(faces []Face, lo, hi unit.Length) []Layer {
	var slopes []Face // those that look up
	sloping, n := false, 1.0
	for _, f := range faces {
		if steep := math.Abs(float64(f.Normal.Z)); steep > 1e-9 {
			n = max(n, math.Ceil(float64(hi-lo)*steep/float64(SliceTolerance)))
			sloping = true
			if f.Normal.Z > 0 {
				slopes = append(slopes, f)
			}
		}
	}
	n = min(n, mostSlices)
	var out []Layer
	for i := range int(n) {
		a, b := lo+(hi-lo)*unit.Length(float64(i)/n), lo+(hi-lo)*unit.Length(float64(i+1)/n)
		var r Region
		if sloping {
			r = shadow(levelSection(faces, b, b), slopes, a, b)
		} else {
			r = levelSection(faces, (a+b)/2, hi)
		}
		if !r.Empty() {
			out = append(out, Layer{r, a, b})
		}
	}
	return out
}

// shadow is a section together with what the slopes below it cover between two
// heights.
func shadow(section Region, slopes []Face, lo, hi unit.Length) Region {
	var loops [][]pt
	for _, pc := range section.pieces {
		loops = append(loops, pc...)
	}
	for _, f := range slopes {
		loop := clip(f.Loops[0], func(v Vec3) unit.Length { return v.Z - lo })
		loop = clip(loop, func(v Vec3) unit.Length { return hi - v.Z })
		at, err := fromAbove(loop)
		if err != nil {
			return faulty(err)
		}
		loops = append(loops, at)
	}
	return coveredBy(loops)
}

func fromAbove(loop []Vec3) ([]pt, error) {
	at := make([]pt, len(loop))
	for i, v := range loop {
		p, err := snap(v.Flat())
		if err != nil {
			return nil, err
		}
		at[i] = p
	}
	return at, nil
}

// coveredBy is the region that loops around flat pieces cover together, holes
// clockwise. Most sides are sides of two pieces, one on each side, and drop out
// before the region is made.
func coveredBy(loops [][]pt) Region {
	net := map[[2]pt]int32{}
	each := func(visit func(key [2]pt, delta int32)) {
		for _, loop := range loops {
			for i, a := range loop {
				b := loop[(i+1)%len(loop)]
				if a.before(b) {
					visit([2]pt{a, b}, 1)
				} else if b.before(a) {
					visit([2]pt{b, a}, -1)
				}
			}
		}
	}
	each(func(key [2]pt, delta int32) { net[key] += delta })
	var segs []seg
	each(func(key [2]pt, _ int32) {
		if n := net[key]; n != 0 {
			segs = append(segs, seg{a: key[0], b: key[1], delta: n})
			net[key] = 0
		}
	})
	p := arrange(segs, 1)
	return newRegion(tidy(p.outline(p.choose(positive))))
}

// clip keeps what lies where side is not negative (I. E. Sutherland and G. W.
// Hodgman's clipping; the pieces of a bent loop stay joined along the cut).
func clip(loop []Vec3, side func(Vec3) unit.Length) []Vec3 {
	var out []Vec3
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		sa, sb := side(a), side(b)
		if sa >= 0 {
			out = append(out, a)
		}
		if sa > 0 && sb < 0 || sa < 0 && sb > 0 {
			out = append(out, a.Add(b.Sub(a).Mul(float64(sa/(sa-sb)))))
		}
	}
	return out
}
