// Package moisture tells how moist wood becomes in the air of a room and how
// much it swells or shrinks with that.
//
// Source: Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010),
// chapters 4 and 13; W. T. Simpson, FPL-RN-0268 (1998). One curve serves all
// species. It knows no hysteresis: wood that dries holds 1 to 2 % more than
// wood that takes up moisture. A thick slab follows its room by weeks to months.
package moisture

import "fmt"

// Content is the moisture of wood, in per cent of its ovendry mass.
type Content float64

// Humidity is the relative humidity of air, in per cent.
type Humidity float64

// Celsius is a temperature in degrees Celsius.
type Celsius float64

// Air is what wood lies in.
type Air struct {
	Humidity    Humidity
	Temperature Celsius
}

// Equilibrium is the moisture that wood comes to in air: Wood Handbook equation
// 4-5. The handbook's table, -1 to 38 degrees and 5 to 85 % humidity, is met
// within its rounding; beyond -30 to 70 degrees or 0 to 100 % it is an error.
func Equilibrium(a Air) (Content, error) {
	t, h := float64(a.Temperature), float64(a.Humidity)/100
	if !(t >= -30 && t <= 70) {
		return 0, fmt.Errorf("air of %g degrees Celsius is outside -30 to 70", t)
	}
	if !(h >= 0 && h <= 1) {
		return 0, fmt.Errorf("humidity of %g %% is outside 0 to 100", 100*h)
	}
	w := 349 + 1.29*t + 0.0135*t*t
	k := 0.805 + 0.000736*t - 0.00000273*t*t
	k1 := 6.27 - 0.00938*t - 0.000303*t*t
	k2 := 1.91 + 0.0407*t - 0.000293*t*t
	kh := k * h
	once, twice := k1*kh, k1*k2*kh*kh
	return Content(1800 / w * (kh/(1-kh) + (once+2*twice)/(1+once+twice))), nil
}
