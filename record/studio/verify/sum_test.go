package verify

import (
	"slices"
	"testing"

	"backleaf/record/deed"
)

// What was altered is not excused by a later program that may have written it.
func TestAlteredIsNotNewer(t *testing.T) {
	newer := deed.Found(deed.Unknown, "record-partly-newer")
	if line, _ := sum([]deed.Result{newer, deed.Found(deed.Fails, "signature-wrong")}); len(line) != 1 || line[0].Code != "sum-altered" {
		t.Errorf("altered: %v", line)
	}
	if line, _ := sum([]deed.Result{newer}); line[0].Code != "sum-newer" {
		t.Errorf("newer: %v", line)
	}
}

// What the book knows is no nothing: a certificate that nobody signed, but not a
// page beside its record; nor is a deposit of which something holds.
func TestKnownIsNotNothing(t *testing.T) {
	known, notSigned := deed.Found(deed.Holds, "certificate-known"), deed.Found(deed.Unknown, "record-not-signed")
	for name, c := range map[string]struct {
		results  []deed.Result
		line     []string
		verified bool
	}{
		"the very file":  {[]deed.Result{notSigned, known, deed.Found(deed.Holds, "very-file")}, []string{"sum-known", "sum-not-signed"}, true},
		"another page":   {[]deed.Result{notSigned, known, deed.Found(deed.Unknown, "other-file")}, []string{"sum-other-file", "sum-not-signed", "sum-not-known"}, false},
		"without a book": {[]deed.Result{notSigned}, []string{"sum-not-signed", "sum-not-known"}, false},
		"unsigned": {[]deed.Result{deed.Found(deed.Unknown, "deposit-not-signed"), deed.Found(deed.Holds, "deposit-whole"), deed.Found(deed.Unknown, "deposit-key-unused")},
			[]string{"sum-key-unused", "sum-whole", "sum-not-signed"}, false},
	} {
		line, verified := sum(c.results)
		var codes []string
		for _, s := range line {
			codes = append(codes, s.Code)
		}
		if !slices.Equal(codes, c.line) || verified != c.verified {
			t.Errorf("%s: %v, verified %v", name, codes, verified)
		}
	}
}
