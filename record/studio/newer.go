package studio

import (
	"fmt"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/refuse"
)

// Known refuses to judge, issue or print anything out of a book that a later
// program wrote.
func Known(b *book.Book) error {
	if b.Newer() {
		return fmt.Errorf("newer: may be out of date: %w", book.ErrNewer)
	}
	return nil
}

// Readable refuses to judge, issue or print anything for a panel of which a
// later program wrote entries that this one cannot read.
func Readable(ps ...*record.Panel) error {
	for _, p := range ps {
		if p == nil || len(p.Newer) == 0 {
			continue
		}
		var entries []record.EntryRef
		for _, seq := range p.Newer {
			entries = append(entries, record.EntryRef(seq))
		}
		err := refuse.Cannot("panel-newer", "newer: a later program wrote of %s what this one cannot read", p.Number).With(record.With("panel", p.Number), record.With("entries", entries))
		err.Class = refuse.Later
		return err
	}
	return nil
}
