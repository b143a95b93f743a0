package book_test

import (
	"fmt"
	"slices"
	"testing"

	"backleaf/record/invented"
)

// What is read for some terms chooses as the whole roll does, or says the same
// against it.
func TestRollOfTerms(t *testing.T) {
	b := newBook(t)
	if _, err := b.Append(ctx, muchLater, slices.Collect(invented.Journal(3, 56))...); err != nil {
		t.Fatal(err)
	}
	whole, err := b.Roll(ctx)
	if err != nil || len(whole.Numbers) != 56 {
		t.Fatal(len(whole.Numbers), err)
	}
	a, z := string(invented.Number(3)), string(invented.Number(50))
	for _, terms := range [][]string{{a}, {z, a}, {a + "," + z}, {"batch:b2"}, {"batch:B1", z}, {"0004"}, {"2-9"}, {"all"}, {"batch:none"}, {a[:len(a)-1] + "x"}, {"KB90-9999-1"}, {"quince evening"}, {a, "0007"}} {
		r, err := b.Roll(ctx, terms...)
		if err != nil {
			t.Fatal(err)
		}
		got, err1 := r.Select(terms, nil)
		want, err2 := whole.Select(terms, nil)
		if !slices.Equal(got, want) || fmt.Sprint(err1) != fmt.Sprint(err2) {
			t.Errorf("%v: %v, %v; of all: %v, %v", terms, got, err1, want, err2)
		}
	}
	if r, err := b.Roll(ctx, a, "batch:b4"); err != nil || len(r.Numbers) != 28 {
		t.Errorf("two batches: %d panels read, %v", len(r.Numbers), err)
	}
}
