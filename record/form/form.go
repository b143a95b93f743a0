// Package form is the way between the canonical bytes of an entry and the
// entry. It judges nothing: whatever was once accepted is read for ever, and
// what a later program wrote is kept and marked, never called false.
//
// An entry is one JSON object in the canonical form of RFC 8785, with whole
// numbers only, between -(2^53-1) and 2^53-1. That is tested on the text
// alone: an older program tests the entries of a newer one.
//
// TestReadsWhatIsNewer holds the package to this; TestCanonicalJSON holds it
// against the published cases of RFC 8785.
package form

import (
	"bytes"
	"fmt"
	"strconv"

	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
)

// MaxBytes bounds the canonical bytes of one entry.
const MaxBytes = 1 << 20

// maxDepth bounds how deeply objects and lists may stand in one another.
const maxDepth = 100

// Read reads an entry as it stands in a journal. The error says that the
// bytes are not the canonical form of any entry with its place and the moment
// at which it was written.
func Read(b []byte) (record.Entry, error) {
	if err := Canonical(b, MaxBytes); err != nil {
		return record.Entry{}, err
	}
	return Decode(b)
}

// Decode is [Read] of bytes whose form was tested before: when they were
// written, and whenever the book is verified.
func Decode(b []byte) (record.Entry, error) {
	e, err := record.Assemble(b)
	switch {
	case err != nil:
		return record.Entry{}, err
	case e.Seq <= 0:
		return record.Entry{}, &record.FieldError{Field: "seq", Why: "missing"}
	case e.Written.IsZero():
		return record.Entry{}, &record.FieldError{Field: "written", Why: "missing"}
	}
	return e, nil
}

// Canonical says why bytes are not one JSON object in canonical form, of at
// most so many bytes; nil if they are.
func Canonical(b []byte, most int) error {
	if len(b) > most {
		return &record.FieldError{Why: fmt.Sprintf("it is larger than %d bytes", most)}
	}
	if len(b) == 0 || b[0] != '{' {
		return &record.FieldError{Why: "expected a JSON object"}
	}
	v := jsontext.Value(bytes.Clone(b))
	if err := v.Canonicalize(); err != nil {
		return notCanonical(err)
	}
	if !bytes.Equal(v, b) {
		return notCanonical(nil)
	}
	return plain(b)
}

// plain looks at the numbers and the depth of a text that is canonical JSON.
func plain(b []byte) error {
	depth := 0
	for i := 0; i < len(b); i++ {
		switch c := b[i]; {
		case c == '"':
			for i++; b[i] != '"'; i++ {
				if b[i] == '\\' {
					i++
				}
			}
		case c == '{' || c == '[':
			if depth++; depth > maxDepth {
				return &record.FieldError{Why: "nested too deeply"}
			}
		case c == '}' || c == ']':
			depth--
		case c == '-' || '0' <= c && c <= '9':
			from := i
			for i+1 < len(b) && bytes.IndexByte([]byte("0123456789.eE+-"), b[i+1]) >= 0 {
				i++
			}
			if n, err := strconv.ParseInt(string(b[from:i+1]), 10, 64); err != nil || n >= 1<<53 || n <= -1<<53 {
				return &record.FieldError{Why: "the bytes hold a number that is not whole"}
			}
		}
	}
	return nil
}

func notCanonical(err error) error {
	why := "the bytes are not in canonical form"
	if err != nil {
		why += ": " + err.Error()
	}
	return &record.FieldError{Why: why}
}

// Write returns the canonical bytes of an entry. It cannot write what a later
// program wrote: such an entry has its own bytes.
func Write(e record.Entry) ([]byte, error) {
	b, err := e.Text()
	if err == nil && len(b) > MaxBytes {
		err = &record.FieldError{Why: fmt.Sprintf("the entry is larger than %d bytes", MaxBytes)}
	}
	return b, err
}

// Stored is an entry with its canonical bytes.
type Stored struct {
	Seq   int64
	Bytes []byte
	Entry record.Entry
}

// Entries returns the entries alone.
func Entries(stored []Stored) []record.Entry {
	es := make([]record.Entry, len(stored))
	for i, s := range stored {
		es[i] = s.Entry
	}
	return es
}
