package judge

import (
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
)

// Admesh is what the program admesh says about an STL file before it mends
// anything.
type Admesh struct {
	Facets, Disconnected, Degenerate, Removed, Added, Reversed, Backwards, Parts int
	Volume                                                                       float64 // in the cube of the file's unit, from float32 sums
}

// ReadAdmesh lets admesh look at an STL file.
func ReadAdmesh(t testing.TB, path string) Admesh {
	t.Helper()
	text := Run(t, "admesh", path)
	// Most counts stand in the column "Original"; admesh mends in memory before
	// it reports, so the column "Final" says nothing about the file.
	number := func(label string) float64 {
		m := regexp.MustCompile(label + `\s*:\s*(-?[0-9.]+)`).FindStringSubmatch(text)
		if m == nil {
			t.Fatalf("admesh does not say %q:\n%s", label, text)
		}
		x, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			t.Fatalf("admesh says %s : %s", label, m[1])
		}
		return x
	}
	count := func(label string) int { return int(number(label)) }
	return Admesh{
		Facets:       count("Number of facets"),
		Disconnected: count("Total disconnected facets"),
		Degenerate:   count("Degenerate facets"),
		Removed:      count("Facets removed"),
		Added:        count("Facets added"),
		Reversed:     count("Facets reversed"),
		Backwards:    count("Backwards edges"),
		Parts:        count("Number of parts"),
		Volume:       number("Volume"),
	}
}

// Sound is whether admesh found nothing to mend.
func (a Admesh) Sound() bool {
	return a.Disconnected+a.Degenerate+a.Removed+a.Added+a.Reversed+a.Backwards == 0
}

// ToSTL lets assimp read a model file and write it as binary STL; it gives the
// path of the STL file.
func ToSTL(t testing.TB, path string) string {
	t.Helper()
	out := filepath.Join(t.TempDir(), "out.stl")
	Run(t, "assimp", "export", path, out, "-fstlb")
	return out
}
