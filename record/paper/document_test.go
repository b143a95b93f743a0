package paper_test

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"backleaf/record/paper"
	"backleaf/record/pdf"
	"backleaf/record/toolcheck"
)

// samplePage uses every shape and every face, fall-backs included.
func sampleDocument(t testing.TB) *paper.Document {
	t.Helper()
	d := &paper.Document{Info: paper.Info{
		Title: "Sample of Ζωή & <sheet>", Author: "Invented Studio", Subject: "All shapes", Keywords: "panel, linen",
		Language: "en", Created: day,
	}}
	p := d.Page(210, 297)
	y := 20.0
	put := func(spans ...paper.Span) {
		b := compose(t, 110, spans...)
		p.Draw(paper.Text{X: 25, Y: y, Block: b})
		y += b.HeightMM() + 3
	}
	put(paper.Span{Style: paper.Title, Text: "Towards Evening, Avon"})
	put(paper.Span{Style: paper.Heading, Text: "Support and ground"})
	put(paper.Span{Style: paper.Body, Text: "Birch plywood, 240 × 300 × 3" + paper.ThinSpace + "mm (" +
		"9" + paper.ThinSpace + "7\u204416 × 11" + paper.ThinSpace + "13\u204416 × 1\u20448" +
		" in), 220" + paper.ThinSpace + "g/m² linen – laid in an acrylic dispersion at 21" + paper.ThinSpace + "°C. "},
		paper.Span{Style: paper.Aside, Text: "What is not recorded is said. "},
		paper.Span{Style: paper.Strong, Text: "AVATAR To We."})
	put(paper.Span{Style: paper.Body, Text: "Ἀλέξανδρος, Юрий, Łukasz, ☼, e\u0301, ⚠ and \u202Egnirts"})
	put(paper.Span{Style: paper.Digest, Text: strings.Repeat("e3b0c44298fc1c149afbf4c8996fb924", 2)})
	put(paper.Span{Style: paper.LabelNumber, Text: "KB26-0142-1"})
	put(paper.Span{Style: paper.LabelBody, Text: "Sealed front, back and edges. "}, paper.Span{Style: paper.LabelBold, Text: "TOP ▲ "},
		paper.Span{Style: paper.LabelBody.Italic(), Text: "keep dry"})
	put(paper.Span{Style: paper.LabelHead, Text: "Varnish"})
	put(paper.Span{Style: paper.Small, Text: "Small type."})
	p.Draw(paper.Line{X1: 25, Y1: y, X2: 100, Y2: y, WeightMM: 0.2, Dash: []float64{2, 1}},
		paper.Rect{X: 25, Y: y + 5, W: 20, H: 10, WeightMM: 0.3},
		paper.Polygon{Points: []paper.Point{{X: 50, Y: y + 15}, {X: 60, Y: y + 5}, {X: 70, Y: y + 15}}, Fill: paper.Black},
		paper.Clip{X: 75, Y: y + 5, W: 10, H: 10, Shapes: []paper.Shape{
			paper.Strokes{Lines: [][]paper.Point{{{X: 70, Y: y}, {X: 90, Y: y + 20}}}, WeightMM: 1}}},
		paper.Group{X: 160, Y: 100, Degrees: 90, Shapes: []paper.Shape{
			paper.Text{Block: compose(t, 0, paper.Span{Style: paper.LabelBold, Text: "turned by 90°"})},
			paper.Link{W: 20, H: 5, URL: "https://example.org/turned"}}})
	img := image.NewNRGBA(image.Rect(0, 0, 60, 40))
	for i := range 60 {
		for j := range 40 {
			img.Set(i, j, color.NRGBA{uint8(4 * i), uint8(6 * j), 128, uint8(255 - 3*i)})
		}
	}
	p.Draw(paper.Picture{X: 95, Y: y + 5, W: 30, H: 20, Image: img, Title: "A ramp of colour"})
	s, err := paper.NewSymbol("HTTPS://EXAMPLE.ORG/P/KB26-0142-1", paper.LevelQ)
	if err != nil {
		t.Fatal(err)
	}
	qr, side, err := s.Fit(25, y+30, 25)
	if err != nil {
		t.Fatal(err)
	}
	p.Draw(qr, paper.Link{X: 25, Y: y + 30, W: side, H: side, URL: "https://example.org/p/KB26-0142-1"})
	small := d.Page(50, 50)
	small.Draw(paper.Text{X: 45, Y: 5, Align: paper.Right, Block: compose(t, 40, paper.Span{Style: paper.LabelBody, Text: "second page,\nset to the right"})})
	return d
}

