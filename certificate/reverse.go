package certificate

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"backleaf/record/paper"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

// Measures of the reverse, in millimetres.
const (
	backGutterMM = 8.0
	drawingW     = 0.58 // of the width, for the drawing
	tallestMM    = 150.0
	nameW        = 24.0 // hanging column for the names of facts
)

// moved says what finds no room on the reverse and goes to a further page.
type moved int

// What may move.
const (
	factsMoved moved = 1 << iota
	drawingMoved
	gapsMoved
	careMoved
	gapsLeft // not away: below the drawing

	away = factsMoved | drawingMoved | gapsMoved | careMoved
)

// plans are the ways to share out the reverse, the best first.
var plans = []moved{0, gapsLeft, factsMoved | gapsLeft, factsMoved, gapsMoved, factsMoved | gapsMoved, drawingMoved, drawingMoved | gapsLeft, drawingMoved | factsMoved,
	drawingMoved | factsMoved | gapsLeft, factsMoved | gapsMoved | careMoved, drawingMoved | factsMoved | gapsMoved, away}

// reverse lays the side for the file, by the first plan that fits.
func (c *content) reverse(s sheet, pages int) ([]paper.Shape, moved, error) {
	foot := c.check(s)
	above := c.notThis(s)
	for _, p := range plans {
		n := pages
		if p&away == 0 {
			n = 2
		}
		head := c.running(s, 2, n)
		for _, col := range []*column{foot, above, head} {
			if col.err != nil {
				return nil, p, col.err
			}
		}
		const gap = 5.0
		top := s.top + head.height + gap
		end := s.height - s.bottom - foot.height - gap - above.height - gap
		shapes, height, err := c.middle(s, p, top, end-top)
		if err != nil && !tooLong(err) {
			return nil, p, err
		}
		if err != nil || height > end-top+1e-6 {
			continue
		}
		out := append([]paper.Shape{head.at(s.side, s.top)}, shapes...)
		return append(out, above.at(s.side, end+gap), foot.at(s.side, s.height-s.bottom-foot.height)), p & away, nil
	}
	return nil, 0, paper.ErrTooLong
}

// running heads every page but the front, so that they cannot be parted.
func (c *content) running(s sheet, page, pages int) *column {
	col := &column{width: s.inner()}
	col.ends(c.page(page, pages), paper.Span{Style: sized(paper.Strong, 11), Text: c.number, Field: "number"})
	col.gap(0.6)
	title := text.Italic()
	if !c.titled {
		title = text
	}
	col.text(paper.Span{Style: title, Text: c.title, Field: "title"}, paper.Span{Style: text, Text: " · " + c.artist + " · " + c.issued(), Field: "maker"})
	if digestLine := c.digestLine(); digestLine != "" {
		col.gap(0.4)
		col.text(paper.Span{Style: digest, Text: digestLine})
	}
	col.gap(1.6)
	col.shapes = append(col.shapes, hairline(0, col.height, col.width, col.height))
	return col
}

func (c *content) page(page, pages int) paper.Span {
	return paper.Span{Style: text, Text: c.words.T("page").With("page", strconv.Itoa(page), "pages", strconv.Itoa(pages))}
}

func (c *content) digestLine() string {
	switch {
	case c.in.Preview:
		return c.words.T("record-line").With("digest", string(c.words.T("unissued")))
	case len(c.in.Deed.Record) == 0:
		return ""
	}
	return c.words.T("record-line").With("digest", seal.DigestOf(c.in.Deed.Record).Groups())
}

// middle is the build-up with care and what else is to be said beside it.
func (c *content) middle(s sheet, p moved, y, room float64) ([]paper.Shape, float64, error) {
	wide := (s.inner() - backGutterMM) * drawingW
	l := &column{width: wide}
	l.text(paper.Span{Style: heading, Text: string(c.words.T("build-up"))})
	l.gap(1)
	words := &column{width: wide}
	words.text(paper.Span{Style: text, Text: strings.Join(c.sentences, " "), Field: "build-up"})
	if p&factsMoved == 0 {
		c.particularsIn(words)
	}
	if p&gapsLeft != 0 {
		c.gapsIn(words)
	}
	if p&away != 0 {
		words.gap(3)
		words.text(paper.Span{Style: name, Text: c.elsewhere(p)})
	}
	if words.err != nil {
		return nil, 0, words.err
	}
	if p&drawingMoved == 0 {
		ds, err := c.section.Draw(wide, math.Min(tallestMM, room-l.height-words.height-2))
		switch {
		case err != nil:
			return nil, 0, err
		case len(ds) > 1:
			return nil, 0, paper.ErrTooLong
		}
		l.drawing(ds[0])
		l.gap(2)
	}
	l.shapes = append(l.shapes, words.at(0, l.height))
	l.height += words.height
	r := &column{width: s.inner() - backGutterMM - wide}
	if p&careMoved == 0 {
		c.careIn(r)
	}
	if p&(gapsMoved|gapsLeft) == 0 {
		c.gapsIn(r)
	}
	if err := cmp.Or(l.err, r.err); err != nil {
		return nil, 0, err
	}
	return []paper.Shape{l.at(s.side, y), r.at(s.side+wide+backGutterMM, y)}, math.Max(l.height, r.height), nil
}

