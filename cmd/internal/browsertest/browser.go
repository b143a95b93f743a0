// Package browsertest is for tests only: it opens what the program serves and
// writes in Chromium. A test binary has one program and one browser; each tab
// is somebody else's, without the cookies of the others.
package browsertest

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"

	"backleaf/record/toolcheck"
)

var ends []func()

// AtEnd does something when all tests are over.
func AtEnd(f func()) { ends = append(ends, f) }

// Main runs the tests, then ends the browser and removes the program.
func Main(m *testing.M) {
	code := m.Run()
	for _, end := range ends {
		end()
	}
	os.Exit(code)
}

var program = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "backleaf-browser")
	if err != nil {
		return "", err
	}
	AtEnd(func() { os.RemoveAll(dir) })
	file := filepath.Join(dir, "backleaf")
	out, err := exec.Command("go", "build", "-o", file, "backleaf/cmd/backleaf").CombinedOutput()
	if err != nil {
		err = fmt.Errorf("%w\n%s", err, out)
	}
	return file, err
})

// Program is the command, built once.
func Program(t testing.TB) string {
	t.Helper()
	file, err := program()
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// Command runs the program as a person in Dublin would type, and returns what
// it says.
func Command(t testing.TB, args ...string) string {
	t.Helper()
	cmd := exec.Command(Program(t), args...)
	cmd.Env = append(os.Environ(), "TZ=Europe/Dublin")
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("backleaf %s: %v\n%s", strings.Join(args, " "), err, out)
	}
	return string(out)
}

// Far is a name of this machine that is no secure context for a browser.
const Far = "far.example"

var chromium = sync.OnceValues(func() (context.Context, error) {
	path, err := exec.LookPath("chromium")
	if err != nil {
		return nil, err
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.Flag("lang", "en-GB"),
		chromedp.Flag("host-resolver-rules", "MAP "+Far+" 127.0.0.1"), chromedp.Flag("allow-file-access-from-files", false))
	all, end := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, endFirst := chromedp.NewContext(all)
	AtEnd(func() { endFirst(); end() })
	return ctx, chromedp.Do(ctx)
})

// started is the browser, or the test is skipped or fails: to start one takes long.
func started(t testing.TB) context.Context {
	t.Helper()
	toolcheck.Long(t)
	toolcheck.Require(t, "chromium")
	ctx, err := chromium()
	if err != nil {
		t.Fatal(err)
	}
	return ctx
}
