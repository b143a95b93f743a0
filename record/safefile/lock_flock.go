//go:build darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd

package safefile

import (
	"os"
	"syscall"
)

// nonblock opens a pipe that nobody writes to without waiting for a writer.
const nonblock = syscall.O_NONBLOCK

// hold locks f for as long as it is open; a killed process lets go of it.
func hold(f *os.File) bool {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil
}

// wait locks f as hold does, when the others are done.
func wait(f *os.File) error {
	for {
		if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX); err != syscall.EINTR {
			return err
		}
	}
}

// takeOver locks the lock file name if no living process holds it.
func takeOver(name string) (release func(), ok bool) {
	f, err := os.OpenFile(name, os.O_RDWR, 0)
	if err != nil {
		return nil, false
	}
	if !hold(f) || !stillThere(f) {
		f.Close()
		return nil, false
	}
	return func() { f.Close() }, true
}
