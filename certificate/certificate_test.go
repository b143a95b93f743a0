package certificate_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/certificate"
	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/toolcheck"
)

// signed is a finished work with a photograph, drawn and signed.
func signed(t testing.TB, paper string) (pdf []byte, in certificate.Input) {
	t.Helper()
	k := finished(t)
	k.photo(jpegFile(t, shore(800, 600)))
	in = k.input(k.key())
	in.Paper = paper
	return drawn(t, in), in
}

// text is the text of a page in the order in which it is drawn.
func text(t testing.TB, path string) string {
	t.Helper()
	return strings.Join(strings.Fields(toolcheck.Run(t, "pdftotext", "-raw", path, "-")), " ")
}

// read decodes the symbols of both sides at a resolution: the link of the front
// and the signed statement of the reverse, or nothing for what is not there.
func read(t testing.TB, path, dpi string) (link, note string) {
	t.Helper()
	toolcheck.Require(t, "pdftoppm", "zbarimg")
	root := filepath.Join(t.TempDir(), "page")
	toolcheck.Run(t, "pdftoppm", "-r", dpi, "-gray", "-l", "2", path, root)
	pages, _ := filepath.Glob(root + "-*.pgm")
	out := [2]string{}
	for i, p := range pages {
		got, _ := exec.Command("zbarimg", "-q", "--raw", "--nodbus", "--set", "disable", "--set", "qrcode.enable", p).Output() // it fails where there is no symbol
		out[i] = strings.TrimRight(string(got), "\n")
	}
	if out[1] != "" {
		out[1] += "\n"
	}
	return out[0], out[1]
}

// An independent reader finds the link and the signed statement on the page,
// and the statement holds.
func TestSymbolsAreRead(t *testing.T) {
	toolcheck.Long(t)
	cyrillic := finished(t, `{"kind":"described","title":"Вечір, відплив: Łódź «Θάλασσα»","panels":["KB26-0001-K"]}`)
	long := finished(t, `{"kind":"described","title":"`+strings.Repeat("Evening at low tide ", 13)+`end","panels":["KB26-0001-K"]}`)
	for name, k := range map[string]*bench{"plain": finished(t), "cyrillic": cyrillic, "long": long} {
		in := k.input(k.key())
		for _, paper := range []string{"a4", "letter"} {
			if in.Paper = paper; paper == "letter" && name != "plain" {
				continue
			}
			path := save(t, name+".pdf", drawn(t, in))
			for _, dpi := range []string{"200", "300"} {
				if dpi == "300" && name != "plain" {
					continue // what is read at 200 dpi is read at 300
				}
				link, note := read(t, path, dpi)
				if link != "HTTPS://EXAMPLE.ORG/P/KB260001K" {
					t.Errorf("%s, %s, %s dpi: link %q", name, paper, dpi, link)
				}
				s, err := seal.OpenStatement([]byte(note))
				if err != nil {
					t.Errorf("%s, %s, %s dpi: the statement on the page: %v\n%q", name, paper, dpi, err, note)
					continue
				}
				if s.Number != string(number) || s.Title != strings.TrimSpace(in.Panel.Description().Title) || s.Maker != "Ada Example" || s.Issued != "2026-06-01" ||
					s.Record != seal.DigestOf(in.Deed.Record) || s.Key != in.Deed.Key {
					t.Errorf("%s: the statement says %+v", name, s)
				}
			}
		}
	}
}

var files = []string{"record.json", "record.sig", "studio.pem", "head.txt", "proof.json"}

