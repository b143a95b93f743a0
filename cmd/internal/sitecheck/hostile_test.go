package sitecheck_test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// Texts that would do something, in every place that a person can write to,
// are texts in the browser: nothing runs, and its policy has nothing to forbid.
func TestNothingRuns(t *testing.T) {
	dir := t.TempDir()
	book := filepath.Join(dir, "studio.sqlite")
	n := 0
	evil := func() string {
		n++
		return strings.ReplaceAll(`N"'></script></title></style></desc><script>window.ran = "N"</script><img src=x onerror="window.ran='N'"><svg onload="window.ran='N'"> <!-- ${window.ran='N'} \u003cscript>`, "N", string(rune('a'+n)))
	}
	f := func(args ...string) { command(t, append([]string{"--book", book}, args...)...) }
	f("studio", "new", "--maker", evil(), "--mark", "KB", "--place", evil(), "--contact", evil(), "--link", "https://example.org/P/")
	f("studio", "key", "new")
	f("material", "add", "ply", "--use", "board", "--name", evil(), "--board", "plywood", "--thickness", "3 mm")
	f("panel", "add", "--size", "30 x 40 cm x 3 mm", "--board", "ply")
	f("paint", "1", "--medium", "oil", "--technique", evil())
	f("panel", "describe", "1", "--title", evil(), "--subject", evil(), "--signed", evil(), "--inscription", evil(), "--features", evil())
	f("note", "1", evil())
	f("panel", "publish", "1", "--because", evil())
	site := filepath.Join(dir, "site")
	f("site", site, "--index")
	pages, _ := filepath.Glob(filepath.Join(site, "KB*"))
	if len(pages) != 1 {
		t.Fatal(pages)
	}
	h := serve(t, site)
	p := open(t, browser(t), 768, 900, "light")
	text := p.checked(h.URL + prefix + filepath.Base(pages[0]) + "/")
	if !says(text, "whole") || !says(text, "text") || strings.Contains(text, string(words["fails"])) {
		t.Errorf("the page says\n%s", text)
	}
	for _, path := range []string{filepath.Base(pages[0]) + "/", "", "404.html"} {
		p.do(chromedp.Navigate(h.URL + prefix + path))
		p.until(`document.readyState === "complete"`)
		if ran := value[string](p, `String(window.ran)`); ran != "undefined" {
			t.Errorf("%q: %s ran", path, ran)
		}
		if all := value[string](p, "document.body.innerText"); !strings.Contains(all, "<script>window.ran") {
			t.Errorf("%q does not show the text", path)
		}
	}
	if p.faults != nil {
		t.Errorf("the browser complains: %q", p.faults)
	}

	// A key that was retired named the one by which the page is signed now.
	f("studio", "key", "retire", "--because", evil())
	f("site", site)
	text = p.checked(h.URL + prefix + filepath.Base(pages[0]) + "/")
	if !says(text, "whole") || !says(text, "keys") {
		t.Errorf("after a key was retired the page says\n%s", text)
	}
}
