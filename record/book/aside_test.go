package book_test

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"backleaf/record"
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
				if err := b.Backup(ctx, clock, at, book.Everything, nil); err != nil {
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

// A backup copied over a book whose log was left, with the index of the log or
// without, or while a program has it open, is not read with that log, which
// would destroy it. With the log moved away it is the book it was.
func TestBackupOverLog(t *testing.T) {
	b := newBook(t)
	dir := t.TempDir()
	backup := filepath.Join(dir, "backup.sqlite")
	put(t, b, afternoon()[:3]...)
	if err := b.Backup(ctx, clock, backup, book.Everything, nil); err != nil {
		t.Fatal(err)
	}
	put(t, b, afternoon()[3:]...)
	copied := func(from, to string) {
		t.Helper()
		data, err := os.ReadFile(from)
		if err == nil {
			err = os.WriteFile(to, data, 0o600)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, ends := range [][]string{{"-wal"}, {"-wal", "-shm"}} {
		at := filepath.Join(t.TempDir(), "studio.sqlite")
		copied(backup, at)
		for _, end := range ends {
			copied(b.Path()+end, at+end)
		}
		before := state(t, filepath.Dir(at))
		for name, open := range map[string]func(context.Context, string) (*book.Book, error){"written": book.Open, "read": book.OpenReadOnly} {
			if _, err := open(ctx, at); !errors.Is(err, book.ErrOtherLog) {
				t.Errorf("with %v, %s: %v", ends, name, err)
			}
		}
		if after := state(t, filepath.Dir(at)); after != before {
			t.Errorf("before\n%s\nafter\n%s", before, after)
		}
		for _, end := range ends {
			os.Remove(at + end)
		}
		if r := holds(t, at); r.Entries != 3 {
			t.Errorf("with the log moved away: %d entries", r.Entries)
		}
	}
	copied(backup, b.Path())
	if _, err := b.Append(ctx, clock, record.Entry{Body: record.Note{Text: "two"}}); !errors.Is(err, book.ErrOtherLog) {
		t.Errorf("who has it open writes: %v", err)
	}
}
