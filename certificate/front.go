package certificate

import (
	"cmp"
	"math"

	"backleaf/record/paper"
)

// Measures of the front, in millimetres.
const (
	stampMM    = 35.0 // for a round stamp
	stampRoom  = 38.0 // for the hand that sets it
	placeW     = 42.0
	hand       = 15.0 // above the line for a signature
	gutterMM   = 6.0
	captionW   = 150.0
	shortestMM = 45.0 // of the longer side of a photograph, but for a very flat or tall one
)

// Gaps on the front.
const (
	leastGapMM   = 5.0
	pictureGapMM = 8.0
	narrowestMM  = 100.0 // of a title below a picture
)

// front lays the side for the wall: the work first, as large as the page
// allows, with what it is and what its maker states of it. All of that is one
// block in the optical middle between the head and the maker's hand, which
// stands where it always does.
func (c *content) front(s sheet, pages int) ([]paper.Shape, placed, error) {
	var at placed
	head, sign, foot := c.headOf(s), c.signing(s), c.footOf(s, pages)
	block, err := c.block(s, captionW)
	if err := cmp.Or(err, head.err, sign.err, foot.err); err != nil {
		return nil, at, err
	}
	room := s.room() - head.height - sign.height - foot.height - 3*leastGapMM
	var shapes []paper.Shape
	high, credit := 0.0, &column{}
	if c.photo.width > 0 {
		if credit, err = c.photo.creditLine(s.inner()); err != nil {
			return nil, at, err
		}
		fit := func() {
			at = c.photo.fit(s.inner(), room-block.height-credit.height-pictureGapMM)
			if near := 0.94 * s.inner(); at.widthMM > near && at.widthMM < s.inner() { // a little narrower than the page looks like an error
				at = placed{near, near / c.photo.aspect()}
			}
		}
		fit()
		// A title is no wider than its picture, unless that is narrow.
		if w := math.Max(at.widthMM, narrowestMM); w < captionW {
			if narrow, err := c.block(s, w); err == nil {
				block = narrow
				fit()
			}
		}
		if math.Max(at.widthMM, at.heightMM) < shortestMM && c.photo.aspect() > 0.2 && c.photo.aspect() < 5 || at.heightMM <= 0 {
			return nil, at, paper.ErrTooLong
		}
		high = at.heightMM + credit.height + pictureGapMM
	}
	free := room - high - block.height
	if free < -1e-6 {
		return nil, at, paper.ErrTooLong
	}
	y := s.top + head.height + leastGapMM + 0.42*free
	shapes = append(shapes, head.at(s.side, s.top))
	if c.photo.width > 0 {
		picture, err := c.photo.shape(s.middle()-at.widthMM/2, y, at.widthMM, at.heightMM)
		if err != nil {
			return nil, at, err
		}
		shapes = append(shapes, picture, credit.at(s.middle()+at.widthMM/2-s.inner(), y+at.heightMM))
	}
	bottom := s.height - s.bottom - foot.height
	return append(shapes, block.at(s.side, y+high), sign.at(s.side, bottom-leastGapMM-sign.height), foot.at(s.side, bottom)), at, nil
}

// headOf says what the page is, and what must be said before all else.
func (c *content) headOf(s sheet) *column {
	col := &column{width: s.inner()}
	if m := c.in.Mark; m != nil {
		const highest, widest = 13.0, 60.0
		p := paper.Picture{Image: m, Title: c.words.T("mark-of").With("maker", c.maker)}.Within(widest, highest)
		p.X, col.height = (col.width-p.W)/2, p.H
		col.shapes = append(col.shapes, p)
		col.gap(4)
	}
	col.even(s.inner(), paper.Centre, paper.Span{Style: capital, Text: string(c.words.T("heading"))})
	for _, n := range c.notices {
		col.gap(2.2)
		col.even(s.inner(), paper.Centre, paper.Span{Style: strong, Text: n})
	}
	return col
}

// block sets title, maker, and what stands beside a picture on a wall.
func (c *content) block(s sheet, width float64) (*column, error) {
	col := &column{width: s.inner()}
	style := sized(paper.Title, 25)
	if c.photo.width == 0 {
		style = sized(paper.Title, 36)
	}
	if !c.titled {
		style = style.Italic().Scaled(0.8)
	}
	c.fitted(col, width, 26, 0.4, paper.Span{Style: style, Text: c.title, Field: "title"})
	col.gap(2)
	maker := []paper.Span{{Style: sized(paper.Body, 13), Text: c.artist, Field: "maker"}}
	if date := c.date(); date != "" {
		maker = append(maker, paper.Span{Style: maker[0].Style, Text: ", " + paper.Held(date), Field: "date of the work"})
	}
	c.fitted(col, captionW, 24, 0.7, maker...)
	col.gap(2.6)
	for _, l := range c.lines {
		col.even(captionW, paper.Centre, paper.Span{Style: body, Text: l.text, Field: l.field})
		col.gap(0.4)
	}
	if c.warnings != "" {
		col.gap(1.6)
		col.even(captionW, paper.Centre, c.hazard()...)
	}
	return col, col.err
}

