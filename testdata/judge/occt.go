package judge

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Solids is what Open CASCADE says about a STEP file.
type Solids struct {
	Count, Faces int
	Volume       float64 // in the cube of the file's unit
	Valid        bool
}

// The drawing program of Open CASCADE looks for its plug-ins by names that
// Debian does not give them.
const (
	draw    = "occt-draw-7.6"
	library = "/usr/lib/x86_64-linux-gnu/lib%.so.7"
)

var plugins = []string{"TKTopTest", "TKXSDRAW", "TKDCAF", "TKXDEDRAW", "TKViewerTest"}

// ReadSTEP lets Open CASCADE read STEP files, all in one run, and measure them.
func ReadSTEP(t testing.TB, paths ...string) []Solids {
	t.Helper()
	program := Need(t, draw)
	dir := t.TempDir()
	for _, p := range plugins {
		if err := os.Symlink(strings.Replace(library, "%", p, 1), filepath.Join(dir, "lib"+p+".so")); err != nil {
			t.Fatal(err)
		}
	}
	script := "pload MODELING XDE\n"
	for _, p := range paths {
		script += "puts FILE\nputs [testreadstep {" + p + "} q]\nputs [vprops q -full]\nputs [checkshape q]\nputs [nbshapes q]\n"
	}
	file := filepath.Join(dir, "measure.tcl")
	if err := os.WriteFile(file, []byte(script), 0o644); err != nil {
		t.Fatal(err)
	}
	text := Run(t, "env", "LD_LIBRARY_PATH="+dir, program, "-b", "-f", file)
	var out []Solids
	for i, part := range strings.Split(text, "FILE\n")[1:] {
		number := func(label string) float64 {
			m := regexp.MustCompile(label + `\s*:\s*(-?[0-9.e+-]+)`).FindStringSubmatch(part)
			if m == nil {
				t.Fatalf("%s: Open CASCADE does not say %q:\n%s", paths[i], label, part)
			}
			x, err := strconv.ParseFloat(m[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			return x
		}
		out = append(out, Solids{int(number("SOLID")), int(number("FACE")), number("Mass"), strings.Contains(part, "seems to be valid")})
	}
	if len(out) != len(paths) {
		t.Fatalf("Open CASCADE read %d of %d files:\n%s", len(out), len(paths), text)
	}
	return out
}
