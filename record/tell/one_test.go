package tell_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/tell"
)

var counted = regexp.MustCompile(`\{([a-z]+)\} (entries|files|panels|records|certificates|books|photographs|papers|rows|numbers|pages|coats|layers|labels|sheets|days|hours|keys|lots|materials)\b`)

// manyAlways are told of several alone: the places of a sheet of labels by its
// columns, the pages of a deposit, coats where two are asked for.
var manyAlways = []string{"studio-sheet", "deposit-derived", "stain-blocked"}

// One is not told in the plural: no "1 entries".
func TestOneIsNoPlural(t *testing.T) {
	for code, m := range tell.English().Codes {
		for _, at := range counted.FindAllStringSubmatchIndex(string(m), -1) {
			name := string(m)[at[2]:at[3]]
			if before := string(m)[:at[0]]; !slices.Contains(manyAlways, code) && !strings.Contains(before, "{"+name+", plural,") && !strings.Contains(before, "{"+name+", number,") {
				t.Errorf("%s: %q of one", code, string(m)[at[0]:at[1]])
			}
		}
	}
}

// A name to be typed again stands in quotes where a shell would part it.
func TestTypedNames(t *testing.T) {
	for name, want := range map[string]string{"dep": "dep", "a/b-2026.pdf": "a/b-2026.pdf", "žurnāls": "žurnāls", "my deposit": `"my deposit"`, "a&b": `"a&b"`, "(1)": `"(1)"`} {
		if got := tell.English().Fill("{file:typed}", record.With("file", name)); got != want {
			t.Errorf("%q: %s", name, got)
		}
		if got := tell.English().Fill("{file}", record.With("file", name)); got != name {
			t.Errorf("%q: %s", name, got)
		}
	}
}
