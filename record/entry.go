package record

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// Entry is one thing that happened. Its canonical bytes (RFC 8785 JSON,
// integers only) are a leaf of the journal and never change.
type Entry struct {
	Seq     int64    // place in the journal, from 1; 0 before it is appended
	At      When     // when it happened
	Written When     // when it was written down: always an exact moment
	Panels  []Number // the panels it is about
	// Makers did what the entry tells; none: the maker whom the studio's entry
	// names.
	Makers []Hand
	// StudioAs names the entries that describe the studio as it was then:
	// several where the date leaves more than one.
	StudioAs []int64
	Imported Imported
	Body     Body
	// Newer lists the places, as RFC 6901 pointers without the first slash,
	// that this program cannot read; "" is the whole entry. A later program
	// wrote it.
	Newer []string
}

// Imported says that an entry came from another book or from a table.
type Imported struct {
	From string `json:"from,omitzero"`
	At   When   `json:"at,omitzero"`
}

// Kind returns the kind of the entry's body.
func (e Entry) Kind() Kind { return e.Body.Kind() }

// Version is the version of the form of entries that this program writes.
const Version = 1

type envelope struct {
	Version  int64    `json:"v"`
	Seq      int64    `json:"seq,omitzero"`
	Kind     Kind     `json:"kind"`
	At       When     `json:"at,omitzero"`
	Written  When     `json:"written,omitzero"`
	Panels   []Number `json:"panels,omitzero"`
	Makers   []Hand   `json:"makers,omitzero"`
	StudioAs []int64  `json:"studio_as,omitzero"`
	Imported Imported `json:"imported,omitzero"`
}

type wire[B Body] struct {
	Envelope envelope `json:",embed"`
	Body     B        `json:",embed"`
}

// FieldError says which field of an entry cannot be accepted and why. Field
// is an RFC 6901 pointer without its first slash; it is empty for the whole.
type FieldError struct {
	Field  string
	Why    string
	Offset int64 // byte offset in the text that was read, when known
}

func (e *FieldError) Error() string {
	if e.Field == "" {
		return e.Why
	}
	return e.Field + ": " + e.Why
}

// Assemble reads the JSON text of an entry and judges nothing: whatever this
// program does not know is listed in [Entry.Newer]. The one error is a text
// that is no JSON object with a kind.
func Assemble(b []byte) (Entry, error) {
	e, v, err := assemble(b, json.RejectUnknownMembers(true))
	if err == nil && v != 0 {
		return e, nil
	}
	var peek struct {
		Envelope envelope       `json:",embed"`
		Rest     jsontext.Value `json:",embed"`
	}
	if jerr := json.Unmarshal(b, &peek); jerr != nil {
		return Entry{}, jsonError(jerr)
	}
	switch {
	case peek.Envelope.Kind == "":
		return Entry{}, &FieldError{Field: "kind", Why: "missing: it says what happened"}
	case peek.Envelope.Version == 0:
		return Entry{}, &FieldError{Field: "v", Why: "missing"}
	}
	where := ""
	if fe := (*FieldError)(nil); errors.As(err, &fe) {
		where = fe.Field
	}
	// A member more than this program knows leaves the others readable; what
	// has another shape, kind or version does not.
	if e, _, err = assemble(b); err != nil {
		e = peek.Envelope.entry(Foreign{peek.Envelope.Kind})
		where = ""
	}
	e.Newer = append([]string{where}, e.Newer...)
	return e, nil
}

// Parse reads the JSON text of an entry from outside, in any layout, and
// refuses what this program cannot read. Whether the entry may be written is
// for package accept. The errors are of type [*FieldError].
func Parse(b []byte) (Entry, error) {
	e, _, err := assemble(b, json.RejectUnknownMembers(true))
	if err == nil && len(e.Newer) > 0 {
		err = e.Fault()
	}
	if err != nil {
		return Entry{}, Located(b, err)
	}
	return e, nil
}

