package certificate

import (
	"math"

	"backleaf/record/paper"
)

// Measures of the front, in millimetres.
const (
	stampMM    = 35.0 // for a round stamp
	placeW     = 38.0
	gutterMM   = 6.0
	captionW   = 150.0
	shortestMM = 45.0 // of the longer side of a photograph, but for a very flat or tall one
)

// Gaps between the parts of the front: never less, never more.
const (
	leastGapMM = 5.0
	mostGapMM  = 17.0
)

// A part has a height and is drawn at y.
type part struct {
	height float64
	draw   func(y float64) ([]paper.Shape, error)
}

// columnPart places a column at the left margin.
func (s sheet) columnPart(c *column) part {
	return part{c.height, func(y float64) ([]paper.Shape, error) { return []paper.Shape{c.at(s.side, y)}, nil }}
}

// front lays the side for the wall: the work first, as large as the page
// allows, then who made it, and the maker's hand.
func (c *content) front(s sheet) ([]paper.Shape, placed, error) {
	var parts []part
	head, caption, sign, foot := c.headOf(s), &column{width: s.inner()}, c.signing(s), c.footOf(s)
	c.captionIn(caption)
	for _, col := range []*column{head, caption, sign, foot} {
		if col.err != nil {
			return nil, placed{}, col.err
		}
	}
	parts = append(parts, s.columnPart(head))
	room := s.room() - head.height - caption.height - sign.height - foot.height - 3*leastGapMM
	var at placed
	if c.photo.width > 0 {
		credit, err := c.photo.creditLine(s.inner())
		if err != nil {
			return nil, at, err
		}
		room -= leastGapMM + credit.height
		at = c.photo.fit(s.inner(), room)
		if math.Max(at.widthMM, at.heightMM) < shortestMM && c.photo.aspect() > 0.2 && c.photo.aspect() < 5 || room <= 0 {
			return nil, at, paper.ErrTooLong
		}
		parts = append(parts, part{at.heightMM + credit.height, func(y float64) ([]paper.Shape, error) {
			picture, err := c.photo.shape(s.middle()-at.widthMM/2, y, at.widthMM, at.heightMM)
			return []paper.Shape{picture, credit.at(s.middle()+at.widthMM/2-s.inner(), y+at.heightMM)}, err
		}})
	} else if room < 0 {
		return nil, at, paper.ErrTooLong
	}
	parts = append(parts, s.columnPart(caption), s.columnPart(sign), s.columnPart(foot))
	shapes, err := s.spread(parts)
	return shapes, at, err
}

// spread draws parts from the top of the page to its foot. What room is left
// is shared by the gaps; more than they may have stays above the last two.
func (s sheet) spread(parts []part) ([]paper.Shape, error) {
	room := s.room()
	for _, p := range parts {
		room -= p.height
	}
	gap := math.Min(room/float64(len(parts)-1), mostGapMM)
	rest := room - gap*float64(len(parts)-1)
	var out []paper.Shape
	y := s.top
	for i, p := range parts {
		switch {
		case i == len(parts)-2:
			y += rest * 0.6
		case i == 1:
			y += rest * 0.4
		}
		shapes, err := p.draw(y)
		if err != nil {
			return nil, err
		}
		out = append(out, shapes...)
		y += p.height + gap
	}
	return out, nil
}

// headOf says what the page is, and what must be said before all else.
func (c *content) headOf(s sheet) *column {
	col := &column{width: s.inner()}
	if m := c.in.Mark; m != nil {
		const highest, widest = 13.0, 60.0
		p := paper.Picture{Image: m, Title: c.words.MarkOf.With("maker", c.maker)}.Within(widest, highest)
		p.X, col.height = (col.width-p.W)/2, p.H
		col.shapes = append(col.shapes, p)
		col.gap(4)
	}
	col.centre(s.inner(), paper.Span{Style: capital, Text: string(c.words.Heading)})
	col.gap(2.2)
	const half = 12
	col.shapes = append(col.shapes, hairline(col.width/2-half, col.height, col.width/2+half, col.height))
	for _, n := range c.notices {
		col.gap(2.2)
		col.centre(s.inner(), paper.Span{Style: strong, Text: n})
	}
	return col
}

