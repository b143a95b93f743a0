package measure

import (
	"errors"
	"fmt"
)

// Basis says how a figure came to be here.
type Basis string

// The four bases, strongest first.
const (
	Published Basis = "as given in"    // seen in the source, or in a page that reproduces it
	Computed  Basis = "computed from"  // follows from a formula that is named
	Memory    Basis = "from memory of" // remembered, not looked up: say so wherever it is printed
	Practice  Basis = "common practice"
)

// Source is where a figure comes from, in words that can be printed beside it.
type Source struct {
	Basis Basis
	Text  string
}

// String gives the basis and the source, such as "from memory of EN 622-5".
func (s Source) String() string {
	switch {
	case s.Text == "":
		return string(s.Basis)
	case s.Basis == Practice:
		return string(s.Basis) + ": " + s.Text
	default:
		return string(s.Basis) + " " + s.Text
	}
}

// ErrNoFigure means that the tables hold no figure for what was asked. It is
// an answer of its own: nothing stands in for the missing figure.
var ErrNoFigure = errors.New("no figure known")

// within refuses a value outside lo..hi. The comparison is written so that
// NaN is refused too.
func within(what string, value, lo, hi float64, unit string) error {
	if value >= lo && value <= hi {
		return nil
	}
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Errorf("%s %.6g%s is outside %.6g to %.6g", what, value, unit, lo, hi)
}

// first returns the first error, so that a message names one thing to correct.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
