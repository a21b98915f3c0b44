package check

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// hint is a way to mend a finding in words.
func hint(format string, args ...any) find.Fix { return find.Fix{Text: fmt.Sprintf(format, args...)} }

// set adds to a hint the parameter that does it, when the preset has one of
// that name whose value is the size in question, and may take the new value.
// Presets are free in their names: surface, thickness, side_gap, back_gap,
// shorter_by, seat_at, leg_at, table_at, table_height, shelf_under, first_shelf and
// shelf_thick are the ones that hints look for.
func (s Site) set(f find.Fix, name string, was, to unit.Length) find.Fix {
	now, ok := s.now(name)
	if !ok || math.Abs(float64(now-was)) > 0.01 {
		return f
	}
	for _, p := range s.Params {
		if p.Name == name && (float64(to) < p.Min || float64(to) > p.Max) {
			return f
		}
	}
	v := round3(float64(to))
	f.Parameter, f.Value = name, &v
	return f
}

// now is the value of a length parameter: as the job file sets it, else the
// preset's own.
func (s Site) now(name string) (unit.Length, bool) {
	if set, ok := s.Job.Settings[name]; ok {
		return set.Length, true
	}
	for _, p := range s.Params {
		if p.Name == name && p.Kind == model.LengthParam {
			v, err := strconv.ParseFloat(p.Default, 64)
			return unit.Length(v), err == nil
		}
	}
	return 0, false
}

// hundredth rounds to a hundredth of a millimetre: finer differences come from
// the grid of the kernel and from turning, and must not decide between pass and
// fail where a size is met exactly.
func hundredth[T ~float64](l T) float64 { return math.Round(float64(l)*100)/100 + 0 }

// mm makes a measured length.
func mm[T ~float64](l T) *find.Quantity { return &find.Quantity{Value: hundredth(l), Unit: "mm"} }

// spread is a measured length with its standard deviation.
func spread(l, sd unit.Length) *find.Quantity {
	return &find.Quantity{Value: hundredth(l), SD: hundredth(sd), Unit: "mm"}
}

// limit makes a one-sided limit of a length.
func limit[T ~float64](relation string, l T) *find.Limit {
	return &find.Limit{Value: hundredth(l), Relation: relation, Unit: "mm"}
}

// up rounds up to whole millimetres, which is what a person sets a stop to.
func up(l unit.Length) unit.Length { return unit.Length(math.Ceil(hundredth(l) - 1e-6)) }

// down rounds down to whole millimetres.
func down(l unit.Length) unit.Length { return -up(-l) }

// list joins names as in a sentence: "a, b and c".
func list(names []string) string {
	switch n := len(names); n {
	case 0:
		return "nothing"
	case 1:
		return names[0]
	default:
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
}

// capital writes a sentence's first letter large.
func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// count writes a number with its noun.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// wholeMM writes a length to the millimetre, without its unit.
func wholeMM(l unit.Length) string { return fmt.Sprintf("%.0f", float64(l)) }
