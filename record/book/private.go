package book

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"time"

	"backleaf/record"
	"backleaf/record/form"
)

// Private is the part of an entry that stands outside the journal.
type Private struct{ Salt, Data []byte }

// Digest returns the SHA-256 of salt and data, in lower-case hex: what the entry
// holds. Without the salt a short text (a name, a price) could be guessed from it.
func (p Private) Digest() string {
	h := sha256.New()
	h.Write(p.Salt)
	h.Write(p.Data)
	return hex.EncodeToString(h.Sum(nil))
}

// privateDigest returns the digest an entry holds of its private part.
func privateDigest(e record.Entry) string {
	switch b := e.Body.(type) {
	case record.HandedOver:
		return b.Private
	case record.Lot:
		return b.Private
	}
	return ""
}

// Private returns the private part of an entry; false if there is none, or it
// was erased, or this copy of the book was made without it. The error wraps
// [ErrBroken] if it is not the one of which the entry holds the digest.
func (b *Book) Private(ctx context.Context, seq int64) (p Private, ok bool, err error) {
	err = b.view(ctx, func(s *session) error {
		var entry []byte
		if ok, err = s.one("SELECT salt, data, bytes FROM private JOIN entry USING (seq) WHERE seq = ?", []any{seq}, &p.Salt, &p.Data, &entry); !ok || err != nil {
			return err
		}
		e, err := form.Read(entry)
		if err == nil && len(e.Newer) == 0 && privateDigest(e) != p.Digest() {
			err = fmt.Errorf("%w: the private part of entry %d is not the one on record", ErrBroken, seq)
		}
		return err
	})
	return p, ok, err
}

// ErasePrivate erases the private part of an entry and writes into the
// journal that this was done, in one step.
func (b *Book) ErasePrivate(ctx context.Context, now time.Time, seq int64, because string) (record.Entry, error) {
	out, err := b.Append(ctx, now, record.Entry{Body: record.Forgotten{Entry: seq, Because: because}})
	if out == nil {
		return record.Entry{}, err
	}
	return out[0], err
}

// scrub makes sure that no page of the file or its log holds what was erased.
func (b *Book) scrub(ctx context.Context) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	fail := func(err error) error {
		return fmt.Errorf("erased, but traces may stay in the file until it is tidied up: %w", err)
	}
	w := b.writer
	ctx = context.WithoutCancel(ctx) // the erasing is on record
	err := w.patiently(ctx, func() error { _, err := w.conn.ExecContext(ctx, "VACUUM"); return err })
	if err != nil {
		return fail(err)
	}
	for end := time.Now().Add(patience); ; {
		// Readers of an older state keep the log from being emptied.
		var busy, log, done int
		if err := w.conn.QueryRowContext(ctx, "PRAGMA wal_checkpoint(TRUNCATE)").Scan(&busy, &log, &done); err != nil {
			return fail(err)
		}
		switch {
		case busy == 0:
			return nil
		case ctx.Err() != nil:
			return fail(ctx.Err())
		case time.Now().After(end):
			return fail(fmt.Errorf("another program keeps reading it"))
		}
		time.Sleep(5 * time.Millisecond)
	}
}
