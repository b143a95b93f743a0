package label_test

import (
	"bytes"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"testing"

	"backleaf/label"
	"backleaf/record/paper"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

// everyKind are labels of every kind, each with a number and link of its own.
func everyKind() []label.Input {
	all := kinds()
	var names []string
	for name := range all {
		names = append(names, name)
	}
	slices.Sort(names)
	var out []label.Input
	for i, name := range names {
		in := all[name]
		if in.Link != "" {
			in.Link = fmt.Sprintf("HTTPS://EXAMPLE.ORG/P/KB26%04d1", i+1)
			in.Where = "Record: " + in.Link
		}
		out = append(out, in)
	}
	return out
}

func plainSheet(page label.Area) *label.Sheet { return &label.Sheet{Page: page} }

// Every symbol on every page, printed at 300 dpi, says what it must. Symbols
// with a plain text stand on pages of their own here: in a whole sheet zbar
// sometimes passes one of them over, which it reads when that is cut out.
func TestSymbolsAreRead(t *testing.T) {
	toolcheck.Require(t, "zbarimg", "pdftoppm")
	few := !toolcheck.Thorough()
	for _, size := range []label.Size{label.Small, label.Medium, label.Large} {
		for name, sheet := range map[string]*label.Sheet{"single pages": nil, "a4": plainSheet(label.A4), "letter": plainSheet(label.Letter)} {
			if name == "letter" && size != label.Small || few && (name != "a4" || size != label.Small) {
				continue // enough to have seen one
			}
			o := options(size)
			o.Sheet = sheet
			layouts, err := label.Arrange(everyKind(), o)
			if err != nil {
				t.Fatal(err)
			}
			var labels []label.Input
			var want []string
			for i, in := range everyKind() {
				if !slices.Contains(layouts[i].LeftOut, label.QR) && (in.Link != "" || sheet == nil) {
					labels, want = append(labels, in), append(want, strings.ReplaceAll(orPlain(in), "\n", " "))
				}
			}
			if len(labels) < 6 {
				t.Errorf("%v: only %d labels have a symbol", size, len(labels))
			}
			got := zbar(t, render(t, draw(t, o, labels...), "300")...)
			slices.Sort(got)
			slices.Sort(want)
			if !slices.Equal(got, want) {
				t.Errorf("%v on %s: read\n%q, want\n%q", size, name, got, want)
			}
		}
	}
}

func orPlain(in label.Input) string {
	if in.Link != "" {
		return in.Link
	}
	return in.Plain
}

// zbar reads the symbols of pictures; line ends in them become spaces.
func zbar(t testing.TB, paths ...string) []string {
	var got []string
	out := toolcheck.Run(t, "zbarimg", append([]string{"-q", "--nodbus", "--set", "disable", "--set", "qrcode.enable"}, paths...)...)
	for _, s := range strings.Split(strings.TrimSpace(out), "QR-Code:") {
		if s = strings.Join(strings.Fields(s), " "); s != "" {
			got = append(got, s)
		}
	}
	return got
}

// PDF/A-1b by Apache PDFBox Preflight, an independent validator.
func TestPreflight(t *testing.T) {
	for _, size := range []label.Size{label.Small, label.Large} {
		o := options(size)
		o.Sheet, o.Ruler, o.Note = plainSheet(label.A4), true, true
		path := save(t, size.String()+".pdf", draw(t, o, everyKind()...))
		if out, err := toolcheck.Preflight(t, path); err != nil || !strings.Contains(out, "is a valid PDF/A-1b file") {
			t.Errorf("%v: %v: %s", size, err, out)
		}
	}
}

// Same record, same bytes; labels are laid out on all cores in any order.
func TestSameBytes(t *testing.T) {
	o := options(label.Auto)
	o.Sheet, o.Ruler = plainSheet(label.Letter), true
	first := draw(t, o, everyKind()...)
	for range 3 {
		if !bytes.Equal(first, draw(t, o, everyKind()...)) {
			t.Fatal("the same labels gave other bytes")
		}
	}
}

// Work that is stopped at any step ends there, at most with what each core has
// begun, and writes nothing: while labels are laid out, while pages are painted.
func TestStopped(t *testing.T) {
	var labels []label.Input
	for range 3 {
		labels = append(labels, everyKind()...)
	}
	o, stop := options(label.Auto), errors.New("stopped")
	o.Sheet = plainSheet(label.A4)
	n := int64(len(labels))
	for _, at := range []int64{0, 1, n / 2, n, n + 1, n + n/2, 2*n - 1} {
		stopped, after := false, 0
		o.Step = func(done, total int64) error {
			if total != 2*n || done > total {
				t.Errorf("step %d of %d for %d labels", done, total, n)
			}
			if stopped {
				after++
			}
			if stopped = stopped || done >= at; stopped {
				return stop
			}
			return nil
		}
		var file bytes.Buffer
		if _, err := label.Draw(&file, labels, o); !errors.Is(err, stop) || file.Len() > 0 || after > runtime.GOMAXPROCS(0) {
			t.Errorf("stopped at step %d of %d: %v, %d bytes, %d steps after it", at, 2*n, err, file.Len(), after)
		}
	}
}

// Text comes out in the order in which it is read.
func TestTextOrder(t *testing.T) {
	for _, a := range areas {
		o := options(label.Auto)
		o.Sheet = in1(a)
		in := hazards()
		in.Back = wall
		text := pdfText(t, draw(t, o, in))
		at := 0
		for _, want := range []string{"KB26-0142-1", "TOP", "Low Tide, Evening, 2026", "Ilze Kārkla", "Oil on linen laid on birch plywood",
			"Hazard: Contains lead and cadmium.", "Record: HTTPS://EXAMPLE."} {
			i := strings.Index(text[at:], want)
			if i < 0 {
				t.Errorf("%v: %q does not follow in %q", a, want, text)
				break
			}
			at += i
		}
	}
}

// All ink lies in the boxes of the layout, so that their geometry holds for
// what is printed.
func TestInkStaysInItsBoxes(t *testing.T) {
	const dpi, bleed = 200.0, 0.25
	for _, size := range []label.Size{label.Small, label.Medium, label.Large}[:toolcheck.Rounds(3, 1)] {
		labels := everyKind()
		o := options(size)
		layouts, err := label.Arrange(labels, o)
		if err != nil {
			t.Fatal(err)
		}
		pages := render(t, draw(t, o, labels...), "200")
		for i, l := range layouts {
			img := picture(t, pages[i])
			stray := 0
			for y := range img.Bounds().Dy() {
				for x := range img.Bounds().Dx() {
					if img.GrayAt(x, y).Y > 0x80 {
						continue
					}
					mx, my := (float64(x)+0.5)*25.4/dpi, (float64(y)+0.5)*25.4/dpi
					if !slices.ContainsFunc(l.Boxes, func(b label.Box) bool {
						return mx > b.X-bleed && mx < b.X+b.W+bleed && my > b.Y-bleed && my < b.Y+b.H+bleed
					}) {
						stray++
					}
				}
			}
			if stray > 0 {
				t.Errorf("%v, %s: %d dots of ink outside all boxes", size, labels[i].Title, stray)
			}
		}
	}
}

// A title with PDF operators, markup and a change of direction is text.
func TestHostileTitle(t *testing.T) {
	path := save(t, "hostile.pdf", draw(t, options(label.Large), hostile()))
	toolcheck.Run(t, "qpdf", "--check", path)
	text := strings.Join(strings.Fields(toolcheck.Run(t, "pdftotext", "-raw", path, "-")), " ")
	if !strings.Contains(strings.ReplaceAll(text, " ", ""), strings.ReplaceAll(hostileTitle, " ", "")+"[U+202E]") {
		t.Errorf("text %q", text)
	}
}

// A character that no face has is named, with the field and the panel, and
// nothing is written.
func TestMissingGlyph(t *testing.T) {
	in := finished()
	in.Title = "Low \U00013000 Tide"
	var b bytes.Buffer
	_, err := label.Draw(&b, []label.Input{blank(), in}, options(label.Large))
	var glyph *paper.GlyphError
	if !errors.As(err, &glyph) || b.Len() > 0 {
		t.Fatalf("%d bytes, error %v", b.Len(), err)
	}
	for _, want := range []string{"KB26-0142-1", "title", "U+13000"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q is not in the error: %v", want, err)
		}
	}
}