// Another program takes out the files byte for byte, and openssl alone checks
// the record, by the very command that stands on the page. One byte changed
// anywhere: refused.
func TestOpenSSL(t *testing.T) {
	toolcheck.Require(t, "pdfdetach", "openssl", "sha256sum")
	pdf, in := signed(t, "a4")
	path := save(t, "c.pdf", pdf)
	dir := t.TempDir()
	toolcheck.Run(t, "pdfdetach", "-saveall", "-o", dir, path)
	want := map[string][]byte{"record.json": in.Deed.Record, "record.sig": in.Deed.Signature, "studio.pem": in.Deed.Key.PEM(), "head.txt": in.Deed.Head, "proof.json": in.Deed.Proof}
	for _, name := range files {
		got, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil || !bytes.Equal(got, want[name]) {
			t.Errorf("%s is not what was attached: %v", name, err)
		}
	}
	page := text(t, path)
	printed := regexp.MustCompile(`openssl pkeyutl .*? \\ .*? -sigfile record\.sig`).FindString(page)
	if printed == "" {
		t.Fatalf("no command on the page:\n%s", page)
	}
	check := func() bool {
		c := exec.Command("sh", "-c", strings.Replace(printed, `\ `, "", 1))
		c.Dir = dir
		return c.Run() == nil
	}
	if !check() {
		t.Fatalf("%s: refused", printed)
	}
	for _, name := range files[:3] {
		for _, at := range []int{0, len(want[name]) / 2, len(want[name]) - 2} {
			bad := bytes.Clone(want[name])
			bad[at] ^= 1
			if err := os.WriteFile(filepath.Join(dir, name), bad, 0o600); err != nil {
				t.Fatal(err)
			}
			if check() {
				t.Errorf("%s with byte %d changed: accepted", name, at)
			}
		}
		if err := os.WriteFile(filepath.Join(dir, name), want[name], 0o600); err != nil {
			t.Fatal(err)
		}
	}
	// The figures on the page are those of sha256sum and openssl.
	sum, _, _ := strings.Cut(toolcheck.Run(t, "sha256sum", filepath.Join(dir, "record.json")), " ")
	key := toolcheck.Run(t, "sh", "-c", "openssl pkey -pubin -in "+filepath.Join(dir, "studio.pem")+" -outform DER | sha256sum")
	close := strings.ReplaceAll(page, " ", "")
	for what, figure := range map[string]string{"record": sum, "key": key[:64], "signature": strings.TrimSpace(toolcheck.Run(t, "openssl", "base64", "-A", "-in", filepath.Join(dir, "record.sig")))} {
		if !strings.Contains(close, figure) {
			t.Errorf("%s: %s does not stand on the page", what, figure)
		}
	}
}

// The text comes out in the order in which a person reads.
func TestReadingOrder(t *testing.T) {
	pdf, _ := signed(t, "a4")
	page := text(t, save(t, "c.pdf", pdf))
	at := 0
	for _, want := range []string{"CERTIFICATE FOR A PAINTING ON PANEL", "Low tide, evening", "Ada Example, 2026", "Oil on linen laid on birch plywood",
		"30 × 40 cm × 3 mm", "Signed lower right, in paint: AE 26", "I, Ada Example, of Riga, Latvia, made this panel and painted the work on it with my own hand. It is an original, the only one of its kind.",
		"Signature of the maker", "Place and date", "Studio stamp", "Riga, Latvia, 1 June 2026", "KB26-0001-K, the same number stands on the back of the panel", "1 of 2", "Studio key", "324b e2de a8bc 4446 1b02 33e5 1fa4 8902 ed6b 1cc6 71e7 739a f255 1e0b fe68 f54e",
		"KB26-0001-K", "2 of 2", "Low tide, evening", "SHA-256 of the record:", "BUILD-UP", "FRONT", "Hydrocarbon resin varnish", "110 µm, estimated", "Front, back and edges sealed.",
		"removable by a conservator with white spirit", "Edges, not drawn: acrylic dispersion sealer", "Medium oil on linen", "H × W × D 30 × 40 cm × 3 mm", "Pigments titanium white (PW 6)", "Subject tidal flats", "CARE AND DISPLAY", "35–65 %", "NOT RECORDED", "Distinguishing features",
		"WHAT THIS IS, AND IS NOT", "It is no appraisal", "THE STUDIO", "Riga, Latvia", "TO CHECK THIS CERTIFICATE", "https://example.org/P/KB260001K", "openssl pkeyutl -verify", "heads this page", "Ed25519", "signed text"} {
		i := strings.Index(page[at:], want)
		if i < 0 {
			t.Fatalf("%q does not follow %q in:\n%s", want, page[max(0, at-40):at], page)
		}
		at += i
	}
}

// The same input gives the same bytes; another time of issue gives others.
func TestSameBytes(t *testing.T) {
	k := finished(t)
	k.photo(jpegFile(t, shore(800, 600)))
	key := k.key()
	first := drawn(t, k.input(key))
	if !bytes.Equal(first, drawn(t, k.input(key))) {
		t.Error("the same input gives other bytes")
	}
	later := k.input(key)
	later.Issued = issue.Add(time.Second)
	if bytes.Equal(first, drawn(t, later)) {
		t.Error("another time of issue gives the same bytes")
	}
}

