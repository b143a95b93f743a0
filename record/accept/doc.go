// Package accept decides what may be written today: the one gate for the
// command line, the page, imports, amendments and restored entries. Reading
// never asks it. What it refuses today it may allow tomorrow, and the other
// way round; no entry in a journal is touched by that.
//
// Its errors are of type [*record.FieldError] and name the field.
package accept

import (
	"backleaf/record"
	"backleaf/record/form"
)

// Parse reads one entry from JSON text of any layout that comes from outside,
// and checks it by itself.
func Parse(b []byte) (record.Entry, error) {
	if len(b) > form.MaxBytes {
		return record.Entry{}, refuse("", "the entry is larger than %d bytes", form.MaxBytes)
	}
	if err := checkText(b, false); err != nil {
		return record.Entry{}, record.Located(b, err)
	}
	e, err := record.Parse(b)
	if err != nil {
		return record.Entry{}, err
	}
	if err := Check(e); err != nil {
		return record.Entry{}, record.Located(b, err)
	}
	return e, nil
}

// Entry returns the canonical bytes of an entry that may be written into a
// book that holds what k tells.
func Entry(e record.Entry, k Known) ([]byte, error) {
	if err := Check(e); err != nil {
		return nil, err
	}
	b, err := form.Write(e)
	if err != nil {
		return nil, err
	}
	return b, Refers(e, k)
}
