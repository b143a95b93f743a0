package deed

import (
	"context"
	"slices"

	"backleaf/record"
	"backleaf/record/form"
	"backleaf/record/seal"
)

// Journal is where the entries of a record come from; a book is one.
type Journal interface {
	// Needed returns what must be folded for one panel, in order, among the
	// first size entries; 0 means all. It may return more.
	Needed(ctx context.Context, n record.Number, size int64) ([]form.Stored, error)
	// Tree returns the number of entries and the root of the hash tree.
	Tree(ctx context.Context) (size int64, root seal.Hash, err error)
	// HashReader reads the stored hashes of the tree, for proofs.
	HashReader(ctx context.Context) seal.HashReader
}

// Entries returns the entries of a journal that a panel follows from, among
// the first size entries; 0 means all.
func Entries(ctx context.Context, j Journal, n record.Number, size int64) ([]form.Stored, error) {
	all, err := j.Needed(ctx, n, size)
	if err != nil {
		return nil, err
	}
	return choose(all, n)
}

// choose returns the entries that a panel follows from, out of those that a
// journal needs for it: without the shelf it did not use, the notes and
// readings of the room, and corrections that hold for other panels only. Of
// the studio there is what opened the journal, what acts mean, and what stands
// now.
func choose(all []form.Stored, n record.Number) ([]form.Stored, error) {
	w, err := record.Fold(form.Entries(all), n)
	if err != nil {
		return nil, err
	}
	return Chosen(w, all, n), nil
}

// Chosen is what [Entries] returns, out of entries that were read before and
// that are at least those that the journal needs for the panel; w is folded from
// them, or from the whole journal.
func Chosen(w *record.Workshop, all []form.Stored, n record.Number) []form.Stored {
	var lots []record.Key
	chosen := map[int64]bool{}
	use := func(e record.Entry) {
		for _, seq := range e.Described() {
			chosen[seq] = true
		}
		_, ls := record.Shelf(e.Body)
		lots = append(lots, ls...)
	}
	var first, last int64 // entries of the studio
	for _, s := range all {
		if s.Entry.Kind() == "studio" {
			if first == 0 {
				first = s.Seq
			}
			last = s.Seq
		}
		if slices.Contains(s.Entry.Panels, n) {
			use(w.Bound(s.Entry))
		}
	}
	chosen[first], chosen[last] = true, true
	if p := w.Panel(n); p != nil {
		for _, e := range p.Events { // a correction may name another tin
			use(record.Entry{Makers: e.Makers, StudioAs: e.StudioAs, Body: e.Body})
		}
	}
	for _, s := range slices.Backward(all) {
		if l, ok := s.Entry.Body.(record.Lot); ok && slices.Contains(lots, l.Key) {
			chosen[s.Seq] = true
			use(w.Bound(s.Entry))
			if now, ok := w.Lot(l.Key); ok {
				use(record.Entry{Body: now})
			}
		}
	}
	var out []form.Stored
	for _, s := range all {
		e := s.Entry
		// A correction stands after what it corrects.
		if slices.Contains(e.Panels, n) || e.Kind().Traits().Life == "keys" || chosen[e.Corrects()] && len(e.Panels) == 0 {
			chosen[s.Seq] = true
		}
		if chosen[s.Seq] {
			out = append(out, s)
		}
	}
	return out
}
