package benchpage_test

import (
	"net/http"
	"net/url"
	"strings"
	"sync"
	"testing"
	"time"
)

// A form that is sent twice, at once, or again after a reload writes once, and
// every time shows where it is written.
func TestOnce(t *testing.T) {
	p := in(t, 3, nil)
	f := write(p.form("/act/coat?batch=may&panel=1-3", sealing))
	before := p.size()
	var wait sync.WaitGroup
	for range 8 { // taps of a nervous finger
		wait.Go(func() {
			if status, to, body := p.post("/act/coat", f); status != http.StatusSeeOther || !strings.HasPrefix(to, "/batch/may?w=") {
				t.Errorf("%d, %q\n%s", status, to, body)
			}
		})
	}
	wait.Wait()
	if n := p.size() - before; n != 1 {
		t.Errorf("%d entries", n)
	}
	_, page := p.get("/batch/may?w=" + f.Get("token"))
	if !strings.Contains(page, "Written down") || !strings.Contains(page, "Take it back") {
		t.Errorf("not said, or not offered to be taken back:\n%s", page)
	}
	if _, answer := p.get("/posted/" + f.Get("token")); !strings.Contains(answer, `"written":true`) {
		t.Errorf("asked whether it was written: %s", answer)
	}
	if _, answer := p.get("/posted/another"); !strings.Contains(answer, `"written":false`) {
		t.Errorf("asked whether another was written: %s", answer)
	}
	p.add(61 * time.Second)
	if _, page := p.get("/batch/may?w=" + f.Get("token")); strings.Contains(page, "Take it back") {
		t.Error("it is still offered after a minute")
	}
}

// What is written is what was shown: where anything changed since, it is shown
// again and nothing is written, also when another tablet wrote it meanwhile.
func TestWhatWasShown(t *testing.T) {
	p := in(t, 3, nil)
	mine, other := p.form("/act/coat?batch=may&panel=1-3", sealing), p.form("/act/coat?batch=may&panel=1-3", sealing)
	changed := write(mine)
	changed.Set("amount", "90 g")
	before := p.size()
	if status, _, page := p.post("/act/coat", changed); status != http.StatusOK || !strings.Contains(page, "Something changed since you looked") || !strings.Contains(page, "90") {
		t.Errorf("%d\n%s", status, page)
	}
	if p.size() != before {
		t.Fatal("it was written all the same")
	}
	if status, _, _ := p.post("/act/coat", write(other)); status != http.StatusSeeOther {
		t.Fatal("the other tablet cannot write")
	}
	status, _, page := p.post("/act/coat", write(mine))
	if status != http.StatusOK || !strings.Contains(page, "within the hour") || p.size() != before+1 {
		t.Errorf("the second tablet is not told that it is done already: %d, %d entries\n%s", status, p.size()-before, page)
	}
	again := p.look("/act/coat", mine)
	if status, _, _ := p.post("/act/coat", write(again)); status != http.StatusSeeOther || p.size() != before+2 {
		t.Error("it cannot be written although it was shown and is meant")
	}
}

// Looking writes nothing, whatever is looked at.
func TestLookingWritesNothing(t *testing.T) {
	p := in(t, 3, nil)
	before := p.size()
	for _, path := range []string{"/", "/panels", "/shelf", "/batch/may", "/panel/MR26-0001-F", "/finish/MR26-0001-F", "/find?q=may", "/find?q=1+how+large", "/entry/1", "/act/cut", "/act/lot",
		"/act/coat?batch=may&panel=1-3&task=seal", "/act/label?panel=1-3", "/act/certificate?panel=1", "/preview/label?panel=1-3", "/dossier/1", "/act/withdraw?entry=2", "/act/amend?entry=2"} {
		if status, page := p.get(path); status != http.StatusOK || strings.Contains(page, "newer:") {
			t.Errorf("%s: %d\n%.2000s", path, status, page)
		}
	}
	for _, path := range []string{"/act/coat", "/act/cloth", "/act/trim", "/act/sand", "/act/inspect", "/act/discard", "/act/label", "/act/handover", "/act/describe"} {
		if status, _, page := p.post(path, url.Values{"panel": {"1"}, "on": {"front"}, "because": {"x"}, "how": {"sale"}, "title": {"x"}}); status != http.StatusOK {
			t.Errorf("%s: %d\n%.2000s", path, status, page)
		}
	}
	if p.size() != before {
		t.Errorf("%d entries were written", p.size()-before)
	}
}

// An entry that is taken back asks for the reason of the person.
func TestTakeBack(t *testing.T) {
	p := in(t, 3, nil)
	p.post("/act/coat", write(p.form("/act/coat?batch=may&panel=1-3", sealing)))
	seq := p.size()
	f := p.form("/act/withdraw?entry="+itoa(seq)+"&panel=1-3", url.Values{"entry": {itoa(seq)}, "panel": {"1", "2", "3"}, "ticks": {"1"}, "why": {"wrong panels"}})
	if status, _, page := p.post("/act/withdraw", write(f)); status != http.StatusSeeOther || p.size() != seq+1 {
		t.Errorf("%d\n%s", status, page)
	}
	f = p.form("/act/withdraw?entry="+itoa(seq+1), url.Values{"entry": {itoa(seq + 1)}})
	if status, _, _ := p.post("/act/withdraw", write(f)); status != http.StatusOK || p.size() != seq+1 {
		t.Errorf("withdrawn without a reason: %d", status)
	}
}
