package paper

import (
	"fmt"
	"math"
)

// A Frame is the part of a page that text flows in.
type Frame struct {
	Page       *Page
	X, Y, W, H float64
}

// A Flow sets text and drawings one below the other, over as many pages as
// they need. Its first error stays, for Done; what comes after it does nothing.
type Flow struct {
	// Next starts a page and returns where text may stand on it.
	Next func() Frame
	// Mark is told where a heading with a bookmark stands; nil: of no heading.
	Mark func(p *Page, topMM float64, title string)

	frame Frame
	y     float64 // from the top of the frame
	gap   float64 // asked for, and dropped at the top of a page
	err   error
	begun bool
	heads []heading // held back until what they stand above is known
}

type heading struct {
	mark   string // of the bookmark, if there is one
	block  Block
	before float64 // space above and below
	after  float64
}

// Done sets a heading that still waits and returns the first error.
func (f *Flow) Done() error {
	f.settle(func() bool { return true })
	return f.err
}

// begin makes sure that there is a page.
func (f *Flow) begin() bool {
	if f.err == nil && !f.begun {
		f.turn()
	}
	return f.err == nil
}

func (f *Flow) turn() {
	f.frame, f.y, f.gap, f.begun = f.Next(), 0, 0, true
	if f.frame.Page == nil || !(f.frame.W > 0 && f.frame.H > 0) {
		f.fail(fmt.Errorf("cannot set text: the page leaves no room for it"))
	}
}

func (f *Flow) fail(err error) {
	if f.err == nil {
		f.err = err
	}
}

// Heading sets a heading with space above and below. It stands on the page
// where what follows begins, and never alone at the foot of one.
func (f *Flow) Heading(beforeMM, afterMM float64, spans ...Span) {
	if !f.begin() {
		return
	}
	b, err := Compose(f.frame.W, spans...)
	if err != nil {
		f.fail(err)
		return
	}
	f.heads = append(f.heads, heading{block: b, before: beforeMM, after: afterMM})
}

// Bookmark makes the last heading one with a bookmark.
func (f *Flow) Bookmark(title string) {
	if n := len(f.heads); n > 0 {
		f.heads[n-1].mark = title
	}
}

// settle sets the headings that wait, on this page if what follows can begin
// there below them, or else on the next.
func (f *Flow) settle(follows func() bool) {
	heads := f.heads
	f.heads = nil
	if f.err != nil || len(heads) == 0 {
		return
	}
	y, gap := f.y, f.gap
	below := func() {
		for _, h := range heads {
			f.Gap(h.before)
			f.y, f.gap = f.y+f.gap+h.block.HeightMM(), h.after
		}
	}
	if below(); f.y > f.frame.H || !follows() {
		if y > 0 {
			f.turn()
			y, gap = 0, 0
		}
	}
	f.y, f.gap = y, gap
	for _, h := range heads {
		f.Gap(h.before)
		if h.mark != "" && f.Mark != nil {
			f.Mark(f.frame.Page, f.frame.Y+f.y+f.gap, h.mark)
		}
		f.put([]Text{{Block: h.block}})
		f.y, f.gap = f.y+f.gap+h.block.HeightMM(), h.after
	}
}

// Gap leaves space before what follows; none at the top of a page, and no
// more than the largest of several gaps.
func (f *Flow) Gap(mm float64) {
	if f.begin() && f.y > 0 {
		f.gap = max(f.gap, mm)
	}
}

// left is the height still free on the page.
func (f *Flow) left() float64 { return f.frame.H - f.y - f.gap }

// Keep goes on at a new page if less than mm is left on this one.
func (f *Flow) Keep(mm float64) {
	if !f.begin() {
		return
	}
	fits := func() bool { return f.left() >= mm-1e-6 }
	f.settle(fits)
	if !fits() && f.y > 0 {
		f.turn()
	}
}

// At returns the frame that is left on the page, for what is not flowing.
func (f *Flow) At() Frame {
	if !f.begin() {
		return Frame{}
	}
	f.settle(func() bool { return true })
	at := f.frame
	at.Y += f.y + f.gap
	at.H = f.left()
	return at
}

// Skip moves down past what was drawn at At.
func (f *Flow) Skip(mm float64) {
	if f.begin() {
		f.y += f.gap + mm
		f.gap = 0
	}
}

// Text sets a paragraph over the whole width.
func (f *Flow) Text(spans ...Span) {
	f.Row([]Column{{}}, spans)
}

// A Column is one of a row. A width of 0 takes what the others leave.
type Column struct {
	WidthMM float64
	Align   Align
	Indent  float64 // space to its left, in mm
}

