package benchpage_test

import (
	"context"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"backleaf/cmd/internal/benchpage"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/shelf"
)

// clock is a clock that a test sets.
type clock struct {
	mu  sync.Mutex
	now time.Time
}

func (c *clock) read() time.Time { c.mu.Lock(); defer c.mu.Unlock(); return c.now }
func (c *clock) add(d time.Duration) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.now = c.now.Add(d)
}

// place is a page over a book of its own.
type place struct {
	testing.TB
	*clock
	session *studio.Session
	page    *benchpage.Server
	url     string
	between func(http.ResponseWriter, *http.Request, http.Handler) // nil: nothing is between client and page
}

// in makes a studio with a shelf and so many panels of the batch may, and
// serves it.
func in(t testing.TB, panels int, with func(*benchpage.Server)) *place {
	t.Helper()
	p := &place{TB: t, clock: &clock{now: time.Date(2026, 5, 2, 14, 0, 0, 0, time.UTC)}}
	ctx, path := context.Background(), filepath.Join(t.TempDir(), "studio.sqlite")
	if err := studio.Create(ctx, path, p.read, nil, record.Studio{Maker: "Odile Marrens", Mark: "MR", Place: "Saltmere", Zone: "Europe/Dublin"}); err != nil {
		t.Fatal(err)
	}
	b, err := book.Open(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	p.session = &studio.Session{Book: b, Clock: p.read}
	v, err := p.session.Look(ctx, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	at := record.Moment(v.Local())
	if _, err := shelf.Take(ctx, v, at, shelf.Starter()); err != nil {
		t.Fatal(err)
	}
	var cut record.Cut
	if err := cut.Size.UnmarshalText([]byte("30 x 40 cm x 3 mm")); err != nil {
		t.Fatal(err)
	}
	cut.Batch, cut.Board = "may", "birch-ply-3mm"
	var cuts []record.Cut
	for range panels {
		cuts = append(cuts, cut)
	}
	if v, err = p.session.Look(ctx, nil, nil); err == nil && panels > 0 {
		_, err = bench.Cut(ctx, v, at, cuts)
	}
	if err != nil {
		t.Fatal(err)
	}
	p.page = &benchpage.Server{Studio: p.session, Key: func(context.Context) (*seal.Key, error) { return nil, nil }}
	s := httptest.NewUnstartedServer(nil)
	p.page.Hosts = []string{s.Listener.Addr().String()}
	if with != nil {
		with(p.page)
	}
	h, err := p.page.Handler()
	if err != nil {
		t.Fatal(err)
	}
	s.Config = benchpage.Serving(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if p.between != nil {
			p.between(w, r, h)
		} else {
			h.ServeHTTP(w, r)
		}
	}))
	s.Start()
	t.Cleanup(s.Close)
	p.url = s.URL
	return p
}

// size is how many entries the book holds.
func (p *place) size() int64 {
	p.Helper()
	n, _, err := p.session.Book.Tree(context.Background())
	if err != nil {
		p.Fatal(err)
	}
	return n
}

// client is a browser that follows no redirect by itself.
func client() *http.Client {
	jar, _ := cookiejar.New(nil)
	return &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
}

// get reads a page.
func (p *place) get(path string) (status int, body string) {
	p.Helper()
	return p.answer(client().Get(p.url + path))
}

func (p *place) answer(r *http.Response, err error) (int, string) {
	p.Helper()
	if err != nil {
		p.Fatal(err)
	}
	defer r.Body.Close()
	b, err := io.ReadAll(r.Body)
	if err != nil {
		p.Fatal(err)
	}
	return r.StatusCode, string(b)
}

// post sends a form.
func (p *place) post(path string, f url.Values) (status int, to, body string) {
	p.Helper()
	r, err := client().PostForm(p.url+path, f)
	status, body = p.answer(r, err)
	return status, r.Header.Get("Location"), body
}

var hidden = regexp.MustCompile(`<input type="hidden" name="(token|seen)" value="([^"]*)">`)

// form opens a form and fills it; what is hidden in it is in it too.
func (p *place) form(path string, f url.Values) url.Values {
	p.Helper()
	_, page := p.get(path)
	out := url.Values{}
	for _, m := range hidden.FindAllStringSubmatch(page, -1) {
		out.Set(m[1], m[2])
	}
	for k, v := range f {
		out[k] = v
	}
	if out.Get("token") == "" {
		p.Fatalf("%s is no form:\n%s", path, page)
	}
	return p.look(path, out)
}

// look sends a form to be looked at, as the script does after every change.
func (p *place) look(path string, f url.Values) url.Values {
	p.Helper()
	path, _, _ = strings.Cut(path, "?")
	_, _, page := p.post(path, f)
	for _, m := range hidden.FindAllStringSubmatch(page, -1) {
		f.Set(m[1], m[2])
	}
	return f
}

// sealing is the form of a coat on the panels.
var sealing = url.Values{"as": {"sealer"}, "with": {"acrylic-sealer"}, "on": {"front", "back", "edges"}, "panel": {"1", "2", "3"}, "ticks": {"1"}, "batch": {"may"}}

func write(f url.Values) url.Values {
	out := url.Values{"go": {"write"}}
	for k, v := range f {
		out[k] = v
	}
	return out
}
