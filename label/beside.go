package label

import (
	"strconv"

	"backleaf/record/paper"
)

// pageFor is the page of the sheet, or the paper for pages beside labels.
func (o Options) pageFor() Area {
	switch {
	case o.Sheet != nil:
		return o.Sheet.Page
	case o.Paper != (Area{}):
		return o.Paper
	}
	return A4
}

// A frame to set text in on the pages beside the labels.
func frame(doc *paper.Document, a Area) paper.Frame {
	const margin = 22
	page := doc.Page(a.WidthMM, a.HeightMM)
	return paper.Frame{Page: page, X: margin, Y: margin, W: a.WidthMM - 2*margin, H: a.HeightMM - 2*margin}
}

// The styles of the pages beside the labels.
var (
	pageTitle = paper.LabelNumber
	pageBody  = paper.LabelBody.Scaled(1.2)
	pageSmall = paper.LabelSmall.Scaled(1.1)
)

// ruler draws the page that shows whether a printer keeps the scale.
func ruler(doc *paper.Document, o Options) error {
	words := o.Catalogue.Label
	a := o.pageFor()
	flow := paper.Flow{Next: func() paper.Frame { return frame(doc, a) }}
	flow.Text(paper.Span{Style: pageTitle, Text: string(words.T("ruler-title"))})
	flow.Gap(4)
	flow.Text(paper.Span{Style: pageBody, Text: string(words.T("ruler-text"))})
	if o.Sheet != nil && !o.Sheet.plain() {
		flow.Heading(5, 1, paper.Span{Style: paper.LabelBold.Scaled(1.2), Text: string(words.T("align-title"))})
		flow.Text(paper.Span{Style: pageBody, Text: string(words.T("align-text"))})
	}
	flow.Gap(10)
	at := flow.At()
	if err := flow.Done(); err != nil {
		return err
	}
	long := func(room, step, most float64) float64 { return min(most, float64(int(room/step))*step) }
	width, height := at.W, at.H
	scales := []struct {
		x, y, degrees, length, unit float64
		parts                       int
		name                        string
	}{
		{at.X, at.Y, 0, long(width, 10, 150), 10, 10, string(words.T("millimetres"))},
		{at.X, at.Y + 22, 0, long(width, 25.4, 6*25.4), 25.4, 8, string(words.T("inches"))},
		{at.X + 14, at.Y + 48, 90, long(height-48, 10, 150), 10, 10, string(words.T("millimetres"))},
		{at.X + 36, at.Y + 48, 90, long(height-48, 25.4, 6*25.4), 25.4, 8, string(words.T("inches"))},
	}
	for _, s := range scales {
		shapes, err := scale(ruled{s.length, s.unit, s.parts, s.name, 1, 0.15, 1})
		if err != nil {
			return err
		}
		at.Page.Draw(paper.Group{X: s.x, Y: s.y, Degrees: s.degrees, Shapes: shapes})
	}
	return nil
}

// A ruled scale has so many parts to the unit; its lines stand on one side of
// it, below (1) or above (-1).
type ruled struct {
	length, unit float64 // mm
	parts        int
	name         string // of the unit, behind the last figure
	side, weight float64
	times        float64 // how long the lines are, of 6 mm at each unit
}

// scale draws a ruler from the origin to the right.
func scale(s ruled) ([]paper.Shape, error) {
	var ticks [][]paper.Point
	var shapes []paper.Shape
	steps := int(s.length/s.unit*float64(s.parts) + 1e-6)
	for i := 0; i <= steps; i++ {
		x, h := float64(i)*s.unit/float64(s.parts), 2.5*s.times
		switch {
		case i%s.parts == 0:
			h = 6 * s.times
			n := i / s.parts
			if s.unit == 10 {
				n *= 10
			}
			text := strconv.Itoa(n)
			if i == steps && s.name != "" {
				text += paper.NoBreakSpace + s.name
			}
			b, err := paper.Compose(0, paper.Span{Style: pageSmall, Text: text})
			if err != nil {
				return nil, err
			}
			top := h
			if s.side < 0 {
				top = -h - b.HeightMM()
			}
			shapes = append(shapes, paper.Text{X: x + 0.5, Y: top, Block: b})
		case 2*i%s.parts == 0:
			h = 4 * s.times
		}
		ticks = append(ticks, []paper.Point{{X: x, Y: 0}, {X: x, Y: s.side * h}})
	}
	ticks = append(ticks, []paper.Point{{X: 0, Y: 0}, {X: s.length, Y: 0}})
	return append(shapes, paper.Strokes{Lines: ticks, WeightMM: s.weight}), nil
}

// note draws the page on paper, print and paste. It is no part of a label.
func note(doc *paper.Document, o Options) error {
	words := o.Catalogue.Label
	a := o.pageFor()
	flow := paper.Flow{Next: func() paper.Frame { return frame(doc, a) }}
	flow.Text(paper.Span{Style: pageTitle, Text: string(words.T("note-title"))})
	flow.Gap(3)
	for _, n := range words.Notes {
		flow.Gap(2.5)
		flow.Text(paper.Span{Style: pageBody, Text: string(n)})
	}
	flow.Heading(8, 2, paper.Span{Style: paper.LabelHead.Scaled(1.2), Text: string(words.T("note-sources"))})
	for _, s := range words.Sources {
		flow.Text(paper.Span{Style: pageSmall, Text: string(s)})
	}
	return flow.Done()
}
