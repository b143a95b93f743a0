package benchpage_test

import (
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"backleaf/record/toolcheck"
)

// webTools gives a folder with node_modules: axe-core, which looks for what
// keeps people out (rules for WCAG 2.2 AA, contrast too), and the Nu validator
// of HTML.
func webTools(t testing.TB) string {
	t.Helper()
	toolcheck.Long(t)
	return toolcheck.Packages(t, "BACKLEAF_WEBTOOLS", "axe-core@4.14.1", "vnu-jar@26.9.27")
}

// Nothing on any page keeps anybody out, on a telephone in light and a tablet
// in dark; nothing is wider than the window, nothing smaller than 18 px, and
// what is tapped is 48 px high.
func TestAccessible(t *testing.T) {
	dir := webTools(t)
	axe, err := os.ReadFile(filepath.Join(dir, "node_modules", "axe-core", "axe.min.js"))
	if err != nil {
		t.Fatal(err)
	}
	b := serve(t, demonstration(t))
	for _, size := range []struct {
		width, height int64
		dark          bool
	}{{390, 844, false}, {820, 1180, true}} {
		p := open(t, b.url, size.width, size.height, size.dark)
		for name, path := range views {
			if size.dark && !slices.Contains(inDark, name) {
				continue
			}
			p.to(path)
			if wide := value[int64](p, "document.documentElement.scrollWidth"); wide > size.width {
				t.Errorf("%s: %d pixels wide at %d", name, wide, size.width)
			}
			if small := value[string](p, smallest); small != "" {
				t.Errorf("%s at %d: %s", name, size.width, small)
			}
			p.do(chromedp.Evaluate[chromedp.Void](string(axe) + "; undefined"))
			p.do(chromedp.Evaluate[chromedp.Void](`window.axeSays = undefined; axe.run({runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}).then(
				(r) => { window.axeSays = r.violations.map((v) => v.id + ": " + v.help + " " + v.nodes.map((n) => n.target.join(" ")).join(", ")).join("\n") + (r.passes.length ? "" : "nothing was looked at"); }); undefined`))
			p.until("window.axeSays !== undefined")
			if says := value[string](p, "window.axeSays"); says != "" {
				t.Errorf("%s at %d: %s", name, size.width, says)
			}
		}
	}
}

// inDark are pages on which everything stands that has a colour.
var inDark = []string{"today", "batch", "panel", "coat", "label", "shelf", "finish", "find", "ask", "entry", "refused", "withdraw"}

// smallest says which words are under 18 px, and which targets under 48 px; a
// target within a line of words is excepted, as WCAG 2.2, 2.5.8 does.
const smallest = `(() => {
  const seen = e => e.getClientRects().length > 0 && e.getBoundingClientRect().x >= 0;
  const found = [];
  for (const e of document.querySelectorAll("main *, header *, footer *"))
    if (seen(e) && !e.closest("svg") && [...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim()) && parseFloat(getComputedStyle(e).fontSize) < 18)
      found.push(e.tagName + " “" + e.textContent.trim().slice(0, 30) + "” in " + getComputedStyle(e).fontSize);
  for (const e of document.querySelectorAll("a, button, input:not([type=hidden]), select, textarea, summary, label.chip")) {
    if (!seen(e) || e.closest("label.chip") && !e.matches("label.chip") || getComputedStyle(e).display === "inline") continue;
    const r = e.getBoundingClientRect();
    if (r.height < 48 || r.width < 48) found.push(e.tagName + " “" + (e.innerText || e.name || "").trim().slice(0, 30) + "” of " + Math.round(r.width) + " × " + Math.round(r.height));
  }
  return found.join("; ");
})()`

// The pages are valid HTML.
func TestValid(t *testing.T) {
	toolcheck.Require(t, "java")
	jar := filepath.Join(webTools(t), "node_modules", "vnu-jar", "build", "dist", "vnu.jar")
	b := serve(t, demonstration(t))
	dir := t.TempDir()
	args := []string{"-jar", jar, "--stdout"}
	for name, path := range views {
		r, err := http.Get(b.url + path)
		if err != nil {
			t.Fatal(err)
		}
		page, err := io.ReadAll(r.Body)
		r.Body.Close()
		file := filepath.Join(dir, name+".html")
		if err == nil {
			err = os.WriteFile(file, page, 0o644)
		}
		if err != nil {
			t.Fatal(err)
		}
		args = append(args, file)
	}
	if out, err := exec.Command("java", args...).CombinedOutput(); err != nil || len(out) > 0 {
		t.Errorf("%v\n%s", err, out)
	}
}

// Texts that would do something, in every place that a person can write to,
// are texts in the browser: nothing runs, and its policy has nothing to forbid.
func TestNothingRuns(t *testing.T) {
	toolcheck.Long(t)
	path := filepath.Join(t.TempDir(), "studio.sqlite")
	n := 0
	evil := func() string {
		n++
		return strings.ReplaceAll(`N"'></script></title></style></textarea><script>window.ran = "N"</script><img src=x onerror="window.ran='N'"><svg onload="window.ran='N'"> {{.}} ${window.ran='N'}`, "N", string(rune('a'+n)))
	}
	f := func(args ...string) { command(t, path, args...) }
	f("studio", "new", "--maker", evil(), "--mark", "KB", "--place", evil(), "--contact", evil())
	f("material", "add", "ply", "--use", "board", "--name", evil(), "--board", "plywood", "--thickness", "3 mm")
	f("material", "add", "glue", "--use", "sealer", "--name", evil())
	f("lot", "add", "glue-1", "glue", "--supplier", evil(), "--note", evil())
	f("panel", "add", "2 of 30 x 40 cm x 3 mm", "--board", "ply", "--batch", "may")
	f("coat", "1-2", "--as", "sealer", "--with", "glue-1", "--on", "all", "--tool", evil(), "--note", evil())
	f("paint", "1", "--medium", "oil", "--technique", evil())
	f("panel", "describe", "1", "--title", evil(), "--subject", evil(), "--signed", evil(), "--inscription", evil(), "--features", evil())
	f("note", "1", evil())
	f("handover", "1", "--how", "sale", "--to", evil(), "--private-note", evil())
	b := serve(t, path)
	p := open(t, b.url, 820, 1180, false)
	for _, path := range []string{"/", "/panels", "/shelf", "/batch/may", "/panel/1?private=yes", "/panel/1?then=7", "/finish/1", "/find?q=%3Cscript%3E", "/find?q=1+how+was+it+painted", "/entry/6", "/entry/7",
		"/act/coat?batch=may&panel=2", "/act/describe?panel=1", "/act/amend?entry=7", "/act/amend?entry=8", "/act/withdraw?entry=8&panel=1", "/act/cut", "/act/lot?material=glue&supplier=%22%3E%3Cscript%3Ewindow.ran=1%3C/script%3E", "/panel/%3Cscript%3E"} {
		p.to(path)
		if ran := value[string](p, `String(window.ran)`); ran != "undefined" {
			t.Errorf("%s: %s ran", path, ran)
		}
	}
	p.to("/act/note?batch=may&panel=2")
	p.fill("Note", evil())
	p.tap("Write it down")
	p.says("<script>window.ran")
	if ran := value[string](p, `String(window.ran)`); ran != "undefined" {
		t.Errorf("%s ran in what was just written", ran)
	}
	for _, f := range p.Faults() {
		if !strings.Contains(f, "404") && !strings.Contains(f, "422") { // a page that is not there is told to the console too
			t.Errorf("the browser complains: %s", f)
		}
	}
}
