//go:build unix

package main

import (
	"backleaf/record/invented"
	"backleaf/record/toolcheck"
	"cmp"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

// TestGrowth times commands as processes of their own on books of growing
// size, and prints the table of DEVELOPERS.md:
//
//	BACKLEAF_PANELS=1000,10000,100000 go test -v -timeout 2h -run TestGrowth ./cmd/backleaf
//
// Each cell is elapsed seconds, processor seconds and the most memory held.
func TestGrowth(t *testing.T) {
	acts := []struct{ name, line string }{
		{"import", "import journal.json --highest none --book empty.sqlite"},
		{"list", "list"},
		{"list, two filters", "list --stage painted --batch b2"},
		{"find, two filters", "find harbour --lot tin-0"},
		{"due", "due"},
		{"check --json", "check --json"},
		{"verify", "verify"},
		{"show", "show KB90-0003-1"},
		{"coat on 14 panels", "coat batch:b1 --with tin-0 --as sealer --on front --also-away --clock-is-right"},
	}
	table := "| panels, entries |"
	for _, a := range acts {
		table += " " + a.name + " |"
	}
	table += "\n|---" + strings.Repeat("|---", len(acts)) + "|\n"
	for size := range strings.SplitSeq(cmp.Or(os.Getenv("BACKLEAF_PANELS"), "28"), ",") {
		panels, err := strconv.Atoi(size)
		if err != nil {
			t.Fatal(err)
		}
		dir := t.TempDir()
		table += fmt.Sprintf("| %d, %d |", panels, inventedBook(t, dir, panels))
		for _, a := range acts {
			table += " " + measured(t, dir, strings.Fields(a.line)) + " |"
		}
		t.Log("\n" + table)
		table += "\n"
	}
}

// measured runs one command and says what it took.
func measured(t *testing.T, dir string, args []string) string {
	c := program(dir, args...)
	c.Env = append(c.Env, "TEST_NOW=2050-01-01T10:00:00Z")
	var said strings.Builder
	c.Stdout, c.Stderr = io.Discard, &said
	began := time.Now()
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	peak := peakMB(c.Process.Pid)
	err := c.Wait()
	took := time.Since(began)
	if x, ok := err.(*exec.ExitError); err != nil && (!ok || x.ExitCode() != exitFinding && args[0] != "verify") { // the photographs of the journal never were
		t.Fatalf("%s: %v\n%s", args, err, said.String())
	}
	s := c.ProcessState
	return fmt.Sprintf("%.2f s, %.2f s, %d MB", took.Seconds(), (s.UserTime() + s.SystemTime()).Seconds(), min(<-peak, s.SysUsage().(*syscall.Rusage).Maxrss>>10))
}

// Start, against the least program on the same library for command lines, and
// one panel of the book, against a program that reads its entries by index.
func BenchmarkStart(b *testing.B) {
	dir := b.TempDir()
	bare, whole := filepath.Join(dir, "bare"), filepath.Join(dir, "backleaf")
	for file, source := range map[string]string{bare: "./testdata/bare", whole: "."} { // not the program of the tests, which holds more
		if out, err := exec.Command("go", "build", "-o", file+".built", source).CombinedOutput(); err != nil {
			b.Fatalf("%v\n%s", err, out)
		}
		data, err := os.ReadFile(file + ".built") // as an installation lays it: what the linker has just written is slower to map
		if err == nil {
			err = os.WriteFile(file, data, 0o700)
		}
		if err != nil {
			b.Fatal(err)
		}
	}
	inventedBook(b, dir, toolcheck.Panels(b))
	run := func(c *exec.Cmd) {
		if out, err := c.CombinedOutput(); err != nil || len(out) == 0 {
			b.Fatalf("%v: %v\n%s", c.Args, err, out)
		}
	}
	b.Run("version", func(b *testing.B) {
		toolcheck.Against(b, func() { run(exec.Command(whole, "--version")) }, func() { run(exec.Command(bare, "--version")) })
	})
	b.Run("show", func(b *testing.B) {
		n := string(invented.Number(20))
		toolcheck.Against(b, func() { run(exec.Command(whole, "--book", filepath.Join(dir, "studio.sqlite"), "show", n)) }, func() { run(exec.Command(bare, filepath.Join(dir, "studio.sqlite"), n)) })
	})
}
