// Package safefile writes files and folders whole or not at all. What is
// written goes to an unfinished place beside its target, is flushed to the
// disk and then takes its name in one step: whoever looks, and whenever the
// power fails, sees the old state or the new one, never a part.
//
// The unfinished place is a hidden folder named ".backleaf-unfinished-…". If a
// run is killed it stays behind; the next write into the same parent folder
// removes it, after making sure by a lock that no living process holds it.
//
// What somebody else may have put there is read through [Open] and [Read], which
// neither wait for a pipe nor fill the memory.
//
// TestFaults breaks every step in turn, TestKilled kills a writer in the
// middle, TestDiskFull lets a real write fail for want of room.
package safefile

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"syscall"
)

// Write writes the file at path, replacing a regular file that stands there.
// fill writes the content to f, or to the path f.Name() if a library insists
// on a path (the file is empty). mode is lessened by the umask.
func Write(path string, mode fs.FileMode, fill func(f *os.File) error) error {
	switch info, err := os.Lstat(path); {
	case err == nil && !info.Mode().IsRegular():
		return fmt.Errorf("cannot write %s: it is there already and is no regular file", path)
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	return put(path, mode, fill, os.Rename)
}

// Create is Write for a file that must not be there yet: the error then wraps
// fs.ErrExist and what is there stays untouched, also if it appeared while
// fill was running.
func Create(path string, mode fs.FileMode, fill func(f *os.File) error) error {
	if err := Vacant(path); err != nil {
		return err
	}
	return put(path, mode, fill, renameNew)
}

// Vacant refuses a path where something stands; the error wraps fs.ErrExist.
func Vacant(path string) error {
	switch info, err := os.Lstat(path); {
	case err != nil:
		return nil
	case info.IsDir():
		return fmt.Errorf("cannot write %s: %w", path, folderThere{})
	}
	return fmt.Errorf("cannot write %s: %w", path, fs.ErrExist)
}

// folderThere is fs.ErrExist of a folder.
type folderThere struct{}

func (folderThere) Error() string       { return "a folder of that name is there already" }
func (folderThere) Is(other error) bool { return other == fs.ErrExist }

// Renew is Write for a file that is not there yet, or that holds an older
// paper of the same kind.
func Renew(path, kind string, data []byte) error {
	if err := Renewable(path, kind); err != nil {
		return err
	}
	return Write(path, 0o644, Bytes(data))
}

// Renewable refuses, as Create does, a path where something stands that is no
// paper of a kind, told by a text that papers of the kind hold.
func Renewable(path, kind string) error {
	old, err := Read(path, maxRenewed)
	if errors.Is(err, fs.ErrNotExist) || err == nil && bytes.Contains(old, []byte(kind)) {
		return nil
	}
	if info, no := os.Lstat(path); err == nil || no == nil && info.IsDir() {
		return Vacant(path)
	}
	return fmt.Errorf("cannot write %s: %w", path, err)
}

const maxRenewed = 64 << 20

// Bytes fills a file with these.
func Bytes(data []byte) func(*os.File) error {
	return func(f *os.File) error { _, err := f.Write(data); return err }
}

func put(path string, mode fs.FileMode, fill func(*os.File) error, take func(from, to string) error) error {
	if info, err := os.Stat(filepath.Dir(path)); errors.Is(err, fs.ErrNotExist) || err == nil && !info.IsDir() {
		return fmt.Errorf("cannot write %s: there is no folder %s", path, filepath.Dir(path))
	}
	return unfinished(path, func(dir string) error {
		temp := filepath.Join(dir, filepath.Base(path))
		if err := writeTemp(temp, mode, fill); err != nil {
			return err
		}
		if err := fault("rename", path); err != nil {
			return err
		}
		return take(temp, path)
	})
}

func writeTemp(temp string, mode fs.FileMode, fill func(*os.File) error) error {
	if err := fault("create", temp); err != nil {
		return err
	}
	f, err := os.OpenFile(temp, os.O_RDWR|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return err
	}
	defer f.Close() // the error that matters is that of the second Close below
	if err := fill(f); err != nil {
		return err
	}
	if err := errors.Join(fault("sync", temp), f.Sync()); err != nil {
		return err
	}
	return errors.Join(fault("close", temp), f.Close())
}

// renameNew renames without ever replacing: a hard link fails if the name is
// taken. A file system without links (a memory stick) gets an empty file that
// reserves the name.
func renameNew(from, to string) error {
	err := os.Link(from, to)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	f, err := os.OpenFile(to, os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	f.Close()
	if err := os.Rename(from, to); err != nil {
		return errors.Join(err, os.Remove(to))
	}
	return nil
}

// CreateDir makes the folder path, which must not be there yet (the error then
// wraps fs.ErrExist). fill writes into dir, the unfinished folder; everything
// in it is flushed to the disk before it takes its name.
func CreateDir(path string, fill func(dir string) error) error {
	if err := Vacant(path); err != nil {
		return err
	}
	return unfinished(path, func(dir string) error {
		temp := filepath.Join(dir, filepath.Base(path))
		if err := errors.Join(fault("create", temp), os.Mkdir(temp, 0o777)); err != nil {
			return err
		}
		if err := fill(temp); err != nil {
			return err
		}
		if err := syncTree(temp); err != nil {
			return err
		}
		if err := fault("rename", path); err != nil {
			return err
		}
		// A rename may replace an empty folder and nothing else; so if
		// another process took the name meanwhile nothing can be lost.
		if _, err := os.Lstat(path); err == nil {
			return fs.ErrExist
		}
		return os.Rename(temp, path)
	})
}

func syncTree(dir string) error {
	return filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir():
			return SyncDir(path)
		case !d.Type().IsRegular():
			return nil
		}
		f, err := os.OpenFile(path, os.O_RDWR, 0)
		if err != nil {
			return err
		}
		return errors.Join(fault("sync", path), f.Sync(), f.Close())
	})
}

// SyncDir flushes a folder, so that names made in it outlive a power failure.
// Where the system offers no such thing it does nothing.
func SyncDir(dir string) error {
	if err := fault("syncdir", dir); err != nil {
		return err
	}
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer f.Close()
	if err := f.Sync(); err != nil && !errors.Is(err, syscall.EINVAL) && !errors.Is(err, errors.ErrUnsupported) {
		return err
	}
	return nil
}

// fault lets a test break the named step; see export_test.go.
var fault = func(step, path string) error { return nil }
