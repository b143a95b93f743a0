// Package copies makes backups of a book with its photographs and papers, and books from
// backups. Nothing is ever overwritten.
package copies

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
)

// Vacant makes sure that a book can be written to a path.
func Vacant(path string) error {
	if err := book.Vacant(path); err != nil {
		return err
	}
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return fmt.Errorf("there is no folder %s", filepath.Dir(path))
	}
	return nil
}

// Backup writes a verified copy of the book and its photographs.
func Backup(ctx context.Context, s *studio.Session, to string, progress studio.Progress) (studio.Written, error) {
	fail := func(err error) error { return fmt.Errorf("cannot make the backup: %w", err) }
	c := newCopier(s.Book.Path(), to, progress)
	// Photographs first: a copy of the book never names one that was not yet
	// copied when the power failed.
	if err := c.files(ctx, s.Book); err != nil {
		return c.Written, fail(err)
	}
	end := progress.Busy("copying-book", 0)
	err := s.Book.Backup(ctx, s.Clock(), to, book.Everything, progress.Of("entries"))
	end()
	if _, made := os.Stat(to); err != nil && made != nil {
		return c.Written, fail(err)
	} else if err != nil {
		c.Warn("backup-remark", record.With("why", err.Error()))
	}
	here, no := os.Stat(filepath.Dir(c.from))
	if there, err := os.Stat(filepath.Dir(to)); no == nil && err == nil && os.SameFile(here, there) {
		c.Warn("backup-beside")
	}
	if err = c.finish(ctx, "backup"); c.Means != nil && keys.There(c.from) {
		c.Mean("key-not-in-backup", record.With("file", keys.File(c.from)))
	}
	return c.Written, err
}

// Restore makes a book from a backup, with its photographs and papers, after verifying
// all of it. highest are the highest numbers on any label, one a year, or
// [typed.NoneLater]: the book never gives them or lower ones to another panel.
// sound is asked before anything is written.
func Restore(ctx context.Context, from, to string, highest []string, progress studio.Progress, sound func() error) (studio.Written, error) {
	c := newCopier(from, to, progress)
	b, err := openBackup(ctx, from)
	if err != nil {
		return c.Written, err
	}
	defer b.Close()
	if err := Vacant(to); err != nil {
		return c.Written, refuse.Because("restore-there", fmt.Errorf("nothing was restored: %w", err))
	}
	if _, err := b.Verify(ctx, progress.Of("entries")); err != nil {
		return c.Written, fmt.Errorf("cannot restore from %s: %w", from, err)
	}
	w, err := b.WorkshopOf(ctx)
	if err != nil {
		return c.Written, err
	}
	roll, err := b.Roll(ctx)
	if err != nil {
		return c.Written, err
	}
	last := record.Number("")
	if n := len(roll.Numbers); n > 0 {
		last = roll.Numbers[n-1]
	}
	used, err := typed.Highest(w.Studio, last, highest)
	if err == nil {
		err = sound()
	}
	if err != nil {
		return c.Written, err
	}
	if err := c.files(ctx, b); err != nil {
		return c.Written, fmt.Errorf("cannot restore: %w", err)
	}
	size, _, err := b.Tree(ctx)
	if err != nil {
		return c.Written, err
	}
	end := progress.Busy("restoring-entries", size)
	err = book.Restore(ctx, from, to, used...)
	end()
	if err != nil {
		return c.Written, err
	}
	if err = c.finish(ctx, "restored"); c.Means != nil && len(w.Keys) > 0 && !keys.There(to) {
		c.Mean("key-not-restored", record.With("file", keys.File(to)))
	}
	if err != nil {
		return c.Written, err
	}
	for _, n := range used {
		c.Mean("restored-highest", record.With("highest", n), record.With("last", last), record.With("missing", max(0, n.Serial()-serials(roll.Numbers, n.Year()))))
	}
	return c.Written, err
}

// serials is the highest serial of a year that a book knows.
func serials(all []record.Number, year int) (highest int) {
	for _, n := range all {
		if n.Year() == year {
			highest = max(highest, n.Serial())
		}
	}
	return highest
}

// openBackup opens a backup for reading.
func openBackup(ctx context.Context, from string) (*book.Book, error) {
	b, err := book.OpenReadOnly(ctx, from)
	if errors.Is(err, book.ErrNoBook) { // a hint to make a book would mislead
		return nil, refuse.Cannot("no-backup", "cannot open %s: there is no backup here", from)
	}
	if errors.Is(err, book.ErrNotBook) {
		return nil, refuse.Because("no-backup", err)
	}
	return b, err
}

// copier copies the photographs and papers of a book beside another.
type copier struct {
	studio.Written
	from, to string
	progress studio.Progress
	done     map[string]bool // by digest
	n, lost  map[string]int  // by folder; lost: missing or changed, and not copied
}

func newCopier(from, to string, progress studio.Progress) *copier {
	return &copier{from: from, to: to, progress: progress, done: map[string]bool{}, n: map[string]int{}, lost: map[string]int{}}
}

// finish reads the finished copy and says what it holds. It is there by now: an
// interruption comes too late.
func (c *copier) finish(ctx context.Context, what record.Code) error {
	ctx = context.WithoutCancel(ctx)
	b, err := book.OpenReadOnly(ctx, c.to)
	if err != nil {
		return err
	}
	defer b.Close()
	// Somebody may have kept a photograph while the book was copied.
	if err := c.files(ctx, b); err != nil {
		return fmt.Errorf("%s is written, but not all photographs and papers: %w", c.to, err)
	}
	entries, root, err := b.Tree(ctx)
	if err != nil {
		return err
	}
	c.Mean("copy-made", record.With("file", c.to), record.With("what", what), record.With("from", c.from), record.With("entries", entries), record.With("root", fmt.Sprintf("%x", root[:])))
	for _, folder := range []string{kept.Photographs, kept.Papers} {
		if n := c.n[folder]; n > 0 {
			c.Mean("files-kept", record.With("folder", kept.Folder(c.to, folder)), record.With("n", n), record.With("good", n-c.lost[folder]))
		}
	}
	if n := c.lost[kept.Photographs] + c.lost[kept.Papers]; n > 0 {
		return refuse.Breaks("copy-incomplete", "%s missing or changed, and not copied", kept.Count(n, "kept file"))
	}
	return nil
}

// files copies the kept files that are not done yet, each checked by its
// digest on both sides, and counts those that are missing or changed.
func (c *copier) files(ctx context.Context, b *book.Book) error {
	var all []kept.File
	if err := kept.Each(ctx, b, func(f kept.File) error {
		if !c.done[f.SHA256] {
			c.done[f.SHA256] = true
			all = append(all, f)
			c.n[f.Folder]++
		}
		return nil
	}); err != nil {
		return err
	}
	show := c.progress.Of("photographs")
	for i, f := range all {
		if err := ctx.Err(); err != nil {
			return err
		}
		if show != nil {
			show(int64(i+1), int64(len(all)))
		}
		data, err := kept.Read(c.from, f)
		if err != nil {
			code := "photograph-bad"
			if f.Folder == kept.Papers {
				code = "paper-bad"
			}
			c.lost[f.Folder]++
			c.Warn(code, record.With("file", kept.Path(c.from, f)), record.With("why", err.Error()))
			continue
		}
		if err := kept.Keep(c.to, f, data); err != nil {
			return err
		}
		if err := kept.Check(c.to, f); err != nil {
			return fmt.Errorf("%s, read back: %w", kept.Path(c.to, f), err)
		}
	}
	return nil
}
