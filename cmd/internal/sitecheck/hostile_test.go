package sitecheck_test

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"backleaf/cmd/internal/browsertest"
	"backleaf/record/toolcheck"
)

// described is a photograph whose file says something of itself, as a comment
// (ITU-T T.81, B.2.4.5) and as its description (Exif 2.32, 4.6.4, tag 0x010E).
func described(t testing.TB, text string) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewRGBA(image.Rect(0, 0, 600, 400)), nil); err != nil {
		t.Fatal(err)
	}
	segment := func(marker byte, data []byte) []byte {
		return slices.Concat([]byte{0xFF, marker}, binary.BigEndian.AppendUint16(nil, uint16(len(data)+2)), data)
	}
	le := binary.LittleEndian
	tiff := le.AppendUint32([]byte("II*\x00"), 8)
	tiff = le.AppendUint16(tiff, 1)
	tiff = le.AppendUint16(le.AppendUint16(tiff, 0x010E), 2)
	tiff = le.AppendUint32(le.AppendUint32(tiff, uint32(len(text)+1)), 26)
	tiff = append(le.AppendUint32(tiff, 0), text+"\x00"...)
	return slices.Concat(b.Bytes()[:2], segment(0xE1, append([]byte("Exif\x00\x00"), tiff...)), segment(0xFE, []byte(text)), b.Bytes()[2:])
}

// Texts that would do something, in every place that a person can write to, the
// names of files and what a photograph says of itself among them, are texts in
// the browser: nothing runs, and its policy has nothing to forbid.
func TestNothingRuns(t *testing.T) {
	toolcheck.Long(t)
	dir := t.TempDir()
	book := filepath.Join(dir, "studio.sqlite")
	n := 0
	evil := func() string {
		n++
		return strings.ReplaceAll(`N"'></script></title></style></desc><script>window.ran = "N"</script><img src=x onerror="window.ran='N'"><svg onload="window.ran='N'"> <!-- ${window.ran='N'} \u003cscript>`, "N", string(rune('a'+n)))
	}
	file := func(name string, data []byte) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, data, 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	f := func(args ...string) { browsertest.Command(t, append([]string{"--book", book}, args...)...) }
	f("studio", "new", "--maker", evil(), "--mark", "KB", "--place", evil(), "--contact", evil(), "--link", "https://example.org/P/")
	f("studio", "key", "new")
	f("material", "add", "ply", "--use", "board", "--name", evil(), "--board", "plywood", "--thickness", "3 mm")
	f("panel", "add", "--size", "30 x 40 cm x 3 mm", "--board", "ply")
	f("paint", "1", "--medium", "oil", "--technique", evil())
	f("panel", "describe", "1", "--title", evil(), "--subject", evil(), "--signed", evil(), "--inscription", evil(), "--features", evil())
	f("note", "1", evil())
	const name = `'"><img src=x onerror=window.ran=1>.jpeg`
	f("panel", "photo", "1", file(name, described(t, evil())), "--caption", evil(), "--credit", evil())
	f("panel", "publish", "1", "--because", evil())
	site := filepath.Join(dir, "site")
	f("site", site, "--index")
	pages, _ := filepath.Glob(filepath.Join(site, "KB*"))
	if len(pages) != 1 {
		t.Fatal(pages)
	}
	h := serve(t, site)
	p := open(t, 768, "light")
	own := filepath.Base(pages[0])
	text := p.checked(h.page(own))
	if !says(text, "whole-none") || !says(text, "text") || strings.Contains(text, string(words["fails"])) {
		t.Errorf("the page says\n%s", text)
	}
	if value[int](p, `document.images[0].naturalWidth`) < 400 {
		t.Error("the photograph is not shown")
	}
	p.choose(file(`"><img src=x onerror="window.ran=2">.pdf`, []byte("%PDF-1.7 <script>window.ran=3</script>")))
	if text := p.brought(); !strings.Contains(text, `onerror="window.ran=2"`) {
		t.Errorf("of a file with such a name the page says\n%s", text)
	}
	for _, path := range []string{own + "/", "", "404.html"} {
		if path != own+"/" {
			p.to(h.URL + prefix + path)
		}
		if ran := value[string](p, `String(window.ran)`); ran != "undefined" {
			t.Errorf("%q: %s ran", path, ran)
		}
		if all := p.Text(); !strings.Contains(all, "<script>window.ran") {
			t.Errorf("%q does not show the text", path)
		}
	}
	photographs, _ := filepath.Glob(filepath.Join(site, "a", "*.jpeg"))
	for _, path := range photographs {
		if bytes.Contains(read(t, path), []byte("window.ran")) {
			t.Error("a picture says what the photograph said of itself")
		}
	}
	if f := p.Faults(); f != nil || photographs == nil {
		t.Errorf("the browser complains: %q", f)
	}

	// Were there markup, the browser would forbid it and say so, and we would hear it.
	page := read(t, filepath.Join(pages[0], "index.html"))
	h.put(map[string][]byte{own + "/": bytes.Replace(page, []byte("</main>"), []byte(`<script>window.ran = "yes"</script><img src="https://elsewhere.invalid/x" onerror="window.ran='too'"></main>`), 1)})
	if text := p.checked(h.page(own)); !says(text, "text-not") {
		t.Errorf("with markup put into it the page says\n%s", text)
	}
	if ran, f := value[string](p, `String(window.ran)`), fmt.Sprint(p.Faults()); ran != "undefined" || !strings.Contains(f, "Content Security Policy") {
		t.Errorf("%s ran, and the browser says %q", ran, f)
	}
	h.put(nil)

	// A key that was retired named the one by which the page is signed now.
	f("studio", "key", "retire", "--because", evil())
	f("site", site)
	text = p.checked(h.page(own))
	if !says(text, "whole-none") || !says(text, "keys") {
		t.Errorf("after a key was retired the page says\n%s", text)
	}
}
