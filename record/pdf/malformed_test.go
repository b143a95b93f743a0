package pdf_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"backleaf/record/pdf"
)

// packedSample has catalog and specification in an object stream, number 4.
// head are its pairs of number and place.
func packedSample(dict, head, objects string) []byte {
	if dict == "" {
		dict = fmt.Sprintf("/Type /ObjStm /N 2 /First %d", len(head))
	}
	packed := stream(dict, []byte(head+objects))
	var b bytes.Buffer
	b.WriteString("%PDF-1.5\n")
	at := b.Len()
	fmt.Fprintf(&b, "3 0 obj\n%s\nendobj\n", content)
	at4 := b.Len()
	fmt.Fprintf(&b, "4 0 obj\n%s\nendobj\n", packed)
	at5 := b.Len()
	table := []byte{0, 0, 0, 0, 2, 0, 4, 0, 2, 0, 4, 1}
	for _, a := range []int{at, at4, at5} {
		table = append(table, 1, byte(a>>8), byte(a), 0)
	}
	fmt.Fprintf(&b, "5 0 obj\n%s\nendobj\nstartxref\n%d\n%%%%EOF\n", stream("/Type /XRef /Size 6 /Root 1 0 R /W [1 2 1]", table), at5)
	return b.Bytes()
}

func TestPacked(t *testing.T) {
	for name, c := range map[string]struct {
		data []byte
		good bool
	}{
		"as it should be":        {packedSample("", "1 0 2 59 ", list+" "+spec), true},
		"other numbers":          {packedSample("", "9 0 2 59 ", list+" "+spec), false},
		"too few":                {packedSample("/Type /ObjStm /N 1 /First 9", "1 0 2 59 ", list+" "+spec), false},
		"no end of them":         {packedSample("/Type /ObjStm /N 999999999 /First 9", "1 0 2 59 ", list+" "+spec), false},
		"a place beyond":         {packedSample("", "1 0 2 99999 ", list+" "+spec), false},
		"a place before":         {packedSample("", "1 0 2 -1 ", list+" "+spec), false},
		"a start beyond":         {packedSample("/Type /ObjStm /N 2 /First 9999", "1 0 2 59 ", list+" "+spec), false},
		"a stream of itself":     {packedSample("/Type /ObjStm /N 2 /First 1 0 R", "1 0 2 59 ", list+" "+spec), false},
		"a stream of no objects": {packedSample("/N 2 /First 9", "1 0 2 59 ", list+" "+spec), false},
		"a word for an object":   {packedSample("", "1 0 2 59 ", list+" endobj"), false},
	} {
		got, err := pdf.Attachments(c.data)
		if (err == nil) != c.good || c.good && string(got.Files[0].Data) != "x" || !c.good && !errors.Is(err, pdf.ErrMalformed) {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
}

func malformed() map[string][]byte {
	many := func(n int, format string) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, format, i)
		}
		return b.String()
	}
	return map[string][]byte{
		"nothing":                  nil,
		"no table":                 []byte("%PDF-1.4\n"),
		"a table that is its own":  []byte("%PDF-1.4\nxref\n0 0\ntrailer\n<< /Prev 9 >>\nstartxref\n9\n%%EOF\n"),
		"a table beyond the end":   []byte("%PDF-1.4\nstartxref\n99999999999\n%%EOF\n"),
		"a huge table":             []byte("%PDF-1.4\nxref\n0 999999999\ntrailer\n<<>>\nstartxref\n9\n%%EOF\n"),
		"huge numbers":             []byte("%PDF-1.4\nxref\n9223372036854775807 1\n0000000000 00000 n\ntrailer\n<<>>\nstartxref\n9\n%%EOF\n"),
		"a path":                   build(list, "<< /F (../../a) /EF << /F 3 0 R >> >>", content),
		"a hidden path":            build(list, "<< /UF <FEFF002F0061> /EF << /F 3 0 R >> >>", content),
		"a circle of references":   build(list, "2 0 R"),
		"a length that is itself":  build(list, spec, "<< /Length 3 0 R >>\nstream\n\nendstream"),
		"a length beyond the end":  build(list, spec, "<< /Length 99999 >>\nstream\n\nendstream"),
		"a length too short":       build(list, spec, "<< /Length 1 >>\nstream\nxyz\nendstream"),
		"a content that is no ref": build(list, "<< /F (a) /EF << /F << >> /UF << >> >> >>"),
		"a tree that is its child": build("<< /Names << /EmbeddedFiles 2 0 R >> >>", "<< /Kids [2 0 R 2 0 R] >>"),
		"half a pair":              build("<< /Names << /EmbeddedFiles << /Names [(a)] >> >> >>"),
		"twice the same key":       build(list, "<< /F (a) /EF << /F 3 0 R >> /F (a) >>", content),
		"a wrong sum":              build(list, spec, stream("/Params << /CheckSum <00> >>", []byte("x"))),
		"another filter":           build(list, spec, stream("/Filter /LZWDecode", []byte("x"))),
		"two filters":              build(list, spec, stream("/Filter [/FlateDecode /FlateDecode]", deflated(bomb(1)))),
		"another file's stream":    build(list, spec, stream("/F (b)", []byte("x"))),
		"deep nesting":             build(strings.Repeat("[", 100000)),
		"deep dictionaries":        build(strings.Repeat("<</A", 100000)),
		"no dictionary":            build("[]"),
		"no widths":                buildStream("", nil, list, spec, content),
		"widths of nothing":        buildStream("/W [0 0 0] /Index [0 2000000000]", []byte{}, list, spec, content),
		"huge widths":              buildStream("/W [1 2000000000 1]", nil, list, spec, content),
		"negative widths":          buildStream("/W [1 -4 1]", nil, list, spec, content),
		"overlong fields":          buildStream("/W [8 8 8]", bytes.Repeat([]byte{255}, 24*5), list, spec, content),
		"an endless index":         buildStream("/W [1 4 1] /Index [0 2147483647]", nil, list, spec, content),
		"half an index":            buildStream("/W [1 4 1] /Index [0]", nil, list, spec, content),
		"a stream in a stream":     buildStream("/W [1 1 1]", []byte{0, 0, 0, 2, 2, 0, 2, 1, 0, 2, 1, 0}, list, spec),
		"rows without end":         buildStream("/W [1 4 1] /Filter /FlateDecode /DecodeParms << /Predictor 12 /Columns 2000000000 >>", deflated([]byte("\x02x")), list, spec, content),
		"rows of no kind":          buildStream("/W [1 4 1] /Filter /FlateDecode /DecodeParms << /Predictor 12 /Columns 6 >>", deflated([]byte("\x09123456")), list, spec, content),
		"too many files":           build("<< /Names << /EmbeddedFiles << /Names ["+many(300, "(%d) 2 0 R")+"] >> >> >>", spec, content),
	}
}

