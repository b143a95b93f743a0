package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/record/seal"
	"backleaf/record/toolcheck"
)

// typedIn runs one command line on the book in dir, with what stands on its
// input, and fails the test unless it is done.
func typedIn(t *testing.T, dir, in string, args ...string) string {
	t.Helper()
	var out bytes.Buffer
	a := &app{in: strings.NewReader(in), out: &out, err: io.Discard, env: func(string) string { return "" },
		now: func() time.Time { return time.Date(2026, 6, 1, 14, 5, 0, 0, time.UTC) }}
	if code := a.run(context.Background(), append([]string{"--book", filepath.Join(dir, "studio.sqlite")}, args...)); code != exitDone {
		t.Fatalf("%v: exit code %d: %s", args, code, out.String())
	}
	return out.String()
}

// What the recovery sheet says, in letters and in its symbol, gives the key
// back, and the sheet is for its owner alone.
func TestRecoverySheet(t *testing.T) {
	toolcheck.Require(t, "pdftoppm", "pdftotext", "zbarimg")
	dir := t.TempDir()
	typedIn(t, dir, "", "studio", "new", "--maker", "Ilze Kraukle", "--mark", "KB")
	typedIn(t, dir, "", "studio", "key", "new")
	key, sheet := filepath.Join(dir, "studio.key"), filepath.Join(dir, "sheet.pdf")
	typedIn(t, dir, "", "studio", "key", "recovery-sheet", sheet)
	want, err := os.ReadFile(key)
	if err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", "-layout", sheet, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	var letters []string
	for _, line := range strings.Split(string(out), "\n") {
		if f := strings.Fields(line); len(f) == 7 && len(f[0]) == 4 {
			letters = append(letters, line)
		}
	}
	if err := exec.Command("pdftoppm", "-r", "150", "-png", "-singlefile", sheet, filepath.Join(dir, "sheet")).Run(); err != nil {
		t.Fatal(err)
	}
	symbol, err := exec.Command("zbarimg", "-q", "--raw", filepath.Join(dir, "sheet.png")).Output()
	if err != nil {
		t.Fatal(err)
	}
	for what, text := range map[string]string{"letters": strings.Join(letters, "\n"), "symbol": string(symbol)} {
		if err := os.Remove(key); err != nil {
			t.Fatal(err)
		}
		typedIn(t, dir, text, "studio", "key", "recover")
		if got, err := os.ReadFile(key); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s: %v", what, err)
		}
	}
	k, _, err := seal.LoadKey(key, nil)
	if err != nil || !strings.Contains(string(out), k.Public().Fingerprint().Groups()[:19]) {
		t.Errorf("the sheet does not name the fingerprint: %v", err)
	}
}