// assemble also returns the version that the text states, or 0.
func assemble(b []byte, opts ...json.Options) (Entry, int64, error) {
	// Most texts say their kind where it is first looked for, and are read once.
	if _, rest, ok := bytes.Cut(b, []byte(`"kind":"`)); ok {
		k, _, _ := bytes.Cut(rest, []byte{'"'})
		if info, ok := kinds[Kind(k)]; ok {
			if env, body, err := info.decode(b, opts...); err == nil && env.Kind == Kind(k) && env.Version <= Version {
				return assembled(env, body)
			}
		}
	}
	var peek struct {
		Kind    Kind  `json:"kind"`
		Version int64 `json:"v"`
	}
	if err := json.Unmarshal(b, &peek); err != nil {
		return Entry{}, 0, jsonError(err)
	}
	info, ok := kinds[peek.Kind]
	switch {
	case peek.Version > Version:
		return Entry{}, 0, &FieldError{Field: "v", Why: fmt.Sprintf("version %d is newer than this program knows", peek.Version)}
	case peek.Kind == "":
		return Entry{}, 0, &FieldError{Field: "kind", Why: "missing: it says what happened"}
	case !ok:
		return Entry{}, 0, &FieldError{Field: "kind", Why: fmt.Sprintf("%q is not a kind of entry", clip(string(peek.Kind)))}
	}
	env, body, err := info.decode(b, opts...)
	if err != nil {
		return Entry{}, 0, jsonError(err)
	}
	return assembled(env, body)
}

func assembled(env envelope, body Body) (Entry, int64, error) {
	if a, ok := body.(Amended); ok && len(a.Change) > 0 {
		if err := a.Change.Canonicalize(); err != nil {
			return Entry{}, 0, jsonError(err)
		}
		body = a
	}
	return env.entry(body), env.Version, nil
}

func (v envelope) entry(b Body) Entry {
	e := Entry{Seq: v.Seq, At: v.At, Written: v.Written, Panels: v.Panels, Makers: v.Makers, StudioAs: v.StudioAs, Imported: v.Imported, Body: b}
	for _, w := range []struct {
		place string
		when  When
	}{{"at", v.At}, {"written", v.Written}, {"imported/at", v.Imported.At}} {
		if w.when.newer {
			e.Newer = append(e.Newer, w.place)
		}
	}
	for i, n := range v.Panels {
		if n.Fault() != nil {
			e.Newer = append(e.Newer, fmt.Sprintf("panels/%d", i))
		}
	}
	e.Newer = append(e.Newer, unread(b)...)
	return e
}

// Fault says what of an entry this program cannot read; nil if it can read
// all of it.
func (e Entry) Fault() error {
	if len(e.Newer) == 0 {
		return nil
	}
	for _, w := range []struct {
		place string
		when  When
	}{{"at", e.At}, {"written", e.Written}, {"imported/at", e.Imported.At}} {
		if err := w.when.Fault(); err != nil {
			return &FieldError{Field: w.place, Why: err.Error()}
		}
	}
	for i, n := range e.Panels {
		if err := n.Fault(); err != nil {
			return &FieldError{Field: fmt.Sprintf("panels/%d", i), Why: err.Error()}
		}
	}
	var err error
	Walk(e.Body, func(place string, f Field, v reflect.Value) {
		if x, ok := v.Interface().(interface{ Fault() error }); err == nil && ok && x.Fault() != nil {
			err = &FieldError{Field: place, Why: x.Fault().Error()}
		} else if err == nil && f.fault(v) {
			err = &FieldError{Field: place, Why: fmt.Sprintf("%q is not %s", clip(v.String()), OneOf(v.String(), f.Words()))}
		}
	})
	if err == nil {
		err = &FieldError{Field: e.Newer[0], Why: "a later program wrote this"}
	}
	return err
}

// Text writes an entry as JSON in the canonical form of RFC 8785. It judges
// nothing, but cannot write what it could not read.
func (e Entry) Text() ([]byte, error) {
	switch {
	case e.Body == nil:
		return nil, &FieldError{Why: "an entry without a body"}
	case len(e.Newer) > 0:
		return nil, &FieldError{Field: e.Newer[0], Why: "a later program wrote this"}
	case !isBody(e.Body):
		return nil, &FieldError{Why: fmt.Sprintf("a %T is no body of an entry", e.Body)}
	}
	env, err := json.Marshal(envelope{Version, e.Seq, e.Kind(), e.At, e.Written, e.Panels, e.Makers, e.StudioAs, e.Imported})
	if err != nil {
		return nil, err
	}
	body, err := json.Marshal(e.Body)
	if err != nil {
		return nil, err
	}
	v := jsontext.Value(env)
	if !bytes.Equal(body, []byte("{}")) {
		v = append(append(v[:len(v)-1], ','), body[1:]...)
	}
	if err := v.Canonicalize(); err != nil {
		return nil, fmt.Errorf("cannot write an entry of kind %s: %w", e.Kind(), err)
	}
	return v, nil
}
