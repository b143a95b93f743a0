package benchpage_test

import (
	"bufio"
	"context"
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	cdlog "github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"backleaf/record/toolcheck"
)

var built bool

// program builds the command once.
var program = sync.OnceValues(func() (string, error) {
	built = true
	dir, err := os.MkdirTemp("", "backleaf-bench")
	if err != nil {
		return "", err
	}
	file := filepath.Join(dir, "backleaf")
	out, err := exec.Command("go", "build", "-o", file, "backleaf/cmd/backleaf").CombinedOutput()
	if err != nil {
		err = fmt.Errorf("%w\n%s", err, out)
	}
	return file, err
})

func TestMain(m *testing.M) {
	code := m.Run()
	endBrowser()
	if built {
		file, _ := program()
		os.RemoveAll(filepath.Dir(file))
	}
	os.Exit(code)
}

// command runs the program on a book, as a person would type.
func command(t testing.TB, book string, args ...string) string {
	t.Helper()
	file, err := program()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(file, append([]string{"--book", book}, args...)...)
	cmd.Env = append(os.Environ(), "TZ=Europe/Dublin")
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("backleaf %s: %v\n%s", strings.Join(args, " "), err, out)
	}
	return string(out)
}

// running is the program that serves the page.
type running struct {
	cmd  *exec.Cmd
	url  string
	said chan string // further lines
}

// serve starts the program as a page.
func serve(t testing.TB, book string, args ...string) *running {
	t.Helper()
	file, err := program()
	if err != nil {
		t.Fatal(err)
	}
	b := &running{cmd: exec.Command(file, append([]string{"--book", book, "bench"}, args...)...), said: make(chan string, 1000)}
	out, err := b.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	b.cmd.Stderr = b.cmd.Stdout
	if err := b.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	if !lines.Scan() {
		t.Fatal("the page did not start")
	}
	b.url = strings.TrimSuffix(strings.TrimSpace(lines.Text()), "/")
	go func() {
		for lines.Scan() {
			b.said <- lines.Text()
		}
	}()
	t.Cleanup(b.kill)
	for range 100 {
		if r, err := http.Get(b.url + "/now"); err == nil {
			r.Body.Close()
			return b
		}
		time.Sleep(20 * time.Millisecond)
	}
	t.Fatalf("nothing answers at %s", b.url)
	return nil
}

// kill ends the program as a power cut would.
func (b *running) kill() {
	b.cmd.Process.Kill()
	b.cmd.Wait()
}

// tablet is a browser with one page.
type tablet struct {
	testing.TB
	ctx      context.Context
	url      string
	keyboard bool
	taps     int // taps, or keys
	mu       sync.Mutex
	faults   []string // errors and reports of the console
}

var (
	chromium   context.Context
	endBrowser = func() {}
)

// browser starts Chromium, once for all tests; every tablet is a page of its own.
func browser(t testing.TB) context.Context {
	t.Helper()
	toolcheck.Long(t)
	if chromium != nil {
		return chromium
	}
	path := toolcheck.OneOf(t, "chromium", "chromium-browser", "google-chrome")
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.Flag("lang", "en-GB"))
	all, endAll := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, end := chromedp.NewContext(all)
	endBrowser = func() { end(); endAll() }
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	chromium = ctx
	return ctx
}

// open opens a tablet of a size in pixels.
func open(t testing.TB, url string, width, height int64, dark bool) *tablet {
	t.Helper()
	ctx, end := chromedp.NewContext(browser(t))
	t.Cleanup(end)
	p := &tablet{TB: t, ctx: ctx, url: url}
	if err := chromedp.Do(ctx); err != nil { // the page lives as long as the context it is first used with
		t.Fatal(err)
	}
	p.do(chromedp.EmulateViewport(width, height))
	err := chromedp.Listen(ctx, func(ev any) {
		p.mu.Lock()
		defer p.mu.Unlock()
		switch e := ev.(type) {
		case *cdlog.EventEntryAdded:
			p.faults = append(p.faults, e.Entry.Text+" "+e.Entry.URL)
		case *runtime.EventExceptionThrown:
			p.faults = append(p.faults, e.ExceptionDetails.Text)
		}
	})
	if err == nil {
		scheme := map[bool]string{false: "light", true: "dark"}[dark]
		_, err = chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
	}
	if err != nil {
		t.Fatal(err)
	}
	p.to("/")
	return p
}

// until waits until a script is true.
func (p *tablet) until(script string) {
	p.Helper()
	for range 1500 {
		if ok, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](script)); err == nil && ok {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	p.Fatalf("not after fifteen seconds: %s\n%s", script, p.text())
}

// says waits until the page says something.
func (p *tablet) says(words string) {
	p.Helper()
	p.until("document.body.innerText.includes(" + strconv.Quote(words) + ")")
}

func (p *tablet) do(as ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	ctx, end := context.WithTimeout(p.ctx, time.Minute)
	defer end()
	if err := chromedp.Do(ctx, as...); err != nil {
		p.Fatal(err)
	}
}

// to opens an address.
func (p *tablet) to(path string) {
	p.Helper()
	p.do(chromedp.Navigate(p.url + path))
	p.settle()
}

// value evaluates a script.
func value[T any](p *tablet, script string) T {
	p.Helper()
	v, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](script))
	if err != nil {
		p.Fatalf("%s: %v", script, err)
	}
	return v
}

// text is what stands on the page.
func (p *tablet) text() string { return value[string](p, "document.body.innerText") }

// settle waits until the page is there and nothing is on its way.
func (p *tablet) settle() {
	p.Helper()
	for range 500 {
		ready, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](`document.readyState === "complete" && !document.querySelector("[aria-busy=true]")`))
		if err == nil && ready {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	p.Fatalf("the page does not come to rest: %s", p.text())
}

// shot writes a picture of the whole page.
func (p *tablet) shot(file string) {
	p.Helper()
	png, err := chromedp.Run(p.ctx, chromedp.FullScreenshot(100))
	if err == nil {
		err = os.WriteFile(file, png, 0o644)
	}
	if err != nil {
		p.Fatal(err)
	}
}
