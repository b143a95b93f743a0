package section_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"backleaf/record/paper"
	"backleaf/record/section"
	"backleaf/record/toolcheck"
)

func sampleBands() []section.Band {
	return []section.Band{
		{Kind: section.Varnish, Label: "Varnish, synthetic resin, removable with white spirit", Note: "12 June 2026"},
		{Kind: section.Paint, Label: "Oil paint", Note: "May 2026", ThicknessMicrons: 300, Certainty: section.Estimated},
		{Kind: section.Ground, Label: "Acrylic dispersion ground, third coat", Note: "20 March 2026", ThicknessMicrons: 60, Certainty: section.Measured},
		{Kind: section.Ground, Label: "Acrylic dispersion ground, second coat", Note: "19 March 2026", ThicknessMicrons: 60, Certainty: section.Measured},
		{Kind: section.Sealer, Label: "Sealer over the cloth", Note: "14 March 2026", ThicknessMicrons: 40, Certainty: section.Estimated},
		{Kind: section.Cloth, Label: "Linen, 16 × 14 threads/cm, 220 g/m²", Note: "14 March 2026", ThicknessMicrons: 450, Certainty: section.Measured},
		{Kind: section.Adhesive, Label: "Sealer as adhesive", Note: "14 March 2026"},
		{Kind: section.Sealer, Label: "Sealer, first coat", Note: "14 March 2026"},
		{Kind: section.Board, Board: section.Plywood, Plies: 3, Label: "Birch plywood, three plies", ThicknessMicrons: 3000, Certainty: section.Measured},
		{Kind: section.Sealer, Label: "Sealer on the back", Note: "15 March 2026", ThicknessMicrons: 40, Certainty: section.Estimated},
		{Kind: section.Other, Label: "Grey acrylic paint", Note: "16 March 2026"},
	}
}

// longBands has n layers around a board.
func longBands(n int) []section.Band {
	var out []section.Band
	for i := range n {
		b := section.Band{Kind: section.BandKind(i%6 + 2), Label: fmt.Sprintf("Coat %d of a build-up that never ends, thinned one to three", i+1),
			Note: "14 March 2026", ThicknessMicrons: int64(20 + i), Certainty: section.Certainty(i % 3)}
		if i == n/2 {
			b = section.Band{Kind: section.Board, Board: section.MDF, Label: "Medium density fibreboard", ThicknessMicrons: 6350, Certainty: section.Measured}
		}
		out = append(out, b)
	}
	return out
}

var words = section.Words{Front: "Front", Back: "Back", Measured: "{t}, measured", Estimated: "{t}, estimated", NotRecorded: "Where no date or thickness stands, none is recorded.",
	NotToScale: "Not to scale", Part: "Layers {first} to {last} of {all}, counted from the front"}

func drawn(bands []section.Band) section.Section {
	return section.Section{Bands: bands, Words: words, Title: "Build-up"}
}

