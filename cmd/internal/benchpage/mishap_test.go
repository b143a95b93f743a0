package benchpage_test

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"backleaf/record/toolcheck"
)

const (
	writeButton = `#said [value=write]`
	aCoat       = "/act/coat?batch=may&panel=1-3&task=seal&with=acrylic-sealer"
	aNote       = "/act/note?batch=may&panel=1"
)

// at is where the middle of a thing on the page is.
func (p *tablet) at(selector string) (x, y float64) {
	p.Helper()
	p.until(`!!document.querySelector(` + "`" + selector + "`" + `)`)
	at := value[[]float64](p, `(e => { e.scrollIntoView({block: "center", behavior: "instant"}); const r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })(document.querySelector(`+"`"+selector+"`"+`))`)
	return at[0], at[1]
}

// tapTwice taps twice as fast as can be.
func (p *tablet) tapTwice(selector string) {
	p.Helper()
	x, y := p.at(selector)
	p.do(chromedp.MouseClickXY(x, y), chromedp.MouseClickXY(x, y))
}

func (p *tablet) script(on bool) {
	p.Helper()
	if _, err := chromedp.Call(p.Context, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: !on}); err != nil {
		p.Fatal(err)
	}
}

// offline cuts the tablet off the network, or brings it back.
func (p *tablet) offline(yes bool) {
	p.Helper()
	_, err := chromedp.Call(p.Context, network.Enable, network.EnableParams{})
	if err == nil {
		_, err = chromedp.Call(p.Context, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*network.Conditions{
			{URLPattern: "", Offline: yes, Latency: 0, DownloadThroughput: -1, UploadThroughput: -1}}})
	}
	if err != nil {
		p.Fatal(err)
	}
}

// wrote holds that so many entries were written since.
func (p *place) wrote(since, want int64, when string) {
	p.Helper()
	if n := p.size() - since; n != want {
		p.Errorf("%s: %d entries, want %d", when, n, want)
	}
}

// Two taps in one, a reload and the way back write nothing twice, with script
// and without.
func TestTappedTwice(t *testing.T) {
	toolcheck.Long(t)
	s := in(t, 3, nil)
	p := open(t, s.url, 820, 1180, false)
	before := s.size()
	p.to(aCoat)
	p.tapTwice(writeButton)
	p.says("Take it back")
	s.wrote(before, 1, "two taps")
	p.do(chromedp.Reload())
	p.settle()
	p.says("Written down")
	s.wrote(before, 1, "a reload")
	p.do(chromedp.NavigateBack())
	p.settle()
	s.wrote(before, 1, "the way back")
	p.says("within the hour") // looked at anew: it is said to be done already
	p.do(chromedp.Reload())
	p.settle()
	s.wrote(before, 1, "a reload of the form")

	p.script(false)
	defer p.script(true)
	p.to(aNote + "&text=once")
	x, y := p.at(writeButton)
	p.do(chromedp.MouseClickXY(x, y), chromedp.MouseClickXY(x, y))
	for range 3000 {
		if s.size() > before+1 {
			break
		}
		time.Sleep(10 * time.Millisecond)
	}
	time.Sleep(200 * time.Millisecond)
	s.wrote(before, 2, "two taps without script")
	p.settle()
	p.do(chromedp.Reload())
	p.settle()
	s.wrote(before, 2, "a reload without script")
}

// What one tablet writes the other sees within seconds: on a page, and in a
// form, where what was typed stays.
func TestTwoTablets(t *testing.T) {
	toolcheck.Long(t)
	s := in(t, 3, nil)
	a, b, c := open(t, s.url, 820, 1180, false), open(t, s.url, 820, 1180, false), open(t, s.url, 390, 844, false)
	b.to("/batch/may")
	c.to(aCoat)
	c.fill("Wet amount, all panels together", "90 g")
	a.to(aCoat)
	began := time.Now()
	a.tap("Write it down")
	a.says("Take it back")
	b.says("Sealer, acrylic-sealer on front")
	c.says("within the hour")
	t.Logf("seen by both others %.1f s after the tap", time.Since(began).Seconds())
	if typed := value[string](c, `document.querySelector("[name=amount]").value`); typed != "90 g" {
		t.Errorf("of what was typed there stays %q", typed)
	}
	if len(a.Faults())+len(b.Faults())+len(c.Faults()) > 0 {
		t.Errorf("the console reports %q %q %q", a.Faults(), b.Faults(), c.Faults())
	}
}

