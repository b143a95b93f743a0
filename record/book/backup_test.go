package book_test

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"backleaf/record/book"
)

func TestBackup(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	if _, ok, err := b.LastBackup(ctx); ok || err != nil {
		t.Error(ok, err)
	}
	dir := t.TempDir()
	to := filepath.Join(dir, "backup.sqlite")
	if err := b.Backup(ctx, clock, to, book.Everything, nil); err != nil {
		t.Fatal(err)
	}
	if at, ok, err := b.LastBackup(ctx); !ok || !at.Equal(clock) || err != nil {
		t.Error(at, ok, err)
	}
	_, root, _ := b.Tree(ctx)
	if r := holds(t, to); r.Root != root || r.Entries != 16 {
		t.Error(r)
	}
	was, _ := os.ReadFile(to)
	if was[18] != 1 || was[19] != 1 {
		t.Error("a backup must be one file that a read-only disk can hold: it has a log")
	}
	if err := b.Backup(ctx, clock, to, book.Everything, nil); !errors.Is(err, fs.ErrExist) {
		t.Error("a file was replaced:", err)
	}

	restored := filepath.Join(dir, "studio.sqlite")
	if err := book.Restore(ctx, to, restored); err != nil {
		t.Fatal(err)
	}
	if err := book.Restore(ctx, to, restored); !errors.Is(err, fs.ErrExist) {
		t.Error("a file was replaced:", err)
	}
	r, err := book.Open(ctx, restored)
	if err != nil {
		t.Fatal(err)
	}
	put(t, r, `{"kind":"note","text":"life goes on"}`)
	r.Close()
	holds(t, restored)
	if now, _ := os.ReadFile(to); !bytes.Equal(now, was) {
		t.Error("restoring changed the backup")
	}

	// A damaged backup is not restored.
	db := raw(t, to)
	dropGuards(t, db)
	do(t, db, change11)
	db.Close()
	var bad *book.BadEntry
	if err := book.Restore(ctx, to, filepath.Join(dir, "again")); !errors.As(err, &bad) || bad.Seq != 11 {
		t.Error(err)
	}
	if err := book.Restore(ctx, filepath.Join(dir, "none"), filepath.Join(dir, "again")); !errors.Is(err, book.ErrNoBook) {
		t.Error(err)
	}
	names, _ := filepath.Glob(filepath.Join(dir, "*"))
	hidden, _ := filepath.Glob(filepath.Join(dir, ".*"))
	if len(names)+len(hidden) != 2 {
		t.Error("left behind:", names, hidden)
	}
}
