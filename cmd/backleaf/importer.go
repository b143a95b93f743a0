package main

import (
	"context"
	"errors"
	"fmt"

	"backleaf/record"
	"backleaf/record/book"
)

// importEntries appends entries read from a file, all or none.
func (a *app) importEntries(ctx context.Context, name string, es []record.Entry, lines []int) error {
	if len(es) == 0 {
		a.say("%s  no entries", name)
		return nil
	}
	b, err := book.Open(ctx, a.path())
	if err != nil {
		return err
	}
	defer b.Close()
	now := a.now()
	done, err := b.Append(ctx, now, es...)
	if err != nil {
		var at *book.AppendError
		if errors.As(err, &at) && at.Index < len(lines) {
			err = &badFile{name, lines[at.Index], fmt.Errorf("entry %d of the file, %w", at.Index+1, at.Err)}
		}
		return hinted(err, "nothing was written; put the file right and import it again")
	}
	a.say("E%d to E%d  %d entries from %s", done[0].Seq, done[len(done)-1].Seq, len(done), name)
	return nil
}
