package seal

import (
	"errors"
)

// A Succession is a retired key's word for the key that follows it. Signed with the old key, it reads
//
//	backleaf/KB key succession
//	old: 5b3a…  (fingerprint of the old key, 64 hexadecimal digits)
//	new: MCowBQYDK2VwAyEA11qYAYKxCrfVS/7TyWQHOg7hcvPapiMlrwIaaPcHURo=
//	date: 2026-06-01
//
//	— backleaf/KB AbCd…
//
// A lost key can sign nothing: its loss is only an entry in the journal.
type Succession struct {
	Origin string    // see Origin
	Old    Digest    // set by Sign
	New    PublicKey // the key that follows
	Date   string    // YYYY-MM-DD
}

var successions = word[Succession]{
	what: "the key succession", title: " key succession", wrong: errors.New("not a key succession: its lines are not those of one, or not in their order"),
	fields: func(s Succession) (string, []field) {
		return s.Origin, []field{{"old", s.Old.String()}, {"new", s.New.line()}, {"date", s.Date}}
	},
	read: func(origin string, v *values) Succession {
		s := Succession{Origin: origin, Old: v.digest("old"), New: v.key("new"), Date: v.day("date")}
		if s.New.Fingerprint() == s.Old {
			v.wrong("new", errors.New("a key cannot follow itself"))
		}
		return s
	},
}

// Sign returns the succession as a note signed with the old key.
func (s Succession) Sign(old Key) ([]byte, error) {
	s.Old = old.public().Fingerprint()
	if s.New.IsDemo() && !old.public().IsDemo() {
		return nil, errors.New("cannot sign the key succession: the demonstration's key cannot follow a studio's own")
	}
	return successions.sign(s, old)
}

// OpenSuccession reads a succession that the old key signed.
func OpenSuccession(msg []byte, old PublicKey) (Succession, error) {
	s, err := successions.open(msg, func(Succession) PublicKey { return old })
	if err == nil && s.Old != old.Fingerprint() {
		return Succession{}, errors.New("the key succession names another old key than the one that signed it")
	}
	return s, err
}
