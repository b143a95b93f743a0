// Package edtf reads, sorts and prints inexact dates: Extended Date/Time
// Format, levels 0 and 1, as in the Library of Congress specification of
// 4 February 2019 (the profile of ISO 8601-2:2019).
//
// A painter remembers "about 1998" or "some time in spring 2019"; such a date
// is kept exactly as it was written (1998~, 2019-21) and is never turned into
// a day nobody stated. A timestamp with seconds and offset, as the journal
// writes it, is a level 0 date like any other.
//
// The examples of the specification are the table of TestSpecification;
// FuzzParse proves that whatever is accepted is given back byte for byte.
package edtf

import (
	"cmp"
	"errors"
	"fmt"
	"time"
)

// ErrLevel2 is wrapped by the error of Parse when the text is a form that the
// specification has only at level 2 (sets, parts marked one by one, exponents,
// significant digits, quarters and hemispheres), which this program refuses.
var ErrLevel2 = errors.New("a level 2 form, only levels 0 and 1 are kept here")

// Date is an EDTF expression of level 0 or 1. It is a comparable value and
// keeps its exact spelling; the zero Date means that no date was recorded.
type Date struct{ text string }

// Parse reads one expression strictly: no spaces, no lower case, no short
// forms, no date outside the calendar. An interval must hold at least one date
// and must not end before it begins.
func Parse(s string) (Date, error) {
	if _, err := parse(s); err != nil {
		return Date{}, fmt.Errorf("cannot read %q as an EDTF date: %w", clip(s), err)
	}
	return Date{s}, nil
}

// clip keeps an error about a very long text readable.
func clip(s string) string {
	if len(s) > 60 {
		return s[:60] + "..."
	}
	return s
}

// String gives the expression as it was written, "" for the zero Date.
func (d Date) String() string { return d.text }

// IsZero reports whether no date was recorded.
func (d Date) IsZero() bool { return d.text == "" }

// IsExactDay reports whether d names one calendar day without any doubt, with
// or without a time of day.
func (d Date) IsExactDay() bool {
	e := d.expr()
	return !e.interval && e.from.exactDay()
}

// Earliest gives the first second d may mean; false if d is zero or has no
// known beginning (../1985, /1985). A date without an offset is taken as UTC.
// "About" and "possibly" do not widen the bounds: the specification gives no
// width.
func (d Date) Earliest() (time.Time, bool) {
	from := d.expr().from
	if from.kind == none {
		return time.Time{}, false
	}
	first, _ := from.bounds()
	return first, true
}

// Latest gives the last second d may mean; false if d is zero or has no known
// end (1985/.., 1985/).
func (d Date) Latest() (time.Time, bool) {
	to := d.expr().to
	if to.kind == none {
		return time.Time{}, false
	}
	_, last := to.bounds()
	return last, true
}

// Compare orders dates by earliest bound, then latest bound, then spelling, so
// that only equal spellings compare as 0. No known beginning sorts first, no
// known end last, and the zero Date after everything.
func (d Date) Compare(o Date) int {
	switch {
	case d == o:
		return 0
	case d.IsZero():
		return 1
	case o.IsZero():
		return -1
	}
	if c := compareBound(d.Earliest, o.Earliest, -1); c != 0 {
		return c
	}
	if c := compareBound(d.Latest, o.Latest, 1); c != 0 {
		return c
	}
	return cmp.Compare(d.text, o.text)
}

// compareBound orders two bounds; open is where a missing one goes.
func compareBound(a, b func() (time.Time, bool), open int) int {
	at, aok := a()
	bt, bok := b()
	switch {
	case aok && bok:
		return at.Compare(bt)
	case aok:
		return -open
	case bok:
		return open
	}
	return 0
}

// MarshalText gives the spelling; the zero Date is empty text.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.text), nil }

// UnmarshalText reads a spelling as Parse does, and empty text as the zero Date.
func (d *Date) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		*d = Date{}
		return nil
	}
	p, err := Parse(string(b))
	if err != nil {
		return err
	}
	*d = p
	return nil
}

// expr parses again: a Date is only made by Parse, so it cannot fail, and a
// Date that is nothing but its spelling stays comparable.
func (d Date) expr() expr {
	e, _ := parse(d.text)
	return e
}
