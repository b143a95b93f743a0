package safefile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// Move gives a regular file another name in the same file system, and never
// replaces what has that name: the error then wraps fs.ErrExist. Whatever happens
// the file has one of the names, or for a moment both; Move again then ends what
// was begun. Where several processes move several files through one name, each
// must do so [Alone].
func Move(from, to string) error {
	if err := move(filepath.Clean(from), filepath.Clean(to)); err != nil {
		return fmt.Errorf("cannot move %s to %s: %w", from, to, err)
	}
	return nil
}

func move(from, to string) error {
	info, err := os.Lstat(from)
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() {
		return fmt.Errorf("it is %s and no regular file", Kind(info.Mode()))
	}
	if err := fault("link", to); err != nil {
		return err
	}
	if err := renameNew(from, to); err != nil && !moved(info, to) {
		return err
	}
	if err := SyncDir(filepath.Dir(to)); err != nil {
		return err
	}
	if err := fault("remove", from); err != nil {
		return err
	}
	if err := os.Remove(from); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return SyncDir(filepath.Dir(from))
}

// moved reports that a file has its new name already: an earlier run, or another
// process at the same time, gave it.
func moved(info fs.FileInfo, to string) bool {
	there, err := os.Lstat(to)
	return err == nil && os.SameFile(info, there)
}

// Alone does work while no other process does its own Alone in the same folder;
// it waits for that. It needs locks of folders, which Windows lacks: there, and
// where a file system has no locks, nothing is waited for.
func Alone(dir string, work func() error) error {
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer f.Close() // which unlocks it
	if err := wait(f); err != nil && !errors.Is(err, errors.ErrUnsupported) && !errors.Is(err, syscall.EBADF) && !errors.Is(err, syscall.ENOLCK) {
		return fmt.Errorf("cannot wait for others in %s: %w", dir, err)
	}
	return work()
}