// No letter on any page stands outside the catalogue and the record.
func TestNoWordOutsideTheCatalogue(t *testing.T) {
	masked := tell.English().Each(func(s string) string {
		return strings.Map(func(r rune) rune {
			if r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' {
				return '¤'
			}
			return r
		}, s)
	})
	in := label.Input{Number: "1", Maker: "2", Title: "3", Place: "4", Plain: "5", Where: "6", BuildUp: []string{"7"}, Care: "8", Fingerprint: "9", Sealed: "10", Varnish: "11", Changed: "12"}
	for _, size := range []label.Size{label.Small, label.Medium, label.Large} {
		for _, empty := range []bool{true, false} {
			o := options(size)
			o.Catalogue, o.Ruler, o.Note, o.Sheet = masked, true, true, plainSheet(label.A4)
			in.Blank = empty
			text := toolcheck.Run(t, "pdftotext", save(t, "masked.pdf", draw(t, o, in)), "-")
			if i := strings.IndexFunc(text, func(r rune) bool { return r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' }); i >= 0 {
				t.Errorf("%v: a word outside the catalogue: %.40q", size, text[i:])
			}
		}
	}
}

// A part-used sheet goes on where it was left.
func TestFrom(t *testing.T) {
	sheet := &label.Sheet{Page: label.A4, Place: label.Area{WidthMM: 63.5, HeightMM: 38.1}, Rows: 7, Cols: 3, Top: 15.1, Left: 7.2, Down: 38.1, Across: 66}
	o := options(label.Auto)
	o.Sheet, o.From = sheet, 20
	pdf := draw(t, o, finished(), blank(), changed())
	path := save(t, "from.pdf", pdf)
	if out := toolcheck.Run(t, "pdfinfo", path); !strings.Contains(out, "Pages:           2") {
		t.Errorf("three labels from place 20 of 21:\n%s", out)
	}
	// Place 20 is the second of the last row: at 73.2 and 243.7 mm.
	out := toolcheck.Run(t, "pdftotext", "-f", "1", "-l", "1", "-r", "254", "-x", "732", "-y", "2437", "-W", "635", "-H", "381", path, "-")
	if !strings.Contains(out, "KB26-0142-1") {
		t.Errorf("place 20 holds %q", out)
	}
	for from, ok := range map[int]bool{1: true, 21: true, 22: false} {
		o.From = from
		var b bytes.Buffer
		if _, err := label.Draw(&b, []label.Input{finished()}, o); (err == nil) != ok || ok != (b.Len() > 0) {
			t.Errorf("from %d: %v, %d bytes", from, err, b.Len())
		}
	}
}

