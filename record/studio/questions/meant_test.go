package questions_test

import (
	"slices"
	"testing"

	"backleaf/record"
	"backleaf/record/studio/questions"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

// A word of the trade that stands in no list leads to one that stands there, and
// hides none.
func TestMeantWords(t *testing.T) {
	lists := [][]string{questions.Orders(), questions.Rules(), questions.Places()}
	var stages []string
	for _, s := range record.Stages {
		stages = append(stages, string(s))
	}
	lists = append(lists, stages)
	for name := range tell.English.Words {
		lists = append(lists, record.Words(name))
	}
	for word, to := range tell.English.MeantWords {
		in := 0
		for _, list := range lists {
			if !slices.Contains(list, to) {
				continue
			}
			in++
			if near := typed.Near(word, list); near != to || slices.Contains(list, word) {
				t.Errorf("%s: %q, want %q of %q", word, near, to, list)
			}
		}
		if in == 0 {
			t.Errorf("%s: %q stands in no list", word, to)
		}
	}
}
