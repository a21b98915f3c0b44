package cmd

import (
	"io"
	"path/filepath"
	"testing"

	"slabwright/presets"
)

// BenchmarkBuild is the whole build of a preset, files included.
func BenchmarkBuild(b *testing.B) {
	for _, name := range []string{"studio", "alcove", "corner"} {
		b.Run(name, func(b *testing.B) {
			t := &tool{out: io.Discard, err: io.Discard, presets: presets.All()}
			out := filepath.Join(b.TempDir(), name)
			for b.Loop() {
				if code := t.run([]string{"build", "../presets/" + name, "-o", out, "--quiet"}); code != exitFine {
					b.Fatal(code)
				}
			}
		})
	}
}
