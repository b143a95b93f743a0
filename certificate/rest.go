package certificate

import (
	"strconv"
	"strings"

	"backleaf/record/paper"
	"backleaf/record/section"
)

// pages is how many there are.
func (c *content) pages(p plan) int {
	if p.moved == 0 {
		return 1
	}
	return c.total
}

// elsewhere says what stands on page 2.
func (c *content) elsewhere(p plan) string {
	var parts []string
	for _, m := range []struct {
		bit  moved
		name string
	}{{factsMoved, string(c.words.Facts)}, {careMoved, string(c.words.CarePart)}, {wordsMoved, string(c.words.InWords)}, {drawingMoved, string(c.words.Drawing)}, {gapsMoved, string(c.words.GapsPart)}} {
		if p.moved&m.bit != 0 {
			parts = append(parts, m.name)
		}
	}
	return c.words.OnPage.With("parts", c.teller.List(parts), "page", strconv.Itoa(2))
}

type drawKey struct{ scale, height float64 }

type drawn struct {
	drawing paper.Drawing
	err     error
}

// leastBandMM is less than a layer with its callout can ever take.
const leastBandMM = 3.0

// drawing is the build-up in one drawing.
func (c *content) drawing(s sheet, width, height float64) (paper.Drawing, error) {
	if float64(len(c.section.Bands))*leastBandMM*s.scale > height {
		return paper.Drawing{}, paper.ErrTooLong
	}
	key := drawKey{s.scale, height}
	d, ok := c.drawings[key]
	if !ok {
		var ds []paper.Drawing
		if ds, d.err = c.sectionOf(s).Draw(width, height); d.err == nil && len(ds) > 1 {
			d.err = paper.ErrTooLong
		} else if d.err == nil {
			d.drawing = ds[0]
		}
		c.drawings[key] = d
	}
	return d.drawing, d.err
}

func (c *content) sectionOf(s sheet) section.Section {
	drawn := c.section
	drawn.Name = s.small().Bold()
	drawn.Detail = s.small().Scaled(0.9)
	drawn.Head = paper.Heading.Scaled(0.8)
	return drawn
}

// layRest sets what did not fit on the first page, on as many as it needs.
func (c *content) layRest(d *paper.Document, s sheet, p plan) error {
	s.scale = 1
	var failed error
	f := paper.Flow{Next: func() paper.Frame {
		page := d.Page(s.width, s.height)
		head, err := c.headColumn(s, d.Pages(), c.pages(p))
		if err != nil {
			failed = err
			return paper.Frame{}
		}
		page.Draw(head.at(s.left, s.top))
		y := s.top + head.height + 8
		return paper.Frame{Page: page, X: s.left, Y: y, W: s.inner(), H: s.height - s.bottom - y}
	}}
	heading := func(text string) { f.Heading(7, 1.5, paper.Span{Style: s.heading(), Text: text}) }
	if p.moved&factsMoved != 0 {
		heading(string(c.words.Facts))
		facts := c.more
		if p.moved&signedMoved != 0 {
			facts = append(append([]fact{}, c.signedAt...), c.more...)
		}
		for _, x := range facts {
			f.Row([]paper.Column{{WidthMM: nameMM * 1.4}, {}}, []paper.Span{{Style: s.name(), Text: x.name}}, []paper.Span{{Style: s.body(), Text: x.text, Field: x.field}})
			f.Gap(1)
		}
	}
	if p.moved&careMoved != 0 {
		heading(string(c.words.Care))
		for _, t := range append(append([]string{}, c.care...), c.careSources) {
			f.Text(paper.Span{Style: s.small(), Text: t})
			f.Gap(0.8)
		}
	}
	if p.moved&wordsMoved != 0 {
		heading(string(c.words.InWords))
		f.Text(paper.Span{Style: s.body(), Text: strings.Join(c.sentences, " "), Field: "build-up"})
	}
	if p.moved&gapsMoved != 0 {
		heading(string(c.words.Gaps))
		f.Text(paper.Span{Style: s.small(), Text: strings.Join(c.gaps, " "), Field: "gaps"})
	}
	if p.moved&drawingMoved != 0 {
		heading(string(c.words.Drawing))
		ds, err := c.sectionOf(s).Draw(s.inner()*0.8, 200)
		if err != nil {
			return err
		}
		for _, one := range ds {
			f.Drawing(one)
			f.Gap(6)
		}
	}
	if failed != nil {
		return failed
	}
	return f.Done()
}
