//go:build unix

package main

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/record/bag"
	"backleaf/record/toolcheck"
)

// TestKilledDeposit kills a deposit at some moment: it is whole or not there,
// and the next one clears away what was left.
func TestKilledDeposit(t *testing.T) {
	toolcheck.Long(t)
	dir := t.TempDir()
	soldPanel(t, dir)
	want := holds(t, filepath.Join(dir, "studio.sqlite"))
	took := time.Now()
	runs(t, dir, "deposit", "bag")
	whole := time.Since(took)
	os.RemoveAll(filepath.Join(dir, "bag"))
	made := 0
	for range rounds(5) {
		wait := time.Duration(rand.Int64N(int64(whole) * 11 / 10))
		c := program(dir, "deposit", "bag")
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(wait)
		c.Process.Kill()
		c.Wait()
		if got := holds(t, filepath.Join(dir, "studio.sqlite")); got != want {
			t.Fatalf("killed after %v: the book has %d entries, not %d", wait, got, want)
		}
		if _, err := os.Lstat(filepath.Join(dir, "bag")); err == nil {
			made++
			wholeBag(t, filepath.Join(dir, "bag"))
			os.RemoveAll(filepath.Join(dir, "bag"))
		}
	}
	runs(t, dir, "deposit", "bag")
	wholeBag(t, filepath.Join(dir, "bag"))
	onlyThese(t, dir, "studio.sqlite", "studio.key", "photographs", "papers", "certificate.pdf", "bag")
	t.Logf("%d of the deposits were whole, the others not there", made)
}

// TestInterruptedDeposit stops a deposit as Ctrl-C does: nothing is left.
func TestInterruptedDeposit(t *testing.T) {
	toolcheck.Long(t)
	dir := t.TempDir()
	soldPanel(t, dir)
	stopped := 0
	for i := range rounds(4) {
		c := program(dir, "deposit", "bag")
		var out bytes.Buffer
		c.Stderr = &out
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(80+60*(i%6)) * time.Millisecond)
		interrupt(c)
		if err := c.Wait(); err == nil {
			wholeBag(t, filepath.Join(dir, "bag"))
			os.RemoveAll(filepath.Join(dir, "bag"))
			continue
		}
		stopped++
		onlyThese(t, dir, "studio.sqlite", "studio.sqlite-wal", "studio.sqlite-shm", "studio.key", "photographs", "papers", "certificate.pdf")
		// On a busy machine the signal can come before anything listens for it.
		if s := out.String(); !strings.HasPrefix(s, "backleaf: ") && c.ProcessState.ExitCode() != -1 {
			t.Errorf("it said %q", s)
		}
	}
	t.Logf("%d stopped", stopped)
}

