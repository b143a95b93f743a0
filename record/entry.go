package record

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// Kind names what happened.
type Kind string

// Body is what one kind of entry says; there is one Go type for each kind.
type Body interface{ Kind() Kind }

// Entry is one thing that happened. Its canonical bytes (RFC 8785 JSON,
// integers only) are a leaf of the journal and never change.
type Entry struct {
	Seq     int64    // place in the journal, from 1; 0 before it is appended
	At      When     // when it happened
	Written When     // when it was written down: always an exact moment
	Panels  []Number // the panels it is about
	Body    Body
}

// Kind returns the kind of the entry's body.
func (e Entry) Kind() Kind { return e.Body.Kind() }

// MaxEntryBytes bounds the canonical bytes of one entry.
const MaxEntryBytes = 1 << 20

// version is the version of the entry form written by this program.
const version = 1

type envelope struct {
	Version int64    `json:"v"`
	Seq     int64    `json:"seq,omitzero"`
	Kind    Kind     `json:"kind"`
	At      When     `json:"at,omitzero"`
	Written When     `json:"written,omitzero"`
	Panels  []Number `json:"panels,omitzero"`
}

type wire[B Body] struct {
	Envelope envelope `json:",embed"`
	Body     B        `json:",embed"`
}

// panelRule says whether a kind of entry names panels.
type panelRule int

const (
	noPanels panelRule = iota
	onePanel
	somePanels
	anyPanels
)

type kindInfo struct {
	panels panelRule
	decode func([]byte) (envelope, Body, error)
	blank  Body
}

// kinds is the table of all kinds of entry. A new kind is a type, a Kind
// method and a line here.
var kinds = map[Kind]kindInfo{
	"studio":                kindOf[Studio](noPanels),
	"material":              kindOf[Material](noPanels),
	"lot":                   kindOf[Lot](noPanels),
	"cut":                   kindOf[Cut](somePanels),
	"coat":                  kindOf[Coat](somePanels),
	"cloth":                 kindOf[ClothLaid](somePanels),
	"trimmed":               kindOf[Trimmed](somePanels),
	"sanded":                kindOf[Sanded](somePanels),
	"paint":                 kindOf[PaintLayer](somePanels),
	"varnish":               kindOf[Varnish](somePanels),
	"braced":                kindOf[Braced](somePanels),
	"warm-air":              kindOf[WarmAir](somePanels),
	"inspection":            kindOf[Inspection](somePanels),
	"climate":               kindOf[Climate](anyPanels),
	"described":             kindOf[Described](somePanels),
	"photograph":            kindOf[Photograph](onePanel),
	"label-printed":         kindOf[LabelPrinted](onePanel),
	"certificate-issued":    kindOf[Issued](onePanel),
	"certificate-withdrawn": kindOf[Revoked](onePanel),
	"handed-over":           kindOf[HandedOver](somePanels),
	"private-erased":        kindOf[Forgotten](noPanels),
	"note":                  kindOf[Note](anyPanels),
	"condition":             kindOf[Condition](somePanels),
	"treatment":             kindOf[Treatment](somePanels),
	"discarded":             kindOf[Discarded](somePanels),
	"amended":               kindOf[Amended](anyPanels),
	"withdrawn":             kindOf[Withdrawn](anyPanels),
	"key-made":              kindOf[KeyMade](noPanels),
	"key-retired":           kindOf[KeyRetired](noPanels),
	"key-lost":              kindOf[KeyLost](noPanels),
}

// Kinds lists every kind, sorted.
func Kinds() []Kind {
	var ks []Kind
	for k := range kinds {
		ks = append(ks, k)
	}
	slices.Sort(ks)
	return ks
}

// Blank returns the zero body of a kind, for tools that describe its fields.
func Blank(k Kind) (Body, bool) { i, ok := kinds[k]; return i.blank, ok }

