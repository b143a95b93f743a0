package book_test

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"backleaf/record/book"
	"backleaf/record/toolcheck"
)

// base makes a closed book to start from and returns its bytes.
func base(t testing.TB) ([]byte, int64) {
	t.Helper()
	b := newBook(t)
	n := len(put(t, b, afternoon()[:7]...))
	b.Close()
	data, err := os.ReadFile(b.Path())
	if err != nil {
		t.Fatal(err)
	}
	return data, int64(n)
}

func writeFile(t testing.TB, path string, data []byte) {
	t.Helper()
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
}

// crashAppend is an append that meets every write point: private parts kept
// and erased, corrections of work and of the shelf, a panel cut down after them,
// hashes, look-up rows.
func crashAppend(t testing.TB, b *book.Book) error {
	part, digest := sealed([]byte("buyer"))
	es := parsed(t, append(afternoon()[7:],
		`{"kind":"handed-over","how":"sale","private_sha256":"`+digest+`",`+panels(1, 1)+`}`,
		`{"kind":"private-erased","entry":17,"because":"asked"}`,
		`{"kind":"resized","how":"cut-down","size":"8 x 9 in","because":"a dent",`+panels(1, 1)+`}`)...)
	_, err := b.AppendPrivate(ctx, clock, map[int]book.Private{9: part}, es...)
	return err
}

// snapshot copies a book with its log, as a killed process leaves them.
func snapshot(t testing.TB, path string) string {
	t.Helper()
	to := filepath.Join(t.TempDir(), "studio.sqlite")
	for _, suffix := range []string{"", "-wal"} {
		data, err := os.ReadFile(path + suffix)
		if err != nil {
			t.Fatal(err)
		}
		writeFile(t, to+suffix, data)
	}
	return to
}

func TestCrashTable(t *testing.T) {
	data, before := base(t)
	after := before + 12
	start := func() *book.Book {
		path := filepath.Join(t.TempDir(), "studio.sqlite")
		writeFile(t, path, data)
		b, err := book.Open(ctx, path)
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { b.Close() })
		return b
	}
	var steps []string
	b := start()
	b.SetFault(func(step string) error { steps = append(steps, step); return nil })
	if err := crashAppend(t, b); err != nil {
		t.Fatal(err)
	}
	seen := strings.Join(steps, " ")
	for _, s := range []string{"entry", "hash", "private", "erase", "about", "mention", "correction", "described", "reading", "panel", "taken", "words", "tip", "commit"} {
		if !strings.Contains(seen, "before "+s) || !strings.Contains(seen, "after "+s) {
			t.Errorf("no write point %q among %s", s, seen)
		}
	}

	broken := errors.New("fault injected")
	for i, step := range steps {
		if !toolcheck.Thorough() && slices.Index(steps, step) < i {
			continue // the first write of a sort, not each
		}
		want := before
		if step == "after commit" {
			want = after // failed, but persisted
		}
		// Failed: the call returns the error, the process goes on.
		b := start()
		n := 0
		b.SetFault(func(string) error {
			if n++; n == i+1 {
				return broken
			}
			return nil
		})
		if err := crashAppend(t, b); !errors.Is(err, broken) {
			t.Fatalf("%d %s: %v", i, step, err)
		}
		b.SetFault(nil)
		if _, err := b.Append(ctx, clock, parsed(t, `{"kind":"note","text":"went on"}`)...); err != nil {
			t.Fatalf("%d %s: the next append: %v", i, step, err)
		}
		b.Close()
		if r := holds(t, b.Path()); r.Entries != want+1 {
			t.Errorf("%d %s: %d entries, want %d", i, step, r.Entries, want+1)
		}
	}

	// Killed: what is in the files at that moment is all there is.
	b = start()
	var copies []string
	b.SetFault(func(string) error { copies = append(copies, snapshot(t, b.Path())); return nil })
	if err := crashAppend(t, b); err != nil {
		t.Fatal(err)
	}
	for i, step := range steps {
		want := before
		if step == "after commit" {
			want = after
		}
		if r := holds(t, copies[i]); r.Entries != want {
			t.Errorf("%d %s: %d entries after the kill, want %d", i, step, r.Entries, want)
		}
	}
}

// TestTornLog cuts the log short, as a power failure may: the book holds and
// has each append whole or not at all.
func TestTornLog(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()[:7]...)
	put(t, b, afternoon()[7:]...)
	put(t, b, `{"kind":"note","text":"last"}`)
	path := snapshot(t, b.Path())
	log, err := os.ReadFile(path + "-wal")
	if err != nil {
		t.Fatal(err)
	}
	main, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	stride := toolcheck.Rounds(1031, 5003)
	seen := map[int64]bool{}
	for cut := len(log); cut >= 0; cut -= stride {
		for _, damage := range []bool{false, true} {
			torn := append([]byte{}, log[:cut]...)
			if damage && cut > 100 {
				torn[cut-100] ^= 0x55
			}
			p := filepath.Join(t.TempDir(), "studio.sqlite")
			writeFile(t, p, main)
			writeFile(t, p+"-wal", torn)
			r := holds(t, p)
			seen[r.Entries] = true
			if cut == len(log) && !damage && r.Entries != 17 {
				t.Errorf("the whole log gives %d entries", r.Entries)
			}
		}
	}
	for n := range seen {
		if n != 0 && n != 7 && n != 16 && n != 17 {
			t.Errorf("a part of an append: %d entries", n)
		}
	}
	if len(seen) < 4 {
		t.Errorf("only these lengths were met: %v", seen)
	}
}
