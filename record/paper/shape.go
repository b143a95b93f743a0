package paper

import (
	"image"
	"slices"
)

// A Shape can be put on a [Page] and in a [Drawing]. Positions are millimetres.
type Shape interface {
	paint(s *surface)
	svg(w *svgWriter)
}

// readied returns shapes as they are painted: what takes long without a page is
// done, on any core.
func readied(shapes []Shape) []Shape {
	out := slices.Clone(shapes)
	for i, s := range out {
		if s, ok := s.(interface{ ready() Shape }); ok {
			out[i] = s.ready()
		}
	}
	return out
}

func (c Clip) ready() Shape {
	c.Shapes = readied(c.Shapes)
	return c
}

func (g Group) ready() Shape {
	g.Shapes = readied(g.Shapes)
	return g
}

// A Point is a place on the sheet.
type Point struct{ X, Y float64 }

// A Fill is what an area is filled with; the zero value leaves it open.
type Fill int

// The fills. White hides what lies below; it is no ink.
const (
	open Fill = iota
	Black
	White
)

// A Line is straight. Dash gives lengths of stroke and gap by turns.
type Line struct {
	X1, Y1, X2, Y2 float64
	WeightMM       float64
	Dash           []float64
}

// A Rect has an outline if WeightMM is above 0.
type Rect struct {
	X, Y, W, H float64
	WeightMM   float64
	Fill       Fill
}

// A Polygon is closed; it has an outline if WeightMM is above 0.
type Polygon struct {
	Points   []Point
	WeightMM float64
	Fill     Fill
}

// Strokes are open lines of one weight, each through its points: a hatching,
// a curve, a grid.
type Strokes struct {
	Lines    [][]Point
	WeightMM float64
}

// Rects are areas filled with black and drawn as one shape.
type Rects struct{ Areas []Rect }

// An Align says which point of its text a [Text] is placed by.
type Align int

// The alignments: by the left edge, the right edge or the middle of each line.
const (
	left Align = iota
	Right
	Centre
)

// A Text is a block with its top at Y.
type Text struct {
	X, Y  float64
	Block Block
	Align Align
}

// A Picture is an image drawn over the whole of the rectangle. Transparent
// parts come out white: the archive formats have no transparency.
type Picture struct {
	X, Y, W, H float64
	Image      image.Image
	// Title says in words what the picture shows, for SVG.
	Title string
}

// A Link makes its area lead to a web address, http or https.
type Link struct {
	X, Y, W, H float64
	URL        string
}

// A Clip shows its shapes only where they lie inside the rectangle.
type Clip struct {
	X, Y, W, H float64
	Shapes     []Shape
}

// A Group is drawn with its origin at X, Y, turned clockwise by Degrees.
type Group struct {
	X, Y    float64
	Degrees float64
	Shapes  []Shape
}

func (t Text) lineX(l line) float64 {
	switch t.Align {
	case Right:
		return t.X - l.width
	case Centre:
		return t.X - l.width/2
	}
	return t.X
}

// eachLine calls f with the start and baseline of every line.
func (t Text) eachLine(f func(x, y float64, l line)) {
	y := t.Y
	for _, l := range t.Block.lines {
		f(t.lineX(l), y+l.baselineMM(), l)
		y += l.heightMM()
	}
}
