package ask

import "testing"

// A phrase of the table holds no word that is passed over: it would be shorter
// than it looks, and take questions of other topics. No word stands in two of
// the lists.
func TestPhrases(t *testing.T) {
	for w := range empty() {
		if interrogative()[w] || outside()[w] {
			t.Errorf("%q stands in two lists", w)
		}
	}
	for _, top := range topics() {
		for _, p := range top.phrases {
			for _, w := range p {
				if outside()[w] && len(p) == 1 {
					t.Errorf("%s: %q lies outside of any record", top.code, w)
				}
			}
		}
	}
}