func TestSectionOnPaper(t *testing.T) {
	serif := drawn(sampleBands())
	serif.Name, serif.Detail, serif.Head = paper.Small, paper.Small.Scaled(0.9), paper.Heading.Scaled(0.8)
	var boards []section.Band
	for b := section.OtherBoard; b <= section.Honeycomb; b++ {
		boards = append(boards, section.Band{Kind: section.Board, Board: b, Label: fmt.Sprintf("Board %d", b)})
	}
	d := &paper.Document{Info: paper.Info{Title: "Sections", Created: time.Date(2026, 3, 14, 9, 26, 53, 0, time.UTC)}}
	for _, c := range []struct {
		section section.Section
		w, h    float64
		parts   int
	}{
		{drawn(sampleBands()), 120, 130, 1},
		{serif, 90, 76, 1},
		{drawn(boards), 100, 180, 1},
		{drawn(longBands(60)), 170, 257, 2},
		{drawn(longBands(60)), 91, 120, 6},
		{drawn(longBands(1)), 50, 40, 1},
	} {
		all, err := c.section.Draw(c.w, c.h)
		if err != nil {
			t.Fatal(err)
		}
		if len(all) != c.parts {
			t.Errorf("%d layers in %.0f × %.0f mm: %d drawings, want %d", len(c.section.Bands), c.w, c.h, len(all), c.parts)
		}
		for _, one := range all {
			if one.HeightMM > c.h+1e-6 || one.WidthMM > c.w+1e-6 {
				t.Errorf("drawing of %.1f × %.1f mm, %.1f × %.1f asked for", one.WidthMM, one.HeightMM, c.w, c.h)
			}
			d.Page(210, 297).Draw(one.At(20, 20))
		}
	}
	pdf, err := d.Finish(paper.A1b)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "sections.pdf")
	if err := os.WriteFile(path, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := toolcheck.Preflight(t, path); err != nil {
		t.Fatalf("preflight: %v\n%s", err, out)
	}
	text := strings.Join(strings.Fields(toolcheck.Run(t, "pdftotext", "-layout", path, "-")), " ") // no-break spaces too
	for _, want := range []string{"FRONT", "BACK", "Not to scale", "60 µm, measured", "300 µm, estimated", "Where no date or thickness stands, none is", "6.35 mm, measured",
		"Layers 11 to 20 of 60, counted from the front", "Coat 60 of a build-up"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the pages", want)
		}
	}
}

// Text never overlaps text: read back from the SVG, where each run has its
// place and length.
func TestCalloutsDoNotOverlap(t *testing.T) {
	for _, n := range []int{1, 2, 3, 5, 8, 13, 21, 34, 60} {
		for _, size := range [][2]float64{{60, 90}, {110, 140}, {170, 250}} {
			all, err := drawn(longBands(n)).Draw(size[0], size[1])
			if err != nil {
				t.Fatal(err)
			}
			shown := 0
			for _, d := range all {
				type box struct{ x0, x1, y0, y1 float64 }
				var boxes []box
				for _, s := range spans(t, d.SVG()) {
					// Height of capitals; tails may reach below the baseline.
					b := box{s.X, s.X + s.Length, s.Y - 0.7*s.Size, s.Y}
					if b.x1 > d.WidthMM+0.01 || b.x0 < -0.01 || b.y1 > d.HeightMM || b.y0 < 0 {
						t.Fatalf("%d layers: %q lies outside the drawing", n, s.Text)
					}
					for _, o := range boxes {
						if b.x0 < o.x1-0.01 && o.x0 < b.x1-0.01 && b.y0 < o.y1-0.01 && o.y0 < b.y1-0.01 {
							t.Fatalf("%d layers in %v: %q overlaps other text", n, size, s.Text)
						}
					}
					boxes = append(boxes, b)
					if strings.HasPrefix(s.Text, "Coat ") || strings.HasPrefix(s.Text, "Medium") {
						shown++
					}
				}
			}
			if shown != n {
				t.Fatalf("%d layers, %d callouts", n, shown)
			}
		}
	}
}

type svgSpan struct {
	X      float64 `xml:"x,attr"`
	Y      float64 `xml:"y,attr"`
	Size   float64 `xml:"font-size,attr"`
	Length float64 `xml:"textLength,attr"`
	Text   string  `xml:",chardata"`
}

// spans reads the runs of text of a drawing; all of it must be well-formed.
func spans(t *testing.T, svg []byte) []svgSpan {
	t.Helper()
	var out []svgSpan
	var all svgSpan // what holds for all, unless they say otherwise
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatalf("not well-formed: %v", err)
		}
		start, ok := token.(xml.StartElement)
		if ok && start.Name.Local == "svg" {
			for _, a := range start.Attr {
				if a.Name.Local == "font-size" {
					all.Size, _ = strconv.ParseFloat(a.Value, 64)
				}
			}
		}
		if ok && start.Name.Local == "text" {
			s := all
			if err := d.DecodeElement(&s, &start); err != nil {
				t.Fatal(err)
			}
			if s.Size <= 0 {
				t.Errorf("%q has no size", s.Text)
			}
			out = append(out, s)
		}
	}
}

