package record

import (
	"slices"
	"strings"
	"testing"
)

// Each other name leads, in every list that holds its word, to that word alone.
func TestCalled(t *testing.T) {
	lists := map[string][]string{"stages": nil, // and such as are held by TestMeantWords
		"orders": {"made", "title", "where"}, "places": {"studio"}, "rules": {"balanced-pull", "layers-hold", "toxic-layers", "sanded-after-cure"}}
	for _, s := range Stages {
		lists["stages"] = append(lists["stages"], string(s))
	}
	for name, words := range closed {
		lists[name] = words
	}
	for word, others := range names {
		held := false
		for list, words := range lists {
			if !slices.Contains(words, word) {
				continue
			}
			held = true
			for o := range strings.FieldsSeq(others) {
				if got := Nearest(strings.ToUpper(o), words); got != word && !slices.Contains(words, o) {
					t.Errorf("%s: %s is taken for %q, not for %s", list, o, got, word)
				}
			}
		}
		if !held {
			t.Errorf("%q stands in no list", word)
		}
	}
}

// The trade's words for what the record calls otherwise (common practice).
func TestTradeWords(t *testing.T) {
	for _, c := range []struct{ list, typed, want string }{
		{"Purpose", "primer", "ground"}, {"Purpose", "Gesso", "ground"}, {"Stratum", "primer", "ground"}, {"Stratum", "canvas", "cloth"},
		{"Face", "rear", "back"}, {"Face", "verso", "back"}, {"Fibre", "flax", "linen"}, {"Parting", "found", "return"}, {"Parting", "lent", "loan"},
		{"Binder", "rabbit skin glue", "animal-glue"}, {"Purpose", "glue", "adhesive"}, {"Gloss", "semi-gloss", "satin"}, {"Means", "sandpaper", "sanding"},
	} {
		if got := Nearest(c.typed, Words(c.list)); got != c.want {
			t.Errorf("%s of %s: %q, want %q", c.typed, c.list, got, c.want)
		}
	}
	if got, want := OneOf("rear", Words("Face")), "one of front, back, edges; nearest: back"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
