package label

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"backleaf/record/paper"
)

// A Box is a field in its place on a label, in millimetres from the top left
// corner. The box of a symbol has its quiet zone inside.
type Box struct {
	Field      Field
	X, Y, W, H float64
	shapes     []paper.Shape
}

// A Layout is a label with everything in its place.
type Layout struct {
	Number   string
	Size     Size
	Area     Area
	BodyPt   float64 // of the text
	ModuleMM float64 // of the symbols
	Boxes    []Box
	// LeftOut lists what was recorded and found no room, in the order in which
	// it gave way.
	LeftOut []Field
	// More are the labels that carry on with hazards that found no room.
	More []Layout
}

var errNoRoom = errors.New("no room")

// An arranger tries out one way after the other to fill a label.
type arranger struct {
	in          Input
	words       Words
	area        Area
	part, parts int
	numberPt    float64 // the most for the number
	symbol      *paper.Symbol
	facts       *paper.Symbol
	texts       *texts
	broken      bool // a word was broken, at some setting

	setting
	keep  map[Field]bool
	boxes []Box
	codes []Box   // the symbols among them
	x, to float64 // sides of the column
	y     float64 // top of what is free
	foot  float64 // bottom of it
	begun bool    // there is text below the rule
}

// encode makes the symbols; too long a text for any symbol leaves none.
func (a *arranger) encode() error {
	text := a.in.code()
	if text == "" {
		return fmt.Errorf("there is neither a link nor a text for its QR symbol")
	}
	if s, err := paper.NewSymbol(text, paper.LevelQ); err == nil {
		a.symbol = &s
	}
	a.holdFacts(a.in.Facts)
	return nil
}

// holdFacts makes the second symbol; too long a text leaves none.
func (a *arranger) holdFacts(text string) {
	a.facts = nil
	if s, err := paper.NewSymbol(marked(text), paper.LevelL); err == nil && text != "" {
		a.facts = &s
	}
}

// A blockKey is what a composed text depends on.
type blockKey struct {
	width float64
	style paper.Style
	text  string
}

// texts are those composed before: the labels of a studio, and the many ways
// that are tried, have most in common.
type texts struct {
	mu     sync.Mutex
	blocks map[blockKey]paper.Block
}

const mostTexts = 2000 // kept at a time

// compose is [paper.Compose].
func (a *arranger) compose(width float64, spans ...paper.Span) (paper.Block, error) {
	key := blockKey{style: spans[0].Style, text: spans[0].Text}
	for _, s := range spans[1:] {
		key.text += "\x00" + s.Text // a second text has a style that follows from the first
	}
	b, err := a.texts.compose(key, spans)
	if err != nil || width <= 0 || b.WidthMM() <= width {
		return b, err
	}
	key.width = width
	return a.texts.compose(key, spans)
}

