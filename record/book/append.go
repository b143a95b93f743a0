package book

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"time"

	"golang.org/x/mod/sumdb/tlog"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/form"
)

// Append writes entries at the end of the journal, all or none, and returns
// them as stored: each with its number, and with the time now where it does
// not say when it was written down. An entry that has a number must have the
// next one. When Append returns without error they are on the disk.
//
// An error about the i-th entry is an [*AppendError].
func (b *Book) Append(ctx context.Context, now time.Time, es ...record.Entry) ([]record.Entry, error) {
	return b.AppendPrivate(ctx, now, nil, es...)
}

// AppendPrivate is [Book.Append] for entries with private parts, by the place
// of the entry in es. The entry must hold its digest.
func (b *Book) AppendPrivate(ctx context.Context, now time.Time, private map[int]Private, es ...record.Entry) ([]record.Entry, error) {
	return b.Compose(ctx, now, func(d *Draft) ([]record.Entry, map[int]Private, error) { return es, private, nil })
}

// Compose is [Book.AppendPrivate] for entries that depend on what the book
// holds at that moment, such as the next free number: no other process writes
// between compose and the append.
func (b *Book) Compose(ctx context.Context, now time.Time, compose func(*Draft) ([]record.Entry, map[int]Private, error)) (out []record.Entry, err error) {
	err = b.Fill(ctx, now, func(d *Draft) error {
		es, private, err := compose(d)
		if err != nil {
			return err
		}
		for i := range private {
			if i < 0 || i >= len(es) {
				return fmt.Errorf("a private part of entry %d of %d", i+1, len(es))
			}
		}
		out = make([]record.Entry, len(es))
		for i, e := range es {
			if err := ctx.Err(); err != nil {
				return err
			}
			e, err := d.Put(e)
			if p, ok := private[i]; ok && err == nil {
				err = d.keep(e, p)
			}
			if err != nil {
				return &AppendError{Index: i, Err: err}
			}
			out[i] = e
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	return out, nil
}

// Fill writes what fill puts into the draft, all or none, in one transaction:
// more entries than memory holds.
func (b *Book) Fill(ctx context.Context, now time.Time, fill func(*Draft) error) error {
	var erased bool
	err := b.update(ctx, func(s *session) error {
		d, err := newDraft(s, b.Random)
		if err != nil {
			return err
		}
		d.now = now
		of, _ := ctx.Value(postingKey{}).(posting)
		if err := d.posted(of.token); err != nil {
			return err
		}
		err = fill(d)
		if err = cmp.Or(s.writeAtOnce(), err); err != nil {
			return err
		}
		erased = d.erased
		if err := d.post(of.token); err != nil {
			return err
		}
		if err := d.finish(ctx); err != nil || !of.trial {
			return err
		}
		return errTried
	})
	if errors.Is(err, errTried) {
		return nil
	}
	if err == nil && erased {
		return b.scrub(ctx)
	}
	return err
}

// AppendError says which of several entries could not be appended.
type AppendError struct {
	Index int // from 0
	Err   error
}

func (e *AppendError) Error() string { return e.Err.Error() }
func (e *AppendError) Unwrap() error { return e.Err }

// many entries in one transaction are judged on one core and written on another.
const many = 100

// Put writes one entry that package accept lets pass, and returns it as stored.
func (d *Draft) Put(e record.Entry) (record.Entry, error) {
	if e.Written.IsZero() {
		e.Written = record.Moment(d.now)
	}
	next := d.size + 1
	if next-d.began == many {
		d.s.writeBehind()
	}
	if e.Seq != 0 && e.Seq != next {
		return e, &record.FieldError{Field: "seq", Why: fmt.Sprintf("the next entry of this book is %d, not %d", next, e.Seq)}
	}
	e.Seq = next
	if err := cmp.Or(d.name(&e), d.meet(e.Panels)); err != nil {
		return e, err
	}
	e, err := accept.Bind(e, d, nil)
	if err != nil {
		return e, err
	}
	data, err := accept.Entry(e, d)
	if err != nil {
		return e, err
	}
	// What is stored must read back. Of many entries those that name panels are
	// read when the rows of these are made, before anything is kept.
	if d.s.queue == nil || len(e.Panels) == 0 {
		e, err = form.Decode(data)
	}
	if err != nil {
		return e, err
	}
	return e, d.put(e, data)
}

// name gives a new journal its name.
func (d *Draft) name(e *record.Entry) error {
	s, ok := e.Body.(record.Studio)
	if !ok || d.open || s.Journal != "" {
		return nil
	}
	var err error
	s.Journal, err = record.NewJournal(d.random)
	e.Body = s
	return err
}

// put writes the next entry, its hashes and its look-up rows. It judges
// nothing.
func (d *Draft) put(e record.Entry, data []byte) error {
	if err := d.s.write("entry", "INSERT INTO entry (seq, bytes) VALUES (?, ?)", e.Seq, data); err != nil {
		return err
	}
	if err := d.addHashes(data); err != nil {
		return err
	}
	if err := d.index(e); err != nil {
		return err
	}
	if f, ok := e.Body.(record.Forgotten); ok {
		d.erased = true
		if err := d.s.write("erase", "DELETE FROM private WHERE seq = ?", f.Entry); err != nil {
			return err
		}
	}
	d.size = e.Seq
	if n := int64(len(d.added)); e.Corrects() == 0 && e.Kind() != "cut" && e.Newer == nil && n == d.size-d.began-1 && n < many {
		d.added = append(d.added, e)
	}
	return nil
}

func (d *Draft) addHashes(data []byte) error {
	hashes, err := tlog.StoredHashes(d.size, data, tlog.HashReaderFunc(d.recent))
	if err != nil {
		return err
	}
	idx := tlog.StoredHashIndex(0, d.size)
	for i, h := range hashes {
		if err := d.s.write("hash", "INSERT INTO hash (idx, node) VALUES (?, ?)", idx+int64(i), h[:]); err != nil {
			return err
		}
		d.latest[i] = hashAt{idx + int64(i), h}
	}
	return nil
}

// recent reads hashes, most of which were written last at their level.
func (d *Draft) recent(indexes []int64) ([]tlog.Hash, error) {
	out := make([]tlog.Hash, len(indexes))
	for i, idx := range indexes {
		level, _ := tlog.SplitStoredHashIndex(idx)
		if at := d.latest[level]; at.idx == idx && at.hash != (tlog.Hash{}) {
			out[i] = at.hash
			continue
		}
		one, err := d.s.ReadHashes(indexes[i : i+1])
		if err != nil {
			return nil, err
		}
		out[i] = one[0]
		if idx > d.latest[level].idx {
			d.latest[level] = hashAt{idx, one[0]}
		}
	}
	return out, nil
}

// finish writes what is written once for all entries of a transaction.
func (d *Draft) finish(ctx context.Context) error {
	if d.size == d.began {
		return nil
	}
	if err := d.indexPanels(ctx); err != nil {
		return err
	}
	root, err := tlog.TreeHash(d.size, tlog.HashReaderFunc(d.recent))
	if err != nil {
		return err
	}
	return d.s.write("tip", "INSERT INTO tip (id, size, root) VALUES (1, ?, ?) ON CONFLICT (id) DO UPDATE SET size = excluded.size, root = excluded.root", d.size, root[:])
}

// keep stores the private part of an entry just appended.
func (d *Draft) keep(e record.Entry, p Private) error {
	want := privateDigest(e)
	if want == "" || p.Digest() != want {
		return &record.FieldError{Field: "private_sha256", Why: "it is not the digest of the private part"}
	}
	return d.s.write("private", "INSERT INTO private (seq, salt, data) VALUES (?, ?, ?)", e.Seq, bytes.Clone(p.Salt), p.Data)
}
