package presets_test

import (
	"fmt"
	"testing"
	"time"
	"slabwright/presets"
)

func TestTmp(t *testing.T) {
	for _, p := range presets.All() {
		t0 := time.Now()
		_, found := build(t, p, nil)
		fmt.Println(p.Name, "whole", time.Since(t0))
		for _, f := range found {
			if f.Rule == "bending-strength" && len(f.Fix) > 0 {
				fmt.Println(f.Why, f.Fix)
			}
		}
	}
}