// captionIn sets title, maker and what stands beside a picture on a wall.
func (c *content) captionIn(col *column) {
	style := sized(paper.Title, 25)
	if !c.titled {
		style = style.Italic().Scaled(0.8)
	}
	c.fitted(col, captionW, 31, 0.46, paper.Span{Style: style, Text: c.title, Field: "title"})
	col.gap(1.2)
	maker := []paper.Span{{Style: sized(paper.Body, 13), Text: c.artist, Field: "maker"}}
	if date := c.date(); date != "" {
		maker = append(maker, paper.Span{Style: maker[0].Style, Text: ", " + paper.Held(date), Field: "date of the work"})
	}
	c.fitted(col, captionW, 24, 0.7, maker...)
	col.gap(2.6)
	for _, l := range c.lines {
		col.centre(captionW, paper.Span{Style: body, Text: l.text, Field: l.field})
		col.gap(0.4)
	}
	if c.warnings != "" {
		col.gap(2.4)
		col.centre(captionW, paper.Span{Style: strong, Text: string(c.words.Hazard) + " "}, paper.Span{Style: text, Text: c.warnings})
	}
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

// signing is what the maker states, with the places for hand, date and stamp.
func (c *content) signing(s sheet) *column {
	col := &column{width: s.inner()}
	col.centre(captionW, paper.Span{Style: body, Text: c.statement(), Field: "statement"})
	signature := c.words.SignatureStudio
	if c.teller.OneHand() {
		signature = c.words.SignatureLine
	}
	base := col.height + stampMM
	stamp := s.inner() - stampMM
	place := stamp - gutterMM - placeW
	for _, cell := range []struct {
		x, w float64
		text string
	}{{0, place - gutterMM, string(signature)}, {place, placeW, string(c.words.PlaceLine)}, {stamp, stampMM, string(c.words.Stamp)}} {
		b, err := paper.Fit(cell.w, 8, 0.7, paper.Span{Style: sized(name, 8), Text: cell.text})
		if err != nil {
			col.fail(err)
			return col
		}
		col.shapes = append(col.shapes, hairline(cell.x, base, cell.x+cell.w, base), paper.Text{X: cell.x, Y: base + 0.8, Block: b})
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
		return paper.Compose(placeW, paper.Span{Style: body, Text: c.words.PlaceAndDate.With("place", place, "date", paper.Held(c.day())), Field: "place and date of issue"})
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
func (c *content) footOf(s sheet) *column {
	col := &column{width: s.inner()}
	x := c.small.side - 2*quietMM + 4
	say := &column{width: s.inner() - x}
	say.ends(paper.Span{Style: sized(paper.Strong, 11), Text: c.number, Field: "number"}, paper.Span{Style: text, Text: string(c.words.SameNumber)})
	if replaces := c.replaces(); replaces != "" {
		say.gap(0.4)
		say.text(paper.Span{Style: text, Text: replaces})
	}
	symbol := c.words.SymbolText
	if c.url != "" {
		symbol = c.words.SymbolLink
	}
	say.gap(0.4)
	say.text(paper.Span{Style: text, Text: symbol.With() + " " + string(c.words.SeeReverse)})
	say.gap(0.6)
	if c.proof {
		print := string(c.words.KeyLater)
		if c.signed() {
			print = c.in.Deed.Key.Fingerprint().Groups()
		}
		say.text(paper.Span{Style: note.Italic(), Text: string(c.words.KeyPrint) + "\u2002"}, paper.Span{Style: digest.Scaled(6.5 / 7), Text: print})
	} else {
		say.text(paper.Span{Style: text, Text: string(c.words.Unsigned)})
	}
	if say.err != nil {
		col.fail(say.err)
		return col
	}
	const above = 3.2
	side := c.small.side - 2*quietMM
	col.height = above + math.Max(side, say.height)
	col.shapes = append(col.shapes, hairline(0, 0, col.width, 0),
		paper.Group{X: -quietMM, Y: above - quietMM, Shapes: []paper.Shape{c.small.shape}},
		say.at(x, above-0.8))
	if c.url != "" {
		col.shapes = append(col.shapes, paper.Link{X: 0, Y: above, W: side, H: side, URL: c.url})
	}
	return col
}
