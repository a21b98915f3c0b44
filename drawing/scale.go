package drawing

import (
	"strconv"

	"slabwright/model/unit"
)

// Scale is the ratio of a length on paper to the length of the thing.
type Scale struct{ Paper, Real int }

// Scales is the series of ISO 5455 as far as a workshop needs it, largest
// first. 1:2.5, 1:3, 1:4 and 1:25 are not in the series.
var Scales = []Scale{{5, 1}, {2, 1}, {1, 1}, {1, 2}, {1, 5}, {1, 10}, {1, 20}, {1, 50}, {1, 100}, {1, 200}, {1, 500}}

// String gives the scale as it is written on a sheet.
func (s Scale) String() string { return strconv.Itoa(s.Paper) + ":" + strconv.Itoa(s.Real) }

// Of is the length on paper of a real length.
func (s Scale) Of(real unit.Length) unit.Length {
	return real * unit.Length(s.Paper) / unit.Length(s.Real)
}

// FitScale is the largest scale of the series, none above 1:1, at which a
// thing of this width and height finds room. It is the smallest of the series
// when nothing fits.
func FitScale(width, height unit.Length, room Rect) Scale {
	for _, s := range Scales {
		if s.Paper <= s.Real && s.Of(width) <= room.Width() && s.Of(height) <= room.Height() {
			return s
		}
	}
	return Scales[len(Scales)-1]
}
