package sitecheck_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"backleaf/cmd/internal/browsertest"
	"backleaf/record/toolcheck"
)

// fingerprint is that of the demonstration's key, as its certificate prints it.
const fingerprint = "9b3c 08fc f6e0 8cb3 47db e06c 0b50 df54 f935 570d 316a ccdc 7b3e 17d6 0942 6288"

// A symbol of the demonstration's labels, read by another program, leads to a
// page that is the panel's, checks itself, and asks nothing of any other place.
func TestSymbolLeadsToItsPage(t *testing.T) {
	dir, site := demonstration(t)
	h := serve(t, site)
	scan := filepath.Join(t.TempDir(), "labels")
	toolcheck.Run(t, "pdftoppm", "-r", "200", "-gray", "-png", filepath.Join(dir, "labels.pdf"), scan)
	scans, err := filepath.Glob(scan + "*.png")
	if err != nil || scans == nil {
		t.Fatal("no picture of the labels", err)
	}
	symbols := toolcheck.Run(t, "zbarimg", append([]string{"-q", "--raw"}, scans...)...)
	link := ""
	for l := range strings.Lines(symbols) {
		if strings.HasSuffix(strings.TrimSpace(l), panel) {
			link = strings.TrimSpace(l)
		}
	}
	path, ok := strings.CutPrefix(link, "HTTPS://MARRENS.EXAMPLE/")
	if !ok {
		t.Fatalf("no symbol of %s among\n%s", panel, symbols)
	}
	p := open(t, 1280, "light")
	text := p.checked(h.URL + "/" + path)
	if !says(text, "whole") || strings.Contains(text, string(words["fails"])) {
		t.Errorf("the page says\n%s", text)
	}
	if all := p.Text(); !strings.Contains(all, "MR25-0003-V") || !strings.Contains(all, "Low water, Saltmere") {
		t.Error("it is not the panel's page")
	}
	if !strings.Contains(strings.ReplaceAll(text, "\n", " "), fingerprint) || !strings.Contains(toolcheck.Run(t, "pdftotext", "-layout", filepath.Join(dir, "certificate.pdf"), "-"), "9b3c 08fc f6e0 8cb3") {
		t.Error("page and certificate do not print one key")
	}
	for _, a := range p.Asked() {
		if !strings.HasPrefix(a, h.URL+"/") {
			t.Errorf("it asks for %s", a)
		}
	}
	if f := p.Faults(); f != nil {
		t.Errorf("the browser complains: %q", f)
	}

	// Opened from a folder, it says what it cannot read there.
	text = p.checked("file://" + filepath.Join(site, panel, "index.html"))
	for _, code := range []string{"whole-here", "pictures-here", "status-here", "signature", "text", "proof", "keys"} {
		if !says(text, code) {
			t.Errorf("from a folder it does not say %q:\n%s", words[code], text)
		}
	}
}

// Where the browser lacks the means, over plain HTTP or since it is old, the page
// says so and gives lines that do it by hand, with openssl alone.
func TestByHand(t *testing.T) {
	_, site := demonstration(t)
	h := serve(t, site)
	for _, c := range []struct{ why, lacks, url string }{
		{"why-insecure", "", strings.Replace(h.page(panel), "127.0.0.1", browsertest.Far, 1)},
		{"why-old", `{ const known = crypto.subtle.importKey.bind(crypto.subtle);
			crypto.subtle.importKey = (form, key, kind, ...rest) => kind === "Ed25519" ? Promise.reject(new DOMException("Unrecognized name.", "NotSupportedError")) : known(form, key, kind, ...rest); }`, h.page(panel)},
		{"why-old", `delete globalThis.DecompressionStream;`, h.page(panel)},
	} {
		p := open(t, 1280, "light")
		if _, err := chromedp.Call(p.Context, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: c.lacks}); err != nil {
			t.Fatal(err)
		}
		text := p.checked(c.url)
		if !says(text, "cannot") || !strings.Contains(text, string(words[c.why])) || strings.Contains(text, string(words["holds"])) {
			t.Errorf("%s: the page says\n%s", c.why, text)
		}
		dir := t.TempDir()
		for _, f := range value[[][2]string](p, `Array.from(document.querySelectorAll(".files a"), (a) => [a.download, new URL(a.href).pathname])`) {
			if err := os.WriteFile(filepath.Join(dir, f[0]), read(t, filepath.Join(site, strings.TrimPrefix(f[1], prefix))), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		toolcheck.Require(t, "openssl", "sha256sum")
		cmd := exec.Command("sh", "-e", "-c", value[string](p, `document.querySelector("pre").textContent`))
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		said := strings.Fields(string(out))
		if all := strings.ReplaceAll(p.Text(), " ", ""); err != nil || len(said) < 4 || !strings.Contains(all, said[0]) || said[2] != strings.ReplaceAll(fingerprint, " ", "") || !strings.Contains(string(out), "Signature Verified Successfully") {
			t.Errorf("%s: by hand: %v\n%s", c.why, err, out)
		}
	}
}
