package benchpage_test

import (
	"backleaf/cmd/internal/browsertest"
	"bufio"
	"net/http"
	"os/exec"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

func TestMain(m *testing.M) { browsertest.Main(m) }

// command runs the program on a book, as a person would type.
func command(t testing.TB, book string, args ...string) string {
	t.Helper()
	return browsertest.Command(t, append([]string{"--book", book}, args...)...)
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
	b := &running{cmd: exec.Command(browsertest.Program(t), append([]string{"--book", book, "bench"}, args...)...), said: make(chan string, 1000)}
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
	for range 1000 {
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
	*browsertest.Tab
	url      string
	keyboard bool
	taps     int // taps, or keys
}

// open opens a tablet of a size in pixels.
func open(t testing.TB, url string, width, height int64, dark bool) *tablet {
	t.Helper()
	p := &tablet{Tab: browsertest.Open(t, width, height, map[bool]string{false: "light", true: "dark"}[dark]), url: url}
	p.to("/")
	return p
}

func (p *tablet) until(script string)                     { p.Helper(); p.Until(script) }
func (p *tablet) do(as ...chromedp.Action[chromedp.Void]) { p.Helper(); p.Do(as...) }
func (p *tablet) text() string                            { p.Helper(); return p.Text() }
func (p *tablet) shot(file string)                        { p.Helper(); p.Shot(file) }
func value[T any](p *tablet, script string) T             { p.Helper(); return browsertest.Value[T](p.Tab, script) }

// says waits until the page says something.
func (p *tablet) says(words string) {
	p.Helper()
	p.until("document.body.innerText.includes(" + strconv.Quote(words) + ")")
}

// to opens an address.
func (p *tablet) to(path string) {
	p.Helper()
	p.do(chromedp.Navigate(p.url + path))
	p.settle()
}

// settle waits until the page is there and nothing is on its way.
func (p *tablet) settle() {
	p.Helper()
	for range 5000 {
		ready, err := chromedp.Run(p.Context, chromedp.Evaluate[bool](`document.readyState === "complete" && !document.querySelector("[aria-busy=true]")`))
		if err == nil && ready {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	p.Fatalf("the page does not come to rest: %s", p.text())
}
