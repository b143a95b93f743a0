//go:build !(darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd)

package safefile

import (
	"os"
	"runtime"
)

// nonblock is not needed: here a pipe is no file with a path.
const nonblock = 0

// hold has nothing to do: on Windows an open file cannot be removed, which is
// lock enough.
func hold(*os.File) bool { return true }

// wait cannot lock a folder here.
func wait(*os.File) error { return nil }

// takeOver removes the lock file name, which Windows refuses while a living
// process has it open. Elsewhere nothing is ever taken over.
func takeOver(name string) (release func(), ok bool) {
	return func() {}, runtime.GOOS == "windows" && os.Remove(name) == nil
}
