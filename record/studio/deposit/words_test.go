package deposit

import (
	"maps"
	"testing"

	"backleaf/record/tell"
)

// The version changes with any word, and is the same wherever words are.
func TestWordsVersion(t *testing.T) {
	own, err := version(tell.English())
	if err != nil {
		t.Fatal(err)
	}
	other := *tell.English()
	other.Codes = maps.Clone(other.Codes)
	for code, m := range other.Codes {
		other.Codes[code] = m + "."
		break
	}
	for name, c := range map[string]struct {
		words *tell.Catalogue
		same  bool
	}{"again": {tell.English(), true}, "a word changed": {&other, false}} {
		if v, err := version(c.words); err != nil || (v == own) != c.same {
			t.Errorf("%s: %s, %s, %v", name, own, v, err)
		}
	}
}
