package main

import (
	"bufio"
	"context"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The page at the bench says as it starts that it writes nothing, where it does not.
func TestBenchStarts(t *testing.T) {
	path := filepath.Join(t.TempDir(), "studio.sqlite")
	typedAt(time.Now(), "--book", path, "studio", "new", "--empty")
	for _, more := range []string{"", "--read-only"} {
		ctx, stop := context.WithCancel(context.Background())
		said, saying := io.Pipe()
		a := &app{in: strings.NewReader(""), out: io.Discard, err: saying, env: func(string) string { return "" }, now: time.Now}
		go func() {
			a.run(ctx, append([]string{"--book", path, "bench", "--port", "0"}, strings.Fields(more)...))
			saying.Close()
		}()
		text := ""
		for s := bufio.NewScanner(said); s.Scan(); text += s.Text() + "\n" {
			if strings.Contains(s.Text(), "Ctrl-C ends the page") {
				stop()
			}
		}
		stop()
		if !strings.Contains(text, "Ctrl-C ends the page") || strings.Contains(text, "read-only") != (more != "") {
			t.Errorf("bench %s: %s", more, text)
		}
	}
}
