package main

import (
	"context"
	"errors"
	"fmt"

	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/copies"
	"backleaf/record/studio/refuse"
)

func newBackup(a *app) {
	a.command("backup", nil, func(r *run) error {
		if err := copies.Vacant(r.args[0]); err != nil {
			return refuse.Because("backup-there", fmt.Errorf("no backup was made: %w", err))
		}
		s, err := a.openAnyway(r.ctx, true)
		if err != nil {
			return err
		}
		return errors.Join(a.done(copies.Backup(r.ctx, s, r.args[0], a.progress())), s.Book.Close())
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
