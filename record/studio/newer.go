package studio

import (
	"errors"

	"backleaf/record"
	"backleaf/record/studio/refuse"
)

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
		return &refuse.Error{Class: refuse.Later, Err: errors.New("newer: a later program wrote of " + string(p.Number) + " what this one cannot read"),
			Said: record.Say("panel-newer", record.With("panel", p.Number), record.With("entries", entries))}
	}
	return nil
}
