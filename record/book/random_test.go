package book_test

import (
	"crypto/sha256"
	"math/bits"
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"golang.org/x/mod/sumdb/tlog"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/toolcheck"
)

// treeHash is MTH of RFC 6962 section 2.1, written down as it stands there.
func treeHash(d [][]byte) [32]byte {
	switch len(d) {
	case 0:
		return sha256.Sum256(nil)
	case 1:
		return sha256.Sum256(append([]byte{0}, d[0]...))
	}
	k := 1 << (bits.Len(uint(len(d)-1)) - 1) // the largest power of two smaller than n
	l, r := treeHash(d[:k]), treeHash(d[k:])
	return sha256.Sum256(append(append([]byte{1}, l[:]...), r[:]...))
}

// TestRandom appends random work in random portions. After each portion the
// book verifies, its root is that of RFC 6962, and reading it in parts gives
// the same panels as reading all of it.
func TestRandom(t *testing.T) {
	for seed := range uint64(toolcheck.Rounds(4, 1)) {
		r := rand.New(rand.NewPCG(seed, 6962))
		b := newBook(t)
		put(t, b, shelf...)
		cut, amendable := 0, []int64{}
		for range 12 {
			var texts []string
			size, _, err := b.Tree(ctx)
			if err != nil {
				t.Fatal(err)
			}
			for range 1 + r.IntN(9) {
				text := ""
				from := 1 + r.IntN(cut+1)
				to := from + r.IntN(4)
				switch k := r.IntN(7); {
				case cut < to:
					text = `{"kind":"cut","batch":"b` + say("%d", cut) + `","size":"24 x 30 cm","board":"ply",` + panels(cut+1, cut+3) + `}`
					cut += 3
				case k < 3:
					text = `{"kind":"coat","faces":["front"],"purpose":"sealer","mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],` + panels(from, to) + `}`
					amendable = append(amendable, size+int64(len(texts))+1)
				case k == 3:
					text = `{"kind":"described","title":"` + say("Work %d", r.IntN(99)) + `",` + panels(from, from) + `}`
				case k == 4 && len(amendable) > 0:
					text = say(`{"kind":"amended","entry":%d,"because":"b","change":{"thinned":"%d %%"}}`, amendable[r.IntN(len(amendable))], r.IntN(30))
				case k == 5 && len(amendable) > 0:

					text = withPanelsOf(t, b, parsed(t, texts...), size, amendable[r.IntN(len(amendable))])
				default:
					text = `{"kind":"note","text":"` + say("note %d", r.IntN(1e6)) + `"}`
				}
				texts = append(texts, text)
			}
			put(t, b, texts...)
			check(t, b)
		}
	}
}

// withPanelsOf withdraws an entry of the book or of the portion for all its panels.
func withPanelsOf(t *testing.T, b *book.Book, portion []record.Entry, size, of int64) string {
	var ps []record.Number
	if of > size {
		ps = portion[of-size-1].Panels
	} else {
		st, err := b.Entries(ctx, book.Filter{From: of, To: of})
		if err != nil {
			t.Fatal(err)
		}
		ps = st[0].Entry.Panels
	}
	return say(`{"kind":"withdrawn","entry":%d,"because":"b",%s}`, of, panels(ps[0].Serial(), ps[len(ps)-1].Serial()))
}

func check(t *testing.T, b *book.Book) {
	t.Helper()
	if _, err := b.Verify(ctx, nil); err != nil {
		t.Fatal(err)
	}
	all, err := b.Entries(ctx, book.Filter{})
	if err != nil {
		t.Fatal(err)
	}
	var leaves [][]byte
	for _, s := range all {
		leaves = append(leaves, s.Bytes)
	}
	size, root, err := b.Tree(ctx)
	if err != nil || size != int64(len(all)) || root != treeHash(leaves) {
		t.Fatalf("root %v over %d entries is not that of RFC 6962: %v", root, size, err)
	}
	p, err := tlog.ProveRecord(size, size/2, b.HashReader(ctx))
	if err != nil {
		t.Fatal(err)
	}
	leaf, err := b.Hash(ctx, size/2+1)
	if err != nil || tlog.CheckRecord(p, size, root, size/2, leaf) != nil {
		t.Fatal("no proof for an entry", err)
	}
	w, err := b.Workshop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range w.Panels {
		one, err := b.WorkshopOf(ctx, p.Number)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(one.Panel(p.Number), p) {
			t.Fatalf("%s alone is not what it is among all", p.Number)
		}
	}
}

func TestClockSetBack(t *testing.T) {
	b := newBook(t)
	put(t, b, shelf...)
	if _, err := b.Append(ctx, clock.Add(-time.Hour), parsed(t, `{"kind":"note","text":"x"}`)...); err != nil {
		t.Fatal(err)
	}
	if r, err := b.Verify(ctx, nil); err != nil || len(r.Remarks) != 1 {
		t.Error("a clock set back is worth a remark and no more:", r, err)
	}
}
