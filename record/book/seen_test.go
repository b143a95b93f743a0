package book_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/invented"
	"backleaf/record/toolcheck"
)

// The fold by which an act was judged is handed on to its write. Whoever wrote
// in between, also by a book opened elsewhere, and whatever is corrected or
// written together: the rows of the panels are those of the whole journal.
func TestFoldHandedOn(t *testing.T) {
	for seed := range uint64(toolcheck.Rounds(12, 2)) {
		r := rand.New(rand.NewPCG(seed, 7))
		one := newBook(t)
		other, err := book.Open(ctx, one.Path())
		if err != nil {
			t.Fatal(err)
		}
		defer other.Close()
		books := []*book.Book{one, other}
		all := slices.Collect(invented.Journal(seed, 28))
		for _, i := range r.Perm(len(all)) {
			if e := all[i]; len(all) < 90 && e.Kind() == "paint" {
				all = append(all, record.Entry{Body: record.Withdrawn{Entry: int64(i + 1), Because: "it was another panel"}})
			}
		}
		es := all
		for len(es) > 0 {
			n := min(len(es), 1+r.IntN(3)*r.IntN(2))
			var panels []record.Number
			for _, e := range es[:n] {
				if of := e.Corrects(); of != 0 {
					e = all[of-1]
				}
				if e.Kind() != "cut" {
					panels = append(panels, e.Panels...)
				}
			}
			for range r.IntN(3) {
				if _, err := books[r.IntN(2)].AtBench(ctx, panels...); err != nil {
					t.Fatal(seed, err)
				}
			}
			if _, err := books[r.IntN(2)].Append(ctx, muchLater, es[:n]...); err != nil {
				t.Fatal(seed, err)
			}
			es = es[n:]
		}
		if _, err := one.Verify(ctx, nil); err != nil {
			t.Error(seed, err)
		}
	}
}
