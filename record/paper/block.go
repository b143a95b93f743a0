package paper

import (
	"errors"
	"fmt"
)

// A piece is a run of glyphs drawn at one place with one font.
type piece struct {
	text    string
	cut     *cut
	sizePt  float64
	risePt  float64
	trackPt float64
	x       float64 // mm from the start of the line
	width   float64
}

type line struct {
	pieces []piece
	width  float64 // mm
	leadPt float64
	bodyPt float64
}

// newLine places glyphs; like gives an empty line its height.
func newLine(glyphs []glyph, like glyph) line {
	l := line{leadPt: like.leadPt, bodyPt: like.bodyPt}
	var text []byte // of the last piece
	for i, g := range glyphs {
		l.leadPt = max(l.leadPt, g.leadPt)
		l.bodyPt = max(l.bodyPt, g.bodyPt)
		kern := 0.0
		if i > 0 {
			kern = g.kern
		}
		l.width += kern
		if last := len(l.pieces) - 1; i > 0 && kern == 0 && l.pieces[last].continues(g) {
			text = append(text, g.text...)
			l.pieces[last].width += g.advance
		} else {
			l.end(text)
			text = append(text[:0], g.text...)
			l.pieces = append(l.pieces, piece{"", g.cut, g.sizePt, g.risePt, g.trackPt, l.width, g.advance})
		}
		l.width += g.advance
	}
	l.end(text)
	return l
}

// end gives the last piece its text.
func (l *line) end(text []byte) {
	if last := len(l.pieces) - 1; last >= 0 {
		l.pieces[last].text = string(text)
	}
}

func (p piece) continues(g glyph) bool {
	return p.cut == g.cut && p.sizePt == g.sizePt && p.risePt == g.risePt && p.trackPt == g.trackPt
}

func (l line) heightMM() float64 { return l.leadPt * mmPerPt }

// baselineMM is how far the baseline lies below the top of the line. Capitals
// stand in the middle of the line's height.
func (l line) baselineMM() float64 { return (l.leadPt/2 + l.bodyPt*0.33) * mmPerPt }

// A Block is text set in lines, ready to be placed.
type Block struct {
	lines  []line
	broken bool // a word longer than its line was broken
}

// Broken reports whether a word, number or address longer than its line was
// broken where it should not be.
func (b Block) Broken() bool { return b.broken }

// Lines returns how many lines there are.
func (b Block) Lines() int { return len(b.lines) }

// WidthMM returns the width of the longest line.
func (b Block) WidthMM() float64 {
	w := 0.0
	for _, l := range b.lines {
		w = max(w, l.width)
	}
	return w
}

// HeightMM returns the height of all lines.
func (b Block) HeightMM() float64 {
	h := 0.0
	for _, l := range b.lines {
		h += l.heightMM()
	}
	return h
}

// LineMM returns the height of the first line.
func (b Block) LineMM() float64 {
	if len(b.lines) == 0 {
		return 0
	}
	return b.lines[0].heightMM()
}

// SizePt returns the size of the type of the first line.
func (b Block) SizePt() float64 {
	if len(b.lines) == 0 {
		return 0
	}
	return b.lines[0].bodyPt
}

// BaselineMM returns how far the first baseline lies below the top.
func (b Block) BaselineMM() float64 {
	if len(b.lines) == 0 {
		return 0
	}
	return b.lines[0].baselineMM()
}

// Split parts the block: head holds the lines that fit in heightMM, tail the others.
func (b Block) Split(heightMM float64) (head, tail Block) {
	h := 0.0
	for i, l := range b.lines {
		if h += l.heightMM(); h > heightMM+1e-6 {
			return b.splitAt(i)
		}
	}
	return b, Block{}
}

func (b Block) splitAt(i int) (head, tail Block) {
	return Block{lines: b.lines[:i]}, Block{lines: b.lines[i:]}
}

// ErrTooLong says that text does not fit its place at the smallest size allowed.
var ErrTooLong = errors.New("text does not fit")

// Fit composes text that must fit in widthMM × heightMM, at full size or
// scaled down as a whole, to no less than the fraction smallest of it and
// never below SmallestPt. A smaller size is preferred to a broken word. Text
// that does not fit is an [ErrTooLong]; nothing is cut off.
func Fit(widthMM, heightMM, smallest float64, spans ...Span) (Block, error) {
	var fits *Block
	for scale := 1.0; scale >= smallest-1e-9; scale -= 0.025 {
		scaled, ok := scaleSpans(spans, scale)
		if !ok {
			break
		}
		b, err := Compose(widthMM, scaled...)
		if err != nil {
			return Block{}, err
		}
		if b.HeightMM() > heightMM+1e-6 || b.WidthMM() > widthMM+1e-6 {
			continue
		}
		if !b.broken {
			return b, nil
		}
		if fits == nil {
			fits = &b
		}
	}
	if fits == nil {
		return Block{}, tooLong(spans)
	}
	return *fits, nil
}

// scaleSpans scales spans; it reports false when that makes one too small to read.
func scaleSpans(spans []Span, by float64) ([]Span, bool) {
	scaled := make([]Span, len(spans))
	for i, s := range spans {
		if s.Style = s.Style.Scaled(by); by < 1 && s.Style.SizePt < SmallestPt {
			return nil, false
		}
		scaled[i] = s
	}
	return scaled, true
}

func tooLong(spans []Span) error {
	field := "text"
	for _, s := range spans {
		if s.Field != "" {
			field = s.Field
			break
		}
	}
	return fmt.Errorf("%s: %w", field, ErrTooLong)
}
