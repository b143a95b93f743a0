//go:build unix

package main

import (
	"bytes"
	"context"
	"encoding/xml"
	"fmt"
	"image"
	"image/png"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"backleaf/record/bag"
	"backleaf/record/book"
	"backleaf/record/seal"
	"backleaf/record/toolcheck"
)

// hostileTitle could pass for markup, a formula, or a shell's work.
const hostileTitle = `=1+1 <script>document.title="taken"</script><img src=x onerror=alert(1)> </title>]]> "$(reboot)" & Ж`

// soldPanel makes a book in a folder with one finished panel that was sold, and
// a photograph.
func soldPanel(t *testing.T, dir string) {
	t.Helper()
	var picture bytes.Buffer
	if err := png.Encode(&picture, image.NewGray(image.Rect(0, 0, 300, 200))); err != nil {
		t.Fatal(err)
	}
	front := filepath.Join(t.TempDir(), "front.png")
	if err := os.WriteFile(front, picture.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"studio", "new", "--maker", "Anna <b>Ozola</b>", "--mark", "KB", "--zone", "Europe/Riga"},
		{"studio", "key", "new"},
		{"material", "starter", "acrylic-sealer", "linen-fine", "acrylic-ground", "mdf-6mm"},
		{"lot", "add", "s1", "acrylic-sealer", "--price", "43210.99 EUR"},
		{"panel", "add", "--count", "2", "--size", "20 x 25 cm x 6 mm", "--board", "mdf-6mm"},
		{"coat", "all", "--with", "s1", "--as", "sealer", "--on", "all", "--amount", "30 g"},
		{"cloth", "all", "--cloth", "linen-fine", "--with", "s1"},
		{"coat", "all", "--with", "acrylic-ground", "--as", "ground", "--on", "front"},
		{"paint", "1", "--medium", "oil"},
		{"panel", "describe", "1", "--title", hostileTitle, "--made", "2026"},
		{"panel", "photo", "1", front},
		{"handover", "1", "--how", "sale", "--to", "Zebedee Quillfeather", "--price", "98765.43 EUR"},
		{"certificate", "1", "-o", "certificate.pdf", "--buyer", "Zebedee Quillfeather", "--price"},
	} {
		runs(t, dir, args...)
	}
}

