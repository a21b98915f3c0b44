package cut_test

import (
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"slabwright/model/calc/saw"
	"slabwright/model/cut"
	"slabwright/testdata/sawyer"
)

// solve reads an instance, plans it and has the plan sawn by the sawyer.
func solve(t testing.TB, name string, ins []byte, e saw.Effort) (cut.Solution, sawyer.Verdict) {
	t.Helper()
	i, mistakes := cut.ReadInstance(name, ins)
	for _, m := range mistakes {
		t.Fatalf("%v", m)
	}
	s := i.Solve(e)
	if !s.Found() {
		return s, sawyer.Verdict{}
	}
	v := sawyer.Check(ins, s.JSON())
	for _, w := range v.Wrong {
		t.Errorf("%s: %s", name, w)
	}
	return s, v
}

// TestKnownOptima solves open instances (testdata/bench/SOURCES.md) and wants
// the optimum, proved.
func TestKnownOptima(t *testing.T) {
	f, err := os.Open("testdata/bench/optima.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	python, _ := exec.LookPath("python3")
	for n, row := range rows[1:] {
		t.Run(row[1], func(t *testing.T) {
			file := filepath.Join("testdata", "bench", row[1]+".json")
			ins, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			want, err := strconv.ParseFloat(row[2], 64)
			if err != nil {
				t.Fatal(err)
			}
			s, v := solve(t, row[1], ins, saw.Effort{})
			if v.Worth != want {
				t.Errorf("reaches %g, the optimum is %g (%s)", v.Worth, want, row[3])
			}
			if s.Sheets != nil && !s.Sheets.Optimal || s.Bars != nil && !s.Bars.Optimal {
				t.Error("not proved")
			}
			if python != "" && n%8 == 0 {
				judged(t, python, file, s.JSON(), row[2])
			}
		})
	}
}

// judged has the independent program look at a plan.
func judged(t *testing.T, python, file string, plan []byte, optimum string) {
	t.Helper()
	sol := filepath.Join(t.TempDir(), "plan.json")
	if err := os.WriteFile(sol, plan, 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(python, "testdata/bench/verify.py", file, sol, optimum).CombinedOutput(); err != nil {
		t.Errorf("verify.py: %v: %s", err, out)
	}
}
