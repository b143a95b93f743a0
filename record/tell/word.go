package tell

import (
	"fmt"

	"backleaf/record"
)

// Words holds the words of closed lists: by the name of the list, which is the
// name of its Go type ("Face", "Binder"), and by the word of the record. The
// lists "Stage", "unit", "code", "kind" and "field" are the program's own. A
// word is looked up in its own list only.
type Words map[string]map[string]Word

// A Word is what sentences ask of a word.
type Word struct {
	Text   string // as it stands alone, e.g. in a cell of a table
	Short  string // where there is little room; empty: Text
	Gender Gender
	Plural bool              // plural by itself: "edges"
	Forms  map[string]string // cases and the like; of a unit: plural categories
}

// Gender is the grammatical gender of a word, in languages that have it.
type Gender int

// Genders; languages with two use the first two.
const (
	NoGender Gender = iota
	Masculine
	Feminine
	Neuter
)

func (g Gender) String() string { return [...]string{"", "masc", "fem", "neut"}[g] }

// in returns the word in a form: "" alone, "short" shortened; a form that the
// word does not have is the word alone.
func (w Word) in(form string) string {
	if form == "short" && w.Short != "" {
		return w.Short
	}
	if f, ok := w.Forms[form]; ok {
		return f
	}
	return w.Text
}

// lookUp finds a word of a closed list.
func (c *Catalogue) lookUp(list, word string) (Word, bool) {
	w, ok := c.Words[list][word]
	return w, ok
}

// Word returns the printed word for a word of a closed list of package
// record, looked up in its own list. A word that the catalogue does not know
// is printed as recorded; one that was not recorded is said to be so.
func (c *Catalogue) Word(v any) string { return c.WordIn("", v) }

// WordIn is [Catalogue.Word] in a form of the word.
func (c *Catalogue) WordIn(form string, v any) string {
	x := record.With("word", v)
	if x.Type == "text" {
		panic(fmt.Sprintf("tell: %q is a text, not a word of a list", x.Text()))
	}
	return c.value(x, form)
}

// Knows reports whether the catalogue has a word for a word of a closed list;
// it has none for "" and "unknown".
func (c *Catalogue) Knows(v any) bool {
	x := record.With("word", v)
	_, ok := c.lookUp(x.Type, x.Text())
	return ok && x.Text() != record.Unknown
}
