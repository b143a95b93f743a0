// Package refuse is why something is not done: an error with a code, by which
// a door finds its own words for what to do next, and the input it is about.
package refuse

import (
	"errors"
	"fmt"

	"backleaf/record"
)

// Class says what sort of refusal it is.
type Class int

const (
	Failed  Class = iota // it could not be done
	Unclear              // it was not asked for in a way that can be followed
	Broken               // a book, a paper or a file kept with it does not hold
	NoBook               // there is no book to do it in
	Later                // a later program wrote what it is about
)

// Error is a refusal. Its text says what could not be done and why, and names
// no door: what to do next is found by the code.
type Error struct {
	Class Class
	Field string      // the input it is about, named as a door names it; empty: all of it
	Typed string      // what was typed there, where the text shows it
	Said  record.Said // the code, and what a hint may name
	Err   error
}

func (e *Error) Error() string {
	switch {
	case e.Field == "":
		return e.Err.Error()
	case e.Typed == "":
		return e.Field + ": " + e.Err.Error()
	}
	return e.Field + " " + e.Typed + ": " + e.Err.Error()
}

func (e *Error) Unwrap() error { return e.Err }

// With adds values to what is said.
func (e *Error) With(values ...record.Value) *Error {
	e.Said.Values = append(e.Said.Values, values...)
	return e
}

// Unclearly refuses what was asked for.
func Unclearly(code, format string, args ...any) *Error {
	return &Error{Class: Unclear, Said: record.Say(code), Err: fmt.Errorf(format, args...)}
}

// Input refuses one input, by its name.
func Input(field, code, format string, args ...any) *Error {
	e := Unclearly(code, format, args...)
	e.Field = field
	return e
}

// Because gives an error a code and values; nil stays nil.
func Because(code string, err error, values ...record.Value) error {
	if err == nil {
		return nil
	}
	return (&Error{Said: record.Say(code), Err: err}).With(values...)
}

// Cannot refuses because of how things are.
func Cannot(code, format string, args ...any) *Error {
	return &Error{Said: record.Say(code), Err: fmt.Errorf(format, args...)}
}

// Breaks says that something does not hold.
func Breaks(code, format string, args ...any) *Error {
	e := Cannot(code, format, args...)
	e.Class = Broken
	return e
}

// Code returns the code of a refusal; empty for other errors.
func Code(err error) string {
	if e, ok := errors.AsType[*Error](err); ok {
		return e.Said.Code
	}
	return ""
}