func finish(t testing.TB, d *paper.Document, kind paper.Kind, a ...pdf.Attachment) []byte {
	t.Helper()
	pdf, err := d.Finish(kind, a...)
	if err != nil {
		t.Fatal(err)
	}
	return pdf
}

func sampleAttachments() []pdf.Attachment {
	return []pdf.Attachment{
		{Name: "record.json", MIME: "application/json", Description: "the record", Relation: pdf.Source, Data: []byte(`{"number":"KB26-0142-1"}`)},
		{Name: "record.sig", MIME: "application/octet-stream", Relation: pdf.Supplement, Data: bytes.Repeat([]byte{0, 255, 13, 10}, 16)},
		{Name: "head.txt", MIME: "text/plain", Relation: pdf.Supplement, Data: nil},
	}
}

// Same record, same bytes.
func TestSameBytes(t *testing.T) {
	for _, kind := range []paper.Kind{paper.A1b, paper.A3b} {
		var files []pdf.Attachment
		if kind == paper.A3b {
			files = sampleAttachments()
		}
		first := finish(t, sampleDocument(t), kind, files...)
		for range 3 {
			if !bytes.Equal(first, finish(t, sampleDocument(t), kind, files...)) {
				t.Fatalf("%v: the same document gave other bytes", kind)
			}
		}
	}
}

// PDF/A-1b by Apache PDFBox Preflight, an independent validator; the page
// content of the A-3b kind is the same and is validated in that form.
func TestPreflight(t *testing.T) {
	out, err := toolcheck.Preflight(t, save(t, "sample.pdf", finish(t, sampleDocument(t), paper.A1b)))
	if err != nil {
		t.Fatalf("preflight: %v\n%s", err, out)
	}
	// The validator must be able to say no.
	bad := bytes.Replace(finish(t, sampleDocument(t), paper.A1b), []byte("/GTS_PDFA1"), []byte("/GTS_PDFX01"), 1)
	if _, err := toolcheck.Preflight(t, save(t, "bad.pdf", bad)); err == nil {
		t.Error("preflight accepts a file without output intent")
	}
}

func TestQpdfFindsNoFault(t *testing.T) {
	for _, kind := range []paper.Kind{paper.A1b, paper.A3b} {
		path := save(t, "sample.pdf", finish(t, sampleDocument(t), kind))
		if out := toolcheck.Run(t, "qpdf", "--check", path); !strings.Contains(out, "No syntax or stream encoding errors found") {
			t.Errorf("%v: %s", kind, out)
		}
	}
}

// A label or certificate that is fitted to the page is printed too small
// (ISO 32000-1, table 150).
func TestPrintedAtFullSize(t *testing.T) {
	for _, kind := range []paper.Kind{paper.A1b, paper.A3b} {
		f := readQpdf(t, save(t, "sample.pdf", finish(t, sampleDocument(t), kind)))
		if got := f.get(f.objects["trailer"], "/Root", "/ViewerPreferences", "/PrintScaling"); got != "/None" {
			t.Errorf("%v: print scaling %v", kind, got)
		}
	}
}

