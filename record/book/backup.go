package book

import (
	"context"
	"errors"
	"fmt"
	"os"
	"time"

	"backleaf/record"
	"backleaf/record/safefile"
)

// Contents says whether a copy holds the private parts.
type Contents bool

// What a copy may hold.
const (
	Everything     Contents = true
	WithoutPrivate Contents = false
)

// Backup writes a verified copy to path, which must not be there yet. Others
// may write meanwhile; the copy holds what was there at one moment. A copy of
// everything is remembered as the last backup. progress of its verification may
// be nil.
func (b *Book) Backup(ctx context.Context, now time.Time, path string, what Contents, progress func(done, total int64)) error {
	if err := b.copyTo(ctx, path, what, progress); err != nil {
		return err
	}
	if what == Everything && b.writer != nil {
		if err := b.SetSetting(ctx, lastBackup, now.Format(time.RFC3339)); err != nil {
			return fmt.Errorf("the backup is written, but that could not be noted in the book: %w", err)
		}
	}
	return nil
}

// Restore verifies a backup and writes a verified copy of it to path to, which
// must not be there yet. used are numbers that stand on labels though the
// backup may not know of them: the copy never gives them, nor a lower one of
// the same year, to another panel.
func Restore(ctx context.Context, from, to string, used ...record.Number) error {
	b, err := OpenReadOnly(ctx, from)
	if err != nil {
		return err
	}
	defer b.Close()
	if _, err := b.Verify(ctx, nil); err != nil {
		return fmt.Errorf("cannot restore from %s: %w", from, err)
	}
	return b.copyTo(ctx, to, Everything, nil, used...)
}

func (b *Book) copyTo(ctx context.Context, path string, what Contents, progress func(done, total int64), used ...record.Number) error {
	if err := Vacant(path); err != nil {
		return err
	}
	return safefile.Create(path, 0o600, func(f *os.File) error {
		if err := b.vacuumInto(ctx, f.Name()); err != nil {
			return err
		}
		if what == WithoutPrivate {
			if err := dropPrivate(ctx, f.Name()); err != nil {
				return err
			}
		}
		if err := keepUsed(ctx, f.Name(), used); err != nil {
			return err
		}
		return verifyCopy(ctx, f.Name(), progress)
	})
}

func (b *Book) vacuumInto(ctx context.Context, path string) error {
	s, err := newSession(ctx, b.db)
	if err != nil {
		return err
	}
	_, err = s.conn.ExecContext(ctx, "VACUUM INTO ?", path)
	return errors.Join(err, s.close())
}

// dropPrivate removes all private parts and preferences from a copy, and every
// trace of them.
func dropPrivate(ctx context.Context, path string) error {
	db, err := openFile(path, readWrite)
	if err != nil {
		return err
	}
	_, err = db.ExecContext(ctx, "PRAGMA journal_mode = MEMORY; DELETE FROM private; DELETE FROM setting; VACUUM;")
	return errors.Join(err, db.Close())
}

// keepUsed notes numbers in a copy that nobody uses yet.
func keepUsed(ctx context.Context, path string, used []record.Number) error {
	if len(used) == 0 {
		return nil
	}
	db, err := openFile(path, readWrite)
	if err != nil {
		return err
	}
	_, err = db.ExecContext(ctx, "PRAGMA journal_mode = MEMORY")
	for _, n := range used {
		if err == nil {
			_, err = db.ExecContext(ctx, raiseUsed, numbersUsed(n.Year()), fmt.Sprint(n.Serial()))
		}
	}
	return errors.Join(err, db.Close())
}

func verifyCopy(ctx context.Context, path string, progress func(done, total int64)) error {
	c, err := OpenReadOnly(ctx, path)
	if err != nil {
		return err
	}
	_, err = c.Verify(ctx, progress)
	return errors.Join(err, c.Close())
}
