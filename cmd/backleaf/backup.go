package main

import (
	"context"
	"errors"
	"fmt"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/copies"
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/refuse"
)

func newBackup(a *app) {
	a.command("backup", nil, func(r *run) error {
		if err := copies.Vacant(r.args[0]); err != nil {
			return refuse.Because("backup-there", fmt.Errorf("cannot make the backup: %w", err))
		}
		s, err := a.openAnyway(r.ctx, true)
		if err != nil {
			return err
		}
		made, err := copies.Backup(r.ctx, s, r.args[0], a.progress())
		err = errors.Join(a.sayCopy("backup", a.path(), made, err), s.Book.Close())
		if made.Path != "" && keys.There(a.path()) {
			a.told("key-not-in-backup", record.With("file", keys.File(a.path())))
		}
		return err
	})
}

// openAnyway opens the book, and says a remark where it can only be read.
func (a *app) openAnyway(ctx context.Context, remark bool) (*studio.Session, error) {
	b, err := book.Open(ctx, a.path())
	if err != nil {
		if b, err = book.OpenReadOnly(ctx, a.path()); err != nil {
			return nil, err
		}
		if remark {
			a.noted("book-read-only")
		}
	}
	return a.session(b), nil
}

// sayCopy says what a finished copy holds, and what was missing.
func (a *app) sayCopy(what record.Code, from string, c copies.Copy, err error) error {
	a.warn(nil, c.Warnings)
	if err != nil {
		return err
	}
	a.told("copy-made", record.With("file", c.Path), record.With("what", what), record.With("from", from), record.With("entries", c.Entries), record.With("root", fmt.Sprintf("%x", c.Root[:])))
	for _, f := range []struct {
		folder  string
		n, lost int
	}{{kept.Photographs, c.Photographs, c.Lost}, {kept.Papers, c.Papers, c.LostPapers}} {
		if f.n > 0 {
			a.told("files-kept", record.With("folder", kept.Folder(c.Path, f.folder)), record.With("n", f.n), record.With("good", f.n-f.lost))
		}
	}
	if n := c.Lost + c.LostPapers; n > 0 {
		return &failure{fmt.Errorf("%s missing or changed, and not copied", deposit.Count(n, "kept file")), "the copy of the book is good; look for these photographs or papers in an earlier backup", exitIntegrity}
	}
	return nil
}
