package register

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"sort"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/verify"
	"backleaf/record/tell"
)

// broken says that an older state is not the beginning of today's.
func broken(format string, args ...any) error {
	return refuse.Breaks("not-the-beginning", format, args...)
}

// Compare proves that what an older head, certificate, record or copy of the book
// saw of the journal is the beginning of today's, or says where it breaks. The book
// is verified before. The words are those of what does not hold in a head.
func Compare(ctx context.Context, b *book.Book, e verify.Evidence, words *tell.Catalogue, progress studio.Progress) (w studio.Written, err error) {
	if _, err := b.Verify(ctx, progress.Of("entries")); err != nil {
		return w, err
	}
	r, err := Of(ctx, b)
	if err != nil {
		return w, err
	}
	what := record.Code("head")
	var then int64
	if e.Kind == verify.Book {
		what = "book"
		then, err = r.compareBook(ctx, e.Name, progress)
	} else {
		then, err = r.compareHead(ctx, e, words)
	}
	if err == nil {
		w.Mean("head-holds", record.With("then", then), record.With("what", what), record.With("now", r.size))
	}
	return w, err
}

// compareHead returns how many entries a head saw.
func (r *Register) compareHead(ctx context.Context, e verify.Evidence, words *tell.Catalogue) (then int64, err error) {
	old, rec, err := r.olderHead(e, words)
	if refuse.Code(err) == "no-head" {
		return 0, err
	}
	if err != nil {
		return 0, refuse.Breaks("not-a-head", "%s: %w", e.Name, err)
	}
	if old.Size > r.size {
		return 0, broken("%s was made from a book with %d entries, and this one has only %d: it may be an older copy, or entries are missing", e.Name, old.Size, r.size)
	}
	path, err := seal.ProvePrefix(r.size, old.Size, r.book.HashReader(ctx))
	if err != nil {
		return 0, err
	}
	if err := (seal.Head{Origin: old.Origin, Size: r.size, Root: r.root}).CheckPrefix(old, path); err != nil {
		return 0, r.breaks(ctx, old, rec)
	}
	return old.Size, nil
}

// olderHead takes a head out of what was named, and checks who signed it.
func (r *Register) olderHead(e verify.Evidence, words *tell.Catalogue) (seal.Head, *deed.Record, error) {
	none := refuse.Unclearly("no-head", "%s holds no head of a journal", e.Name)
	if e.Unread != nil {
		if e.Kind != verify.Certificate {
			return seal.Head{}, nil, none
		}
		return seal.Head{}, nil, errors.New(tell.Say(words, e.Unread.Said))
	}
	rep := deed.Verify(e.Files)
	for _, x := range rep.Results {
		if x.Verdict == deed.Fails {
			return seal.Head{}, nil, errors.New(tell.Say(words, x.Said))
		}
	}
	switch {
	case e.Files.Head != nil:
		h, err := r.openHead(e.Files.Head)
		return h, rep.Record, err
	case rep.Record == nil:
		return seal.Head{}, nil, none
	}
	if e.Files.Signature == nil || rep.Key == nil || r.ring.Standing(*rep.Key) == deed.Unrecorded {
		return seal.Head{}, nil, errors.New("its head is not signed with a key of the studio")
	}
	origin, err := seal.Origin(rep.Record.Workshop.Studio.Mark, rep.Record.Workshop.Studio.Journal)
	return seal.Head{Origin: origin, Size: rep.Record.Size, Root: rep.Record.Root}, rep.Record, err
}

// breaks says as exactly as it can where the journal was changed: at an entry
// that a record shows, or after the last kept head that still fits.
func (r *Register) breaks(ctx context.Context, old seal.Head, rec *deed.Record) error {
	if rec != nil {
		for _, e := range rec.Entries {
			now, err := r.book.Hash(ctx, e.Seq+1)
			if err != nil {
				return err
			}
			if now != seal.LeafHash(e.Bytes) {
				return broken("entry %d is not what it was when the older head was signed; the record there shows it as it was", e.Seq+1)
			}
		}
	}
	heads, err := r.book.Heads(ctx)
	if err != nil {
		return err
	}
	fits := int64(0)
	for _, h := range heads {
		if _, err := r.openHead([]byte(h.Note)); err == nil && h.Size < old.Size {
			fits = h.Size
		}
	}
	if fits > 0 {
		return broken("the book does not begin with the %d entries of the older head; a kept head still fits up to entry %d, so the break lies after it", old.Size, fits)
	}
	return broken("the book does not begin with the %d entries of the older head: at least one of them was changed, removed or put in", old.Size)
}

// compareBook compares with an older copy of the book and returns how many entries
// it has. Both were read back, so that their hashes stand for their entries.
func (r *Register) compareBook(ctx context.Context, name string, progress studio.Progress) (then int64, err error) {
	older, err := book.OpenReadOnly(ctx, name)
	if err != nil {
		return 0, err
	}
	defer older.Close()
	if _, err := older.Verify(ctx, progress.Of("entries")); err != nil {
		return 0, fmt.Errorf("%s: %w", name, err)
	}
	then, _, err = older.Tree(ctx)
	if err != nil {
		return 0, err
	}
	both := min(then, r.size)
	at := 1 + int64(sort.Search(int(both), func(i int) bool {
		root, failed := seal.Root(int64(i)+1, older.HashReader(ctx))
		same, more := r.begins(ctx, int64(i)+1, root)
		err = cmp.Or(err, failed, more)
		return !same
	}))
	switch {
	case err != nil:
		return 0, err
	case at <= both:
		was, err := older.Entries(ctx, book.Filter{From: at, To: at})
		if err != nil {
			return 0, err
		}
		now, err := r.book.Entries(ctx, book.Filter{From: at, To: at})
		if err != nil {
			return 0, err
		}
		return 0, broken("entry %d is not what it was in the older book: there %q, here %q", at, inWords(was[0].Entry), inWords(now[0].Entry))
	case then > r.size:
		return 0, broken("%s has %d entries, and this one only %d: it may be the older copy, or entries are missing", name, then, r.size)
	}
	return then, nil
}

// inWords is an entry as it is told to a reader.
func inWords(e record.Entry) string {
	return tell.English().Fill("{at}, {what}", record.With("at", e.At), tell.Told("what", tell.English().Event(record.Event{Body: e.Body, Panels: e.Panels})))
}
