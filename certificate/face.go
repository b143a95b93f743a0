package certificate

import (
	"math"
	"strconv"
	"strings"

	"backleaf/record/paper"
)

// Measures of the first page, in millimetres.
const (
	gutterMM  = 8.0
	wideShare = 0.62 // of the width, for the wider of two columns
	signMM    = 21.0
)

// lay sets the parts of the first page. What a plan shares with an earlier one
// is set once.
func (c *content) lay(s sheet, p plan) (*page, error) {
	pg := &page{sheet: s, plan: p}
	for _, x := range []struct {
		name  string
		needs plan // what of the plan the part depends on
		set   func(sheet, plan) (part, error)
	}{
		{"head", plan{moved: p.moved}, c.head},
		{"hero", plan{scale: p.scale, photo: p.photo, moved: p.moved & (factsMoved | signedMoved)}, c.hero},
		{"build-up", plan{scale: p.scale, drawing: p.drawing, moved: p.moved}, c.buildUp},
		{"statement", plan{scale: p.scale}, c.statement},
		{"sign", plan{scale: p.scale}, c.sign},
		{"verify", plan{scale: p.scale}, c.verify},
	} {
		key := layKey{x.name, x.needs}
		done, ok := c.laid[key]
		if !ok {
			done.part, done.err = x.set(s, p)
			c.laid[key] = done
		}
		if done.err != nil {
			return nil, done.err
		}
		pg.parts = append(pg.parts, done.part)
	}
	return pg, nil
}

type layKey struct {
	name string
	plan plan
}

type laid struct {
	part part
	err  error
}

// head is the heading, the number and what must be said before all else.
func (c *content) head(s sheet, p plan) (part, error) {
	col, err := c.headColumn(s, 1, c.pages(p))
	if err != nil {
		return part{}, err
	}
	return part{col.height, func(y float64) ([]paper.Shape, error) { return []paper.Shape{col.at(s.left, y)}, nil }}, nil
}

// headColumn is the same on both pages.
func (c *content) headColumn(s sheet, number, pages int) (*column, error) {
	style := paper.Heading.Scaled(1.15)
	col := s.column(s.inner())
	left := string(c.words.Heading)
	if pages > 1 {
		left += " · " + c.words.Page.With("page", strconv.Itoa(number), "pages", strconv.Itoa(pages))
	}
	name, err := paper.Compose(0, paper.Span{Style: style, Text: left})
	if err != nil {
		return nil, err
	}
	no, err := paper.Compose(0, paper.Span{Style: style, Text: c.number, Field: "number"})
	if err != nil {
		return nil, err
	}
	col.shapes = append(col.shapes, paper.Text{Block: name}, right(col.width, 0, no))
	col.height = name.HeightMM() + 0.8
	col.shapes = append(col.shapes, hairline(0, col.height, col.width, col.height))
	for i, n := range c.notices {
		if i == 0 {
			col.gap(1.6)
		}
		style := paper.Aside
		if n.loud {
			style = paper.Strong
		}
		col.text(paper.Span{Style: style.Scaled(0.9), Text: n.text, Field: n.field})
	}
	return col, col.err
}

