package main

import (
	"bytes"
	"compress/zlib"
	"context"
	"crypto/x509"
	"encoding/pem"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/record/deed"
	"backleaf/record/pdf"
	"backleaf/record/seal"
)

// A status that anybody signed, beside a true paper and beside a changed record,
// makes neither good, and accuses no honest one.
func TestStatusesThatLie(t *testing.T) {
	_, honest := issued(t)
	files := attached(t, honest)
	in := t.TempDir()
	paper := writeTo(t, filepath.Join(in, "c.pdf"), honest)
	plain := writeTo(t, filepath.Join(in, "record.json"), bytes.Replace(files["record.json"], []byte("Dune, evening"), []byte("A Great Master"), 1))
	block, _ := pem.Decode(files["studio.pem"])
	if _, err := x509.ParsePKIXPublicKey(block.Bytes); err != nil {
		t.Fatal(err)
	}
	studio, stranger := seal.DigestOf(block.Bytes), must(seal.NewKey())
	record := seal.DigestOf(files["record.json"])
	for _, c := range []struct {
		name, paper, date string
		says              map[seal.Standing][]seal.Digest
		code              int
		want              string
	}{
		{"of a stranger, who calls himself the successor", paper, "2026-06-01", map[seal.Standing][]seal.Digest{seal.KeyRetired: {studio}, seal.Issued: {record}}, exitDone, "is signed with another key"},
		{"of a stranger, who calls the key lost and the work stolen", paper, "2026-06-01", map[seal.Standing][]seal.Digest{seal.KeyLost: {studio}, seal.Stolen: {record}, seal.Withdrawn: {record}}, exitDone, "is signed with another key"},
		{"of a stranger, for a record without its key", plain, "2026-06-01", map[seal.Standing][]seal.Digest{seal.Issued: {seal.DigestOf(must(os.ReadFile(plain)))}}, exitUnverified, "the key of the paper is not here"},
		{"of a day to come", paper, "2099-01-01", map[seal.Standing][]seal.Digest{seal.Issued: {record}}, exitError, ""},
	} {
		s := seal.Status{Origin: "backleaf/XX", Date: c.date, Papers: c.says, Size: 1, Root: seal.LeafHash(nil)}
		status := writeTo(t, filepath.Join(t.TempDir(), "status"), must(s.Sign(stranger)))
		code, said := verified(t, c.paper, "--status", status)
		if code != c.code || !strings.Contains(said, c.want) || strings.Contains(said, "in force") || strings.Contains(said, "STOLEN") || strings.Contains(said, "named its successor") {
			t.Errorf("%s: exit code %d\n%s", c.name, code, said)
		}
	}
}

// What comes from outside makes no line of its own in a report.
func TestLinesThatLie(t *testing.T) {
	_, honest := issued(t)
	const lie = "x\n  holds            this is the very file that was issued"
	f, err := pdf.Open(honest)
	if err != nil {
		t.Fatal(err)
	}
	catalog, err := f.Catalog()
	if err != nil {
		t.Fatal(err)
	}
	catalog["AF"] = append(catalog["AF"].([]any), f.Add(pdf.Dict{"Type": pdf.Name("Filespec"), "F": pdf.String(lie), "UF": pdf.Text(lie),
		"EF": pdf.Dict{"F": f.Add(pdf.Deflated(zlib.DefaultCompression, []byte("{}")))}}))
	strays, err := f.Write("1.7", catalog, pdf.Dict{})
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{
		"stray.pdf": strays,
		"c.pdf: signed and unaltered; the key is 9b3c\n  holds  everything\n.pdf":      []byte("no paper"),
		"c.pdf: signed and unaltered; the key is 9b3c 08fc and so on, truly it is.pdf": []byte("no paper"),
	} {
		_, said := verified(t, writeTo(t, filepath.Join(t.TempDir(), name), data))
		for line := range strings.Lines(said) {
			if strings.HasPrefix(line, "  holds") && (strings.Contains(line, "very file") || strings.Contains(line, "everything")) || strings.HasPrefix(line, "c.pdf: signed") {
				t.Errorf("%q says %q in\n%s", name, line, said)
			}
		}
	}
}

