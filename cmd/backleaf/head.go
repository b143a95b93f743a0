package main

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
)

func newHead(a *app) *cobra.Command {
	return folder("head", "the signed head of the journal: proof that nothing was changed since",
		headShow(a), headCompare(a))
}

func headShow(a *app) *cobra.Command {
	return a.passphraseFlag(&cobra.Command{
		Use: "show", Short: "sign the journal as it stands, keep the head and print it",
		Long: `Sign size and root of the journal, keep this head in the book and print it. Keep a
copy elsewhere, or give it away: with it anyone can tell later that nothing of what
stood in the book then was changed or removed.`,
		Example: `  backleaf head show
  backleaf head show > head-2026.txt`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.withKey(c.Context(), func(s *studio.Session, k seal.Key) error {
				w, err := s.Book.WorkshopOf(c.Context())
				if err != nil {
					return err
				}
				note, err := keys.SignHead(c.Context(), s.Book, w.Studio.Mark, k)
				if err == nil {
					_, err = a.out.Write(note)
				}
				return err
			})
		},
	})
}

func headCompare(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "compare OLD", Short: "prove that an older head, certificate, record or book is the beginning of this one",
		Long: `Read the whole book back, then prove that what OLD saw of the journal is the
beginning of today's, entry for entry, or show where it breaks. OLD is a head, a
certificate (PDF), a record folder, or an older copy of the book. Exit code 4 if it
is not.`,
		Example: `  backleaf head compare head-2026.txt
  backleaf head compare certificate.pdf
  backleaf head compare backup.sqlite`,
		Args: wanted(1, 1, "one older head, certificate, record folder or book"),
		RunE: func(c *cobra.Command, args []string) error {
			ctx := c.Context()
			es, err := a.evidenceOf(args[0])
			if err != nil {
				return err
			}
			if len(es) != 1 {
				return usage("", "%s holds several things: name a single head", args[0])
			}
			return a.read(ctx, func(s *studio.Session) error {
				b := s.Book
				if _, err := b.Verify(ctx, a.progress("entries")); err != nil {
					return err
				}
				if es[0].what == aBook {
					return a.compareBooks(ctx, b, args[0])
				}
				return a.compareHead(ctx, b, es[0])
			})
		},
	}
}

// broken says that an older state is not the beginning of today's.
func broken(format string, args ...any) error {
	return &failure{fmt.Errorf(format, args...), "look for the copy of the book that still holds it", exitIntegrity}
}

func (a *app) compareHead(ctx context.Context, b *book.Book, e evidence) error {
	w, err := b.WorkshopOf(ctx)
	if err != nil {
		return err
	}
	r := &register{book: b, shop: w}
	if r.ring, err = deed.Keys(w.Keys); err != nil {
		return err
	}
	var root seal.Hash
	if r.size, root, err = b.Tree(ctx); err != nil {
		return err
	}
	old, rec, err := r.olderHead(e)
	if err != nil {
		return &failure{fmt.Errorf("%s: %w", e.name, err), "", exitIntegrity}
	}
	if old.Size > r.size {
		return broken("the older head has %d entries, this book only %d: entries are gone, or this is an older copy", old.Size, r.size)
	}
	path, err := seal.ProvePrefix(r.size, old.Size, b.HashReader(ctx))
	if err != nil {
		return err
	}
	if err := (seal.Head{Origin: old.Origin, Size: r.size, Root: root}).CheckPrefix(old, path); err != nil {
		return r.breaks(ctx, old, rec)
	}
	a.say("holds: the %d entries of the older head are the first of today's %d, unchanged", old.Size, r.size)
	return nil
}

// olderHead takes a head out of what was named, and checks who signed it.
func (r *register) olderHead(e evidence) (seal.Head, *deed.Record, error) {
	if e.broken != nil {
		return seal.Head{}, nil, e.broken
	}
	rep := deed.Verify(e.files)
	for _, x := range rep.Results {
		if x.Verdict == deed.Fails {
			return seal.Head{}, nil, errors.New(x.Text)
		}
	}
	switch {
	case e.files.Head != nil:
		h, err := r.openHead(e.files.Head)
		return h, rep.Record, err
	case rep.Record == nil:
		return seal.Head{}, nil, errors.New("there is no head in it")
	}
	if e.files.Signature == nil || rep.Key == nil || r.ring.Standing(*rep.Key) == deed.Unrecorded {
		return seal.Head{}, nil, errors.New("its head is not signed with a key of the studio")
	}
	origin, err := seal.Origin(rep.Record.Workshop.Studio.Mark)
	return seal.Head{Origin: origin, Size: rep.Record.Size, Root: rep.Record.Root}, rep.Record, err
}

// breaks says as exactly as it can where the journal was changed: at an entry
// that a record shows, or after the last kept head that still fits.
func (r *register) breaks(ctx context.Context, old seal.Head, rec *deed.Record) error {
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

// compareBooks compares with an older copy, entry by entry.
func (a *app) compareBooks(ctx context.Context, b *book.Book, name string) error {
	older, err := book.OpenReadOnly(ctx, name)
	if err != nil {
		return err
	}
	defer older.Close()
	if _, err := older.Verify(ctx, a.progress("entries")); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	was, err := older.Entries(ctx, book.Filter{})
	if err != nil {
		return err
	}
	now, err := b.Entries(ctx, book.Filter{})
	if err != nil {
		return err
	}
	for i, e := range was {
		switch {
		case i >= len(now):
			return broken("the older book has %d entries, this one only %d: entries are gone, or this is the older copy", len(was), len(now))
		case string(now[i].Bytes) != string(e.Bytes):
			return broken("entry %d is not what it was in the older book (%s of %s there, %s of %s here)", e.Seq,
				e.Entry.Kind(), e.Entry.Written, now[i].Entry.Kind(), now[i].Entry.Written)
		}
	}
	a.say("holds: the %d entries of the older book are the first of today's %d, unchanged", len(was), len(now))
	return nil
}
