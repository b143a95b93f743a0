package exchange

import (
	"context"
	"errors"
	"fmt"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
)

// Import appends entries read from a file, all or none; lines are where they
// stand in it.
func Import(ctx context.Context, s *studio.Session, name string, es []record.Entry, lines []int) ([]record.Entry, error) {
	if len(es) == 0 {
		return nil, nil
	}
	done, err := s.Book.Append(ctx, s.Clock(), es...)
	if err != nil {
		return nil, refuse.Because("not-imported", located(err, name, lines, "entry %d of the file, %w"))
	}
	return done, nil
}

// located names the line of the file that an entry comes from.
func located(err error, name string, lines []int, format string) error {
	at, ok := errors.AsType[*book.AppendError](err)
	if !ok || at.Index >= len(lines) {
		return err
	}
	err = at.Err
	if format != "" {
		err = fmt.Errorf(format, at.Index+1, at.Err)
	}
	return &BadFile{name, lines[at.Index], err}
}
