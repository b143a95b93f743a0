//go:build unix

package main

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/record/book"
)

// manyRows writes a sheet of older panels, each sold, and its mapping.
func manyRows(t *testing.T, dir string, rows int) (entries int64) {
	t.Helper()
	var b strings.Builder
	b.WriteString("No.,Size,Layers,Title,To\n")
	for i := range rows {
		fmt.Fprintf(&b, "%d,30 x 40 cm,ground on front x2,Title %d,Buyer %d\n", i, i, i)
	}
	mapping := `{"backleaf":"mapping","v":1,"columns":{"No.":"own_reference","Size":"size","Layers":"coats","Title":"title","To":"handover_to"},"constants":{"handover":"sale"}}`
	for name, text := range map[string]string{"old.csv": b.String(), "mapping.json": mapping} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return int64(rows) * 5 // cut, two coats, description, handover
}

// whole demands that a book holds and lacks no private part.
func whole(t *testing.T, path string) int64 {
	t.Helper()
	b, err := book.OpenReadOnly(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	r, err := b.Verify(context.Background(), nil)
	if err != nil || len(r.Missing) > 0 {
		t.Fatalf("%s: %v, private parts missing: %v", path, err, r.Missing)
	}
	return r.Entries
}

// TestKilledImport kills an import at some moment: all rows are there, or
// none; if it said that they are, they are.
func TestKilledImport(t *testing.T) {
	dir := t.TempDir()
	add := manyRows(t, dir, 200)
	path := filepath.Join(dir, "studio.sqlite")
	fresh := func() {
		for _, s := range []string{"", "-wal", "-shm"} {
			os.Remove(path + s)
		}
		runs(t, dir, "studio", "new", "--maker", "Anna", "--mark", "KB")
	}
	fresh()
	began := time.Now()
	runs(t, dir, "import", "old.csv", "--mapping", "mapping.json")
	took := time.Since(began)
	fresh()
	said, there := 0, 0
	for range rounds(8) {
		wait := time.Duration(rand.Int64N(int64(took) * 5 / 4))
		c := program(dir, "import", "old.csv", "--mapping", "mapping.json")
		var out strings.Builder
		c.Stdout = &out
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.AfterFunc(wait, func() { c.Process.Kill() })
		c.Wait()
		acknowledged := strings.Contains(out.String(), "from old.csv")
		switch n := whole(t, path); {
		case n == 1 && !acknowledged:
		case n == 1+add:
			there++
			if acknowledged {
				said++
			}
			runs(t, dir, "note", "0001", "next start")
			fresh()
		default:
			t.Fatalf("killed after %v: %d entries, acknowledged: %v", wait, n, acknowledged)
		}
	}
	runs(t, dir, "import", "old.csv", "--mapping", "mapping.json")
	onlyThese(t, dir, "studio.sqlite", "old.csv", "mapping.json")
	t.Logf("the rows were there %d times, acknowledged %d times", there, said)
}

// TestNoRoomForImport lets files end at some size: nothing of the sheet is
// written, and the error says so.
func TestNoRoomForImport(t *testing.T) {
	dir := t.TempDir()
	add := manyRows(t, dir, 200)
	path := filepath.Join(dir, "studio.sqlite")
	runs(t, dir, "studio", "new", "--maker", "Anna", "--mark", "KB")
	n := rounds(6)
	for i := range n {
		c := program(dir, "import", "old.csv", "--mapping", "mapping.json")
		c.Env = append(c.Env, fmt.Sprintf("TEST_FILE_LIMIT=%d", 450_000*i/n))
		out, err := c.CombinedOutput()
		if err == nil {
			if got := whole(t, path); got != 1+add {
				t.Fatalf("limit %d of %d: it ended well with %d entries", i, n, got)
			}
			t.Logf("there was room at limit %d of %d", i, n)
			return
		}
		if got := whole(t, path); got != 1 {
			t.Fatalf("limit %d of %d: %d entries\n%s", i, n, got, out)
		}
		if !strings.Contains(string(out), "backleaf: ") || strings.Contains(string(out), "goroutine") {
			t.Errorf("limit %d of %d: it said %s", i, n, out)
		}
	}
	runs(t, dir, "import", "old.csv", "--mapping", "mapping.json")
	if got := whole(t, path); got != 1+add {
		t.Errorf("%d entries", got)
	}
}
