package label

import (
	"errors"
	"math"
	"slices"
	"strings"

	"backleaf/record/paper"
	"backleaf/record/tell"
)

// A row is one paragraph of the label, with a heading or without.
type row struct {
	field Field
	head  tell.Message
	spans []paper.Span
	gap   float64 // white above it, in mm
	frame bool
}

// work lists what the panel is.
func (a *arranger) work() []row {
	rows := a.title()
	body := func(f Field, gap float64, text, field string) {
		rows = append(rows, row{f, "", []paper.Span{{Style: a.body(), Text: text, Field: field}}, gap, false})
	}
	if a.keep[Support] {
		body(Support, 0.9, a.in.Medium, "medium and support")
	}
	switch {
	case a.keep[OtherUnits]:
		body(Dimensions, 0, a.in.OtherUnits, "size")
	case a.keep[Dimensions]:
		body(Dimensions, 0, a.in.Dimensions, "size")
	}
	return append(rows, a.hazards()...)
}

// making lists how it is made, and kept.
func (a *arranger) making() []row {
	var rows []row
	gap := 1.1
	for _, p := range []struct {
		field Field
		head  tell.Message
		text  string
		show  bool
	}{
		{BuildUp, a.words.T("build-up"), a.buildUp(), a.keep[BuildUp] || a.keep[BuildUpFull]},
		{Sealed, a.words.T("faces"), a.in.Sealed, a.keep[Sealed]},
		{Varnish, a.words.T("varnish"), a.in.Varnish, a.keep[Varnish] && !(a.keep[BuildUpFull] && a.in.varnishInBuildUp())},
		{Changed, a.words.T("changed"), a.in.Changed, a.keep[Changed]},
		{Care, a.words.T("care"), a.in.Care, a.keep[Care]},
	} {
		if p.show {
			rows = append(rows, a.headed(p.field, p.head, p.text, gap))
			gap = 0.4
		}
	}
	return rows
}

// title is who made what, and when. The title is set in the smaller type where
// that keeps it in one line, or where it would take more than two. The date
// stands beside it, or on a line of its own where there is none.
func (a *arranger) title() []row {
	var rows []row
	add := func(f Field, spans ...paper.Span) { rows = append(rows, row{f, "", spans, 0, false}) }
	if a.in.Notice != "" {
		add(Notice, paper.Span{Style: a.strong(), Text: a.in.Notice})
	}
	date := a.in.Made
	if date == "" {
		date = a.in.Date
	}
	if a.keep[Title] {
		titled := func(style paper.Style) (spans []paper.Span, lines int) {
			spans = []paper.Span{{Style: style, Text: a.in.Title, Field: "title"}}
			if a.in.Date != "" && a.keep[Date] {
				spans = append(spans, paper.Span{Style: style.Plain(), Text: "," + paper.NoBreakSpace + paper.Held(a.in.Date), Field: "date"})
				date = a.in.Made
			}
			b, err := a.fit(a.y, 0, false, spans...)
			if err != nil {
				return spans, math.MaxInt
			}
			return spans, b.Lines()
		}
		name, lines := titled(a.setting.title())
		if lines > 1 { // rather smaller than broken
			if small, n := titled(a.strong()); n == 1 || lines > 2 {
				name = small
			}
		}
		add(Title, name...)
	}
	maker := []paper.Span{{Style: a.body(), Text: a.in.Maker, Field: "maker"}}
	if a.keep[Place] {
		maker = append(maker, paper.Span{Style: a.body(), Text: ", " + a.in.Place, Field: "place"})
	}
	add(Maker, maker...)
	if date != "" && a.keep[Date] {
		add(Date, paper.Span{Style: a.body(), Text: date, Field: "date"})
	}
	return rows
}

// hazards stand in a frame of their own.
func (a *arranger) hazards() []row {
	if len(a.in.Hazards) == 0 {
		return nil
	}
	spans := []paper.Span{{Style: a.strong(), Text: string(a.words.T("hazard")) + " "}, {Style: a.body(), Text: strings.Join(a.in.Hazards, " "), Field: "hazards"}}
	return []row{{Hazards, "", spans, 1.3, true}}
}

// headed is a row under a heading. Where headings have no column, only what
// cannot be understood without one has it.
func (a *arranger) headed(f Field, head tell.Message, text string, gap float64) row {
	body := paper.Span{Style: a.body(), Text: text, Field: string(f)}
	if a.columns {
		return row{f, head, []paper.Span{body}, gap, false}
	}
	if f == BuildUp && a.keep[BuildUpFull] {
		body.Text = a.words.T("lead").With("head", string(head), "text", text)
	}
	return row{f, "", []paper.Span{body}, gap, false}
}

