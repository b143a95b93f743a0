package book_test

import (
	"fmt"
	"reflect"
	"runtime"
	"slices"
	"sync"
	"testing"
	"weak"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/invented"
)

// Who looks at many panels, walking or judging, holds few of them at once.
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
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(2))
	var all []record.Number
	if err := b.Panels(ctx, book.Narrow{}, func(p book.Present) error { all = append(all, p.Number); return nil }); err != nil {
		t.Fatal(err)
	}
	var mu sync.Mutex
	var met []weak.Pointer[record.Panel]
	most := 0
	meet := func(p *record.Panel) error {
		mu.Lock()
		defer mu.Unlock()
		if met = append(met, weak.Make(p)); len(met)%500 == 0 {
			runtime.GC()
			live := 0
			for _, m := range met {
				if m.Value() != nil {
					live++
				}
			}
			most = max(most, live)
		}
		runtime.KeepAlive(p)
		return nil
	}
	for name, walk := range map[string]func() error{
		"Walk": func() error { return b.Walk(ctx, book.Narrow{}, meet) },
		"Each": func() error {
			return book.Each(ctx, b, all, func(_ *record.Workshop, p *record.Panel) (*record.Panel, error) { return p, meet(p) }, func(*record.Panel) error { return nil })
		},
	} {
		met, most = nil, 0
		if err := walk(); err != nil {
			t.Fatal(err)
		}
		if len(met) != many || most == 0 || most > many/6 {
			t.Errorf("%s: %d panels were met, of which %d were held at once", name, len(met), most)
		}
	}
}

// Of the readings of the room those are at hand that the whole journal has near
// the layers of a panel.
func TestEachHasTheAir(t *testing.T) {
	b := newBook(t)
	if _, err := b.Append(ctx, muchLater, slices.Collect(invented.Journal(7, 300))...); err != nil {
		t.Fatal(err)
	}
	whole, err := b.Workshop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	var all []record.Number
	for _, p := range whole.Panels {
		all = append(all, p.Number)
	}
	found := 0
	if err := book.Each(ctx, b, all, func(w *record.Workshop, p *record.Panel) (n int, err error) {
		for _, l := range p.Layers() {
			got, want := w.Readings(l.At), whole.Readings(l.At)
			if _, _, _, ok := l.At.Air(); ok && !reflect.DeepEqual(got, want) {
				err = fmt.Errorf("near %s the air was %v, by the whole journal %v", l.At, got, want)
			}
			n += len(got)
		}
		return n, err
	}, func(n int) error { found += n; return nil }); err != nil || found < 100 {
		t.Errorf("%d readings, %v", found, err)
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