// TestNoRoomForDeposit lets every file end at some size, as on a full disk.
func TestNoRoomForDeposit(t *testing.T) {
	toolcheck.Long(t)
	dir := t.TempDir()
	soldPanel(t, dir)
	runs(t, dir, "backup", "copy.sqlite") // the largest part of the deposit
	st, err := os.Stat(filepath.Join(dir, "copy.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	want := holds(t, filepath.Join(dir, "studio.sqlite"))
	n := rounds(6)
	for i := range n {
		c := program(dir, "deposit", "bag")
		c.Env = append(c.Env, fmt.Sprintf("TEST_FILE_LIMIT=%d", st.Size()*int64(i)/int64(n)))
		out, err := c.CombinedOutput()
		if err == nil {
			t.Fatalf("there was room for %d of %d parts, and it ended well", i, n)
		}
		if !strings.Contains(string(out), "backleaf: ") || strings.Contains(string(out), "goroutine") {
			t.Errorf("it said %s", out)
		}
		onlyThese(t, dir, "studio.sqlite", "studio.sqlite-wal", "studio.sqlite-shm", "studio.key", "photographs", "papers", "certificate.pdf", "copy.sqlite")
		if got := holds(t, filepath.Join(dir, "studio.sqlite")); got != want {
			t.Fatalf("the book has %d entries, not %d", got, want)
		}
	}
}

// emptyStudio makes an empty book beside a deposit and returns its folder.
func emptyStudio(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	runs(t, dir, "studio", "new", "--empty")
	return dir
}

// TestKilledDepositImport kills the reading of a deposit at some moment: the book is
// empty or has all of it, and the next try ends well.
func TestKilledDepositImport(t *testing.T) {
	toolcheck.Long(t)
	from := t.TempDir()
	soldPanel(t, from)
	runs(t, from, "deposit", "bag")
	want := holds(t, filepath.Join(from, "studio.sqlite"))
	bagDir := filepath.Join(from, "bag")
	took := time.Now()
	runs(t, emptyStudio(t), "import", bagDir, "--highest", "none")
	whole := time.Since(took)
	done := 0
	for range rounds(5) {
		dir := emptyStudio(t)
		wait := time.Duration(rand.Int64N(int64(whole)))
		c := program(dir, "import", bagDir, "--highest", "none")
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(wait)
		c.Process.Kill()
		c.Wait()
		switch got := holds(t, filepath.Join(dir, "studio.sqlite")); got {
		case want:
			done++
		case 0:
			runs(t, dir, "import", bagDir, "--highest", "none")
		default:
			t.Fatalf("killed after %v: %d of %d entries", wait, got, want)
		}
		if out := runs(t, dir, "verify"); !strings.Contains(out, "photographs: 1 kept, 1 in order") {
			t.Errorf("killed after %v: %s", wait, out)
		}
		// What a killed writer leaves stays until somebody writes: reading changes nothing.
		onlyThese(t, dir, "studio.sqlite", "studio.sqlite-wal", "studio.sqlite-shm", "photographs")
	}
	t.Logf("%d of the imports were whole, the others not there", done)
}

// TestNoRoomForDepositImport lets every file end at some size: nothing of the deposit
// stays.
func TestNoRoomForDepositImport(t *testing.T) {
	toolcheck.Long(t)
	from := t.TempDir()
	soldPanel(t, from)
	runs(t, from, "deposit", "bag")
	n := rounds(5)
	for i := range n {
		dir := emptyStudio(t)
		c := program(dir, "import", filepath.Join(from, "bag"), "--highest", "none")
		c.Env = append(c.Env, fmt.Sprintf("TEST_FILE_LIMIT=%d", 4000*i/n))
		out, err := c.CombinedOutput()
		if err == nil {
			t.Fatalf("there was room for %d of %d parts, and it ended well", i, n)
		}
		if !strings.Contains(string(out), "backleaf: ") || strings.Contains(string(out), "goroutine") {
			t.Errorf("it said %s", out)
		}
		if got := holds(t, filepath.Join(dir, "studio.sqlite")); got != 0 {
			t.Fatalf("the book has %d entries", got)
		}
		onlyThese(t, dir, "studio.sqlite", "studio.sqlite-wal", "studio.sqlite-shm")
	}
}

// TestForgedDeposit changes the journal of a deposit and makes its checksums
// anew: it is neither read back nor verified.
func TestForgedDeposit(t *testing.T) {
	from := t.TempDir()
	soldPanel(t, from)
	runs(t, from, "deposit", "bag")
	whole := filepath.Join(from, "bag")
	journal, err := os.ReadFile(filepath.Join(whole, "data", "journal.json"))
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(string(journal), "\n")
	without := func(i int) string { return strings.Join(append(append([]string{}, lines[:i]...), lines[i+1:]...), "") }
	change := func(old, new string) string {
		if strings.Count(string(journal), old) == 0 {
			t.Fatalf("the journal does not hold %s", old)
		}
		return strings.Replace(string(journal), old, new, 1)
	}
	for what, forged := range map[string]string{
		"an amount changed":    change(`"wet_total":"30 g"`, `"wet_total":"31 g"`),
		"an entry left out":    without(6),
		"the last one missing": strings.TrimSuffix(strings.Join(lines[:len(lines)-3], ""), ",\n") + "\n]}\n",
		"a way out":            change(`"media_type":"image/png"`, `"media_type":"image/../../png"`),
		"another digest":       change(`"sha256":"`, `"sha256":"../`),
		"no journal":           `{"backleaf":"entries","v":1,"entries":[]}`,
		"not JSON":             "{",
		"nothing":              "",
	} {
		made := bag.Bag{Date: time.Now(), Agent: "a forger"}
		eachFile(t, filepath.Join(whole, "data"), func(p string, data []byte) {
			rel, err := filepath.Rel(filepath.Join(whole, "data"), p)
			if err != nil {
				t.Fatal(err)
			}
			if rel == "journal.json" {
				data = []byte(forged)
			}
			made.Payload = append(made.Payload, bag.Bytes(filepath.ToSlash(rel), data))
		})
		dir := emptyStudio(t)
		if err := bag.Write(filepath.Join(dir, "bag"), made); err != nil {
			t.Fatal(err)
		}
		wholeBag(t, filepath.Join(dir, "bag"))
		for _, command := range []string{"import", "verify"} {
			out, err := program(dir, command, "bag").CombinedOutput()
			if exit, ok := err.(*exec.ExitError); !ok || exit.ExitCode() != exitIntegrity {
				t.Errorf("%s: %s: %v\n%s", what, command, err, out)
			}
		}
		if got := holds(t, filepath.Join(dir, "studio.sqlite")); got != 0 {
			t.Errorf("%s: the book has %d entries", what, got)
		}
		onlyThese(t, dir, "studio.sqlite", "studio.sqlite-wal", "studio.sqlite-shm", "bag")
	}
}