// buildUp is the build-up in full or, where that has no room, in short.
func (a *arranger) buildUp() string {
	switch {
	case !a.keep[BuildUpFull]:
		return a.in.BuildUpShort
	case a.list:
		return strings.Join(a.in.buildUp(), "\n")
	}
	return strings.Join(a.in.buildUp(), string(a.words.T("between")))
}

// headings is the width of the column of headings: that of the longest.
func (a *arranger) headings() (float64, error) {
	w := 0.0
	for _, h := range []tell.Message{a.words.T("build-up"), a.words.T("faces"), a.words.T("varnish"), a.words.T("changed"), a.words.T("care")} {
		b, err := a.compose(0, paper.Span{Style: a.head(), Text: string(h)})
		if err != nil {
			return 0, err
		}
		w = max(w, b.WidthMM())
	}
	return w + 2.2, nil
}

// rows sets the paragraphs from the top down, or in two columns.
func (a *arranger) rows() error {
	a.y += 0.9
	if a.share == 0 {
		return a.set(append(a.work(), a.making()...))
	}
	// What is said last goes below the work, as far as that makes the columns more even.
	work, making := a.work(), a.making()
	start, best, err, broken := *a, *a, errNoRoom, a.broken
	for n := len(making); n >= 0; n-- {
		*a = start
		a.boxes = slices.Clone(start.boxes)
		tried := a.twin(append(slices.Clone(work), making[n:]...), making[:n])
		broken = broken || a.broken
		switch {
		case tried == nil && (err != nil || a.y < best.y-1e-6):
			best, err = *a, nil
		case tried != nil && !errors.Is(tried, errNoRoom):
			return tried
		}
	}
	*a = best
	a.broken = broken
	return err
}

// twin sets rows in two columns.
func (a *arranger) twin(left, right []row) error {
	const gap = 3.0
	top, to := a.y, a.to
	split := a.x + a.share*(to-a.x)
	a.to = split - gap/2
	if err := a.set(left); err != nil {
		return err
	}
	end := a.y
	a.x, a.to, a.y, a.begun = split+gap/2, to, top, false
	if err := a.set(right); err != nil {
		return err
	}
	a.y = math.Max(a.y, end)
	a.whole()
	return nil
}

// set sets paragraphs one below the other.
func (a *arranger) set(rows []row) error {
	for _, r := range rows {
		if a.begun {
			a.y += r.gap
		}
		if err := a.row(r); err != nil {
			return err
		}
		a.begun = true
		if a.y > a.foot+1e-6 {
			return errNoRoom
		}
	}
	return nil
}

// White inside the frame around hazards, above and beside them.
const (
	frameMM     = 0.9
	frameSideMM = 1.3
)

func (a *arranger) row(r row) error {
	indent, x := 0.0, a.left()
	var head paper.Block
	if r.head != "" {
		var err error
		if indent, err = a.headings(); err != nil {
			return err
		}
		if head, err = a.compose(0, paper.Span{Style: a.head(), Text: string(r.head)}); err != nil {
			return err
		}
	}
	if r.frame {
		return a.framed(r)
	}
	y, b, err := a.best(a.y, indent, r.spans)
	if err != nil {
		return err
	}
	a.y = y
	height := b.HeightMM()
	if head.Lines() > 0 {
		down := b.BaselineMM() - head.BaselineMM()
		a.text(r.field, x, a.y+down, head)
		height = math.Max(height, down+head.HeightMM())
	}
	a.text(r.field, x+indent, a.y, b)
	a.y += height
	return nil
}

// best sets text from y on or, where it ends sooner, below a symbol.
func (a *arranger) best(y, indent float64, spans []paper.Span) (float64, paper.Block, error) {
	b, err := a.fit(y, indent, false, spans...)
	if err != nil && !errors.Is(err, errNoRoom) {
		return y, b, err
	}
	for _, c := range a.codes {
		below := c.Y + c.H
		if y >= below || !a.begun || below >= a.foot {
			continue
		}
		wide, werr := a.fit(below, indent, false, spans...)
		if werr == nil && (err != nil || below+wide.HeightMM() < y+b.HeightMM()+1e-6) {
			return below, wide, nil
		}
	}
	return y, b, err
}

// framed sets a row in a frame as wide as the line.
func (a *arranger) framed(r row) error {
	y, b, err := a.best(a.y+frameMM, 2*frameSideMM, r.spans)
	if err != nil {
		return err
	}
	height := b.HeightMM() + 2*frameMM
	top := y - frameMM
	w := min(a.beside(top, top+height), a.width())
	if b.WidthMM() > w-2*frameSideMM+1e-6 {
		return errNoRoom
	}
	a.add(r.field, a.left(), top, w, height,
		paper.Rect{X: a.left() + ruleMM/2, Y: top + ruleMM/2, W: w - ruleMM, H: height - ruleMM, WeightMM: ruleMM},
		paper.Text{X: a.left() + frameSideMM, Y: y, Block: b})
	a.y = top + height
	return nil
}