func TestMalformed(t *testing.T) {
	for name, data := range malformed() {
		got, err := pdf.Attachments(data)
		if err == nil || got.Files != nil || !errors.Is(err, pdf.ErrMalformed) && name != "too many files" {
			t.Errorf("%s: %+v, error %v", name, got, err)
		}
	}
	for _, good := range [][]byte{build(list, spec, content), buildStream("/W [1 4 1]", nil, list, spec, content)} {
		if got, err := pdf.Attachments(good); err != nil || len(got.Files) != 1 || string(got.Files[0].Data) != "x" {
			t.Errorf("the file that the others are made from: %v", err)
		}
	}
}

// Cut short anywhere, or with any byte changed, a file is refused or read; it
// never brings the reader down.
func TestDamagedFiles(t *testing.T) {
	for _, data := range [][]byte{
		build(list, "<< /F (a) /UF (a) /EF << /F 3 0 R >> >>", stream("/Type /EmbeddedFile", []byte("hello"))),
		buildStream("/W [1 4 1]", nil, list, spec, content),
		packedSample("", "1 0 2 59 ", list+" "+spec),
	} {
		for i := range data {
			pdf.Attachments(data[:i])
			for _, c := range []byte{0, ' ', '<', '(', '/', '9', 0xFF} {
				damaged := bytes.Clone(data)
				damaged[i] = c
				if got, err := pdf.Attachments(damaged); err != nil && got.Files != nil {
					t.Fatalf("byte %d changed: attachments and an error", i)
				}
			}
		}
	}
}