func (t *texts) compose(key blockKey, spans []paper.Span) (paper.Block, error) {
	t.mu.Lock()
	b, ok := t.blocks[key]
	t.mu.Unlock()
	if ok {
		return b, nil
	}
	b, err := paper.Compose(key.width, spans...)
	if err != nil {
		return b, err
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.blocks == nil || len(t.blocks) >= mostTexts {
		t.blocks = map[blockKey]paper.Block{}
	}
	t.blocks[key] = b
	return b, nil
}

func (a *arranger) left() float64  { return a.x }
func (a *arranger) right() float64 { return a.to }
func (a *arranger) width() float64 { return a.to - a.x }

// whole makes the column as wide as the label.
func (a *arranger) whole() { a.x, a.to = padMM(a.area), a.area.WidthMM-padMM(a.area) }

func (a *arranger) add(f Field, x, y, w, h float64, shapes ...paper.Shape) {
	a.boxes = append(a.boxes, Box{f, x, y, w, h, shapes})
}

// text puts a block in its box.
func (a *arranger) text(f Field, x, y float64, b paper.Block) {
	a.add(f, x, y, b.WidthMM(), b.HeightMM(), paper.Text{X: x, Y: y, Block: b})
}

// arrange fills the label with the fields, or reports that there is no room.
func (a *arranger) arrange(s setting, fields []Field) ([]Box, error) {
	a.setting, a.keep = s, map[Field]bool{}
	for _, f := range fields {
		a.keep[f] = true
	}
	a.boxes, a.codes, a.begun = make([]Box, 0, len(reading)), nil, false
	a.whole()
	a.y, a.foot = padMM(a.area), a.area.HeightMM-padMM(a.area)
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
	top, err := a.compose(0, paper.Span{Style: a.strong(), Text: strings.ToUpper(string(a.words.T("top")))})
	if err != nil {
		return err
	}
	number, err := a.compose(0, paper.Span{Style: a.number(a.numberPt), Text: a.in.Number, Field: "number"})
	if err != nil {
		return err
	}
	w := top.WidthMM()
	free := a.width() - w - headGapMM - number.WidthMM()
	var part paper.Block
	if a.parts > 1 {
		if part, err = a.compose(0, paper.Span{Style: a.strong(), Text: a.words.T("part").With("part", fmt.Sprint(a.part), "parts", fmt.Sprint(a.parts))}); err != nil {
			return err
		}
		free -= part.WidthMM() + headGapMM
	}
	if free < 0 {
		return errNoRoom
	}
	// The arrow stands on the word, and the word on the line of the number.
	rise := 0.72 * w
	base := a.y + math.Max(number.BaselineMM(), rise+0.6+capital(top))
	a.text(Number, a.left(), base-number.BaselineMM(), number)
	x, peak := a.right()-w, base-capital(top)-0.6-rise
	if a.parts > 1 {
		a.text(Part, x-headGapMM-part.WidthMM(), base-part.BaselineMM(), part)
	}
	a.add(Top, x, peak, w, base+0.3-peak,
		paper.Polygon{Points: []paper.Point{{X: x + w/2, Y: peak}, {X: x + w, Y: peak + rise}, {X: x, Y: peak + rise}}, Fill: paper.Black},
		paper.Text{X: x, Y: base - top.BaselineMM(), Block: top})
	a.y = base + math.Max(number.HeightMM()-number.BaselineMM(), top.HeightMM()-top.BaselineMM())
	a.add(rule, a.left(), a.y, a.width(), ruleMM, paper.Rect{X: a.left(), Y: a.y, W: a.width(), H: ruleMM, Fill: paper.Black})
	a.y += ruleMM
	return nil
}

// numberRoom is the largest type at which the number finds room at any setting,
// in half points; the words beside it are widest at the largest.
func (a *arranger) numberRoom() (float64, error) {
	a.whole()
	s := setting{bodyPt: largestPt}
	width := a.width() - headGapMM
	beside := []string{strings.ToUpper(string(a.words.T("top")))}
	if len(a.in.Hazards) > 0 {
		beside = append(beside, a.words.T("part").With("part", "1", "parts", "2"))
		width -= headGapMM
	}
	for _, text := range beside {
		b, err := a.compose(0, paper.Span{Style: s.strong(), Text: text})
		if err != nil {
			return 0, err
		}
		width -= b.WidthMM()
	}
	const most = 20.0
	b, err := a.compose(0, paper.Span{Style: s.number(most), Text: a.in.Number, Field: "number"})
	if err != nil {
		return 0, err
	}
	pt := s.number(most).SizePt * width / b.WidthMM()
	return math.Max(math.Floor(2*pt)/2, smallestPt), nil
}

const (
	ruleMM    = 0.35
	headGapMM = 2.0
	dotMM     = 25.4 / 300
)

// capital is the height of capitals in a block of one line, for the sans
// faces: 0.72 of the size, of which 0.33 lie below the middle of the line.
func capital(b paper.Block) float64 { return (b.BaselineMM() - b.HeightMM()/2) * 0.72 / 0.33 }

// place finds the places of the symbols at the right: the dark part stands
// flush with the text, its quiet zone in the margin of the label.
func (a *arranger) place() error {
	if a.keep[QR] {
		caption := ""
		if a.keep[Facts] {
			caption = string(a.words.T("link-caption"))
		}
		if err := a.code(QR, a.symbol, a.low, caption); err != nil {
			return err
		}
	}
	if a.keep[Facts] {
		if err := a.code(Facts, a.facts, !a.low, string(a.words.T("facts-caption"))); err != nil {
			return err
		}
	}
	if a.keep[StudioMark] {
		return a.mark()
	}
	return nil
}

// mark places the mark of the studio at the right, where no symbol stands.
func (a *arranger) mark() error {
	const highest, white = 9.0, 0.8
	p := paper.Picture{Image: a.in.Mark}.Within(min(24, a.width()/3), highest)
	for _, y := range []float64{a.y + 1.4, a.foot - p.H} {
		p.X, p.Y = a.right()-p.W, y
		box := Box{StudioMark, p.X, y - white, p.W, p.H + 2*white, []paper.Shape{p}}
		if !slices.ContainsFunc(a.codes, func(c Box) bool { return box.Y < c.Y+c.H && c.Y < box.Y+box.H }) {
			a.codes, a.boxes = append(a.codes, box), append(a.boxes, box)
			return nil
		}
	}
	return errNoRoom
}

// code places a symbol, with its caption on the side of the free room.
func (a *arranger) code(f Field, s *paper.Symbol, low bool, caption string) error {
	module := float64(a.dots) * dotMM
	side := s.SideMM(module)
	quiet := (side - float64(s.Modules())*module) / 2
	x, y := snap(a.right()-side+quiet), snap(a.y+dotMM)
	if low {
		y = math.Floor((a.foot-side+quiet)/dotMM) * dotMM
	}
	below, err := a.compose(side-2*quiet, paper.Span{Style: a.small(), Text: caption})
	if err != nil {
		return err
	}
	high := below.HeightMM()
	if x < a.left() || y < a.y || y+side > a.area.HeightMM || x+side > a.area.WidthMM {
		return errNoRoom
	}
	shape, got, err := s.Fit(x, y, side+1e-6)
	if err != nil {
		return err
	}
	box := Box{f, x, y, got, got, []paper.Shape{shape}}
	if f == QR && a.in.Link != "" {
		box.shapes = append(box.shapes, paper.Link{X: x, Y: y, W: got, H: got, URL: a.in.Link})
	}
	whole, at := box, y+got
	if whole.H += high; low {
		at, whole.Y = y-high, y-high
	}
	if whole.Y < a.y || slices.ContainsFunc(a.codes, func(c Box) bool { return whole.Y < c.Y+c.H && c.Y < whole.Y+whole.H }) {
		return errNoRoom
	}
	a.codes, a.boxes = append(a.codes, whole), append(a.boxes, box)
	if high > 0 {
		a.text(f, x+quiet, at, below)
	}
	return nil
}

func snap(mm float64) float64 { return math.Round(mm/dotMM) * dotMM }

// beside returns the width of a line that must keep clear of the symbols
// between two heights.
func (a *arranger) beside(top, bottom float64) float64 {
	w := a.width()
	for _, c := range a.codes {
		if bottom > c.Y+1e-6 && top < c.Y+c.H-1e-6 {
			w = math.Max(0, min(w, c.X-a.left()-0.6))
		}
	}
	return w
}

// fit composes text for its place: from y downwards or, if up is true, with
// its bottom at y.
func (a *arranger) fit(y, indent float64, up bool, spans ...paper.Span) (paper.Block, error) {
	width := a.width()
	for {
		if width-indent < 8 {
			return paper.Block{}, errNoRoom
		}
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
			a.broken = a.broken || b.Broken()
			if b.Broken() && !a.rough || b.WidthMM() > width-indent+1e-6 {
				return b, errNoRoom
			}
			return b, nil
		}
		width = least
	}
}
