package deed_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

func texts(r deed.Report, v deed.Verdict) string {
	var out []string
	for _, x := range r.Results {
		if x.Verdict == v {
			out = append(out, tell.Say(tell.English(), x.Said))
		}
	}
	return strings.Join(out, "\n")
}

func TestVerify(t *testing.T) {
	k := testKey(t, 1)
	d := made(t, newBook(t, k), first, &k)
	r := deed.Verify(d.Files())
	if !r.Holds() {
		t.Fatal(texts(r, deed.Fails))
	}
	for _, want := range []string{"is the record of KB26-0001-K by Ilze Kraukle", "the signature over record.json", "at 22 entries",
		"every entry of the record stands", "about this very record", "the key is the one"} {
		if !strings.Contains(texts(r, deed.Holds), want) {
			t.Errorf("%q is not said in:\n%s", want, texts(r, deed.Holds))
		}
	}
	for _, want := range []string{k.Public().Fingerprint().Groups(), "rules of thumb", "is true"} {
		if !strings.Contains(texts(r, deed.Unknown), want) {
			t.Errorf("%q is not said in:\n%s", want, texts(r, deed.Unknown))
		}
	}
	demo := seal.DemoKey()
	d = made(t, newBook(t, demo), first, &demo)
	if r := deed.Verify(d.Files()); !r.Holds() || !strings.Contains(texts(r, deed.Unknown), "anyone can sign") {
		t.Errorf("demonstration: %v", r.Results)
	}
}

// With every subset of the files nothing fails, and the signature holds only
// where record, signature and key are all there.
func TestSubsets(t *testing.T) {
	k := testKey(t, 1)
	whole := made(t, newBook(t, k), first, &k).Files()
	names := []string{deed.RecordName, deed.SignatureName, deed.KeyName, deed.HeadName, deed.ProofName, deed.StatementName}
	for set := range 1 << len(names) {
		var f deed.Files
		for i, n := range names {
			if set>>i&1 == 1 {
				*f.Named(n) = *whole.Named(n)
			}
		}
		r := deed.Verify(f)
		if !r.Holds() {
			t.Errorf("%06b: %s", set, texts(r, deed.Fails))
		}
		if strings.Contains(texts(r, deed.Holds), "the signature over") != (set&7 == 7) {
			t.Errorf("%06b: %s", set, texts(r, deed.Holds))
		}
		if strings.Contains(texts(r, deed.Holds), "every entry") != (set&29 == 29) {
			t.Errorf("%06b: %s", set, texts(r, deed.Holds))
		}
	}
}

// Any one byte changed, taken out or put in, in any of the files, is found.
func TestOneByte(t *testing.T) {
	k := testKey(t, 1)
	whole := made(t, newBook(t, k), first, &k).Files()
	for _, name := range []string{deed.RecordName, deed.SignatureName, deed.KeyName, deed.HeadName, deed.ProofName, deed.StatementName} {
		data := *whole.Named(name)
		step := max(1, len(data)/25)
		refused := func(what string, i int, changed []byte) {
			t.Helper()
			if name == deed.StatementName && bytes.Equal(seal.FromPaper(changed), data) {
				return // white space around a statement is what a camera may change
			}
			f := whole
			*f.Named(name) = changed
			if deed.Verify(f).Holds() {
				t.Errorf("%s, byte %d %s: holds", name, i, what)
			}
		}
		for i := 0; i < len(data); i += step {
			flipped := bytes.Clone(data)
			flipped[i] ^= 1
			refused("changed", i, flipped)
			refused("taken out", i, slices.Delete(bytes.Clone(data), i, i+1))
			refused("put in", i, slices.Insert(bytes.Clone(data), i, '0'))
		}
		refused("cut off", 0, []byte{})
	}
}

// Files of two deeds never pass as one, whoever signed them.
func TestMixedUp(t *testing.T) {
	k, thief := testKey(t, 1), testKey(t, 9)
	b, forged := newBook(t, k), newBook(t, thief)
	mine := made(t, b, first, &k).Files()
	for what, other := range map[string]deed.Files{
		"another panel of the book":          made(t, b, second, &k).Files(),
		"the same journal under another key": made(t, forged, first, &thief).Files(),
		"the same panel, one entry later on": later(t, k),
		"the same panel of a demonstration":  demo(t),
	} {
		for _, name := range []string{deed.RecordName, deed.SignatureName, deed.KeyName, deed.HeadName, deed.ProofName, deed.StatementName} {
			f := mine
			*f.Named(name) = *other.Named(name)
			if bytes.Equal(*f.Named(name), *mine.Named(name)) {
				continue // two panels of a book share key and head
			}
			if deed.Verify(f).Holds() {
				t.Errorf("%s: its %s passes with the other files of this one", what, name)
			}
		}
	}
}

func later(t *testing.T, k seal.Key) deed.Files {
	t.Helper()
	b := newBook(t, k)
	put(t, b, record.Entry{Panels: []record.Number{first}, Body: record.Note{Text: "one more"}})
	return made(t, b, first, &k).Files()
}

func demo(t *testing.T) deed.Files {
	t.Helper()
	k := seal.DemoKey()
	return made(t, newBook(t, k), first, &k).Files()
}
