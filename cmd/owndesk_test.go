package cmd

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestOwnDesk builds and runs a program with a design of its own, the ten
// lines that a user writes.
func TestOwnDesk(t *testing.T) {
	dir := t.TempDir()
	exe := filepath.Join(dir, "owndesk")
	if out, err := exec.Command("go", "build", "-o", exe, "../testdata/owndesk").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	out, err := exec.Command(exe, "build", "../testdata/owndesk", "-o", filepath.Join(dir, "ledge")).Output() // a slow machine tells its progress beside
	if err != nil || !strings.HasPrefix(string(out), "It fits.") {
		t.Fatalf("%v\n%s", err, out)
	}
	files := set(t, filepath.Join(dir, "ledge"))
	for _, f := range []string{"drawings.pdf", "models/ledge.stl", "models/angle-back.stl", "report.md"} {
		if files[f] == "" {
			t.Errorf("%s is missing", f)
		}
	}
	if out, err := exec.Command(exe, "presets").CombinedOutput(); err != nil || !strings.Contains(string(out), "height") || strings.Contains(string(out), "studio") {
		t.Errorf("its presets: %v\n%s", err, out)
	}
}
