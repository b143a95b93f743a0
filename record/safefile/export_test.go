package safefile

import (
	"io/fs"
	"os"
)

// SetFault puts f before every step until the test calls the returned func.
func SetFault(f func(step, path string) error) (restore func()) {
	old := fault
	fault = f
	return func() { fault = old }
}

// OpenLookingAt opens path, but the look before it falls on another file.
func OpenLookingAt(looked, path string) (*os.File, error) { return open(swapped(looked), path, 10) }

type swapped string

func (s swapped) Stat(string) (fs.FileInfo, error) { return os.Stat(string(s)) }
func (s swapped) OpenFile(name string, flag int, perm fs.FileMode) (*os.File, error) {
	return os.OpenFile(name, flag, perm)
}