func kindOf[B Body](rule panelRule) kindInfo {
	var blank B
	return kindInfo{rule, func(b []byte) (envelope, Body, error) {
		var w wire[B]
		err := json.Unmarshal(b, &w, json.RejectUnknownMembers(true))
		return w.Envelope, w.Body, err
	}, blank}
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

// Encode returns the canonical bytes of an entry after checking it.
func Encode(e Entry) ([]byte, error) {
	if e.Body == nil {
		return nil, &FieldError{Why: "an entry without a body"}
	}
	if err := validate(e); err != nil {
		return nil, err
	}
	env, err := json.Marshal(envelope{version, e.Seq, e.Kind(), e.At, e.Written, e.Panels})
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
	if len(v) > MaxEntryBytes {
		return nil, &FieldError{Why: fmt.Sprintf("the entry is larger than %d bytes", MaxEntryBytes)}
	}
	return v, nil
}

// Decode reads one entry from JSON text in any layout and checks it. The
// errors are of type [*FieldError].
func Decode(b []byte) (Entry, error) {
	if len(b) > MaxEntryBytes {
		return Entry{}, &FieldError{Why: fmt.Sprintf("the entry is larger than %d bytes", MaxEntryBytes)}
	}
	if err := checkText(b, false); err != nil {
		return Entry{}, located(b, err)
	}
	var peek struct {
		Kind    Kind  `json:"kind"`
		Version int64 `json:"v"`
	}
	if err := json.Unmarshal(b, &peek); err != nil {
		return Entry{}, located(b, jsonError(err))
	}
	info, ok := kinds[peek.Kind]
	var err error
	switch {
	case peek.Version > version:
		err = &FieldError{Field: "v", Why: fmt.Sprintf("version %d is newer than this program knows", peek.Version)}
	case peek.Kind == "":
		err = &FieldError{Field: "kind", Why: "missing: it says what happened"}
	case !ok:
		err = &FieldError{Field: "kind", Why: fmt.Sprintf("%q is not a kind of entry", clip(string(peek.Kind)))}
	}
	if err != nil {
		return Entry{}, located(b, err)
	}
	env, body, err := info.decode(b)
	if err != nil {
		return Entry{}, located(b, jsonError(err))
	}
	e := Entry{env.Seq, env.At, env.Written, env.Panels, body}
	if a, ok := body.(Amended); ok && len(a.Change) > 0 {
		if err := a.Change.Canonicalize(); err != nil {
			return Entry{}, located(b, jsonError(err))
		}
		e.Body = a
	}
	if err := validate(e); err != nil {
		return Entry{}, located(b, err)
	}
	return e, nil
}

// located fills in where in the text the field of an error stands: the field
// itself, or the object that lacks it.
func located(b []byte, err error) error {
	fe, ok := err.(*FieldError)
	if !ok || fe.Field == "" {
		return err
	}
	d := jsontext.NewDecoder(bytes.NewReader(b))
	want, best := "/"+fe.Field, 0
	for {
		d.PeekKind()
		from := d.InputOffset()
		if tok, err := d.ReadToken(); err != nil {
			break
		} else if k := tok.Kind(); k == '}' || k == ']' {
			continue
		}
		// The pointer of a name is that of its value, which comes next.
		p := string(d.StackPointer())
		if len(p) >= best && (p == want || strings.HasPrefix(want, p+"/")) {
			best, fe.Offset = len(p), from+int64(len(b[from:])-len(bytes.TrimLeft(b[from:], " \t\r\n,:")))
		}
	}
	return fe
}

// DecodeStored reads the canonical bytes of a journal entry and refuses any
// other spelling of the same entry, and one without its place and its time of
// writing.
func DecodeStored(b []byte) (Entry, error) {
	e, err := Decode(b)
	if err != nil {
		return Entry{}, err
	}
	if e.Seq == 0 {
		return Entry{}, &FieldError{Field: "seq", Why: "missing"}
	}
	if e.Written.IsZero() {
		return Entry{}, &FieldError{Field: "written", Why: "missing"}
	}
	again, err := Encode(e)
	if err != nil {
		return Entry{}, err
	}
	if !bytes.Equal(again, b) {
		return Entry{}, &FieldError{Why: "the bytes are not in canonical form"}
	}
	return e, nil
}

func jsonError(err error) error {
	var sem *json.SemanticError
	var syn *jsontext.SyntacticError
	var fe *FieldError
	switch {
	case errors.As(err, &fe):
		return fe
	case errors.As(err, &sem):
		why := "expected " + jsonShape(sem)
		isText := sem.GoType != nil && sem.GoType.Implements(textMarshaler)
		if sem.Err != nil && !(isText && sem.JSONKind != '"') {
			why = sem.Err.Error()
		}
		if errors.Is(err, json.ErrUnknownName) {
			why = "there is no such field"
		}
		return &FieldError{Field: pointer(sem.JSONPointer), Why: why}
	case errors.As(err, &syn):
		return &FieldError{Field: pointer(syn.JSONPointer), Why: "not valid JSON: " + syn.Err.Error(), Offset: syn.ByteOffset}
	}
	return &FieldError{Why: err.Error()}
}

func pointer(p jsontext.Pointer) string { return strings.TrimPrefix(string(p), "/") }

func jsonShape(e *json.SemanticError) string {
	if e.GoType == nil {
		return "something else"
	}
	switch s := e.GoType.Kind().String(); {
	case s == "int64":
		return "a whole number"
	case s == "slice":
		return "a list"
	case s == "bool":
		return "true or false"
	case s == "struct" && !e.GoType.Implements(textMarshaler):
		return "an object"
	}
	return "a text"
}
