package pdf_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"backleaf/record/pdf"
	"backleaf/record/toolcheck"
)

// same reports whether the attachments are those of the sample, in any order.
func same(got pdf.Attached) bool {
	want := sampleAttachments()
	for _, w := range want {
		found := false
		for _, g := range got.Files {
			if g.Name == w.Name {
				found = bytes.Equal(g.Data, w.Data) && g.MIME == w.MIME && g.Relation == w.Relation && g.Description == w.Description
			}
		}
		if !found {
			return false
		}
	}
	return len(got.Files) == len(want) && len(got.Strays) == 0
}

func TestAttachmentsComeBack(t *testing.T) {
	got, err := pdf.Attachments(sample(t, sampleAttachments()...))
	if err != nil || !same(got) || got.Updates != 0 {
		t.Errorf("%+v, %v", got, err)
	}
	got, err = pdf.Attachments(sample(t))
	if err != nil || len(got.Files) != 0 {
		t.Errorf("a file without attachments: %+v, %v", got, err)
	}
}

// Independent programs take out the same bytes.
func TestAttachmentsByOtherReaders(t *testing.T) {
	toolcheck.Require(t, "qpdf", "pdfdetach")
	path := save(t, sample(t, sampleAttachments()...))
	for _, a := range sampleAttachments() {
		out, err := exec.Command("qpdf", "--show-attachment="+a.Name, path).Output()
		if err != nil || !bytes.Equal(out, a.Data) {
			t.Errorf("qpdf, %s: %v, %d bytes, want %d", a.Name, err, len(out), len(a.Data))
		}
		to := filepath.Join(t.TempDir(), "out")
		toolcheck.Run(t, "pdfdetach", "-savefile", a.Name, "-o", to, path)
		if out, err := os.ReadFile(to); err != nil || !bytes.Equal(out, a.Data) {
			t.Errorf("pdfdetach, %s: %v, %d bytes, want %d", a.Name, err, len(out), len(a.Data))
		}
	}
}

// Each way in which another program saves a file again.
var savedAgain = [][]string{
	{"--object-streams=disable"},
	{"--object-streams=generate"},
	{"--object-streams=generate", "--compress-streams=n"},
	{"--linearize"},
	{"--linearize", "--object-streams=generate"},
	{"--qdf"},
	{"--recompress-flate", "--compression-level=9", "--object-streams=generate"},
	{"--newline-before-endstream", "--stream-data=uncompress"},
	{"--force-version=2.0", "--deterministic-id"},
}

func TestSavedAgain(t *testing.T) {
	toolcheck.Require(t, "qpdf")
	path := save(t, sample(t, sampleAttachments()...))
	for _, how := range savedAgain {
		again := filepath.Join(t.TempDir(), "again.pdf")
		toolcheck.Run(t, "qpdf", append(how, path, again)...)
		data, err := os.ReadFile(again)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := pdf.Attachments(data); err != nil || !same(got) || got.Updates != 0 {
			t.Errorf("%v: %+v, %v", how, got, err)
		}
	}
}

// Nothing is said of an encrypted file, whatever it takes to open it.
func TestEncrypted(t *testing.T) {
	toolcheck.Require(t, "qpdf")
	path := save(t, sample(t, sampleAttachments()...))
	for _, how := range [][]string{
		{"--encrypt", "", "owner", "256", "--"},
		{"--encrypt", "user", "owner", "256", "--", "--object-streams=generate"},
		{"--encrypt", "", "", "128", "--use-aes=y", "--"},
		{"--encrypt", "", "owner", "40", "--"}, // such a file is weak, and --allow-weak-crypto says yes to it
	} {
		again := filepath.Join(t.TempDir(), "again.pdf")
		toolcheck.Run(t, "qpdf", append(append([]string{"--allow-weak-crypto"}, how...), path, again)...)
		data, err := os.ReadFile(again)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := pdf.Attachments(data); !errors.Is(err, pdf.ErrEncrypted) || len(got.Files) != 0 {
			t.Errorf("%v: %+v, %v", how, got, err)
		}
	}
}

const (
	list = "<< /Names << /EmbeddedFiles << /Names [(a) 2 0 R] >> >> >>"
	spec = "<< /F (a) /UF (a) /EF << /F 3 0 R >> >>"
)

var content = stream("", []byte("x"))

