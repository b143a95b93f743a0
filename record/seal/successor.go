package seal

import (
	"errors"
	"fmt"
	"strings"
)

const successionTitle = " key succession"

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

var errSuccession = errors.New("not a key succession: its lines are not those of one, or not in their order")

// Sign returns the succession as a note signed with the old key.
func (s Succession) Sign(old Key) ([]byte, error) {
	if old.private == nil {
		return nil, errors.New("cannot sign the key succession: there is no key")
	}
	s.Old = old.Public().Fingerprint()
	text, err := s.text()
	if err == nil {
		_, err = parseSuccession(text)
	}
	if err == nil && s.New.IsDemo() && !old.Public().IsDemo() {
		err = errors.New("the demonstration's key cannot follow a studio's own")
	}
	if err != nil {
		return nil, fmt.Errorf("cannot sign the key succession: %w", err)
	}
	msg, err := old.signNote(text)
	if err != nil {
		return nil, fmt.Errorf("cannot sign the key succession: %w", err)
	}
	return msg, nil
}

// OpenSuccession reads a succession that the old key signed.
func OpenSuccession(msg []byte, old PublicKey) (Succession, error) {
	text, err := openNote(msg, old)
	if err != nil {
		return Succession{}, err
	}
	s, err := parseSuccession(text)
	if err != nil {
		return Succession{}, err
	}
	if s.Old != old.Fingerprint() {
		return Succession{}, errors.New("the key succession names another old key than the one that signed it")
	}
	return s, nil
}

func (s Succession) text() (string, error) {
	return formatFields(s.Origin+successionTitle, []field{{"old", s.Old.String()}, {"new", s.New.line()}, {"date", s.Date}})
}

func parseSuccession(text string) (Succession, error) {
	first, values := parseFields(text)
	origin, ok := strings.CutSuffix(first, successionTitle)
	if !ok || !validOrigin(origin) {
		return Succession{}, errSuccession
	}
	s := Succession{Origin: origin, Date: values["date"]}
	if !isDate(s.Date) {
		return Succession{}, errors.New("a key succession needs its date as YYYY-MM-DD")
	}
	var err error
	if s.Old, err = ParseDigest(values["old"]); err != nil {
		return Succession{}, err
	}
	if s.New, err = parsePublicLine(values["new"]); err != nil {
		return Succession{}, err
	}
	if s.New.Fingerprint() == s.Old {
		return Succession{}, errors.New("a key cannot follow itself")
	}
	if again, err := s.text(); err != nil || again != text {
		return Succession{}, errSuccession
	}
	return s, nil
}
