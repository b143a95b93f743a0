package book_test

import (
	"bytes"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"golang.org/x/mod/sumdb/tlog"

	"backleaf/record/book"
	"backleaf/record/toolcheck"
	"backleaf/schema"
)

// tampered makes a full book: 19 entries, a head over 15 of them, a private
// part that is there (entry 17) and one that was erased (entry 18).
func tampered(t testing.TB) string {
	t.Helper()
	b := newBook(t)
	put(t, b, afternoon()[:15]...)
	size, root, err := b.Tree(ctx)
	if err != nil {
		t.Fatal(err)
	}
	if err := b.KeepHead(ctx, book.Head{Size: size, Root: root, Note: "head"}); err != nil {
		t.Fatal(err)
	}
	put(t, b, afternoon()[15:]...)
	kept, digest := sealed([]byte("a collector"))
	gone, digest2 := sealed([]byte("another collector"))
	if _, err := b.AppendPrivate(ctx, clock, map[int]book.Private{0: kept, 1: gone}, parsed(t,
		`{"kind":"handed-over","how":"sale","private_sha256":"`+digest+`",`+panels(1, 1)+`}`,
		`{"kind":"handed-over","how":"sale","private_sha256":"`+digest2+`",`+panels(2, 2)+`}`)...); err != nil {
		t.Fatal(err)
	}
	if _, err := b.ErasePrivate(ctx, clock, 18, "asked"); err != nil {
		t.Fatal(err)
	}
	b.Close()
	holds(t, b.Path())
	return b.Path()
}

// rehash makes hashes and tip fit whatever the entries say now, as somebody
// would who knows the form of the book.
func rehash(t *testing.T, db *sql.DB, levels int, tip bool) {
	rows, err := db.Query("SELECT bytes FROM entry ORDER BY seq")
	if err != nil {
		t.Fatal(err)
	}
	var all []tlog.Hash
	reader := tlog.HashReaderFunc(func(idx []int64) (out []tlog.Hash, err error) {
		for _, i := range idx {
			out = append(out, all[i])
		}
		return out, nil
	})
	n := int64(0)
	for ; rows.Next(); n++ {
		var data []byte
		if err := rows.Scan(&data); err != nil {
			t.Fatal(err)
		}
		h, err := tlog.StoredHashes(n, data, reader)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, h...)
	}
	rows.Close()
	for i, h := range all {
		if level, _ := tlog.SplitStoredHashIndex(int64(i)); level < levels {
			do(t, db, "UPDATE hash SET node = ? WHERE idx = ?", h[:], i)
		}
	}
	if tip {
		root, err := tlog.TreeHash(n, reader)
		if err != nil {
			t.Fatal(err)
		}
		do(t, db, "UPDATE tip SET root = ?, size = ?", root[:], n)
	}
}

func do(t *testing.T, db *sql.DB, query string, args ...any) {
	t.Helper()
	if _, err := db.Exec(query, args...); err != nil {
		t.Fatalf("%s: %v", query, err)
	}
}

const change11 = `UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), 'evening', 'morning') AS BLOB) WHERE seq = 11;`

