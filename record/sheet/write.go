package sheet

import (
	"encoding/csv"
	"io"
	"strings"
)

// formulaStarts are the characters with which a spreadsheet program may take
// a cell for a formula, in the wide forms of East Asian text too.
const formulaStarts = "=+-@\t\r\n＝＋－＠"

// Guard makes a text harmless in a spreadsheet: what could be taken for a
// formula gets an apostrophe before it. A text that begins with apostrophes
// and then such a character gets one more, so that [Unguard] gives every text
// back.
func Guard(s string) string {
	if startsFormula(strings.TrimLeft(s, "'")) {
		return "'" + s
	}
	return s
}

// Unguard takes away the apostrophe that [Guard] put in, and no other.
func Unguard(s string) string {
	if rest, ok := strings.CutPrefix(s, "'"); ok && startsFormula(strings.TrimLeft(rest, "'")) {
		return rest
	}
	return s
}

func startsFormula(s string) bool {
	for _, r := range s {
		return strings.ContainsRune(formulaStarts, r)
	}
	return false
}

// Write writes the rows that list gives, one after the other, as CSV in the form
// of RFC 4180, UTF-8, every cell guarded. The first row is the header.
func Write(w io.Writer, list func(row func([]string) error) error) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	if err := list(func(row []string) error {
		safe := make([]string, len(row))
		for i, s := range row {
			safe[i] = Guard(s)
		}
		return c.Write(safe)
	}); err != nil {
		return err // a header alone was not written yet
	}
	c.Flush()
	return c.Error()
}

// Rows are rows at hand, for [Write].
func Rows(rows [][]string) func(func([]string) error) error {
	return func(f func([]string) error) error {
		for _, row := range rows {
			if err := f(row); err != nil {
				return err
			}
		}
		return nil
	}
}