// Without a key nothing looks signed.
func TestUnsigned(t *testing.T) {
	k := finished(t)
	pdf := drawn(t, k.input(nil))
	path := save(t, "c.pdf", pdf)
	page := text(t, path)
	if !strings.Contains(page, "the studio had no key on the day of issue") || strings.Contains(page, "openssl") {
		t.Errorf("an unsigned certificate says:\n%s", page)
	}
	if list := toolcheck.Run(t, "pdfdetach", "-list", path); !strings.Contains(list, "record.json") || strings.Contains(list, "record.sig") {
		t.Errorf("files: %s", list)
	}
	if link, note := read(t, path, "300"); link == "" || note != "" {
		t.Errorf("symbols on an unsigned page: %q, %q", link, note)
	}
}

// A preview says so, and holds nothing that could pass for a certificate.
func TestPreview(t *testing.T) {
	k := finished(t)
	in := k.input(k.key())
	in.Preview = true
	path := save(t, "c.pdf", drawn(t, in))
	page := text(t, path)
	if !strings.Contains(page, "Preview, not issued") || strings.Contains(page, "Issued on") || !strings.Contains(page, "To be issued on") || regexp.MustCompile(`[0-9a-f]{4} [0-9a-f]{4} [0-9a-f]{4}`).MatchString(page) {
		t.Errorf("a preview says:\n%s", page)
	}
	if list := toolcheck.Run(t, "pdfdetach", "-list", path); !strings.HasPrefix(list, "0 ") {
		t.Errorf("files in a preview: %s", list)
	}
	if link, note := read(t, path, "300"); link == "" || note != "" {
		t.Errorf("symbols in a preview: %q, %q", link, note)
	}
}

func photoOf(t *testing.T, in certificate.Input) certificate.Photo {
	d, err := certificate.Draw(in)
	if err != nil {
		t.Fatal(err)
	}
	return d.Photo
}

// A preview stands where the certificate will stand: every word that both have
// lies in the same place, on as many pages.
func TestPreviewKeepsTheLayout(t *testing.T) {
	k := finished(t)
	k.photo(jpegFile(t, shore(400, 300)))
	in := k.input(k.key())
	in.Workshop.Keys = k.input(nil).Workshop.Keys // with the key on record
	before := in
	issuedPath := save(t, "issued.pdf", drawn(t, in))
	in.Preview, in.Deed = true, deed.Deed{}
	previewPath := save(t, "preview.pdf", drawn(t, in))
	issued, _, _ := boxes(t, issuedPath)
	preview, _, _ := boxes(t, previewPath)
	if len(preview) != len(issued) {
		t.Fatalf("%d pages, will be %d", len(preview), len(issued))
	}
	later := map[string]bool{} // what is made when it is issued, and what only a preview says
	for w := range strings.FieldsSeq("Preview, not issued: this page certifies nothing. To be Issued issued printed here when the certificate is issued. made") {
		later[w] = true
	}
	for n := range issued {
		at := map[string]bool{}
		for _, w := range issued[n] {
			at[fmt.Sprintf("%s %.2f %.2f", w.Text, w.XMin, w.YMin)] = true
		}
		for _, w := range preview[n] {
			// In a line of its own the date moves with the words before it.
			if !later[w.Text] && !at[fmt.Sprintf("%s %.2f %.2f", w.Text, w.XMin, w.YMin)] && !strings.Contains("on 1 June 2026. ·", w.Text) {
				t.Errorf("page %d: %q of the preview stands elsewhere", n+1, w.Text)
			}
		}
	}
	if a, b := photoOf(t, in), photoOf(t, before); a != b {
		t.Errorf("the photograph of the preview is %+v, will be %+v", a, b)
	}
}

