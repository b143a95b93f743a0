package book_test

import (
	"context"
	"crypto/rand"
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
)

var (
	ctx   = context.Background()
	clock = time.Date(2026, 5, 2, 14, 5, 0, 0, time.FixedZone("", 2*3600))
)

// parsed reads entries as they stand in an import file.
func parsed(t testing.TB, texts ...string) []record.Entry {
	t.Helper()
	var es []record.Entry
	for _, s := range texts {
		e, err := accept.Parse([]byte(s))
		if err != nil {
			t.Fatalf("%s: %v", s, err)
		}
		es = append(es, e)
	}
	return es
}

// sealed is private data with a salt, and its digest.
func sealed(data []byte) (p book.Private, digest string) {
	p = book.Private{Salt: make([]byte, 32), Data: data}
	rand.Read(p.Salt)
	return p, p.Digest()
}

func number(serial int) record.Number {
	n, err := record.NewNumber("KB", 26, serial, "")
	if err != nil {
		panic(err)
	}
	return n
}

// panels is the "panels" member for serials from to to.
func panels(from, to int) string {
	s := `"panels":[`
	for i := from; i <= to; i++ {
		if i > from {
			s += ","
		}
		s += `"` + string(number(i)) + `"`
	}
	return s + "]"
}

// shelf is the beginning of every book in these tests.
var shelf = []string{
	`{"kind":"studio","maker":"Ilze Kraukle","mark":"KB","place":"Rīga"}`,
	`{"kind":"material","key":"ply","name":"birch plywood 3 mm","uses":["board"],"board":{"kind":"plywood"}}`,
	`{"kind":"material","key":"sealer","name":"clear sealer","uses":["sealer","adhesive"]}`,
	`{"kind":"material","key":"linen","name":"fine linen","uses":["cloth"]}`,
	`{"kind":"lot","key":"sealer-1","material":"sealer","producer_lot":"L 77"}`,
	`{"kind":"lot","key":"linen-1","material":"linen"}`,
}

// afternoon is work on three panels, with a correction of each sort.
func afternoon() []string {
	return append(append([]string{}, shelf...),
		`{"kind":"cut","batch":"spring","size":"8 x 10 x 1/8 in","board":"ply","at":"2026-05-02T09:00:00+02:00",`+panels(1, 3)+`}`,
		`{"kind":"coat","purpose":"sealer","faces":["front","back","edges"],"mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],`+panels(1, 3)+`}`,
		`{"kind":"cloth","faces":["front"],"cloth":"linen","cloth_lot":"linen-1","mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],`+panels(1, 2)+`}`,
		`{"kind":"amended","entry":8,"because":"two to one","change":{"thinned":"10 %"},`+panels(3, 3)+`}`,
		`{"kind":"described","title":"Dune, evening","made":"2026-05","inscription":"for the sea",`+panels(1, 1)+`}`,
		`{"kind":"note","text":"Čakste's board smells of résin",`+panels(2, 2)+`}`,
		`{"kind":"climate","temperature":"19.5 °C","humidity":"48 %","at":"2026-05-02T10:00:00+02:00"}`,
		`{"kind":"withdrawn","entry":9,"because":"cloth came off",`+panels(2, 2)+`}`,
		`{"kind":"amended","entry":5,"because":"misread","change":{"producer_lot":"L 71"}}`,
		`{"kind":"discarded","because":"split corner",`+panels(3, 3)+`}`,
	)
}

func newBook(t testing.TB) *book.Book {
	t.Helper()
	return create(t, filepath.Join(t.TempDir(), "studio.sqlite"))
}

func create(t testing.TB, path string) *book.Book {
	t.Helper()
	b, err := book.Create(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	return b
}

func put(t testing.TB, b *book.Book, texts ...string) []record.Entry {
	t.Helper()
	es, err := b.Append(ctx, clock, parsed(t, texts...)...)
	if err != nil {
		t.Fatal(err)
	}
	return es
}

// holds fails the test unless the book at path opens and verifies.
func holds(t testing.TB, path string) book.Report {
	t.Helper()
	b, err := book.OpenReadOnly(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	r, err := b.Verify(ctx, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func say(f string, a ...any) string { return fmt.Sprintf(f, a...) }

// wait holds the book inside a transaction that writes nothing.
func wait(inside, done chan bool) func(*book.Draft) ([]record.Entry, map[int]book.Private, error) {
	return func(*book.Draft) ([]record.Entry, map[int]book.Private, error) {
		close(inside)
		<-done
		return nil, nil, nil
	}
}
