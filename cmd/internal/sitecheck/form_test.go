package sitecheck_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"backleaf/record/toolcheck"
)

// webTools gives a folder with node_modules: axe-core, which looks for what
// keeps people out (rules for WCAG 2.2 AA), and the Nu validator of HTML.
func webTools(t testing.TB) string {
	t.Helper()
	return toolcheck.Packages(t, "BACKLEAF_WEBTOOLS", "axe-core@4.14.1", "vnu-jar@26.9.27")
}

// sizes are those of a small telephone, a tablet and a desk.
var sizes = []int64{320, 768, 1280}

// Nothing on any page of the demonstration keeps anybody out, at any size, in
// light and dark; nothing is wider than the window. BACKLEAF_PICTURES names a
// folder for pictures of all of them.
func TestAccessible(t *testing.T) {
	dir := webTools(t)
	_, site := demonstration(t)
	h := serve(t, site)
	axe := string(read(t, filepath.Join(dir, "node_modules", "axe-core", "axe.min.js")))
	pictures := os.Getenv("BACKLEAF_PICTURES")
	chromium := browser(t)
	for _, scheme := range []string{"light", "dark"} {
		for _, width := range sizes {
			p := open(t, chromium, width, 900, scheme)
			for _, path := range []string{panel + "/", "MR2500019/", "404.html", ""} {
				name := strings.Trim(strings.TrimSuffix(path, ".html"), "/") + "-" + scheme + "-" + map[int64]string{320: "320", 768: "768", 1280: "1280"}[width]
				if strings.HasPrefix(path, "MR") {
					p.checked(h.URL + prefix + path)
				} else {
					p.do(chromedp.Navigate(h.URL + prefix + path))
				}
				if wide := value[int64](p, "document.documentElement.scrollWidth"); wide > width {
					t.Errorf("%s: %d pixels wide", name, wide)
				}
				p.do(chromedp.Evaluate[chromedp.Void](axe + "; undefined"))
				p.do(chromedp.Evaluate[chromedp.Void](`window.axeSays = undefined; axe.run({runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}).then(
					(r) => { window.axeSays = r.violations.map((v) => v.id + ": " + v.help + " " + v.nodes.map((n) => n.target.join(" ")).join(", ")).join("\n") + (r.passes.length ? "" : "nothing was looked at"); }); undefined`))
				p.until("window.axeSays !== undefined")
				if says := value[string](p, "window.axeSays"); says != "" {
					t.Errorf("%s: %s", name, says)
				}
				if pictures != "" {
					p.shot(filepath.Join(pictures, name+".png"))
				}
			}
		}
	}
}

// The pages are valid HTML.
func TestValid(t *testing.T) {
	toolcheck.Require(t, "java")
	jar := filepath.Join(webTools(t), "node_modules", "vnu-jar", "build", "dist", "vnu.jar")
	dir, site := demonstration(t)
	command(t, "--book", filepath.Join(dir, "studio.sqlite"), "panel", "publish", "0007", "--withdraw")
	command(t, "--book", filepath.Join(dir, "studio.sqlite"), "site", site, "--index")
	pages, _ := filepath.Glob(filepath.Join(site, "*", "index.html"))
	if len(pages) < 3 {
		t.Fatalf("only %d pages", len(pages))
	}
	args := append([]string{"-jar", jar, "--errors-only", "--stdout", filepath.Join(site, "404.html"), filepath.Join(site, "index.html")}, pages...)
	if out, err := exec.Command("java", args...).CombinedOutput(); err != nil || len(out) > 0 {
		t.Errorf("%v\n%s", err, out)
	}
}
