package deed

import (
	"fmt"
	"strings"

	"backleaf/record"
	"backleaf/record/seal"
)

// Standing is what a journal says of a key.
type Standing string

// What a journal can say of a key.
const (
	Current    Standing = "current"
	Retired    Standing = "retired"
	Lost       Standing = "lost"
	Unrecorded Standing = "unrecorded"
)

// KeyMade is the body of the entry by which a key comes on record.
func KeyMade(p seal.PublicKey) record.KeyMade {
	return record.KeyMade{Fingerprint: p.Fingerprint().String(), PublicKey: strings.Split(string(p.PEM()), "\n")[1]}
}

// KeyRetired is the body of the entry by which a key hands over to its heir,
// on a day (YYYY-MM-DD). The signed note stands in it without its last line
// end.
func KeyRetired(mark, journal string, old seal.Key, heir seal.PublicKey, day, because string) (record.KeyRetired, error) {
	origin, err := seal.Origin(mark, journal)
	if err != nil {
		return record.KeyRetired{}, err
	}
	note, err := seal.Succession{Origin: origin, New: heir, Date: day}.Sign(old)
	if err != nil {
		return record.KeyRetired{}, err
	}
	return record.KeyRetired{Fingerprint: old.Public().Fingerprint().String(), Successor: heir.Fingerprint().String(),
		Statement: strings.TrimSuffix(string(note), "\n"), Because: because}, nil
}

// Keyring is the life of a studio's keys, as its journal tells it.
type Keyring struct {
	Keys     []seal.PublicKey          // in the order in which they were made
	named    map[string]seal.PublicKey // by fingerprint
	standing map[seal.PublicKey]Standing
	heirs    map[seal.PublicKey]seal.Digest // by whom a retired key is followed
}

// Keys reads the life of the keys from [record.Workshop.Keys]. It refuses an
// entry whose fingerprint is not that of its key, and a succession that the
// retired key did not sign.
func Keys(events []record.Event) (Keyring, error) {
	r := Keyring{named: map[string]seal.PublicKey{}, standing: map[seal.PublicKey]Standing{}, heirs: map[seal.PublicKey]seal.Digest{}}
	for _, e := range events {
		if err := r.take(e.Body); err != nil {
			return r, fmt.Errorf("entry %d: %w", e.Seq, err)
		}
	}
	return r, nil
}

func (r *Keyring) take(b record.Body) error {
	switch b := b.(type) {
	case record.KeyMade:
		p, err := seal.ParsePublicPEM([]byte("-----BEGIN PUBLIC KEY-----\n" + b.PublicKey + "\n-----END PUBLIC KEY-----\n"))
		if err != nil {
			return err
		}
		if p.Fingerprint().String() != b.Fingerprint {
			return fmt.Errorf("the fingerprint is not that of the key")
		}
		if r.Standing(p) != Unrecorded {
			return fmt.Errorf("the key is on record already")
		}
		r.Keys, r.named[b.Fingerprint] = append(r.Keys, p), p
		r.standing[p] = Current
	case record.KeyRetired:
		old, err := r.byFingerprint(b.Fingerprint)
		if err != nil {
			return err
		}
		heir, err := r.byFingerprint(b.Successor)
		if err != nil {
			return err
		}
		s, err := seal.OpenSuccession(seal.FromPaper([]byte(b.Statement)), old)
		if err != nil {
			return fmt.Errorf("the retired key did not sign its successor: %w", err)
		}
		if s.New != heir {
			return fmt.Errorf("the retired key signed another successor")
		}
		if r.Standing(old) == Current {
			r.standing[old] = Retired
		}
		r.heirs[old] = heir.Fingerprint()
	case record.KeyLost:
		p, err := r.byFingerprint(b.Fingerprint)
		if err != nil {
			return err
		}
		r.standing[p] = Lost
	}
	return nil
}

func (r Keyring) byFingerprint(s string) (seal.PublicKey, error) {
	if p, ok := r.named[s]; ok {
		return p, nil
	}
	return seal.PublicKey{}, fmt.Errorf("there is no key with fingerprint %s", s)
}

// Standing returns what the journal says of a key.
func (r Keyring) Standing(p seal.PublicKey) Standing {
	if s, ok := r.standing[p]; ok {
		return s
	}
	return Unrecorded
}

// Current returns the key that signs now; false if the studio has none.
func (r Keyring) Current() (seal.PublicKey, bool) {
	for i := len(r.Keys) - 1; i >= 0; i-- {
		if r.Standing(r.Keys[i]) == Current {
			return r.Keys[i], true
		}
	}
	return seal.PublicKey{}, false
}

// Heir returns the key that a retired key named, by its fingerprint.
func (r Keyring) Heir(p seal.PublicKey) (seal.Digest, bool) {
	h, ok := r.heirs[p]
	return h, ok
}