func TestTampering(t *testing.T) {
	whole, err := os.ReadFile(tampered(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		sql  string
		more func(t *testing.T, db *sql.DB)
		seq  int64  // of the bad entry; 0: none can be named
		says string // part of the error
	}{
		{name: "entry changed", sql: change11, seq: 11},
		{name: "entry changed, with its hash", sql: change11, more: func(t *testing.T, db *sql.DB) { rehash(t, db, 1, false) }, says: "entries 11 to 12"},
		{name: "entry changed, with all hashes", sql: change11, more: func(t *testing.T, db *sql.DB) { rehash(t, db, 64, false) }, says: "root"},
		{name: "entry changed, with hashes and root", sql: change11, more: func(t *testing.T, db *sql.DB) { rehash(t, db, 64, true) }, says: "head kept over 15"},
		{name: "entry spelt otherwise", sql: `UPDATE entry SET bytes = CAST(CAST(bytes AS TEXT) || ' ' AS BLOB) WHERE seq = 4`, seq: 4, says: "canonical"},
		{name: "entry emptied", sql: `UPDATE entry SET bytes = x'' WHERE seq = 4`, seq: 4},
		{name: "first entry removed", sql: `DELETE FROM entry WHERE seq = 1`, seq: 1, says: "missing"},
		{name: "entry removed", sql: `DELETE FROM entry WHERE seq = 9`, seq: 9, says: "missing"},
		{name: "last entry removed", sql: `DELETE FROM entry WHERE seq = 19`, seq: 19, says: "missing"},
		{name: "last entry removed, with its hashes", sql: `DELETE FROM entry WHERE seq = 19; DELETE FROM hash WHERE idx >= 35`, seq: 19, says: "missing"},
		{name: "tail removed, with hashes and root", sql: `PRAGMA foreign_keys = 0; DELETE FROM entry WHERE seq > 14; DELETE FROM hash WHERE idx >= 25`,
			more: func(t *testing.T, db *sql.DB) { rehash(t, db, 64, true) }, seq: 15, says: "signed"},
		{name: "all entries removed", sql: `PRAGMA foreign_keys = 0; DELETE FROM entry`, seq: 1},
		{name: "entries swapped", sql: `UPDATE entry SET seq = -1 WHERE seq = 11; UPDATE entry SET seq = 11 WHERE seq = 12; UPDATE entry SET seq = 12 WHERE seq = -1`, seq: 11, says: "says that it is entry 12"},
		{name: "entries swapped and renumbered", sql: `UPDATE entry SET seq = -1 WHERE seq = 11; UPDATE entry SET seq = 11 WHERE seq = 12; UPDATE entry SET seq = 12 WHERE seq = -1;
			UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), '"seq":12', '"seq":11') AS BLOB) WHERE seq = 11;
			UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), '"seq":11', '"seq":12') AS BLOB) WHERE seq = 12`, seq: 11},
		{name: "entry appended behind the back", more: func(t *testing.T, db *sql.DB) {
			do(t, db, "INSERT INTO entry (seq, bytes) VALUES (20, ?)", []byte(`{"kind":"note","seq":20,"text":"forged","v":1,"written":"2026-05-02T14:05:00+02:00"}`))
		}, seq: 20, says: "hash is missing"},
		{name: "entry appended behind the back, with hashes", more: func(t *testing.T, db *sql.DB) {
			data := []byte(`{"kind":"note","seq":20,"text":"forged","v":1,"written":"2026-05-02T14:05:00+02:00"}`)
			h := tlog.RecordHash(data)
			do(t, db, "INSERT INTO entry (seq, bytes) VALUES (20, ?)", data)
			for i := range 3 {
				do(t, db, "INSERT INTO hash (idx, node) VALUES (?, ?)", 35+i, h[:])
			}
			rehash(t, db, 64, false)
		}, seq: 20},
		{name: "entry before its time", more: func(t *testing.T, db *sql.DB) {
			do(t, db, "UPDATE entry SET bytes = ? WHERE seq = 5", []byte(`{"because":"x","change":{"note":"y"},"entry":7,"kind":"amended","seq":5,"v":1,"written":"2026-05-02T14:05:00+02:00"}`))
		}, seq: 5, says: "entry 7 is missing"},
		{name: "leaf hash replaced", sql: `UPDATE hash SET node = zeroblob(32) WHERE idx = 0`, seq: 1},
		{name: "inner hash replaced", sql: `UPDATE hash SET node = zeroblob(32) WHERE idx = 2`, says: "entries 1 to 2"},
		{name: "hash removed", sql: `DELETE FROM hash WHERE idx = 0`, seq: 1},
		{name: "hash added", sql: `INSERT INTO hash (idx, node) VALUES (1000, zeroblob(32))`, says: "not there"},
		{name: "root replaced", sql: `UPDATE tip SET root = zeroblob(32)`, says: "root"},
		{name: "size replaced", sql: `UPDATE tip SET size = 18`, seq: 19, says: "behind the back"},
		{name: "tip removed", sql: `DELETE FROM tip`, says: "missing"},
		{name: "head replaced", sql: `UPDATE head SET root = zeroblob(32)`, says: "head kept over 15"},
		{name: "head of a longer journal", sql: `UPDATE head SET size = 40`, seq: 20},
		{name: "private part changed", sql: `UPDATE private SET data = CAST('somebody' AS BLOB)`, seq: 17, says: "private"},
		{name: "private part of another entry", sql: `INSERT INTO private (seq, salt, data) VALUES (3, x'00', x'00')`, seq: 3, says: "private"},
		{name: "private part back again", sql: `INSERT INTO private (seq, salt, data) SELECT 18, salt, data FROM private`, seq: 18, says: "erased"},
		{name: "panel changed", sql: `UPDATE panel SET batch = 'another' WHERE serial = 1`, says: "panel"},
		{name: "panel removed", sql: `DELETE FROM panel WHERE serial = 3`, says: "panel"},
		{name: "about changed", sql: `UPDATE about SET kind = 'note' WHERE seq = 2`, says: "about"},
		{name: "mention removed", sql: `DELETE FROM mention WHERE seq = 11`, says: "mention"},
		{name: "correction removed", sql: `DELETE FROM correction`, says: "correction"},
		{name: "description changed", sql: `UPDATE described SET at = '1900'`, says: "described"},
		{name: "description removed", sql: `DELETE FROM described WHERE kind = 'lot'`, says: "described"},
		{name: "words changed", sql: `UPDATE words SET text = 'forest'`, says: "words"},
		{name: "index of words emptied", sql: `DELETE FROM words_data WHERE id > 10`, says: "words"},
		{name: "guards dropped", says: "trigger"},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "studio.sqlite")
			writeFile(t, path, whole)
			db := raw(t, path)
			dropGuards(t, db)
			if c.sql != "" {
				do(t, db, c.sql)
			}
			if c.more != nil {
				c.more(t, db)
			}
			if c.name != "guards dropped" {
				restoreGuards(t, db)
			}
			db.Close()
			b, err := book.OpenReadOnly(ctx, path)
			if err != nil {
				t.Fatal(err)
			}
			defer b.Close()
			_, err = b.Verify(ctx, nil)
			if !errors.Is(err, book.ErrBroken) {
				t.Fatalf("not found: %v", err)
			}
			var bad *book.BadEntry
			if errors.As(err, &bad) != (c.seq != 0) || bad != nil && bad.Seq != c.seq || !strings.Contains(err.Error(), c.says) {
				t.Errorf("%v; want entry %d, %q", err, c.seq, c.says)
			}
		})
	}
}