func (c *content) particularsIn(col *column) {
	col.gap(4)
	col.text(paper.Span{Style: heading, Text: string(c.words.T("facts"))})
	col.gap(1)
	for _, f := range c.particulars {
		col.pair(nameW, paper.Span{Style: name, Text: f.name}, paper.Span{Style: text, Text: f.text, Field: f.field})
		col.gap(0.2)
	}
}

// careIn gives each topic a paragraph.
func (c *content) careIn(col *column) {
	col.text(paper.Span{Style: heading, Text: string(c.words.T("care"))})
	if c.warnings != "" {
		col.gap(1)
		col.text(paper.Span{Style: strong, Text: string(c.words.T("hazard")) + " "}, paper.Span{Style: text, Text: c.warnings})
	}
	for _, r := range c.care {
		col.gap(1)
		col.text(headed(r)...)
	}
}

func (c *content) hazard() []paper.Span {
	return []paper.Span{{Style: name, Text: string(c.words.T("hazard")) + " "}, {Style: text, Text: c.warnings}}
}

// headed is a row that begins with its name, if it has one.
func headed(r tell.Row) []paper.Span {
	if r.Name == "" {
		return []paper.Span{{Style: text, Text: r.Value}}
	}
	return []paper.Span{{Style: name, Text: r.Name}, {Style: text, Text: "\u2002" + r.Value}}
}

// gapsIn says what is not recorded.
func (c *content) gapsIn(col *column) {
	if len(c.gaps) > 0 {
		col.gap(5)
		col.text(paper.Span{Style: heading, Text: string(c.words.T("gaps"))})
		for _, r := range c.gaps {
			col.gap(1)
			col.text(headed(r)...)
		}
	}
}

// notThis says what the certificate is not, and how to reach the studio.
func (c *content) notThis(s sheet) *column {
	wide := (s.inner() - backGutterMM) * drawingW
	col := &column{width: s.inner()}
	l, r := &column{width: wide}, &column{width: s.inner() - backGutterMM - wide}
	l.text(paper.Span{Style: heading, Text: string(c.words.T("not"))})
	l.gap(1)
	l.text(paper.Span{Style: text, Text: string(c.words.T("not-text"))})
	r.text(paper.Span{Style: heading, Text: string(c.words.T("studio"))})
	r.gap(1)
	where := []string{c.maker}
	for _, x := range []string{c.teller.MakerPlace(), c.in.Workshop.Studio.Contact} {
		if known(x) {
			where = append(where, x)
		}
	}
	r.text(paper.Span{Style: text, Text: strings.Join(where, "\n"), Field: "studio"})
	if err := cmp.Or(l.err, r.err); err != nil {
		col.fail(err)
	}
	col.shapes = append(col.shapes, l.at(0, 0), r.at(wide+backGutterMM, 0))
	col.height = math.Max(l.height, r.height)
	return col
}

// elsewhere says what stands on the next page.
func (c *content) elsewhere(p moved) string {
	var parts []string
	for _, m := range []struct {
		bit  moved
		name string
	}{{drawingMoved, string(c.words.T("drawing"))}, {factsMoved, string(c.words.T("facts-part"))}, {careMoved, string(c.words.T("care-part"))}, {gapsMoved, string(c.words.T("gaps-part"))}} {
		if p&m.bit != 0 {
			parts = append(parts, m.name)
		}
	}
	return c.words.T("on-page").With("parts", c.teller.List(parts), "page", "3")
}

// rest sets what found no room on the reverse, on as many pages as it needs.
func (c *content) rest(d *paper.Document, s sheet, p moved, pages int) error {
	var failed error
	f := paper.Flow{Next: func() paper.Frame {
		page := d.Page(s.width, s.height)
		head := c.running(s, d.Pages(), pages)
		if head.err != nil {
			failed = head.err
			return paper.Frame{}
		}
		page.Draw(head.at(s.side, s.top))
		y := s.top + head.height + 8
		return paper.Frame{Page: page, X: s.side, Y: y, W: s.inner(), H: s.height - s.bottom - y}
	}}
	title := func(text string) { f.Heading(7, 1.5, paper.Span{Style: heading, Text: text}) }
	if p&factsMoved != 0 {
		title(string(c.words.T("facts")))
		for _, x := range c.particulars {
			f.Row([]paper.Column{{WidthMM: nameW}, {}}, []paper.Span{{Style: name, Text: x.name}}, []paper.Span{{Style: text, Text: x.text, Field: x.field}})
			f.Gap(1)
		}
	}
	if p&careMoved != 0 {
		title(string(c.words.T("care")))
		if c.warnings != "" {
			f.Text(c.hazard()...)
			f.Gap(1)
		}
		for _, r := range c.care {
			f.Text(headed(r)...)
			f.Gap(1)
		}
	}
	if p&gapsMoved != 0 {
		title(string(c.words.T("gaps")))
		for _, r := range c.gaps {
			f.Text(headed(r)...)
			f.Gap(1)
		}
	}
	if p&drawingMoved != 0 {
		title(string(c.words.T("drawing-head")))
		ds, err := c.section.Draw(s.inner()*0.8, s.room()-40)
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