// A symbol says what it is of; where its link leads and what belongs to it is
// told in the first line.
func TestSymbolsThatLie(t *testing.T) {
	dir, honest := issued(t)
	typedIn(t, dir, "", "studio", "change", "--link", "https://anna.example/P/")
	paper := writeTo(t, filepath.Join(t.TempDir(), "c.pdf"), honest)
	for _, c := range []struct {
		text, first string
		code        int
	}{
		{"https://anna.example/P/KB260001K", "", exitDone},
		{"HTTPS://ANNA.EXAMPLE/P/KB26-0001-K", "", exitDone},
		{"KB26-0001-K", "", exitDone},
		{"https://anna.example/p/KB260001K", "its link is not one that the studio prints", exitDone},
		{"https://anna.example\u017f/P/KB260001K", "its link is not one that the studio prints", exitDone},
		{"https:evil.example/KB260001K", "its link is not one that the studio prints", exitDone},
		{"//evil.example/KB260001K", "its link is not one that the studio prints", exitDone},
		{"evil.example/KB260001K", "its link is not one that the studio prints", exitDone},
		{"https://evil.example/P/KB260001K", "its link is not one that the studio prints", exitDone},
		{"https://anna.example.evil.example/P/KB260001K", "its link is not one that the studio prints", exitDone},
		{"KB26-0002-V", "ANOTHER PANEL", exitIntegrity},
	} {
		var out bytes.Buffer
		a := &app{in: strings.NewReader(c.text + "\n"), out: &out, err: io.Discard, env: func(string) string { return "" }, now: time.Now}
		code := a.run(context.Background(), []string{"--book", filepath.Join(dir, "studio.sqlite"), "verify", "-", paper})
		first, _, _ := strings.Cut(out.String(), "\n")
		if code != c.code || !strings.Contains(first, c.first) || c.first == "" && strings.Contains(first, "its link") {
			t.Errorf("%s: exit code %d\n%s", c.text, code, out.String())
		}
	}
}

// What an editor, the mail or a copying program puts around honest files does
// not accuse them.
func TestHonestFiles(t *testing.T) {
	_, honest := issued(t)
	files := attached(t, honest)
	for name, c := range map[string]struct {
		file   string
		change func([]byte) []byte
	}{
		"other line ends in the key":   {deed.KeyName, func(b []byte) []byte { return bytes.ReplaceAll(b, []byte("\n"), []byte("\r\n")) }},
		"a blank line after the head":  {deed.HeadName, func(b []byte) []byte { return append(b, '\n') }},
		"a byte order mark in the key": {deed.KeyName, func(b []byte) []byte { return append([]byte("\ufeff"), b...) }},
	} {
		dir := t.TempDir()
		for n, data := range files {
			if n == c.file {
				data = c.change(bytes.Clone(data))
			}
			writeTo(t, filepath.Join(dir, n), data)
		}
		if code, said := verified(t, dir); code != exitDone || !strings.Contains(said, c.file+", as an editor or the mail puts them there, were left out") {
			t.Errorf("%s: exit code %d\n%s", name, code, said)
		}
	}
	for name, data := range map[string]string{
		"a blank line before the PDF":      "\r\n" + string(honest),
		"a byte order mark before the PDF": "\ufeff" + string(honest),
		"zero bytes after the PDF":         string(honest) + strings.Repeat("\x00", 3000),
	} {
		code, said := verified(t, writeTo(t, filepath.Join(t.TempDir(), "c.pdf"), []byte(data)))
		if code != exitDone || !strings.Contains(said, "c.pdf: signed and unaltered") {
			t.Errorf("%s: exit code %d\n%s", name, code, said)
		}
	}
	if code, said := verified(t, writeTo(t, filepath.Join(t.TempDir(), "c.pdf"), append([]byte("junk\n"), honest...))); code == exitDone {
		t.Errorf("junk before the PDF: exit code %d\n%s", code, said)
	}
}

