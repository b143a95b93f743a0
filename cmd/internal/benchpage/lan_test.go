package benchpage_test

import (
	"net"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"backleaf/record/toolcheck"
)

// On a network of this computer a device is asked for the code that the
// computer shows, then reads and writes, is listed, and is let in no more once
// its pairing is ended; also after the program was started again.
func TestNetwork(t *testing.T) {
	toolcheck.Long(t)
	path := in(t, 3, nil).session.Book.Path()
	b := serve(t, path, "--lan")
	address, code := "", ""
	for line := range lines(b.said, 30*time.Second) {
		if h := strings.TrimSuffix(strings.TrimPrefix(strings.TrimSpace(line), "http://"), "/"); h != line && address == "" {
			if host, _, err := net.SplitHostPort(h); err == nil && net.ParseIP(host) != nil && net.ParseIP(host).To4() != nil {
				address = "http://" + h
			}
		}
		if m := regexp.MustCompile(`\b\d{6}\b`).FindString(line); strings.Contains(line, "code") && m != "" {
			code = m
			break
		}
	}
	if address == "" {
		t.Skip("this computer is in no network")
	}
	p := &place{TB: t, url: address}
	if r, err := client().Get(address + "/panels"); err != nil || r.StatusCode != http.StatusSeeOther || r.Header.Get("Location") != "/pair" {
		t.Fatalf("not asked to pair: %v %v", r, err)
	}
	c := client()
	r, err := c.PostForm(address+"/pair", url.Values{"code": {code}, "name": {"phone"}})
	if status, body := p.answer(r, err); status != http.StatusSeeOther {
		t.Fatalf("the code %q: %d %s", code, status, body)
	}
	if status, page := p.answer(c.Get(address + "/panels")); status != http.StatusOK || !strings.Contains(page, "0001") {
		t.Errorf("paired, it reads %d", status)
	}
	b.kill()
	b = serve(t, path, "--lan", "--port", address[strings.LastIndexByte(address, ':')+1:])
	if status, _ := p.answer(c.Get(address + "/panels")); status != http.StatusOK {
		t.Errorf("after a new start it reads %d", status)
	}
	_, page := p.answer(c.Get(address + "/devices"))
	at := strings.Index(page, `name="device" value="`)
	if at < 0 || !strings.Contains(page, "phone") {
		t.Fatalf("it is not listed:\n%s", page)
	}
	p.answer(c.PostForm(address+"/devices", url.Values{"device": {page[at+21:][:64]}}))
	if status, _ := p.answer(c.Get(address + "/panels")); status != http.StatusSeeOther {
		t.Errorf("its pairing ended, it reads %d", status)
	}
	b.kill()

	serve(t, path, "--lan", "--read-only", "--port", address[strings.LastIndexByte(address, ':')+1:])
	if status, _ := p.answer(c.Get(address + "/panels")); status != http.StatusSeeOther {
		t.Errorf("for reading only, a stranger reads %d", status)
	}
}

// lines gives what a program says until it is silent for so long.
func lines(said <-chan string, patience time.Duration) func(func(string) bool) {
	return func(yield func(string) bool) {
		for {
			select {
			case l := <-said:
				if !yield(l) {
					return
				}
			case <-time.After(patience):
				return
			}
		}
	}
}
