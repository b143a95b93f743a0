//go:build unix

package book_test

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"backleaf/record"
	"backleaf/record/book"
)

// Two names of one file would have two logs, and two programs would write past
// each other. It can be read and copied meanwhile.
func TestTwoNames(t *testing.T) {
	path := filepath.Join(t.TempDir(), "studio.sqlite")
	b := create(t, path)
	put(t, b, shelf...)
	other := filepath.Join(t.TempDir(), "other.sqlite")
	if err := os.Link(path, other); err != nil {
		t.Skip(err)
	}
	if _, err := b.Append(ctx, clock, record.Entry{Body: record.Note{Text: "two"}}); !errors.Is(err, book.ErrTwoNames) {
		t.Errorf("an open book was written to: %v", err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{path, other} {
		if _, err := book.Open(ctx, name); !errors.Is(err, book.ErrTwoNames) {
			t.Errorf("%s was opened for writing: %v", name, err)
		}
	}
	r, err := book.OpenReadOnly(ctx, other)
	if err != nil {
		t.Fatal(err)
	}
	copied := filepath.Join(t.TempDir(), "copy.sqlite")
	if err := errors.Join(r.Backup(ctx, clock, copied, book.Everything, nil), r.Close()); err != nil {
		t.Fatal(err)
	}
	again, err := book.Open(ctx, copied)
	if err != nil {
		t.Fatal(err)
	}
	again.Close()
	if err := os.Remove(other); err != nil {
		t.Fatal(err)
	}
	if b, err = book.Open(ctx, path); err != nil {
		t.Fatal(err)
	}
	b.Close()
}

// A symbolic link leads to the one book: what is kept with it stands beside the
// real file.
func TestSymbolicLink(t *testing.T) {
	path := filepath.Join(t.TempDir(), "studio.sqlite")
	create(t, path)
	link := filepath.Join(t.TempDir(), "link.sqlite")
	if err := os.Symlink(path, link); err != nil {
		t.Skip(err)
	}
	b, err := book.Open(ctx, link)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	real, err := filepath.EvalSymlinks(path)
	if err != nil || b.Path() != real {
		t.Errorf("%s, want %s, %v", b.Path(), real, err)
	}
}
