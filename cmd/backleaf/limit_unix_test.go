//go:build unix

package main

import (
	"os"
	"os/exec"
	"os/signal"
	"strconv"
	"syscall"
)

// A test may give a child a limit for the size of its files: writes beyond it
// fail as on a full disk.
func init() {
	n, err := strconv.ParseUint(os.Getenv("TEST_FILE_LIMIT"), 10, 64)
	if err != nil {
		return
	}
	signal.Ignore(syscall.SIGXFSZ)
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: n, Max: n}); err != nil {
		panic(err)
	}
}

// asNobody lets a command run as a user without rights, for whom a folder can
// be read-only even when the tests run as root.
func asNobody(c *exec.Cmd) {
	if os.Getuid() == 0 {
		c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
	}
}

// interrupt sends what Ctrl-C sends.
func interrupt(c *exec.Cmd) { c.Process.Signal(os.Interrupt) }
