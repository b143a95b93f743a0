package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The same story at the same time gives the same certificate.
func TestCertificateIsRepeatable(t *testing.T) {
	ctx := context.Background()
	var files [2][]byte
	for i := range files {
		dir := t.TempDir()
		now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
		a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard, env: func(string) string { return "" }, now: func() time.Time { return now }, random: fixedSalt{}}
		for _, line := range [][]string{{"studio", "new", "--maker", "Anna", "--mark", "KB", "--zone", "UTC"}, {"panel", "add", "--size", "20 x 20 cm x 6 mm"},
			{"paint", "0001", "--medium", "oil"}, {"certificate", "0001", "-o", filepath.Join(dir, "c.pdf")}} {
			if code := a.run(ctx, append([]string{"--book", filepath.Join(dir, "studio.sqlite")}, line...)); code != 0 {
				t.Fatalf("%v: exit code %d", line, code)
			}
		}
		var err error
		if files[i], err = os.ReadFile(filepath.Join(dir, "c.pdf")); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(files[0], files[1]) {
		t.Error("two runs give other bytes")
	}
}
