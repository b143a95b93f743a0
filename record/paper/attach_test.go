package paper_test

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"backleaf/record/paper"
	"backleaf/record/toolcheck"
)

func TestAttachmentsComeBack(t *testing.T) {
	want := sampleAttachments()
	got, err := paper.Attachments(finish(t, sampleDocument(t), paper.A3b, want...))
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != len(want) {
		t.Fatalf("%d attachments, want %d", len(got), len(want))
	}
	for _, w := range want {
		found := false
		for _, g := range got {
			if g.Name == w.Name {
				found = bytes.Equal(g.Data, w.Data) && g.MIME == w.MIME && g.Relation == w.Relation && g.Description == w.Description
			}
		}
		if !found {
			t.Errorf("%s did not come back as it was", w.Name)
		}
	}
	none, err := paper.Attachments(finish(t, sampleDocument(t), paper.A1b))
	if err != nil || len(none) != 0 {
		t.Errorf("a file without attachments: %d, %v", len(none), err)
	}
}

// An independent program takes out the same bytes.
func TestAttachmentsByAnotherReader(t *testing.T) {
	toolcheck.Require(t, "qpdf")
	path := save(t, "a.pdf", finish(t, sampleDocument(t), paper.A3b, sampleAttachments()...))
	for _, a := range sampleAttachments() {
		out, err := exec.Command("qpdf", "--show-attachment="+a.Name, path).Output()
		if err != nil || !bytes.Equal(out, a.Data) {
			t.Errorf("%s: %v, %d bytes, want %d", a.Name, err, len(out), len(a.Data))
		}
	}
}

// Files that another program wrote can be read as well, with objects elsewhere.
func TestAttachmentsOfARewrittenFile(t *testing.T) {
	path := save(t, "a.pdf", finish(t, sampleDocument(t), paper.A3b, sampleAttachments()...))
	again := filepath.Join(t.TempDir(), "b.pdf")
	toolcheck.Run(t, "qpdf", "--object-streams=disable", path, again)
	pdf, err := os.ReadFile(again)
	if err != nil {
		t.Fatal(err)
	}
	got, err := paper.Attachments(pdf)
	if err != nil || len(got) != len(sampleAttachments()) {
		t.Errorf("%d attachments, %v", len(got), err)
	}
}

// build writes a file from the text of its objects; object 1 is the catalog.
func build(objects ...string) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.4\n")
	var at []int
	for i, o := range objects {
		at = append(at, b.Len())
		fmt.Fprintf(&b, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	start := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f\r\n", len(at)+1)
	for _, a := range at {
		fmt.Fprintf(&b, "%010d 00000 n\r\n", a)
	}
	fmt.Fprintf(&b, "trailer\n<< /Size %d /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF\n", len(at)+1, start)
	return b.Bytes()
}

func stream(dict string, data []byte) string {
	return fmt.Sprintf("<< /Length %d %s >>\nstream\n%s\nendstream", len(data), dict, data)
}

func bomb(n int) []byte {
	var b bytes.Buffer
	w := zlib.NewWriter(&b)
	zeros := make([]byte, 1<<20)
	for range n {
		w.Write(zeros)
	}
	w.Close()
	return b.Bytes()
}

const tree = "<< /Names << /EmbeddedFiles << /Names [(a) 2 0 R] >> >> >>"

func hostile() map[string][]byte {
	return map[string][]byte{
		"nothing":                  nil,
		"no table":                 []byte("%PDF-1.4\n"),
		"a table that is its own":  []byte("%PDF-1.4\nxref\n0 0\ntrailer\n<< /Prev 9 >>\nstartxref\n9\n%%EOF\n"),
		"a table beyond the end":   []byte("%PDF-1.4\nstartxref\n99999999999\n%%EOF\n"),
		"a huge table":             []byte("%PDF-1.4\nxref\n0 999999999\ntrailer\n<<>>\nstartxref\n9\n%%EOF\n"),
		"an unpacked flood":        build(tree, "<< /F (a) /EF << /F 3 0 R >> >>", stream("/Filter /FlateDecode", bomb(80))),
		"a path":                   build(tree, "<< /F (../../a) /EF << /F 3 0 R >> >>", stream("", []byte("x"))),
		"a hidden path":            build(tree, "<< /F (a) /UF <FEFF002F0061> /EF << /F 3 0 R >> >>", stream("", []byte("x"))),
		"a circle of references":   build(tree, "2 0 R"),
		"a length that is itself":  build(tree, "<< /F (a) /EF << /F 3 0 R >> >>", "<< /Length 3 0 R >>\nstream\n\nendstream"),
		"a length beyond the end":  build(tree, "<< /F (a) /EF << /F 3 0 R >> >>", "<< /Length 99999 >>\nstream\n\nendstream"),
		"a tree that is its child": build("<< /Names << /EmbeddedFiles 2 0 R >> >>", "<< /Kids [2 0 R 2 0 R] >>"),
		"twice the same name": build("<< /Names << /EmbeddedFiles << /Names [(a) 2 0 R (b) 2 0 R] >> >> >>",
			"<< /F (a) /EF << /F 3 0 R >> >>", stream("", []byte("x"))),
		"a wrong sum":    build(tree, "<< /F (a) /EF << /F 3 0 R >> >>", stream("/Params << /CheckSum <00> >>", []byte("x"))),
		"another filter": build(tree, "<< /F (a) /EF << /F 3 0 R >> >>", stream("/Filter /LZWDecode", []byte("x"))),
		"deep nesting":   build(strings.Repeat("[", 100000)),
		"no dictionary":  build("[]"),
	}
}

func TestHostileFiles(t *testing.T) {
	for name, pdf := range hostile() {
		if got, err := paper.Attachments(pdf); err == nil || got != nil {
			t.Errorf("%s: %d attachments, error %v", name, len(got), err)
		}
	}
	good := build(tree, "<< /F (a) /EF << /F 3 0 R >> >>", stream("", []byte("x")))
	if got, err := paper.Attachments(good); err != nil || len(got) != 1 || string(got[0].Data) != "x" {
		t.Errorf("the file that the hostile ones are made from: %v", err)
	}
}

// Cut short anywhere, or with any byte changed, a file is refused or read; it
// never brings the reader down.
func TestDamagedFiles(t *testing.T) {
	pdf := build(tree, "<< /F (a) /UF (a) /EF << /F 3 0 R >> >>", stream("/Type /EmbeddedFile", []byte("hello")))
	for i := range pdf {
		paper.Attachments(pdf[:i])
		for _, c := range []byte{0, ' ', '<', '(', '/', '9', 0xFF} {
			damaged := bytes.Clone(pdf)
			damaged[i] = c
			if got, err := paper.Attachments(damaged); err != nil && got != nil {
				t.Fatalf("byte %d changed: attachments and an error", i)
			}
		}
	}
}

func FuzzAttachments(f *testing.F) {
	for _, pdf := range hostile() {
		if len(pdf) < 1<<12 {
			f.Add(pdf)
		}
	}
	f.Add(build(tree, "<< /F (a) /EF << /F 3 0 R >> >>", stream("/Filter /FlateDecode", bomb(1))))
	f.Fuzz(func(t *testing.T, pdf []byte) {
		got, err := paper.Attachments(pdf)
		if err != nil && got != nil {
			t.Fatal("attachments and an error")
		}
		for _, a := range got {
			if a.Name == "" || strings.ContainsAny(a.Name, `/\`) || strings.HasPrefix(a.Name, ".") {
				t.Fatalf("name %q", a.Name)
			}
		}
	})
}