func raw(t *testing.T, path string) *sql.DB {
	t.Helper()
	db, err := sql.Open("sqlite", "file:"+path)
	if err != nil {
		t.Fatal(err)
	}
	db.SetMaxOpenConns(1)
	t.Cleanup(func() { db.Close() })
	return db
}

func dropGuards(t *testing.T, db *sql.DB) {
	rows, err := db.Query("SELECT name FROM sqlite_schema WHERE type = 'trigger'")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for rows.Next() {
		var n string
		rows.Scan(&n)
		names = append(names, n)
	}
	rows.Close()
	if len(names) < 10 {
		t.Fatalf("guards: %v", names)
	}
	for _, n := range names {
		do(t, db, "DROP TRIGGER "+n)
	}
}

func restoreGuards(t *testing.T, db *sql.DB) {
	for _, s := range strings.Split(schema.Book, "CREATE TRIGGER")[1:] {
		do(t, db, "CREATE TRIGGER"+s[:strings.Index(s, "END;")+4])
	}
}

// TestRewritten documents the limit: whoever rewrites entries, hashes, root and
// look-up tables makes another book that holds. Its root is another one, and
// that is what a signed head kept elsewhere shows.
func TestRewritten(t *testing.T) {
	path := tampered(t)
	was := holds(t, path)
	db := raw(t, path)
	dropGuards(t, db)
	do(t, db, change11+"DELETE FROM head")
	rehash(t, db, 64, true)
	restoreGuards(t, db)
	db.Close()
	b, err := book.Open(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if _, err := b.Verify(ctx, nil); err == nil || !strings.Contains(err.Error(), "look-up table") {
		t.Error("stale look-up tables:", err)
	}
	if err := b.Rebuild(ctx); err != nil {
		t.Fatal(err)
	}
	now, err := b.Verify(ctx, nil)
	if err != nil || now.Root == was.Root || now.Entries != was.Entries {
		t.Error(now, err)
	}
}

// TestNothingIsCoveredUp: a book that does not hold takes no more entries,
// which would bring its root up to date.
func TestNothingIsCoveredUp(t *testing.T) {
	for name, change := range map[string]func(*sql.DB){
		"changed": func(db *sql.DB) { do(t, db, change11); rehash(t, db, 64, false) },
		"removed": func(db *sql.DB) { do(t, db, "DELETE FROM entry WHERE seq = 19") },
		"added": func(db *sql.DB) {
			do(t, db, "INSERT INTO entry (seq, bytes) VALUES (20, ?)", []byte(`{"kind":"note","seq":20,"text":"forged","v":1,"written":"2026-05-02T14:05:00+02:00"}`))
		},
	} {
		path := tampered(t)
		db := raw(t, path)
		dropGuards(t, db)
		change(db)
		db.Close()
		b, err := book.Open(ctx, path)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := b.Append(ctx, clock, parsed(t, `{"kind":"note","text":"x"}`)...); !errors.Is(err, book.ErrBroken) {
			t.Errorf("%s: %v", name, err)
		}
		b.Close()
	}
}

// TestGuards: a slip with a general SQLite tool is refused.
func TestGuards(t *testing.T) {
	path := tampered(t)
	db := raw(t, path)
	do(t, db, "PRAGMA recursive_triggers = 1")
	for _, q := range []string{
		`UPDATE entry SET bytes = x'00' WHERE seq = 1`, `DELETE FROM entry WHERE seq = 19`, `DELETE FROM entry`,
		`INSERT INTO entry (seq, bytes) VALUES (21, x'00')`, `INSERT INTO entry (seq, bytes) VALUES (1, x'00')`,
		`REPLACE INTO entry (seq, bytes) VALUES (3, x'00')`, `INSERT OR REPLACE INTO entry (seq, bytes) VALUES (19, x'00')`,
		`UPDATE OR REPLACE entry SET seq = 2 WHERE seq = 3`, `INSERT INTO entry (bytes) VALUES (x'00')`,
		`UPDATE hash SET node = zeroblob(32)`, `DELETE FROM hash`, `REPLACE INTO hash (idx, node) VALUES (0, zeroblob(32))`,
		`UPDATE tip SET size = 1`, `DELETE FROM tip`, `UPDATE head SET note = 'x'`, `DELETE FROM head`, `UPDATE private SET data = x'00'`,
	} {
		if _, err := db.Exec(q); err == nil {
			t.Errorf("accepted: %s", q)
		}
	}
	db.Close()
	holds(t, path)
}

// TestRebuild makes damaged look-up tables whole.
func TestRebuild(t *testing.T) {
	path := tampered(t)
	db := raw(t, path)
	do(t, db, `DELETE FROM about; DELETE FROM mention; DELETE FROM correction; DELETE FROM described; DELETE FROM panel; DELETE FROM words`)
	db.Close()
	b, err := book.Open(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if err := b.Rebuild(ctx); err != nil {
		t.Fatal(err)
	}
	if _, err := b.Verify(ctx, nil); err != nil {
		t.Error(err)
	}
}

// TestEveryByte changes every byte of a book in turn: nothing panics, and if
// the book is said to hold, its journal is the one that was written.
func TestEveryByte(t *testing.T) {
	whole := tampered(t)
	db := raw(t, whole)
	do(t, db, "PRAGMA journal_mode = DELETE")
	do(t, db, "PRAGMA page_size = 512") // a small file: less of it is unused
	do(t, db, "VACUUM")
	db.Close()
	data, err := os.ReadFile(whole)
	if err != nil {
		t.Fatal(err)
	}
	stride := toolcheck.Rounds(1, 499)
	want, err := journal(whole)
	if err != nil {
		t.Fatal(err)
	}
	places := make(chan int)
	var found atomic.Int64
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		path := filepath.Join(t.TempDir(), "studio.sqlite")
		workers.Go(func() {
			for i := range places {
				flipped := bytes.Clone(data)
				flipped[i] ^= 1 << (i % 8)
				for _, suffix := range []string{"", "-wal", "-shm"} {
					os.Remove(path + suffix)
				}
				if err := os.WriteFile(path, flipped, 0o600); err != nil {
					t.Error(err)
				}
				if got, err := journal(path); err != nil {
					found.Add(1)
				} else if !slices.EqualFunc(got, want, bytes.Equal) {
					t.Errorf("byte %d changed: the journal is another one and is said to hold", i)
				}
			}
		})
	}
	for i := 0; i < len(data); i += stride {
		places <- i
	}
	close(places)
	workers.Wait()
	if found.Load() == 0 {
		t.Error("no change was found")
	}
	t.Logf("%d of %d changes were found; the others were in unused places", found.Load(), (len(data)+stride-1)/stride)
}

// journal returns the entries of a book that is said to hold.
func journal(path string) (out [][]byte, err error) {
	b, err := book.OpenReadOnly(ctx, path)
	if err != nil {
		return nil, err
	}
	defer b.Close()
	if _, err := b.Verify(ctx, nil); err != nil {
		return nil, err
	}
	all, err := b.Entries(ctx, book.Filter{})
	for _, s := range all {
		out = append(out, s.Bytes)
	}
	return out, err
}
