package deed_test

import (
	"bytes"
	"context"
	"path/filepath"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/deed"
	"backleaf/record/seal"
)

var (
	ctx   = context.Background()
	clock = time.Date(2026, 6, 1, 14, 5, 0, 0, time.FixedZone("", 2*3600))
)

// testKey is the key of a fixed seed.
func testKey(t testing.TB, n byte) seal.Key {
	t.Helper()
	k, err := seal.KeyFromSeed(bytes.Repeat([]byte{n}, seal.SeedSize))
	if err != nil {
		t.Fatal(err)
	}
	return k
}

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

func put(t testing.TB, b *book.Book, es ...record.Entry) {
	t.Helper()
	if _, err := b.Append(ctx, clock, es...); err != nil {
		t.Fatal(err)
	}
}

// Three panels of one afternoon, on two of which cloth was laid.
const (
	first  = record.Number("KB26-0001-K")
	second = record.Number("KB26-0002-V")
	third  = record.Number("KB26-0003-4")
)

// afternoon is a journal with work on three panels together, things that only
// concern others, and corrections of each sort.
var afternoon = []string{
	`{"kind":"material","key":"ply","name":"birch plywood 3 mm","uses":["board"],"board":{"kind":"plywood"}}`,
	`{"kind":"material","key":"sealer","name":"clear sealer","uses":["sealer","adhesive"]}`,
	`{"kind":"material","key":"linen","name":"fine linen","uses":["cloth"]}`,
	`{"kind":"material","key":"wax","name":"bought and never used","uses":["varnish"]}`,
	`{"kind":"lot","key":"sealer-1","material":"sealer","producer_lot":"L 77"}`,
	`{"kind":"lot","key":"sealer-2","material":"sealer","producer_lot":"L 80"}`,
	`{"kind":"lot","key":"linen-1","material":"linen"}`,
	`{"kind":"cut","batch":"spring","size":"8 x 10 x 1/8 in","board":"ply","at":"2026-05-02T09:00:00+02:00","panels":["KB26-0001-K","KB26-0002-V","KB26-0003-4"]}`,
	`{"kind":"coat","purpose":"sealer","faces":["front","back","edges"],"mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],"panels":["KB26-0001-K","KB26-0002-V","KB26-0003-4"]}`,
	`{"kind":"cloth","faces":["front"],"cloth":"linen","cloth_lot":"linen-1","mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],"panels":["KB26-0001-K","KB26-0002-V"]}`,
	`{"kind":"amended","entry":11,"because":"it was the second tin","change":{"mix":[{"parts":1,"material":"sealer","lot":"sealer-2"}]},"panels":["KB26-0001-K"]}`,
	`{"kind":"amended","entry":11,"because":"not this one","change":{"thinned":"10 %"},"panels":["KB26-0003-4"]}`,
	`{"kind":"described","title":"Dune, evening","made":"2026-05","inscription":"for the sea","panels":["KB26-0001-K"]}`,
	`{"kind":"note","text":"about the second","panels":["KB26-0002-V"]}`,
	`{"kind":"note","text":"about no panel"}`,
	`{"kind":"note","text":"a slip","panels":["KB26-0001-K"]}`,
	`{"kind":"withdrawn","entry":18,"because":"it was said of another","panels":["KB26-0001-K"]}`,
	`{"kind":"amended","entry":7,"because":"misread","change":{"producer_lot":"L 71"}}`,
	`{"kind":"photograph","role":"front","sha256":"` + digest + `","media_type":"image/jpeg","width_px":1200,"height_px":900,"panels":["KB26-0001-K"]}`,
	`{"kind":"handed-over","how":"consignment","private_sha256":"` + digest + `","panels":["KB26-0001-K"]}`,
}

const digest = "0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a"

// newBook is the book of a studio whose key is k, with the afternoon in it.
func newBook(t testing.TB, k seal.Key) *book.Book {
	t.Helper()
	b, err := book.Create(ctx, filepath.Join(t.TempDir(), "studio.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	b.Random = nought{}
	put(t, b, parsed(t, `{"kind":"studio","maker":"Ilze Kraukle","mark":"KB","place":"Rīga"}`)...)
	put(t, b, record.Entry{Body: deed.KeyMade(k.Public())})
	put(t, b, parsed(t, afternoon...)...)
	return b
}

// nought is randomness that is none, so that a journal always has one name.
type nought struct{}

func (nought) Read(p []byte) (int, error) { clear(p); return len(p), nil }

// findings are of every sort.
var findings = []check.Finding{
	{Rule: "sealed-all-round", Outcome: check.FallsShort, Severity: check.Warning, Entries: []int64{11, 12},
		Said: []record.Said{record.Say("sealed-not", record.With("face", record.Back), record.With("entries", []record.EntryRef{11, 12}))}, Remedy: record.Say("remedy-sealed-all-round")},
	{Rule: "acrylic-over-oil", Outcome: check.Holds, Severity: check.Warning, Said: []record.Said{record.Say("nothing-over-oil")}},
}

// made returns the deed of a panel of b.
func made(t testing.TB, b *book.Book, n record.Number, k *seal.Key) deed.Deed {
	t.Helper()
	w, err := b.Workshop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	d, err := deed.Make(ctx, b, w, w.Panel(n), findings, k, clock)
	if err != nil {
		t.Fatal(err)
	}
	return d
}
