package certificate

import (
	"math"

	"backleaf/record/paper"
)

const mmPerPt = 25.4 / 72

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
	c.block(b)
}

// fit sets a paragraph scaled down until it is no higher than height.
func (c *column) fit(height, smallest float64, spans ...paper.Span) {
	b, err := paper.Fit(c.width, height, smallest, spans...)
	if err != nil {
		c.fail(err)
		return
	}
	c.block(b)
}

func (c *column) block(b paper.Block) {
	c.shapes = append(c.shapes, paper.Text{Y: c.height, Block: b})
	c.height += b.HeightMM()
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

// drawing places a drawing at the left.
func (c *column) drawing(d paper.Drawing) {
	c.shapes = append(c.shapes, d.At(0, c.height))
	c.height += d.HeightMM
}

// at places the column on the page.
func (c *column) at(x, y float64) paper.Shape {
	return paper.Group{X: x, Y: y, Shapes: c.shapes}
}

// right sets a line whose end stands at x.
func right(x, y float64, b paper.Block) paper.Text {
	return paper.Text{X: x, Y: y, Block: b, Align: paper.Right}
}

// hairline is the one weight of rule on these pages.
func hairline(x1, y1, x2, y2 float64) paper.Line {
	return paper.Line{X1: x1, Y1: y1, X2: x2, Y2: y2, WeightMM: 0.15}
}
