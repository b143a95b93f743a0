package sitecheck_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

// panel is the demonstration's painted one, as in its link.
const panel = "MR250003V"

// demonstration makes the invented studio and its site.
func demonstration(t testing.TB) (dir, site string) {
	t.Helper()
	dir = filepath.Join(t.TempDir(), "demo")
	command(t, "demo", dir, "--quiet")
	return dir, filepath.Join(dir, "site")
}

func read(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

var words = tell.English.Page.Checking

// says reports whether a text holds what the page says by a code, up to the
// first place in it.
func says(text, code string) bool {
	m, _, _ := strings.Cut(string(words[code]), "{")
	if m == "" {
		panic("no words for " + code)
	}
	return strings.Contains(text, strings.TrimSpace(m))
}

// A symbol of the demonstration's labels, read by another program, leads to a
// page that is the panel's, checks itself, and asks nothing of any other place.
func TestSymbolLeadsToItsPage(t *testing.T) {
	dir, site := demonstration(t)
	h := serve(t, site)
	toolcheck.Run(t, "pdftoppm", "-r", "200", "-gray", "-png", filepath.Join(dir, "labels.pdf"), filepath.Join(dir, "labels"))
	scans, err := filepath.Glob(filepath.Join(dir, "labels*.png"))
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
	p := open(t, browser(t), 1280, 900, "light")
	text := p.checked(h.URL + "/" + path)
	if !says(text, "whole") || strings.Contains(text, string(words["fails"])) {
		t.Errorf("the page says\n%s", text)
	}
	if all := value[string](p, "document.body.innerText"); !strings.Contains(all, "MR25-0003-V") || !strings.Contains(all, "Low water, Saltmere") {
		t.Error("it is not the panel's page")
	}
	fingerprint := "9b3c 08fc f6e0 8cb3 47db e06c 0b50 df54 f935 570d 316a ccdc 7b3e 17d6 0942 6288"
	if !strings.Contains(text, fingerprint) || !strings.Contains(toolcheck.Run(t, "pdftotext", "-layout", filepath.Join(dir, "certificate.pdf"), "-"), "9b3c 08fc f6e0 8cb3") {
		t.Error("page and certificate do not print one key")
	}
	for _, a := range p.asked {
		if !strings.HasPrefix(a, h.URL+"/") {
			t.Errorf("it asks for %s", a)
		}
	}
	if p.faults != nil {
		t.Errorf("the browser complains: %q", p.faults)
	}

	// Opened from a folder, it says what it cannot read there.
	text = p.checked("file://" + filepath.Join(site, panel, "index.html"))
	for _, code := range []string{"whole-here", "pictures-here", "status-here", "signature", "text", "proof", "keys"} {
		if !says(text, code) {
			t.Errorf("from a folder it does not say %q:\n%s", words[code], text)
		}
	}
	// Over plain HTTP the browser lacks the means.
	text = p.checked(strings.Replace(h.URL, "127.0.0.1", "far.example", 1) + prefix + panel + "/")
	if !says(text, "cannot") || !strings.Contains(text, string(words["why-insecure"])) || strings.Contains(text, string(words["holds"])) {
		t.Errorf("over plain HTTP it says\n%s", text)
	}
	if by := value[string](p, "document.body.innerText"); !strings.Contains(by, "openssl pkeyutl -verify") {
		t.Error("and does not say how to do it by hand")
	}
}

// data splits a page around the data that its script reads.
func data(t testing.TB, page []byte) (before, data, after string) {
	t.Helper()
	before, rest, ok := strings.Cut(string(page), `id="data">`)
	data, after, ok2 := strings.Cut(rest, "</script>")
	if !ok || !ok2 {
		t.Fatal("no data")
	}
	return before + `id="data">`, data, "</script>" + after
}

// Whatever is changed, the page says which part does not hold.
func TestChangedPages(t *testing.T) {
	_, site := demonstration(t)
	h := serve(t, site)
	p := open(t, browser(t), 1280, 900, "light")
	page := read(t, filepath.Join(site, panel, "index.html"))
	before, carried, after := data(t, page)
	inData := func(old, new string) map[string][]byte {
		if !strings.Contains(carried, old) {
			t.Fatalf("the data does not hold %q", old)
		}
		at := strings.LastIndex(carried, old) // the record, which holds the key too, stands first
		return map[string][]byte{panel + "/": []byte(before + carried[:at] + new + carried[at+len(old):] + after)}
	}
	inPage := func(old, new string) map[string][]byte {
		if !strings.Contains(before, old) {
			t.Fatalf("the page does not hold %q", old)
		}
		return map[string][]byte{panel + "/": []byte(strings.Replace(before, old, new, 1) + carried + after)}
	}
	files := func(pattern string, change func([]byte) []byte) map[string][]byte {
		out := map[string][]byte{}
		names, err := filepath.Glob(filepath.Join(site, pattern))
		if err != nil || names == nil {
			t.Fatalf("nothing is named %s", pattern)
		}
		for _, n := range names {
			rel, _ := filepath.Rel(site, n)
			out[filepath.ToSlash(rel)] = change(read(t, n))
		}
		return out
	}
	flip := func(at int) func([]byte) []byte {
		return func(b []byte) []byte { b[len(b)-at] ^= 1; return b }
	}
	value := func(name string) string {
		v, _, _ := strings.Cut(carried[strings.LastIndex(carried, `"`+name+`":"`)+len(name)+4:], `"`)
		return v
	}
	other := func(s string, at int) string { // another figure of base64
		c := map[bool]string{true: "B", false: "A"}[s[at] == 'A']
		return s[:at] + c + s[at+1:]
	}
	signature, key, node := value("signature"), value("key"), ""
	_, rest, _ := strings.Cut(carried, `"nodes":["`)
	node, _, _ = strings.Cut(rest, `"`)
	for _, c := range []struct {
		what   string
		forged map[string][]byte
		codes  []string
	}{
		{"record", inData("burnt umber", "burnt amber"), []string{"signature-not"}},
		{"record, a figure", inData(`"wet_total":"260 g"`, `"wet_total":"250 g"`), []string{"signature-not"}},
		{"title on the page", inPage(">Low water, Saltmere</h1>", ">Low water, Saltmera</h1>"), []string{"text-not"}},
		{"a link on the page", inPage(`download="record.json"`, `download="record.jsom"`), []string{"text-not"}},
		{"a drawing", inPage(`viewBox="0 0 76 `, `viewBox="0 0 77 `), []string{"text-not"}},
		{"more text behind the page", map[string][]byte{panel + "/": append(bytes.Clone(page), "<p>Sold by us</p>"...)}, []string{"text-not"}},
		{"photograph", files("a/*.jpeg", flip(100)), []string{"picture-not"}},
		{"style", files("a/*.css", flip(3)), []string{"picture-not"}},
		{"signature", inData(signature, other(signature, 20)), []string{"signature-not"}},
		{"key", inData(`"key":"`+key, `"key":"`+other(key, 30)), []string{"signature-not", "page-not", "head-not", "keys-not", "status-not"}},
		{"key, its form", inData(`"key":"`+key, `"key":"`+other(key, 2)), []string{"key-not"}},
		{"head", inData(`\n`+fmt.Sprint(headSize(t, carried))+`\n`, `\n`+fmt.Sprint(headSize(t, carried)+1)+`\n`), []string{"head-not"}},
		{"proof", inData(node, other(node, 5)), []string{"proof-not"}},
		{"word for the page", inData(`panel page\nnumber: MR25`, `panel page\nnumber: MR26`), []string{"page-not"}},
		{"status", files("status", flip(200)), []string{"status-not"}},
		{"status, its signature", files("status", flip(20)), []string{"status-not"}},
		{"data that is none", inData("{", "("), []string{"altered"}},
	} {
		h.put(c.forged)
		text := p.checked(h.URL + prefix + panel + "/")
		if !says(text, "altered") {
			t.Errorf("%s: the page says\n%s", c.what, text)
		}
		for _, code := range c.codes {
			if !says(text, code) {
				t.Errorf("%s: it does not say %q but\n%s", c.what, words[code], text)
			}
		}
	}
}

func headSize(t testing.TB, carried string) (n int) {
	t.Helper()
	_, rest, _ := strings.Cut(carried, `"head":"backleaf/`)
	_, rest, _ = strings.Cut(rest, `\n`)
	if _, err := fmt.Sscan(strings.SplitN(rest, `\`, 2)[0], &n); err != nil {
		t.Fatal(err)
	}
	return n
}

// A page made whole by another key vouches for itself, and says that this means
// little; a page of an older record is true, and says that it is old.
func TestForgedAndOldPages(t *testing.T) {
	dir, site := demonstration(t)
	h := serve(t, site)
	p := open(t, browser(t), 1280, 900, "light")

	forger := filepath.Join(t.TempDir(), "forged.sqlite")
	f := func(args ...string) { command(t, append([]string{"--book", forger}, args...)...) }
	f("studio", "new", "--maker", "Odile Marrens", "--mark", "MR", "--place", "Saltmere", "--link", "https://marrens.example/P/")
	f("studio", "key", "new")
	f("panel", "add", "--size", "30 x 40 cm x 3 mm")
	f("paint", "0001", "--medium", "oil")
	f("panel", "describe", "0001", "--title", "Low water, Saltmere")
	f("panel", "publish", "0001")
	fake := filepath.Join(t.TempDir(), "fake")
	f("site", fake)
	pages, _ := filepath.Glob(filepath.Join(fake, "MR*"))
	if len(pages) != 1 {
		t.Fatal(pages)
	}
	text := p.checked(serve(t, fake).URL + prefix + filepath.Base(pages[0]) + "/")
	if !says(text, "whole") || !strings.Contains(text, "vouches for itself") || strings.Contains(text, "9b3c 08fc") {
		t.Errorf("a page under another key says\n%s", text)
	}
	// Brought to it, the true certificate tells the two keys apart.
	attached := filepath.Join(t.TempDir(), "attached")
	if err := os.Mkdir(attached, 0o755); err != nil {
		t.Fatal(err)
	}
	toolcheck.Run(t, "pdfdetach", "-saveall", "-o", attached, filepath.Join(dir, "certificate.pdf"))
	five := []string{}
	for _, n := range []string{"record.json", "record.sig", "studio.pem", "head.txt", "proof.json"} {
		five = append(five, filepath.Join(attached, n))
	}
	bring := func(files ...string) string {
		p.do(chromedp.SetUploadFiles("#bring-files", files))
		p.until(`!!document.querySelector(".bring .results")`)
		return value[string](p, `document.querySelector(".bring .results").innerText`)
	}
	if text := bring(five...); !says(text, "deed-otherkey") || !says(text, "deed-unknown") {
		t.Errorf("of the true certificate the forged page says\n%s", text)
	}

	// The true page knows its own.
	url := h.URL + prefix + panel + "/"
	p.checked(url)
	if text := bring(five...); !says(text, "deed-known") || !says(text, "deed-key") || !says(text, "proof") || strings.Contains(text, string(words["fails"])) {
		t.Errorf("of its certificate the page says\n%s", text)
	}
	p.checked(url)
	if text := bring(filepath.Join(dir, "certificate.pdf")); !strings.Contains(text, "byte for byte, the certificate issued on 2 March 2026") {
		t.Errorf("of the PDF it says\n%s", text)
	}
	p.checked(url)
	other := filepath.Join(t.TempDir(), "certificate.pdf")
	if err := os.WriteFile(other, append(read(t, filepath.Join(dir, "certificate.pdf")), '\n'), 0o644); err != nil {
		t.Fatal(err)
	}
	if text := bring(other); !strings.Contains(text, "is not a file that this page knows") {
		t.Errorf("of another PDF it says\n%s", text)
	}
	p.checked(url)
	changed := filepath.Join(attached, "record.json")
	if err := os.WriteFile(changed, bytes.Replace(read(t, changed), []byte("plywood"), []byte("Plywood"), 1), 0o644); err != nil {
		t.Fatal(err)
	}
	if text := bring(five...); !strings.Contains(text, "the signature does not hold") {
		t.Errorf("of a changed record it says\n%s", text)
	}

	// The text of the large symbol, as a camera reads it.
	toolcheck.Run(t, "pdftoppm", "-r", "200", "-gray", "-png", filepath.Join(dir, "certificate.pdf"), filepath.Join(dir, "scan"))
	symbols := toolcheck.Run(t, "zbarimg", "-q", "--raw", filepath.Join(dir, "scan-2.png"))
	note := symbols[strings.Index(symbols, "backleaf/"):]
	for _, c := range []struct{ text, code string }{{note, "note"}, {strings.Replace(note, "Low water", "High water", 1), "note-not"}} {
		p.checked(url)
		p.do(chromedp.SetValue("#bring-symbol", c.text), chromedp.Click(".bring button"))
		p.until(`!!document.querySelector(".bring .results")`)
		if text := value[string](p, `document.querySelector(".bring .results").innerText`); !says(text, c.code) {
			t.Errorf("of the symbol it says\n%s", text)
		}
	}

	// Withdrawn, and reported stolen: the page of before is old by the status.
	old := read(t, filepath.Join(site, panel, "index.html"))
	book := filepath.Join(dir, "studio.sqlite")
	command(t, "--book", book, "certificate", "withdraw", "0003", "--because", "stolen with the work")
	command(t, "--book", book, "handover", "0003", "--how", "theft")
	command(t, "--book", book, "site", site)
	text = p.checked(url)
	if !says(text, "outdated") || !strings.Contains(text, "issued, withdrawn, reported stolen") {
		t.Errorf("of a work reported stolen the page says\n%s", text)
	}
	if all := value[string](p, "document.querySelector('main').innerText"); !strings.Contains(all, "reported this work stolen") || !strings.Contains(all, "stolen with the work") {
		t.Error("the page does not tell the theft")
	}
	h.put(map[string][]byte{panel + "/": old})
	text = p.checked(url)
	if !says(text, "outdated") || !strings.Contains(text, "does not name this page") || strings.Contains(text, string(words["fails"])) {
		t.Errorf("an older page says\n%s", text)
	}
}
