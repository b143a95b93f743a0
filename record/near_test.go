package record_test

import (
	"testing"

	"backleaf/record"
)

// All of a word comes before a part of another.
func TestNearest(t *testing.T) {
	for _, c := range []struct{ typed, want string }{
		{"brich", "birch"}, {"sealr", "sealer"}, {"acrylic-seler", "acrylic-sealer"}, {"sealer-2", "sealer-1"},
		{"birch-ply", "birch-ply-3mm"}, {"acr", "acrylic-sealer"}, {"oink", ""}, {"ab", ""},
	} {
		if got := record.Nearest(c.typed, []string{"birch-ply-3mm", "birch", "acrylic-sealer", "sealer", "sealer-1"}); got != c.want {
			t.Errorf("%s: %q, want %q", c.typed, got, c.want)
		}
	}
}
