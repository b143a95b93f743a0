package book_test

import (
	"crypto/sha256"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"backleaf/record/book"
)

// state says what is in a folder: names, modes and digests.
func state(t *testing.T, dir string) string {
	t.Helper()
	var out []string
	err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		data, err := os.ReadFile(p)
		out = append(out, fmt.Sprintf("%s %v %x", d.Name(), info.Mode(), sha256.Sum256(data)))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(out, "\n")
}

// Reading sees what is committed and still stands in the log, and changes
// nothing: not the book, not its log, and it leaves no file. This is so where
// nothing can be written, too.
func TestReadingChangesNothing(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	for name, ends := range map[string][]string{
		"with its log":          {"", "-wal"},
		"with log and index":    {"", "-wal", "-shm"},
		"of a book well closed": nil,
	} {
		for _, mode := range []fs.FileMode{0o700, 0o500} {
			dir := t.TempDir()
			at := filepath.Join(dir, "studio.sqlite")
			if ends == nil {
				if err := b.Backup(ctx, clock, at, book.Everything); err != nil {
					t.Fatal(err)
				}
			}
			for _, end := range ends {
				data, err := os.ReadFile(b.Path() + end)
				if err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(at+end, data, 0o440); err != nil {
					t.Fatal(err)
				}
			}
			if err := os.Chmod(dir, mode); err != nil {
				t.Fatal(err)
			}
			before := state(t, dir)
			if r := holds(t, at); r.Entries != int64(len(afternoon())) {
				t.Errorf("%s, %v: %d entries", name, mode, r.Entries)
			}
			if after := state(t, dir); after != before {
				t.Errorf("%s, %v: before\n%s\nafter\n%s", name, mode, before, after)
			}
			os.Chmod(dir, 0o700)
		}
	}
}
