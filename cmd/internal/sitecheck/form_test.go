package sitecheck_test

import (
	"fmt"
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

// states are the addresses of pages of every sort, by what they are called: one
// that is shown, one whose certificate was withdrawn since the work was stolen,
// one that was taken back, a list, and what stands where nothing is.
func states(t testing.TB) map[string]string {
	t.Helper()
	_, shown, command := copied(t)
	command("panel", "publish", "0007", "--withdraw", "--because", "the owner asked")
	command("site", shown, "--index")
	_, gone, command := copied(t)
	command("certificate", "withdraw", "0003", "--because", "stolen with the work")
	command("handover", "0003", "--how", "theft")
	command("site", gone)
	now, then := serve(t, shown), serve(t, gone)
	return map[string]string{"panel": now.page(panel), "panel-unpainted": now.page("MR2500019"), "panel-withdrawn": then.page(panel),
		"taken-back": now.page("MR250007Z"), "not-found": now.URL + prefix + "404.html", "index": now.URL + prefix}
}

// Nothing on any page keeps anybody out, at any size, in light and dark; nothing
// is wider than the window.
func TestAccessible(t *testing.T) {
	axe := string(read(t, filepath.Join(webTools(t), "node_modules", "axe-core", "axe.min.js")))
	everyPage(t, func(t *testing.T, p tab, name string) {
		p.Do(chromedp.Evaluate[chromedp.Void](axe + "; undefined"))
		p.Do(chromedp.Evaluate[chromedp.Void](`window.axeSays = undefined; axe.run({runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}).then(
			(r) => { window.axeSays = r.violations.map((v) => v.id + ": " + v.help + " " + v.nodes.map((n) => n.target.join(" ")).join(", ")).join("\n") + (r.passes.length ? "" : "nothing was looked at"); }); undefined`))
		p.Until("window.axeSays !== undefined")
		if says := value[string](p, "window.axeSays"); says != "" {
			t.Errorf("%s: %s", name, says)
		}
	})
}

// TestGallery writes pictures of all pages, to be looked at, into the folder
// that BACKLEAF_SHOTS names, and what comes out of a printer.
func TestGallery(t *testing.T) {
	dir := os.Getenv("BACKLEAF_SHOTS")
	if dir == "" {
		t.Skip("BACKLEAF_SHOTS names no folder")
	}
	everyPage(t, func(t *testing.T, p tab, name string) {
		p.Shot(filepath.Join(dir, name+".png"))
		if sheet, ok := strings.CutSuffix(name, "-1280-light"); ok {
			pdf, err := chromedp.Run(p.Context, chromedp.PrintToPDF())
			if err == nil {
				err = os.WriteFile(filepath.Join(dir, sheet+"-print.pdf"), pdf, 0o644)
			}
			if err != nil {
				t.Fatal(err)
			}
			toolcheck.Run(t, "pdftoppm", "-r", "80", "-png", filepath.Join(dir, sheet+"-print.pdf"), filepath.Join(dir, sheet+"-print"))
		}
	})
}

// everyPage opens pages of every sort at every size in both schemes.
func everyPage(t *testing.T, look func(t *testing.T, p tab, name string)) {
	pages := states(t)
	for _, scheme := range []string{"light", "dark"} {
		for _, width := range sizes {
			p := open(t, width, scheme)
			for name, url := range pages {
				name = fmt.Sprintf("%s-%d-%s", name, width, scheme)
				if strings.HasPrefix(name, "panel") {
					p.checked(url)
				} else {
					p.to(url)
				}
				if wide := value[int64](p, "document.documentElement.scrollWidth"); wide > width {
					t.Errorf("%s: %d pixels wide", name, wide)
				}
				look(t, p, name)
			}
		}
	}
}

// The pages are valid HTML.
func TestValid(t *testing.T) {
	toolcheck.Require(t, "java")
	jar := filepath.Join(webTools(t), "node_modules", "vnu-jar", "build", "dist", "vnu.jar")
	_, site, command := copied(t)
	command("panel", "publish", "0007", "--withdraw")
	command("site", site, "--index")
	pages, _ := filepath.Glob(filepath.Join(site, "*", "index.html"))
	if len(pages) < 3 {
		t.Fatalf("only %d pages", len(pages))
	}
	args := append([]string{"-jar", jar, "--errors-only", "--stdout", filepath.Join(site, "404.html"), filepath.Join(site, "index.html")}, pages...)
	if out, err := exec.Command("java", args...).CombinedOutput(); err != nil || len(out) > 0 {
		t.Errorf("%v\n%s", err, out)
	}
}
