package book_test

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"backleaf/record"
	"backleaf/record/book"
)

// later are entries as a later program might write them: another kind, another
// field, word, unit, date and number, another version.
var later = []string{
	`{"kind":"gilded","leaf":"23 kt","panels":["KB26-0001-K"],"seq":17,"v":1,"written":"2031-01-01T00:00:00Z"}`,
	`{"kind":"note","mood":"glad","panels":["KB26-0002-V"],"seq":18,"text":"x","v":1,"written":"2031-01-01T00:00:00Z"}`,
	`{"faces":["rim"],"kind":"sanded","panels":["KB26-0002-V"],"seq":19,"v":1,"written":"2031-01-01T00:00:00Z"}`,
	`{"faces":["front"],"kind":"coat","panels":["KB26-0002-V"],"seq":20,"v":1,"wet_each":"3 drops","written":"2031-01-01T00:00:00Z"}`,
	`{"at":"stardate 9","kind":"note","panels":["KB26-0002-V"],"seq":21,"text":"x","v":1,"written":"2031-01-01T00:00:00Z"}`,
	`{"batch":"may","kind":"cut","panels":["KB31-0001-0"],"seq":22,"size":{"shape":"round"},"v":2,"written":"2031-01-01T00:00:00Z"}`,
	`{"kind":"varnish","panels":["KB31-0001-0"],"seq":23,"v":1,"written":"2031-01-01T00:00:00Z"}`,
}

// A book with entries that a later program wrote is read, verified and backed
// up; the panels they are about say so, and the others do not.
func TestLaterEntries(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	size, _, err := b.Tree(ctx)
	if err != nil || size != 16 {
		t.Fatal(size, err)
	}
	if err := b.PutRaw(ctx, later...); err != nil {
		t.Fatal(err)
	}
	r, err := b.Verify(ctx, nil)
	if err != nil || r.Newer != len(later)-1 {
		t.Fatalf("%+v %v", r, err)
	}
	w, err := b.Workshop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for n, want := range map[record.Number]int{number(1): 1, number(2): 4, number(3): 0, "KB31-0001-0": 1} {
		if p := w.Panel(n); p == nil || len(p.Newer) != want {
			t.Errorf("%s: %+v", n, p)
		}
	}
	if err := b.Backup(ctx, clock, filepath.Join(t.TempDir(), "copy.sqlite"), book.Everything, nil); err != nil {
		t.Error(err)
	}
	if _, err := b.Append(ctx, clock, parsed(t, `{"kind":"amended","entry":18,"because":"x","change":{"text":"y"}}`)...); err == nil {
		t.Error("an entry that cannot be read was amended")
	}
}

// A book of a newer form is read and verified, and not written to.
func TestNewerForm(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	path := b.Path()
	b.Close()
	undo := book.NextVersion("CREATE TABLE another (x TEXT) STRICT; CREATE TRIGGER extra BEFORE DELETE ON head BEGIN SELECT 1; END;")
	n, err := book.Open(ctx, path)
	if err != nil {
		undo()
		t.Fatal(err)
	}
	n.Close()
	undo()
	if _, err := book.Open(ctx, path); !errors.Is(err, book.ErrNewer) {
		t.Errorf("opened for writing: %v", err)
	}
	r, err := book.OpenReadOnly(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	if !r.Newer() {
		t.Error("it does not say that it is newer")
	}
	if rep, err := r.Verify(ctx, nil); err != nil || rep.Entries != 16 {
		t.Errorf("%+v %v", rep, err)
	}
	if roll, err := r.Roll(ctx); err != nil || len(roll.Numbers) != 3 {
		t.Errorf("%v %v", roll, err)
	}
}

// A migration that fails leaves the older book as it was.
func TestMigrationFails(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	path := b.Path()
	b.Close()
	undo := book.NextVersion("CREATE TABLE another (x TEXT) STRICT; SELECT no_such_function();")
	_, err := book.Open(ctx, path)
	undo()
	if err == nil {
		t.Fatal("a migration that fails was taken")
	}
	holds(t, path)
}

// Look-up tables that another program made, fewer or none, are rebuilt: in a
// book that is opened for writing, else beside it, without a byte changed.
func TestStaleLookups(t *testing.T) {
	for name, sql := range map[string]string{
		"older":       "UPDATE lookup SET version = 0; DELETE FROM panel",
		"other words": "UPDATE lookup SET form = 'x'; DELETE FROM words",
		"none":        "DROP TABLE lookup; DROP TABLE words; DROP TABLE about",
		"newer":       "UPDATE lookup SET version = 99; DROP TABLE words; ALTER TABLE panel RENAME TO panels; CREATE INDEX more ON panels (batch)",
	} {
		t.Run(name, func(t *testing.T) {
			path := tampered(t)
			db := raw(t, path)
			do(t, db, sql+"; PRAGMA wal_checkpoint(TRUNCATE)")
			db.Close()
			before, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			b, err := book.OpenReadOnly(ctx, path)
			if err != nil {
				t.Fatal(err)
			}
			if got, err := written(b, "dune"); err != nil || len(got) != 1 {
				t.Errorf("search: %v %v", got, err)
			}
			if _, err := b.Verify(ctx, nil); err != nil {
				t.Errorf("verify: %v", err)
			}
			b.Close()
			if after, err := os.ReadFile(path); err != nil || string(after) != string(before) {
				t.Error("reading changed the book")
			}
			b, err = book.Open(ctx, path)
			if name == "newer" {
				if !errors.Is(err, book.ErrNewer) {
					t.Errorf("opened for writing: %v", err)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			b.Close()
			holds(t, path)
		})
	}
}

// Whoever changes what the look-up tables are made by gives them the next
// version, and this test their new digest.
func TestLookupForm(t *testing.T) {
	const version, form = 4, "eb9df74163c2472c8f6fe45183670db252ad4a90856bbeb94efc540e4bd05783"
	if v, f, is := book.LookupForm(); v != version || f != form || f != is {
		t.Errorf("version %d, digest %s, and it is %s", v, f, is)
	}
}
