package benchpage_test

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"
	"time"

	"backleaf/cmd/internal/benchpage"
	"backleaf/record/toolcheck"
)

func itoa(n int64) string { return strconv.FormatInt(n, 10) }

// request sends a request with headers as a browser or a stranger sets them.
func (p *place) request(method, path, body string, headers ...string) (int, string) {
	p.Helper()
	r, err := http.NewRequest(method, p.url+path, strings.NewReader(body))
	if err != nil {
		p.Fatal(err)
	}
	for i := 0; i < len(headers); i += 2 {
		if r.Header.Set(headers[i], headers[i+1]); headers[i] == "Host" {
			r.Host = headers[i+1]
		}
	}
	return p.answer(client().Do(r))
}

const formType = "application/x-www-form-urlencoded"

// Strangers are refused, and nothing is written: a form of another site, a name
// that is not this computer's (DNS rebinding), a path out of the pages.
func TestGuards(t *testing.T) {
	p := in(t, 3, nil)
	f := write(p.form("/act/coat?batch=may&panel=1-3", sealing)).Encode()
	before := p.size()
	for _, c := range []struct {
		name, method, path, body string
		headers                  []string
		want                     int
	}{
		{"a form of another site", "POST", "/act/coat", f, []string{"Content-Type", formType, "Sec-Fetch-Site", "cross-site"}, 403},
		{"a form of another site, old browser", "POST", "/act/coat", f, []string{"Content-Type", formType, "Origin", "https://elsewhere.example"}, 403},
		{"a form from a page without origin", "POST", "/act/coat", f, []string{"Content-Type", formType, "Origin", "null"}, 403},
		{"another host", "GET", "/", "", []string{"Host", "rebound.example"}, 421},
		{"another host with the port", "GET", "/", "", []string{"Host", "rebound.example:" + p.url[strings.LastIndexByte(p.url, ':')+1:]}, 421},
		{"another host that writes", "POST", "/act/coat", f, []string{"Content-Type", formType, "Host", "rebound.example"}, 421},
		{"out of the pages", "GET", "/..%2f..%2fetc%2fpasswd", "", nil, 404},
		{"out of the photographs", "GET", "/photograph/..%2f..%2fstudio.sqlite", "", nil, 404},
		{"out of the papers", "GET", "/paper/..%2fstudio.sqlite", "", nil, 404},
		{"the book itself", "GET", "/studio.sqlite", "", nil, 404},
		{"too large a form", "POST", "/act/coat", "note=" + strings.Repeat("x", 300<<10), []string{"Content-Type", formType}, 413},
		{"another method", "DELETE", "/act/coat", "", nil, 405},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got, body := p.request(c.method, c.path, c.body, c.headers...); got != c.want || strings.Contains(body, "SQLite") {
				t.Errorf("%d, want %d: %.300s", got, c.want, body)
			}
		})
	}
	if p.size() != before {
		t.Errorf("%d entries were written", p.size()-before)
	}
	if status, _ := p.request("POST", "/act/coat", f, "Content-Type", formType, "Origin", p.url); status != http.StatusSeeOther {
		t.Errorf("the page itself cannot write: %d", status)
	}
}

