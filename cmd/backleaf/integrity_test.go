package main

import (
	"context"
	"database/sql"
	"errors"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"time"

	_ "backleaf/record/book" // the database driver
	"backleaf/record/seal"
)

// A book that does not hold ends a command with code 4, also where no single
// entry can be named; damaged look-up tables are made whole by rebuild.
func TestIntegrityCode(t *testing.T) {
	for _, x := range []struct {
		name, tamper  string
		write, mended int // codes of a note, and of verify after a rebuild
	}{
		{"as written", "SELECT 1", exitDone, exitDone},
		{"look-up table", "UPDATE about SET kind = 'sand' WHERE seq = 2", exitDone, exitDone},
		{"tip", "UPDATE tip SET size = size + 1", exitIntegrity, exitIntegrity},
		{"another table", "CREATE TABLE more (x)", exitDone, exitIntegrity},
	} {
		t.Run(x.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "studio.sqlite")
			run := func(args ...string) int {
				a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard, env: func(string) string { return "" }, now: time.Now}
				return a.run(context.Background(), append([]string{"--book", path}, args...))
			}
			for _, args := range []string{"studio new --maker A --mark KB", "note first"} {
				if code := run(strings.Fields(args)...); code != exitDone {
					t.Fatalf("%s: exit code %d", args, code)
				}
			}
			db, err := sql.Open("sqlite", path)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := db.Exec(x.tamper); err != nil {
				t.Fatal(err)
			}
			db.Close()
			verify := exitIntegrity
			if x.name == "as written" {
				verify = exitDone
			}
			for _, step := range []struct {
				want int
				args string
			}{{verify, "verify"}, {exitDone, "list"}, {x.write, "note seen"}, {exitDone, "rebuild"}, {x.mended, "verify"}} {
				if code := run(strings.Fields(step.args)...); code != step.want {
					t.Errorf("%s: exit code %d, want %d", step.args, code, step.want)
				}
			}
		})
	}
}

// A private part that is not the one on record is not shown as if it were; it
// can still be erased.
func TestPrivatePartChanged(t *testing.T) {
	path := filepath.Join(t.TempDir(), "studio.sqlite")
	run := func(want int, says, line string) {
		t.Helper()
		if said, code := typedAt(time.Now(), append([]string{"--book", path}, strings.Fields(line)...)...); code != want || !strings.Contains(said, says) {
			t.Errorf("%s: exit code %d\n%s", line, code, said)
		}
	}
	run(exitDone, "", "studio new --maker A --mark KB --currency EUR")
	run(exitDone, "", "panel add --size 20x20x0.6cm")
	run(exitDone, "", "handover 1 --how sale --to Bob --price 10")
	run(exitDone, "Bob", "handover show 1")
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []string{"DROP TRIGGER private_stays", "UPDATE private SET data = CAST(replace(CAST(data AS TEXT), 'Bob', 'Ben') AS BLOB)"} {
		if _, err := db.Exec(s); err != nil {
			t.Fatal(err)
		}
	}
	db.Close()
	run(exitIntegrity, "is not the one on record", "handover show 1")
	run(exitDone, "erased", "handover forget 3 --because asked")
	run(exitDone, "", "handover show 1")
}

