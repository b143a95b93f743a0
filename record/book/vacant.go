package book

import (
	"fmt"
	"io/fs"
	"os"

	"backleaf/record/safefile"
)

// Vacant makes sure that nothing is at path, nor what a book once there left
// behind: SQLite would read its log into a new book. The error wraps
// fs.ErrExist.
func Vacant(path string) error {
	for _, end := range []string{"-wal", "-shm", "-journal"} {
		if _, err := os.Lstat(path + end); err == nil {
			return fmt.Errorf("cannot write %s: %s of an earlier book lies there and may hold its last entries: %w", path, path+end, fs.ErrExist)
		}
	}
	return safefile.Vacant(path)
}