// Every answer forbids script within a page and being framed; recorded text is
// text.
func TestHostileText(t *testing.T) {
	p := in(t, 3, nil)
	evil := `"><script>alert(1)</script><img src=x onerror=alert(1)>{{.}}`
	f := write(p.form("/act/describe?panel=1", url.Values{"title": {evil}, "panel": {"1"}, "ticks": {"1"}}))
	if status, _, page := p.post("/act/describe", f); status != http.StatusSeeOther {
		t.Fatalf("%d\n%s", status, page)
	}
	for _, path := range []string{"/", "/panel/MR26-0001-F", "/finish/MR26-0001-F", "/panels", "/batch/may", "/find?q=" + url.QueryEscape(evil), "/entry/" + itoa(p.size()), "/act/describe?panel=1", "/act/coat?batch=" + url.QueryEscape(evil) + "&panel=1&back=" + url.QueryEscape(evil)} {
		r, err := client().Get(p.url + path)
		_, page := p.answer(r, err)
		if strings.Contains(page, "<script>alert") || strings.Contains(page, "<img src=x") {
			t.Errorf("%s: the text is markup", path)
		}
		policy := r.Header.Get("Content-Security-Policy")
		if !strings.Contains(policy, "default-src 'none'") || strings.Contains(policy, "unsafe") || !strings.Contains(policy, "frame-ancestors 'none'") || r.Header.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s: %s", path, policy)
		}
		if strings.Contains(page, " style=") || strings.Contains(page, " onclick=") || strings.Contains(page, "<style") {
			t.Errorf("%s: style or script within the page", path)
		}
	}
	f = write(p.form("/act/note?panel=1&back="+url.QueryEscape("//elsewhere.example/"), url.Values{"text": {"x"}, "panel": {"1"}, "back": {"//elsewhere.example/"}}))
	if _, to, _ := p.post("/act/note", f); !strings.HasPrefix(to, "/batch/") {
		t.Errorf("sent on to %q", to)
	}
}

// Without being paired a device reads and writes nothing; ten thousand wrong
// codes let nobody in.
func TestPairing(t *testing.T) {
	var code string
	p := in(t, 3, func(s *benchpage.Server) {
		s.Door = &benchpage.Door{Clock: s.Studio.Clock, Show: func(c string) { code = c }, Book: s.Studio.Book, Home: func(*http.Request) bool { return false }}
		if err := s.Door.Open(context.Background()); err != nil {
			t.Fatal(err)
		}
	})
	before := p.size()
	for _, path := range []string{"/", "/panels", "/now", "/panel/MR26-0001-F", "/bench.js", "/posted/x", "/devices", "/preview/label?panel=1"} {
		if status, body := p.get(path); status != http.StatusSeeOther || strings.Contains(body, "MR26") {
			t.Errorf("%s: %d %.200s", path, status, body)
		}
	}
	if status, _, _ := p.post("/act/coat", write(sealing)); status != http.StatusSeeOther || p.size() != before {
		t.Errorf("an unpaired device writes: %d", status)
	}
	shown := 0
	last := code
	guesses := 500
	if toolcheck.Thorough() {
		guesses = 10_000
	}
	for i := range guesses {
		p.add(100 * time.Millisecond) // faster than any finger, slow enough for the bucket
		guess := fmt.Sprintf("%06d", i)
		if guess == code { // a guess may be right once in a million
			continue
		}
		if status, _, _ := p.post("/pair", url.Values{"code": {guess}}); status != http.StatusForbidden {
			t.Fatalf("guess %s: %d", guess, status)
		}
		if code != last {
			last, shown = code, shown+1
		}
	}
	took := time.Duration(guesses) * 100 * time.Millisecond
	if minutes := int(took / time.Minute); shown < minutes || shown > 2+minutes+minutes/10 { // every five wrong ones, at most once a minute, or after ten
		t.Errorf("%d codes were shown in %s", shown, took)
	}
	p.add(2 * time.Minute)
	c := client()
	r, err := c.PostForm(p.url+"/pair", url.Values{"code": {code}, "name": {"<b>wall</b>"}})
	if status, body := p.answer(r, err); status != http.StatusSeeOther {
		t.Fatalf("the right code: %d %s", status, body)
	}
	if k := r.Cookies(); len(k) != 1 || !k[0].HttpOnly || k[0].SameSite != http.SameSiteStrictMode {
		t.Errorf("cookie %+v", k)
	}
	_, page := p.answer(c.Get(p.url + "/devices"))
	if !strings.Contains(page, "&lt;b&gt;wall&lt;/b&gt;") {
		t.Errorf("the device is not listed:\n%s", page)
	}
	digest := page[strings.Index(page, `name="device" value="`)+21:][:64]
	if status, _ := p.answer(c.PostForm(p.url+"/devices", url.Values{"device": {digest}})); status != http.StatusSeeOther {
		t.Errorf("ending the pairing: %d", status)
	}
	if status, _ := p.answer(c.Get(p.url + "/panels")); status != http.StatusSeeOther {
		t.Errorf("after its pairing was ended it still reads: %d", status)
	}
}

