package label_test

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"

	"backleaf/label"
	"backleaf/record/paper"
	"backleaf/record/toolcheck"
)

// gallery are labels of every size and kind: lengths, scripts, units, stages,
// numbers of layers, hazards.
func gallery() map[string]label.Input {
	all := kinds()
	inches := finished()
	inches.Dimensions, inches.OtherUnits = "8\u202f1\u20442 × 11 × 1\u20448\u202fin", "8\u202f1\u20442 × 11 × 1\u20448\u202fin (21.6 × 27.9 × 0.3\u202fcm)"
	all["inches"] = inches
	lower := finished()
	lower.Link, lower.Where = "https://panels.example.org/record?of=KB2601421", "Record: https://panels.example.org/record?of=KB2601421"
	all["lower case link"] = lower
	short := finished()
	short.Title, short.Maker, short.Place, short.BuildUp, short.BuildUpShort, short.Varnish = "X", "Bo Li", "", []string{"Oil paint", "MDF"}, "2 layers: see the record", "No varnish recorded"
	all["short"] = short
	all["facts as a symbol"] = hazards().WithFacts()
	return all
}

// The gallery is measured by programs that did not draw it. Every line that a
// label must have is there, symbols have modules of 0.42 mm at least and white
// around them. With BACKLEAF_REQUIRE_TOOLS=1 it is every fourth of size × kind, else a few.
func TestGallery(t *testing.T) {
	toolcheck.Require(t, "qpdf", "pdftotext", "pdftoppm")
	var names []string
	for name := range gallery() {
		names = append(names, name)
	}
	slices.Sort(names)
	n := 0
	for i, a := range areas {
		for j, name := range names {
			every := 31
			if toolcheck.Thorough() {
				every = 4
			}
			if (i*7+j)%every != 0 {
				continue
			}
			if name == "longest" && a.WidthMM*a.HeightMM < 2500 {
				continue
			}
			n++
			in := gallery()[name]
			in.Back = wall
			o := options(label.Auto)
			o.Sheet = &label.Sheet{Page: a, Place: a, Rows: 1, Cols: 1, Down: a.HeightMM, Across: a.WidthMM}
			ls, err := label.Arrange([]label.Input{in}, o)
			if err != nil {
				t.Fatal(err)
			}
			pdf := draw(t, o, in)
			path := save(t, fmt.Sprintf("%s-%.0fx%.0f.pdf", strings.ReplaceAll(name, " ", "-"), a.HeightMM, a.WidthMM), pdf)
			for _, f := range toolcheck.Findings(t, path, 2) {
				if name == "hostile" && strings.Contains(f, "address") {
					continue
				}
				t.Errorf("%s on %v: %s", name, a, f)
			}
			text := strings.ReplaceAll(pdfText(t, pdf), " ", "")
			must := append([]string{in.Number, in.Maker, in.Where, in.Notice}, in.Hazards...)
			if !slices.Contains(ls[0].LeftOut, label.Dimensions) {
				must = append(must, in.Dimensions)
			}
			for _, want := range must {
				if !strings.Contains(text, strings.Join(strings.FieldsFunc(want, func(r rune) bool { return r == ' ' || r == '\u00a0' || r == '\u202f' || r == '\n' }), "")) {
					t.Errorf("%s on %v: %q is missing", name, a, want)
				}
			}
			if !slices.Contains(ls[0].LeftOut, label.QR) {
				measureSymbol(t, fmt.Sprintf("%s on %v", name, a), path, in)
			}
		}
	}
	t.Logf("%d labels measured", n)
}

// measureSymbol finds the symbol of the link on the first page at 600 dpi with
// an independent reader, and measures modules and quiet zone in its picture.
func measureSymbol(t *testing.T, name, path string, in label.Input) {
	t.Helper()
	const dpi = 600.0
	base := filepath.Join(t.TempDir(), "page")
	toolcheck.Run(t, "pdftoppm", "-r", "600", "-gray", "-singlefile", path, base)
	img := picture(t, base+".pgm")
	text := in.Link
	if text == "" {
		return // its modules are measured with the others
	}
	bitmap, err := gozxing.NewBinaryBitmapFromImage(img)
	if err != nil {
		t.Fatal(err)
	}
	got, err := qrcode.NewQRCodeReader().Decode(bitmap, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true})
	if err != nil || got.GetText() != text {
		if in.Facts != "" {
			return // of two symbols the reader takes either
		}
		t.Errorf("%s: the symbol is not read: %v", name, err)
		return
	}
	s, err := paper.NewSymbol(text, paper.LevelQ)
	if err != nil {
		t.Fatal(err)
	}
	points := got.GetResultPoints() // bottom left, top left, top right finder
	between := points[2].GetX() - points[1].GetX()
	module := between / float64(s.Modules()-7)
	if mm := module / dpi * 25.4; mm < 0.415 {
		t.Errorf("%s: modules of %.3f mm", name, mm)
	}
	left, top := points[1].GetX()-3.5*module, points[1].GetY()-3.5*module
	side := module * float64(s.Modules())
	for d := -3.6 * module; d < side+3.6*module; d += module / 2 {
		for _, q := range [][2]float64{{left + d, top - 3.6*module}, {left + d, top - 1.5*module}, {left + d, top + side + 3.6*module}, {left + d, top + side + 1.5*module},
			{left - 3.6*module, top + d}, {left - 1.5*module, top + d}, {left + side + 3.6*module, top + d}, {left + side + 1.5*module, top + d}} {
			x, y := int(q[0]), int(q[1])
			if x >= 0 && y >= 0 && x < img.Rect.Dx() && y < img.Rect.Dy() && img.GrayAt(x, y).Y < 0x80 {
				t.Errorf("%s: ink in the quiet zone at %d, %d", name, x, y)
				return
			}
		}
	}
}
