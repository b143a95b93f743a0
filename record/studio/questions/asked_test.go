package questions

import (
	"slices"
	"testing"

	"backleaf/record"
	"backleaf/record/tell"
)

// What several rules ask is asked once, with the entries of all of them.
func TestQuestionsAreAskedOnce(t *testing.T) {
	say := func(said record.Said) question {
		return question{tell.Say(tell.English(), said), said.Value("entries").Texts}
	}
	open := func(entries ...record.EntryRef) question {
		return say(record.Say("face-open", record.With("face", record.Face("back")), record.With("entries", entries)))
	}
	room := say(record.Say("meant-for-open"))
	f := Findings{words: tell.English(), Findings: []Finding{
		{Rule: "balanced-pull", asks: []question{open(16, 17, 18)}},
		{Rule: "balanced-moisture", asks: []question{open(16, 17, 18, 43, 44), room}},
		{Rule: "back-barrier", asks: []question{room, open()}},
	}}
	want := []string{"whether anything was laid on the back (E16–E18, E43, E44)", "the humidity of the room the panel is meant for"}
	if got := f.Questions(); !slices.Equal(got, want) {
		t.Errorf("asked: %q", got)
	}
}