func TestTextIsExtracted(t *testing.T) {
	path := save(t, "sample.pdf", finish(t, sampleDocument(t), paper.A1b))
	got := toolcheck.Run(t, "pdftotext", "-layout", path, "-")
	got = strings.Join(strings.Fields(got), " ")
	for _, want := range []string{"Towards Evening, Avon", "SUPPORT AND GROUND", "240 × 300 × 3", "9 7⁄16", "11 13⁄16", "1⁄8", "g/m² linen – laid",
		"AVATAR To We.", "Ἀλέξανδρος, Юрий, Łukasz, ☼, é, ⚠ and [U+202E]gnirts", "KB26-0142-1", "VARNISH", "second page,"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in the text:\n%s", want, got)
		}
	}
}

func TestWhatIsRefused(t *testing.T) {
	info := paper.Info{Title: "x", Created: day}
	for name, build := range map[string]func() ([]byte, error){
		"no page": func() ([]byte, error) { return (&paper.Document{Info: info}).Finish(paper.A1b) },
		"no date": func() ([]byte, error) {
			d := &paper.Document{Info: paper.Info{}}
			d.Page(100, 100)
			return d.Finish(paper.A1b)
		},
		"a page of no size": func() ([]byte, error) {
			d := &paper.Document{Info: info}
			d.Page(0, 100)
			return d.Finish(paper.A1b)
		},
		"attachments in A-1b": func() ([]byte, error) { return sampleDocument(t).Finish(paper.A1b, sampleAttachments()...) },
		"an attachment with a path": func() ([]byte, error) {
			return sampleDocument(t).Finish(paper.A3b, pdf.Attachment{Name: "../x", MIME: "text/plain", Relation: pdf.Supplement})
		},
		"an attachment twice": func() ([]byte, error) {
			return sampleDocument(t).Finish(paper.A3b, append(sampleAttachments(), sampleAttachments()...)...)
		},
		"a link to a script": func() ([]byte, error) {
			d := &paper.Document{Info: info}
			d.Page(100, 100).Draw(paper.Link{W: 10, H: 10, URL: "javascript:alert(1)"})
			return d.Finish(paper.A1b)
		},
		"an empty picture": func() ([]byte, error) {
			d := &paper.Document{Info: info}
			d.Page(100, 100).Draw(paper.Picture{W: 10, H: 10, Image: image.NewGray(image.Rectangle{})})
			return d.Finish(paper.A1b)
		},
	} {
		if out, err := build(); err == nil || out != nil {
			t.Errorf("%s: got %d bytes and error %v", name, len(out), err)
		}
	}
}

// A title with PDF operators, markup and a change of direction is text: on
// the page, in both kinds of metadata and in the drawing for the screen.
func TestHostileTitle(t *testing.T) {
	const title = `) Tj ET endstream endobj <</S/JavaScript/JS(app.alert(1))>> \( <script>x</script> ]]>`
	d := &paper.Document{Info: paper.Info{Title: title + "\u202E\x00", Author: "<&>\"'", Subject: "a\nb", Created: day}}
	d.Page(210, 60).Draw(paper.Text{X: 10, Y: 10, Block: compose(t, 190, paper.Span{Style: paper.Body, Text: title + "\u202E"})})
	for _, kind := range []paper.Kind{paper.A1b, paper.A3b} {
		path := save(t, "hostile.pdf", finish(t, d, kind))
		toolcheck.Run(t, "qpdf", "--check", path)
		for name, o := range readQpdf(t, path).objects {
			if m, ok := o.(map[string]any); ok && fmt.Sprint(m["value"]) == "/JavaScript" {
				t.Errorf("%s is a script", name)
			}
		}
		text := strings.Join(strings.Fields(toolcheck.Run(t, "pdftotext", "-layout", path, "-")), " ")
		if want := title + "[U+202E]"; text != want {
			t.Errorf("text %q, want %q", text, want)
		}
		if out := toolcheck.Run(t, "pdfinfo", path); !strings.Contains(out, title+"[U+202E][U+0000]") || strings.Contains(out, "JavaScript:      yes") {
			t.Errorf("%s", out)
		}
	}
	out, err := toolcheck.Preflight(t, save(t, "hostile.pdf", finish(t, d, paper.A1b)))
	if err != nil {
		t.Errorf("preflight: %v\n%s", err, out)
	}
}

