package invented_test

import (
	"context"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/invented"
)

func TestJournal(t *testing.T) {
	es := slices.Collect(invented.Journal(1, 140*18))
	if got := slices.Collect(invented.Journal(1, 140*18)); len(got) != len(es) {
		t.Fatal("the same seed gives another journal")
	}
	seen := map[record.Kind]bool{}
	for _, e := range es {
		seen[e.Kind()] = true
	}
	for _, k := range record.Kinds() {
		switch k { // these need files, keys or papers
		case "key-made", "key-retired", "key-lost", "label-printed", "certificate-issued", "certificate-withdrawn", "private-erased":
		default:
			if !seen[k] {
				t.Errorf("no entry of kind %s", k)
			}
		}
	}
	b, err := book.Create(context.Background(), filepath.Join(t.TempDir(), "book"))
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if _, err := b.Append(context.Background(), time.Date(2050, 1, 1, 0, 0, 0, 0, time.UTC), slices.Collect(invented.Journal(1, 280))...); err != nil {
		t.Fatal(err)
	}
}
