package main

import (
	"bytes"
	"compress/zlib"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"backleaf/record/pdf"
	"backleaf/record/toolcheck"
)

// issued makes a studio with a key and a certificate, and returns its folder.
func issued(t *testing.T) (dir string, certificate []byte) {
	t.Helper()
	dir = t.TempDir()
	typedIn(t, dir, "", "studio", "new", "--maker", "Ilze Kraukle", "--mark", "KB")
	typedIn(t, dir, "", "studio", "key", "new")
	typedIn(t, dir, "", "panel", "add", "--count", "2", "--size", "20 x 30 cm x 6 mm")
	typedIn(t, dir, "", "paint", "0001", "--medium", "oil")
	typedIn(t, dir, "", "panel", "describe", "0001", "--title", "Dune, evening", "--made", "2026")
	typedIn(t, dir, "", "certificate", "0001", "-o", filepath.Join(dir, "c.pdf"))
	data, err := os.ReadFile(filepath.Join(dir, "c.pdf"))
	if err != nil {
		t.Fatal(err)
	}
	return dir, data
}

// verifiedWith runs verify beside the book in a folder, or beside none.
func verifiedWith(t *testing.T, dir string, args ...string) (int, string) {
	t.Helper()
	if dir == "" {
		return verified(t, args...)
	}
	var out bytes.Buffer
	a := &app{in: strings.NewReader(""), out: &out, err: io.Discard, env: func(string) string { return "" }, now: time.Now}
	code := a.run(context.Background(), append([]string{"--book", filepath.Join(dir, "studio.sqlite"), "verify"}, args...))
	return code, out.String()
}

