package certificate_test

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
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

// read decodes the symbols of the first page at a resolution: the link and the
// signed statement, or nothing for what is not there.
func read(t testing.TB, path, dpi string) (link, note string) {
	t.Helper()
	toolcheck.Require(t, "pdftoppm", "zbarimg")
	root := filepath.Join(t.TempDir(), "page")
	toolcheck.Run(t, "pdftoppm", "-r", dpi, "-gray", "-png", "-singlefile", path, root)
	for _, l := range strings.Split(toolcheck.Run(t, "zbarimg", "-q", "--raw", root+".png"), "\n") {
		if strings.HasPrefix(l, "HTTPS://") {
			link = l
		} else {
			note += l + "\n"
		}
	}
	if note = strings.TrimRight(note, "\n"); note != "" {
		note += "\n"
	}
	return link, note
}

// An independent reader finds the link and the signed statement on the page,
// and the statement holds.
func TestSymbolsAreRead(t *testing.T) {
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
	for _, want := range []string{"CERTIFICATE", "KB26-0001-K", "Issued on 1 June 2026.", "Low tide, evening", "Ada Example", "Date 2026", "Medium Oil on linen laid on birch plywood",
		"30 × 40 cm × 3 mm", "lower right, in paint: AE 26", "tidal flats", "Riga, Latvia", "BUILD-UP", "Birch plywood, 3 mm. On the front", "hydrocarbon resin varnish",
		"Front, back and edges sealed.", "removable with white spirit", "Hydrocarbon resin varnish", "55 µm, estimated", "CARE AND DISPLAY", "40 to 60 %", "lux", "NOT RECORDED", "Distinguishing features",
		"STATEMENT BY THE MAKER", "I, Ada Example, of Riga, Latvia, made this panel", "WHAT THIS IS NOT", "Not an appraisal", "Signature of the maker", "Place and date", "Studio stamp",
		"TO CHECK THIS CERTIFICATE", "HTTPS://EXAMPLE.ORG/P/KB260001K", "openssl pkeyutl -verify", "signed text"} {
		i := strings.Index(page[at:], want)
		if i < 0 {
			t.Fatalf("%q does not follow %q in:\n%s", want, page[max(0, at-40):at], page)
		}
		at += i
	}
	if strings.Count(page, "CERTIFICATE") > 2 || strings.Contains(page, "1 OF") {
		t.Error("a certificate that fits one page has more")
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
	if !strings.Contains(page, "none: the studio had no signing key") || strings.Contains(page, "openssl") {
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
	if !strings.Contains(page, "Preview, not issued") || strings.Contains(page, "Issued on") || strings.Contains(page, "SHA-256") {
		t.Errorf("a preview says:\n%s", page)
	}
	if list := toolcheck.Run(t, "pdfdetach", "-list", path); !strings.HasPrefix(list, "0 ") {
		t.Errorf("files in a preview: %s", list)
	}
	if link, note := read(t, path, "300"); link == "" || note != "" {
		t.Errorf("symbols in a preview: %q, %q", link, note)
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

func TestReplaces(t *testing.T) {
	k := finished(t)
	in := k.input(nil)
	in.Replaces, _ = record.ParseWhen("2026-05-31T23:30:00+03:00")
	if page := text(t, save(t, "c.pdf", drawn(t, in))); !strings.Contains(page, "Replaces the certificate of 31 May 2026.") {
		t.Errorf("the page says:\n%s", page)
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
		var b bytes.Buffer
		if err := certificate.Draw(&b, in); err == nil || b.Len() > 0 {
			t.Errorf("%s: %v, %d bytes", name, err, b.Len())
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
		var b bytes.Buffer
		err := certificate.Draw(&b, in)
		if err == nil || b.Len() > 0 {
			t.Errorf("%s: %v, %d bytes", name, err, b.Len())
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
