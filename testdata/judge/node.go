package judge

import (
	"os"
	"os/exec"
	"testing"
)

// Script runs JavaScript in node with an npm package at hand and gives what it
// printed. A missing package counts as a missing judge; node looks for it where
// NODE_PATH says.
func Script(t testing.TB, npm, script string, args ...string) string {
	t.Helper()
	node := Need(t, "node")
	if exec.Command(node, "-e", "require.resolve('"+npm+"')").Run() != nil {
		if os.Getenv("SLABWRIGHT_JUDGES") == "require" {
			t.Fatalf("the judge %s is not installed", npm)
		}
		t.Skipf("the judge %s is not installed", npm)
	}
	return Run(t, "node", append([]string{"-e", script}, args...)...)
}