// repainted is a certificate whose page was drawn anew, its attachments
// untouched: nothing was appended, every program reads it.
func repainted(t *testing.T, data []byte) []byte {
	t.Helper()
	f, err := pdf.Open(data)
	if err != nil {
		t.Fatal(err)
	}
	catalog, err := f.Catalog()
	if err != nil {
		t.Fatal(err)
	}
	err = f.Dicts(func(d pdf.Dict) error {
		if d["Type"] == any(pdf.Name("Page")) {
			d["Contents"] = f.Add(pdf.Deflated(zlib.DefaultCompression, []byte("BT /F1 24 Tf 72 700 Td (A Great Master, 1890) Tj ET")))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	out, err := f.Write("1.7", catalog, pdf.Dict{})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

var (
	startsAt = regexp.MustCompile(`startxref\s+(\d+)`)
	root     = regexp.MustCompile(`/Root (\d+ 0 R)`)
	size     = regexp.MustCompile(`/Size (\d+)`)
	page     = regexp.MustCompile(`(?s)(\d+) 0 obj\n<<((?:[^>]|>[^>])*?/Type /Page\n.*?)>>\nendobj`)
	contents = regexp.MustCompile(`/Contents \d+ 0 R`)
)

// appended is a certificate to which another page object was appended.
func appended(t *testing.T, data []byte) []byte {
	t.Helper()
	m := page.FindSubmatch(data)
	if m == nil {
		t.Fatal("no page")
	}
	b := bytes.NewBuffer(bytes.Clone(data))
	at := b.Len()
	fmt.Fprintf(b, "%s 0 obj\n<<%s>>\nendobj\n", m[1], contents.ReplaceAll(m[2], nil))
	start := b.Len()
	fmt.Fprintf(b, "xref\n%s 1\n%010d 00000 n\r\ntrailer\n<< /Size %s /Root %s /Prev %s >>\nstartxref\n%d\n%%%%EOF\n", m[1], at,
		size.FindSubmatch(data)[1], root.FindSubmatch(data)[1], startsAt.FindSubmatch(data)[1], start)
	return b.Bytes()
}

// A page that lies while the attachments are untouched.
func TestPagesThatLie(t *testing.T) {
	dir, honest := issued(t)
	attach := func(change func(pdf.Dict, *pdf.File)) []byte {
		f, err := pdf.Open(honest)
		if err != nil {
			t.Fatal(err)
		}
		catalog, err := f.Catalog()
		if err != nil {
			t.Fatal(err)
		}
		change(catalog, f)
		out, err := f.Write("1.7", catalog, pdf.Dict{})
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	spec := func(f *pdf.File, name, second string, data []byte) pdf.Ref {
		return f.Add(pdf.Dict{"Type": pdf.Name("Filespec"), "F": pdf.String(name), "UF": pdf.Text(second), "EF": pdf.Dict{"F": f.Add(pdf.Deflated(zlib.DefaultCompression, data))}})
	}
	files := attached(t, honest)
	for _, c := range []struct {
		name        string
		data        []byte
		alone, book int    // exit codes without and with the studio's book
		sum, beside string // what the first line says, without and with it
		says        []string
	}{
		{"as it was issued", honest, exitDone, exitDone, "signed and unaltered; the key is", "signed and unaltered", []string{"this is the very file that was issued"}},
		{"page drawn anew", repainted(t, honest), exitDone, exitDone, "signed and unaltered", "not the very file that was issued", nil},
		{"page appended", appended(t, honest), exitDone, exitDone, "something was appended", "not the very file that was issued", []string{"what was appended to the file after it was made, once"}},
		{"another file attached", attach(func(c pdf.Dict, f *pdf.File) {
			c["AF"] = append(c["AF"].([]any), spec(f, "real-record.json", "real-record.json", []byte("{}")))
		}), exitDone, exitDone, "signed and unaltered", "not the very file", []string{"what else is attached to the file and does not belong to its record: real-record.json"}},
		{"two names of one file", attach(func(c pdf.Dict, f *pdf.File) {
			c["AF"] = append(c["AF"].([]any), spec(f, "record.json", "other.json", []byte("{}")))
		}), exitIntegrity, exitIntegrity, "ALTERED", "ALTERED", nil},
		{"two files of one name", attach(func(c pdf.Dict, f *pdf.File) {
			c["AF"] = append(c["AF"].([]any), spec(f, "record.json", "record.json", []byte("{}")))
		}), exitIntegrity, exitIntegrity, "ALTERED", "ALTERED", nil},
		{"the same file attached again", attach(func(c pdf.Dict, f *pdf.File) {
			c["AF"] = append(c["AF"].([]any), spec(f, "record.json", "record.json", files["record.json"]))
		}), exitDone, exitDone, "signed and unaltered", "not the very file", nil},
		{"without attachments", attach(func(c pdf.Dict, f *pdf.File) { delete(c, "AF"); delete(c, "Names") }),
			exitUnverified, exitUnverified, "it carries no record: nothing can be said", "it carries no record", []string{"only the file as the studio sent it"}},
		{"cut off", honest[:len(honest)-2000], exitUnverified, exitUnverified, "nothing of it could be verified", "nothing of it", []string{"take the attachments out with another program"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := writeTo(t, filepath.Join(t.TempDir(), "c.pdf"), c.data)
			for _, at := range []struct {
				book string
				code int
				sum  string
			}{{"", c.alone, c.sum}, {dir, c.book, c.beside}} {
				code, said := verifiedWith(t, at.book, path)
				first, _, _ := strings.Cut(said, "\n")
				if code != at.code || !strings.Contains(first, at.sum) {
					t.Errorf("book %q: exit code %d\n%s", at.book, code, said)
				}
				if strings.Contains(first, "signed") {
					for _, want := range []string{"KB26-0001-K", "Dune, evening", "Ilze Kraukle", "20 x 30 cm x 6 mm", "2026", "oil", "what the page shows: only the record attached to it is signed"} {
						if !strings.Contains(said, want) {
							t.Errorf("it does not say %q:\n%s", want, said)
						}
					}
				}
				for _, want := range c.says {
					if (at.book != "" || !strings.Contains(want, "very file")) && !strings.Contains(said, want) {
						t.Errorf("book %q: it does not say %q:\n%s", at.book, want, said)
					}
				}
			}
		})
	}
}

// An honest certificate that another program saved again is not accused; of an
// encrypted one nothing can be known.
func TestHonestPages(t *testing.T) {
	toolcheck.Require(t, "qpdf")
	dir, honest := issued(t)
	from := writeTo(t, filepath.Join(t.TempDir(), "c.pdf"), honest)
	record := writeTo(t, filepath.Join(t.TempDir(), "record.json"), attached(t, honest)["record.json"])
	for _, c := range []struct {
		how  []string
		code int
		sum  string
	}{
		{[]string{"--object-streams=generate"}, exitDone, "signed and unaltered"},
		{[]string{"--linearize"}, exitDone, "signed and unaltered"},
		{[]string{"--linearize", "--object-streams=generate"}, exitDone, "signed and unaltered"},
		{[]string{"--qdf"}, exitDone, "signed and unaltered"},
		{[]string{"--add-attachment", record, "--replace", "--"}, exitDone, "signed and unaltered"},
		{[]string{"--encrypt", "", "owner", "256", "--"}, exitUnverified, "nothing of it could be verified"},
	} {
		to := filepath.Join(t.TempDir(), "c.pdf")
		if msg, err := exec.Command("qpdf", append(append([]string{from}, c.how...), to)...).CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, msg)
		}
		for _, book := range []string{"", dir} {
			code, said := verifiedWith(t, book, to)
			first, _, _ := strings.Cut(said, "\n")
			if code != c.code || !strings.Contains(first, c.sum) || strings.Contains(first, "ALTERED") {
				t.Errorf("%v, book %q: exit code %d\n%s", c.how, book, code, said)
			}
		}
	}
}
