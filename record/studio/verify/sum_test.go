package verify

import (
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
