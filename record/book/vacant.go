package book

import (
	"fmt"
	"io/fs"
	"os"
)

// Vacant makes sure that nothing is at path, nor what a book once there left
// behind: SQLite would read its log into a new book. The error wraps
// fs.ErrExist.
func Vacant(path string) error {
	for _, end := range []string{"", "-wal", "-shm", "-journal"} {
		if _, err := os.Lstat(path + end); err == nil {
			return fmt.Errorf("cannot write %s: %s is there: %w", path, path+end, fs.ErrExist)
		}
	}
	return nil
}
