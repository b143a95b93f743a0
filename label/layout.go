package label

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"backleaf/record/paper"
)

// A Box is a field in its place on a label, in millimetres from the top left
// corner. The box of the symbol has its quiet zone inside.
type Box struct {
	Field      Field
	X, Y, W, H float64
	shapes     []paper.Shape
}

// A Layout is a label with everything in its place.
type Layout struct {
	Number string
	Size   Size
	Area   Area
	Boxes  []Box
	// LeftOut lists what was recorded and found no room, first things first.
	LeftOut []Field
}

// shrinks are the fractions of its size that type may be set at.
var shrinks = []float64{1, 0.94, 0.88, 0.82}

// lay finds the place of every field in an area.
func lay(in Input, w Words, size Size, area Area) (Layout, error) {
	a := &arranger{in: in, words: w, design: designs[size], area: area, out: map[Field]bool{}, set: map[string]paper.Block{}}
	if err := a.encode(); err != nil {
		return Layout{}, fmt.Errorf("label of %s: %w", in.Number, err)
	}
	order := leavingOut[size]
	for k := -1; k < len(order); k++ {
		if k >= 0 {
			a.out[order[k]] = true
		}
		for _, a.shrink = range shrinks {
			if a.shrink < 1 && size == Large && !a.out[BuildUpList] {
				break // a list is worth room, but no smaller type
			}
			boxes, err := a.arrange()
			if errors.Is(err, errNoRoom) {
				continue
			}
			if err != nil {
				return Layout{}, fmt.Errorf("label of %s: %w", in.Number, err)
			}
			boxes = a.putBack(order[:k+1], boxes)
			return Layout{in.Number, size, area, boxes, a.leftOut(order)}, nil
		}
	}
	return Layout{}, fmt.Errorf("label of %s: what no label may lack does not fit on %v: %w", in.Number, area, paper.ErrTooLong)
}

var errNoRoom = errors.New("no room")

// putBack tries to have again what was left out, last things first.
func (a *arranger) putBack(gone []Field, boxes []Box) []Box {
	for _, f := range slices.Backward(gone) {
		if f == QR && a.symbol == nil {
			continue
		}
		a.out[f] = false
		if more, err := a.arrange(); err == nil {
			boxes = more
		} else {
			a.out[f] = true
		}
	}
	return boxes
}

// leftOut lists the fields left out that there was something to say for.
func (a *arranger) leftOut(order []Field) (out []Field) {
	for _, f := range order {
		if a.out[f] && a.in.says(f) && !(f == BuildUpFull && a.out[BuildUp]) && f != BuildUpList {
			out = append(out, f)
		}
	}
	return out
}

// An arranger tries out one way after the other to fill a label.
type arranger struct {
	in     Input
	words  Words
	design design
	area   Area
	symbol *paper.Symbol
	out    map[Field]bool
	shrink float64
	set    map[string]paper.Block // texts composed before

	boxes []Box
	qr    Box     // place of the symbol; no width without one
	y     float64 // top of what is free
	foot  float64 // bottom of it
	begun bool    // there is text below the rule
}

// encode makes the symbol; too long a text for any symbol leaves none.
func (a *arranger) encode() error {
	text := a.in.code()
	if text == "" {
		return fmt.Errorf("there is neither a link nor a text for its QR symbol")
	}
	if s, err := paper.NewSymbol(text, paper.LevelQ); err == nil {
		a.symbol = &s
	} else {
		a.out[QR] = true
	}
	return nil
}

// compose is [paper.Compose]; the many ways that are tried have most of their
// texts in common.
func (a *arranger) compose(width float64, spans ...paper.Span) (paper.Block, error) {
	var key strings.Builder
	fmt.Fprint(&key, width)
	for _, s := range spans {
		fmt.Fprint(&key, "\x00", s.Style, " ", s.Text)
	}
	if b, ok := a.set[key.String()]; ok {
		return b, nil
	}
	b, err := paper.Compose(width, spans...)
	if err == nil {
		a.set[key.String()] = b
	}
	return b, err
}

// style returns a style of the design at the size tried, still readable.
func (a *arranger) style(s paper.Style) paper.Style {
	s = s.Scaled(a.shrink)
	if s.SizePt < paper.SmallestPt {
		s = s.Scaled(paper.SmallestPt / s.SizePt)
	}
	return s
}

func (a *arranger) left() float64  { return a.design.padMM }
func (a *arranger) right() float64 { return a.area.WidthMM - a.design.padMM }
func (a *arranger) width() float64 { return a.right() - a.left() }

func (a *arranger) add(f Field, x, y, w, h float64, shapes ...paper.Shape) {
	a.boxes = append(a.boxes, Box{f, x, y, w, h, shapes})
}

// text puts a block in its box.
func (a *arranger) text(f Field, x, y float64, b paper.Block) {
	a.add(f, x, y, b.WidthMM(), b.HeightMM(), paper.Text{X: x, Y: y, Block: b})
}

