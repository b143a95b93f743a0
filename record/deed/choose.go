package deed

import (
	"context"
	"slices"

	"backleaf/record"
	"backleaf/record/book"
)

// Entries returns the entries of a book's journal that a panel follows from,
// among the first size entries; 0 means all.
func Entries(ctx context.Context, b *book.Book, n record.Number, size int64) ([]book.Stored, error) {
	all, err := b.Entries(ctx, book.Filter{Panels: []record.Number{n}, To: size})
	if err != nil {
		return nil, err
	}
	return choose(all, n)
}

// choose returns the entries that a panel follows from, out of those that
// [book.Filter] names for it: without the shelf it did not use, the notes and
// readings of the room, older entries of the studio, and corrections that hold
// for other panels only.
func choose(all []book.Stored, n record.Number) ([]book.Stored, error) {
	w, err := record.Fold(entriesOf(all))
	if err != nil {
		return nil, err
	}
	materials, lots := map[record.Key]bool{}, map[record.Key]bool{}
	use := func(e record.Entry) {
		ms, ls := e.Shelf()
		for _, m := range ms {
			materials[m] = true
		}
		for _, l := range ls {
			lots[l] = true
		}
	}
	var studio int64
	for _, s := range all {
		if s.Entry.Kind() == "studio" {
			studio = s.Seq
		}
		if slices.Contains(s.Entry.Panels, n) {
			use(s.Entry)
		}
	}
	if p := w.Panel(n); p != nil {
		for _, e := range p.Events { // a correction may name another tin
			use(record.Entry{Body: e.Body})
		}
	}
	for _, s := range all {
		if l, ok := s.Entry.Body.(record.Lot); ok && lots[l.Key] {
			use(s.Entry)
			if now, ok := w.Lot(l.Key); ok {
				use(record.Entry{Body: now})
			}
		}
	}
	chosen := map[int64]bool{}
	var out []book.Stored
	for _, s := range all {
		e := s.Entry
		in := slices.Contains(e.Panels, n)
		switch b := e.Body.(type) {
		case record.Studio:
			in = s.Seq == studio
		case record.Material:
			in = materials[b.Key]
		case record.Lot:
			in = lots[b.Key]
		case record.KeyMade, record.KeyRetired, record.KeyLost:
			in = true
		}
		// A correction stands after what it corrects.
		in = in || chosen[e.Corrects()] && len(e.Panels) == 0
		if in {
			chosen[s.Seq] = true
			out = append(out, s)
		}
	}
	return out, nil
}

func entriesOf(stored []book.Stored) []record.Entry {
	es := make([]record.Entry, len(stored))
	for i, s := range stored {
		es[i] = s.Entry
	}
	return es
}
