package label

import (
	"errors"
	"math"
	"strings"

	"backleaf/record/paper"
	"backleaf/record/tell"
)

// A row is one paragraph of the label, with a heading or without.
type row struct {
	field Field
	head  string
	spans []paper.Span
	gap   float64 // white above it, in mm
}

// shown reports whether a field has something to say and was not left out.
func (a *arranger) shown(f Field) bool { return a.in.says(f) && !a.out[f] }

// paragraphs lists what stands between the rule and the foot.
func (a *arranger) paragraphs() []row {
	rows := a.facts()
	gap := 1.2
	for _, p := range []struct {
		field Field
		head  tell.Message
		text  string
	}{
		{BuildUp, a.words.BuildUp, a.buildUp()},
		{Sealed, a.words.Faces, a.in.Sealed},
		{Varnish, a.words.Varnish, a.in.Varnish},
		{Changed, a.words.Changed, a.in.Changed},
		{Care, a.words.Care, a.in.Care},
	} {
		if a.shown(p.field) {
			rows = append(rows, a.headed(p.field, p.head, p.text, gap))
			gap = 0.35
		}
	}
	return rows
}

// facts are what a cataloguer puts beside a picture. The date stands beside
// the title, or on a line of its own where there is none.
func (a *arranger) facts() []row {
	var rows []row
	add := func(f Field, gap float64, spans ...paper.Span) { rows = append(rows, row{f, "", spans, gap}) }
	body, title := a.style(a.design.body()), a.style(a.design.title())
	if a.in.Notice != "" {
		add(Notice, 0, paper.Span{Style: a.style(a.design.strong()), Text: a.in.Notice})
	}
	date := a.in.Made
	if date == "" {
		date = a.in.Date
	}
	if a.shown(Title) {
		name := []paper.Span{{Style: title, Text: a.in.Title, Field: "title"}}
		if a.in.Date != "" && !a.out[Date] {
			name = append(name, paper.Span{Style: title.Plain(), Text: ", " + a.in.Date, Field: "date"})
			date = a.in.Made
		}
		add(Title, 0, name...)
	}
	maker := []paper.Span{{Style: body, Text: a.in.Maker, Field: "maker"}}
	if a.shown(Place) {
		maker = append(maker, paper.Span{Style: body, Text: ", " + a.in.Place, Field: "place"})
	}
	add(Maker, 0, maker...)
	if date != "" && !a.out[Date] {
		add(Date, 0, paper.Span{Style: body, Text: date, Field: "date"})
	}
	if a.shown(Support) {
		add(Support, 1, paper.Span{Style: body, Text: a.in.Medium, Field: "medium and support"})
	}
	if a.shown(Dimensions) {
		add(Dimensions, 0, paper.Span{Style: body, Text: a.in.Dimensions, Field: "size"})
	}
	return rows
}

// headed is a row under a heading. Where the design has no column for
// headings, only what cannot be understood without one has it.
func (a *arranger) headed(f Field, head tell.Message, text string, gap float64) row {
	body := paper.Span{Style: a.style(a.design.body()), Text: text, Field: string(f)}
	if a.design.headMM > 0 {
		return row{f, string(head), []paper.Span{body}, gap}
	}
	if f == BuildUp {
		body.Text = a.words.Lead.With("head", string(head), "text", text)
	}
	return row{f, "", []paper.Span{body}, gap}
}

// buildUp is the build-up in full or, where that has no room, in short.
func (a *arranger) buildUp() string {
	if a.out[BuildUpFull] && a.in.BuildUpShort != "" {
		return a.in.BuildUpShort
	}
	if a.design.headMM > 0 && !a.out[BuildUpList] {
		return strings.Join(a.in.BuildUp, "\n")
	}
	return strings.Join(a.in.BuildUp, string(a.words.Between))
}