func (a *arranger) arrange() ([]Box, error) {
	a.boxes, a.qr, a.begun = nil, Box{}, false
	a.y, a.foot = a.design.padMM, a.area.HeightMM-a.design.padMM
	for _, part := range []func() error{a.header, a.place, a.ending, a.rows, a.lines} {
		if err := part(); err != nil {
			return nil, err
		}
	}
	slices.SortStableFunc(a.boxes, func(b, c Box) int { return slices.Index(reading, b.Field) - slices.Index(reading, c.Field) })
	return a.boxes, nil
}

// header sets the number, the arrow and the rule below them.
func (a *arranger) header() error {
	top, err := a.compose(0, paper.Span{Style: a.style(a.design.strong()), Text: strings.ToUpper(string(a.words.Top))})
	if err != nil {
		return err
	}
	const gap = 2.0
	w := top.WidthMM()
	number, err := paper.Fit(a.width()-w-gap, a.style(a.design.number()).LeadPt*ptMM+0.01, 0.6,
		paper.Span{Style: a.style(a.design.number()), Text: a.in.Number, Field: "number"})
	if errors.Is(err, paper.ErrTooLong) {
		return errNoRoom
	} else if err != nil {
		return err
	}
	// The arrow stands on the word, and the word on the line of the number.
	rise := 0.72 * w
	tight := top.HeightMM() - capital(top) // white above the capitals of the word
	height := math.Max(number.HeightMM(), rise+0.5+top.HeightMM()-tight/2)
	base := a.y + height - (number.HeightMM() - number.BaselineMM())
	a.text(Number, a.left(), base-number.BaselineMM(), number)
	x, peak := a.right()-w, base-capital(top)-0.6-rise
	a.add(Top, x, peak, w, base+0.3-peak,
		paper.Polygon{Points: []paper.Point{{X: x + w/2, Y: peak}, {X: x + w, Y: peak + rise}, {X: x, Y: peak + rise}}, Fill: paper.Black},
		paper.Text{X: x, Y: base - top.BaselineMM(), Block: top})
	a.y += height
	a.add(line, a.left(), a.y, a.width(), ruleMM, paper.Rect{X: a.left(), Y: a.y, W: a.width(), H: ruleMM, Fill: paper.Black})
	a.y += ruleMM
	return nil
}

const (
	ptMM   = 25.4 / 72
	ruleMM = 0.35
	dotMM  = 25.4 / 300
)

// capital is the height of capitals in a block of one line, for the sans
// faces: 0.72 of the size, of which 0.33 lie below the middle of the line.
func capital(b paper.Block) float64 { return (b.BaselineMM() - b.HeightMM()/2) * 0.72 / 0.33 }

// place finds the place of the symbol: the dark part stands flush with the
// text, its quiet zone in the margin of the label.
func (a *arranger) place() error {
	if a.out[QR] {
		return nil
	}
	dots := a.design.dotsMost
	if a.shrink < 0.9 {
		dots = a.design.dotsLast
	}
	module := float64(dots) * dotMM
	side, quiet := a.symbol.SideMM(module), (a.symbol.SideMM(module)-float64(a.symbol.Modules())*module)/2
	x, y := snap(a.right()-side+quiet), snap(a.y+dotMM)
	if a.design.qrLow {
		y = math.Floor((a.foot-side+quiet)/dotMM) * dotMM
	}
	if x < a.left() || y < a.y || y+side > a.area.HeightMM || x+side > a.area.WidthMM {
		return errNoRoom
	}
	shape, got, err := a.symbol.Fit(x, y, side+1e-6)
	if err != nil {
		return err
	}
	a.qr = Box{QR, x, y, got, got, []paper.Shape{shape}}
	if a.in.Link != "" {
		a.qr.shapes = append(a.qr.shapes, paper.Link{X: x, Y: y, W: got, H: got, URL: a.in.Link})
	}
	a.boxes = append(a.boxes, a.qr)
	return nil
}

func snap(mm float64) float64 { return math.Round(mm/dotMM) * dotMM }

// beside returns the width of a line that must keep clear of the symbol
// between two heights.
func (a *arranger) beside(top, bottom float64) float64 {
	if a.qr.W == 0 || bottom <= a.qr.Y+1e-6 || top >= a.qr.Y+a.qr.H-1e-6 {
		return a.width()
	}
	return a.qr.X - a.left() - 0.6
}

// fit composes text for its place: from y downwards or, if up is true, with
// its bottom at y.
func (a *arranger) fit(y, indent float64, up bool, spans ...paper.Span) (paper.Block, error) {
	width := a.width()
	for {
		b, err := a.compose(width-indent, spans...)
		if err != nil {
			return b, err
		}
		top := y
		if up {
			top = y - b.HeightMM()
		}
		least := a.beside(top, top+b.HeightMM())
		if least >= width {
			if b.WidthMM() > width-indent+1e-6 {
				return b, errNoRoom
			}
			return b, nil
		}
		if width = least; width-indent < 8 {
			return b, errNoRoom
		}
	}
}
