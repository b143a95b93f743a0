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
	flow.Text(paper.Span{Style: pageTitle, Text: string(words.RulerTitle)})
	flow.Gap(4)
	flow.Text(paper.Span{Style: pageBody, Text: string(words.RulerText)})
	if o.Sheet != nil && !o.Sheet.plain() {
		flow.Heading(5, 1, paper.Span{Style: paper.LabelBold.Scaled(1.2), Text: string(words.AlignTitle)})
		flow.Text(paper.Span{Style: pageBody, Text: string(words.AlignText)})
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
		{at.X, at.Y, 0, long(width, 10, 150), 10, 10, string(words.Millimetres)},
		{at.X, at.Y + 22, 0, long(width, 25.4, 6*25.4), 25.4, 8, string(words.Inches)},
		{at.X + 14, at.Y + 48, 90, long(height-48, 10, 150), 10, 10, string(words.Millimetres)},
		{at.X + 36, at.Y + 48, 90, long(height-48, 25.4, 6*25.4), 25.4, 8, string(words.Inches)},
	}
	for _, s := range scales {
		shapes, err := scale(s.length, s.unit, s.parts, s.name)
		if err != nil {
			return err
		}
		at.Page.Draw(paper.Group{X: s.x, Y: s.y, Degrees: s.degrees, Shapes: shapes})
	}
	return nil
}

// scale draws a ruler from the origin to the right, its lines upright.
func scale(length, unit float64, parts int, name string) ([]paper.Shape, error) {
	var ticks [][]paper.Point
	var shapes []paper.Shape
	steps := int(length/unit*float64(parts) + 0.5)
	for i := 0; i <= steps; i++ {
		x, h := float64(i)*unit/float64(parts), 2.5
		switch {
		case i%parts == 0:
			h = 6
			n := i / parts
			text := strconv.Itoa(n)
			if unit == 10 {
				text = strconv.Itoa(n * 10)
			}
			if i == steps {
				text += paper.NoBreakSpace + name
			}
			b, err := paper.Compose(0, paper.Span{Style: pageSmall, Text: text})
			if err != nil {
				return nil, err
			}
			shapes = append(shapes, paper.Text{X: x + 0.5, Y: 6, Block: b})
		case 2*i%parts == 0:
			h = 4
		}
		ticks = append(ticks, []paper.Point{{X: x, Y: 0}, {X: x, Y: h}})
	}
	ticks = append(ticks, []paper.Point{{X: 0, Y: 0}, {X: length, Y: 0}})
	return append(shapes, paper.Strokes{Lines: ticks, WeightMM: 0.15}), nil
}

// note draws the page on paper, print and paste. It is no part of a label.
func note(doc *paper.Document, o Options) error {
	words := o.Catalogue.Label
	a := o.pageFor()
	flow := paper.Flow{Next: func() paper.Frame { return frame(doc, a) }}
	flow.Text(paper.Span{Style: pageTitle, Text: string(words.NoteTitle)})
	flow.Gap(3)
	for _, n := range words.Notes {
		flow.Gap(2.5)
		flow.Text(paper.Span{Style: pageBody, Text: string(n)})
	}
	flow.Heading(8, 2, paper.Span{Style: paper.LabelHead.Scaled(1.2), Text: string(words.NoteSources)})
	for _, s := range words.Sources {
		flow.Text(paper.Span{Style: pageSmall, Text: string(s)})
	}
	return flow.Done()
}
