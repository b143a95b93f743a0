package book_test

import (
	"errors"
	"io/fs"
	"path/filepath"
	"testing"

	"backleaf/record/book"
)

// TestLeftLog: the log that a lost book left behind is not read into a new
// one (https://www.sqlite.org/howtocorrupt.html, section 1.4).
func TestLeftLog(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	for _, end := range []string{"-wal", "-shm", "-journal"} {
		path := filepath.Join(t.TempDir(), "new.sqlite")
		writeFile(t, path+end, []byte("left behind"))
		if err := b.Backup(ctx, clock, path, book.Everything, nil); !errors.Is(err, fs.ErrExist) {
			t.Errorf("a backup beside %s: %v", end, err)
		}
		if err := book.Restore(ctx, b.Path(), path); !errors.Is(err, fs.ErrExist) {
			t.Errorf("a restore beside %s: %v", end, err)
		}
		if _, err := book.Create(ctx, path); !errors.Is(err, fs.ErrExist) {
			t.Errorf("a new book beside %s: %v", end, err)
		}
	}
}
