package seal

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"golang.org/x/mod/sumdb/tlog"
)

// A word is a sort of note in "name: value" lines.
type word[W any] struct {
	what   string // as errors call it
	title  string // what follows the origin in the first line
	wrong  error  // not one of these
	fields func(W) (origin string, all []field)
	read   func(origin string, v *values) W
}

// sign returns the word as a note, if it can be read back.
func (d word[W]) sign(w W, k Key) ([]byte, error) {
	text, err := d.text(w)
	if err == nil {
		_, err = d.parse(text)
	}
	var msg []byte
	if k.private == nil {
		err = errors.New("there is no key")
	}
	if err == nil {
		msg, err = k.signNote(text)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot sign %s: %w", d.what, err)
	}
	return msg, nil
}

// open reads the word and checks its signature with the key that signed it, which it may name itself.
func (d word[W]) open(msg []byte, key func(W) PublicKey) (w W, err error) {
	text, err := unsignedText(msg)
	if err != nil {
		return w, err
	}
	said, err := d.parse(text)
	if err != nil {
		return w, err
	}
	if _, err := openNote(msg, key(said)); err != nil {
		return w, err
	}
	return said, nil
}

func (d word[W]) text(w W) (string, error) {
	origin, fields := d.fields(w)
	return formatFields(origin+d.title, fields)
}

// parse reads a text in its one spelling.
func (d word[W]) parse(text string) (w W, err error) {
	first, rest, _ := strings.Cut(text, "\n")
	origin, ok := strings.CutSuffix(first, d.title)
	if !ok || !validOrigin(origin) {
		return w, d.wrong
	}
	v := values{of: map[string]string{}}
	for line := range strings.Lines(rest) { // lenient: it is written again and compared
		name, value, _ := strings.Cut(strings.TrimSuffix(line, "\n"), ": ")
		v.of[name] = value
	}
	said := d.read(origin, &v)
	if v.err != nil {
		return w, fmt.Errorf("%w: %w", d.wrong, v.err)
	}
	if again, err := d.text(said); err != nil || again != text {
		return w, d.wrong
	}
	return said, nil
}

// values are the fields of a text as they are read, and what is wrong with the first that is.
type values struct {
	of  map[string]string
	err error
}

func (v *values) wrong(name string, err error) {
	if v.err == nil && err != nil {
		v.err = fmt.Errorf("%s: %w", name, err)
	}
}

func (v *values) needed(name string) string {
	if v.of[name] == "" {
		v.wrong(name, errors.New("it is missing"))
	}
	return v.of[name]
}

func (v *values) digest(name string) Digest {
	d, err := ParseDigest(v.of[name])
	v.wrong(name, err)
	return d
}

func (v *values) key(name string) PublicKey {
	p, err := parsePublicLine(v.of[name])
	v.wrong(name, err)
	return p
}

func (v *values) root(name string) Hash {
	h, err := tlog.ParseHash(v.of[name])
	v.wrong(name, err)
	return h
}

// count is a whole number that is not negative.
func (v *values) count(name string) int64 {
	n, err := strconv.ParseInt(v.of[name], 10, 64)
	if err == nil && n < 0 {
		err = errors.New("it is negative")
	}
	v.wrong(name, err)
	return n
}

// day is a calendar day in the one spelling YYYY-MM-DD.
func (v *values) day(name string) string {
	if !isDate(v.of[name]) {
		v.wrong(name, errors.New("it is no date written YYYY-MM-DD"))
	}
	return v.of[name]
}

func isDate(s string) bool {
	t, err := time.Parse(time.DateOnly, s)
	return err == nil && t.Format(time.DateOnly) == s
}

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
