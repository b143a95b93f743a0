package benchpage_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"backleaf/record/toolcheck"
)

// The program is killed while a form is on its way, and started again: the
// form was written or it was not, which can be asked; sent again it is written
// once. The book holds.
func TestKilled(t *testing.T) {
	toolcheck.Long(t)
	path := in(t, 3, nil).session.Book.Path()
	const rounds = 16
	lost := 0
	for round := range rounds {
		b := serve(t, path)
		f := url.Values{"text": {"round " + itoa(int64(round))}, "panel": {"1"}, "ticks": {"1"}, "token": {"killed-" + itoa(int64(round))}}
		p := &place{TB: t, url: b.url}
		f = write(p.look("/act/note", f))
		done := make(chan bool)
		go func() {
			r, err := client().PostForm(b.url+"/act/note", f)
			if err == nil {
				r.Body.Close()
			}
			done <- err == nil && r.StatusCode == http.StatusSeeOther
		}()
		time.Sleep(time.Duration(round%8) * 40 * time.Millisecond)
		b.kill()
		told := <-done
		again := serve(t, path)
		p.url = again.url
		_, answer := p.get("/posted/" + f.Get("token"))
		was := strings.Contains(answer, `"written":true`)
		if told && !was {
			t.Errorf("round %d: it was said to be written and is not", round)
		}
		if !was {
			lost++
		}
		if status, _, page := p.post("/act/note", f); status != http.StatusSeeOther {
			t.Errorf("round %d: sent again: %d %.500s", round, status, page)
		}
		again.kill()
		if n := strings.Count(command(t, path, "export"), "round "+itoa(int64(round))+`"`); n != 1 {
			t.Errorf("round %d: written %d times", round, n)
		}
	}
	command(t, path, "verify")
	t.Logf("%d rounds, in %d of them it was not written before the program was killed", rounds, lost)
}
