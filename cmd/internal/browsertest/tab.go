package browsertest

import (
	"context"
	"os"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	cdlog "github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// A Tab is a page in the browser.
type Tab struct {
	testing.TB
	Context context.Context

	mu     sync.Mutex
	faults []string
	asked  []string
}

// Open opens an empty tab of a size in pixels, in a light or dark scheme.
func Open(t testing.TB, width, height int64, scheme string) *Tab {
	t.Helper()
	ctx, end := chromedp.NewContext(started(t), chromedp.WithNewBrowserContext())
	t.Cleanup(end)
	p := &Tab{TB: t, Context: ctx}
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

// Do does some things, within a minute.
func (p *Tab) Do(as ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	ctx, end := context.WithTimeout(p.Context, time.Minute)
	defer end()
	if err := chromedp.Do(ctx, as...); err != nil {
		p.Fatal(err)
	}
}

// Value evaluates a script.
func Value[T any](p *Tab, script string) T {
	p.Helper()
	v, err := chromedp.Run(p.Context, chromedp.Evaluate[T](script))
	if err != nil {
		p.Fatalf("%s: %v", script, err)
	}
	return v
}

// Until waits for a script to be true.
func (p *Tab) Until(script string) {
	p.Helper()
	for end := time.Now().Add(2 * time.Minute); time.Now().Before(end); {
		if ok, err := chromedp.Run(p.Context, chromedp.Evaluate[bool](script)); err == nil && ok {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	p.Fatalf("not after two minutes: %s\n%s", script, Value[string](p, "document.body.innerText"))
}

// Shot writes a picture of the whole page.
func (p *Tab) Shot(file string) {
	p.Helper()
	png, err := chromedp.Run(p.Context, chromedp.FullScreenshot(100))
	if err == nil {
		err = os.WriteFile(file, png, 0o644)
	}
	if err != nil {
		p.Fatal(err)
	}
}

// Text is what stands on the page.
func (p *Tab) Text() string { return Value[string](p, "document.body.innerText") }

// Faults are the errors and reports of the console up to now.
func (p *Tab) Faults() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return slices.Clone(p.faults)
}

// Asked are the addresses that the browser asked for.
func (p *Tab) Asked() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return slices.Clone(p.asked)
}
