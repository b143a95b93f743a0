package certificate

import (
	"math"

	"backleaf/record/paper"
)

// A column sets texts and drawings one below the other in a given width. Its
// first error stays. It is set at 0, 0 and placed later, when the heights of
// its neighbours are known.
type column struct {
	width  float64
	height float64
	shapes []paper.Shape
	err    error
}

func (c *column) fail(err error) {
	if c.err == nil {
		c.err = err
	}
}

// gap leaves space before what follows; none at the top.
func (c *column) gap(mm float64) {
	if c.height > 0 {
		c.height += mm
	}
}

// text sets a paragraph.
func (c *column) text(spans ...paper.Span) {
	b, err := paper.Compose(c.width, spans...)
	if err != nil {
		c.fail(err)
		return
	}
	c.put(paper.Text{Block: b})
}

// even sets a paragraph of at most width, in the middle or at the left. Where
// it takes more than one line, the lines are made about equally long.
func (c *column) even(width float64, align paper.Align, spans ...paper.Span) {
	b, err := paper.Compose(width, spans...)
	if err == nil && b.Lines() > 1 {
		b, err = balanced(width, b.Lines(), spans)
	}
	if err != nil {
		c.fail(err)
		return
	}
	x := 0.0
	if align == paper.Centre {
		x = c.width / 2
	}
	c.put(paper.Text{X: x, Align: align, Block: b})
}

// balanced sets text in so many lines of the least width.
func balanced(width float64, lines int, spans []paper.Span) (paper.Block, error) {
	least, best := width/float64(lines), width
	for best-least > 0.5 {
		mid := (least + best) / 2
		b, err := paper.Compose(mid, spans...)
		if err != nil {
			return b, err
		}
		if b.Lines() <= lines && !b.Broken() {
			best = mid
		} else {
			least = mid
		}
	}
	return paper.Compose(best, spans...)
}

// put places a text below what stands there.
func (c *column) put(t paper.Text) {
	t.Y = c.height
	c.shapes = append(c.shapes, t)
	c.height += t.Block.HeightMM()
}

// pair sets a name in a hanging column of its own and a text beside it, their
// first baselines level.
func (c *column) pair(nameWidth float64, name, text paper.Span) {
	n, err := paper.Compose(nameWidth-2, name)
	if err != nil {
		c.fail(err)
		return
	}
	t, err := paper.Compose(c.width-nameWidth, text)
	if err != nil {
		c.fail(err)
		return
	}
	base := math.Max(n.BaselineMM(), t.BaselineMM())
	c.shapes = append(c.shapes,
		paper.Text{Y: c.height + base - n.BaselineMM(), Block: n},
		paper.Text{X: nameWidth, Y: c.height + base - t.BaselineMM(), Block: t})
	c.height += math.Max(base-n.BaselineMM()+n.HeightMM(), base-t.BaselineMM()+t.HeightMM())
}

// ends sets two texts at the ends of one line, or the right one below where
// they are too long for one.
func (c *column) ends(right paper.Span, left ...paper.Span) {
	l, err := paper.Compose(0, left...)
	if err != nil {
		c.fail(err)
		return
	}
	base := c.height + l.BaselineMM()
	c.put(paper.Text{Block: l})
	if l.WidthMM() > c.width {
		c.height -= l.HeightMM()
		c.shapes = c.shapes[:len(c.shapes)-1]
		c.text(left...)
	} else if r, err := paper.Compose(0, right); err == nil && l.WidthMM()+6+r.WidthMM() <= c.width {
		c.shapes = append(c.shapes, paper.Text{X: c.width, Y: base - r.BaselineMM(), Block: r, Align: paper.Right})
		return
	}
	c.gap(0.4)
	c.text(right)
}

// drawing places a drawing at the left.
func (c *column) drawing(d paper.Drawing) {
	c.shapes = append(c.shapes, d.At(0, c.height))
	c.height += d.HeightMM
}

// at places the column on the page.
func (c *column) at(x, y float64) paper.Shape {
	return paper.Group{X: x, Y: y, Shapes: c.shapes}
}

// hairline is the one weight of rule on these pages.
func hairline(x1, y1, x2, y2 float64) paper.Line {
	return paper.Line{X1: x1, Y1: y1, X2: x2, Y2: y2, WeightMM: 0.15}
}
