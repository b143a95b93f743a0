package deed_test

import (
	"reflect"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
)

// What is folded from a record is what the book says, and nothing of other
// panels, of the shelf they alone used, or of the room is in it.
func TestSamePanel(t *testing.T) {
	k := testKey(t, 1)
	b := newBook(t, k)
	w, err := b.Workshop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for n, want := range map[record.Number][]int64{
		first:  {1, 2, 3, 4, 5, 7, 8, 9, 10, 11, 12, 13, 15, 18, 19, 20, 21, 22},
		second: {1, 2, 3, 4, 5, 7, 9, 10, 11, 12, 16, 20},
		third:  {1, 2, 3, 4, 7, 10, 11, 14, 20},
	} {
		d := made(t, b, n, &k)
		r, err := deed.Read(d.Record)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(r.Panel, w.Panel(n)) {
			t.Errorf("%s is not the same panel:\n%+v\n%+v", n, r.Panel, w.Panel(n))
		}
		if !reflect.DeepEqual(r.Gaps, w.Gaps(w.Panel(n))) || !reflect.DeepEqual(r.Findings, findings) {
			t.Errorf("%s: gaps %v, findings %v", n, r.Gaps, r.Findings)
		}
		all, err := b.Entries(ctx, book.Filter{})
		if err != nil {
			t.Fatal(err)
		}
		var got []int64
		for _, e := range r.Entries {
			got = append(got, e.Seq+1)
			if string(e.Bytes) != string(all[e.Seq].Bytes) {
				t.Errorf("%s: entry %d is not the one of the journal", n, e.Seq+1)
			}
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s holds entries %v, expected %v", n, got, want)
		}
	}
}

func TestWithoutKey(t *testing.T) {
	d := made(t, newBook(t, testKey(t, 1)), first, nil)
	if d.Record == nil || d.Signature != nil || d.Head != nil || d.Proof != nil || d.Statement != nil || d.Demo {
		t.Errorf("%+v", d)
	}
}

func TestStatement(t *testing.T) {
	k := testKey(t, 1)
	b := newBook(t, k)
	d := made(t, b, first, &k)
	s, err := seal.OpenStatement(d.Statement)
	if err != nil {
		t.Fatal(err)
	}
	want := seal.Statement{Origin: "backleaf/KB/00000000000000000000000000", Number: string(first), Title: "Dune, evening", Maker: "Ilze Kraukle", Size: "8 x 10 x 1/8 in",
		Made: "2026-05", Issued: "2026-06-01", Record: seal.DigestOf(d.Record), Key: k.Public()}
	if s != want {
		t.Errorf("%+v", s)
	}
	put(t, b, record.Entry{Panels: []record.Number{first}, Body: record.Described{Title: strings.Repeat("Ā", accept.MaxLine)}})
	if s, err = seal.OpenStatement(made(t, b, first, &k).Statement); err != nil || !strings.HasSuffix(s.Title, "Ā…") {
		t.Errorf("a long title: %+v, %v", s, err)
	}
}

func TestMakeRefuses(t *testing.T) {
	k, other := testKey(t, 1), testKey(t, 2)
	b := newBook(t, k)
	w, err := b.Workshop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	refused := func(what, why string, key *seal.Key) {
		t.Helper()
		if d, err := deed.Make(ctx, b, w, w.Panel(first), nil, key, clock); err == nil || !strings.Contains(err.Error(), why) || d.Record != nil {
			t.Errorf("%s: %v, %d bytes", what, err, len(d.Record))
		}
	}
	refused("a key that is not on record", "unrecorded", &other)
	put(t, b, record.Entry{Panels: []record.Number{second}, Body: record.Note{Text: "another panel"}})
	if _, err := deed.Make(ctx, b, w, w.Panel(first), nil, &k, clock); err != nil {
		t.Errorf("an entry about another panel: %v", err)
	}
	put(t, b, record.Entry{Panels: []record.Number{first}, Body: record.Note{Text: "this panel"}})
	refused("a panel read before", deed.ErrChanged.Error(), &k)
	put(t, b, record.Entry{Body: record.KeyLost{Fingerprint: k.Public().Fingerprint().String(), Because: "stolen"}})
	if w, err = b.Workshop(ctx); err != nil {
		t.Fatal(err)
	}
	refused("a lost key", "lost", &k)
}

// Anyone can sign with the demonstration's key, so every paper must say so.
func TestDemo(t *testing.T) {
	k := seal.DemoKey()
	if d := made(t, newBook(t, k), first, &k); !d.Demo {
		t.Error("not marked as a demonstration")
	}
}