// What a paper says of itself that should make a reader stop is in the first
// line.
func TestWordsThatLie(t *testing.T) {
	k := must(seal.NewKey())
	s := seal.Statement{Origin: "backleaf/KB", Number: "KB26-0001-K", Maker: "\u041edile Marrens", Issued: "2099-03-02", Record: seal.DigestOf(nil)}
	_, said := verified(t, writeTo(t, filepath.Join(t.TempDir(), "s.txt"), must(s.Sign(k))))
	if first, _, _ := strings.Cut(said, "\n"); !strings.Contains(first, "“\u041edile”, mixes letters of two scripts that look alike; dated 2 March 2099, a day to come; signed") {
		t.Error(said)
	}
	s.Maker, s.Title, s.Issued = "Νίκος Παπαδόπουλος", "Étude 3 µm", "2026-03-02"
	if _, said := verified(t, writeTo(t, filepath.Join(t.TempDir(), "s.txt"), must(s.Sign(k)))); strings.Contains(said, "alike") || strings.Contains(said, "to come") {
		t.Error(said)
	}
}

// The studio's own status says of a paper what a buyer must hear; the record of
// a public page, which it names too, is no certificate.
func TestStatusesOfTheStudio(t *testing.T) {
	dir, honest := issued(t)
	k, _, err := seal.LoadKey(filepath.Join(dir, "studio.key"), nil)
	if err != nil {
		t.Fatal(err)
	}
	files := attached(t, honest)
	origin, _, _ := strings.Cut(string(files[deed.HeadName]), "\n")
	paper, record := writeTo(t, filepath.Join(t.TempDir(), "c.pdf"), honest), seal.DigestOf(files[deed.RecordName])
	for standing, c := range map[seal.Standing]struct {
		code int
		says string
	}{
		seal.Issued:    {exitDone, "in force by the studio’s status"},
		seal.Shown:     {exitIntegrity, "NO CERTIFICATE: the record of the studio’s public page"},
		seal.Discarded: {exitIntegrity, "DISCARDED"},
		seal.Earlier:   {exitIntegrity, "of an EARLIER WORK"},
		seal.Stolen:    {exitIntegrity, "STOLEN"},
	} {
		s := seal.Status{Origin: origin, Date: "2026-06-01", Papers: map[seal.Standing][]seal.Digest{standing: {record}}, Size: 9, Root: seal.LeafHash(nil)}
		code, said := verified(t, paper, "--status", writeTo(t, filepath.Join(t.TempDir(), "status"), must(s.Sign(k))))
		if first, _, _ := strings.Cut(said, "\n"); code != c.code || !strings.Contains(first, c.says) {
			t.Errorf("%s: exit code %d\n%s", standing, code, said)
		}
	}
}

// With the studio's lost key anyone can sign what only a later program can
// read.
func TestNewerOfLostKey(t *testing.T) {
	dir, honest := issued(t)
	k, _, err := seal.LoadKey(filepath.Join(dir, "studio.key"), nil)
	if err != nil {
		t.Fatal(err)
	}
	typedIn(t, dir, "", "studio", "key", "lost", "--because", "stolen")
	newer := []byte(`{"backleaf":"record/2","title":"Nocturne"}`)
	in := t.TempDir()
	writeTo(t, filepath.Join(in, deed.RecordName), newer)
	writeTo(t, filepath.Join(in, deed.SignatureName), must(k.SignRecord(newer)))
	writeTo(t, filepath.Join(in, deed.KeyName), attached(t, honest)[deed.KeyName])
	if code, said := verifiedWith(t, dir, in); code != exitIntegrity || !strings.Contains(said, "NOT ISSUED") {
		t.Errorf("exit code %d\n%s", code, said)
	}
}

// What cannot be verified is not verified by standing beside other such things.
func TestNothingVerified(t *testing.T) {
	k, heir := must(seal.NewKey()), must(seal.NewKey())
	word := must(seal.Succession{Origin: "backleaf/KB", New: heir.Public(), Date: "2026-06-01"}.Sign(k))
	for text, says := range map[string]string{
		"KB26-0001-K\nKB26-0002-V\n": "KB26-0001-K",
		string(word) + string(word):  "word for the key that follows it",
	} {
		if code, said := verified(t, writeTo(t, filepath.Join(t.TempDir(), "text"), []byte(text))); code != exitUnverified || !strings.Contains(said, says) {
			t.Errorf("exit code %d\n%s", code, said)
		}
	}
}
