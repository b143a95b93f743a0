package pdf_test

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"backleaf/record/paper"
	"backleaf/record/pdf"
)

func sampleAttachments() []pdf.Attachment {
	return []pdf.Attachment{
		{Name: "record.json", MIME: "application/json", Description: "the record", Relation: pdf.Source, Data: []byte(`{"number":"KB26-0142-1"}`)},
		{Name: "record.sig", MIME: "application/octet-stream", Relation: pdf.Supplement, Data: bytes.Repeat([]byte{0, 255, 13, 10}, 16)},
		{Name: "head.txt", MIME: "text/plain", Relation: pdf.Supplement, Data: nil},
	}
}

// sample is a file of this program, with attachments.
func sample(t testing.TB, files ...pdf.Attachment) []byte {
	t.Helper()
	d := &paper.Document{Info: paper.Info{Title: "Sample", Created: time.Date(2026, 3, 14, 9, 26, 53, 0, time.UTC)}}
	text, err := paper.Compose(100, paper.Span{Style: paper.Title, Text: "Evening, Low Tide"})
	if err != nil {
		t.Fatal(err)
	}
	d.Page(210, 297).Draw(paper.Text{X: 20, Y: 20, Block: text})
	data, err := d.Finish(paper.A3b, files...)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func save(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "a.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// build writes a file from the text of its objects; object 1 is the catalog.
func build(objects ...string) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.4\n")
	return withTable(&b, objects, "")
}

// withTable appends objects, a table of them and a trailer.
func withTable(b *bytes.Buffer, objects []string, trailer string) []byte {
	at := appendObjects(b, objects)
	start := b.Len()
	fmt.Fprintf(b, "xref\n0 %d\n0000000000 65535 f\r\n", len(at)+1)
	for _, a := range at {
		fmt.Fprintf(b, "%010d 00000 n\r\n", a)
	}
	fmt.Fprintf(b, "trailer\n<< /Size %d /Root 1 0 R %s >>\nstartxref\n%d\n%%%%EOF\n", len(at)+1, trailer, start)
	return b.Bytes()
}

func appendObjects(b *bytes.Buffer, objects []string) (at []int) {
	for i, o := range objects {
		at = append(at, b.Len())
		fmt.Fprintf(b, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	return at
}

// buildStream is build with a cross-reference stream: dict is all of its
// dictionary but type, size and root, table its content or nil for what dict
// says "/W [1 4 1]".
func buildStream(dict string, table []byte, objects ...string) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.5\n")
	at := append(appendObjects(&b, objects), b.Len())
	if table == nil {
		table = []byte{0, 0, 0, 0, 0, 255}
		for _, a := range at {
			table = append(table, 1, byte(a>>24), byte(a>>16), byte(a>>8), byte(a), 0)
		}
	}
	start := b.Len()
	fmt.Fprintf(&b, "%d 0 obj\n%s\nendobj\nstartxref\n%d\n%%%%EOF\n", len(at),
		stream(fmt.Sprintf("/Type /XRef /Size %d /Root 1 0 R %s", len(at)+1, dict), table), start)
	return b.Bytes()
}

func stream(dict string, data []byte) string {
	return fmt.Sprintf("<< /Length %d %s >>\nstream\n%s\nendstream", len(data), dict, data)
}

func deflated(data []byte) []byte {
	var b bytes.Buffer
	w := zlib.NewWriter(&b)
	w.Write(data)
	w.Close()
	return b.Bytes()
}

// bomb packs so many megabytes of zeros.
func bomb(mb int) []byte {
	var b bytes.Buffer
	w := zlib.NewWriter(&b)
	zeros := make([]byte, 1<<20)
	for range mb {
		w.Write(zeros)
	}
	w.Close()
	return b.Bytes()
}
