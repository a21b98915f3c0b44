package cmd

import (
	"path/filepath"
	"strings"
	"testing"

	"slabwright/testdata/sawyer"
)

// TestCutPlansAnInstance runs the verb on an instance that can be made, on one
// that cannot, and on one that cannot be read.
func TestCutPlansAnInstance(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "two.json")
	ins := `{"kind": "sheets", "objective": "cost", "kerf": 4, "sheets": [{"id": "board", "length": 1000, "width": 300, "price": 10}],
 "items": [{"id": "shelf", "length": 498, "width": 300, "count": 2}]}`
	write(t, file, ins)
	out, errs, code := run(t, "cut", file, "--json")
	if code != exitFine {
		t.Fatalf("exit %d: %s", code, errs)
	}
	if v := sawyer.Check([]byte(ins), []byte(out)); len(v.Wrong) > 0 || v.Worth != 10 {
		t.Errorf("the plan costs %g: %v", v.Worth, v.Wrong)
	}
	out, _, code = run(t, "cut", file)
	for _, want := range []string{"10, and no plan is better: that is proved.", "cross cut of 1000 x 300 mm: fence at 498 mm from the left edge; frees shelf and shelf"} {
		if code != exitFine || !strings.Contains(out, want) {
			t.Errorf("exit %d, says %q, not %q", code, out, want)
		}
	}
	write(t, file, strings.Replace(ins, "498", "1001", 1))
	if out, _, code = run(t, "cut", file); code != exitFails || !strings.Contains(out, "the nearest sheet board lacks 1 mm in length") {
		t.Errorf("exit %d: %s", code, out)
	}
	write(t, file, strings.Replace(ins, `"kerf": 4`, `"kurf": 4`, 1))
	if _, errs, code = run(t, "cut", file); code != exitUnread || !strings.Contains(errs, `two.json:1:49: the key "kurf" is not known in an instance`) {
		t.Errorf("exit %d: %s", code, errs)
	}
}
