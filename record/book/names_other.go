//go:build !unix

package book

import "os"

// names counts the names of a file, which is not asked here.
func names(path string) (uint64, error) {
	_, err := os.Stat(path)
	return 1, err
}
