package safefile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
)

// Prefix begins the name of every unfinished folder.
const Prefix = ".backleaf-unfinished-"

const lockName = "lock"

// unfinished runs work in a scratch folder beside path and flushes the name
// that it made.
func unfinished(path string, work func(dir string) error) error {
	if path == "" {
		return errors.New("cannot write the file: it has no name")
	}
	path = filepath.Clean(path)
	err := Scratch(path, func(dir string) error {
		if err := work(dir); err != nil {
			return err
		}
		if err := SyncDir(filepath.Dir(path)); err != nil {
			return fmt.Errorf("it is written, but the disk did not confirm it: %w", err)
		}
		return nil
	})
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	return nil
}

// Scratch gives work a folder of its own beside path, on the same disk, for
// what is not to stay, and removes it afterwards, whatever happened. If the run
// is killed, the next write into the same parent folder removes it.
func Scratch(path string, work func(dir string) error) error {
	parent := filepath.Dir(filepath.Clean(path))
	removeAbandoned(parent)
	dir, lock, err := makeUnfinished(parent)
	if err != nil {
		return err
	}
	err = work(dir)
	// If this fails the next write tries again; it is no reason to call the
	// write failed.
	remove(dir)
	lock.Close()
	if runtime.GOOS == "windows" {
		os.RemoveAll(dir) // now that the lock is no longer open
	}
	return err
}

func makeUnfinished(parent string) (dir string, lock *os.File, err error) {
	for range 100 {
		if err := fault("mkdir", parent); err != nil {
			return "", nil, err
		}
		dir, err := os.MkdirTemp(parent, Prefix+"*")
		if err != nil {
			return "", nil, err
		}
		lock, err := os.OpenFile(filepath.Join(dir, lockName), os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
		if errors.Is(err, fs.ErrNotExist) {
			continue // another process took the still empty folder for an abandoned one
		}
		if err != nil {
			return "", nil, errors.Join(err, os.Remove(dir))
		}
		if hold(lock) && stillThere(lock) {
			return dir, lock, nil
		}
		lock.Close() // the same, a moment later
	}
	return "", nil, errors.New("other processes keep removing the unfinished folder")
}

func stillThere(lock *os.File) bool {
	held, err1 := lock.Stat()
	named, err2 := os.Stat(lock.Name())
	return err1 == nil && err2 == nil && os.SameFile(held, named)
}

// removeAbandoned clears what a killed run left. A failure is no error here:
// it is tidying up, and the write itself will tell what is wrong.
func removeAbandoned(parent string) {
	entries, err := os.ReadDir(parent)
	if err != nil {
		return
	}
	for _, e := range entries {
		if e.IsDir() && strings.HasPrefix(e.Name(), Prefix) {
			removeIfAbandoned(filepath.Join(parent, e.Name()))
		}
	}
}

func removeIfAbandoned(dir string) {
	name := filepath.Join(dir, lockName)
	info, err := os.Lstat(name)
	if errors.Is(err, fs.ErrNotExist) {
		os.Remove(dir) // only if it is empty
		return
	}
	if err != nil || !info.Mode().IsRegular() {
		return // not of our making
	}
	release, ok := takeOver(name)
	if !ok {
		return
	}
	remove(dir)
	release()
}

// remove takes dir away while its lock is held, and the lock last: without it
// a folder that is not empty is never taken for ours.
func remove(dir string) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return
	}
	for _, e := range entries {
		if e.Name() != lockName {
			os.RemoveAll(filepath.Join(dir, e.Name()))
		}
	}
	os.RemoveAll(dir)
}
