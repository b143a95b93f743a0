package book

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// openAside opens a copy of a book and of the log in which its last entries
// still stand. A reader that opened the book itself would write the log into
// it when leaving; one that left the log aside would not see those entries.
func openAside(ctx context.Context, path string) (b *Book, err error) {
	dir, err := os.MkdirTemp("", "backleaf-reading-")
	if err != nil {
		return nil, fmt.Errorf("cannot open %s: its last entries are still in its log, and there is no room to read them aside: %w", path, err)
	}
	defer func() {
		if err != nil {
			os.RemoveAll(dir)
		}
	}()
	copied := filepath.Join(dir, "book.sqlite")
	const tries = 20
	for range tries {
		ok, err := copyWithLog(ctx, path, copied)
		if err != nil {
			return nil, fmt.Errorf("cannot open %s: %w", path, err)
		}
		if !ok {
			continue
		}
		b, err := open(ctx, copied, shared)
		if err != nil {
			return nil, fmt.Errorf("cannot open %s with its log: %w", path, errors.Unwrap(err))
		}
		b.path, b.aside = path, dir
		return b, nil
	}
	return nil, errBusyLog
}

var errBusyLog = errors.New("the log of the book changes all the time")

// copyWithLog copies a book and its log. It is false if the log was begun anew
// meanwhile: what was copied of the book may then be of two moments. While it
// was not, whatever page changes in the book stands in the log too.
func copyWithLog(ctx context.Context, from, to string) (bool, error) {
	before, err := logHeader(from)
	if err != nil || before == nil {
		return false, err
	}
	for _, end := range []string{"", "-wal"} {
		if err := ctx.Err(); err != nil {
			return false, err
		}
		if err := copyFile(from+end, to+end); err != nil {
			if errors.Is(err, os.ErrNotExist) {
				return false, nil
			}
			return false, err
		}
	}
	after, err := logHeader(from)
	mine, err2 := logHeader(to)
	return err == nil && err2 == nil && bytes.Equal(before, after) && bytes.Equal(before, mine), nil
}

// logHeader reads the header of a log, whose salts change whenever it is begun
// anew (https://www.sqlite.org/fileformat2.html#the_write_ahead_log); nil if
// there is no log.
func logHeader(path string) ([]byte, error) {
	f, err := os.Open(path + "-wal")
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	defer f.Close()
	head := make([]byte, 32)
	if _, err := io.ReadFull(f, head); err != nil {
		return nil, nil
	}
	return head, nil
}

func copyFile(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Close())
}
