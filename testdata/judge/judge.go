// Package judge lets tests call programs from outside to judge what slabwright
// wrote. A program that is missing skips the test by its name; with
// SLABWRIGHT_JUDGES=require in the environment it fails the test instead.
package judge

import (
	"bytes"
	"os"
	"os/exec"
	"testing"
)

// Need gives the path of a program, or skips or fails the test without it.
func Need(t testing.TB, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err == nil {
		return path
	}
	if os.Getenv("SLABWRIGHT_JUDGES") == "require" {
		t.Fatalf("the judge %s is not installed", program)
	}
	t.Skipf("the judge %s is not installed", program)
	return ""
}

// Run calls a program that Need finds and gives what it printed. It fails the
// test when the program does not end well.
func Run(t testing.TB, program string, args ...string) string {
	t.Helper()
	return RunIn(t, "", program, args...)
}

// RunIn does the same in a folder, for programs that write where they stand.
func RunIn(t testing.TB, folder, program string, args ...string) string {
	t.Helper()
	var out bytes.Buffer
	cmd := exec.Command(Need(t, program), args...)
	cmd.Dir = folder
	cmd.Stdout, cmd.Stderr = &out, &out
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s %v: %v\n%s", program, args, err, out.String())
	}
	return out.String()
}
