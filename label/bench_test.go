package label_test

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"fmt"
	"os"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansregular"
	"github.com/go-pdf/fpdf"
	goqrcode "github.com/skip2/go-qrcode"

	"backleaf/label"
	"backleaf/record/pdf"
	"backleaf/record/toolcheck"
)

// many are BACKLEAF_LABELS labels of one studio, of which no two say the same.
func many(b *testing.B) []label.Input {
	n, err := strconv.Atoi(cmp.Or(os.Getenv("BACKLEAF_LABELS"), "100"))
	if err != nil {
		b.Fatal(err)
	}
	var labels []label.Input
	for i := range n {
		in := finished()
		in.Number = fmt.Sprintf("KB26-%04d-1", i+1)
		in.Title = fmt.Sprintf("%s %d", in.Title, i+1)
		in.Link = fmt.Sprintf("HTTPS://EXAMPLE.ORG/P/KB26%04d1", i+1)
		in.Where = "Record: " + in.Link
		in.Issue = fmt.Sprintf("Label of 9 May 2026, record as of entry %d", i+44)
		in.Fingerprint = fmt.Sprintf("SHA-256 of the record: %04x 91bc 22d0 1c9e …", i)
		labels = append(labels, in)
	}
	return labels
}

// BenchmarkSheets draws BACKLEAF_LABELS labels on plain sheets, against a plain
// loop on one core: a symbol of the same text each, and on each page the calls of the
// library for PDF that drew the first, as all are alike; the areas of a symbol
// are written one by one.
func BenchmarkSheets(b *testing.B) {
	labels := many(b)
	for _, size := range []label.Size{label.Small, label.Medium, label.Large} {
		b.Run(size.String(), func(b *testing.B) {
			o := options(size)
			o.Sheet = plainSheet(label.A4)
			pages, calls := callsOf(b, draw(b, o, labels...))
			toolcheck.Against(b, func() { draw(b, o, labels...) }, func() { drawBare(b, labels, pages, calls) })
		})
	}
}

func drawBare(b *testing.B, labels []label.Input, pages int, calls []call) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	doc := fpdf.New("P", "pt", "A4", "")
	doc.AddUTF8FontFromBytes("sans", "", liberationsansregular.TTF)
	doc.AddUTF8FontFromBytes("sansbold", "", liberationsansbold.TTF)
	for _, in := range labels {
		q, err := goqrcode.New(in.Link, goqrcode.High)
		if err != nil {
			b.Fatal(err)
		}
		q.Bitmap()
	}
	for range pages {
		doc.AddPage()
		for _, c := range calls {
			c(doc)
		}
	}
	if err := doc.Output(&bytes.Buffer{}); err != nil {
		b.Fatal(err)
	}
}

// A call is one of the library for PDF.
type call func(*fpdf.Fpdf)

// callsOf reads the calls that drew the first page of a file.
func callsOf(b *testing.B, file []byte) (pages int, calls []call) {
	f, err := pdf.Open(file)
	if err != nil {
		b.Fatal(err)
	}
	fonts := map[string]string{} // by their names in the file
	err = f.Dicts(func(d pdf.Dict) error {
		if d["Type"] != any(pdf.Name("Page")) {
			return nil
		}
		if pages++; pages > 1 {
			return nil
		}
		content, err := f.Decoded(d["Contents"])
		for line := range strings.Lines(string(content)) {
			if c := callOf(strings.TrimSuffix(line, "\n"), fonts); c != nil {
				calls = append(calls, c)
			}
		}
		return err
	})
	if err != nil || len(calls) == 0 || len(fonts) == 0 {
		b.Fatal(len(calls), len(fonts), err)
	}
	return pages, calls
}

// callOf reads the call that wrote a line; nil for one of what every page begins with.
func callOf(line string, fonts map[string]string) call {
	const height = 841.89
	words := strings.Fields(line)
	n := make([]float64, len(words))
	for i, w := range words {
		n[i], _ = strconv.ParseFloat(w, 64)
	}
	if begin, end := strings.Index(line, " Td ("), strings.LastIndex(line, ") Tj"); begin > 0 && end > 0 {
		said := []byte(strings.NewReplacer(`\\`, `\`, `\(`, `(`, `\)`, `)`, `\r`, "\r").Replace(line[begin+len(" Td (") : end]))
		units := make([]uint16, len(said)/2)
		binary.Decode(said, binary.BigEndian, units)
		text := string(utf16.Decode(units))
		return func(d *fpdf.Fpdf) { d.Text(n[1], height-n[2], text) }
	}
	switch last := words[max(0, len(words)-1):]; {
	case len(last) == 0:
		return nil
	case strings.HasSuffix(line, " Tf ET"):
		if fonts[words[1]] == "" {
			fonts[words[1]] = [...]string{"sansbold", "sans"}[len(fonts)%2]
		}
		font := fonts[words[1]]
		return func(d *fpdf.Fpdf) { d.SetFont(font, "", n[2]) }
	case last[0] == "m":
		return func(d *fpdf.Fpdf) { d.MoveTo(n[0], height-n[1]) }
	case last[0] == "l":
		return func(d *fpdf.Fpdf) { d.LineTo(n[0], height-n[1]) }
	case last[0] == "h":
		return (*fpdf.Fpdf).ClosePath
	case last[0] == "f" && len(words) == 1:
		return func(d *fpdf.Fpdf) { d.DrawPath("F") }
	case last[0] == "S" && len(words) == 1:
		return func(d *fpdf.Fpdf) { d.DrawPath("D") }
	case last[0] == "re": // of a symbol
		return func(d *fpdf.Fpdf) { d.Rect(n[0], n[1], n[2], n[3], "F") }
	case len(words) == 6 && words[4] == "re":
		return func(d *fpdf.Fpdf) {
			d.Rect(n[0], height-n[1], n[2], -n[3], map[string]string{"f": "F", "S": "D"}[words[5]])
		}
	case len(words) == 6 && words[2] == "m":
		return func(d *fpdf.Fpdf) { d.Line(n[0], height-n[1], n[3], height-n[4]) }
	case last[0] == "w":
		return func(d *fpdf.Fpdf) { d.SetLineWidth(n[0]) }
	case last[0] == "g":
		return func(d *fpdf.Fpdf) { d.SetFillColor(0, 0, 0) }
	case line == "q":
		return (*fpdf.Fpdf).TransformBegin
	case last[0] == "cm" && words[1] == "0.00000":
		return func(d *fpdf.Fpdf) { d.TransformTranslate(n[4], -n[5]) }
	case last[0] == "cm":
		return func(d *fpdf.Fpdf) { d.TransformRotate(0, 0, 0) }
	case line == "Q":
		return (*fpdf.Fpdf).TransformEnd
	}
	return nil
}
