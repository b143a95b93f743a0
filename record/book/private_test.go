package book_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"backleaf/record"
	"backleaf/record/book"
)

// TestErase: what was erased is in no file any more, and the journal holds.
func TestErase(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	secret := func(i int) []byte { return []byte(say("Collector %03d of Nowhere Street, 1200 EUR", i)) }
	var seqs []int64
	for i := range 120 { // enough for the table to be split over pages
		p, digest := sealed(secret(i))
		es, err := b.AppendPrivate(ctx, clock, map[int]book.Private{0: p},
			record.Entry{Panels: []record.Number{number(i%2 + 1)}, Body: record.HandedOver{How: "sale", Private: digest}})
		if err != nil {
			t.Fatal(err)
		}
		seqs = append(seqs, es[0].Seq)
	}
	p, ok, err := b.Private(ctx, seqs[7])
	if err != nil || !ok || !bytes.Equal(p.Data, secret(7)) {
		t.Fatal(p, ok, err)
	}
	if e, err := b.ErasePrivate(ctx, clock, seqs[7], "the buyer asked"); err != nil || e.Kind() != "private-erased" {
		t.Fatal(e, err)
	}
	if _, ok, err := b.Private(ctx, seqs[7]); ok || err != nil {
		t.Error("still there", err)
	}
	if r, err := b.Verify(ctx, nil); err != nil || r.Private != 119 || len(r.Missing) != 0 {
		t.Error(r, err)
	}
	files := func() (out []byte) {
		for _, suffix := range []string{"", "-wal"} {
			data, err := os.ReadFile(b.Path() + suffix)
			if err != nil {
				t.Fatal(err)
			}
			out = append(out, data...)
		}
		return out
	}
	if bytes.Contains(files(), secret(7)) || bytes.Contains(files(), p.Salt) {
		t.Error("traces are left in the file")
	}
	if !bytes.Contains(files(), secret(8)) {
		t.Error("the search itself finds nothing")
	}
	if _, err := b.ErasePrivate(ctx, clock, 11, "no such part"); err == nil {
		t.Error("erased where nothing can be")
	}

	// A copy for others has none, and says so.
	if err := b.SetSetting(ctx, "printer", "Nowhere Street"); err != nil {
		t.Fatal(err)
	}
	to := filepath.Join(t.TempDir(), "copy")
	if err := b.Backup(ctx, clock, to, book.WithoutPrivate, nil); err != nil {
		t.Fatal(err)
	}
	if r := holds(t, to); r.Private != 0 || len(r.Missing) != 119 {
		t.Error(r)
	}
	data, err := os.ReadFile(to)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(data, []byte("Nowhere Street")) {
		t.Error("private parts are left in the copy")
	}
	if _, ok, _ := b.LastBackup(ctx); ok {
		t.Error("a copy for others is no backup")
	}
}

func TestPrivateMustFit(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	p, digest := sealed([]byte("x"))
	q, _ := sealed([]byte("x"))
	if p.Digest() != digest || q.Digest() == digest {
		t.Error("the salt makes no difference")
	}
	sold := record.Entry{Panels: []record.Number{number(1)}, Body: record.HandedOver{How: "sale", Private: digest}}
	note := record.Entry{Body: record.Note{Text: "x"}}
	if _, err := b.AppendPrivate(ctx, clock, map[int]book.Private{0: q}, sold); err == nil {
		t.Error("another part was accepted")
	}
	if _, err := b.AppendPrivate(ctx, clock, map[int]book.Private{0: p}, note); err == nil {
		t.Error("a part of a note was accepted")
	}
	if _, err := b.AppendPrivate(ctx, clock, map[int]book.Private{1: p}, note); err == nil {
		t.Error("a part of no entry was accepted")
	}
}
