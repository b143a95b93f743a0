package book_test

import (
	"runtime"
	"slices"
	"testing"
	"weak"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/invented"
)

// A walk over many panels holds few of them at once.
func TestWalkHoldsFew(t *testing.T) {
	const many = 6000
	b := newBook(t)
	put(t, b, `{"kind":"studio","maker":"A","mark":"KB"}`)
	var cuts []record.Entry
	for i := 1; i <= many; i += 100 {
		cuts = append(cuts, parsed(t, `{"kind":"cut","batch":"b","size":"30 x 40 cm","board":"unknown",`+panels(i, i+99)+`}`)...)
	}
	if _, err := b.Append(ctx, clock, cuts...); err != nil {
		t.Fatal(err)
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	var seen []weak.Pointer[record.Panel]
	most := 0
	if err := b.Walk(ctx, book.Narrow{}, func(p *record.Panel) error {
		if seen = append(seen, weak.Make(p)); len(seen)%500 == 0 {
			runtime.GC()
			live := 0
			for _, s := range seen {
				if s.Value() != nil {
					live++
				}
			}
			most = max(most, live)
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if len(seen) != many || most == 0 || most > many/3 {
		t.Errorf("%d panels were seen, of which %d were held at once", len(seen), most)
	}
}

// A walk that is narrowed to kinds of entries meets the panels that one of them
// names, withdrawn or not, in the order of a walk over all.
func TestWalkByKind(t *testing.T) {
	b := newBook(t)
	es := slices.Collect(invented.Journal(5, 56))
	if _, err := b.Append(ctx, muchLater, es...); err != nil {
		t.Fatal(err)
	}
	walked := func(n book.Narrow) (ns []record.Number) {
		if err := b.Walk(ctx, n, func(p *record.Panel) error { ns = append(ns, p.Number); return nil }); err != nil {
			t.Fatal(err)
		}
		return ns
	}
	all, met := walked(book.Narrow{}), 0
	for _, k := range record.Kinds() {
		want := slices.DeleteFunc(slices.Clone(all), func(n record.Number) bool {
			return !slices.ContainsFunc(es, func(e record.Entry) bool { return e.Kind() == k && slices.Contains(e.Panels, n) })
		})
		if got := walked(book.Narrow{Kinds: []record.Kind{k}}); !slices.Equal(got, want) {
			t.Errorf("%s: %v, not %v", k, got, want)
		}
		met += len(want)
	}
	if len(all) != 56 || met < 300 {
		t.Errorf("%d panels, met %d times", len(all), met)
	}
}
