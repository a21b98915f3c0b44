package cmd

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"testing"

	"slabwright/presets"
)

// run runs the command line as a user would and gives what it printed.
func run(t *testing.T, args ...string) (out, errs string, code int) {
	t.Helper()
	var o, e bytes.Buffer
	code = (&tool{out: &o, err: &e, presets: presets.All()}).run(args)
	return o.String(), e.String(), code
}

// set gives a digest of every file below a folder.
func set(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.Walk(dir, func(p string, info os.FileInfo, err error) error {
		if err != nil || info.IsDir() {
			return err
		}
		data, err := os.ReadFile(p)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(dir, p)
		out[filepath.ToSlash(rel)] = fmt.Sprintf("%x", sha256.Sum256(data))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func demoJob(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "presets", name, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func write(t *testing.T, file, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestBuildWritesTheContract builds the demo and wants every file that the
// contract names, the verdict first, and the same bytes the second time.
func TestBuildWritesTheContract(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "studio")
	out, errs, code := run(t, "build", "../presets/studio", "-o", dir)
	if code != exitFine {
		t.Fatalf("exit %d\n%s%s", code, out, errs)
	}
	if !strings.HasPrefix(out, "It fits.") {
		t.Errorf("the terminal opens with %q, not the verdict", strings.SplitN(out, "\n", 2)[0])
	}
	first := set(t, dir)
	for _, f := range []string{"drawings.pdf", "report.json", "report.md", "lists/parts.csv", "lists/holes.csv", "lists/buy.csv", "lists/cuts.csv",
		"models/assembly.stl", "models/assembly.3mf", "models/assembly.glb", "models/worktop.stl", "models/infill.stl", "models/angle-left.stl", "models/roll-out-table.stl", "models/worktop.step", "models/angle-left.step"} {
		if first[f] == "" {
			t.Errorf("%s is missing", f)
		}
	}
	sheets := 0
	for f := range first {
		if strings.HasPrefix(f, "sheets/") && strings.HasSuffix(f, ".svg") {
			sheets++
		}
	}
	if sheets < 12 {
		t.Errorf("only %d sheets", sheets)
	}
	if _, _, code := run(t, "build", "../presets/studio", "-o", dir, "--quiet"); code != exitFine {
		t.Fatalf("second build: exit %d", code)
	}
	second := set(t, dir)
	for f, sum := range first {
		if second[f] != sum {
			t.Errorf("%s differs in the second build", f)
		}
	}
	if len(second) != len(first) {
		t.Errorf("%d files, then %d", len(first), len(second))
	}
}

// TestQuietAndJSON: --quiet prints nothing, --json prints one object.
func TestQuietAndJSON(t *testing.T) {
	dir := t.TempDir()
	out, errs, _ := run(t, "build", "../presets/alcove", "--quiet", "-o", filepath.Join(dir, "a"))
	if out != "" || errs != "" {
		t.Errorf("--quiet printed %q and %q", out, errs)
	}
	out, _, code := run(t, "build", "--json", "../presets/alcove", "-o", filepath.Join(dir, "b"))
	var v struct {
		Out, Status, Sentence string
		Exit                  int
	}
	if err := json.Unmarshal([]byte(out), &v); err != nil || v.Exit != code || v.Sentence == "" {
		t.Errorf("--json printed %q: %v", out, err)
	}
	out, _, _ = run(t, "check", "../presets/alcove", "--json")
	var list []map[string]any
	if err := json.Unmarshal([]byte(out), &list); err != nil || len(list) < 10 {
		t.Errorf("check --json: %v, %d findings", err, len(list))
	}
}

// TestFailingDesignIsStillDrawn: a finding that fails gives exit 1, and the
// sheets are stamped instead of left out.
func TestFailingDesignIsStillDrawn(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "tight", "job.yaml")
	write(t, file, strings.Replace(demoJob(t, "studio"), "side_gap: 4", "side_gap: 0", 1))
	out, errs, code := run(t, "build", filepath.Dir(file), "-o", filepath.Join(dir, "out"))
	if code != exitFails || !strings.HasPrefix(out, "It does not fit: ") {
		t.Fatalf("exit %d\n%s%s", code, out, errs)
	}
	svg, err := filepath.Glob(filepath.Join(dir, "out", "sheets", "*.svg"))
	if err != nil || len(svg) == 0 {
		t.Fatal("no sheets", err)
	}
	for _, f := range svg {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Contains(data, []byte("NOT FOR THE SHOP")) {
			t.Errorf("%s is not stamped", filepath.Base(f))
		}
	}
}

// TestUnreadableJobWritesNothing: all mistakes at once, exit 2, and the
// previous set stays as it was.
func TestUnreadableJobWritesNothing(t *testing.T) {
	dir := t.TempDir()
	out := filepath.Join(dir, "out")
	if _, errs, code := run(t, "build", "../presets/alcove", "-o", out, "--quiet"); code != exitFine {
		t.Fatal(errs)
	}
	before := set(t, out)
	bad := strings.NewReplacer("is: 702", "is: 702,5", "make: hollow block", "make: holow block", "stature:", "statur:").Replace(demoJob(t, "alcove"))
	file := filepath.Join(dir, "bad.yaml")
	write(t, file, bad)
	stdout, errs, code := run(t, "build", file, "-o", out)
	if code != exitUnread || stdout != "" {
		t.Errorf("exit %d, printed %q", code, stdout)
	}
	for _, want := range []string{"bad.yaml:", "702.5", "hollow block", "stature", "4 mistakes", "nothing was written"} {
		if !strings.Contains(errs, want) {
			t.Errorf("the messages lack %q:\n%s", want, errs)
		}
	}
	if !same(before, set(t, out)) {
		t.Error("the previous set was touched")
	}
	if _, errs, code := run(t, "build", filepath.Join(dir, "none"), "-o", out); code != exitUnread || !strings.Contains(errs, "no such file") {
		t.Errorf("missing file: exit %d %s", code, errs)
	}
}

// TestForeignFilesStay: what a user lays into OUT survives a rebuild, and a
// folder that is not a build's is refused untouched.
func TestForeignFilesStay(t *testing.T) {
	dir := t.TempDir()
	out := filepath.Join(dir, "out")
	run(t, "build", "../presets/alcove", "-o", out, "--quiet")
	write(t, filepath.Join(out, "my notes.txt"), "ask the yard")
	write(t, filepath.Join(out, "sheets", "old.svg"), "from an older version")
	if _, errs, code := run(t, "build", "../presets/alcove", "-o", out, "--quiet"); code != exitFine {
		t.Fatal(errs)
	}
	if data, err := os.ReadFile(filepath.Join(out, "my notes.txt")); err != nil || string(data) != "ask the yard" {
		t.Errorf("the user's notes: %q %v", data, err)
	}
	if _, err := os.Stat(filepath.Join(out, "sheets", "old.svg")); err == nil {
		t.Error("a sheet that no longer belongs to the set is still there")
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".*new*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	home := filepath.Join(dir, "home")
	write(t, filepath.Join(home, "letter.txt"), "dear")
	if _, errs, code := run(t, "build", "../presets/alcove", "-o", home); code != exitUnread || !strings.Contains(errs, "choose an empty or new folder") {
		t.Errorf("exit %d %s", code, errs)
	}
	if got := set(t, home); len(got) != 1 {
		t.Errorf("a folder that is not ours was written to: %v", got)
	}
}

// TestFailedWriteLeavesPreviousSet: when a file cannot be written, the old set
// stays whole.
func TestFailedWriteLeavesPreviousSet(t *testing.T) {
	dir := t.TempDir()
	out := filepath.Join(dir, "out")
	if err := (fileSet{"report.json": []byte("1"), "sheets/a.svg": []byte("a")}).write(out); err != nil {
		t.Fatal(err)
	}
	before := set(t, out)
	err := fileSet{"report.json": []byte("2"), "sheets": []byte("a file where a folder must be"), "sheets/a.svg": []byte("b")}.write(out)
	if err == nil {
		t.Fatal("a set that cannot be written was taken")
	}
	if !same(before, set(t, out)) {
		t.Error("the previous set was touched")
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// TestExchangeInSteps is the way of file systems without an exchange.
func TestExchangeInSteps(t *testing.T) {
	dir := t.TempDir()
	a, b := filepath.Join(dir, "a"), filepath.Join(dir, "b")
	write(t, filepath.Join(a, "x"), "new")
	write(t, filepath.Join(b, "x"), "old")
	if err := exchangeInSteps(a, b); err != nil {
		t.Fatal(err)
	}
	now, _ := os.ReadFile(filepath.Join(b, "x"))
	was, _ := os.ReadFile(filepath.Join(a, "x"))
	if string(now) != "new" || string(was) != "old" {
		t.Errorf("b holds %q, a holds %q", now, was)
	}
	if err := exchangeInSteps(filepath.Join(dir, "none"), b); err == nil {
		t.Error("a missing folder was exchanged")
	}
	if now, _ := os.ReadFile(filepath.Join(b, "x")); string(now) != "new" {
		t.Error("a failed exchange lost the folder")
	}
}

func same(a, b map[string]string) bool {
	keys := func(m map[string]string) string {
		var k []string
		for n, s := range m {
			k = append(k, n+s)
		}
		sort.Strings(k)
		return strings.Join(k, "\n")
	}
	return keys(a) == keys(b)
}

// TestWords: help, near misses, explain, presets, schema and survey answer.
func TestWords(t *testing.T) {
	for _, c := range []struct {
		args string
		code int
		says string
	}{
		{"", exitFine, "slabwright build JOB"},
		{"help", exitFine, "Exit: 0"},
		{"biuld x", exitUnread, `the nearest is "build"`},
		{"build", exitUnread, "takes one job file or folder"},
		{"build a b", exitUnread, "takes one job file or folder"},
		{"explain wall-gap", exitFine, "Basis:"},
		{"explain wall-gab", exitUnread, `the nearest is "wall-gap"`},
		{"presets", exitFine, "leg_gap"},
		{"schema", exitFine, "json-schema.org"},
		{"survey ../presets/studio", exitFine, "19 readings, 6 more than needed"},
		{"survey --json ../presets/studio", exitFine, `"sd_x_mm"`},
	} {
		out, errs, code := run(t, strings.Fields(c.args)...)
		if code != c.code || !strings.Contains(out+errs, c.says) {
			t.Errorf("%q: exit %d, want %d and %q in:\n%s%s", c.args, code, c.code, c.says, out, errs)
		}
	}
}

// TestNewStartsAJob: every preset's template reads back and builds, and an
// existing job is not overwritten.
func TestNewStartsAJob(t *testing.T) {
	for _, p := range presets.All() {
		dir := filepath.Join(t.TempDir(), p.Name)
		if out, errs, code := run(t, "new", dir, "--preset", p.Name); code != exitFine {
			t.Fatalf("%s: exit %d %s%s", p.Name, code, out, errs)
		}
		if out, errs, code := run(t, "check", dir); code == exitUnread || code == exitOurs {
			t.Errorf("%s: the fresh job gives exit %d\n%s%s", p.Name, code, out, errs)
		}
		before := set(t, dir)
		if _, errs, code := run(t, "new", dir); code != exitUnread || !strings.Contains(errs, "already there") {
			t.Errorf("exit %d %s", code, errs)
		}
		if !same(before, set(t, dir)) {
			t.Error("an existing job was overwritten")
		}
	}
	if _, errs, code := run(t, "new", t.TempDir()+"/x", "--preset", "studoi"); code != exitUnread || !strings.Contains(errs, `"studio"`) {
		t.Errorf("exit %d %s", code, errs)
	}
}

// TestOurFaultIsOwned: a panic below gives exit 3 and asks for the job file.
func TestOurFaultIsOwned(t *testing.T) {
	var o, e bytes.Buffer
	broken := &tool{out: &o, err: &e, presets: nil}
	if code := broken.run([]string{"new", t.TempDir() + "/x"}); code != exitOurs {
		t.Errorf("exit %d", code)
	}
	if !strings.Contains(e.String(), "The fault is ours") {
		t.Errorf("says %q", e.String())
	}
}