// rows sets the paragraphs from the top down.
func (a *arranger) rows() error {
	if a.qr.W == 0 || a.design.qrLow {
		a.y += 0.8
	} else {
		a.y += 1
	}
	for _, r := range a.paragraphs() {
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

func (a *arranger) row(r row) error {
	indent, x := 0.0, a.left()
	var head paper.Block
	if r.head != "" {
		indent = a.design.headMM
		var err error
		if head, err = a.compose(indent-1, paper.Span{Style: a.style(a.design.head()), Text: r.head}); err != nil {
			return err
		}
	}
	b, err := a.fit(a.y, indent, false, r.spans...)
	if err != nil && !errors.Is(err, errNoRoom) {
		return err
	}
	// Below the symbol a text may end sooner than squeezed in beside it.
	if below := a.qr.Y + a.qr.H; a.y < below && a.begun && !a.design.qrLow {
		wide, werr := a.fit(below, indent, false, r.spans...)
		if werr == nil && (err != nil || below+wide.HeightMM() < a.y+b.HeightMM()+1e-6) {
			a.y, b, err = below, wide, nil
		}
	}
	if err != nil {
		return err
	}
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

// ending sets the foot from the bottom up: where the record is, in words and
// letters, and its fingerprint.
func (a *arranger) ending() error {
	small := a.style(a.design.small())
	where := []paper.Span{{Style: small, Text: a.in.Where, Field: "where the record is"}}
	var print paper.Block
	if a.shown(Fingerprint) {
		var err error
		if print, err = a.compose(0, paper.Span{Style: small, Text: a.in.Fingerprint, Field: "fingerprint"}); err != nil {
			return err
		}
	}
	b, err := a.fit(a.foot, 0, true, where...)
	if err != nil {
		return err
	}
	const gap = 4
	w := print.WidthMM()
	if print.Lines() > 0 && b.Lines() == 1 && a.left()+b.WidthMM()+gap+w <= a.left()+a.beside(a.foot-b.HeightMM(), a.foot) {
		a.text(Where, a.left(), a.foot-b.HeightMM(), b)
		a.text(Fingerprint, a.left()+a.beside(a.foot-b.HeightMM(), a.foot)-w, a.foot-print.HeightMM(), print)
		a.foot -= b.HeightMM()
	} else {
		if print.Lines() > 0 {
			if w > a.beside(a.foot-print.HeightMM(), a.foot) {
				return errNoRoom
			}
			a.text(Fingerprint, a.left(), a.foot-print.HeightMM(), print)
			a.foot -= print.HeightMM()
			if b, err = a.fit(a.foot, 0, true, where...); err != nil {
				return err
			}
		}
		a.text(Where, a.left(), a.foot-b.HeightMM(), b)
		a.foot -= b.HeightMM()
	}
	if a.foot < a.y {
		return errNoRoom
	}
	a.foot -= 0.8
	return nil
}

// moreLines is how many lines for remarks there are at most.
const moreLines = 4

// lines gives the room that is left to signature and remarks.
func (a *arranger) lines() error {
	var captions []Field
	for _, f := range []Field{Signature, Remarks} {
		if a.shown(f) {
			captions = append(captions, f)
		}
	}
	if len(captions) == 0 {
		return nil
	}
	pitch := a.design.rowMM
	free := a.foot - a.y
	rows := int(free / pitch)
	if rows < 1 {
		return errNoRoom
	}
	if !a.shown(Remarks) {
		rows = 1
	}
	rows = min(rows, moreLines)
	y := a.foot - float64(rows)*pitch
	const gap = 3
	x := a.left()
	width := a.beside(y, y+pitch)
	each := (width - gap*float64(len(captions)-1)) / float64(len(captions))
	for _, f := range captions {
		text := a.words.Signature
		switch {
		case f == Remarks:
			text = a.words.Remarks
		case a.in.Blank:
			text = a.words.PaintedBy
		}
		b, err := a.compose(0, paper.Span{Style: a.style(a.design.small()), Text: string(text)})
		if err != nil {
			return err
		}
		if b.WidthMM() > each-10 {
			return errNoRoom
		}
		base := y + pitch - 1
		a.text(f, x, base-b.BaselineMM(), b)
		from := x + b.WidthMM() + 1
		a.add(f, from, y, x+each-from, pitch-0.9, paper.Line{X1: from, Y1: base, X2: x + each, Y2: base, WeightMM: hairMM})
		x += each + gap
	}
	for i := 1; i < rows; i++ {
		top := y + float64(i)*pitch
		w := a.beside(top, top+pitch)
		a.add(Remarks, a.left(), top, w, pitch-0.9,
			paper.Line{X1: a.left(), Y1: top + pitch - 1, X2: a.left() + w, Y2: top + pitch - 1, WeightMM: hairMM})
	}
	return nil
}

const hairMM = 0.12
