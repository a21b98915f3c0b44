package cmd

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"
)

// fileSet is what a build makes: names under OUT, with slashes, and contents.
type fileSet map[string][]byte

// ours are the entries of OUT that a build owns. Everything else that lies
// there belongs to the user and stays.
var ours = []string{"drawings.pdf", "sheets", "models", "lists", "report.json", "report.md"}

// owner marks a folder as one that a build may replace.
const owner = "report.json"

// write puts a set of files into a folder as a whole: it is written beside the
// folder and then takes its place, so that a build that fails or is killed
// leaves the previous set as it was.
func (s fileSet) write(out string) error {
	out = filepath.Clean(out)
	if err := mayReplace(out); err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(out), 0o755); err != nil {
		return fmt.Errorf("make the folder of %s: %w", out, err)
	}
	beside, err := os.MkdirTemp(filepath.Dir(out), "."+filepath.Base(out)+".new-")
	if err != nil {
		return fmt.Errorf("make a folder beside %s: %w", out, err)
	}
	defer os.RemoveAll(beside)
	if err := os.Chmod(beside, 0o755); err != nil {
		return fmt.Errorf("open the folder %s: %w", beside, err)
	}
	names := make([]string, 0, len(s))
	for name := range s {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		file := filepath.Join(beside, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			return fmt.Errorf("make the folder of %s: %w", name, err)
		}
		if err := os.WriteFile(file, s[name], 0o644); err != nil {
			return fmt.Errorf("write %s: %w", name, err)
		}
	}
	return swap(beside, out)
}

// mayReplace refuses a folder that holds something but was not made by a build.
func mayReplace(out string) error {
	list, err := os.ReadDir(out)
	if errors.Is(err, fs.ErrNotExist) || err == nil && len(list) == 0 {
		return nil
	}
	if err != nil {
		return fmt.Errorf("look into %s: %w", out, err)
	}
	for _, e := range list {
		if e.Name() == owner {
			return nil
		}
	}
	return fmt.Errorf("%s holds other things than a build's output; choose an empty or new folder with -o", out)
}

// swap puts a finished folder in the place of the old one. What the user laid
// into the old folder moves along.
func swap(beside, out string) error {
	if _, err := os.Stat(out); errors.Is(err, fs.ErrNotExist) {
		if err := os.Rename(beside, out); err != nil {
			return fmt.Errorf("put %s in place: %w", out, err)
		}
		return nil
	}
	if err := exchange(beside, out); err != nil {
		return fmt.Errorf("put %s in place: %w", out, err)
	}
	return keepForeign(beside, out)
}

// keepForeign moves what a build does not own from the old folder to the new.
func keepForeign(old, now string) error {
	list, err := os.ReadDir(old)
	if err != nil {
		return fmt.Errorf("look into the previous set: %w", err)
	}
	for _, e := range list {
		if owned(e.Name()) {
			continue
		}
		if err := os.Rename(filepath.Join(old, e.Name()), filepath.Join(now, e.Name())); err != nil {
			return fmt.Errorf("keep %s: %w", e.Name(), err)
		}
	}
	return nil
}

func owned(name string) bool {
	for _, o := range ours {
		if name == o {
			return true
		}
	}
	return false
}

// writeBeside writes one file beside its place and renames it.
func writeBeside(file string, data []byte) error {
	f, err := os.CreateTemp(filepath.Dir(file), "."+filepath.Base(file)+".new-")
	if err != nil {
		return fmt.Errorf("write %s: %w", file, err)
	}
	defer os.Remove(f.Name())
	_, werr := f.Write(data)
	if err := errors.Join(werr, f.Close()); err != nil {
		return fmt.Errorf("write %s: %w", file, err)
	}
	if err := errors.Join(os.Chmod(f.Name(), 0o644), os.Rename(f.Name(), file)); err != nil {
		return fmt.Errorf("write %s: %w", file, err)
	}
	return nil
}

// fileStem makes a file name of a part's id.
func fileStem(id string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '-':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, id)
}
