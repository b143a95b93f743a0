package sitecheck_test

import (
	"context"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	cdlog "github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"backleaf/record/toolcheck"
)

// program builds the command once.
var program = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "backleaf-site")
	if err != nil {
		return "", err
	}
	file := filepath.Join(dir, "backleaf")
	return file, exec.Command("go", "build", "-o", file, "backleaf/cmd/backleaf").Run()
})

func TestMain(m *testing.M) {
	code := m.Run()
	if file, err := program(); err == nil {
		os.RemoveAll(filepath.Dir(file))
	}
	os.Exit(code)
}

// command runs the program as a person would type.
func command(t testing.TB, args ...string) string {
	t.Helper()
	file, err := program()
	if err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(file, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("backleaf %s: %v\n%s", strings.Join(args, " "), err, out)
	}
	return string(out)
}

// host is a plain file server, with some files as a forger would have them.
type host struct {
	*httptest.Server
	mu     sync.Mutex
	forged map[string][]byte // by path below the site
}

// prefix is where the demonstration's link leads on its host.
const prefix = "/P/"

func serve(t testing.TB, dir string) *host {
	h := &host{forged: map[string][]byte{}}
	files := http.StripPrefix(strings.TrimSuffix(prefix, "/"), http.FileServer(http.Dir(dir)))
	h.Server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Cache-Control", "no-store") // what is forged next has the same address
		h.mu.Lock()
		data, ok := h.forged[strings.TrimPrefix(r.URL.Path, prefix)]
		h.mu.Unlock()
		if ok {
			if strings.HasSuffix(r.URL.Path, "/") {
				w.Header().Set("Content-Type", "text/html; charset=utf-8")
			}
			w.Write(data)
			return
		}
		files.ServeHTTP(w, r)
	}))
	t.Cleanup(h.Close)
	return h
}

// put serves other bytes in the place of some files, and nothing else.
func (h *host) put(forged map[string][]byte) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.forged = forged
}

// browser starts Chromium. What the host is called in far.example is not
// secure.
func browser(t testing.TB) context.Context {
	t.Helper()
	path := toolcheck.OneOf(t, "chromium", "chromium-browser", "google-chrome")
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.Flag("lang", "en-GB"),
		chromedp.Flag("host-resolver-rules", "MAP far.example 127.0.0.1"), chromedp.Flag("allow-file-access-from-files", false))
	ctx, end := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(end)
	ctx, end = chromedp.NewContext(ctx)
	t.Cleanup(end)
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// tab is a page in the browser.
type tab struct {
	testing.TB
	ctx    context.Context
	mu     sync.Mutex
	faults []string // errors and reports of the console
	asked  []string // addresses
}

func open(t testing.TB, chromium context.Context, width, height int64, scheme string) *tab {
	t.Helper()
	ctx, end := chromedp.NewContext(chromium)
	t.Cleanup(end)
	p := &tab{TB: t, ctx: ctx}
	err := chromedp.Do(ctx, chromedp.EmulateViewport(width, height)) // the tab lives as long as the context of what is first done in it
	if err != nil {
		t.Fatal(err)
	}
	err = chromedp.Listen(ctx, func(ev any) {
		p.mu.Lock()
		defer p.mu.Unlock()
		switch e := ev.(type) {
		case *cdlog.EventEntryAdded:
			p.faults = append(p.faults, e.Entry.Text+" "+e.Entry.URL)
		case *runtime.EventExceptionThrown:
			p.faults = append(p.faults, e.ExceptionDetails.Text)
		case *network.EventRequestWillBeSent:
			p.asked = append(p.asked, e.Request.URL)
		}
	})
	if err == nil {
		_, err = chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
	}
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func (p *tab) do(as ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	ctx, end := context.WithTimeout(p.ctx, time.Minute)
	defer end()
	if err := chromedp.Do(ctx, as...); err != nil {
		p.Fatal(err)
	}
}

// value evaluates a script.
func value[T any](p *tab, script string) T {
	p.Helper()
	v, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](script))
	if err != nil {
		p.Fatalf("%s: %v", script, err)
	}
	return v
}

// until waits for a script to be true.
func (p *tab) until(script string) {
	p.Helper()
	for range 1000 {
		if ok, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](script)); err == nil && ok {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	p.Fatalf("not after ten seconds: %s\n%s", script, value[string](p, "document.body.innerText"))
}

// checked opens a page and returns what its check says, once it is done.
func (p *tab) checked(url string) string {
	p.Helper()
	p.do(chromedp.Navigate(url))
	p.until(`document.readyState === "complete" && document.querySelector("#check .verdict") && document.querySelector("#check .verdict").textContent !== words.checking`)
	return value[string](p, `document.querySelector("#check").innerText`)
}

// shot writes a picture of the whole page.
func (p *tab) shot(file string) {
	p.Helper()
	png, err := chromedp.Run(p.ctx, chromedp.FullScreenshot(100))
	if err == nil {
		err = os.WriteFile(file, png, 0o644)
	}
	if err != nil {
		p.Fatal(err)
	}
}