// fitted sets a text in the middle, scaled down until it is no higher than height.
func (c *content) fitted(col *column, width, height, smallest float64, spans ...paper.Span) {
	b, err := paper.Fit(width, height, smallest, spans...)
	if err == nil && b.Lines() > 1 {
		scale := b.SizePt() / spans[0].Style.SizePt
		scaled := make([]paper.Span, len(spans))
		for i, x := range spans {
			x.Style = x.Style.Scaled(scale)
			scaled[i] = x
		}
		b, err = balanced(width, b.Lines(), scaled)
	}
	if err != nil {
		col.fail(err)
		return
	}
	col.put(paper.Text{X: col.width / 2, Align: paper.Centre, Block: b})
}

// signing is the maker's statement and, below it, the places for hand, date and stamp.
func (c *content) signing(s sheet) *column {
	col := &column{width: s.inner()}
	said := &column{width: s.inner() - stampMM - gutterMM}
	for _, sentence := range c.statement() {
		said.even(said.width, 0, paper.Span{Style: body, Text: sentence, Field: "statement"})
	}
	if said.err != nil {
		return said
	}
	signature := c.words.T("signature-studio")
	if c.teller.OneHand() {
		signature = c.words.T("signature-line")
	}
	base := math.Max(stampRoom, said.height+hand)
	col.shapes = append(col.shapes, said.at(0, base-hand-said.height))
	stamp := s.inner() - stampMM
	place := stamp - gutterMM - placeW
	for _, cell := range []struct {
		x, w float64
		text string
	}{{0, place - gutterMM, string(signature)}, {place, placeW, string(c.words.T("place-line"))}, {stamp, stampMM, string(c.words.T("stamp"))}} {
		b, err := paper.Fit(cell.w, 8, 0.7, paper.Span{Style: sized(name, 8), Text: cell.text})
		if err != nil {
			col.fail(err)
			return col
		}
		if cell.x < stamp { // a stamp needs no line to stand on
			col.shapes = append(col.shapes, hairline(cell.x, base, cell.x+cell.w, base))
		}
		caption := paper.Text{X: cell.x, Y: base + 0.8, Block: b}
		if cell.x == stamp {
			caption.X, caption.Align = stamp+stampMM/2, paper.Centre
		}
		col.shapes = append(col.shapes, caption)
		col.height = math.Max(col.height, base+0.8+b.HeightMM())
	}
	t, err := c.placeAndDay(place)
	if err != nil {
		col.fail(err)
		return col
	}
	t.Y = base - t.Block.HeightMM()
	col.shapes = append(col.shapes, t)
	return col
}

// placeAndDay stands on its line, in two lines if it must; where no place is
// known or it finds no room, the day leaves room for a hand to write it.
func (c *content) placeAndDay(x float64) (paper.Text, error) {
	set := func(place string) (paper.Block, error) {
		return paper.Compose(placeW, paper.Span{Style: body, Text: c.words.T("place-and-date").With("place", place, "date", paper.Held(c.day())), Field: "place and date of issue"})
	}
	if place := c.in.Workshop.Studio.Place; known(place) {
		if b, err := set(place); err == nil && b.Lines() <= 2 && !b.Broken() {
			return paper.Text{X: x, Block: b}, nil
		}
	}
	b, err := set("")
	return paper.Text{X: x + placeW, Block: b, Align: paper.Right}, err
}

// footOf is the small symbol, the number, and what the page can be told by.
func (c *content) footOf(s sheet, pages int) *column {
	col := &column{width: s.inner()}
	side := c.small.side - 2*c.small.quiet
	x := side + 4
	say := &column{width: s.inner() - x}
	say.ends(c.page(1, pages), paper.Span{Style: sized(paper.Strong, 11), Text: c.number, Field: "number"}, paper.Span{Style: text, Text: ", " + string(c.words.T("same-number"))})
	if replaces := c.replaces(); replaces != "" {
		say.gap(0.4)
		say.text(paper.Span{Style: text, Text: replaces})
	}
	symbol := c.words.T("symbol-text")
	if c.url != "" {
		symbol = c.words.T("symbol-link")
	}
	say.gap(0.4)
	say.text(paper.Span{Style: text, Text: symbol.With() + " " + string(c.words.T("see-reverse"))})
	say.gap(0.6)
	if c.proof {
		key := string(c.words.T("key-later"))
		if c.signed() {
			key = c.in.Deed.Key.Fingerprint().Groups()
		}
		say.text(paper.Span{Style: note.Italic(), Text: string(c.words.T("key")) + paper.NoBreakSpace + " "}, paper.Span{Style: note, Text: key, Field: "key of the studio"})
	} else {
		say.text(paper.Span{Style: text, Text: string(c.words.T("unsigned"))})
	}
	if say.err != nil {
		col.fail(say.err)
		return col
	}
	const above = 3.2
	col.height = above + math.Max(side, say.height)
	col.shapes = append(col.shapes, hairline(0, 0, col.width, 0),
		paper.Group{X: -c.small.quiet, Y: above - c.small.quiet, Shapes: []paper.Shape{c.small.shape}},
		say.at(x, above-0.8))
	if c.url != "" {
		col.shapes = append(col.shapes, paper.Link{X: 0, Y: above, W: side, H: side, URL: c.url})
	}
	return col
}
