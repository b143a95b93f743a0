//go:build unix

package main

import (
	"bytes"
	"errors"
	"io/fs"
	"math/rand/v2"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/creack/pty"

	"backleaf/record/safefile"
	"backleaf/record/toolcheck"
)

// atTerminal types a command at a terminal, and Ctrl-C a while after, unless
// that is 0. It returns what the terminal shows of what is said beside.
func atTerminal(t *testing.T, dir string, wait time.Duration, args ...string) (shown string, took time.Duration, err error) {
	t.Helper()
	c := program(dir, args...)
	c.Stdout = &bytes.Buffer{}
	began := time.Now()
	screen, err := pty.StartWithSize(c, &pty.Winsize{Rows: 24, Cols: 100})
	if err != nil {
		t.Fatal(err)
	}
	var reading sync.WaitGroup
	var seen bytes.Buffer
	reading.Go(func() { seen.ReadFrom(screen) }) // its end is an error on some systems
	if wait > 0 {
		time.Sleep(wait)
		screen.Write([]byte{3})
	}
	err = c.Wait()
	took = time.Since(began)
	reading.Wait()
	screen.Close()
	return seen.String(), took, err
}

// TestCtrlC lets every long command run at a terminal, where it shows how far it
// is and how long it will take, into a pipe, where it shows nothing of it, and up
// to a Ctrl-C at some moment: no part of a file is left, the book holds, and the
// same once more succeeds.
func TestCtrlC(t *testing.T) {
	toolcheck.Long(t)
	from := t.TempDir()
	manyEntries(t, from, 300)
	for _, line := range []string{"studio key new", "paint all --medium oil", "panel publish all", "studio new --empty --book new.sqlite"} {
		runs(t, from, strings.Fields(line+" --clock-is-right")...)
	}
	journal, err := program(from, "export").Output()
	if err != nil {
		t.Fatal(err)
	}
	writeTo(t, filepath.Join(from, "journal.json"), journal)
	before := holds(t, filepath.Join(from, "studio.sqlite"))
	far := regexp.MustCompile(`\d+% \|.*\(\d+/\d+\) \[\d+s:\d+s\]`) // gone and left
	mixed := regexp.MustCompile(`\[\d+s:\d+s\](\^C)?[^\r^]`)
	for _, x := range []struct {
		line  string
		adds  int64
		shows *regexp.Regexp
	}{
		{"import journal.json --highest none --book new.sqlite", 0, far},
		{"verify", 0, far},
		{"check all", 0, far},
		{"label all -o labels.pdf", 8, far},
		{"certificate 1 -o new.pdf", 1, regexp.MustCompile("drawing and signing the certificate …")}, // one paper: nothing to count
		{"site pages", 0, far},
		{"deposit bag", 0, far},
		{"backup copy.sqlite", 0, far},
	} {
		t.Run(x.line, func(t *testing.T) {
			t.Parallel()
			args := append(strings.Fields(x.line), "--clock-is-right")
			piped := program(copyOf(t, from), args...)
			if out, err := piped.CombinedOutput(); err != nil && !found(err) || x.shows.Match(out) || bytes.ContainsRune(out, '\r') {
				t.Fatalf("into a pipe: %v\n%s", err, out)
			}
			shown, took, err := atTerminal(t, copyOf(t, from), 0, args...)
			if err != nil && !found(err) || !x.shows.MatchString(shown) {
				t.Fatalf("%v\n%q", err, shown)
			}
			for range trials(t, 2, 2) {
				dir := copyOf(t, from)
				shown, _, err := atTerminal(t, dir, time.Duration(1+rand.Int64N(int64(took))), args...)
				var exit *exec.ExitError
				ended := err == nil || found(err)
				switch {
				case ended, !errors.As(err, &exit), !exit.Exited(): // ready before, or it did not listen yet
				case exit.ExitCode() != exitError || !strings.Contains(shown, "stopped: nothing was recorded"):
					t.Errorf("exit code %d, %q", exit.ExitCode(), shown)
				}
				if !ended && mixed.MatchString(shown) {
					t.Errorf("words behind the picture of progress: %q", shown)
				}
				everyFileWhole(t, dir)
				nothingUnfinished(t, dir)
				want := before
				if ended {
					want += x.adds
				}
				if got := holds(t, filepath.Join(dir, "studio.sqlite")); got != want {
					t.Errorf("%d entries, want %d: %q", got, want, shown)
				}
				if out, err := program(dir, args...).CombinedOutput(); !ended && err != nil && !found(err) {
					t.Errorf("the same once more: %v\n%s", err, out)
				}
				if t.Failed() {
					return
				}
			}
		})
	}
}

// found reports that a command did its work and says that something falls short.
func found(err error) bool {
	exit, ok := errors.AsType[*exec.ExitError](err)
	return ok && exit.ExitCode() == exitFinding
}

// nothingUnfinished demands that no temporary file or folder is there.
func nothingUnfinished(t *testing.T, dir string) {
	t.Helper()
	filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasPrefix(d.Name(), safefile.Prefix) {
			t.Errorf("left behind: %s", p)
		}
		return nil
	})
	if left, _ := filepath.Glob(filepath.Join(dir, "*-journal")); left != nil {
		t.Errorf("left behind: %v", left)
	}
}
