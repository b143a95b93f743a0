package certificate

import (
	"math"

	"backleaf/record/paper"
)

// Measures of title, photograph and facts, in millimetres.
const (
	nameMM      = 18.0 // hanging column for the names of facts
	wideAspect  = 2.1  // a photograph wider than this stands above the words
	tallestMM   = 60.0 // and is no higher than this
	widestShare = 0.56 // of the width, for a photograph beside the words
	maxTitleMM  = 46.0
	wideTitleMM = 30.0
)

// hero is the photograph with title, maker and facts: beside it, or below it
// if the photograph is very wide or there is none.
func (c *content) hero(s sheet, p plan) (part, error) {
	if c.photo.width == 0 {
		return c.stacked(s, p, 0, 0)
	}
	aspect := float64(c.photo.width) / float64(c.photo.height)
	if aspect > wideAspect {
		w, h := s.inner(), s.inner()/aspect
		if most := min(tallestMM, p.photo*0.6); h > most {
			w, h = most*aspect, most
		}
		return c.stacked(s, p, w, h)
	}
	w, h := p.photo, p.photo/aspect
	if aspect < 1 {
		w, h = p.photo*aspect, p.photo
	}
	if most := s.inner() * widestShare; w > most {
		w, h = most, most/aspect
	}
	col := s.column(s.inner() - w - gutterMM)
	c.titleIn(col, s, maxTitleMM)
	col.gap(4 * s.scale)
	c.factsIn(col, s, c.factsOf(p))
	if col.err != nil {
		return part{}, col.err
	}
	return part{math.Max(h, col.height), func(y float64) ([]paper.Shape, error) {
		picture, err := c.photo.shape(s.left, y, w, h)
		return []paper.Shape{picture, col.at(s.left+w+gutterMM, y-1)}, err
	}}, nil
}

// stacked sets title and facts over the whole width, below a photograph of
// w × h if there is one.
func (c *content) stacked(s sheet, p plan, w, h float64) (part, error) {
	title := s.column(s.inner())
	c.titleIn(title, s, wideTitleMM)
	facts := c.factsOf(p)
	half := (s.inner() - gutterMM) / 2
	a, b := s.column(half), s.column(half)
	// The first column takes facts until it is as high as what is left.
	n := 0
	for best := math.Inf(1); n <= len(facts); n++ {
		a2, b2 := s.column(half), s.column(half)
		c.factsIn(a2, s, facts[:n])
		c.factsIn(b2, s, facts[n:])
		if a2.err != nil || b2.err != nil {
			return part{}, firstError(a2.err, b2.err)
		}
		if high := math.Max(a2.height, b2.height); high < best-1e-6 {
			best, a, b = high, a2, b2
		}
	}
	if title.err != nil {
		return part{}, title.err
	}
	top := 0.0
	if h > 0 {
		top = h + 4
	}
	below := top + title.height + 4*s.scale
	return part{below + math.Max(a.height, b.height), func(y float64) ([]paper.Shape, error) {
		var out []paper.Shape
		if h > 0 {
			picture, err := c.photo.shape(s.left+(s.inner()-w)/2, y, w, h)
			if err != nil {
				return nil, err
			}
			out = append(out, picture)
		}
		return append(out, title.at(s.left, y+top), a.at(s.left, y+below), b.at(s.left+half+gutterMM, y+below)), nil
	}}, nil
}

func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func (c *content) titleIn(col *column, s sheet, height float64) {
	style := paper.Title
	if !c.titled {
		style = style.Italic().Scaled(0.75)
	}
	col.fit(height, 0.4, paper.Span{Style: style, Text: c.title, Field: "title"})
	col.gap(1.5)
	col.fit(2*height/3, 0.5, paper.Span{Style: paper.Body.Scaled(1.2), Text: c.maker, Field: "maker"})
}

// factsOf is the facts that stand on the first page.
func (c *content) factsOf(p plan) []fact {
	out := append([]fact{}, c.facts...)
	if p.moved&signedMoved == 0 {
		out = append(out, c.signedAt...)
	}
	if p.moved&factsMoved == 0 {
		out = append(out, c.more...)
	}
	return out
}

func (c *content) factsIn(col *column, s sheet, facts []fact) {
	for _, f := range facts {
		col.gap(1.1 * s.scale)
		col.pair(nameMM, paper.Span{Style: s.name(), Text: f.name}, paper.Span{Style: s.body(), Text: f.text, Field: f.field})
	}
}
