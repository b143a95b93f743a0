package pdf_test

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"testing"

	"backleaf/record/pdf"
)

// refused reports that nothing was taken out, and that the file was called what
// it is.
func refused(t *testing.T, what string, data []byte, as error) {
	t.Helper()
	if got, err := pdf.Attachments(data); !errors.Is(err, as) || got.Files != nil {
		t.Errorf("%s: %+v, %v", what, got, err)
	}
}

// between puts bytes before the table of a file of build.
func between(honest, add []byte) []byte {
	table := bytes.LastIndex(honest, []byte("xref\n0"))
	b := append(bytes.Clone(honest[:table]), add...)
	b = append(b, honest[table:]...)
	return bytes.Replace(b, fmt.Appendf(nil, "startxref\n%d", table), fmt.Appendf(nil, "startxref\n%d", table+len(add)), 1)
}

// A reader that looks through the whole file finds an object or a trailer in
// every spelling, in a stream as well: none may stand there.
func TestHiddenObjects(t *testing.T) {
	honest := build(list, spec, content)
	for _, head := range []string{"1 0 obj", "9 0 obj", "1 7 obj", "1 0\nobj", "1\r0\robj", "1 0 % x\nobj", "% 1 0 obj", "1 0obj", "x1 0 obj", "1\x000\fobj", "(1 0 obj)", "null 1 0 obj",
		"trailer <<", "trailer\r%x\r<<"} {
		forged := []byte("\r" + head + "<< /Names << /EmbeddedFiles << /Names [(a) 8 0 R] >> >> >>\rendobj\r")
		refused(t, "between objects: "+head, between(honest, forged), pdf.ErrAmbiguous)
		// What stands in a stream may be a PDF that the owner attached.
		refused(t, "in a stream: "+head, build(list, spec, stream("", forged)), pdf.ErrMalformed)
		refused(t, "in a packed stream: "+head, build(list, spec, content, stream("/Filter /FlateDecode", append([]byte("\x78\x01\x00"), forged...))), pdf.ErrMalformed)
	}
	for _, remark := range []string{"% a remark\n", "endobj\n", "1 0 R obj\n", "trailer\n", "12 objects\n"} {
		if _, err := pdf.Attachments(between(honest, []byte(remark))); err != nil {
			t.Errorf("%q: %v", remark, err)
		}
	}
}

var entryOf = regexp.MustCompile(`[0-9]{10} 00000 n`)

// Every entry of a table leads to its own object, needed or not.
func TestEntriesLeadToTheirObjects(t *testing.T) {
	honest := build(list, spec, content, "<< /Unused true >>", "<< /Unused true >>")
	rows := entryOf.FindAllIndex(honest, -1)
	for i, row := range rows {
		for _, by := range []int{-2, -1, 1, 2} {
			data := bytes.Clone(honest)
			var at int
			fmt.Sscanf(string(data[row[0]:row[0]+10]), "%d", &at)
			copy(data[row[0]:], fmt.Appendf(nil, "%010d", at+by))
			if _, err := pdf.Attachments(data); err == nil && data[at+by] != '\n' {
				t.Errorf("entry %d moved by %d bytes is read", i+1, by)
			}
		}
		for j, other := range rows {
			if i == j {
				continue
			}
			data := bytes.Clone(honest)
			copy(data[row[0]:row[1]], honest[other[0]:other[1]])
			refused(t, fmt.Sprintf("entry %d leads to object %d", i+1, j+1), data, pdf.ErrAmbiguous)
		}
	}
}

// What makes a reader look through the whole file, or leads it elsewhere then.
func TestOtherDocuments(t *testing.T) {
	honest := build(list, spec, content)
	from := func(old, new string) []byte { return bytes.Replace(honest, []byte(old), []byte(new), 1) }
	other := "<< /Type /Catalog >>"
	updated := func(trailer string, objects ...string) []byte {
		return withTable(bytes.NewBuffer(bytes.Clone(honest)), objects, fmt.Sprintf("/Prev %d %s", bytes.LastIndex(honest, []byte("xref\n0")), trailer))
	}
	for name, data := range map[string][]byte{
		"a reference that no table has": build("<< /AcroForm 99 0 R /Names << /EmbeddedFiles << /Names [(a) 2 0 R] >> >> >>", spec, content),
		"a second catalog":              build(list, spec, content, other),
		"a second root":                 bytes.Replace(updated("", list, spec, content, other), []byte("/Root 1 0 R"), []byte("/Root 2 0 R"), 1),
		"a table that none leads to":    build(list, spec, content, stream("/Type /XRef /Root 9 0 R /Size 1 /W [1 1 1]", nil)),
		"a pack that none leads to":     build(list, spec, content, stream("/Type /ObjStm /N 1 /First 4", []byte("1 0 <<>>"))),
		"data beside the word":          from("\nstream\n", "\nstream "),
		"data behind a return":          from("\nstream\n", "\nstream\r"),
		"a filter by its short name":    build(list, spec, stream("/Fl /FlateDecode", []byte("x"))),
	} {
		refused(t, name, data, pdf.ErrAmbiguous)
	}
	// An object listed twice over: inside the data of another.
	inside := build(list, spec, content, stream("", []byte("5 0 obj\nnull\nendobj")), "null")
	rows := entryOf.FindAllIndex(inside, -1)
	copy(inside[rows[4][0]:], fmt.Appendf(nil, "%010d", bytes.Index(inside, []byte("5 0 obj"))))
	refused(t, "an object in another", bytes.Replace(inside, []byte("5 0 obj\nnull\nendobj\nxref"), []byte("                   \nxref"), 1), pdf.ErrAmbiguous)
	// What is replaced stands before what replaces it.
	old := bytes.LastIndex(honest, []byte("xref\n0"))
	first := bytes.NewBuffer(bytes.Clone(honest[:old]))
	at := appendObjects(first, []string{list, spec, stream("", []byte("forged"))})
	older := first.Len()
	fmt.Fprintf(first, "xref\n3 1\n%010d 00000 n\r\ntrailer\n<< /Size 4 /Root 1 0 R >>\n", at[2])
	newer := first.Len()
	b := append(first.Bytes(), honest[old:]...)
	b = bytes.Replace(b, []byte("/Size 4 /Root 1 0 R  >>"), fmt.Appendf(nil, "/Size 4 /Root 1 0 R /Prev %d >>", older), 1)
	b = bytes.Replace(b, fmt.Appendf(nil, "startxref\n%d", old), fmt.Appendf(nil, "startxref\n%d", newer), 1)
	refused(t, "the replaced object comes last", b, pdf.ErrAmbiguous)
	if got, err := pdf.Attachments(updated("", list, spec, content)); err != nil || got.Updates != 1 {
		t.Errorf("an update as it should be: %+v, %v", got, err)
	}
}
