package paper_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/record/paper"
)

// tool returns the path of an outside program that a test needs. Where it is
// not installed the test is skipped, or fails if BACKLEAF_REQUIRE_TOOLS is 1.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		missing(t, name)
	}
	return path
}

func missing(t *testing.T, what string) {
	t.Helper()
	if os.Getenv("BACKLEAF_REQUIRE_TOOLS") == "1" {
		t.Fatalf("%s is not installed, and BACKLEAF_REQUIRE_TOOLS=1 asks for it", what)
	}
	t.Skipf("%s is not installed", what)
}

// run runs an outside program and returns what it printed.
func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	var out, complaints strings.Builder
	cmd := exec.Command(tool(t, name), args...)
	cmd.Stdout, cmd.Stderr = &out, &complaints
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s %s: %v\n%s%s", name, strings.Join(args, " "), err, out.String(), complaints.String())
	}
	return out.String()
}

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

// output runs an outside program that may answer with an error.
func output(t *testing.T, name string, args ...string) (string, error) {
	t.Helper()
	out, err := exec.Command(tool(t, name), args...).CombinedOutput()
	return string(out), err
}
