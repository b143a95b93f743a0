package label

import (
	"strconv"

	"backleaf/record/paper"
)

// align draws the page that is held behind a bought sheet: the outline of every
// place with its number, the four corners of all places together, and a ruler
// along their upper and left edge, in the studio's units.
func align(doc *paper.Document, o Options) error {
	s := o.Sheet
	page := doc.Page(s.Page.WidthMM, s.Page.HeightMM)
	for i := range s.places() {
		x, y := s.at(i)
		b, err := paper.Compose(0, paper.Span{Style: pageTitle, Text: o.Catalogue.Label.T("place").With("place", strconv.Itoa(i+1))})
		if err != nil {
			return err
		}
		page.Draw(paper.Rect{X: x, Y: y, W: s.Place.WidthMM, H: s.Place.HeightMM, WeightMM: 0.15},
			paper.Text{X: x + s.Place.WidthMM/2, Y: y + (s.Place.HeightMM-b.HeightMM())/2, Block: b, Align: paper.Centre})
	}
	high, wide := s.span()
	x, y := s.at(0)
	for _, c := range []struct{ x, y float64 }{{x, y}, {x + wide, y}, {x, y + high}, {x + wide, y + high}} {
		const arm = 4
		page.Draw(paper.Strokes{Lines: [][]paper.Point{{{X: c.x - arm, Y: c.y}, {X: c.x + arm, Y: c.y}}, {{X: c.x, Y: c.y - arm}, {X: c.x, Y: c.y + arm}}}, WeightMM: 0.35})
	}
	unit, parts := 10.0, 10
	if o.Units == "in" {
		unit, parts = 25.4, 8
	}
	for _, r := range []struct{ degrees, length, side float64 }{{0, wide, 1}, {90, high, -1}} {
		ticks, err := scale(ruled{length: r.length, unit: unit, parts: parts, side: r.side, weight: 0.1, times: 0.5})
		if err != nil {
			return err
		}
		page.Draw(paper.Group{X: x, Y: y, Degrees: r.degrees, Shapes: ticks})
	}
	return nil
}
