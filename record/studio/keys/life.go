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

// Made is a key that was put on record.
type Made struct {
	Entry      int64
	Key        seal.PublicKey
	File       string
	WasThere   bool // the file lay there already
	Passphrase bool
}

// Make makes the studio's signing key, its file first: a key on record that
// nobody has would help nobody. If a key file lies there already, it is taken
// as it is. demo makes the public key of the demonstration.
func Make(ctx context.Context, s *studio.Session, who Holder, demo bool) (Made, error) {
	m := Made{File: File(s.Book.Path())}
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
	k := seal.DemoKey()
	if _, err := os.Lstat(m.File); err == nil {
		if k, err = open(m.File, who); err != nil {
			return m, err
		}
		if s := ring.Standing(k.Public()); s != deed.Unrecorded {
			return m, refuse.Cannot("key-file-used", "the key in %s is %s", m.File, s)
		}
		if k.Public().IsDemo() && !w.Studio.Demo {
			return m, fmt.Errorf("%s holds the demonstration's key, with which anyone can sign", m.File)
		}
		m.WasThere = true
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
		if err := k.Create(m.File, pass); err != nil {
			return m, err
		}
		m.Passphrase = len(pass) > 0
	}
	m.Key = k.Public()
	now := s.Clock().In(studio.Zone(w.Studio))
	es, err := s.Book.Append(ctx, now, record.Entry{At: record.Moment(now), Body: deed.KeyMade(m.Key)})
	if err != nil {
		return m, refuse.Because("key-not-recorded", err)
	}
	m.Entry = es[0].Seq
	return m, nil
}

// Succession is a key that was changed to another.
type Succession struct {
	Retired, Made int64 // entries
	Old, New      seal.PublicKey
	OldFile       string
}

// Retire changes to a new key, which the old one names as its successor.
func Retire(ctx context.Context, s *studio.Session, who Holder, because string) (x Succession, err error) {
	old, err := Needed(ctx, s.Book, who)
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
	x.Old, x.New = old.Public(), heir.Public()
	now := s.Clock().In(studio.Zone(w.Studio))
	retired, err := deed.KeyRetired(w.Studio.Mark, w.Studio.Journal, old, x.New, now.Format(time.DateOnly), because)
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
	es, err := s.Book.Append(ctx, now, record.Entry{At: at, Body: deed.KeyMade(x.New)}, record.Entry{At: at, Body: retired})
	if err != nil {
		// A write may be said to have failed and be there all the same.
		if now, failed := Ring(ctx, s.Book); failed == nil && now.Standing(x.New) == deed.Unrecorded {
			err = errors.Join(err, os.Remove(waiting))
		}
		return x, err
	}
	x.Made, x.Retired = es[0].Seq, es[1].Seq
	x.OldFile = files(s.Book.Path()).Retired(x.Old)
	if err := files(s.Book.Path()).Settle(x.New, &x.Old); err != nil {
		return x, refuse.Because("key-not-in-place", fmt.Errorf("the key is changed, but its file has not its name yet: %w", err),
			record.With("from", waiting), record.With("to", File(s.Book.Path())))
	}
	return x, nil
}

// Loss is a key that was declared lost or stolen.
type Loss struct {
	Entry int64
	Key   seal.PublicKey
	File  string // where the file that was there was moved; empty if none was
}

// Lose writes into the book that its key is lost or in wrong hands.
func Lose(ctx context.Context, s *studio.Session, because string) (l Loss, err error) {
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
	l.Key = p
	// The file goes first: which key it holds is only known while the book says so.
	if l.File, err = files(s.Book.Path()).Lose(p); err != nil {
		return l, refuse.Because("not-written", err)
	}
	now := s.Clock().In(studio.Zone(w.Studio))
	es, err := s.Book.Append(ctx, now, record.Entry{At: record.Moment(now), Body: record.KeyLost{Fingerprint: p.Fingerprint().String(), Because: because}})
	if err != nil {
		err = refuse.Because("not-written", err)
		if now, failed := Ring(ctx, s.Book); failed == nil {
			err = errors.Join(err, Settle(s.Book.Path(), now))
		}
		return l, err
	}
	l.Entry = es[0].Seq
	return l, nil
}

// Recover writes the key file again from the words of the recovery sheet.
func Recover(ctx context.Context, s *studio.Session, who Holder, words string) (seal.PublicKey, error) {
	ring, err := Ring(ctx, s.Book)
	if err != nil {
		return seal.PublicKey{}, err
	}
	k, err := seal.KeyFromRecovery(words)
	if err != nil {
		return seal.PublicKey{}, err
	}
	if s := ring.Standing(k.Public()); s != deed.Current {
		return seal.PublicKey{}, fmt.Errorf("this is not the studio's current key: it is %s", s)
	}
	pass, err := who.NewPassphrase()
	if err != nil {
		return seal.PublicKey{}, err
	}
	return k.Public(), k.Create(File(s.Book.Path()), pass)
}