// What is appended is read, and told.
func TestUpdates(t *testing.T) {
	first := build(list, spec, content)
	b := bytes.NewBuffer(bytes.Clone(first))
	second := withTable(b, []string{list, spec, stream("", []byte("other"))}, fmt.Sprintf("/Prev %d", bytes.LastIndex(first, []byte("xref\n0"))))
	got, err := pdf.Attachments(second)
	if err != nil || got.Updates != 1 || string(got.Files[0].Data) != "other" {
		t.Errorf("appended once: %+v, %v", got, err)
	}
	if got, err = pdf.Attachments(first); err != nil || got.Updates != 0 || string(got.Files[0].Data) != "x" {
		t.Errorf("never: %+v, %v", got, err)
	}
}

// A file for old and new programs: the table says that an object is free, the
// stream where it stands.
func TestTableAndStream(t *testing.T) {
	var b bytes.Buffer
	b.WriteString("%PDF-1.5\n")
	at := append(appendObjects(&b, []string{list, spec, content}), b.Len())
	row := func(a int) []byte { return []byte{1, byte(a >> 8), byte(a), 0} }
	fmt.Fprintf(&b, "4 0 obj\n%s\nendobj\n", stream("/Type /XRef /Size 5 /W [1 2 1] /Index [2 2]", append(row(at[1]), row(at[2])...)))
	start := b.Len()
	fmt.Fprintf(&b, "xref\n0 5\n0000000000 65535 f\r\n%010d 00000 n\r\n0000000000 00000 f\r\n0000000000 00000 f\r\n%010d 00000 n\r\n", at[0], at[3])
	fmt.Fprintf(&b, "trailer\n<< /Size 5 /Root 1 0 R /XRefStm %d >>\nstartxref\n%d\n%%%%EOF\n", at[3], start)
	got, err := pdf.Attachments(b.Bytes())
	if err != nil || len(got.Files) != 1 || string(got.Files[0].Data) != "x" {
		t.Errorf("%+v, %v", got, err)
	}
	if out, err := exec.Command("qpdf", "--show-attachment=a", save(t, b.Bytes())).Output(); err == nil && string(out) != "x" {
		t.Errorf("qpdf reads %q", out)
	}
}