func TestHostileLabelIsTextInSVG(t *testing.T) {
	s := drawn([]section.Band{{Kind: section.Paint, Label: `</text><script>alert("x")</script>`, Note: "\u202Eab\x00]]>&amp;"}})
	s.Title = "<b>&"
	all, err := s.Draw(100, 60)
	if err != nil {
		t.Fatal(err)
	}
	svg := all[0].SVG()
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, svg)
		}
		if e, ok := token.(xml.StartElement); ok && (e.Name.Local == "script" || e.Name.Local == "b") {
			t.Fatalf("text became markup: %s", svg)
		}
	}
	for _, want := range []string{"<title id=\"drawing-title\">&lt;b&gt;&amp;</title>", "[U+202E]ab[U+0000]"} {
		if !strings.Contains(string(svg), want) {
			t.Errorf("%q is missing in %s", want, svg)
		}
	}
}

func TestSectionRefuses(t *testing.T) {
	for name, s := range map[string]section.Section{
		"no layers":                  drawn(nil),
		"a measured nothing":         drawn([]section.Band{{Label: "x", Certainty: section.Measured}}),
		"a character without a face": drawn([]section.Band{{Label: "\u1200"}}),
	} {
		if d, err := s.Draw(100, 100); err == nil || d != nil {
			t.Errorf("%s: drawn", name)
		}
	}
	if _, err := drawn(sampleBands()).Draw(100, 9); !errors.Is(err, paper.ErrTooLong) {
		t.Errorf("no room: %v", err)
	}
	_, err := drawn([]section.Band{{Label: "a"}, {Label: "\u1200"}}).Draw(100, 100)
	var g *paper.GlyphError
	if !errors.As(err, &g) || g.Rune != 0x1200 || g.Field != "layer 2" {
		t.Errorf("error does not name character and layer: %v", err)
	}
}

func TestThickness(t *testing.T) {
	for microns, want := range map[int64]string{1: "1 µm", 450: "450 µm", 999: "999 µm", 1000: "1 mm", 3175: "3.175 mm", 6350: "6.35 mm", 12000: "12 mm"} {
		if got := strings.ReplaceAll(section.Thickness(microns), paper.ThinSpace, " "); got != want {
			t.Errorf("%d: %q, want %q", microns, got, want)
		}
	}
}

// To scale, bands are as high as their thickness times one whole number, the bar
// is that many millimetres, and what is not known is left out and named.
func TestToScale(t *testing.T) {
	s := drawn(sampleBands())
	s.Words.ToScale, s.Words.LeftOut = "{times} times", "{layers} left out"
	total := 0.0
	for _, b := range s.Bands {
		total += float64(b.ThicknessMicrons) / 1000
	}
	d, ok, err := s.ToScale(36, 130)
	if err != nil || !ok {
		t.Fatal(ok, err)
	}
	var times int
	if _, err := fmt.Sscanf(d.Desc, "%d times", &times); err != nil || !strings.HasSuffix(d.Desc, ". 1, 7, 8, 11 left out.") {
		t.Fatalf("%q: %v", d.Desc, err)
	}
	found := false
	for _, shape := range d.Shapes {
		if r, ok := shape.(paper.Rect); ok && math.Abs(r.H-total*float64(times)) < 0.01 {
			found = true
		}
	}
	if !found || d.HeightMM > 130 || times != int((130-4-17)/total) {
		t.Errorf("%d times %.3f mm in %.1f mm", times, total, d.HeightMM)
	}
	if _, ok, _ := drawn(longBands(1)).ToScale(36, 130); ok {
		t.Error("one layer is drawn to scale")
	}
}
