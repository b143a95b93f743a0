package main

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/photos"
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
			if err := vacant(to); err != nil {
				return fmt.Errorf("cannot make the backup: %w", err)
			}
			b, err := a.open(ctx)
			if err != nil { // a book that cannot be written to can be copied
				if b, err = book.OpenReadOnly(ctx, a.path()); err != nil {
					return err
				}
				a.talk("note: the book is read-only here; it will not remember this backup")
			}
			err = a.backup(ctx, b, to)
			return errors.Join(err, b.Close())
		},
	}
}

func (a *app) backup(ctx context.Context, b *book.Book, to string) error {
	fail := func(err error) error { return fmt.Errorf("cannot make the backup: %w", err) }
	w, err := b.Workshop(ctx)
	if err != nil {
		return fail(err)
	}
	// Photographs first: a copy of the book never names one that was not yet
	// copied when the power failed.
	done := map[string]bool{}
	lost, err := a.copyPhotos(ctx, w, a.path(), to, done)
	if err != nil {
		return fail(err)
	}
	a.busy("copying and verifying %d entries", w.Last)
	err = b.Backup(ctx, a.now(), to, book.Everything)
	a.idle()
	if _, made := os.Stat(to); err != nil && made != nil {
		return fail(err)
	} else if err != nil {
		a.talk("note: %v", err)
	}
	err = a.afterCopy(ctx, "backup of "+a.path(), a.path(), to, done, lost)
	if _, key := os.Stat(keys.File(a.path())); key == nil {
		a.say("the signing key %s is not in it: keep a copy of that file, or its recovery sheet, in another place", keys.File(a.path()))
	}
	return err
}

func newRestore(a *app) *cobra.Command {
	var to string
	c := &cobra.Command{
		Use: "restore FILE", Short: "make a book from a backup; it never takes the place of a file",
		Long: `Make a book from a backup, with its photographs, after verifying all of it. If a
book stands in its place already, move that away first: nothing is overwritten.`,
		Example: `  backleaf restore /media/stick/studio-2026-05-02.sqlite
  backleaf restore panels-may.sqlite --to panels.sqlite`,
		Args: wanted(1, 1, "the backup to read"),
		RunE: func(c *cobra.Command, args []string) error {
			ctx, from, to := c.Context(), args[0], cmp.Or(to, a.path())
			if err := vacant(to); err != nil {
				return hinted(fmt.Errorf("cannot restore: %w", err), "move it away, or name another place with --to BOOK")
			}
			w, err := a.readBackup(ctx, from)
			if err != nil {
				return err
			}
			done := map[string]bool{}
			lost, err := a.copyPhotos(ctx, w, from, to, done)
			if err != nil {
				return fmt.Errorf("cannot restore: %w", err)
			}
			a.busy("verifying and copying %d entries", w.Last)
			err = book.Restore(ctx, from, to)
			a.idle()
			if err != nil {
				return err
			}
			err = a.afterCopy(ctx, "restored from "+from, from, to, done, lost)
			a.bookPath = to
			if _, key := os.Stat(keys.File(a.path())); key != nil && len(w.Keys) > 0 {
				a.say("the signing key is not in a backup: put its file back as %s, or recover it from the recovery sheet", keys.File(a.path()))
			}
			return err
		},
	}
	c.Flags().StringVar(&to, "to", "", "the book to make (default: the studio's book)")
	return c
}

// readBackup verifies a backup and folds it.
func (a *app) readBackup(ctx context.Context, from string) (*record.Workshop, error) {
	b, err := book.OpenReadOnly(ctx, from)
	if errors.Is(err, book.ErrNoBook) { // a hint to make a book would mislead
		return nil, fmt.Errorf("cannot open %s: there is no backup here", from)
	}
	if errors.Is(err, book.ErrNotBook) {
		return nil, hinted(err, "name a file that \"backleaf backup\" made")
	}
	if err != nil {
		return nil, err
	}
	defer b.Close()
	if _, err := b.Verify(ctx, a.progress("entries")); err != nil {
		return nil, fmt.Errorf("cannot restore from %s: %w", from, err)
	}
	return b.Workshop(ctx)
}

// vacant makes sure that a book can be written to path.
func vacant(path string) error {
	if err := book.Vacant(path); err != nil {
		return err
	}
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return fmt.Errorf("there is no folder %s", filepath.Dir(path))
	}
	return nil
}

// afterCopy says what a finished copy holds, and what was missing. The copy is
// there by now: an interruption comes too late.
func (a *app) afterCopy(ctx context.Context, what, from, to string, done map[string]bool, lost int) error {
	ctx = context.WithoutCancel(ctx)
	b, err := book.OpenReadOnly(ctx, to)
	if err != nil {
		return err
	}
	defer b.Close()
	w, err := b.Workshop(ctx)
	if err != nil {
		return err
	}
	// Somebody may have kept a photograph while the book was copied.
	more, err := a.copyPhotos(ctx, w, from, to, done)
	if err != nil {
		return fmt.Errorf("%s is written, but not all photographs: %w", to, err)
	}
	size, root, err := b.Tree(ctx)
	if err != nil {
		return err
	}
	a.say("%s  %s, verified: %d entries, root %x", to, what, size, root[:])
	lost += more
	if n := len(done); n > 0 {
		a.say("%s  %d kept, %d in order", filepath.Join(filepath.Dir(to), "photographs"), n, n-lost)
	}
	if lost > 0 {
		return &failure{fmt.Errorf("%d photographs are missing or changed and could not be copied", lost), "the copy of the book is good; look for these photographs in an earlier backup", exitIntegrity}
	}
	return nil
}

// copyPhotos copies the photographs of a book beside another, each checked by
// its digest on both sides, and counts those that are missing or changed.
// What is done already is left alone.
func (a *app) copyPhotos(ctx context.Context, w *record.Workshop, from, to string, done map[string]bool) (lost int, err error) {
	var all []record.Photograph
	for _, p := range w.Panels {
		for _, ph := range record.Each[record.Photograph](p) {
			if !done[ph.Body.SHA256] {
				done[ph.Body.SHA256] = true
				all = append(all, ph.Body)
			}
		}
	}
	show := a.progress("photographs")
	for i, p := range all {
		if err := ctx.Err(); err != nil {
			return lost, err
		}
		if show != nil {
			show(int64(i+1), int64(len(all)))
		}
		data, err := os.ReadFile(photos.Path(from, p))
		sum := sha256.Sum256(data)
		switch {
		case err == nil && hex.EncodeToString(sum[:]) != p.SHA256:
			err = errors.New("the file has been changed")
		case errors.Is(err, fs.ErrNotExist):
			err = errors.New("the file is missing")
		}
		if err != nil {
			lost++
			a.talk("photograph %s: %v", photos.Path(from, p), err)
			continue
		}
		if err := photos.Keep(to, p, data); err != nil {
			return lost, err
		}
		if err := photos.Check(to, p); err != nil {
			return lost, fmt.Errorf("photograph %s, read back: %w", photos.Path(to, p), err)
		}
	}
	return lost, nil
}

// busy says on a terminal what takes a while; idle takes it away again.
func (a *app) busy(format string, args ...any) {
	if a.isTerminal() {
		fmt.Fprintf(a.err, format+" …", args...)
	}
}

func (a *app) idle() {
	if a.isTerminal() {
		fmt.Fprint(a.err, "\r\x1b[K")
	}
}
