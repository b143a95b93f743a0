//go:build unix

package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/form"
	"backleaf/record/invented"
	"backleaf/record/studio/exchange"
	"backleaf/record/toolcheck"
)

// rounds is how often a thing is tried that fails at another place each time.
func rounds(n int) int { return toolcheck.Rounds(10*n, max(2, n/3)) }

// program is the command line as a process of its own in a folder.
func program(dir string, args ...string) *exec.Cmd {
	c := exec.Command("backleaf", args...)
	c.Dir = dir
	c.Env = append(os.Environ(), "HOME="+dir, "BACKLEAF_BOOK=studio.sqlite", "TEST_NOW=2026-05-02T16:00:00+03:00")
	return c
}

func runs(t *testing.T, dir string, args ...string) string {
	t.Helper()
	out, err := program(dir, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("backleaf %s: %v\n%s", strings.Join(args, " "), err, out)
	}
	return string(out)
}

// manyEntries fills a new book in dir, so that copying it takes a while.
func manyEntries(t *testing.T, dir string, n int) {
	t.Helper()
	runs(t, dir, "studio", "new", "--maker", "Anna", "--mark", "KB")
	runs(t, dir, "panel", "add", "--count", "8", "--size", "20 x 20 cm x 6 mm")
	b, err := book.Open(context.Background(), filepath.Join(dir, "studio.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	es := make([]record.Entry, n)
	for i := range es {
		es[i] = record.Entry{Body: record.Note{Text: fmt.Sprintf("note %d, with some words to fill the page", i)}}
	}
	if _, err := b.Append(context.Background(), time.Now(), es...); err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
}

// holds opens a book, demands that all of it holds, and returns its size.
func holds(t *testing.T, path string) int64 {
	t.Helper()
	b, err := book.OpenReadOnly(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	r, err := b.Verify(context.Background(), nil)
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	return r.Entries
}

// onlyThese demands that nothing else lies in a folder.
func onlyThese(t *testing.T, dir string, names ...string) {
	t.Helper()
	fs, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range fs {
		ok := false
		for _, n := range names {
			ok = ok || f.Name() == n
		}
		if !ok {
			t.Errorf("%s was left behind", f.Name())
		}
	}
}

// TestKilledBackup kills a backup at some moment: the book holds, and the
// copy is whole or not there.
func TestKilledBackup(t *testing.T) {
	dir := t.TempDir()
	manyEntries(t, dir, 800)
	want := holds(t, filepath.Join(dir, "studio.sqlite"))
	took := time.Now()
	runs(t, dir, "backup", "copy.sqlite")
	whole := time.Since(took)
	os.Remove(filepath.Join(dir, "copy.sqlite"))
	made := 0
	for range rounds(6) {
		wait := time.Duration(rand.Int64N(int64(whole)))
		c := program(dir, "backup", "copy.sqlite")
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(wait)
		c.Process.Kill()
		c.Wait()
		if got := holds(t, filepath.Join(dir, "studio.sqlite")); got != want {
			t.Fatalf("killed after %v: the book has %d entries, not %d", wait, got, want)
		}
		if _, err := os.Stat(filepath.Join(dir, "copy.sqlite")); err == nil {
			made++
			if got := holds(t, filepath.Join(dir, "copy.sqlite")); got != want {
				t.Fatalf("killed after %v: the copy has %d entries, not %d", wait, got, want)
			}
			os.Remove(filepath.Join(dir, "copy.sqlite"))
		}
		runs(t, dir, "note", "1", "next start", "--clock-is-right")
		want++
	}
	runs(t, dir, "backup", "copy.sqlite") // removes what was left unfinished
	onlyThese(t, dir, "studio.sqlite", "copy.sqlite")
	t.Logf("%d of the copies were whole, the others not there", made)
}

// TestInterrupted stops a backup as Ctrl-C does: it ends with an error and
// leaves nothing.
func TestInterrupted(t *testing.T) {
	dir := t.TempDir()
	manyEntries(t, dir, 1500)
	stopped := 0
	for i := range rounds(6) {
		c := program(dir, "backup", "copy.sqlite")
		var out bytes.Buffer
		c.Stderr = &out
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(60+40*(i%12)) * time.Millisecond)
		interrupt(c)
		err := c.Wait()
		var exit *exec.ExitError
		switch {
		case err == nil: // it was ready before
			holds(t, filepath.Join(dir, "copy.sqlite"))
			os.Remove(filepath.Join(dir, "copy.sqlite"))
			continue
		case errors.As(err, &exit) && !exit.Exited(): // it had not begun to listen
			continue
		}
		stopped++
		onlyThese(t, dir, "studio.sqlite", "studio.sqlite-wal", "studio.sqlite-shm")
		if s := out.String(); s != "backleaf: stopped: nothing was recorded\n" {
			t.Errorf("it said %q", s)
		}
	}
	t.Logf("%d stopped", stopped)
}

// TestNoRoom lets every file end at some size, as on a full disk: a backup
// that fails leaves no half file, and the book holds.
func TestNoRoom(t *testing.T) {
	dir := t.TempDir()
	manyEntries(t, dir, 300)
	size := int64(0)
	if st, err := os.Stat(filepath.Join(dir, "studio.sqlite")); err == nil {
		size = st.Size()
	}
	want := holds(t, filepath.Join(dir, "studio.sqlite"))
	n := rounds(8)
	for i := range n {
		c := program(dir, "backup", "copy.sqlite")
		c.Env = append(c.Env, fmt.Sprintf("TEST_FILE_LIMIT=%d", size*int64(i)/int64(n)))
		out, err := c.CombinedOutput()
		if err == nil {
			t.Fatalf("there was room for %d of %d parts, and it ended well", i, n)
		}
		if !strings.Contains(string(out), "backleaf: ") || strings.Contains(string(out), "goroutine") {
			t.Errorf("it said %s", out)
		}
		onlyThese(t, dir, "studio.sqlite", "studio.sqlite-wal", "studio.sqlite-shm")
		if got := holds(t, filepath.Join(dir, "studio.sqlite")); got != want {
			t.Fatalf("the book has %d entries, not %d", got, want)
		}
	}
	runs(t, dir, "backup", "copy.sqlite")
}

// TestReadOnlyFolder runs commands where nothing can be written: what reads
// works, what writes says why not and leaves nothing.
func TestReadOnlyFolder(t *testing.T) {
	top, err := os.MkdirTemp("", "readonly")
	if err != nil {
		t.Fatal(err)
	}
	dir := filepath.Join(top, "studio")
	t.Cleanup(func() { os.Chmod(dir, 0o755); os.RemoveAll(top) })
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(self)
	if err != nil {
		t.Fatal(err)
	}
	tool := filepath.Join(top, "backleaf")
	for _, err := range []error{os.Mkdir(dir, 0o755), os.WriteFile(tool, data, 0o755), os.Chmod(top, 0o777)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	runs(t, dir, "studio", "new", "--maker", "Anna", "--mark", "KB")
	runs(t, dir, "panel", "add", "--size", "20 x 20 cm x 6 mm")
	runs(t, dir, "backup", "good.sqlite")
	manyRows(t, dir, 2)
	os.Chmod(filepath.Join(dir, "studio.sqlite"), 0o444)
	os.Chmod(filepath.Join(dir, "good.sqlite"), 0o444)
	before := listing(t, dir)
	os.Chmod(dir, 0o555)
	for _, x := range []struct {
		args string
		code int
		says string
	}{
		{"backup ../stick.sqlite", 0, "it will not remember this backup"},
		{"backup copy.sqlite", 1, "permission denied"},
		{"restore good.sqlite --to new.sqlite --highest none", 1, "permission denied"},
		{"restore good.sqlite --to ../new.sqlite --highest none", 0, "verified: 2 entries"},
		{"handover 1 --how gift --to X", 1, "cannot be written to"},
		{"handover show 1", 0, "in the studio"},
		{"import old.csv --mapping mapping.json", 1, "cannot be written to"},
		{"import old.csv --mapping mapping.json --dry-run", 0, "2 panels in 10 entries would be written"},
		{"find --where studio --csv", 0, "KB26-0001-K"},
	} {
		c := program(dir, strings.Fields(x.args)...)
		c.Path = tool
		asNobody(c)
		out, err := c.CombinedOutput()
		var exit *exec.ExitError
		code := 0
		if errors.As(err, &exit) {
			code = exit.ExitCode()
		} else if err != nil {
			t.Skip("cannot run a program as another user:", err)
		}
		if code != x.code || !strings.Contains(string(out), x.says) {
			t.Errorf("%s: exit code %d, want %d:\n%s", x.args, code, x.code, out)
		}
		if now := listing(t, dir); now != before {
			t.Errorf("%s: the folder holds %s, not %s", x.args, now, before)
		}
	}
}

func listing(t *testing.T, dir string) string {
	t.Helper()
	fs, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var s []string
	for _, f := range fs {
		s = append(s, f.Name())
	}
	return strings.Join(s, " ")
}

// TestInterruptedWork stops long work as Ctrl-C does: the file it would have
// made is whole or not there, and the book holds with all of an import or none.
func TestInterruptedWork(t *testing.T) {
	toolcheck.Long(t)
	for _, line := range []string{"import journal.json --highest none", "verify", "check --json", "label batch:b1 -o labels.pdf --clock-is-right"} {
		t.Run(line, func(t *testing.T) {
			t.Parallel()
			args, from := strings.Fields(line), t.TempDir()
			n := int64(inventedBook(t, from, 56))
			for i := range rounds(2) {
				dir, least := t.TempDir(), n
				for _, name := range []string{"studio.sqlite", "empty.sqlite", "journal.json"} {
					data, err := os.ReadFile(filepath.Join(from, name))
					if err != nil {
						t.Fatal(err)
					}
					if name == "empty.sqlite" && args[0] == "import" {
						name, least = "studio.sqlite", 0
					}
					if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
						t.Fatal(err)
					}
				}
				c := program(dir, args...)
				var said bytes.Buffer
				c.Stderr = &said
				if err := c.Start(); err != nil {
					t.Fatal(err)
				}
				if i > 0 { // the first is let go on
					time.Sleep(time.Duration(30+50*(i%12)) * time.Millisecond)
					interrupt(c)
				}
				if err := c.Wait(); err == nil {
					least = n
				} else if i == 0 && (args[0] == "import" || args[0] == "label") {
					t.Fatalf("%v: %s", err, &said)
				}
				if got := holds(t, filepath.Join(dir, "studio.sqlite")); got < least || least == 0 && got != 0 && got != n {
					t.Errorf("the book has %d entries of %d", got, n)
				}
				onlyThese(t, dir, "studio.sqlite", "studio.sqlite-wal", "studio.sqlite-shm", "empty.sqlite", "journal.json", "labels.pdf", "papers")
				if pdf, err := os.ReadFile(filepath.Join(dir, "labels.pdf")); err == nil && !bytes.Contains(pdf[max(0, len(pdf)-20):], []byte("%%EOF")) {
					t.Error("half of a file of labels")
				}
			}
		})
	}
}

// inventedBook makes a book of invented panels, an empty one, and the journal
// as an import file; it returns how many entries there are.
func inventedBook(t testing.TB, dir string, panels int) int {
	t.Helper()
	es := slices.Collect(invented.Journal(1, panels))
	var stored []form.Stored
	for _, e := range es {
		b, err := form.Write(e)
		if err != nil {
			t.Fatal(err)
		}
		stored = append(stored, form.Stored{Bytes: b})
	}
	var out bytes.Buffer
	if err := exchange.Write(&out, stored); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "journal.json"), out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"empty.sqlite", "studio.sqlite"} {
		b, err := book.Create(t.Context(), filepath.Join(dir, name))
		if err == nil && name == "studio.sqlite" {
			_, err = b.Append(t.Context(), time.Date(2050, 1, 1, 0, 0, 0, 0, time.UTC), es...)
		}
		if err == nil {
			err = b.Close()
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	return len(es)
}