// What is to be known of the photograph before it is printed.
func TestPhotoFacts(t *testing.T) {
	for _, c := range []struct {
		w, h   int
		ratio  float64 // to the panel of 30 × 40 cm
		turned bool
		most   float64 // pixels to the inch
	}{{400, 300, 1, false, 100}, {300, 400, 0.5625, true, 100}, {2400, 1800, 1, false, 1000}, {100, 100, 0.75, false, 50}} {
		k := finished(t)
		k.photo(jpegFile(t, shore(c.w, c.h)))
		d, err := certificate.Draw(k.input(nil))
		if err != nil {
			t.Fatal(err)
		}
		p := d.Photo
		if p.PixelsWide != c.w || math.Abs(p.Ratio-c.ratio) > 0.001 || p.Turned != c.turned || p.PixelsPerInch > c.most || p.PixelsPerInch < c.most/10 ||
			math.Abs(p.WidthMM/p.HeightMM-float64(c.w)/float64(c.h)) > 0.001 {
			t.Errorf("%d × %d: %+v", c.w, c.h, p)
		}
	}
	if d, err := certificate.Draw(finished(t).input(nil)); err != nil || d.Photo != (certificate.Photo{}) {
		t.Errorf("no photograph: %+v, %v", d.Photo, err)
	}
}

// A demonstration says so, by its key or by its studio.
func TestDemonstration(t *testing.T) {
	k := finished(t)
	byKey := drawn(t, k.input(k.keep(seal.DemoKey())))
	byStudio := drawn(t, newBench(t, all([]string{strings.Replace(studio, `"mark"`, `"demonstration":true,"mark"`, 1)}, shelf, work)...).input(nil))
	plain, _ := signed(t, "a4")
	for i, pdf := range [][]byte{byKey, byStudio, plain} {
		if says := strings.Contains(text(t, save(t, "c.pdf", pdf)), "It certifies nothing."); says != (i < 2) {
			t.Errorf("%d: says that it is a demonstration: %v", i, says)
		}
	}
}

// Buyer and price stand on the page if they are given, and never by themselves.
func TestPrivateThings(t *testing.T) {
	k := finished(t)
	in := k.input(nil)
	plain := text(t, save(t, "plain.pdf", drawn(t, in)))
	in.Buyer, in.Price = "M. Invented", "1400.00 EUR"
	asked := text(t, save(t, "asked.pdf", drawn(t, in)))
	for _, s := range []string{"Made out to", "M. Invented", "Price", "1400.00 EUR"} {
		if strings.Contains(plain, s) || !strings.Contains(asked, s) {
			t.Errorf("%q: on the plain page %v, when asked for %v", s, strings.Contains(plain, s), strings.Contains(asked, s))
		}
	}
}

// A certificate that takes the place of another says which.
func TestReplaces(t *testing.T) {
	before := strings.Repeat("a", 64)
	issued := fmt.Sprintf(`{"kind":"certificate-issued","record_sha256":%q,"at":"2026-05-31T23:30:00+03:00","panels":["KB26-0001-K"]}`, before)
	for n, want := range map[int]string{1: "Second certificate, replaces the first of 31 May 2026.", 3: "Fourth certificate, replaces the third of 31 May 2026.",
		20: "Certificate no. 21, replaces no. 20 of 31 May 2026."} {
		k := finished(t, slices.Repeat([]string{issued}, n)...)
		in := k.input(nil)
		in.Replaces, _ = record.ParseWhen("2026-05-31T23:30:00+03:00")
		if page := text(t, save(t, "c.pdf", drawn(t, in))); strings.Count(page, want) != 2 {
			t.Errorf("%d before: the page says:\n%s", n, page)
		}
	}
}

// Who says what by signing: one hand, a workshop, a panel made by one and
// painted by another.
func TestStatement(t *testing.T) {
	maker := `{"kind":"maker","key":"bo","name":"Bo Other","place":"Turku, Finland"}`
	by := func(texts []string, kind, who string) []string {
		var out []string
		for _, s := range texts {
			if strings.Contains(s, `"kind":"`+kind+`"`) {
				s = strings.Replace(s, `"panels"`, `"makers":[{"maker":"`+who+`"}],"panels"`, 1)
			}
			out = append(out, s)
		}
		return out
	}
	we := strings.Replace(studio, `"mark"`, `"voice":"we","mark"`, 1)
	for name, c := range map[string]struct {
		texts           []string
		want, signature string
	}{
		"one hand":   {all([]string{studio}, shelf, work), "I, Ada Example, of Riga, Latvia, made this panel and painted the work on it with my own hand. It is an original, the only one of its kind.", "Signature of the maker"},
		"a workshop": {all([]string{we}, shelf, work), "We, Ada Example, of Riga, Latvia, made this panel and painted the work on it with our own hands. It is an original, the only one of its kind.", "Signature for the studio"},
		"two":        {all([]string{studio, maker}, shelf, by(work, "paint", "bo")), "Maker of the panel: Ada Example. Painter of the work on it: Bo Other. So the studio recorded it.", "Signature for the studio"},
	} {
		page := text(t, save(t, "c.pdf", drawn(t, newBench(t, c.texts...).input(nil))))
		for _, want := range []string{c.want, c.signature} {
			if !strings.Contains(page, want) {
				t.Errorf("%s: %q is not on the page:\n%s", name, want, page[:700])
			}
		}
	}
}

