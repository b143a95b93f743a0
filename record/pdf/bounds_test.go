package pdf_test

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"backleaf/record/pdf"
	"backleaf/record/toolcheck"
)

// greedy are files that ask for far more than they hold, or for all that they
// may hold.
func greedy() map[string][]byte {
	fill := func(s string) string { return strings.Repeat(s, (pdf.MaxBytes-4000)/len(s)) }
	flood := bomb(1000)
	return map[string][]byte{
		"a flood in an attachment":     build(list, spec, stream("/Filter /FlateDecode", flood)),
		"a flood of references":        buildStream("/W [1 0 0] /Filter /FlateDecode", flood, list, spec, content),
		"a flood of entries":           buildStream("/W [0 1 0] /Index [0 8388608] /Filter /FlateDecode", bomb(31), list, spec, content),
		"a flood of objects":           packedSample("/Type /ObjStm /N 2 /First 9 /Filter /FlateDecode", "", string(flood)),
		"an array of numbers":          build(list, "["+fill("1 ")+"]", content),
		"an array of arrays":           build(list, "["+fill("[]")+"]", content),
		"an array of dictionaries":     build(list, "["+fill("<</A 1>>")+"]", content),
		"an array of names":            build(list, "["+fill("/A")+"]", content),
		"dictionaries in arrays":       build(list, "<< /F (a) /EF << /F 3 0 R >> /X ["+fill("<</A[<</B 1>>]>>")+"] >>", content),
		"nothing but comments":         build(list, fill("%\n")+spec, content),
		"one long string":              build(list, "<< /F (a) /EF << /F 3 0 R >> /Desc ("+fill("()")+") >>", content),
		"parentheses without end":      build(list, fill("("), content),
		"a name without end":           build(list, "/"+fill("#41"), content),
		"long strings":                 build(list, "<< /F (a) /EF << /F 3 0 R >> /X ["+strings.Repeat("("+strings.Repeat("()", 500000)+")", 31)+"] >>", content),
		"strings that overlap":         overlapping(),
		"a large file as it should be": build(list, spec, stream("", make([]byte, pdf.MaxBytes-2000))),
		"a file that is too large":     make([]byte, pdf.MaxBytes+1),
	}
}

// overlapping is a file with two hundred thousand strings, each of which begins
// in the one before and ends with the file.
func overlapping() []byte {
	const n = 200000
	b := []byte("%PDF-1.4\n")
	table := []byte(fmt.Sprintf("xref\n1 %d\n", n))
	for i := range n {
		table = fmt.Appendf(table, "%010d 00000 n\r\n", len(b))
		b = fmt.Appendf(b, "%d 0 obj(", i+1)
	}
	b = append(b, strings.Repeat(")", n)...)
	b = append(b, " endobj\n"...)
	start := len(b)
	b = append(b, table...)
	b = append(b, "trailer << /Root << /A ["...)
	for i := range n {
		b = fmt.Appendf(b, "%d 0 R ", n-i)
	}
	return fmt.Appendf(b, "] >> >>\nstartxref\n%d\n%%%%EOF\n", start)
}

// No file costs more than these, whatever it holds.
func TestBounds(t *testing.T) {
	const mostMB, most = 300, 5 * time.Second
	if toolcheck.InChild(t, func(path string) {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		pdf.Attachments(data)
	}) {
		return
	}
	toolcheck.Long(t)
	for name, data := range greedy() {
		mb, took := toolcheck.Cost(t, save(t, data))
		t.Logf("%-30s %3d MB %5.2f s", name, mb, took.Seconds())
		if mb > mostMB || took > most {
			t.Errorf("%s: %d MB, %v", name, mb, took)
		}
	}
}
