package safefile_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"backleaf/record/safefile"
)

func put(t *testing.T, path, text string) string {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func holds(path string) string {
	data, err := os.ReadFile(path)
	if err != nil {
		return "nothing"
	}
	return string(data)
}

func TestMove(t *testing.T) {
	dir := t.TempDir()
	from, to := put(t, filepath.Join(dir, "from"), "secret"), filepath.Join(dir, "to")
	if err := safefile.Move(from, to); err != nil || holds(from) != "nothing" || holds(to) != "secret" {
		t.Errorf("%v, %s, %s", err, holds(from), holds(to))
	}
	put(t, from, "other")
	if err := safefile.Move(from, to); !errors.Is(err, fs.ErrExist) || holds(from) != "other" || holds(to) != "secret" {
		t.Errorf("a name that is taken: %v, %s, %s", err, holds(from), holds(to))
	}
	if err := safefile.Move(filepath.Join(dir, "no"), filepath.Join(dir, "new")); !errors.Is(err, fs.ErrNotExist) || holds(filepath.Join(dir, "new")) != "nothing" {
		t.Errorf("nothing to move: %v", err)
	}
	if err := os.Symlink(from, filepath.Join(dir, "link")); err != nil {
		t.Fatal(err)
	}
	if err := safefile.Move(filepath.Join(dir, "link"), filepath.Join(dir, "new")); err == nil {
		t.Error("a link was moved")
	}
}

// Broken off at each step, the file is there under one of its names, and moving
// again ends it.
func TestMoveFaults(t *testing.T) {
	for stop := 0; ; stop++ {
		dir := t.TempDir()
		from, to := put(t, filepath.Join(dir, "from"), "secret"), filepath.Join(dir, "to")
		n := 0
		restore := safefile.SetFault(func(string, string) error {
			if n++; n > stop {
				return errors.New("killed")
			}
			return nil
		})
		err := safefile.Move(from, to)
		restore()
		if err == nil {
			if stop < 4 {
				t.Errorf("only %d steps could be broken", stop)
			}
			return
		}
		if holds(from) != "secret" && holds(to) != "secret" {
			t.Fatalf("step %d: lost", stop)
		}
		if holds(from) == "secret" {
			err = safefile.Move(from, to)
		} else {
			err = nil // only the disk did not confirm it
		}
		if err != nil || holds(from) != "nothing" || holds(to) != "secret" {
			t.Errorf("step %d, once more: %v, %s, %s", stop, err, holds(from), holds(to))
		}
	}
}

func TestMoveAtOnce(t *testing.T) {
	for range 100 {
		dir := t.TempDir()
		from, to := put(t, filepath.Join(dir, "from"), "secret"), filepath.Join(dir, "to")
		var all sync.WaitGroup
		for range 4 {
			all.Go(func() {
				if err := safefile.Move(from, to); err != nil && !errors.Is(err, fs.ErrNotExist) {
					t.Error(err)
				}
			})
		}
		all.Wait()
		if holds(from) != "nothing" || holds(to) != "secret" {
			t.Fatalf("%s, %s", holds(from), holds(to))
		}
	}
}

func TestAlone(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("folders have no locks")
	}
	dir := t.TempDir()
	var inside, most atomic.Int32
	var all sync.WaitGroup
	for range 20 {
		all.Go(func() {
			if err := safefile.Alone(dir, func() error {
				most.Store(max(most.Load(), inside.Add(1)))
				time.Sleep(time.Millisecond)
				inside.Add(-1)
				return nil
			}); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	if most.Load() != 1 {
		t.Errorf("%d at once", most.Load())
	}
	if err := safefile.Alone(dir, func() error { return fs.ErrClosed }); err != fs.ErrClosed {
		t.Error(err)
	}
}
