package questions_test

import (
	"testing"

	"backleaf/record"
	"backleaf/record/studio/questions"
)

// A word of the trade leads to the order, the place or the rule that is meant
// (common practice).
func TestMeantWords(t *testing.T) {
	for _, c := range []struct {
		list        []string
		typed, want string
	}{
		{questions.Orders(), "date", "made"}, {questions.Orders(), "name", "title"}, {questions.Orders(), "place", "where"},
		{questions.Places(), "here", "studio"}, {questions.Places(), "sell", "sale"}, {questions.Places(), "missing", "loss"},
		{questions.Rules(), "flat", "balanced-pull"}, {questions.Rules(), "fat-over-lean", "layers-hold"}, {questions.Rules(), "lead", "toxic-layers"},
		{questions.Rules(), "cured", "sanded-after-cure"},
	} {
		if near := record.Nearest(c.typed, c.list); near != c.want {
			t.Errorf("%s: %q, want %q of %q", c.typed, near, c.want, c.list)
		}
	}
}
