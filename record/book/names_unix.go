//go:build unix

package book

import (
	"os"
	"syscall"
)

// names counts the names of a file.
func names(path string) (uint64, error) {
	info, err := os.Stat(path)
	if err != nil {
		return 0, err
	}
	if s, ok := info.Sys().(*syscall.Stat_t); ok {
		return uint64(s.Nlink), nil
	}
	return 1, nil
}
