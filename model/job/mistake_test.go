package job

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the expected mistakes in testdata")

// Each archive holds job files, each followed by the mistakes that it must give.
func TestMistakes(t *testing.T) {
	archives, err := filepath.Glob("testdata/mistakes/*.txt")
	if err != nil || len(archives) == 0 {
		t.Fatal("no archives", err)
	}
	for _, name := range archives {
		t.Run(filepath.Base(name), func(t *testing.T) {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			head, files := splitArchive(string(data))
			out := head
			for i := 0; i+1 < len(files); i += 2 {
				job, want := files[i], files[i+1]
				_, mistakes := Read(job.name, []byte(job.text), testPresets)
				got := Text(mistakes)
				if len(mistakes) == 0 {
					t.Errorf("%s: no mistake found", job.name)
				}
				if got != want.text && !*update {
					t.Errorf("%s:\n--- got\n%s--- want\n%s", job.name, got, want.text)
				}
				out += "-- " + job.name + " --\n" + job.text + "-- mistakes --\n" + got
			}
			if *update {
				if err := os.WriteFile(name, []byte(out), 0o644); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

type archived struct{ name, text string }

// splitArchive takes a text apart at lines such as  -- name --.
func splitArchive(s string) (head string, files []archived) {
	into := &head
	for line := range strings.Lines(s) {
		if name, ok := strings.CutPrefix(strings.TrimSpace(line), "-- "); ok && strings.HasSuffix(name, " --") {
			files = append(files, archived{name: strings.TrimSuffix(name, " --")})
			into = &files[len(files)-1].text
			continue
		}
		*into += line
	}
	return head, files
}