// The network is cut in the middle of a form: it says that nothing was sent,
// keeps what was filled in, says when the computer is there again and that it
// was not written, and writes once.
func TestNetworkCut(t *testing.T) {
	toolcheck.Long(t)
	s := in(t, 3, nil)
	p := open(t, s.url, 820, 1180, false)
	before := s.size()
	p.to(aNote)
	p.fill("Note", "as the tide")
	p.offline(true)
	p.tap("Write it down")
	p.says("Not sent: the computer cannot be reached")
	s.wrote(before, 0, "cut off")
	if typed := value[string](p, `document.querySelector("[name=text]").value`); typed != "as the tide" {
		t.Errorf("of what was typed there stays %q", typed)
	}
	p.offline(false)
	p.says("It was not written")
	p.tap("Write it down")
	p.says("Take it back")
	s.wrote(before, 1, "sent again")
}

// The answer is lost on its way, as when the computer dies once it has
// written: the form stays, and says that it was written.
func TestAnswerLost(t *testing.T) {
	toolcheck.Long(t)
	s := in(t, 3, nil)
	var lose atomic.Bool
	s.between = func(w http.ResponseWriter, r *http.Request, next http.Handler) {
		if r.Method != http.MethodPost || !lose.Load() {
			next.ServeHTTP(w, r)
			return
		}
		next.ServeHTTP(httptest.NewRecorder(), r)
		panic(http.ErrAbortHandler)
	}
	p := open(t, s.url, 820, 1180, false)
	before := s.size()
	p.to(aNote)
	p.fill("Note", "as the tide")
	lose.Store(true)
	p.tap("Write it down")
	p.says("It was written")
	lose.Store(false)
	s.wrote(before, 1, "the answer lost")
	p.tap("Show it")
	p.says("Take it back")
	s.wrote(before, 1, "shown")
}

// The program is killed in the middle of a form and started again.
func TestKilledInForm(t *testing.T) {
	toolcheck.Long(t)
	path := in(t, 3, nil).session.Book.Path()
	b := serve(t, path)
	p := open(t, b.url, 820, 1180, false)
	p.to(aNote)
	p.fill("Note", "as the tide")
	b.kill()
	p.tap("Write it down")
	p.says("Not sent: the computer cannot be reached")
	serve(t, path, "--port", b.url[strings.LastIndexByte(b.url, ':')+1:])
	p.says("It was not written")
	p.tap("Write it down")
	p.says("Take it back")
	if n := strings.Count(command(t, path, "export"), `"as the tide"`); n != 1 {
		t.Errorf("written %d times", n)
	}
}

// A tablet whose clock is days off counts down as the computer does, and what
// it writes has the computer's time.
func TestWrongClock(t *testing.T) {
	toolcheck.Long(t)
	s := in(t, 3, nil)
	s.post("/act/coat", write(s.form("/act/coat?batch=may&panel=1-3", sealing)))
	counts := func(skew string) string {
		p := open(t, s.url, 820, 1180, false)
		_, err := chromedp.Call(p.Context, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
			Source: `{ const now = Date.now; Date.now = () => now() + ` + skew + ` }`})
		if err != nil {
			t.Fatal(err)
		}
		p.to("/batch/may")
		p.until(`document.querySelector(".count").textContent !== ""`)
		if skew != "0" {
			p.to(aNote + "&text=x")
			p.tap("Write it down")
			p.says("Take it back")
			if !strings.Contains(p.text(), "today 15:00") { // 14:00 UTC in the studio
				t.Errorf("it was written\n%s", p.text())
			}
			p.to("/batch/may")
		}
		return value[string](p, `[...document.querySelectorAll(".count")].map(e => e.textContent).join()`)
	}
	right := counts("0")
	for _, skew := range []string{"3*86400e3", "-400*86400e3"} {
		if got := counts(skew); got != right || right == "" {
			t.Errorf("clock off by %s ms: counts %q, not %q", skew, got, right)
		}
	}
}
