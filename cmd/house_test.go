package cmd

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// floors gives every package its floor: a package imports only from lower ones.
// A name that ends in /* stands for all packages right below it.
var floors = map[string]int{
	"model/unit": 0, "model/find": 0, "model/atonce": 0, "drawing/words": 0,
	"model/geom":   10,
	"model/survey": 20, "model/stock": 20, "model/calc/*": 20,
	"model":      30,
	"model/hold": 35, "model/wire": 35, "model/bring": 35,
	"model/sit": 36,
	"model/job": 40, "model/check": 40, "model/cut": 40,
	"model/report": 50, "model/lists": 50,
	"model/revision": 50,
	"drawing":        60, "mesh": 60, "presets": 60,
	"drawing/render": 61, "mesh/*": 61,
	"drawing/view": 62, "drawing/dim": 62,
	"drawing/sheet": 63, "testdata/sample": 63, "testdata/sawyer": 0,
	"cmd":            80,
	"cmd/slabwright": 90, "testdata/owndesk": 90,
}

// strangers lists the outside modules that a package may import beyond the
// standard library. Tests may use more: they judge from outside.
var strangers = map[string][]string{
	"model/revision": {"gonum.org/v1/gonum"},
	"model/survey":   {"gonum.org/v1/gonum"},
	"model/job":      {"github.com/goccy/go-yaml"},
	"drawing":        {"golang.org/x/image", "codeberg.org/go-fonts/dejavu"},
	"drawing/render": {"github.com/tdewolff/canvas"},
	"mesh/stl":       {"github.com/hschendel/stl"},
	"mesh/threemf":   {"github.com/hpinc/go3mf"},
	"mesh/gltf":      {"github.com/qmuntal/gltf"},
	"mesh/sdf":       {"github.com/unixpickle/model3d"},
	"cmd":            {"golang.org/x/sys"},
}

const module = "slabwright"

// TestImportsPointDownwards holds the house together: every package has a floor
// and imports only from below it; outside modules come in where they may.
func TestImportsPointDownwards(t *testing.T) {
	for pkg, files := range packages(t) {
		floor, ok := floorOf(pkg)
		if !ok {
			t.Errorf("package %s has no floor: give it one in this test", pkg)
			continue
		}
		for _, file := range files {
			for _, imported := range imports(t, file) {
				checkImport(t, pkg, floor, file, imported)
			}
		}
	}
}

func checkImport(t *testing.T, pkg string, floor int, file, imported string) {
	if inner, ok := strings.CutPrefix(imported, module+"/"); ok {
		below, known := floorOf(inner)
		if !known || below >= floor {
			t.Errorf("%s: %s (floor %d) imports %s (floor %d): imports point downwards only", file, pkg, floor, inner, below)
		}
		return
	}
	if !strings.Contains(strings.Split(imported, "/")[0], ".") {
		return // standard library
	}
	for _, s := range strangers[pkg] {
		if imported == s || strings.HasPrefix(imported, s+"/") {
			return
		}
	}
	t.Errorf("%s: %s may not import %s", file, pkg, imported)
}

func floorOf(pkg string) (int, bool) {
	if f, ok := floors[pkg]; ok {
		return f, true
	}
	f, ok := floors[path.Dir(pkg)+"/*"]
	return f, ok
}

// packages finds the Go files of every package, without tests.
func packages(t *testing.T) map[string][]string {
	out := map[string][]string{}
	err := filepath.WalkDir("..", func(file string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if e.IsDir() && (strings.HasPrefix(e.Name(), ".") && file != ".." || e.Name() == "out" || e.Name() == "judge") {
			return filepath.SkipDir
		}
		if strings.HasSuffix(file, ".go") && !strings.HasSuffix(file, "_test.go") {
			rel, err := filepath.Rel("..", filepath.Dir(file))
			if err != nil {
				return err
			}
			pkg := filepath.ToSlash(rel)
			out[pkg] = append(out[pkg], file)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(out) < 15 {
		t.Fatalf("found only %d packages: the walk went wrong", len(out))
	}
	return out
}

func imports(t *testing.T, file string) []string {
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	f, err := parser.ParseFile(token.NewFileSet(), file, src, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, i := range f.Imports {
		p, err := strconv.Unquote(i.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, p)
	}
	return out
}
