package main

import (
	"context"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A command that waits for its input ends when it is interrupted.
func TestInterruptedInput(t *testing.T) {
	path := filepath.Join(t.TempDir(), "studio.sqlite")
	typedAt(time.Now(), "--book", path, "studio", "new", "--empty")
	for _, args := range [][]string{{"--book", path, "import", "-"}, {"verify", "-"}} {
		in, typing := io.Pipe()
		defer typing.Close()
		ctx, stop := context.WithCancel(context.Background())
		var out, said strings.Builder
		a := &app{in: in, out: &out, err: &said, env: func(string) string { return "" }, now: time.Now}
		code := make(chan int, 1)
		go func() {
			code <- a.run(ctx, args)
			in.Close()
		}()
		if _, err := typing.Write([]byte("{")); err != nil { // it is reading
			t.Fatalf("%v: nothing was read: %s", args, said.String())
		}
		stop()
		select {
		case c := <-code:
			if c != exitError || !strings.Contains(said.String(), "stopped: nothing was recorded") {
				t.Errorf("%v: exit code %d, said %q", args, c, said.String())
			}
		case <-time.After(30 * time.Second):
			t.Fatalf("%v: still waiting", args)
		}
	}
}
