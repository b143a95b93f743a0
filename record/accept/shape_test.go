package accept_test

import (
	"strings"
	"testing"

	"backleaf/record/accept"
)

// A name that is written otherwise than a key is refused with the key that it would be.
func TestKeyOffered(t *testing.T) {
	for typed, like := range map[string]string{"my best": ", like my-best", "My_Tin 2": ", like my-tin-2", "Übung": "", "-": "", strings.Repeat("a b", 20): ""} {
		_, err := accept.Parse([]byte(`{"v":1,"seq":1,"written":"2031-03-01T10:00:00Z","kind":"maker","key":"` + typed + `","name":"x"}`))
		_, offered, _ := strings.Cut(err.Error(), "at most 40")
		if offered != like {
			t.Errorf("%q: %v", typed, err)
		}
	}
}