// buildUp is the build-up in words and as a drawing, with care and gaps beside it.
func (c *content) buildUp(s sheet, p plan) (part, error) {
	wide := (s.inner() - gutterMM) * wideShare
	l, r := s.column(wide), s.column(s.inner()-gutterMM-wide)
	l.text(paper.Span{Style: s.heading(), Text: string(c.words.BuildUp)})
	l.gap(1)
	if p.moved&wordsMoved == 0 {
		l.text(paper.Span{Style: s.small(), Text: strings.Join(c.sentences, " "), Field: "build-up"})
	} else {
		l.text(paper.Span{Style: s.name(), Text: c.elsewhere(p)})
	}
	if p.moved&drawingMoved == 0 {
		d, err := c.drawing(s, wide, p.drawing)
		if err != nil {
			return part{}, err
		}
		l.gap(1.5)
		l.drawing(d)
	}
	if p.moved&careMoved == 0 {
		r.text(paper.Span{Style: s.heading(), Text: string(c.words.Care)})
		r.gap(1)
		for i, t := range c.care {
			if i > 0 {
				r.gap(0.8)
			}
			r.text(paper.Span{Style: s.small(), Text: t})
		}
		r.gap(0.8)
		r.text(paper.Span{Style: s.small().Scaled(0.8), Text: c.careSources})
	}
	if len(c.gaps) > 0 && p.moved&gapsMoved == 0 {
		r.gap(4 * s.scale)
		r.text(paper.Span{Style: s.heading(), Text: string(c.words.Gaps)})
		r.gap(1)
		r.text(paper.Span{Style: s.small().Scaled(0.94), Text: strings.Join(c.gaps, " "), Field: "gaps"})
	}
	if p.moved != 0 && p.moved&wordsMoved == 0 {
		r.gap(4 * s.scale)
		r.text(paper.Span{Style: s.name(), Text: c.elsewhere(p)})
	}
	if err := firstError(l.err, r.err); err != nil {
		return part{}, err
	}
	return part{math.Max(l.height, r.height), func(y float64) ([]paper.Shape, error) {
		return []paper.Shape{l.at(s.left, y), r.at(s.left+wide+gutterMM, y)}, nil
	}}, nil
}

// statement is what the maker says, and what the certificate is not.
func (c *content) statement(s sheet, _ plan) (part, error) {
	wide := (s.inner() - gutterMM) * wideShare
	l, r := s.column(wide), s.column(s.inner()-gutterMM-wide)
	l.text(paper.Span{Style: s.heading(), Text: string(c.words.Statement)})
	l.gap(1)
	l.text(paper.Span{Style: s.body(), Text: c.statementText, Field: "statement"})
	r.text(paper.Span{Style: s.heading(), Text: string(c.words.Not)})
	r.gap(1)
	r.text(paper.Span{Style: s.small(), Text: string(c.words.NotText)})
	if err := firstError(l.err, r.err); err != nil {
		return part{}, err
	}
	return part{math.Max(l.height, r.height), func(y float64) ([]paper.Shape, error) {
		return []paper.Shape{l.at(s.left, y), r.at(s.left+wide+gutterMM, y)}, nil
	}}, nil
}

// sign is the place for signature, date and stamp.
func (c *content) sign(s sheet, _ plan) (part, error) {
	wide := (s.inner() - gutterMM) * wideShare
	half := (wide - gutterMM) / 2
	cells := []struct {
		x, w  float64
		text  string
		stamp bool
	}{{0, half, string(c.words.SignatureLine), false}, {half + gutterMM, half, string(c.words.PlaceLine), false},
		{wide + gutterMM, s.inner() - wide - gutterMM, string(c.words.Stamp), true}}
	var shapes []paper.Shape
	for _, cell := range cells {
		b, err := paper.Fit(cell.w, 4, 0.7, paper.Span{Style: s.name(), Text: cell.text})
		if err != nil {
			return part{}, err
		}
		foot := signMM - 4.2
		if cell.stamp {
			shapes = append(shapes, corners(cell.x, 0, cell.w, foot))
		} else {
			shapes = append(shapes, hairline(cell.x, foot, cell.x+cell.w, foot))
		}
		shapes = append(shapes, paper.Text{X: cell.x, Y: foot + 0.6, Block: b})
	}
	return part{signMM, func(y float64) ([]paper.Shape, error) {
		return []paper.Shape{paper.Group{X: s.left, Y: y, Shapes: shapes}}, nil
	}}, nil
}

// corners marks a rectangle by its four corners.
func corners(x, y, w, h float64) paper.Shape {
	const arm = 2.5
	var lines [][]paper.Point
	for _, k := range []struct{ x, y, dx, dy float64 }{{x, y, 1, 1}, {x + w, y, -1, 1}, {x, y + h, 1, -1}, {x + w, y + h, -1, -1}} {
		lines = append(lines, []paper.Point{{X: k.x + arm*k.dx, Y: k.y}, {X: k.x, Y: k.y}, {X: k.x, Y: k.y + arm*k.dy}})
	}
	return paper.Strokes{Lines: lines, WeightMM: 0.15}
}