// eachFile calls do for every file of a folder.
func eachFile(t *testing.T, dir string, do func(path string, data []byte)) {
	t.Helper()
	err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(p)
		do(p, data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// wholeBag demands a bag that is complete and valid.
func wholeBag(t *testing.T, dir string) {
	t.Helper()
	r, err := bag.Validate(t.Context(), dir)
	if err != nil || !r.Valid {
		t.Fatalf("%s: %v %v", dir, err, r.Problems)
	}
}

// TestDepositHoldsNothingPrivate looks for a buyer and two prices in every byte
// of a deposit, inside its PDF files too.
func TestDepositHoldsNothingPrivate(t *testing.T) {
	toolcheck.Require(t, "qpdf", "pdftotext")
	dir := t.TempDir()
	soldPanel(t, dir)
	runs(t, dir, "deposit", "bag")
	planted := []string{"Zebedee", "Quillfeather", ":9876543", ":4321099", // as they are kept, in cents
		"98765.43", "43210.99", "98,765.43", "43,210.99", "98 765.43", "43 210.99", "98\u00a0765.43", "43\u00a0210.99", "98\u202f765.43", "43\u202f210.99"}
	// The book itself does hold them, else this test could not fail.
	own, err := os.ReadFile(filepath.Join(dir, "studio.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	wal, _ := os.ReadFile(filepath.Join(dir, "studio.sqlite-wal"))
	for _, p := range planted[:4] {
		if !bytes.Contains(append(own, wal...), []byte(p)) {
			t.Fatalf("the book does not hold %q: this test looks for the wrong words", p)
		}
	}
	look := func(what string, data []byte) {
		for _, p := range planted {
			if bytes.Contains(data, []byte(p)) {
				t.Errorf("%s holds %q", what, p)
			}
		}
	}
	inside := func(pdf string) string {
		text, err := exec.Command("pdftotext", pdf, "-").Output()
		if err != nil {
			t.Fatalf("pdftotext %s: %v", pdf, err)
		}
		return string(text)
	}
	if !strings.Contains(inside(filepath.Join(dir, "certificate.pdf")), "Quillfeather") {
		t.Fatal("the certificate that was issued does not show the buyer's name")
	}
	pdfs := 0
	eachFile(t, filepath.Join(dir, "bag"), func(p string, data []byte) {
		look(p, data)
		if filepath.Ext(p) != ".pdf" {
			return
		}
		pdfs++
		look(p+" (text)", []byte(inside(p)))
		open, err := exec.Command("qpdf", "--qdf", "--object-streams=disable", p, "-").Output()
		if err != nil {
			t.Fatalf("qpdf %s: %v", p, err)
		}
		look(p+" (unpacked)", open)
	})
	if pdfs != 4 { // the certificate shows the buyer's name: it is private
		t.Errorf("%d PDF files", pdfs)
	}
}

// TestDepositRecipes runs the commands of a deposit's README as they stand
// there.
func TestDepositRecipes(t *testing.T) {
	toolcheck.Require(t, "sh", "sha256sum", "sha512sum", "openssl", "sqlite3", "base64", "sed")
	dir := t.TempDir()
	soldPanel(t, dir)
	runs(t, dir, "deposit", "bag")
	top := filepath.Join(dir, "bag")
	readme, err := os.ReadFile(filepath.Join(top, "README.txt"))
	if err != nil {
		t.Fatal(err)
	}
	var atTop, atPanel []string
	for line := range strings.Lines(string(readme)) {
		cmd, indented := strings.CutPrefix(strings.TrimRight(line, "\n"), "  ")
		switch {
		case !indented:
		case strings.HasPrefix(cmd, "sha"), strings.HasPrefix(cmd, "(printf"), strings.HasPrefix(cmd, "sqlite3"):
			atTop = append(atTop, cmd)
		case strings.HasPrefix(cmd, "openssl"), strings.HasPrefix(cmd, "sed"), strings.HasPrefix(cmd, "tail"):
			atPanel = append(atPanel, cmd)
		}
	}
	if len(atTop) != 5 || len(atPanel) != 5 {
		t.Fatalf("found %q and %q", atTop, atPanel)
	}
	shell := func(where string, lines []string) (string, error) {
		c := exec.Command("sh", "-e", "-c", strings.Join(lines, "\n"))
		c.Dir = where
		out, err := c.CombinedOutput()
		return string(out), err
	}
	out, err := shell(top, atTop)
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	b, err := book.OpenReadOnly(context.Background(), filepath.Join(dir, "studio.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	es, err := b.Entries(context.Background(), book.Filter{})
	if err != nil {
		t.Fatal(err)
	}
	size, root, err := b.Tree(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	leaf := seal.LeafHash(es[0].Bytes)
	for _, want := range []string{fmt.Sprintf("%x", leaf[:]), fmt.Sprintf("%d|%x", size, root[:]), "1|" + string(es[0].Bytes)} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
	if !strings.Contains(string(readme), fmt.Sprintf("%x", root[:])) {
		t.Error("the README does not state the root")
	}
	wholeBag(t, top) // the recipes changed nothing
	panel := filepath.Join(dir, "panel")
	if err := os.CopyFS(panel, os.DirFS(filepath.Join(top, "data", "panels", "KB26-0001-K"))); err != nil {
		t.Fatal(err)
	}
	out, err = shell(panel, atPanel)
	if err != nil || strings.Count(out, "Signature Verified Successfully") != 2 {
		t.Errorf("%v\n%s", err, out)
	}
	fingerprint := strings.Fields(out)[0]
	if !strings.Contains(strings.ReplaceAll(string(readme), " ", ""), fingerprint) {
		t.Errorf("the README does not state the fingerprint %s", fingerprint)
	}
	// One byte changed, and the recipe says so.
	for _, name := range []string{"record.json", "head.txt"} {
		changed := filepath.Join(dir, "changed "+name)
		if err := os.CopyFS(changed, os.DirFS(filepath.Join(top, "data", "panels", "KB26-0001-K"))); err != nil {
			t.Fatal(err)
		}
		data, err := os.ReadFile(filepath.Join(changed, name))
		if err != nil {
			t.Fatal(err)
		}
		data[10] ^= 1
		if err := os.WriteFile(filepath.Join(changed, name), data, 0o666); err != nil {
			t.Fatal(err)
		}
		if out, err := shell(changed, atPanel); err == nil {
			t.Errorf("%s changed, and it holds:\n%s", name, out)
		}
	}
}

// TestDepositPages reads every page and every Dublin Core: a hostile title is
// text, nothing is taken from elsewhere.
func TestDepositPages(t *testing.T) {
	dir := t.TempDir()
	soldPanel(t, dir)
	runs(t, dir, "deposit", "bag")
	pages := 0
	eachFile(t, filepath.Join(dir, "bag", "data"), func(p string, data []byte) {
		ext := filepath.Ext(p)
		if ext != ".html" && ext != ".xml" {
			return
		}
		pages++
		text := textOfMarkup(t, p, data, ext == ".html")
		if strings.Contains(p, "0001-K") && !strings.Contains(text, hostileTitle) {
			t.Errorf("%s does not show the title as it was written", p)
		}
	})
	if pages != 5 {
		t.Errorf("%d pages and descriptions", pages)
	}
}

// textOfMarkup parses a page strictly, as far as HTML allows, and returns its
// text.
func textOfMarkup(t *testing.T, name string, data []byte, html bool) string {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(data))
	if html {
		d.AutoClose, d.Entity, d.Strict = xml.HTMLAutoClose, xml.HTMLEntity, false
	}
	var text strings.Builder
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return text.String()
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		switch x := tok.(type) {
		case xml.CharData:
			text.Write(x)
		case xml.StartElement:
			switch x.Name.Local {
			case "script", "iframe", "object", "embed", "link", "base", "form":
				t.Errorf("%s has an element %s", name, x.Name.Local)
			}
			for _, a := range x.Attr {
				v := strings.TrimPrefix(strings.ToLower(a.Value), "data:image/")
				if strings.HasPrefix(strings.ToLower(a.Name.Local), "on") || strings.Contains(v, "javascript:") ||
					(a.Name.Local == "href" || a.Name.Local == "src") && strings.Contains(v, ":") {
					t.Errorf("%s has %s=%q", name, a.Name.Local, a.Value)
				}
			}
		}
	}
}

// TestDepositInBrowser lets a browser show the pages: the title stays the
// page's own, and there is something to see.
func TestDepositInBrowser(t *testing.T) {
	toolcheck.Long(t)
	browser := toolcheck.OneOf(t, "chromium", "chromium-browser", "google-chrome")
	dir := t.TempDir()
	soldPanel(t, dir)
	runs(t, dir, "deposit", "bag")
	for _, page := range []string{"index.html", "panels/KB26-0001-K/page.html"} {
		show := func(args ...string) []byte {
			c := exec.Command(browser, append([]string{"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
				"--disable-component-update", "--disable-sync", "--user-data-dir=" + t.TempDir()}, append(args, "file://"+filepath.Join(dir, "bag", "data", page))...)...)
			out, err := c.Output()
			if err != nil {
				t.Fatalf("%s: %v", browser, err)
			}
			return out
		}
		dom := string(show("--dump-dom"))
		if strings.Contains(dom, "<script") || strings.Contains(dom, "<img src=\"x") || strings.Contains(dom, "<title>taken") || !strings.Contains(dom, "&lt;script&gt;document.title") {
			t.Errorf("%s: the title became markup:\n%.2000s", page, dom)
		}
		picture := filepath.Join(dir, "page.png")
		show("--window-size=900,1200", "--screenshot="+picture)
		f, err := os.Open(picture)
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(f)
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		dark := 0
		for y := range img.Bounds().Dy() {
			for x := range img.Bounds().Dx() {
				if r, _, _, _ := img.At(x, y).RGBA(); r < 0x8000 {
					dark++
				}
			}
		}
		if dark < 1000 {
			t.Errorf("%s: only %d dark points to see", page, dark)
		}
	}
}