// Labels of several sizes go on plain paper in their order, each size on
// sheets of its own; the panel says which.
func TestAuto(t *testing.T) {
	tiny, mid, great, unknown := finished(), finished(), finished(), finished()
	tiny.Back, mid.Back, great.Back, unknown.Back = label.Area{WidthMM: 50, HeightMM: 50}, label.Area{WidthMM: 100, HeightMM: 80}, label.Area{WidthMM: 2000, HeightMM: 3000}, label.Area{}
	o := options(label.Auto)
	o.Sheet = plainSheet(label.A4)
	ls, err := label.Arrange([]label.Input{tiny, mid, great, unknown}, o)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []label.Size{label.Small, label.Medium, label.Large, label.Small} {
		if ls[i].Size != want {
			t.Errorf("label %d is %v, want %v", i, ls[i].Size, want)
		}
	}
	if out := toolcheck.Run(t, "pdfinfo", save(t, "auto.pdf", draw(t, o, tiny, mid, great, unknown))); !strings.Contains(out, "Pages:           3") {
		t.Errorf("%s", out)
	}
	tiny.Back.WidthMM = 49
	if _, err := label.Arrange([]label.Input{tiny}, o); err == nil || !strings.Contains(err.Error(), "50 × 49 mm") {
		t.Errorf("a panel of 49 mm: %v", err)
	}
}

func TestCropMarks(t *testing.T) {
	o := options(label.Small)
	o.CropMarks = true
	pages := render(t, draw(t, o, finished()), "254") // 10 dots a millimetre
	img := picture(t, pages[0])
	edge := (float64(img.Bounds().Dx()) - 420) / 20
	if edge < 2 || edge > 5 {
		t.Fatalf("the page is %v", img.Bounds())
	}
	// A mark beside the top edge, on the left of the label, and none inside.
	dark := func(xMM, yMM float64) bool {
		for d := -2; d <= 2; d++ {
			if img.GrayAt(int(xMM*10), int(yMM*10)+d).Y < 0xC0 {
				return true
			}
		}
		return false
	}
	if !dark(edge-1, edge) || dark(edge+1, edge) || dark(edge-0.2, edge) {
		t.Error("the crop mark at the top left is not where it belongs")
	}
}

// Rulers are as long as they say.
func TestRuler(t *testing.T) {
	o := options(label.Auto)
	o.Ruler = true
	for _, page := range []label.Area{label.A4, label.Letter} {
		o.Paper = page
		img := picture(t, render(t, draw(t, o), "254")[0])
		// The longest dark run of any row is the inch ruler, 6 inches.
		longest := 0
		for y := range img.Bounds().Dy() {
			n := 0
			for x := range img.Bounds().Dx() {
				if img.GrayAt(x, y).Y < 0xC0 {
					n++
					longest = max(longest, n)
				} else {
					n = 0
				}
			}
		}
		if longest < 1523 || longest > 1527 {
			t.Errorf("6 inches are %.1f mm", float64(longest)/10)
		}
	}
}

func TestNothingToDraw(t *testing.T) {
	var b bytes.Buffer
	if _, err := label.Draw(&b, nil, options(label.Auto)); err == nil || b.Len() > 0 {
		t.Errorf("no labels: %d bytes, %v", b.Len(), err)
	}
	in := finished()
	in.Link, in.Plain = "", ""
	if _, err := label.Draw(&b, []label.Input{in}, options(label.Auto)); err == nil || b.Len() > 0 {
		t.Errorf("neither link nor text: %d bytes, %v", b.Len(), err)
	}
}

// Fonts are embedded once.
func TestFontsOnce(t *testing.T) {
	one, many := len(draw(t, options(label.Large), finished())), len(draw(t, options(label.Large), everyKind()...))
	if many > 4*one {
		t.Errorf("one label is %d bytes, ten are %d", one, many)
	}
}