// A page for reading writes nothing and shows nothing private.
func TestReadOnly(t *testing.T) {
	p := in(t, 3, func(s *benchpage.Server) { s.ReadOnly = true })
	before := p.size()
	if status, _, _ := p.post("/act/coat", write(sealing)); status != http.StatusUnprocessableEntity || p.size() != before {
		t.Errorf("%d", status)
	}
	for _, path := range []string{"/", "/panel/MR26-0001-F?private=yes", "/batch/may", "/shelf"} {
		if _, page := p.get(path); strings.Contains(page, "/act/") || strings.Contains(page, "<form method=\"post\" action=\"/panel") {
			t.Errorf("%s offers to write", path)
		}
	}
}

// Clients that send a head, a form or a picture by the byte hold nothing up.
func TestSlowBody(t *testing.T) {
	p := in(t, 3, nil)
	f := write(p.form("/act/coat?batch=may&panel=1-3", sealing))
	host := strings.TrimPrefix(p.url, "http://")
	var slow net.Conn
	for _, head := range []string{
		"GET / HTTP/1.1\r\nHost: %s\r\nX-Slow: ",
		"POST /scan HTTP/1.1\r\nHost: %s\r\nContent-Type: multipart/form-data; boundary=x\r\nContent-Length: 5000000\r\n\r\n--x",
		"POST /act/coat HTTP/1.1\r\nHost: %s\r\nContent-Type: " + formType + "\r\nContent-Length: 100000\r\n\r\nnote=",
	} {
		for range 40 { // more than are answered at once
			c, err := net.Dial("tcp", host)
			if err != nil {
				t.Fatal(err)
			}
			defer c.Close()
			fmt.Fprintf(c, head, host)
			p.add(time.Second) // for the bucket
			slow = c
		}
	}
	time.Sleep(200 * time.Millisecond)
	p.add(10 * time.Second)
	began := time.Now()
	status, _ := p.get("/")
	written, _, page := p.post("/act/coat", f)
	if status != http.StatusOK || written != http.StatusSeeOther || time.Since(began) > 3*time.Second {
		t.Errorf("%d and %d after %s\n%s", status, written, time.Since(began), page)
	}
	if !toolcheck.Thorough() {
		return
	}
	slow.SetReadDeadline(time.Now().Add(2 * time.Minute)) // it ends after formWithin; a loaded machine may take longer
	answer, err := io.ReadAll(slow)
	if err != nil || !strings.Contains(string(answer), " 413 ") && !strings.Contains(string(answer), " 429 ") { // 429: many were read at one time of the clock
		t.Errorf("a form that does not end is answered %q, %v", answer, err)
	}
}

// A form too many is refused without waiting for the rest of it.
func TestRefusedAtOnce(t *testing.T) {
	p := in(t, 3, nil)
	host := strings.TrimPrefix(p.url, "http://")
	answers := make(chan string, 100)
	for range cap(answers) {
		c, err := net.Dial("tcp", host)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		fmt.Fprintf(c, "POST /act/coat HTTP/1.1\r\nHost: %s\r\nContent-Type: "+formType+"\r\nContent-Length: 100000\r\n\r\nnote=", host)
		go func() {
			line, _ := bufio.NewReader(c).ReadString('\n')
			answers <- line
		}()
	}
	if first := <-answers; !strings.Contains(first, " 429 ") { // before the first form is given up
		t.Errorf("%q", first)
	}
}
