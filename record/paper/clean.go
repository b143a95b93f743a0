package paper

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/bidi"
	"golang.org/x/text/unicode/norm"
)

// Clean makes text from outside safe to print, without losing what it said:
//
//   - it is composed (Unicode NFC), so that a letter and its accent meet;
//   - line ends of every kind become "\n", tabs become spaces;
//   - characters that only join, hint or mark and print nothing (soft hyphen,
//     zero width space and joiners, byte order mark, direction marks,
//     variation selectors) are dropped;
//   - all other controls and format characters, direction overrides and
//     isolates above all, and bytes that are not UTF-8 are shown as an escape
//     such as [U+202E], so that they act on nothing and still can be seen.
func Clean(s string) string {
	s = strings.ReplaceAll(s, "\r\n", "\n")
	var b strings.Builder
	b.Grow(len(s))
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		switch {
		case r >= ' ' && r <= '~': // most of what is written
			b.WriteByte(s[i])
		case r == utf8.RuneError && n == 1:
			fmt.Fprintf(&b, "[byte %02X]", s[i])
		case r == '\n' || r == '\r' || r == '\u0085' || r == '\u2028' || r == '\u2029':
			b.WriteByte('\n')
		case r == '\t':
			b.WriteByte(' ')
		case printsNothing(r):
		case unicode.In(r, unicode.Cc, unicode.Cf, unicode.Cs, unicode.Co) || unassigned(r):
			fmt.Fprintf(&b, "[U+%04X]", r)
		default:
			b.WriteRune(r)
		}
		i += n
	}
	return norm.NFC.String(b.String())
}

// OneLine is Clean for a place that has one line: line ends become spaces and
// runs of spaces become one.
func OneLine(s string) string {
	return strings.Join(strings.FieldsFunc(Clean(s), func(r rune) bool { return r == ' ' || r == '\n' }), " ")
}

func printsNothing(r rune) bool {
	switch r {
	case '\u00AD', '\u034F', '\u200B', '\u200C', '\u200D', '\u200E', '\u200F', '\u061C', '\u2060', '\uFEFF':
		return true
	}
	return r >= 0xFE00 && r <= 0xFE0F
}

func unassigned(r rune) bool {
	return r >= 0xFDD0 && r <= 0xFDEF || r&0xFFFE == 0xFFFE
}

// A GlyphError says that a character cannot be printed, and where it came from.
type GlyphError struct {
	Rune   rune
	Field  string // the place in the record, such as "title"
	Reason string
}

func (e *GlyphError) Error() string {
	field := e.Field
	if field == "" {
		field = "text"
	}
	return fmt.Sprintf("cannot print U+%04X in %s: %s", e.Rune, field, e.Reason)
}

// unprintable gives the reason why a character may not reach the page even if
// a face has a picture of it, or "".
func unprintable(r rune) string {
	if r > 0xFFFF {
		return "characters beyond U+FFFF are not in the faces"
	}
	p, _ := bidi.LookupRune(r)
	switch p.Class() {
	case bidi.R, bidi.AL, bidi.AN:
		// Drawn from left to right it would be wrong, which is worse than
		// absent: a name must not be printed backwards.
		return "writing from right to left cannot be set; give a romanised form"
	}
	return ""
}