// A book that was written anew without the key, its kept heads removed, does
// not agree with the certificates that it says were issued.
func TestRewrittenBesideCertificates(t *testing.T) {
	dir, _ := issued(t)
	path := filepath.Join(dir, "studio.sqlite")
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	var guards, names []string
	for rows := must(db.Query("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")); rows.Next(); {
		var name, text string
		if err := rows.Scan(&name, &text); err != nil {
			t.Fatal(err)
		}
		names, guards = append(names, name), append(guards, text)
	}
	do := func(query string, args ...any) {
		t.Helper()
		if _, err := db.Exec(query, args...); err != nil {
			t.Fatal(err)
		}
	}
	for _, n := range names {
		do("DROP TRIGGER " + n)
	}
	do("UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), 'Dune, evening', 'A Great Master') AS BLOB)")
	var tree seal.Tree
	for rows := must(db.Query("SELECT bytes FROM entry ORDER BY seq")); rows.Next(); {
		var b []byte
		if err := errors.Join(rows.Scan(&b), tree.Append(b)); err != nil {
			t.Fatal(err)
		}
	}
	do("DELETE FROM hash")
	for i := range seal.StoredHashIndex(tree.Size()) {
		h := must(tree.ReadHashes([]int64{i}))[0]
		do("INSERT INTO hash VALUES (?, ?)", i, h[:])
	}
	root := must(seal.Root(tree.Size(), &tree))
	do("UPDATE tip SET root = ?", root[:])
	do("DELETE FROM head")
	for _, g := range guards {
		do(g)
	}
	db.Close()
	for _, step := range []struct {
		line string
		code int
		says string
	}{{"rebuild", exitDone, ""}, {"verify", exitIntegrity, "the journal does not begin with the"},
		{"restore " + path + " --to " + filepath.Join(t.TempDir(), "new.sqlite") + " --highest none", exitIntegrity, "the journal does not begin with the"}} {
		if said, code := typedAt(time.Now(), append([]string{"--book", path}, strings.Fields(step.line)...)...); code != step.code || !strings.Contains(said, step.says) {
			t.Errorf("%s: exit code %d\n%s", step.line, code, said)
		}
	}
}

// A view in the place of a table would be read without end.
func TestEndlessView(t *testing.T) {
	dir, _ := issued(t)
	path := filepath.Join(dir, "studio.sqlite")
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []string{"DROP TABLE head", "CREATE VIEW head AS WITH RECURSIVE x (size) AS (SELECT 1 UNION ALL SELECT size + 1 FROM x) SELECT size, zeroblob(32) AS root, 'x' AS note FROM x"} {
		if _, err := db.Exec(s); err != nil {
			t.Fatal(err)
		}
	}
	db.Close()
	for _, line := range []string{"verify", "list", "verify " + path} {
		if said, code := typedAt(time.Now(), append([]string{"--book", path}, strings.Fields(line)...)...); code != exitIntegrity || !strings.Contains(said, "head is no table") {
			t.Errorf("%s: exit code %d\n%s", line, code, said)
		}
	}
}

// An entry of a size that no program writes is not read into the memory.
func TestVastEntry(t *testing.T) {
	dir, _ := issued(t)
	path := filepath.Join(dir, "studio.sqlite")
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []string{"DROP TRIGGER entry_next", "INSERT INTO entry (seq, bytes) SELECT max(seq) + 1, zeroblob(20000000) FROM entry"} {
		if _, err := db.Exec(s); err != nil {
			t.Fatal(err)
		}
	}
	db.Close()
	if said, code := typedAt(time.Now(), "verify", path); code != exitIntegrity || !strings.Contains(said, "too big") {
		t.Errorf("exit code %d\n%s", code, said)
	}
}

// A book in which somebody changed the bytes of an entry vouches for nothing,
// and nothing is signed from it.
func TestChangedWitness(t *testing.T) {
	dir, _ := issued(t)
	path := filepath.Join(dir, "studio.sqlite")
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []string{"DROP TRIGGER entry_stays", "UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), 'Dune, evening', 'Dune, morning') AS BLOB)"} {
		if _, err := db.Exec(s); err != nil {
			t.Fatal(err)
		}
	}
	db.Close()
	for _, args := range [][]string{{"verify", filepath.Join(dir, "c.pdf")}, {"site", filepath.Join(dir, "site")}, {"certificate", "0001", "-o", filepath.Join(dir, "d.pdf"), "--because", "again"}} {
		if said, code := typedAt(time.Now(), append([]string{"--book", path}, args...)...); code == exitDone || !strings.Contains(said, "the book does not hold") && !strings.Contains(said, "not what its hash was made from") {
			t.Errorf("%v: exit code %d\n%s", args, code, said)
		}
	}
}
