package deposit

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"path/filepath"

	"backleaf/certificate"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/deed"
	"backleaf/record/form"
	"backleaf/record/seal"
)

// certificates draws anew each certificate that was issued, from the journal as
// it stood that moment. One whose record does not come out with the digest that
// was written down is left out.
func (d *depositor) certificates(ctx context.Context, stored []form.Stored) (err error) {
	var then *book.Book // the journal as it stood, which grows
	defer func() {
		if then != nil {
			err = errors.Join(err, then.Close())
		}
	}()
	have := 0
	for _, s := range stored {
		issued, ok := s.Entry.Body.(record.Issued)
		if !ok {
			continue
		}
		if then == nil {
			if then, err = book.Create(ctx, filepath.Join(d.scratch, "then.sqlite")); err != nil {
				return err
			}
		}
		var more []record.Entry
		for ; have < int(s.Seq)-1; have++ {
			more = append(more, stored[have].Entry)
		}
		if len(more) > 0 {
			if _, err := then.Append(ctx, d.now, more...); err != nil {
				return err
			}
		}
		path := fmt.Sprintf("papers/certificates/%s-E%d.pdf", s.Entry.Panels[0], s.Seq)
		pdf, err := d.certificate(ctx, then, s.Entry, issued)
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err != nil {
			d.leaveOut(path, err)
			continue
		}
		if err := d.put(path, pdf); err != nil {
			return err
		}
	}
	return nil
}

func (d *depositor) certificate(ctx context.Context, then *book.Book, e record.Entry, issued record.Issued) ([]byte, error) {
	at, ok := e.At.Exact()
	if !ok {
		return nil, errors.New("when exactly it was issued is not recorded")
	}
	w, err := then.Workshop(ctx)
	if err != nil {
		return nil, err
	}
	p := w.Panel(e.Panels[0])
	key, err := d.keyAt(w)
	if err != nil {
		return nil, err
	}
	in := certificate.Input{Workshop: w, Panel: p, Issued: at, Paper: cmp.Or(w.Studio.Paper, "a4"), Photograph: d.photograph}
	if old, ok := record.Latest[record.Issued](p); ok {
		if in.Replaces = old.At; !old.At.Known() {
			in.Replaces = old.Written
		}
	}
	if in.Deed, err = deed.Make(ctx, then, w, p, check.Panel(w, p, at), key, at); err != nil {
		return nil, err
	}
	if seal.DigestOf(in.Deed.Record).String() != issued.Record {
		return nil, errors.New("the record does not come out as it was: the rules of thumb or their words have changed since")
	}
	drawn, err := certificate.Draw(in)
	return drawn.PDF, err
}

// keyAt is the key that signed at the time; nil if there was none.
func (d *depositor) keyAt(w *record.Workshop) (*seal.Key, error) {
	ring, err := deed.Keys(w.Keys)
	if err != nil {
		return nil, err
	}
	p, ok := ring.Current()
	if ok && (d.key == nil || d.key.Public() != p) {
		return nil, fmt.Errorf("it was signed with key %s …, which is not at hand", p.Fingerprint().Short())
	}
	if !ok {
		return nil, nil
	}
	return d.key, nil
}
