package sitecheck_test

import (
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"

	"backleaf/cmd/internal/browsertest"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

func TestMain(m *testing.M) { browsertest.Main(m) }

// panel is the demonstration's painted one, as in its link.
const panel = "MR250003V"

var demo struct {
	sync.Once
	dir string
}

// demonstration is the invented studio and its site, made once and for no test
// to change.
func demonstration(t testing.TB) (dir, site string) {
	t.Helper()
	toolcheck.Long(t)
	demo.Do(func() {
		demo.dir, _ = os.MkdirTemp("", "backleaf-demo")
		browsertest.AtEnd(func() { os.RemoveAll(demo.dir) })
		browsertest.Command(t, "demo", filepath.Join(demo.dir, "demo"), "--quiet")
	})
	dir = filepath.Join(demo.dir, "demo")
	return dir, filepath.Join(dir, "site")
}

// copied is a demonstration that a test may change.
func copied(t testing.TB) (dir, site string, command func(args ...string)) {
	t.Helper()
	from, _ := demonstration(t)
	dir = filepath.Join(t.TempDir(), "demo")
	if err := os.CopyFS(dir, os.DirFS(from)); err != nil {
		t.Fatal(err)
	}
	return dir, filepath.Join(dir, "site"), func(args ...string) {
		t.Helper()
		browsertest.Command(t, append([]string{"--book", filepath.Join(dir, "studio.sqlite")}, args...)...)
	}
}

func read(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

var words = tell.English().Page.Checking

// says reports whether a text holds what the page says by a code, up to the
// first place in it.
func says(text, code string) bool {
	m, _, _ := strings.Cut(string(words[code]), "{")
	if m == "" {
		panic("no words for " + code)
	}
	return strings.Contains(text, strings.TrimSpace(m))
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

// page is the address of a panel's page.
func (h *host) page(panel string) string { return h.URL + prefix + panel + "/" }

// tab is one that checks pages.
type tab struct{ *browsertest.Tab }

func open(t testing.TB, width int64, scheme string) tab {
	t.Helper()
	return tab{browsertest.Open(t, width, 900, scheme)}
}

// to opens a page and waits until it is there.
func (p tab) to(url string) {
	p.Helper()
	p.Do(chromedp.Navigate(url))
	p.Until(`document.readyState === "complete"`)
}

// checked opens a page and returns what its check says, once it is done.
func (p tab) checked(url string) string {
	p.Helper()
	p.to(url)
	p.Until(`document.querySelector("#check .verdict") && document.querySelector("#check .verdict").textContent !== words.checking`)
	return value[string](p, `document.querySelector("#check").innerText`)
}

// brought waits for what the page says of files or texts that were brought.
func (p tab) brought() string {
	p.Helper()
	p.Until(`!!document.querySelector(".bring .results")`)
	return value[string](p, `document.querySelector(".bring .results").innerText`)
}

func value[T any](p tab, script string) T { return browsertest.Value[T](p.Tab, script) }

// printed is the text of a PDF file.
func printed(t testing.TB, pdf []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "printed.pdf")
	if err := os.WriteFile(path, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	return toolcheck.Run(t, "pdftotext", "-layout", path, "-")
}