// Whether there are others like it and whether it is framed stand on the front,
// who took the photograph below it.
func TestEditionFrameCredit(t *testing.T) {
	described := func(more string) string { return `{"kind":"described",` + more + `,"panels":["KB26-0001-K"]}` }
	for want, more := range map[string]string{
		"(11 3⁄4 × 15 3⁄4 × 1⁄8 in) Framed; size without frame Signed": `"framed":"yes"`, "(11 3⁄4 × 15 3⁄4 × 1⁄8 in) Not framed Signed": `"framed":"no"`, "Edition 2 of 3, framed": `"edition":"2 of 3","framed":"yes"`,
		"It is an original, the only one of its kind.": `"framed":"unknown"`, "It is an original. Signature": `"edition":"unknown"`,
	} {
		k := finished(t, described(more))
		file := jpegFile(t, shore(800, 600))
		k.photo(file)
		sum := sha256.Sum256(file)
		k.put(fmt.Sprintf(`{"kind":"photograph","role":"front","sha256":"%x","media_type":"image/jpeg","width_px":800,"height_px":600,"credit":"Bo Other","taken":"2026-05","panels":["KB26-0001-K"]}`, sum))
		page := text(t, save(t, "c.pdf", drawn(t, k.input(nil))))
		for _, want := range []string{want, "Photograph: Bo Other, May 2026"} {
			if !strings.Contains(page, want) {
				t.Errorf("%q is not on the page:\n%s", want, page[:700])
			}
		}
	}
}

// A photograph that is not the one on record is refused, and so is one that
// cannot be had.
func TestPhotographMustBeTheOne(t *testing.T) {
	k := finished(t)
	k.photo(jpegFile(t, shore(40, 30)))
	in := k.input(nil)
	other := jpegFile(t, shore(41, 30))
	for name, get := range map[string]func(record.Photograph) ([]byte, error){
		"another": func(record.Photograph) ([]byte, error) { return other, nil },
		"none":    func(record.Photograph) ([]byte, error) { return nil, os.ErrNotExist },
		"no way":  nil,
	} {
		in.Photograph = get
		if d, err := certificate.Draw(in); err == nil || d.PDF != nil {
			t.Errorf("%s: %v, %d bytes", name, err, len(d.PDF))
		}
	}
}

func TestRefused(t *testing.T) {
	k := finished(t)
	for name, change := range map[string]func(*certificate.Input){
		"paper":       func(in *certificate.Input) { in.Paper = "a5" },
		"no date":     func(in *certificate.Input) { in.Issued = time.Time{} },
		"hebrew name": func(in *certificate.Input) { in.Buyer = "שרה" },
		"no glyph":    func(in *certificate.Input) { in.Buyer = "𝕏" },
	} {
		in := k.input(nil)
		change(&in)
		d, err := certificate.Draw(in)
		if err == nil || d.PDF != nil {
			t.Errorf("%s: %v, %d bytes", name, err, len(d.PDF))
		}
		if in.Buyer != "" && !strings.Contains(err.Error(), "buyer") {
			t.Errorf("%s: the error does not name the field: %v", name, err)
		}
	}
}

// What verifies a certificate reads the files back from the PDF.
func TestRecordReadsBack(t *testing.T) {
	pdf, in := signed(t, "a4")
	dir := t.TempDir()
	toolcheck.Run(t, "pdfdetach", "-saveall", "-o", dir, save(t, "c.pdf", pdf))
	data, err := os.ReadFile(filepath.Join(dir, "record.json"))
	if err != nil {
		t.Fatal(err)
	}
	r, err := deed.Read(data)
	if err != nil || r.Number != number || r.Panel.Description().Title != in.Panel.Description().Title {
		t.Errorf("%+v, %v", r.Number, err)
	}
	if !json.Valid(data) {
		t.Error("record.json is not JSON")
	}
}
