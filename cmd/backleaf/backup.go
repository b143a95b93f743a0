package main

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/copies"
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/keys"
)

func newBackup(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "backup FILE", Short: "write a verified copy of the book and its photographs",
		Long: `Write a copy of the book to FILE, which must not be there yet, and read it back
before saying so. Others may write meanwhile. Photographs are copied into the folder
"photographs" beside FILE and checked by their digests; backups in one folder share
it. The copy holds private parts (buyers, prices): keep it as safe as the book. The
signing key is not in it.`,
		Example: `  backleaf backup /media/stick/studio-2026-05-02.sqlite
  backleaf --book panels.sqlite backup ../backup/panels-may.sqlite`,
		Args: wanted(1, 1, "the file to write"),
		RunE: func(c *cobra.Command, args []string) error {
			ctx, to := c.Context(), args[0]
			if err := copies.Vacant(to); err != nil {
				return fmt.Errorf("cannot make the backup: %w", err)
			}
			s, err := a.openAnyway(ctx, true)
			if err != nil {
				return err
			}
			made, err := copies.Backup(ctx, s, to, a.progress())
			err = errors.Join(a.sayCopy("backup", a.path(), made, err), s.Book.Close())
			if made.Path != "" && keys.There(a.path()) {
				a.told("key-not-in-backup", record.With("file", keys.File(a.path())))
			}
			return err
		},
	}
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
	if c.Photographs > 0 {
		a.told("files-kept", record.With("folder", kept.Folder(c.Path, kept.Photographs)), record.With("n", c.Photographs), record.With("good", c.Photographs-c.Lost))
	}
	if c.Papers > 0 {
		a.told("files-kept", record.With("folder", kept.Folder(c.Path, kept.Papers)), record.With("n", c.Papers), record.With("good", c.Papers-c.LostPapers))
	}
	if n := c.Lost + c.LostPapers; n > 0 {
		return &failure{fmt.Errorf("%s missing or changed, and not copied", deposit.Count(n, "kept file")), "the copy of the book is good; look for these photographs or papers in an earlier backup", exitIntegrity}
	}
	return nil
}
