//go:build unix

package safefile_test

import (
	"net"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"backleaf/record/safefile"
)

// Nobody writes into the pipe, and zeros never end: neither is waited for.
func TestNothingWaits(t *testing.T) {
	dir := t.TempDir()
	pipe, socket := filepath.Join(dir, "pipe"), filepath.Join(dir, "socket")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Skip(err)
	}
	l, err := net.Listen("unix", socket)
	if err != nil {
		t.Skip(err)
	}
	defer l.Close()
	link := filepath.Join(dir, "link")
	if err := os.Symlink(pipe, link); err != nil {
		t.Fatal(err)
	}
	for path, kind := range map[string]string{pipe: "a pipe", link: "a pipe", socket: "a socket", "/dev/zero": "a device"} {
		done := make(chan error, 1)
		go func() {
			_, err := safefile.Read(path, 1<<20)
			done <- err
		}()
		select {
		case err := <-done:
			if err == nil || !strings.Contains(err.Error(), "it is "+kind) {
				t.Errorf("%s: %v", path, err)
			}
		case <-time.After(10 * time.Second):
			t.Fatalf("%s: still waiting", path)
		}
	}
}

// What was a file when it was looked at may be a pipe when it is opened.
func TestSwappedForAPipe(t *testing.T) {
	dir := t.TempDir()
	path, pipe := filepath.Join(dir, "file"), filepath.Join(dir, "pipe")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Skip(err)
	}
	done := make(chan error, 1)
	go func() {
		_, err := safefile.OpenLookingAt(path, pipe)
		done <- err
	}()
	select {
	case err := <-done:
		if err == nil || !strings.Contains(err.Error(), "it is a pipe") {
			t.Errorf("%v", err)
		}
	case <-time.After(10 * time.Second):
		t.Fatal("still waiting")
	}
}
