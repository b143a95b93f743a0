package paper_test

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"backleaf/record/paper"
)

func sampleBands() []paper.Band {
	return []paper.Band{
		{Kind: paper.VarnishBand, Label: "Varnish, synthetic resin, removable with white spirit", Note: "12 June 2026"},
		{Kind: paper.PaintBand, Label: "Oil paint", Note: "May 2026", ThicknessMicrons: 300, Certainty: paper.Estimated},
		{Kind: paper.GroundBand, Label: "Acrylic dispersion ground, third coat", Note: "20 March 2026", ThicknessMicrons: 60, Certainty: paper.Measured},
		{Kind: paper.GroundBand, Label: "Acrylic dispersion ground, second coat", Note: "19 March 2026", ThicknessMicrons: 60, Certainty: paper.Measured},
		{Kind: paper.SealerBand, Label: "Sealer over the cloth", Note: "14 March 2026", ThicknessMicrons: 40, Certainty: paper.Estimated},
		{Kind: paper.ClothBand, Label: "Linen, 16 × 14 threads/cm, 220 g/m²", Note: "14 March 2026", ThicknessMicrons: 450, Certainty: paper.Measured},
		{Kind: paper.AdhesiveBand, Label: "Sealer as adhesive", Note: "14 March 2026"},
		{Kind: paper.SealerBand, Label: "Sealer, first coat", Note: "14 March 2026"},
		{Kind: paper.BoardBand, Board: paper.Plywood, Plies: 3, Label: "Birch plywood, three plies", ThicknessMicrons: 3000, Certainty: paper.Measured},
		{Kind: paper.SealerBand, Label: "Sealer on the back", Note: "15 March 2026", ThicknessMicrons: 40, Certainty: paper.Estimated},
		{Kind: paper.OtherBand, Label: "Grey acrylic paint", Note: "16 March 2026"},
	}
}

// longBands has n layers around a board.
func longBands(n int) []paper.Band {
	var out []paper.Band
	for i := range n {
		b := paper.Band{Kind: paper.BandKind(i%6 + 2), Label: fmt.Sprintf("Coat %d of a build-up that never ends, thinned one to three", i+1), Note: "14 March 2026", ThicknessMicrons: int64(20 + i), Certainty: paper.Certainty(i % 3)}
		if i == n/2 {
			b = paper.Band{Kind: paper.BoardBand, Board: paper.MDF, Label: "Medium density fibreboard", ThicknessMicrons: 6350, Certainty: paper.Measured}
		}
		out = append(out, b)
	}
	return out
}

func TestSectionOnPaper(t *testing.T) {
	d := paper.NewDocument(paper.Info{Title: "Sections", Created: day})
	page := d.Page(210, 297)
	draw := func(p *paper.Page, s paper.Section, x, y, w, h float64) {
		t.Helper()
		s.Words, s.Title = paper.EnglishSection, "Build-up"
		all, err := s.Draw(w, h)
		if err != nil {
			t.Fatal(err)
		}
		for i, one := range all {
			if one.HeightMM > h+1e-6 || one.WidthMM > w+1e-6 {
				t.Errorf("drawing of %.1f × %.1f mm, %.1f × %.1f asked for", one.WidthMM, one.HeightMM, w, h)
			}
			save(t, fmt.Sprintf("section-%.0f-%d.svg", w, i), one.SVG())
			p.Draw(one.At(x, y))
			if i+1 < len(all) {
				p = d.Page(210, 297)
			}
		}
	}
	draw(page, paper.Section{Bands: sampleBands()}, 20, 20, 120, 120)
	draw(page, paper.Section{Bands: sampleBands(), Name: paper.Small, Detail: paper.Small.Scaled(0.9)}, 20, 150, 90, 60)
	var boards []paper.Band
	for b := paper.OtherBoard; b <= paper.Honeycomb; b++ {
		boards = append(boards, paper.Band{Kind: paper.BoardBand, Board: b, Label: fmt.Sprintf("Board %d", b)})
	}
	draw(d.Page(210, 297), paper.Section{Bands: boards}, 20, 20, 100, 150)
	draw(d.Page(210, 297), paper.Section{Bands: longBands(60)}, 20, 20, 170, 257)
	draw(d.Page(210, 297), paper.Section{Bands: longBands(60)}, 20, 20, 91, 120)
	out, err := preflight(t, save(t, "sections.pdf", finish(t, d, paper.A1b)))
	if err != nil {
		t.Fatalf("preflight: %v\n%s", err, out)
	}
}
var _ = errors.New
var _ io.Reader
var _ = xml.Unmarshal
var _ = strings.Join
