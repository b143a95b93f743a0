package seal

import (
	"errors"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A field is one "name: value" line of a statement.
type field struct{ name, value string }

// formatFields writes the first line and then one line for each field whose value is not empty.
func formatFields(first string, fields []field) (string, error) {
	var b strings.Builder
	b.WriteString(first + "\n")
	for _, f := range fields {
		if !utf8.ValidString(f.value) {
			return "", errors.New("the " + f.name + " is not valid UTF-8 text")
		}
		if value := oneLine(f.value); value != "" {
			b.WriteString(f.name + ": " + value + "\n")
		}
	}
	return b.String(), nil
}

// parseFields splits a text into its first line and its fields. It is lenient: the caller writes the result again and compares.
func parseFields(text string) (first string, values map[string]string) {
	first, rest, _ := strings.Cut(text, "\n")
	values = map[string]string{}
	for line := range strings.Lines(rest) {
		name, value, _ := strings.Cut(strings.TrimSuffix(line, "\n"), ": ")
		values[name] = value
	}
	return first, values
}

// oneLine makes a value fit for one line that reads as it is stored: runs of white space become one space; control characters and the marks
// that turn the direction of writing, which could make a line show something else than it says, go.
func oneLine(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r), r == '\ufeff':
			return -1
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}
