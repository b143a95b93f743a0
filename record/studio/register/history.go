package register

import (
	"context"
	"slices"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/form"
	"backleaf/record/seal"
)

// begins reports whether the journal begins with one of that size and root.
func (r *Register) begins(ctx context.Context, size int64, root seal.Hash) (bool, error) {
	if size > r.size {
		return false, nil
	}
	was, err := seal.Root(size, r.book.HashReader(ctx))
	return was == root, err
}

// sameHistory says whether the book begins with the journal that a record
// speaks of, is older than it, or parts from it. A copy of the book that went
// its own way is as honest as this one: which of them is the studio's, the
// journal cannot tell.
func (r *Register) sameHistory(ctx context.Context, j *judgement, rec deed.Record) (bool, error) {
	if ok, err := r.begins(ctx, rec.Size, rec.Root); err != nil || ok {
		if ok {
			j.say(deed.Holds, "history-begins")
		}
		return ok, err
	}
	parts := int64(0)
	for _, e := range rec.Entries {
		if e.Seq >= r.size {
			break
		}
		now, err := r.book.Hash(ctx, e.Seq+1)
		if err != nil {
			return false, err
		}
		if now != seal.LeafHash(e.Bytes) {
			parts = e.Seq + 1
			break
		}
	}
	if parts == 0 && rec.Size > r.size {
		j.say(deed.Unknown, "book-older", record.With("entries", rec.Size), record.With("own", r.size))
	} else {
		j.say(deed.Unknown, "histories-part", record.With("entry", record.EntryRef(parts)))
	}
	return false, nil
}

// judgeRecord compares a record with the book: what it leaves out, and what was
// written about the panel since.
func (r *Register) judgeRecord(ctx context.Context, j *judgement, now *record.Panel, rec deed.Record, digest string, same bool) error {
	stored, err := deed.Entries(ctx, r.book, rec.Number, 0)
	if err != nil {
		return err
	}
	if !same {
		return nil // what came since can be told of one history only
	}
	if err := r.leftOut(ctx, j, rec, stored); err != nil {
		return err
	}
	var kinds []record.Kind
	var entries []record.EntryRef
	corrected := false
	for _, s := range stored {
		k := s.Entry.Kind()
		if c, ok := s.Entry.Body.(record.Issued); ok && c.Record == digest || s.Seq <= rec.Size || k == "studio" || k.Traits().Life == "keys" {
			continue // not about the panel, or said already
		}
		kinds, entries = append(kinds, k), append(entries, record.EntryRef(s.Seq))
		corrected = corrected || s.Entry.Corrects() != 0
	}
	was, is := rec.Panel.Description().Title, now.Description().Title
	if was != is {
		j.say(deed.Since, "title-changed", record.With("was", was), record.With("now", is))
	}
	if gone := varnishGone(now); gone != 0 && gone > rec.Size {
		j.say(deed.Since, "varnish-removed", record.With("entry", record.EntryRef(gone)))
	}
	switch {
	case kinds == nil:
		j.say(deed.Since, "nothing-since")
	case corrected:
		j.say(deed.Since, "record-corrected", record.With("kinds", kinds), record.With("entries", entries))
	default:
		j.say(deed.Since, "written-since", record.With("kinds", kinds), record.With("entries", entries))
	}
	return nil
}

// leftOut names entries that a record should show, and those that are others in
// the book.
func (r *Register) leftOut(ctx context.Context, j *judgement, rec deed.Record, stored []form.Stored) error {
	shown := map[int64]bool{}
	for _, e := range rec.Entries {
		shown[e.Seq+1] = true
		if now, err := r.book.Hash(ctx, e.Seq+1); err != nil {
			return err
		} else if now != seal.LeafHash(e.Bytes) {
			j.say(deed.Fails, "entry-differs", record.With("entry", record.EntryRef(e.Seq+1)))
		}
	}
	for _, s := range stored {
		if s.Seq <= rec.Size && !shown[s.Seq] && (slices.Contains(s.Entry.Panels, rec.Number) || shown[s.Entry.Corrects()]) {
			j.say(deed.Fails, "entry-left-out", record.With("entry", record.EntryRef(s.Seq)), record.With("kind", record.Code(s.Entry.Kind())))
		}
	}
	return nil
}

// varnishGone returns the last entry by which varnish was taken off; 0 if none
// was.
func varnishGone(p *record.Panel) (entry int64) {
	for _, x := range record.Each[record.Removed](p) {
		if x.Body.What == "varnish" {
			entry = max(entry, x.Seq)
		}
	}
	return entry
}
