package benchpage_test

import (
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"backleaf/record/toolcheck"
)

// Five hundred readers and one who writes: each is served or told to come
// again, what was said to be written is written once, and memory is bounded.
func TestManyReaders(t *testing.T) {
	work := func(string) {
		p := in(t, 14, nil)
		before := p.size()
		var wait sync.WaitGroup
		var mu sync.Mutex
		var took []time.Duration
		refused, written := 0, int64(0)
		for range 500 {
			wait.Go(func() {
				c := client()
				for _, path := range []string{"/", "/batch/may", "/panel/MR26-0001-F", "/now"} {
					began := time.Now()
					r, err := c.Get(p.url + path)
					status, body := p.answer(r, err)
					mu.Lock()
					took = append(took, time.Since(began))
					switch {
					case status == http.StatusServiceUnavailable:
						refused++
					case status != http.StatusOK || !strings.Contains(body, "MR26") && !strings.Contains(body, "size"):
						t.Errorf("%s: %d", path, status)
					}
					mu.Unlock()
				}
			})
		}
		wait.Go(func() {
			for i := range 20 {
				f := url.Values{"text": {fmt.Sprintf("note %d", i)}, "panel": {"1"}, "ticks": {"1"}, "token": {fmt.Sprintf("many-%d", i)}}
				f = write(p.look("/act/note", f))
				if status, _, _ := p.post("/act/note", f); status == http.StatusSeeOther {
					written++
				}
				p.add(time.Second)
			}
		})
		wait.Wait()
		p.wrote(before, written, "by one among five hundred")
		if written == 0 {
			t.Error("the one who writes is never served")
		}
		slices.Sort(took)
		fmt.Printf("%d pages to 500 readers, %d refused, half of them within %v, the slowest %v; %d of 20 notes written\n",
			len(took), refused, took[len(took)/2].Round(time.Millisecond), took[len(took)-1].Round(time.Millisecond), written)
	}
	if toolcheck.InChild(t, work) {
		return
	}
	toolcheck.Long(t)
	mb, cpu := toolcheck.Cost(t, "many")
	t.Logf("%d MB and %v of processor time, clients too", mb, cpu.Round(time.Second))
	if mb > 300 {
		t.Errorf("%d MB", mb)
	}
}

// The page and the command line write at the same time into one book: nothing
// is lost, nothing stands twice, and neither waits long.
func TestBothDoors(t *testing.T) {
	toolcheck.Long(t)
	p := in(t, 3, nil)
	p.add(time.Since(p.read()))
	path := p.session.Book.Path()
	command(t, path, "list") // it is built
	var wait sync.WaitGroup
	var slowest [2]time.Duration
	for door, do := range []func(i int){
		func(i int) {
			f := p.look("/act/note", url.Values{"text": {fmt.Sprintf("page %d", i)}, "panel": {"1"}, "ticks": {"1"}, "token": {fmt.Sprintf("door-%d", i)}})
			for range 5 {
				if status, _, page := p.post("/act/note", write(f)); status == http.StatusSeeOther {
					return
				} else if !strings.Contains(page, "Something changed") {
					t.Errorf("%d %.300s", status, page)
					return
				}
				f = p.look("/act/note", f)
			}
			t.Errorf("page %d is never written", i)
		},
		func(i int) { command(t, path, "note", "1", fmt.Sprintf("command %d", i)) },
	} {
		wait.Go(func() {
			for i := range 12 {
				began := time.Now()
				do(i)
				slowest[door] = max(slowest[door], time.Since(began))
			}
		})
	}
	wait.Wait()
	all := command(t, path, "export")
	for i := range 12 {
		for _, door := range []string{"page", "command"} {
			if n := strings.Count(all, fmt.Sprintf(`"%s %d"`, door, i)); n != 1 {
				t.Errorf("%s %d stands %d times", door, i, n)
			}
		}
	}
	if out := command(t, path, "verify"); strings.Contains(out, "not hold") {
		t.Error(out)
	}
	t.Logf("at the slowest %v by the page, %v by a command", slowest[0].Round(time.Millisecond), slowest[1].Round(time.Millisecond))
	if slowest[0] > time.Minute || slowest[1] > time.Minute {
		t.Errorf("waited %v", slowest)
	}
}