// Labels are composed on all cores.
func TestParallel(t *testing.T) {
	want := finish(t, sampleDocument(t), paper.A1b)
	for i := range 4 {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			t.Parallel()
			if !bytes.Equal(finish(t, sampleDocument(t), paper.A1b), want) {
				t.Error("other bytes when several documents are written at once")
			}
		})
	}
}

func BenchmarkDocument(b *testing.B) {
	for b.Loop() {
		finish(b, sampleDocument(b), paper.A1b)
	}
}

// A white area in a group leaves the ink black for what comes after it.
func TestWhiteLeavesNoTrace(t *testing.T) {
	d := &paper.Document{Info: paper.Info{Title: "White", Created: day}}
	first := d.Page(60, 30)
	first.Draw(paper.Group{X: 5, Y: 5, Shapes: []paper.Shape{paper.Rect{W: 2, H: 2, Fill: paper.White}}})
	second := d.Page(60, 30)
	second.Draw(paper.Group{X: 5, Y: 5, Shapes: []paper.Shape{paper.Rect{W: 2, H: 2, Fill: paper.Black}}},
		paper.Text{X: 5, Y: 15, Block: compose(t, 50, paper.Span{Style: paper.Title, Text: "HHHH"})})
	path := save(t, "white.pdf", finish(t, d, paper.A1b))
	ink := func(page string) int {
		out := filepath.Join(t.TempDir(), "p")
		toolcheck.Run(t, "pdftoppm", "-f", page, "-l", page, "-r", "72", "-gray", "-y", "40", "-H", "40", "-x", "0", "-W", "170", "-singlefile", path, out)
		data, err := os.ReadFile(out + ".pgm")
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		for _, b := range data[len(data)-170*40:] {
			if b < 100 {
				n++
			}
		}
		return n
	}
	if ink("1") != 0 || ink("2") < 100 {
		t.Errorf("%d dark points where nothing, %d where text was set", ink("1"), ink("2"))
	}
}

// The measuring that papers are held against finds each fault it looks for.
func TestFindingsFindFaults(t *testing.T) {
	body := func(size float64, text string, width float64) paper.Block {
		return compose(t, width, paper.Span{Style: paper.LabelBody.Scaled(size / paper.LabelBody.SizePt), Text: text})
	}
	d := &paper.Document{Info: paper.Info{Title: "Faults", Created: day}}
	d.Page(120, 60).Draw(paper.Text{X: 20, Y: 10, Block: body(8, "sound, with 11 3\u20444 in and 200 lux on a line", 0)})
	d.Page(120, 60).Draw(paper.Text{X: 20, Y: 10, Block: body(5.5, "small", 0)})
	d.Page(120, 60).Draw(paper.Text{X: 1, Y: 10, Block: body(8, "outside", 0)})
	d.Page(120, 60).Draw(paper.Text{X: 20, Y: 10, Block: body(8, "one word", 0)}, paper.Text{X: 21, Y: 10.5, Block: body(8, "another", 0)})
	d.Page(120, 60).Draw(paper.Text{X: 20, Y: 10, Block: body(8, "a thickness of 3\nmm and more of it", 0)})
	d.Page(120, 60).Draw(paper.Text{X: 20, Y: 10, Block: body(8, "HTTPS://PANELS.EXAMPLE/RECO\nRDS/KB2601421", 0)})
	got := toolcheck.Findings(t, save(t, "faults.pdf", finish(t, d, paper.A1b)), 5)
	for _, want := range []string{`"small" in 5.50 pt`, `page 3: "outside" leaves the margin`, `page 4: "another" stands on "one"`, `page 5: a line ends between "3" and "mm"`, `page 6: an address is broken`} {
		if !slices.ContainsFunc(got, func(s string) bool { return strings.HasPrefix(s, want) }) {
			t.Errorf("not found: %s", want)
		}
	}
	if slices.ContainsFunc(got, func(s string) bool { return strings.HasPrefix(s, "page 1") }) {
		t.Errorf("a sound page: %q", got)
	}
}
