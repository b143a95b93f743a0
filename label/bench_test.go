package label_test

import (
	"bytes"
	"cmp"
	"fmt"
	"os"
	"strconv"
	"testing"

	"github.com/go-fonts/liberation/liberationsansregular"
	"github.com/go-pdf/fpdf"
	goqrcode "github.com/skip2/go-qrcode"

	"backleaf/label"
	"backleaf/record/toolcheck"
)

func many(b *testing.B) []label.Input {
	n, err := strconv.Atoi(cmp.Or(os.Getenv("BACKLEAF_LABELS"), "100"))
	if err != nil {
		b.Fatal(err)
	}
	var labels []label.Input
	for i := range n {
		in := finished()
		in.Link = fmt.Sprintf("HTTPS://EXAMPLE.ORG/P/KB26%04d1", i+1)
		in.Where = "Record: " + in.Link
		labels = append(labels, in)
	}
	return labels
}

// BenchmarkSheets draws BACKLEAF_LABELS labels on plain sheets, against the
// least that so many can cost with the two libraries on one core: one font,
// eight lines of text and one symbol each, as pixels.
func BenchmarkSheets(b *testing.B) {
	labels := many(b)
	for _, size := range []label.Size{label.Small, label.Medium, label.Large} {
		b.Run(size.String(), func(b *testing.B) {
			o := options(size)
			o.Sheet = plainSheet(label.A4)
			toolcheck.Against(b, func() { draw(b, o, labels...) }, func() { drawBare(b, labels) })
		})
	}
}

func drawBare(b *testing.B, labels []label.Input) {
	pdf := fpdf.New("P", "mm", "A4", "")
	pdf.AddUTF8FontFromBytes("sans", "", liberationsansregular.TTF)
	pdf.SetFont("sans", "", 8)
	for i, in := range labels {
		if i%6 == 0 {
			pdf.AddPage()
		}
		png, err := goqrcode.Encode(in.Link, goqrcode.High, 256)
		if err != nil {
			b.Fatal(err)
		}
		x, y := 10+float64(i%2)*97, 10+float64(i%6/2)*89
		pdf.RegisterImageOptionsReader(in.Link, fpdf.ImageOptions{ImageType: "PNG"}, bytes.NewReader(png))
		pdf.ImageOptions(in.Link, x+60, y, 20, 20, false, fpdf.ImageOptions{ImageType: "PNG"}, 0, "")
		for j, text := range []string{in.Number, in.Title, in.Maker, in.Medium, in.Dimensions, in.Sealed, in.Varnish, in.Where} {
			pdf.Text(x, y+5+4*float64(j), text)
		}
	}
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		b.Fatal(err)
	}
}
