package tell_test

import (
	"strings"
	"testing"

	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/tell"
)

// What an amendment puts in the place of a list is told as at the act, not
// member by member.
func TestAmendedLists(t *testing.T) {
	for change, want := range map[string]string{
		`{"mix":[{"lot":"s1","material":"sealer","material_as":[6],"parts":1}]}`: "with: s1 ",
		`{"pigments":[{"name":"lead white","colour_index":"PW 1"}]}`:             "pigments: lead white (PW 1) ",
		`{"pigments":null}`:  "pigments: not recorded ",
		`{"how":"loan"}`:     "how: lent ",
		`{"how":"cut-down"}`: "how: cut down ",
		`{"grit":240}`:       "grit: 240 ",
	} {
		got := tell.English().Event(record.Event{Body: record.Amended{Entry: 3, Because: "x", Change: jsontext.Value(change)}})
		if !strings.Contains(got, want) {
			t.Errorf("%s: %q, want %q", change, got, want)
		}
	}
}
