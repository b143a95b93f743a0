package tell_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/tell"
)

// lists are the closed lists of the record by the names of their types, found
// in the fields of all kinds of entry.
func lists() []string {
	var out []string
	var walk func(reflect.Type)
	walk = func(t reflect.Type) {
		switch {
		case t.Kind() == reflect.Slice:
			walk(t.Elem())
		case t.Kind() == reflect.Struct:
			for i := range t.NumField() {
				walk(t.Field(i).Type)
			}
		case t.Kind() == reflect.String && record.Words(t.Name()) != nil && !slices.Contains(out, t.Name()):
			out = append(out, t.Name())
		}
	}
	for _, k := range record.Kinds() {
		b, _ := record.Blank(k)
		walk(reflect.TypeOf(b))
	}
	return out
}

// wordOf makes a value of a closed list by the list's name.
func wordOf(list, word string) record.Value {
	return record.Value{Name: "word", Type: list, Texts: []string{word}}
}

// Every word of every closed list has its printed word in that list.
func TestEveryWordHasItsWord(t *testing.T) {
	if n := len(lists()); n < 22 {
		t.Fatalf("only %d lists", n)
	}
	for _, list := range lists() {
		for _, word := range record.Words(list) {
			if tell.English().Words[list][word].Text == "" {
				t.Errorf("%s %q has no printed word", list, word)
			}
		}
	}
	for _, s := range record.Stages {
		if tell.English().Words["Stage"][string(s)].Text == "" {
			t.Errorf("stage %q has no printed word", s)
		}
	}
	for _, u := range [][]string{record.Length{}.Units(), record.Amount{}.Units(), record.Percent{}.Units(), record.Density{}.Units(), record.Duration{}.Units(),
		record.Temperature{}.Units(), record.MassPerArea{}.Units(), record.ThreadCount{}.Units()} {
		for _, unit := range u {
			if tell.English().Words["unit"][unit].Text == "" {
				t.Errorf("unit %q has no printed word", unit)
			}
		}
	}
}

// A word is looked up in its own list: the same word in two lists is told by
// each as its own, and a word of one list is none of another.
func TestWordsStayInTheirLists(t *testing.T) {
	marked := *tell.English()
	marked.Words = tell.Words{}
	for list, words := range tell.English().Words {
		marked.Words[list] = map[string]tell.Word{}
		for word := range words {
			marked.Words[list][word] = tell.Word{Text: list + "/" + word}
		}
	}
	for _, list := range lists() {
		for _, other := range lists() {
			for _, word := range record.Words(other) {
				want := word // not of this list: told as recorded
				if slices.Contains(record.Words(list), word) {
					want = list + "/" + word
				}
				if got := marked.Fill("{word}", wordOf(list, word)); got != want {
					t.Errorf("%s %q: %q, want %q", list, word, got, want)
				}
			}
		}
	}
	if got := tell.English().Word(record.PhotoRole("other")); got == tell.English().Word(record.BoardKind("other")) {
		t.Errorf("another photograph is called %q", got)
	}
	if got := tell.English().Word([]record.Face{record.Front, record.Back, record.Edges}); got != "front, back and edges" {
		t.Errorf("faces: %q", got)
	}
}

// lookalikes are free texts that look like words, dates, sizes or amounts of
// the record.
func lookalikes() []string {
	out := []string{"2019-21", "1998", "1998~", "2026-05-02", "../1985", "30 x 40 cm", "8 x 10 x 1/8 in", "3 mm", "12 g", "50 %", "E12", "KB26-0142-1", "yes", "sealer-3"}
	for _, list := range lists() {
		out = append(out, record.Words(list)...)
	}
	return out
}

// A free text is told as it is, whatever it looks like, in every text field of
// every kind of entry.
func TestTextIsOnlyText(t *testing.T) {
	for _, text := range lookalikes() {
		if got := tell.English().Fill("{a}", record.With("a", text)); got != text {
			t.Errorf("the text %q is told as %q", text, got)
		}
		k := history(t, `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm"`,
			`"kind":"described","panels":["NUMBER"],"own_reference":"x","title":"y"`,
			`"kind":"amended","panels":["NUMBER"],"entry":3,"because":"a slip","change":{"own_reference":"`+text+`"}`)
		if got := k.Corrections(); len(got) != 1 || !strings.Contains(got[0], "own reference: x → "+text+" (") {
			t.Errorf("own reference %q is told as %q", text, got)
		}
	}
}

// A word is not a text: a value without a list is refused.
func TestWordNeedsAList(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a bare text was looked up as a word")
		}
	}()
	tell.English().Word("other")
}
