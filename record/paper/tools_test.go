package paper_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/record/paper"
)

func save(t *testing.T, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	// Pages to be looked at: BACKLEAF_KEEP names a folder that keeps them.
	if dir := os.Getenv("BACKLEAF_KEEP"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, strings.ReplaceAll(t.Name(), "/", "-")+"-"+name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

var day = time.Date(2026, 3, 14, 9, 26, 53, 0, time.FixedZone("", 3600))

func compose(t testing.TB, width float64, spans ...paper.Span) paper.Block {
	t.Helper()
	b, err := paper.Compose(width, spans...)
	if err != nil {
		t.Fatal(err)
	}
	return b
}
