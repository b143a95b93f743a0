package tell_test

import (
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/tell"
)

// gapHistories leave open everything that can be missed.
var gapHistories = [][]string{
	{ply, `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"unknown x unknown"`},
	{ply, `"kind":"cut","at":"unknown","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm","board":"ply"`,
		`"kind":"material","key":"sealer","name":"Sealer No. 5","uses":["sealer"]`,
		`"kind":"coat","panels":["NUMBER"],"purpose":"sealer","faces":["edges"],"mix":[{"parts":1,"material":"sealer"},{"parts":1,"material":"unknown"}]`,
		`"kind":"coat","panels":["NUMBER"],"faces":["front"],"wet_total":"unknown"`,
		`"kind":"cloth","panels":["NUMBER"],"faces":["front"]`,
		`"kind":"paint","panels":["NUMBER"]`, `"kind":"varnish","panels":["NUMBER"]`},
}

// Every gap is told in full, and every message for a gap is told of one.
func TestEveryGapHasItsWords(t *testing.T) {
	told := map[string]bool{"gap": true}
	for _, lines := range gapHistories {
		k := history(t, lines...)
		for _, g := range workshopOf(t, lines...).Gaps(panelOf(t, lines...)) {
			for _, s := range []record.Said{g.Say(), g.Said} {
				told[s.Code] = true
				if err := tell.English().Lacks(s); err != nil {
					t.Error(err)
				}
			}
			if tell.English().Words["Topic"][string(g.Topic)].Text == "" {
				t.Errorf("the topic %q has no words", g.Topic)
			}
		}
		for _, line := range k.Gaps() {
			if strings.ContainsAny(line, "{}") || strings.Contains(line, "gap-") {
				t.Error(line)
			}
		}
	}
	for code := range tell.English().Codes {
		if strings.HasPrefix(code, "gap-") && !told[code] {
			t.Errorf("no gap has the code %q", code)
		}
	}
	for _, purpose := range record.Words("Purpose") {
		if tell.English().Words["Topic"][purpose].Text == "" {
			t.Errorf("a coat for %q has no topic", purpose)
		}
	}
}

// A code within a code cannot go round in a circle, whoever wrote it.
func TestCodeWithinItself(t *testing.T) {
	s := record.Say("gap", record.With("topic", record.Topic("gap")), record.With("what", record.Code("gap")))
	if got := tell.Say(tell.English(), s); got != "gap: {what}" && got != "gap: gap: {what}" {
		t.Errorf("got %q", got)
	}
}