func TestStrays(t *testing.T) {
	page := func(annotation string) []byte {
		return build("<< /Names << /EmbeddedFiles << /Names [(a) 2 0 R] >> >> /Pages 4 0 R >>", spec, content,
			"<< /Type /Pages /Kids [5 0 R] /Count 1 >>", "<< /Type /Page /Parent 4 0 R /Annots ["+annotation+"] >>", stream("", []byte("y")))
	}
	for name, c := range map[string]struct {
		annotation string
		strays     []string
		err        error
	}{
		"none":                     {"", nil, nil},
		"the listed file":          {"<< /Subtype /FileAttachment /FS 2 0 R >>", nil, nil},
		"another file":             {"<< /Subtype /FileAttachment /FS << /F (b) /EF << /F 6 0 R >> >> >>", []string{"b"}, nil},
		"a file without a name":    {"<< /Subtype /FileAttachment /FS << /EF << /F 6 0 R >> >> >>", []string{""}, nil},
		"the same by another name": {"<< /Subtype /FileAttachment /FS << /F (b) /EF << /F 3 0 R >> >> >>", []string{"b"}, nil},
		"another by the same name": {"<< /Subtype /FileAttachment /FS << /F (a) /EF << /F 6 0 R >> >> >>", nil, pdf.ErrAmbiguous},
		"another with two names":   {"<< /Subtype /FileAttachment /FS << /F (c) /UF (a) /EF << /F 6 0 R >> >> >>", nil, pdf.ErrAmbiguous},
	} {
		got, err := pdf.Attachments(page(c.annotation))
		if !errors.Is(err, c.err) || fmt.Sprint(got.Strays) != fmt.Sprint(c.strays) || err == nil && len(got.Files) != 1 {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
}

// A program that finds a fault in the tables looks through the whole file: what
// no table lists, and what is of another generation than its table says, shows
// one reader another document.
func TestUnlisted(t *testing.T) {
	honest := build(list, spec, content)
	forged := []byte("1 7 obj\n<< /Names << /EmbeddedFiles << /Names [(a) 8 0 R] >> >> >>\nendobj\n")
	for name, data := range map[string][]byte{
		"an object that no table lists": between(honest, []byte("9 0 obj\n<< >>\nendobj\n")),
		"another generation of one":     between(honest, forged),
		"which the trailer names":       bytes.Replace(between(honest, forged), []byte("/Root 1 0 R"), []byte("/Root 1 7 R"), 1),
		"a reference to a generation":   bytes.Replace(honest, []byte("[(a) 2 0 R]"), []byte("[(a) 2 1 R]"), 1),
		"an object of a generation":     bytes.Replace(honest, []byte("2 0 obj"), []byte("2 3 obj"), 1),
	} {
		if got, err := pdf.Attachments(data); !errors.Is(err, pdf.ErrAmbiguous) || got.Files != nil {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
}

// A file that the owner attached is no fault, and its name is bounded.
func TestOwnersFiles(t *testing.T) {
	long := strings.Repeat("n", 1<<16)
	got, err := pdf.Attachments(build("<< /Names << /EmbeddedFiles << /Names [(a) 2 0 R (b) 4 0 R (c) 5 0 R] >> >> >>",
		spec, content, "<< /F (Invoice 2026 \\(copy\\).pdf) /EF << /F 6 0 R >> >>", "<< /F ("+long+") /EF << /F 6 0 R >> >>", stream("", []byte("y"))))
	if err != nil || len(got.Files) != 1 || len(got.Strays) != 2 || got.Strays[0] != "Invoice 2026 (copy).pdf" || len(got.Strays[1]) > 100 {
		t.Errorf("%+v, %v", got, err)
	}
}

// Two programs would take out two things: nothing is taken out here.
func TestAmbiguous(t *testing.T) {
	y := stream("", []byte("y"))
	for name, data := range map[string][]byte{
		"two names":             build(list, "<< /F (a) /UF (b) /EF << /F 3 0 R >> >>", content),
		"a name of old systems": build(list, "<< /F (a) /DOS (b) /EF << /F 3 0 R >> >>", content),
		"two contents":          build(list, "<< /F (a) /UF (a) /EF << /F 3 0 R /UF 4 0 R >> >>", content, y),
		"twice the same name": build("<< /Names << /EmbeddedFiles << /Names [(a) 2 0 R (b) 4 0 R] >> >> >>",
			spec, content, "<< /F (a) /EF << /F 5 0 R >> >>", y),
		"a key that is another's name": build("<< /Names << /EmbeddedFiles << /Names [(b) 2 0 R (a) 4 0 R] >> >> >>",
			spec, content, "<< /F (c) /EF << /F 5 0 R >> >>", y),
	} {
		if got, err := pdf.Attachments(data); !errors.Is(err, pdf.ErrAmbiguous) || got.Files != nil {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
	// A key of its own is no second name: some programs number the keys.
	got, err := pdf.Attachments(build("<< /Names << /EmbeddedFiles << /Names [(0001) 2 0 R] >> >> >>", spec, content))
	if err != nil || len(got.Files) != 1 || got.Files[0].Name != "a" {
		t.Errorf("another key: %+v, %v", got, err)
	}
	// A file that is listed twice, or attached again elsewhere, is one file while its bytes are the same: so some programs leave what they replaced.
	for name, data := range map[string][]byte{
		"listed":    build("<< /Names << /EmbeddedFiles << /Names [(a) 2 0 R (b) 2 0 R] >> >> >>", spec, content),
		"elsewhere": build("<< /AF [4 0 R] /Names << /EmbeddedFiles << /Names [(a) 2 0 R] >> >> >>", spec, content, "<< /F (a) /EF << /F 5 0 R >> >>", content),
	} {
		if got, err := pdf.Attachments(data); err != nil || len(got.Files) != 1 || len(got.Strays) != 0 {
			t.Errorf("%s twice: %+v, %v", name, got, err)
		}
	}
	// Two streams of the same bytes are one content.
	got, err = pdf.Attachments(build(list, "<< /F (a) /UF (a) /EF << /F 3 0 R /UF 4 0 R >> >>", content, content))
	if err != nil || len(got.Files) != 1 || len(got.Strays) != 0 {
		t.Errorf("the same bytes twice: %+v, %v", got, err)
	}
}

func FuzzAttachments(f *testing.F) {
	for _, data := range malformed() {
		if len(data) < 1<<12 {
			f.Add(data)
		}
	}
	f.Add(build(list, spec, stream("/Filter /FlateDecode", bomb(1))))
	f.Add(buildStream("/W [1 4 1]", nil, list, spec, content))
	f.Add(packedSample("", "1 0 2 59 ", list+spec))
	f.Add(sample(f, sampleAttachments()...))
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := pdf.Attachments(data)
		if err != nil && (got.Files != nil || got.Strays != nil || !errors.Is(err, pdf.ErrMalformed) && !errors.Is(err, pdf.ErrEncrypted) && !errors.Is(err, pdf.ErrAmbiguous)) {
			t.Fatalf("%+v, %v", got, err)
		}
		for _, a := range got.Files {
			if a.Name == "" || strings.ContainsAny(a.Name, `/\`) || strings.HasPrefix(a.Name, ".") {
				t.Fatalf("name %q", a.Name)
			}
		}
	})
}
