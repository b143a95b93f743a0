package site

import (
	"cmp"
	"context"
	"crypto/sha256"
	"fmt"
	"maps"
	"slices"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/form"
	"backleaf/record/seal"
)

// journal is what some panels need of the journal as it was when the site was
// begun: a site asks for each panel alone.
type journal struct {
	book    *book.Book
	shop    *record.Workshop
	size    int64
	root    seal.Hash
	hashes  seal.HashReader
	general []form.Stored // that a panel may follow from and that name none, with their corrections, in order
	of      map[record.Number][]form.Stored
	fixes   map[int64][]form.Stored // corrections, by what they correct
}

// openJournal holds the journal against its hashes, and reads what is about no
// panel.
func openJournal(ctx context.Context, b *book.Book) (j *journal, err error) {
	j = &journal{book: b, hashes: b.HashReader(ctx)}
	if j.size, j.root, err = b.Tree(ctx); err != nil {
		return nil, err
	}
	var tree seal.Tree // a status is signed over what the hashes were made from
	if err := b.Read(ctx, book.Filter{To: j.size}, func(s form.Stored) error { return tree.Append(s.Bytes) }); err != nil {
		return nil, err
	}
	if root, err := seal.Root(tree.Size(), &tree); err != nil || tree.Size() != j.size || root != j.root {
		return nil, fmt.Errorf("%w: its entries are not those of its hashes; see \"backleaf verify\"", book.ErrBroken)
	}
	return j, j.turn(ctx, []record.Number{})
}

// turn reads what these panels need, in the place of what others needed.
func (j *journal) turn(ctx context.Context, to []record.Number) error {
	all, err := j.book.Entries(ctx, book.Filter{Panels: to, To: j.size})
	if err != nil {
		return err
	}
	j.general, j.of, j.fixes = nil, map[record.Number][]form.Stored{}, map[int64][]form.Stored{}
	for _, s := range all {
		switch {
		case s.Entry.Corrects() != 0:
			j.fixes[s.Entry.Corrects()] = append(j.fixes[s.Entry.Corrects()], s)
		case len(s.Entry.Panels) == 0 && !ofTheRoom(s.Entry):
			j.general = append(j.general, s)
		}
		for _, n := range s.Entry.Panels {
			j.of[n] = append(j.of[n], s)
		}
	}
	j.general = j.corrected(j.general)
	j.shop, err = record.Fold(form.Entries(all), to...)
	return err
}

// ofTheRoom reports a reading of the climate or a note: no panel that they do
// not name follows from them (see [deed.Chosen]), and in the end they are many.
func ofTheRoom(e record.Entry) bool {
	life := e.Kind().Traits().Life
	return life == "making" || life == "work"
}

// corrected adds what corrects some entries, and what corrects that.
func (j *journal) corrected(entries []form.Stored) []form.Stored {
	found := map[int64]form.Stored{}
	var add func([]form.Stored)
	add = func(list []form.Stored) {
		for _, s := range list {
			if _, there := found[s.Seq]; !there {
				found[s.Seq] = s
				add(j.fixes[s.Seq])
			}
		}
	}
	add(entries)
	return slices.SortedFunc(maps.Values(found), func(a, b form.Stored) int { return cmp.Compare(a.Seq, b.Seq) })
}

// needed merges what is about no panel with what names one; size bounds it, 0
// does not.
func (j *journal) needed(n record.Number, size int64) (out []form.Stored) {
	own, general := j.corrected(j.of[n]), j.general
	for len(own) > 0 || len(general) > 0 {
		from := &general
		if len(general) == 0 || len(own) > 0 && own[0].Seq <= general[0].Seq {
			from = &own
		}
		s := (*from)[0]
		*from = (*from)[1:]
		if (size == 0 || s.Seq <= size) && (len(out) == 0 || out[len(out)-1].Seq != s.Seq) {
			out = append(out, s)
		}
	}
	return out
}

// Needed implements [deed.Journal].
func (j *journal) Needed(_ context.Context, n record.Number, size int64) ([]form.Stored, error) {
	return j.needed(n, size), nil
}

// Tree implements [deed.Journal].
func (j *journal) Tree(context.Context) (int64, seal.Hash, error) { return j.size, j.root, nil }

// HashReader implements [deed.Journal].
func (j *journal) HashReader(context.Context) seal.HashReader { return j.hashes }

// then is the journal as it stood after an entry.
type then struct {
	*journal
	last int64
}

func (t then) Needed(ctx context.Context, n record.Number, size int64) ([]form.Stored, error) {
	if size == 0 || size > t.last {
		size = t.last
	}
	return t.journal.Needed(ctx, n, size)
}

func (t then) Tree(context.Context) (int64, seal.Hash, error) {
	root, err := seal.Root(t.last, t.hashes)
	return t.last, root, err
}

// follows are the entries that one panel follows from, and a digest of them.
func (j *journal) follows(n record.Number) ([]form.Stored, seal.Digest) {
	entries := deed.Chosen(j.shop, j.needed(n, 0), n)
	h := sha256.New()
	for _, e := range entries {
		h.Write(e.Bytes)
		h.Write([]byte{'\n'})
	}
	return entries, seal.Digest(h.Sum(nil))
}