// Row sets texts side by side, their first baselines level. A short row goes
// to the next page whole if it must; a long one goes on there.
func (f *Flow) Row(columns []Column, cells ...[]Span) {
	if !f.begin() {
		return
	}
	if len(columns) != len(cells) {
		f.fail(fmt.Errorf("cannot set row: %d texts in %d columns", len(cells), len(columns)))
		return
	}
	var texts []Text
	x, base := 0.0, 0.0
	for i, c := range f.widths(columns) {
		b, err := Compose(c.WidthMM, cells[i]...)
		if err != nil {
			f.fail(err)
			return
		}
		x += c.Indent
		texts = append(texts, Text{X: x + c.WidthMM*[...]float64{left: 0, Right: 1, Centre: 0.5}[c.Align], Block: b, Align: c.Align})
		base = math.Max(base, b.BaselineMM())
		x += c.WidthMM
	}
	for i, t := range texts {
		if t.Block.Lines() > 0 {
			texts[i].Y = base - t.Block.BaselineMM()
		}
	}
	f.rows(texts)
}

// widths shares out the width that is not given.
func (f *Flow) widths(columns []Column) []Column {
	out := append([]Column(nil), columns...)
	left, open := f.frame.W, 0
	for _, c := range out {
		left -= c.WidthMM + c.Indent
		if c.WidthMM == 0 {
			open++
		}
	}
	if left < -1e-6 || open > 0 && left <= 0 {
		f.fail(fmt.Errorf("cannot set row: its columns are %.1f mm wider than the page", -left))
	}
	for i := range out {
		if out[i].WidthMM == 0 {
			out[i].WidthMM = left / float64(open)
		}
	}
	return out
}

// rows places texts that belong together, on this page or the next ones.
func (f *Flow) rows(texts []Text) {
	f.settle(func() bool { return f.stays(texts) || f.splits(texts) })
	for f.err == nil && rowHeight(texts) > 0 {
		if f.stays(texts) {
			h := rowHeight(texts)
			f.put(texts)
			f.y, f.gap = f.y+f.gap+h, 0
			return
		}
		if !f.splits(texts) {
			if f.y == 0 {
				f.fail(fmt.Errorf("%w: a line is higher than the page", ErrTooLong))
				return
			}
			f.turn()
			continue
		}
		heads, tails := make([]Text, len(texts)), make([]Text, len(texts))
		for i, t := range texts {
			heads[i], tails[i] = t, t
			heads[i].Block, tails[i].Block = t.Block.Split(f.left() - t.Y)
			if n := heads[i].Block.Lines(); tails[i].Block.Lines() == 1 && n > 2 {
				heads[i].Block, tails[i].Block = t.Block.splitAt(n - 1) // no line alone at the top
			}
			tails[i].Y = 0
		}
		f.put(heads)
		f.turn()
		texts = tails
	}
}

func rowHeight(texts []Text) (h float64) {
	for _, t := range texts {
		if t.Block.Lines() > 0 {
			h = math.Max(h, t.Y+t.Block.HeightMM())
		}
	}
	return h
}

// stays reports whether the row fits on this page as a whole.
func (f *Flow) stays(texts []Text) bool { return rowHeight(texts) <= f.left()+1e-6 }

// splits reports whether the row can begin on this page and go on on the next:
// its longest text has more than four lines, and two lines of each, or all it
// has, stand here. At the top of a page one line is enough.
func (f *Flow) splits(texts []Text) bool {
	longest := 0
	for _, t := range texts {
		longest = max(longest, t.Block.Lines())
		head, _ := t.Block.Split(f.left() - t.Y)
		least := 2
		if f.y == 0 {
			least = 1
		}
		if head.Lines() < min(least, t.Block.Lines()) {
			return false
		}
	}
	return f.y == 0 || longest > 4
}

func (f *Flow) put(texts []Text) {
	for _, t := range texts {
		if t.Block.Lines() == 0 {
			continue
		}
		t.X += f.frame.X
		t.Y += f.frame.Y + f.y + f.gap
		f.frame.Page.Draw(t)
	}
}

// Drawing places a drawing at the left; it goes to the next page if it must.
func (f *Flow) Drawing(d Drawing) {
	f.Keep(d.HeightMM)
	at := f.At()
	if f.err != nil {
		return
	}
	if d.HeightMM > at.H+1e-6 || d.WidthMM > at.W+1e-6 {
		f.fail(fmt.Errorf("a drawing: %w", ErrTooLong))
		return
	}
	at.Page.Draw(d.At(at.X, at.Y))
	f.Skip(d.HeightMM)
}

// Rule draws a hairline over the whole width.
func (f *Flow) Rule() {
	at := f.At()
	if f.err == nil {
		at.Page.Draw(Line{X1: at.X, Y1: at.Y, X2: at.X + at.W, Y2: at.Y, WeightMM: 0.15})
		f.Skip(0)
	}
}
