package cmd

import (
	"io"
	"path/filepath"
	"testing"

	"slabwright/drawing/sheet"
	"slabwright/presets"
)

// BenchmarkSheets lays out the sheets of a preset; the time per sheet is reported
// as well.
func BenchmarkSheets(b *testing.B) {
	for _, name := range []string{"studio", "alcove", "corner"} {
		b.Run(name, func(b *testing.B) {
			t := &tool{out: io.Discard, err: io.Discard, presets: presets.All()}
			whole, ok := t.whole(filepath.Join("..", "presets", name))
			if !ok {
				b.Fatal("the job cannot be read")
			}
			n := 0
			for b.Loop() {
				set, err := sheet.Set(whole)
				if err != nil {
					b.Fatal(err)
				}
				n += len(set)
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(n), "ms/sheet")
		})
	}
}

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
