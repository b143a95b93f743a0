package accept

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
)

// CheckLine says why a text from outside cannot be recorded: control
// characters, line breaks, and characters that turn the direction of reading
// or cannot be seen. Such text could pass for something else in print.
func CheckLine(s string) error {
	if !utf8.ValidString(s) {
		return fmt.Errorf("the text is not valid UTF-8")
	}
	for _, r := range s {
		switch {
		case unicode.IsControl(r):
			return fmt.Errorf("a control character (U+%04X) is not allowed", r)
		case invisible(r):
			return fmt.Errorf("an invisible character (U+%04X) is not allowed", r)
		case r == utf8.RuneError:
			return fmt.Errorf("a replacement character (U+FFFD) is not allowed")
		}
	}
	return nil
}

// invisible reports characters that turn the direction of reading, are not
// seen at all, some of them letters, or are no characters. The joiners U+200C and U+200D and the
// variation selectors stay: scripts need them.
func invisible(r rune) bool {
	return r == 0x00AD || r == 0x034F || r == 0x115F || r == 0x1160 || r == 0x3164 || r == 0xFFA0 || r == 0x061C || r == 0x17B4 || r == 0x17B5 || r == 0x180E || r == 0x200B || r == 0x200E || r == 0x200F ||
		r >= 0x2028 && r <= 0x202E || r >= 0x2060 && r <= 0x206F || r == 0xFEFF ||
		r >= 0xFFF9 && r <= 0xFFFC || r == 0xFFFE || r == 0xFFFF || r >= 0xE0000 && r <= 0xE007F
}

// checkText reads the whole JSON text once: one object, no duplicate names,
// valid UTF-8, whole numbers only, no control characters in any text. What
// was not recorded is left out, so that an entry has one spelling: there is no
// null (but in a change, where it takes a field away), no empty text, list or
// object, and no nought.
func checkText(b []byte, change bool) error {
	d := jsontext.NewDecoder(bytes.NewReader(b))
	if k := d.PeekKind(); k != '{' {
		if _, err := d.ReadToken(); err != nil && err != io.EOF {
			return syntax(err)
		}
		return &record.FieldError{Why: "expected a JSON object"}
	}
	at := func(why string) error {
		return &record.FieldError{Field: strings.TrimPrefix(string(d.StackPointer()), "/"), Why: why}
	}
	for last := byte(0); ; {
		tok, err := d.ReadToken()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return syntax(err)
		}
		kind := byte(tok.Kind())
		in, n := d.StackIndex(d.StackDepth())
		isName := d.StackDepth() > 0 && n%2 == 1 && in == '{'
		switch kind {
		case '0':
			n, err := strconv.ParseInt(tok.String(), 10, 64)
			if err != nil || n >= 1<<53 || n <= -1<<53 {
				return at("expected a whole number; decimals are written as text, like \"3.2 mm\"")
			}
			if n < 1 {
				return at("expected a whole number from 1; leave the field out where nothing was recorded")
			}
		case '"':
			s := tok.String()
			if s == "" && !isName {
				return at("an empty text: leave the field out where nothing was recorded")
			}
			if err := CheckLine(strings.ReplaceAll(s, "\n", "")); err != nil {
				return at(err.Error())
			}
		case 'n':
			if !change && !strings.HasPrefix(string(d.StackPointer()), "/change/") {
				return at("there is no null: leave the field out where nothing was recorded")
			}
		case '}':
			if last == '{' && d.StackDepth() > 0 {
				return at("an empty object: leave the field out")
			}
		case ']':
			if last == '[' {
				return at("an empty list: leave the field out")
			}
		}
		if d.StackDepth() > 8 {
			return at("nested too deeply")
		}
		last = kind
	}
}

func syntax(err error) error {
	fe := &record.FieldError{Why: err.Error()}
	var syn *jsontext.SyntacticError
	if errors.As(err, &syn) {
		fe.Field, fe.Why, fe.Offset = strings.TrimPrefix(string(syn.JSONPointer), "/"), "not valid JSON: "+syn.Err.Error(), syn.ByteOffset
	}
	return fe
}
