//go:build unix

package book_test

import (
	"bytes"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"backleaf/record/book"
	"backleaf/record/toolcheck"
)

// limitFileSize makes writes beyond n bytes of a file fail, as a full disk does.
func limitFileSize(n uint64) {
	signal.Ignore(syscall.SIGXFSZ)
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: n, Max: n}); err != nil {
		panic(err)
	}
}

// TestDiskFull lets writes fail at many places of the log and of the book.
func TestDiskFull(t *testing.T) {
	data, began := base(t)
	failed := 0
	for limit := 0; limit < 400_000; limit += toolcheck.Rounds(4_001, 37_003) {
		path := filepath.Join(t.TempDir(), "studio.sqlite")
		writeFile(t, path, data)
		out, err := command(say("limit %d", limit), path).Output()
		if err == nil {
			t.Fatalf("limit %d: a process that writes without end ended well", limit)
		}
		failed++
		acked := began
		for _, s := range strings.Fields(string(out)) {
			if n, err := strconv.ParseInt(s, 10, 64); err == nil && acked < n {
				acked = n
			}
			if s == "error:" {
				break
			}
		}
		if !bytes.Contains(out, []byte("error:")) {
			t.Errorf("limit %d: it did not say what went wrong: %s", limit, out)
		}
		if r := holds(t, path); r.Entries < acked {
			t.Errorf("limit %d: entry %d was acknowledged, the book has %d", limit, acked, r.Entries)
		}
		b, err := book.Open(ctx, path) // there is room again
		if err != nil {
			t.Fatal(err)
		}
		put(t, b, `{"kind":"note","text":"room again"}`)
		b.Close()
		holds(t, path)
	}
	t.Logf("%d processes ran out of room", failed)
}

// TestReadOnlyFolder reads a book where nothing can be written, as another
// user if this one could write everywhere.
func TestReadOnlyFolder(t *testing.T) {
	dir, err := os.MkdirTemp("", "book")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Chmod(dir, 0o700); os.RemoveAll(dir) })
	path := filepath.Join(dir, "studio.sqlite")
	b := create(t, path)
	put(t, b, afternoon()...)
	b.Close()
	self := filepath.Join(dir, "test")
	program, err := os.ReadFile(os.Args[0])
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(self, program, 0o755); err != nil {
		t.Fatal(err)
	}
	os.Chmod(path, 0o444)
	os.Chmod(dir, 0o555)
	run := func(what string) (string, error) {
		c := command(what, path)
		c.Path, c.Dir = self, "/"
		if os.Getuid() == 0 {
			c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
		}
		out, err := c.Output()
		if _, exit := err.(*exec.ExitError); err != nil && !exit {
			t.Skip("cannot run a program as another user:", err)
		}
		return string(out), err
	}
	if out, err := run("read"); err != nil || out != "16\n" {
		t.Errorf("reading: %v %s", err, out)
	}
	if out, err := run("append 1"); err == nil || !strings.Contains(out, "cannot be written to") {
		t.Errorf("writing: %v %s", err, out)
	}

	// Entries that are still in the log must not be passed over in silence.
	os.Chmod(dir, 0o755)
	os.Chmod(path, 0o644)
	b, err = book.Open(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	put(t, b, `{"kind":"note","text":"in the log"}`)
	copied := snapshot(t, path)
	b.Close()
	for _, suffix := range []string{"", "-wal"} {
		data, err := os.ReadFile(copied + suffix)
		if err != nil {
			t.Fatal(err)
		}
		writeFile(t, path+suffix, data)
		os.Chmod(path+suffix, 0o444)
	}
	os.Chmod(dir, 0o555)
	if out, err := run("read"); err != nil || strings.TrimSpace(out) != "17" {
		t.Errorf("reading with a log left: %v %s", err, out)
	}
}
