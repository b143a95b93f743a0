package keys

import (
	"context"
	"errors"
	"fmt"
	"os"
	"time"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
)

// Make makes the studio's signing key, its file first: a key on record that
// nobody has would help nobody. If a key file lies there already, it is taken
// as it is. demo makes the public key of the demonstration.
func Make(ctx context.Context, s *studio.Session, who Holder, demo bool) (m studio.Written, err error) {
	w, err := s.Book.WorkshopOf(ctx)
	if err != nil {
		return m, err
	}
	ring, err := Ring(ctx, s.Book)
	if err != nil {
		return m, err
	}
	if p, ok := ring.Current(); ok {
		return m, refuse.Cannot("key-there", "the studio has a key already: %s …", p.Fingerprint().Short())
	}
	if demo && !w.Studio.Demo {
		return m, errors.New("the demonstration's key is public: it is for the demonstration only")
	}
	file, how, k := File(s.Book.Path()), record.Code("open"), seal.DemoKey()
	if _, err := os.Lstat(file); err == nil {
		if k, err = open(file, who); err != nil {
			return m, err
		}
		if s := ring.Standing(k.Public()); s != deed.Unrecorded {
			return m, refuse.Cannot("key-file-used", "the key in %s is %s", file, s)
		}
		if k.Public().IsDemo() && !w.Studio.Demo {
			return m, fmt.Errorf("%s holds the demonstration's key, with which anyone can sign", file)
		}
		how = "there"
	} else {
		var pass []byte
		if !demo {
			if k, err = seal.NewKey(); err != nil {
				return m, err
			}
			if pass, err = who.NewPassphrase(); err != nil {
				return m, err
			}
		}
		if err := k.Create(file, pass); err != nil {
			return m, err
		}
		if len(pass) > 0 {
			how = "passphrase"
		}
	}
	now := s.Clock().In(studio.Zone(w.Studio))
	if m.Entries, err = s.Book.Append(ctx, now, record.Entry{At: record.Moment(now), Body: deed.KeyMade(k.Public())}); err != nil {
		return m, refuse.Because("key-not-recorded", err)
	}
	m.Mean("key-entered", record.With("entry", record.EntryRef(m.Entries[0].Seq)), record.With("key", k.Public().Fingerprint().Groups()),
		record.With("file", file), record.With("how", how))
	if !k.Public().IsDemo() {
		m.Mean("next-recovery-sheet")
	}
	return m, nil
}

// Retire changes to a new key, which the old one names as its successor.
func Retire(ctx context.Context, s *studio.Session, who Holder, because string) (x studio.Written, err error) {
	key, err := Needed(ctx, s.Book, who)
	if err != nil {
		return x, err
	}
	w, err := s.Book.WorkshopOf(ctx)
	if err != nil {
		return x, err
	}
	heir, err := seal.NewKey()
	if err != nil {
		return x, err
	}
	old, next := key.Public(), heir.Public()
	now := s.Clock().In(studio.Zone(w.Studio))
	retired, err := deed.KeyRetired(w.Studio.Mark, w.Studio.Journal, key, next, now.Format(time.DateOnly), because)
	if err != nil {
		return x, err
	}
	pass, err := who.NewPassphrase()
	if err != nil {
		return x, err
	}
	// The new key lies beside the old one until the book knows it.
	waiting, err := files(s.Book.Path()).Lay(heir, pass)
	if err != nil {
		return x, refuse.Because("new-key-there", err)
	}
	at := record.Moment(now)
	if x.Entries, err = s.Book.Append(ctx, now, record.Entry{At: at, Body: deed.KeyMade(next)}, record.Entry{At: at, Body: retired}); err != nil {
		// A write may be said to have failed and be there all the same.
		if now, failed := Ring(ctx, s.Book); failed == nil && now.Standing(next) == deed.Unrecorded {
			err = errors.Join(err, os.Remove(waiting))
		}
		return x, err
	}
	if err := files(s.Book.Path()).Settle(next, &old); err != nil {
		return x, refuse.Because("key-not-in-place", fmt.Errorf("the key is changed, but its file has not its name yet: %w", err),
			record.With("from", waiting), record.With("to", File(s.Book.Path())))
	}
	x.Mean("key-retired", record.With("made", record.EntryRef(x.Entries[0].Seq)), record.With("retired", record.EntryRef(x.Entries[1].Seq)),
		record.With("old", old.Fingerprint().Short()), record.With("key", next.Fingerprint().Groups()), record.With("file", files(s.Book.Path()).Retired(old)))
	return x, nil
}

// Lose writes into the book that its key is lost or in wrong hands.
func Lose(ctx context.Context, s *studio.Session, because string) (l studio.Written, err error) {
	w, err := s.Book.WorkshopOf(ctx)
	if err != nil {
		return l, err
	}
	ring, err := Ring(ctx, s.Book)
	if err != nil {
		return l, err
	}
	p, ok := ring.Current()
	if !ok {
		return l, errors.New("the studio has no key that could be lost")
	}
	// The file goes first: which key it holds is only known while the book says so.
	moved, err := files(s.Book.Path()).Lose(p)
	if err != nil {
		return l, refuse.Because("not-written", err)
	}
	now := s.Clock().In(studio.Zone(w.Studio))
	if l.Entries, err = s.Book.Append(ctx, now, record.Entry{At: record.Moment(now), Body: record.KeyLost{Fingerprint: p.Fingerprint().String(), Because: because}}); err != nil {
		err = refuse.Because("not-written", err)
		if now, failed := Ring(ctx, s.Book); failed == nil {
			err = errors.Join(err, Settle(s.Book.Path(), now))
		}
		return l, err
	}
	l.Mean("key-lost", record.With("entry", record.EntryRef(l.Entries[0].Seq)), record.With("key", p.Fingerprint().Short()))
	if moved != "" {
		l.Mean("key-file-old", record.With("file", moved))
	}
	l.Mean("next-key")
	return l, nil
}

// Recover writes the key file again from the words of the recovery sheet.
func Recover(ctx context.Context, s *studio.Session, who Holder, words func() ([]byte, error)) (r studio.Written, err error) {
	ring, err := Ring(ctx, s.Book)
	if err != nil {
		return r, err
	}
	file := File(s.Book.Path())
	if There(s.Book.Path()) {
		return r, refuse.Cannot("key-in-place", "%s is there already", file)
	}
	typed, err := words()
	if err != nil {
		return r, fmt.Errorf("cannot read the recovery text: %w", err)
	}
	k, err := seal.KeyFromRecovery(string(typed))
	if err != nil {
		return r, err
	}
	if s := ring.Standing(k.Public()); s != deed.Current {
		return r, fmt.Errorf("this is not the studio's current key: it is %s", s)
	}
	pass, err := who.NewPassphrase()
	if err != nil {
		return r, err
	}
	if err = k.Create(file, pass); err == nil {
		with := record.Answer(record.No)
		if len(pass) > 0 {
			with = record.Yes
		}
		r.Mean("key-as-it-was", record.With("file", file), record.With("key", k.Public().Fingerprint().Short()), record.With("with", with))
	}
	return r, err
}
