package main

import (
	"context"
	"database/sql"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"time"

	_ "backleaf/record/book" // the database driver
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
