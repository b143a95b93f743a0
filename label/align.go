package label

import (
	"strconv"

	"backleaf/record/paper"
)

// align draws the page that is held behind a bought sheet: the outline of every
// place with its number, the four corners of all places together, and a ruler
// along their upper and left edge.
func align(doc *paper.Document, o Options) error {
	s := o.Sheet
	page := doc.Page(s.Page.WidthMM, s.Page.HeightMM)
	for i := range s.places() {
		x, y := s.at(i)
		b, err := paper.Compose(0, paper.Span{Style: pageTitle, Text: o.Catalogue.Label.Place.With("place", strconv.Itoa(i+1))})
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
	for _, r := range []struct{ degrees, length float64 }{{0, wide}, {90, high}} {
		ticks, err := edge(r.length, r.degrees > 0)
		if err != nil {
			return err
		}
		page.Draw(paper.Group{X: x, Y: y, Degrees: r.degrees, Shapes: ticks})
	}
	return nil
}

// edge is a ruler from the origin to the right, its lines on the inner side of
// the edge: below it or, turned by 90°, above.
func edge(length float64, turned bool) ([]paper.Shape, error) {
	side := 1.0
	if turned {
		side = -1
	}
	var ticks [][]paper.Point
	var shapes []paper.Shape
	for mm := 0; float64(mm) <= length; mm++ {
		h := 1.2
		switch {
		case mm%10 == 0 && mm > 0:
			h = 3
			b, err := paper.Compose(0, paper.Span{Style: paper.LabelSmall, Text: strconv.Itoa(mm)})
			if err != nil {
				return nil, err
			}
			top := 3.2
			if turned {
				top = -3.2 - b.HeightMM()
			}
			shapes = append(shapes, paper.Text{X: float64(mm), Y: top, Block: b, Align: paper.Centre})
		case mm%5 == 0:
			h = 2
		}
		ticks = append(ticks, []paper.Point{{X: float64(mm), Y: 0}, {X: float64(mm), Y: side * h}})
	}
	return append(shapes, paper.Strokes{Lines: ticks, WeightMM: 0.1}), nil
}
