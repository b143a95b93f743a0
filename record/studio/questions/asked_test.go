package questions

import (
	"slices"
	"testing"

	"backleaf/record"
	"backleaf/record/tell"
)

// What several rules ask is asked once, with the entries of all of them.
func TestQuestionsAreAskedOnce(t *testing.T) {
	ask := func(entries ...record.EntryRef) record.Said {
		return record.Say("face-open", record.With("face", record.Face("back")), record.With("entries", entries))
	}
	f := Findings{words: tell.English, Findings: []Finding{
		{Rule: "balanced-pull", asks: []record.Said{ask(16, 17, 18)}},
		{Rule: "balanced-moisture", asks: []record.Said{ask(16, 17, 18, 43, 44), record.Say("meant-for-open")}},
		{Rule: "back-barrier", asks: []record.Said{record.Say("meant-for-open"), ask()}},
	}}
	want := []string{"whether anything was laid on the back (E16–E18, E43, E44)", "the humidity of the room the panel is meant for"}
	if got := f.Questions(); !slices.Equal(got, want) {
		t.Errorf("asked: %q", got)
	}
}
