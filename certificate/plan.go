package certificate

import "backleaf/record/paper"

// A plan is one way to share out the page: how large the type, the photograph
// and the drawing are, and what goes to the second page.
type plan struct {
	scale   float64 // of the type
	photo   float64 // longer side of the photograph, mm
	drawing float64 // height of the drawing, mm
	moved   moved
}

// moved says what stands on the second page.
type moved int

// What may move.
const (
	gapsMoved moved = 1 << iota
	drawingMoved
	factsMoved
	wordsMoved
	careMoved
	signedMoved
)

// plans lists the ways to be tried, the best first: everything on one page,
// smaller by and by; then less and less of it.
func (c *content) plans() []plan {
	var ps []plan
	for _, m := range []moved{
		0, gapsMoved, drawingMoved, drawingMoved | gapsMoved,
		drawingMoved | gapsMoved | factsMoved,
		drawingMoved | gapsMoved | factsMoved | wordsMoved,
		drawingMoved | gapsMoved | factsMoved | wordsMoved | careMoved,
		drawingMoved | gapsMoved | factsMoved | wordsMoved | careMoved | signedMoved,
	} {
		if len(c.gaps) == 0 {
			m &^= gapsMoved
		}
		for _, scale := range []float64{1, 0.95, 0.9, 0.86, 0.8} {
			if scale < 0.86 && m&wordsMoved == 0 {
				continue // type that small only when much else was tried
			}
			for _, size := range []struct{ photo, drawing float64 }{{104, 92}, {100, 82}, {96, 76}, {92, 70}, {86, 64}, {78, 58}, {70, 52}, {60, 46}} {
				ps = append(ps, plan{scale, size.photo, size.drawing, m})
			}
		}
	}
	return ps
}

// Gaps between the parts of the page: never less, never more.
const (
	leastGapMM = 4.0
	mostGapMM  = 11.0
)

// layPage lays the first page by the first plan that fits.
func (c *content) layPage(s sheet) (*page, error) {
	var last error
	clear(c.laid)
	for _, p := range c.plans() {
		s.scale = p.scale
		pg, err := c.lay(s, p)
		if err != nil {
			if !tooLong(err) {
				return nil, err
			}
			last = err
			continue
		}
		if pg.spread() {
			return pg, nil
		}
	}
	if last == nil {
		last = paper.ErrTooLong
	}
	return nil, last
}

// A page is the parts of the first page from top to bottom; the last stands at
// the foot.
type page struct {
	sheet sheet
	plan  plan
	parts []part
	gap   float64
}

// A part has a height and is drawn at y.
type part struct {
	height float64
	draw   func(y float64) ([]paper.Shape, error)
}

// spread finds the gap between the parts; false if they need more than the page.
func (p *page) spread() bool {
	room := p.sheet.height - p.sheet.top - p.sheet.bottom
	for _, part := range p.parts {
		room -= part.height
	}
	p.gap = min(room/float64(len(p.parts)-1), mostGapMM)
	return p.gap >= leastGapMM
}

// shapes draws the page.
func (p *page) shapes() ([]paper.Shape, error) {
	var out []paper.Shape
	y := p.sheet.top
	for i, part := range p.parts {
		if i == len(p.parts)-1 {
			y = p.sheet.height - p.sheet.bottom - part.height
		}
		shapes, err := part.draw(y)
		if err != nil {
			return nil, err
		}
		out = append(out, shapes...)
		y += part.height + p.gap
	}
	return out, nil
}
