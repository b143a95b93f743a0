package typed_test

import (
	"strings"
	"testing"

	"backleaf/record/studio/typed"
)

// What was typed without quotes, commas or colons is put together, and nothing else.
func TestUnquoted(t *testing.T) {
	for in, want := range map[string]string{
		"coat|1|--amount|20|g":                    "coat|1|--amount|20 g",
		"coat|1|--amount=20|g":                    "coat|1|--amount=20 g",
		"coat|1|--on|front|back":                  "coat|1|--on|front,back",
		"coat|1|--on|front|back|edges":            "coat|1|--on|front,back,edges",
		"coat|1|--on|back,|edges":                 "coat|1|--on|back,edges",
		"coat|1|--on|front,|back,|edges|1":        "coat|1|--on|front,back,edges|1",
		"coat|1-6|--except|1,|2,|3|--with|s":      "coat|1-6|--except|1,2,3|--with|s",
		"coat|1,|2|--on|back|1":                   "coat|1,|2|--on|back|1",
		"coat|1|-|3|--with|s":                     "coat|1-3|--with|s",
		"coat|batch|may|--with|s":                 "coat|batch:may|--with|s",
		"coat|1-6|--except|1|2|3|--with|s":        "coat|1-6|--except|1,2,3|--with|s",
		"coat|--except|1|2-5|--with|s":            "coat|--except|1|2-5|--with|s",
		"note|1|20|g":                             "note|1|20|g",
		"climate|--temp|21|°C|--rh|54%":           "climate|--temp|21 °C|--rh|54%",
		"batch|may":                               "batch|may",
		"panel|describe|1|--title|batch|of|three": "panel|describe|1|--title|batch|of|three",
	} {
		if got := strings.Join(typed.Unquoted(strings.Split(in, "|")), "|"); got != want {
			t.Errorf("%s: %s, want %s", in, got, want)
		}
	}
}
